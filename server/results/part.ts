// One part in its own axes: mass, volume and centre of one copy, with what is cut out taken off. Kept by item while its materials stay.
import { type Impossible, type Shape, solid, type Vec3, type Working, working } from '../mechanics/index.ts';
import { type BoundPlan, given, has, type Item, openLines, type Thing, textOf } from '../plan/index.ts';
import { type Cause, type Derived, type Input, known, open } from '../quantities/derived.ts';
import { type ShapeRow, shapes } from '../vocabulary/index.ts';
import { cutouts } from './cutouts.ts';
import { endsOf, lessCut, massOf, withAllowance, withDavit } from './mass.ts';
import { densityOf } from './material.ts';
import { because, Notes } from './notes.ts';
import { withSteel } from './reinforcement.ts';
import { readShape, type ShapeRead, shapeName, sizesOf, strangeTo } from './shape.ts';
import type { ResultProblem } from './types.ts';

export interface Part {
  readonly kind: 'solid' | 'item' | 'liquid' | 'open';
  readonly shapeName: string;
  readonly mass: Derived; // one copy, kg; a liquid's is worked out where it lies
  readonly volume: Derived | null; // one copy, m3; null: its shape has none
  readonly density: Derived | null;
  readonly centre: Vec3 | null; // from its datum point, own axes
  readonly centreSlack: Vec3; // half the tolerance of a stated centre
  readonly shape: Shape | null; // its body, for its box; null: not known, or a point
  readonly point: boolean; // an item without size
  readonly problems: readonly ResultProblem[];
}

interface Kept {
  readonly materials: readonly Thing[];
  readonly drawing: Uint8Array | null | undefined;
  readonly part: Part;
}
const kept = new WeakMap<Item, Kept>();

/** The part; the same object as before while the item, its drawing and the plan's own materials are the same. */
export function partOf(item: Item, plan: BoundPlan): Part {
  const materials = plan.names.kind('material');
  const drawing = plan.attached.get(item)?.bytes;
  const before = kept.get(item);
  if (before && before.drawing === drawing && sameMaterials(before.materials, materials)) return before.part;
  const part = work(item, plan);
  kept.set(item, { materials, drawing, part });
  return part;
}

const sameMaterials = (a: readonly Thing[], b: readonly Thing[]): boolean =>
  a === b || (a.length === b.length && a.every(({ item }, i) => item === b[i]?.item));

/** Shapes that a table weighs. */
const tabled: ReadonlySet<string> = new Set(['section', 'sheet', 'pipe', 'bar', 'rope', 'chain']);

function work(item: Item, plan: BoundPlan): Part {
  const notes = new Notes();
  const found = shapeName(item, notes);
  if ('what' in found) return opened(item, '', [found], notes);
  if (found.name === 'item' || found.name === 'liquid') {
    const strange = strangeTo(item, found.name, notes);
    if (strange.length) return opened(item, found.name, strange, notes);
  }
  if (found.name === 'item') return itemOf(item, notes);
  if (found.name === 'liquid')
    return {
      ...opened(item, 'liquid', [because('Where it lies is worked out with the load.', item.at)], notes),
      kind: 'liquid',
      density: densityOf(item, plan, notes),
      problems: notes.problems,
    };
  const read = readShape(item, plan, notes);
  const table = read.name !== null && tabled.has(read.name);
  const steelUnlessSaid = read.name !== null && (shapes[read.name] as ShapeRow).material === 'steel unless said';
  const steel = steelUnlessSaid
    ? { name: ('because' in read ? undefined : read.material) ?? 'carbon steel' }
    : undefined;
  const needsDensity =
    read.name !== 'sheet' &&
    (!table ||
      has(item, 'of') ||
      has(item, 'density') ||
      has(item, 'reinforcement') ||
      has(item, 'moisture') ||
      (read.name === 'bar' && !('because' in read) && !read.source));
  const said = needsDensity ? densityOf(item, plan, notes, steel) : null;
  const density =
    said && !('because' in read) && read.listedDensity !== undefined ? asListed(read, read.listedDensity) : said;
  if ('because' in read) return { ...opened(item, read.name ?? '', read.because, notes), density };
  return solidOf(item, read, density, plan, notes);
}

