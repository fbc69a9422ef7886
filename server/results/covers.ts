// Tubes and pipes that something flat lies against: with both ends covered they are closed; standing on a cover they are a bowl that rain fills.
import { type Box, boxOf, compose, type Placement, type Shape, shifted } from '../mechanics/index.ts';
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
    const axis = shape ? along[shape.kind] : undefined;
    if (!shape || axis === undefined) return false;
    covers ??= new Boxes(
      solids.flatMap((one) => (one.part.shape && mayClose(one.part.shape) ? boxesOf(one, one.part.shape) : [])),
    );
    return standing(solid).some((at) => shut(shape, axis, at, covers as Boxes));
  };
}

function shut(shape: Shape, axis: 0 | 1 | 2, at: Placement, covers: Boxes): boolean {
  const lies = [0, 1, 2].find((row) => Math.abs(at.R[row * 3 + axis] as number) > 1 - 1e-9);
  if (lies === undefined) return false;
  const { min, max } = boxAt(shape, at);
  const slack = wallOf(shape) + gap;
  const covered = (end: number): boolean => {
    const middle = [0, 1, 2].map((i) => (i === lies ? end : ((min[i] as number) + (max[i] as number)) / 2));
    return covers.at(middle).some((cover) =>
      [0, 1, 2].every((i) => {
        const [low, high] = [cover.min[i] as number, cover.max[i] as number];
        if (i === lies) return low <= end + gap && high >= end - gap;
        return low <= (min[i] as number) + slack && high >= (max[i] as number) - slack;
      }),
    );
  };
  return covered(min[lies] as number) && (lies === 2 || covered(max[lies] as number));
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
  if (!rests || rests.placed.unplaced || rests.placed.open.some((causes) => causes.length)) return [];
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
