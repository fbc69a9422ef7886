// What each thing may carry where it hangs: gathers hitches, fittings, what stands in the way, and what this version does not judge.
import type { Thing } from '../../plan/index.ts';
import { type Cause, type Derived, open } from '../../quantities/derived.ts';
import { because } from '../notes.ts';
import type { LegUse } from '../types.ts';
import type { Pulls } from './figures.ts';
import type { HangInput } from './hang.ts';
import { fittingRating, flat, type Pulled, pickRating } from './hardware.ts';
import { bareEdges, slingRatings } from './hitch.ts';
import { joints } from './joints.ts';

const notJudged = new Set(['clamp', 'magnet', 'vacuum lifter', 'personnel platform']);

export interface Ratings {
  readonly input: HangInput;
  readonly words: readonly string[]; // what is not judged, for the sheet's head
  /** What a piece of gear may carry, kg, at its flattest angle from horizontal, as its run leans. */
  gear(thing: Thing, angle: number | null, lean: number | null, pulls: Pulls): Derived;
  pick(pick: Thing, angle: number | null, lean: number | null): Derived;
  /** Why what a thing may carry is not known, however it is pulled. */
  barred(thing: Thing): readonly Cause[];
}

/** Judges once what does not depend on how the load hangs; the rest is asked pull by pull. */
export function ratingsOf(input: HangInput): Ratings {
  const { legs, gear, table, notes, opens } = input;
  const slings = slingRatings(input);
  const bare = bareEdges(input);
  joints(input);
  const unjudged = leftOut(input);
  const capacities = new Map(gear.map((use) => [use.thing, use.capacity]));
  const pulledAt = (thing: Thing, lean: number | null, pulls: Pulls | null): Pulled => ({
    ...where(thing, legs),
    lean,
    spread: pulls?.spreads.get(thing) ?? null,
  });
  const barred = (thing: Thing): readonly Cause[] => [
    ...(opens.get(thing) ?? []),
    ...[unjudged.get(thing), bare.get(thing)].filter((one) => one !== undefined),
  ];
  return {
    input,
    barred,
    words: [...new Set([...unjudged.keys()].map(({ item }) => `capacity of ${item.keyword}s`))],
    gear(thing, angle, lean, pulls) {
      const at = thing.item.nameAt;
      const causes = barred(thing);
      if (causes.length) return open('kg', causes, { at });
      const least = table.given(thing.item, 'least angle');
      if (least.state === 'open') return open('kg', least.because, { at });
      if (least.state === 'known' && angle !== null && angle < least.quantity.high - 1e-12) {
        const beam = thing.item.keyword === 'spreader' || thing.item.keyword === 'lifting beam';
        const { leg } = where(thing, legs);
        return open(
          'kg',
          [
            beam
              ? notes.add(
                  'beam-angle-outside',
                  thing.item.nameAt,
                  { beam: thing.name, least: least.quantity.high, angle },
                  `${thing.name} holds its capacity only with steeper top slings.`,
                  [
                    { at: least.at, says: 'least angle' },
                    { at: leg.item.at, says: 'leg' },
                  ],
                )
              : flat(thing, { leg, angle }, least.quantity.high, notes),
          ],
          { at },
        );
      }
      const capacity =
        slings.get(thing) ??
        capacities.get(thing) ??
        open('kg', [because(`${thing.name} has no capacity.`, at)], { at });
      return fittingRating(thing, capacity, pulledAt(thing, lean, pulls), table, notes);
    },
    pick: (pick, angle, lean) => pickRating(pick, { ...pulledAt(pick, lean, null), angle }, notes),
  };
}

/** Gear in the legs that this version does not judge, each with why. */
function leftOut({ legs, notes }: HangInput): ReadonlyMap<Thing, Cause> {
  const found = new Set(legs.flatMap((leg) => leg.steps.map(({ thing }) => thing)));
  return new Map(
    [...found]
      .filter((thing) => notJudged.has(thing.item.keyword))
      .map((thing) => [
        thing,
        notes.add(
          'not-judged',
          thing.item.nameAt,
          { thing: `How ${thing.name} holds`, result: `the capacity used of ${thing.name}` },
          `This version does not judge a ${thing.item.keyword}.`,
        ),
      ]),
  );
}

/** The first leg that names a thing, or a point of it, and where. */
function where(thing: Thing, legs: readonly LegUse[]): Pick<Pulled, 'leg' | 'at'> {
  for (const leg of legs)
    for (const step of leg.steps) if (step.thing === thing || step.thing.owner === thing) return { leg, at: step.at };
  return { leg: legs[0] as LegUse, at: thing.item.nameAt };
}
