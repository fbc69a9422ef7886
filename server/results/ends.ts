// Straight members from point to point: `start` and `end` give a member its length, its direction and its place.
import {
  add,
  axisRotation,
  cross,
  dot,
  type Mat3,
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
};

/** Where a member lies between its ends; `slack` is half the tolerance of its middle, along each axis. */
export interface Ends {
  readonly length: Quantity;
  readonly middle: Vec3;
  readonly R: Mat3;
  readonly slack: Vec3;
}
export type EndsGiven = Ends | { readonly because: readonly Cause[] };

export const hasEnds = (item: Item): boolean => item.clauses.has('start') || item.clauses.has('end');

/** Both ends as written, or why they are not known. Null where none is written. */
export function endsOf(item: Item): EndsGiven | null {
  if (!hasEnds(item)) return null;
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
  };
}

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

/** Own x along a direction, own z as far up as it goes; of an upright member own y along the parent's x, as `axis z` lays it. */
function directed(along: Vec3): Mat3 {
  const up: Vec3 = Math.hypot(along[0], along[1]) < 1e-9 ? [0, Math.sign(along[2]), 0] : [0, 0, 1];
  const square = subtract(up, scale(along, dot(up, along)));
  const z = scale(square, 1 / norm(square));
  const y = cross(z, along);
  return [along[0], y[0], z[0], along[1], y[1], z[1], along[2], y[2], z[2]];
}

/** What does not go with `start` and `end`: only one of them, a shape that does not run straight, a length or turn of its own. */
export function endsFaults(item: Item, shape: string, notes: Notes): readonly Cause[] {
  if (!hasEnds(item)) return [];
  const clause = (item.clauses.get('start') ?? item.clauses.get('end'))?.[0] as BoundClause;
  if (!(shape in straight))
    return [
      notes.add(
        'place-wrong',
        clause.keywordAt,
        { keyword: clause.keyword, parent: shape, parents: Object.keys(straight) },
        `${clause.keyword} does not belong to ${shape}.`,
      ),
    ];
  const other = clause.keyword === 'start' ? 'end' : 'start';
  if (!item.clauses.has(other))
    return [
      notes.add(
        'clause-missing',
        clause.keywordAt,
        { item: label(item), clause: other, why: 'a member from point to point has two ends' },
        `${label(item)} has no ${other}.`,
      ),
    ];
  return ['length', 'at', 'on', 'against', 'inside', 'axis', 'turn', 'circle'].flatMap((word) => {
    const twice = item.clauses.get(word)?.[0];
    if (!twice) return [];
    const what = word === 'length' ? 'length' : 'place';
    return [
      notes.add(
        'stated-twice',
        twice.keywordAt,
        { name: `the ${what} of ${label(item)}`, place: `"${clause.keyword}"` },
        `${label(item)} has two ${what}s.`,
        [{ at: clause.keywordAt, says: 'stated here' }],
      ),
    ];
  });
}
