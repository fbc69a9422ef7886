// Reads the shape of a part or cut-out: which one it is, its sizes with their tolerances, and the body they make.
import type { Shape } from '../mechanics/index.ts';
import { type BoundClause, type BoundPlan, given, type Item } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { ShapeName } from '../vocabulary/index.ts';
import { drawing } from './drawing.ts';
import { endsFaults, endsOf, hasEnds, ledAlong } from './ends.ts';
import { because, type Notes, notYet } from './notes.ts';
import { pipework } from './pipework/read.ts';
import type { BoughtIn } from './pipework/types.ts';
import { foreign, label, ofShape, otherWord } from './shape-clauses.ts';
import { dishedHead, notRound } from './shape-forms.ts';
import { coil, heap, hollowCore, weld } from './shape-shop.ts';
import { lineOf, member, sheet } from './shape-tables.ts';
import { shapesUnder, sizeClauses } from './shape-words.ts';

/** A shape whose sizes are known: `make` builds it from sizes, so that the ends of their tolerances can be tried. */
export interface ShapeRead {
  readonly name: ShapeName;
  readonly clause: BoundClause; // of the shape's own keyword
  readonly sizes: Readonly<Record<string, Quantity>>;
  readonly make: (sizes: Readonly<Record<string, number>>) => Shape;
  /** Where figures of a table stand behind it. */
  readonly source: string;
  readonly assumptions: readonly string[];
  /** Of parts that are bought in: what the weight is more than that of the body, and what they are of. */
  readonly allowance?: BoughtIn['allowance'];
  readonly material?: BoughtIn['material'];
  /** Density (kg/m3) of what a table's mass is of, for what is cut out of it; steel where none is named. */
  readonly listedDensity?: number;
}
export type ShapeGiven = ShapeRead | { readonly name: ShapeName | null; readonly because: readonly Cause[] };

/** Names of the sizes in mechanics that a clause stands for. */
const sizeNames: Readonly<Record<string, string>> = {
  'bend radius': 'bendRadius',
  'mean diameter': 'meanDiameter',
  'section diameter': 'sectionDiameter',
  'crown radius': 'crownRadius',
  'knuckle radius': 'knuckleRadius',
  'straight flange': 'straightFlange',
  'leg length': 'leg',
  'root face': 'rootFace',
  'fill factor': 'fillFactor',
};

/** The shape keyword of a part; null after the fact is noted that there is none, or more than one. */
export function shapeName(
  item: Item,
  notes: Notes,
): { readonly name: ShapeName; readonly clause: BoundClause } | Cause {
  const found = shapesUnder[item.keyword === 'less' ? 'less' : 'part'].filter((name) => item.clauses.has(name));
  const [name, second] = found;
  if (!name) {
    if (item.opens.length) return because('A line of it cannot be read.', item.at);
    return notes.add(
      'clause-missing',
      item.at,
      { item: label(item), clause: 'a shape', why: 'a shape with its sizes, or `item` with its weight' },
      `${label(item)} has no shape.`,
    );
  }
  const clause = item.clauses.get(name)?.[0] as BoundClause;
  if (!second) return { name, clause };
  const other = item.clauses.get(second)?.[0] as BoundClause;
  return notes.add(
    'stated-twice',
    other.keywordAt,
    { name: `the shape of ${label(item)}`, place: `"${name}"` },
    `${label(item)} has two shapes.`,
    [{ at: clause.keywordAt, says: 'stated here' }],
  );
}

