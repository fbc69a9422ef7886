// Members from point to point, or along a line: `start` and `end`, or `along`, give a member its length and its place.
import {
  add,
  axisRotation,
  directed,
  identity,
  type Mat3,
  type Member,
  multiply,
  norm,
  scale,
  subtract,
  type Vec3,
} from '../mechanics/index.ts';
import type { BoundClause, Item } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { dimensions } from '../quantities/dimension.ts';
import { type Quantity, quantity } from '../quantities/quantity.ts';
import { because, type Notes } from './notes.ts';
import type { ShapeRead } from './shape.ts';

/** Shapes that run straight, with the axis along which they do; the datum point of each is in its middle. */
const straight: Readonly<Record<string, 'x' | 'z'>> = {
  section: 'x',
  pipe: 'x',
  bar: 'x',
  rope: 'x',
  chain: 'x',
  'rectangular tube': 'x',
  tube: 'z',
  cylinder: 'z',
  prism: 'z',
  weld: 'x',
};

/** Where a member lies between its ends; `slack` is half the tolerance of its middle, along each axis. */
export interface Ends {
  readonly length: Quantity;
  readonly middle: Vec3;
  readonly R: Mat3;
  readonly slack: Vec3;
  /** The corners it is led through; null of one that runs straight from end to end. */
  readonly corners: readonly Vec3[] | null;
}
export type EndsGiven = Ends | { readonly because: readonly Cause[] };

const words = ['start', 'end', 'along'] as const;
export const hasEnds = (item: Item): boolean => words.some((word) => item.clauses.has(word));

/** Both ends as written, or why they are not known. Null where none is written. */
export function endsOf(item: Item): EndsGiven | null {
  if (!hasEnds(item)) return null;
  if (item.clauses.has('along')) return lineOf(item);
  const points = (['start', 'end'] as const).map((word) => pointAt(item, word));
  const causes = points.flatMap((point) => ('because' in point ? point.because : []));
  const [start, end] = points;
  if (causes.length || !start || !end || 'because' in start || 'because' in end) return { because: causes };
  const along = subtract(end.at, start.at);
  const length = norm(along);
  if (!(length > 0)) return { because: [because(`Both ends of ${label(item)} are one point.`, item.at)] };
  const loose = norm(start.slack) + norm(end.slack);
  const name = Object.keys(straight).find((one) => item.clauses.has(one)) ?? 'bar';
  const R = directed(scale(along, 1 / length));
  return {
    length: quantity(length, dimensions.length, Math.max(length - loose, 0), length + loose),
    middle: scale(add(start.at, end.at), 0.5),
    R: straight[name] === 'z' ? multiply(R, axisRotation('x')) : R,
    slack: scale(add(start.slack, end.slack), 0.5),
    corners: null,
  };
}

/** The corners of `along`, line by line; they stand in the axes of what the part stands in, so it is neither turned nor moved. */
function lineOf(item: Item): EndsGiven {
  const clauses = item.clauses.get('along') ?? [];
  const lost = clauses.find((clause) => clause.value?.kind !== 'line');
  if (lost) {
    const asked = lost.value?.kind === 'unknown';
    const what = asked ? `along of ${label(item)} is not known yet (?).` : `along of ${label(item)} could not be read.`;
    return { because: [{ ...because(what, lost.at), ...(asked && { deliberate: true }) }] };
  }
  const lines = clauses.flatMap(({ value }) => (value?.kind === 'line' ? [value] : []));
  const corners = lines.flatMap((line) => line.corners);
  const slack = Math.max(...lines.map((line) => line.slack));
  const { length, moved } = drawn(corners);
  const loose = Math.sqrt(3) * slack * moved;
  return {
    length: quantity(length, dimensions.length, Math.max(length - loose, 0), length + loose),
    middle: [0, 0, 0],
    R: identity,
    slack: [slack, slack, slack],
    corners,
  };
}

/** The length of a line, and how much it grows where each corner moves by one the way that lengthens it most (2 sin of half its angle). */
function drawn(corners: readonly Vec3[]): { readonly length: number; readonly moved: number } {
  const sides = corners.slice(1).map((corner, i) => subtract(corner, corners[i] as Vec3));
  const along = sides.map((side) => scale(side, 1 / (norm(side) || 1)));
  const turned = along.slice(1).map((side, i) => norm(subtract(side, along[i] as Vec3)));
  return { length: sides.reduce((sum, side) => sum + norm(side), 0), moved: turned.reduce((sum, one) => sum + one, 2) };
}

/** A member as it is led through its corners, mitred or bent; its own length is then that of its line. */
export const ledAlong = (read: ShapeRead, corners: readonly Vec3[]): ShapeRead => ({
  ...read,
  make: ({ bendRadius, ...sizes }) => {
    const of = read.make(sizes) as Member;
    const longer = (sizes.length as number) - drawn(corners).length;
    return { kind: 'swept', of, corners, longer, ...(bendRadius !== undefined && { bendRadius }) };
  },
});

const label = (item: Item): string => item.names[0] ?? item.keyword;

function pointAt(item: Item, word: 'start' | 'end'): { at: Vec3; slack: Vec3 } | { because: readonly Cause[] } {
  const clause = item.clauses.get(word)?.[0];
  if (!clause) return { because: [because(`${label(item)} has no ${word}.`, item.at)] };
  if (clause.value?.kind !== 'point')
    return { because: [because(`${word} of ${label(item)} could not be read.`, clause.at)] };
  const cells = clause.value.at;
  const known = cells.flatMap((cell) => (cell && typeof cell !== 'string' ? [cell] : []));
  if (known.length !== 3)
    return {
      because: [{ ...because(`${word} of ${label(item)} is not known yet (?).`, clause.at), deliberate: true }],
    };
  return {
    at: known.map((cell) => cell.value) as unknown as Vec3,
    slack: known.map((cell) => (cell.high - cell.low) / 2) as unknown as Vec3,
  };
}

/** What does not go with `start` and `end`, or `along`: one end alone, both ways, a shape that does not run straight, a length or turn of its own. */
export function endsFaults(item: Item, shape: string, notes: Notes): readonly Cause[] {
  if (!hasEnds(item)) return [];
  const said = words.flatMap((word) => item.clauses.get(word)?.[0] ?? []);
  const clause = said[0] as BoundClause;
  if (!(shape in straight))
    return [
      notes.add(
        'place-wrong',
        clause.keywordAt,
        { keyword: clause.keyword, parent: shape, parents: Object.keys(straight) },
        `${clause.keyword} does not belong to ${shape}.`,
      ),
    ];
  const line = item.clauses.has('along');
  const other = clause.keyword === 'start' ? 'end' : 'start';
  if (!line && !item.clauses.has(other))
    return [
      notes.add(
        'clause-missing',
        clause.keywordAt,
        { item: label(item), clause: other, why: 'a member from point to point has two ends' },
        `${label(item)} has no ${other}.`,
      ),
    ];
  const ends = line ? ['start', 'end'] : [];
  return [...ends, 'length', 'at', 'on', 'against', 'inside', 'axis', 'turn', 'circle'].flatMap((word) => {
    const twice = item.clauses.get(word)?.[0];
    if (!twice) return [];
    const what = word === 'length' ? 'length' : 'place';
    const stated = line ? (item.clauses.get('along')?.[0] as BoundClause) : clause;
    return [
      notes.add(
        'stated-twice',
        twice.keywordAt,
        { name: `the ${what} of ${label(item)}`, place: `"${stated.keyword}"` },
        `${label(item)} has two ${what}s.`,
        [{ at: stated.keywordAt, says: 'stated here' }],
      ),
    ];
  });
}