/** The density that a table weighs its own material by. */
const asListed = ({ source, clause }: ShapeRead, density: number): Derived =>
  known(density, 'kg/m3', { source, at: clause.at });

function opened(item: Item, shape: string, causes: readonly Cause[], notes: Notes): Part {
  return {
    kind: 'open',
    shapeName: shape,
    mass: open('kg', causes, { at: item.at }),
    volume: open('m3', causes, { at: item.at }),
    density: null,
    centre: null,
    centreSlack: [0, 0, 0],
    shape: null,
    point: false,
    problems: notes.problems,
  };
}

function itemOf(item: Item, notes: Notes): Part {
  for (const less of item.children)
    if (less.keyword === 'less')
      notes.add('place-wrong', less.at, { keyword: 'less', parent: 'item', parents: ['shapes with a volume'] }, '');
  const weight = given(item, 'item');
  const at = item.clauses.get('item')?.[0]?.at ?? item.at;
  const by = textOf(item, 'by');
  const from = textOf(item, 'from');
  if (!by && !from && !item.clauses.has('by') && !item.opens.length)
    notes.add('evidence-missing', at, { number: item.names[0] ?? 'This weight' }, '');
  const source = [by && `by ${by}`, from].filter(Boolean).join(', ') || 'typed here';
  const lines = openLines(item);
  const mass = lines.length
    ? open('kg', lines, { at })
    : weight.state === 'known'
      ? known(weight.quantity.value, 'kg', { source, at }, weight.quantity.low, weight.quantity.high)
      : open('kg', weight.state === 'open' ? weight.because : [because('Its weight is not given.', at)], { at });
  const size = item.clauses.get('size')?.[0];
  const sides = size?.value?.kind === 'size' ? size.value.sides : null;
  const shape: Shape | null = sides
    ? { kind: 'box', x: sides[0]?.value ?? 0, y: sides[1]?.value ?? 0, z: sides[2]?.value ?? 0 }
    : null;
  const centreClause = item.clauses.get('centre')?.[0];
  const written = centreClause?.value?.kind === 'point' ? centreClause.value.at : null;
  const cells = written?.map((cell) => (cell && typeof cell !== 'string' ? cell.value : null)) ?? [];
  const centre = centreClause
    ? cells.length === 3 && !cells.includes(null)
      ? (cells as unknown as Vec3)
      : null
    : ([0, 0, 0] as Vec3);
  return {
    kind: 'item',
    shapeName: 'item',
    mass,
    volume: null,
    density: null,
    centre,
    centreSlack: (written ?? []).map((cell) =>
      cell && typeof cell !== 'string' ? (cell.high - cell.low) / 2 : 0,
    ) as unknown as Vec3,
    shape,
    point: !size,
    problems: notes.problems,
  };
}