/** The shape with its sizes, or what is missing. `through` is the depth of a cut-out that states none. */
export function readShape(item: Item, plan: BoundPlan, notes: Notes, through: number | null = null): ShapeGiven {
  const found = shapeName(item, notes);
  if ('what' in found) return { name: null, because: [found] };
  const { name, clause } = found;
  const causes = [...strangeTo(item, name, notes)];
  const ends = causes.length ? null : endsOf(item);
  if (!clause.value) causes.push(because(`The sizes of ${label(item)} are not known.`, clause.at));
  else if (clause.value.kind === 'unknown') causes.push(notYet(`The sizes of ${label(item)} are`, clause.at));
  const sizes: Record<string, Quantity> = {};
  for (const [word, need] of sizeClauses[name]) {
    if (word === 'length' && hasEnds(item)) {
      if (ends && 'because' in ends) causes.push(...ends.because);
      else if (ends) sizes.length = ends.length;
      continue;
    }
    const state = given(item, word);
    const due = need.need === 'always' || (word === 'depth' && through === null && state.state === 'absent');
    if (
      need.takes === 'word' ||
      need.takes === 'label' ||
      need.takes === 'points' ||
      need.takes === 'point' ||
      need.takes === 'designation' ||
      (word === 'size' && name === 'item')
    ) {
      const value = item.clauses.get(word)?.[0]?.value;
      if (due && (!item.clauses.has(word) || value?.kind === 'none'))
        causes.push(missing(item, name, word, need.help, notes));
      else if (item.clauses.get(word)?.some((one) => !one.value))
        causes.push(because(`${word} of ${label(item)} could not be read.`, item.at));
      else if (item.clauses.get(word)?.some((one) => one.value?.kind === 'unknown'))
        causes.push(notYet(`${word} of ${label(item)} is`, item.clauses.get(word)?.[0]?.at ?? item.at));
      else causes.push(...otherWord(item, word, need, notes));
    } else if (state.state === 'known') {
      const fits = ofShape(item, word, state.quantity, need.measures ?? 'any', notes);
      if ('what' in fits) causes.push(fits);
      else sizes[sizeNames[word] ?? word] = fits;
    } else if (state.state === 'open') {
      const sides = clauseSides(item, word);
      if (sides)
        sides.forEach((side, i) => {
          sizes[`${sizeNames[word] ?? word}${i}`] = side;
        });
      else causes.push(...state.because);
    } else if (due) causes.push(missing(item, name, word, need.help, notes));
  }
  if (item.clauses.has('along')) {
    const bend = given(item, 'bend radius');
    if (bend.state === 'known') sizes.bendRadius = bend.quantity;
    else if (bend.state === 'open') causes.push(...bend.because);
  }
  if (causes.length) return { name, because: causes };
  const read = finish(item, plan, name, clause, sizes, through, notes);
  const corners = ends && 'corners' in ends ? ends.corners : null;
  return corners && !('because' in read) ? ledAlong(read, corners) : read;
}

/** A size that is due; said only where it cannot stand in what could not be read. */
export const missing = (item: Item, shape: string, word: string, why: string, notes: Notes): Cause =>
  item.opens.length
    ? because('A line of it cannot be read.', item.at)
    : notes.add(
        'clause-missing',
        item.clauses.get(shape)?.[0]?.keywordAt ?? item.at,
        { item: `${shape} of ${label(item)}`, clause: word, why },
        `${label(item)} has no ${word}.`,
      );

/** Clauses that belong to other shapes than this one: what they were to say is lost, so that nobody knows what the part weighs. */
export const strangeTo = (item: Item, name: ShapeName, notes: Notes): readonly Cause[] => [
  ...foreign(item, name, notes),
  ...endsFaults(item, name, notes),
];

function clauseSides(item: Item, word: string): readonly Quantity[] | null {
  const value = item.clauses.get(word)?.[0]?.value;
  return value?.kind === 'size' ? value.sides : null;
}

