// Tubes and pipes that something flat lies against: with both ends covered they are closed; standing on a cover they are a bowl that rain fills.
import {
  apply,
  type Box,
  boxOf,
  compose,
  norm,
  type Placement,
  type Shape,
  shifted,
  subtract,
  type Vec3,
} from '../mechanics/index.ts';
import type { Solid } from './solid.ts';

/** Shapes that may close an end; a ring, as a flange with a bore is, does not. */
const flat: ReadonlySet<Shape['kind']> = new Set(['plate', 'box', 'cylinder', 'prism']);
const mayClose = (shape: Shape): boolean => flat.has(shape.kind) || (shape.kind === 'flange' && shape.bore === 0);
/** Which own axis a hollow shape is open along. */
const along: Readonly<Partial<Record<Shape['kind'], 0 | 1 | 2>>> = {
  tube: 2,
  'tapered tube': 2,
  pipe: 0,
  'rectangular tube': 0,
};
const gap = 2e-3; // m, nearer than this a cover lies against an end

/** Says of a hollow part of a load whether flat parts of it close it, as far as all stand square to the load's axes. */
export function coversOf(solids: readonly Solid[]): (solid: Solid) => boolean {
  let covers: Boxes | null = null;
  return (solid) => {
    const { shape } = solid.part;
    if (!shape || !(shape.kind === 'swept' || shape.kind in along)) return false;
    covers ??= new Boxes(
      solids.flatMap((one) => (one.part.shape && mayClose(one.part.shape) ? boxesOf(one, one.part.shape) : [])),
    );
    return standing(solid).some((at) => shut(endsOf(shape, at), covers as Boxes));
  };
}

/** An open end: a box without thickness along the axis it is square to, and how far a cover may be from the outside of its rim. */
interface End {
  readonly box: Box;
  readonly lies: 0 | 1 | 2;
  readonly slack: number;
  readonly down: boolean; // what is in it would run out at once
}

/** Both ends in the load's axes; none where one is not square to them. */
function endsOf(shape: Shape, at: Placement): readonly End[] {
  if (shape.kind === 'swept') return ledEnds(shape, at);
  const axis = along[shape.kind] as 0 | 1 | 2;
  const lies = ([0, 1, 2] as const).find((row) => Math.abs(at.R[row * 3 + axis] as number) > square);
  if (lies === undefined) return [];
  const { min, max } = boxAt(shape, at);
  const slack = wallOf(shape) + gap;
  const cut = (end: number): Box => ({ min: setAt(min, lies, end), max: setAt(max, lies, end) });
  return [
    { box: cut(min[lies]), lies, slack, down: lies === 2 },
    { box: cut(max[lies]), lies, slack, down: false },
  ];
}

/** Of a line: its two ends, as wide each way as the section is at most. */
function ledEnds({ of, corners }: Extract<Shape, { kind: 'swept' }>, at: Placement): readonly End[] {
  const line = corners.map((corner) => apply(at, corner));
  const across = 'outside' in of ? of.outside : 'y' in of ? Math.max(of.y, of.z) : 0;
  const narrow = 'outside' in of ? of.outside : 'y' in of ? Math.min(of.y, of.z) : 0;
  const [first, last] = [line[0] as Vec3, line.at(-1) as Vec3];
  const ends = [
    [first, line[1] as Vec3, last],
    [last, line.at(-2) as Vec3, first],
  ] as const;
  return ends.flatMap(([end, next, other]): readonly End[] => {
    const way = subtract(next, end);
    const lies = ([0, 1, 2] as const).find((i) => Math.abs(way[i]) > square * norm(way));
    if (lies === undefined) return [];
    const half = (i: number): number => (i === lies ? 0 : across / 2);
    const box = { min: end.map((x, i) => x - half(i)), max: end.map((x, i) => x + half(i)) } as unknown as Box;
    const down = lies === 2 && way[2] > 0 && other[2] > end[2];
    return [{ box, lies, slack: wallOf(of) + (across - narrow) / 2 + gap, down }];
  });
}

const square = 1 - 1e-9; // cosine of how far out of square an end may be
const setAt = (v: Vec3, i: number, x: number): Vec3 => v.map((own, k) => (k === i ? x : own)) as unknown as Vec3;

/** Whether both ends are covered, or the one below. */
function shut(ends: readonly End[], covers: Boxes): boolean {
  const covered = ({ box: { min, max }, lies, slack }: End): boolean =>
    covers.at(min.map((x, i) => (x + (max[i] as number)) / 2)).some((cover) =>
      [0, 1, 2].every((i) => {
        const [low, high, from, to] = [cover.min[i], cover.max[i], min[i], max[i]] as [number, number, number, number];
        return i === lies ? low <= from + gap && high >= from - gap : low <= from + slack && high >= to - slack;
      }),
    );
  const found = ends.filter(covered);
  return found.length === 2 || found.some(({ down }) => down);
}

const wallOf = (shape: Shape): number => {
  if (!('wall' in shape)) return 0;
  return shape.wall ?? (shape.kind === 'tube' ? (shape.outside - shape.bore) / 2 : 0);
};

const boxAt = (shape: Shape, { R, t }: Placement): Box => shifted(boxOf(shape, R), t);

const kept = new WeakMap<Solid, readonly Box[]>();

/** The boxes of all copies of a part; kept by the part as it stands. */
function boxesOf(solid: Solid, shape: Shape): readonly Box[] {
  const boxes = kept.get(solid) ?? standing(solid).map((at) => boxAt(shape, at));
  kept.set(solid, boxes);
  return boxes;
}

/** Every copy of a part in the load's axes; none where its place is not known. */
function standing({ rests }: Solid): readonly Placement[] {
  if (!rests || rests.many || rests.placed.unplaced || rests.placed.open.some((causes) => causes.length)) return [];
  return rests.frames.flatMap((frame) => rests.placed.copies.map((copy) => compose(frame, copy)));
}

const cell = 0.5; // m
const mostCells = 500;

/** Boxes found by a point in them or hardly beside them: a few large ones, and small ones by the cells of space they reach into. */
class Boxes {
  private readonly large: Box[] = [];
  private readonly cells = new Map<string, Box[]>();

  constructor(boxes: readonly Box[]) {
    for (const box of boxes) {
      const from = box.min.map((x) => Math.floor((x - gap) / cell)) as [number, number, number];
      const to = box.max.map((x) => Math.floor((x + gap) / cell)) as [number, number, number];
      if (to.reduce((count, x, i) => count * (x - (from[i] as number) + 1), 1) > mostCells) this.large.push(box);
      else
        for (let x = from[0]; x <= to[0]; x++)
          for (let y = from[1]; y <= to[1]; y++) for (let z = from[2]; z <= to[2]; z++) this.put(`${x} ${y} ${z}`, box);
    }
  }

  at(point: readonly number[]): readonly Box[] {
    const small = this.cells.get(point.map((x) => Math.floor(x / cell)).join(' '));
    return small ? [...small, ...this.large] : this.large;
  }

  private put(key: string, box: Box): void {
    const there = this.cells.get(key);
    if (there) there.push(box);
    else this.cells.set(key, [box]);
  }
}
