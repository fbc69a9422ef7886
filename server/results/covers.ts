// Tubes and pipes that something flat lies against: with both ends covered they are closed; standing on a cover they are a bowl that rain fills.
import { type Box, boxOf, compose, type Placement, type Shape, shifted } from '../mechanics/index.ts';
import type { Thing } from '../plan/index.ts';
import { partOf } from './part.ts';
import type { Layout } from './place.ts';

/** Shapes that may close an end; a ring, as a flange is, is hollow and does not. */
const flat: ReadonlySet<Shape['kind']> = new Set(['plate', 'box', 'cylinder', 'prism']);
/** Which own axis a hollow shape is open along. */
const along: Readonly<Partial<Record<Shape['kind'], 0 | 1 | 2>>> = {
  tube: 2,
  'tapered tube': 2,
  pipe: 0,
  'rectangular tube': 0,
};
const gap = 2e-3; // m, nearer than this a cover lies against an end

/** Says of a hollow part of a load whether flat parts of it close it, as far as all stand square to the load's axes. */
export function coversOf(things: readonly Thing[], layout: Layout): (thing: Thing) => boolean {
  let covers: readonly Box[] | null = null;
  return (thing) => {
    const { shape } = partOf(thing.item, layout.plan);
    const axis = shape ? along[shape.kind] : undefined;
    if (!shape || axis === undefined) return false;
    covers ??= things.flatMap((one) => {
      const other = partOf(one.item, layout.plan).shape;
      return other && flat.has(other.kind) ? standing(one, layout).map((at) => boxAt(other, at)) : [];
    });
    return standing(thing, layout).some((at) => shut(shape, axis, at, covers ?? []));
  };
}

function shut(shape: Shape, axis: 0 | 1 | 2, at: Placement, covers: readonly Box[]): boolean {
  const lies = [0, 1, 2].find((row) => Math.abs(at.R[row * 3 + axis] as number) > 1 - 1e-9);
  if (lies === undefined || !covers.length) return false;
  const outer = boxAt(shape, at);
  const wall = wallOf(shape);
  const covered = (end: number) =>
    covers.some((cover) =>
      [0, 1, 2].every((i) => {
        const [low, high] = [cover.min[i] as number, cover.max[i] as number];
        if (i === lies) return low <= end + gap && high >= end - gap;
        return low <= (outer.min[i] as number) + wall + gap && high >= (outer.max[i] as number) - wall - gap;
      }),
    );
  const [low, high] = [covered(outer.min[lies] as number), covered(outer.max[lies] as number)];
  return low && (high || lies === 2);
}

const wallOf = (shape: Shape): number => {
  if (!('wall' in shape)) return 0;
  return shape.wall ?? (shape.kind === 'tube' ? (shape.outside - shape.bore) / 2 : 0);
};

const boxAt = (shape: Shape, { R, t }: Placement): Box => shifted(boxOf(shape, R), t);

/** Every copy of a part in the load's axes; none where its place is not known. */
function standing(thing: Thing, layout: Layout): readonly Placement[] {
  const placed = layout.place(thing.item);
  if (placed.unplaced || placed.open.some((causes) => causes.length)) return [];
  return layout.frames(thing.owner).flatMap((frame) => placed.copies.map((copy) => compose(frame, copy)));
}