/** Sizes behind the keyword itself, tables, and the builder of the body. */
function finish(
  item: Item,
  plan: BoundPlan,
  name: ShapeName,
  clause: BoundClause,
  sizes: Record<string, Quantity>,
  through: number | null,
  notes: Notes,
): ShapeGiven {
  const value = clause.value as NonNullable<BoundClause['value']>;
  const done: Done = (make, source = '', assumptions = [], listedDensity) => ({
    name,
    clause,
    sizes,
    make,
    source,
    assumptions,
    ...(listedDensity !== undefined && { listedDensity }),
  });
  const refuse = (cause: Cause): ShapeGiven => ({ name, because: [cause] });
  const sides = value.kind === 'size' ? value.sides : [];
  const axes = name === 'rectangular tube' ? ['y', 'z'] : ['x', 'y', 'z'];
  sides.forEach((side, i) => {
    sizes[axes[i] as string] = side;
  });
  switch (name) {
    case 'box':
    case 'plate':
    case 'envelope':
    case 'wedge':
    case 'cylinder':
    case 'rectangular tube':
    case 'sphere':
    case 'hollow sphere':
    case 'torus':
    case 'ellipsoid':
    case 'curved plate':
    case 'cylinder segment':
    case 'elbow':
    case 'hemispherical head':
      return done(
        (s) => ({ kind: name, ...s }) as unknown as Shape,
        '',
        name === 'envelope' ? ['the whole envelope is full: an upper bound'] : [],
      );
    case 'cone':
    case 'paraboloid':
    case 'frustum':
    case 'spherical cap':
    case 'tapered tube':
    case 'conical head':
      return notRound(sizes, clause, refuse, notes) ?? done((s) => ({ kind: name, ...s }) as unknown as Shape);
    case 'tube': {
      if ('wall' in sizes === 'bore' in sizes)
        return refuse(
          notes.add(
            'clause-missing',
            clause.keywordAt,
            {
              item: `tube of ${label(item)}`,
              clause: 'wall',
              why: 'the thickness of its wall, or its `bore`, not both',
            },
            'It needs a wall or a bore.',
          ),
        );
      return done((s) => ({ kind: 'tube', ...s }) as unknown as Shape);
    }
    case 'pyramid': {
      if (!('base0' in sizes) || 'top' in sizes)
        return refuse(
          notes.add(
            'dimension-mismatch',
            clause.at,
            { clause: 'base', wanted: 'two sides, joined by x', text: 'one figure', found: 'one length', sum: false },
            'A pyramid takes two sides.',
          ),
        );
      return done(
        (s) =>
          ({
            kind: 'pyramid',
            base: [s.base0, s.base1],
            ...('top0' in s && { top: [s.top0, s.top1] }),
            height: s.height,
          }) as unknown as Shape,
      );
    }
    case 'weld':
      return weld(item, sizes, clause, done, refuse, notes);
    case 'coil':
      return coil(sizes, done);
    case 'heap':
      return heap(item, sizes, clause, done, refuse, notes);
    case 'hollow core':
      return done(hollowCore);
    case 'prism':
      return prism(item, done);
    case 'turned':
      return done(() => ({ kind: 'turned', outline: pointsOf(item, 'outline').flat() }));
    case 'mesh':
      return drawing(item, clause, plan, done, refuse, notes);
    case 'dished head':
      return dishedHead(item, sizes, clause, done, refuse, notes);
    case 'section':
    case 'pipe':
    case 'bar':
      return member(item, name, clause, sizes, done, refuse, notes);
    case 'rope':
    case 'chain':
      return lineOf(item, name, clause, sizes, done, refuse, notes);
    case 'sheet':
      return sheet(item, clause, sizes, done, refuse, notes);
    case 'flange':
    case 'pipe elbow':
    case 'pipe tee':
    case 'pipe reducer':
    case 'pipe cap':
    case 'nozzle':
    case 'manway':
    case 'bolt':
    case 'bolt set':
    case 'nut':
    case 'washer':
      return pipework(item, name, clause, sizes, notes);
    case 'hole':
      return done((s) => ({ kind: 'hole', diameter: s.diameter, depth: s.depth ?? through }) as Shape);
    case 'opening':
      return done((s) => ({ kind: 'opening', x: s.x, y: s.y, depth: s.depth ?? through }) as Shape);
    case 'item':
    case 'liquid':
      return done(() => {
        throw new Error('items and liquids have no body of their own');
      });
  }
}

export type Done = (
  make: ShapeRead['make'],
  source?: string,
  assumptions?: readonly string[],
  listedDensity?: number,
) => ShapeRead;
export type Refuse = (cause: Cause) => ShapeGiven;

/** Corners line by line. */
const pointsOf = (item: Item, word: string) =>
  (item.clauses.get(word) ?? []).map((one) => (one.value?.kind === 'points' ? one.value.points : []));

function prism(item: Item, done: Done): ShapeGiven {
  const outline = pointsOf(item, 'outline').flat();
  const holes = pointsOf(item, 'hole');
  return done((s) => ({ kind: 'prism', outline, holes, length: s.length }) as unknown as Shape);
}

/** Every size at one of its ends. */
export const sizesOf = (
  sizes: Readonly<Record<string, Quantity>>,
  pick: (q: Quantity) => number,
): Record<string, number> => Object.fromEntries(Object.entries(sizes).map(([key, q]) => [key, pick(q)]));
