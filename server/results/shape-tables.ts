// Sections, pipes, bars, ropes, chains and sheets: what the tables of the trade say of a designation.
import {
  bar,
  construction,
  constructionsOf,
  ductileIron,
  isPlastic,
  material,
  nearestBars,
  nearestConstructions,
  nearestPipes,
  nearestSchedules,
  nearestSections,
  nearestSheets,
  type Pipe,
  pipe,
  pipeSchedules,
  section,
  sheet as sheetListed,
} from '../catalog/index.ts';
import type { Shape } from '../mechanics/index.ts';
import { type BoundClause, type Item, textOf } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { Notes } from './notes.ts';
import { type Done, missing, type Refuse, type ShapeGiven } from './shape.ts';
import { label } from './shape-clauses.ts';

type Near = { readonly designation: string; readonly massPerLength: number };

interface Asked {
  readonly item: Item;
  readonly clause: BoundClause;
  readonly done: Done;
  readonly refuse: Refuse;
  readonly notes: Notes;
  /** Whether the plan states a weight per length of its own. */
  readonly stated: boolean;
  /** Where that weight is from. */
  readonly from: string;
}

/** A section, pipe or bar by its designation; a bar also by its diameter. */
export function member(
  item: Item,
  name: 'section' | 'pipe' | 'bar',
  clause: BoundClause,
  sizes: Record<string, Quantity>,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const value = clause.value as NonNullable<BoundClause['value']>;
  const stated = 'unit weight' in sizes;
  const from = textOf(item, 'from') ?? 'typed here';
  const asked: Asked = { item, clause, done, refuse, notes, stated, from };
  if (value.kind === 'quantity') {
    sizes.diameter = value.quantity;
    if (name !== 'bar') {
      const { row, from: start, to: end } = clause.valueAt;
      const written = row.text.slice(start, end);
      return refuse(unknown(asked, written, `${name}s`, name === 'pipe' ? named(nearestPipes(written)) : []));
    }
    return done((s) => barOf(s.length, s.diameter, s['unit weight']), stated ? from : '');
  }
  const designation = value.kind === 'text' ? value.text : '';
  if (name === 'section') return sectionOf(asked, designation);
  if (name === 'bar') return listedBar(asked, designation);
  return pipeOf(asked, designation);
}

/** A designation that no table has, as a cause. */
function unknown(
  { clause, notes }: Asked,
  designation: string,
  table: string,
  nearest: readonly { readonly name: string; readonly massPerLength: number }[],
  what = `${designation} is not in the table.`,
  at = clause.valueAt,
) {
  return notes.add('size-unknown', at, { designation, table, nearest }, what);
}

const named = (nearest: readonly Near[]) =>
  nearest.map(({ designation, massPerLength }) => ({ name: designation, massPerLength }));

/** Whether nothing is said of what a member is made of. */
const unsaid = (item: Item): boolean => !item.clauses.has('of') && !item.clauses.has('density');

const barOf = (length: number | undefined, diameter: number | undefined, massPerLength: number | undefined): Shape =>
  ({ kind: 'bar', length, diameter, ...(massPerLength && { massPerLength }) }) as Shape;

function sectionOf(asked: Asked, designation: string): ShapeGiven {
  const found = section(designation);
  if (!found) return asked.refuse(unknown(asked, designation, 'sections', named(nearestSections(designation))));
  const { depth, width } = found;
  return asked.done(
    (s) =>
      ({
        kind: 'section',
        length: s.length,
        depth,
        width,
        massPerLength: s['unit weight'] || found.massPerLength,
      }) as Shape,
    asked.stated ? asked.from : `${found.designation}: ${found.source}`,
    ['centre at the middle of its box'],
  );
}

function listedBar(asked: Asked, designation: string): ShapeGiven {
  const found = bar(designation);
  if (!found) return asked.refuse(unknown(asked, designation, 'bars', named(nearestBars(designation))));
  const listed = unsaid(asked.item) ? found.massPerLength : undefined;
  return asked.done(
    (s) => barOf(s.length, found.diameter, s['unit weight'] || listed),
    `${found.designation}: ${found.source}`,
  );
}

function pipeOf(asked: Asked, designation: string): ShapeGiven {
  const { item, notes, refuse } = asked;
  const schedules = pipeSchedules(designation);
  if (!schedules.length) return refuse(unknown(asked, designation, 'pipes', named(nearestPipes(designation))));
  const schedule = textOf(item, 'schedule');
  if (!schedule) return refuse(missing(item, 'pipe', 'schedule', `one of ${schedules.join(', ')}`, notes));
  const of = textOf(item, 'of') ?? '';
  const found = pipe(designation, schedule, of);
  if (!found) {
    const nearest = nearestSchedules(designation, schedule, of).map((near) => ({
      name: `schedule ${near.schedule}`,
      massPerLength: near.massPerLength,
    }));
    const at = item.clauses.get('schedule')?.[0]?.valueAt;
    const what = `Schedule ${schedule} is not in the table.`;
    const made = pipe(designation, schedule) ? ` of ${of}` : '';
    return refuse(unknown(asked, `${designation} schedule ${schedule}${made}`, 'pipes', nearest, what, at));
  }
  if (found.made && isPlastic(found.made) && unsaid(item))
    return refuse(missing(item, 'pipe', 'of', 'the plastic it is of, such as `of HDPE` or `of PVC`', notes));
  return listedPipe(asked, found, of);
}