/** A body of material: volume by its closed form, less what is cut out, times density; or a table's mass. */
function solidOf(item: Item, read: ShapeRead, density: Derived | null, plan: BoundPlan, notes: Notes): Part {
  const shape = read.make(sizesOf(read.sizes, (q) => q.value));
  const body = solid(shape);
  if ('impossible' in body) return { ...opened(item, read.name, [cannotBe(item, read, body, notes)], notes), density };
  const taken = cutouts(item, shape, plan, notes);
  const nothingLeft = body.volume !== undefined && taken.volume > body.volume * (1 - 1e-6);
  if (nothingLeft) noteNothingLeft(item, taken.volume, notes);
  const cut = nothingLeft ? { volume: 0, moment: [0, 0, 0] as const, unplaced: taken.unplaced } : taken;
  const lines = [...openLines(item), ...item.children.flatMap(openLines)];
  const reach = endsOf(read, body);
  if ('impossible' in reach)
    return { ...opened(item, read.name, [cannotBe(item, read, reach, notes)], notes), density };
  const [low, high] = reach.volume;
  const step = working(shape);
  const inputs = inputsOf(step, item, read.source || 'typed here');
  const at = read.clause.at;
  const origin = {
    formula: step?.formula ?? '',
    inputs,
    source: read.source || 'closed form',
    assumptions: read.assumptions,
    at,
  };
  const gross =
    body.volume === undefined
      ? null
      : known(
          body.volume,
          'm3',
          step?.gives === 'volume' ? origin : { ...origin, formula: '', inputs: [] },
          Math.min(low, body.volume),
          Math.max(high, body.volume),
        );
  const volume = gross && (lines.length ? open('m3', lines, { at }) : lessCut(gross, cut.volume, origin));
  const whole = volume?.value !== null && volume?.value !== undefined && body.volume ? volume.value : null;
  const left =
    cut.volume > 0 && whole !== null && body.volume ? minus(body.centre, body.volume, cut.moment, whole) : body.centre;
  const centre = cut.unplaced ? null : left;
  const bare = lines.length
    ? open('kg', lines, { at })
    : massOf(body, reach.mass, volume, density, origin, read, cut.volume);
  const mass = withSteel(item, withDavit(withAllowance(bare, read), item), textOf(item, 'from') ?? 'typed here');
  return {
    kind: 'solid',
    shapeName: read.name,
    mass,
    volume: volume ?? null,
    density,
    centre,
    centreSlack: [0, 0, 0],
    shape,
    point: false,
    problems: notes.problems,
  };
}

/** The figures that go into a formula; those worked out themselves with their own. */
function inputsOf(step: Working | undefined, item: Item, source: string): readonly Input[] {
  return Object.entries(step?.inputs ?? {}).map(([label, value]) => {
    const piece = step?.from?.[label];
    return {
      label,
      value: piece
        ? known(value, 'm3', { at: item.at, source, formula: piece.formula, inputs: inputsOf(piece, item, source) })
        : known(value, units[label] ?? 'm', { at: item.at, source }),
    };
  });
}

/** Notes why a shape cannot be made, with the clauses at odds. */
function cannotBe(item: Item, read: ShapeRead, body: Impossible, notes: Notes): Cause {
  const related = body.clauses
    .flatMap((word) => item.clauses.get(clauseWord(word))?.[0] ?? [])
    .map((clause) => ({ at: clause.at, says: clause.keyword }));
  const facts = { shape: read.name, reason: body.reason, figures: body.figures };
  const what = `${item.names[0] ?? read.name} cannot be made.`;
  return notes.add('geometry-impossible', read.clause.keywordAt, facts, what, related);
}

/** Cut-outs that leave nothing of the part take nothing: no part weighs nothing. */
function noteNothingLeft(item: Item, volume: number, notes: Notes): void {
  const less = item.children.find((child) => child.keyword === 'less') ?? item;
  const facts = { cutout: 'cut-out', volume, why: 'larger' as const, other: null };
  notes.add('cutout-outside', less.at, facts, '', [{ at: item.nameAt, says: 'the part' }]);
}

const clauseWord = (size: string): string => size.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
const units: Readonly<Record<string, Derived['unit']>> = {
  massPerLength: 'kg/m',
  massPerArea: 'kg/m2',
  angle: 'rad',
  arc: 'rad',
  bevel: 'rad',
  excess: '1',
  prepared: '1',
  fillFactor: '1',
  cores: '1',
  knuckleAngle: 'rad',
  areaFactor: '1',
  area: 'm2',
  enclosed: 'm3',
  nuts: '1',
  washers: '1',
  bolts: '1',
};

const minus = (centre: Vec3, volume: number, moment: Vec3, rest: number): Vec3 =>
  [0, 1, 2].map((i) => ((centre[i] as number) * volume - (moment[i] as number)) / rest) as unknown as Vec3;
