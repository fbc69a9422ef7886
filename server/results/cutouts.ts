// What `less` lines take away from a part: only what lies in it and clear of the others.
import {
  apply,
  type Box,
  boxOf,
  fits,
  type PlacedShape,
  type Placement,
  type Shape,
  solid,
  throughDepth,
  type Vec3,
} from '../mechanics/index.ts';
import { type BoundPlan, childrenOf, given, type Item } from '../plan/index.ts';
import type { Notes } from './notes.ts';
import { copiesOf, pointOf, rotationOf } from './placing.ts';
import { readShape, sizesOf } from './shape.ts';

/**
 * What the `less` lines take away, each only where it lies in the part and clear of the others; else nothing, and a fact. `unplaced`:
 * something is cut out of which size or place is not known, so that nobody knows the part's centre.
 */
export function cutouts(
  item: Item,
  shape: Shape,
  plan: BoundPlan,
  notes: Notes,
): { readonly volume: number; readonly moment: Vec3; readonly unplaced: boolean } {
  let volume = 0;
  let unplaced = false;
  const moment: [number, number, number] = [0, 0, 0];
  const taken: { cut: PlacedShape; item: Item }[] = [];
  for (const less of childrenOf(item, 'less')) {
    const turned = rotationOf(less);
    const read = readShape(less, plan, notes, throughDepth(shape, turned) ?? null);
    if ('because' in read) {
      unplaced = true;
      continue;
    }
    const cutShape = read.make(sizesOf(read.sizes, (q) => q.low)); // what is cut away is taken at its least
    const body = solid(cutShape);
    if ('impossible' in body || body.volume === undefined) {
      notes.add(
        'geometry-impossible',
        read.clause.keywordAt,
        {
          shape: read.name,
          reason: 'impossible' in body ? body.reason : 'not-above-zero',
          figures: 'impossible' in body ? body.figures : [],
        },
        '',
      );
      continue;
    }
    const places = placesOf(less, shape, cutShape, turned);
    if (!places) {
      // Its place is not known: nothing is taken.
      unplaced = true;
      const count = given(less, 'count');
      if (
        count.state === 'known' &&
        count.quantity.value > 1 &&
        !less.clauses.has('every') &&
        !less.clauses.has('circle')
      )
        notes.add(
          'clause-missing',
          less.at,
          {
            item: `${read.name} of ${less.keyword}`,
            clause: 'every',
            why: 'how its copies stand; until then nothing is taken away',
          },
          '',
        );
      continue;
    }
    const cuts = places.map((place): PlacedShape => ({ shape: cutShape, place }));
    const misfit = firstMisfit(cuts, shape, taken, less);
    if (misfit) {
      notes.add(
        'cutout-outside',
        read.clause.at,
        {
          cutout: read.name,
          volume: body.volume * cuts.length,
          why: misfit.why,
          other: misfit.other?.clauses.keys().next().value ?? null,
        },
        '',
        [
          { at: item.nameAt, says: 'the part' },
          ...(misfit.other ? [{ at: misfit.other.at, says: 'the other cut-out' }] : []),
        ],
      );
      continue;
    }
    for (const cut of cuts) {
      const centre = apply(cut.place, body.centre);
      volume += body.volume;
      centre.forEach((x, i) => {
        moment[i] = (moment[i] as number) + x * (body.volume as number);
      });
      taken.push({ cut, item: less });
    }
  }
  return { volume, moment, unplaced };
}

function firstMisfit(
  cuts: readonly PlacedShape[],
  part: Shape,
  taken: readonly { cut: PlacedShape; item: Item }[],
  less: Item,
): { readonly why: 'larger' | 'outside' | 'taken'; readonly other: Item | null } | null {
  const earlier = taken.map((one) => one.cut);
  for (const [i, cut] of cuts.entries()) {
    const fit = fits(cut, part, [...earlier, ...cuts.slice(0, i)]);
    if (fit === true) continue;
    const other = fit === 'taken' ? (taken.find((one) => fits(cut, part, [one.cut]) === 'taken')?.item ?? less) : null;
    return { why: fit, other };
  }
  return null;
}

/** Where the copies of a cut-out stand in the part's own axes; null where its place could not be read. */
function placesOf(less: Item, part: Shape, cut: Shape, R: Placement['R']): readonly Placement[] | null {
  const at = pointOf(less, 'at');
  const shift = pointOf(less, 'shift');
  if (at === 'open' || shift === 'open' || less.opens.length) return null;
  const box = boxOf(part, [1, 0, 0, 0, 1, 0, 0, 0, 1]);
  const own = boxOf(cut, R);
  const middle = (b: Box): Vec3 =>
    [0, 1, 2].map((i) => ((b.min[i] as number) + (b.max[i] as number)) / 2) as unknown as Vec3;
  const start = at ?? (middle(box).map((x, i) => x - (middle(own)[i] as number)) as unknown as Vec3);
  const t = start.map((x, i) => x + (shift?.[i] ?? 0)) as unknown as Vec3;
  return copiesOf(less, { R, t });
}