/** A pipe of a table: by the table's mass where it is of what the table weighs, else by its sizes; one with a socket and a lining always has those. */
function listedPipe({ item, done }: Asked, found: Pipe, of: string): ShapeGiven {
  const { outside, wall, made, says } = found;
  const own = made !== undefined && !item.clauses.has('density') && material(of)?.name === made;
  const listed = unsaid(item) || own || made === ductileIron ? found.massPerLength : undefined;
  return done(
    (s) => {
      const massPerLength = s['unit weight'] || listed;
      return { kind: 'pipe', length: s.length, outside, wall, ...(massPerLength && { massPerLength }) } as Shape;
    },
    `${found.designation} schedule ${found.schedule}: ${found.source}`,
    listed !== undefined && says ? [says] : [],
    listed === undefined ? undefined : found.density,
  );
}

/** Rope or chain by the length: its diameter and its construction. */
export function lineOf(
  item: Item,
  name: 'rope' | 'chain',
  clause: BoundClause,
  sizes: Record<string, Quantity>,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const across = clause.value?.kind === 'quantity' ? clause.value.quantity : undefined;
  if (!across) return refuse(missing(item, name, name, 'its diameter', notes));
  sizes.diameter = across;
  const said = textOf(item, 'construction');
  const [heaviest] = constructionsOf(name);
  const found = said === null ? heaviest : construction(name, said);
  const stated = 'unit weight' in sizes;
  const from = textOf(item, 'from') ?? 'typed here';
  if (!found) {
    const nearest = nearestConstructions(name, said ?? '').map((each) => ({
      name: each.construction,
      massPerLength: each.factor * across.value ** 2,
    }));
    const at = item.clauses.get('construction')?.[0]?.valueAt ?? clause.valueAt;
    const facts = { designation: said ?? '', table: `${name} constructions`, nearest };
    return refuse(notes.add('size-unknown', at, facts, `${said} is not in the table.`));
  }
  return done(
    (s) => {
      const { length, diameter = Number.NaN } = s;
      const massPerLength = s['unit weight'] || found.factor * diameter ** 2;
      const wide = diameter * found.across;
      return { kind: 'section', length, depth: wide, width: wide, massPerLength } as Shape;
    },
    stated ? from : `${name} ${found.construction}: ${found.source}`,
    said === null && !stated
      ? [`of the heaviest construction known here, ${found.construction}, since none is said`]
      : [],
  );
}

/** Something flat by its area: of a kind that a table has, or of a weight per area that the plan states. */
export function sheet(
  item: Item,
  clause: BoundClause,
  sizes: Readonly<Record<string, Quantity>>,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const sides = 'x' in sizes;
  if (!sides && !('area' in sizes)) return refuse(missing(item, 'sheet', 'area', 'length × width, or its area', notes));
  if (sides && 'area' in sizes) {
    const at = item.clauses.get('area')?.[0]?.at ?? clause.at;
    const facts = { name: `the area of ${label(item)}`, place: '"sheet"' };
    return refuse(
      notes.add('stated-twice', at, facts, 'Its area is stated twice.', [{ at: clause.at, says: 'stated here' }]),
    );
  }
  if (clause.value?.kind === 'quantity')
    return refuse(
      notes.add(
        'dimension-mismatch',
        clause.valueAt,
        { clause: 'sheet', wanted: 'two sides, joined by x', text: 'one figure', found: 'one length', sum: false },
        'A sheet takes two sides.',
      ),
    );
  const weight = weightPerArea(item, sizes, notes);
  if ('what' in weight) return refuse(weight);
  return done(
    (s) => {
      const side = Math.sqrt(s.area ?? 0);
      return {
        kind: 'sheet',
        x: s.x ?? side,
        y: s.y ?? side,
        ...(s.area !== undefined && { area: s.area }),
        massPerArea: s['unit weight'] ?? weight.listed,
      } as Shape;
    },
    weight.source,
    sides ? [] : ['taken as a square of that area'],
  );
}

/** What a square metre of a sheet weighs by the table of its kind, where the plan does not state it; or why that is not known. */
function weightPerArea(
  item: Item,
  sizes: Readonly<Record<string, Quantity>>,
  notes: Notes,
): Cause | { readonly listed: number | undefined; readonly source: string } {
  const kind = textOf(item, 'kind');
  if ('unit weight' in sizes) return { listed: undefined, source: textOf(item, 'from') ?? 'typed here' };
  if (kind === null)
    return missing(
      item,
      'sheet',
      'unit weight',
      'its weight per area, or its `kind`, such as `kind floor plate 6 mm`',
      notes,
    );
  const found = sheetListed(kind);
  if (found) return { listed: found.massPerArea, source: `${found.designation}: ${found.source}` };
  const nearest = nearestSheets(kind).map(({ designation, massPerArea }) => ({ name: designation, massPerArea }));
  const at = item.clauses.get('kind')?.[0]?.valueAt ?? item.at;
  return notes.add('size-unknown', at, { designation: kind, table: 'sheets', nearest }, `${kind} is not in the table.`);
}
