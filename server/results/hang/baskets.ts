// How a sling lies: straight down, running free over what is between its ends, or held in its middle as two halves.
import type { Item, Thing } from '../../plan/index.ts';
import type { LegUse } from '../types.ts';

/** Things one below the other. A halved chain is one half of a sling whose middle stays where it is. */
export interface Chain {
  readonly things: readonly Thing[]; // from the top down, both ends in it
  readonly halved: boolean;
  /** Picks its sling lies beneath, in order; what is spent there is in neither half. */
  readonly under: readonly Thing[];
}

/** One pull from end to end, whatever it passes between. */
export interface FreeRun {
  readonly top: Thing;
  readonly over: readonly Thing[];
  readonly bottom: Thing;
  readonly items: readonly Thing[];
  /** Largest pull in a part, of the pull without friction: 1.10 over a sheave (45:55), 1.35 over what does not turn (32.5:67.5). */
  readonly friction: number;
}

export interface Lie {
  readonly chains: readonly Chain[];
  readonly run: FreeRun | null;
  /** It may slip and it may grip, and nothing says which: both are judged. */
  readonly undecided: boolean;
}

/** Common practice: an equalising sheave passes on 45 of 55 parts, a fixed pin 32.5 of 67.5. */
const onSheave = 1.1;
const onPin = 1.35;

const isPick = (thing: Thing): boolean => thing.kind === 'pick';
const isSling = (thing: Thing): boolean => thing.item.keyword === 'sling';
const isSheave = (thing: Thing): boolean => thing.item.keyword === 'sheave';

/** How a leg lies, or why that is not worked out. `meets`: does something else meet this thing? `gripped`: a basket that does not say is held. */
export function lie(leg: LegUse, meets: (thing: Thing) => boolean, gripped: boolean): Lie | { readonly why: string } {
  if (wordOf(leg.item, 'hitch') === null) return { why: 'a leg whose hitch is not known' };
  if (wordOf(leg.item, 'runs') === null)
    return { why: 'a leg of which it is not known whether its sling runs free or is held' };
  const things = leg.steps.map((step) => step.thing);
  const [first] = things;
  if (first && isPick(first)) return overGear(things, meets, wordOf(leg.item, 'runs') || 'free');
  if (things.slice(0, -1).some(isPick)) return overPicks(things, meets, wordOf(leg.item, 'runs') || '', gripped);
  if (things.slice(1, -1).some(isSheave))
    return { why: 'a sling over a sheave in a leg that does not begin at a pick' };
  return straight([{ things, halved: false, under: [] }]);
}

/** The word of a clause: '' where it is not there, null where it could not be read. */
export function wordOf(item: Item, word: string): string | null {
  const clause = item.clauses.get(word)?.[0];
  if (!clause) return '';
  return clause.value?.kind === 'word' ? clause.value.word : null;
}

const straight = (chains: readonly Chain[]): Lie => ({ chains, run: null, undecided: false });

/** From pick to pick over gear between: `A > S1 > SH > B`. */
function overGear(
  things: readonly Thing[],
  meets: (thing: Thing) => boolean,
  runs: string,
): Lie | { readonly why: string } {
  const inner = things.slice(1, -1);
  if (inner.some(isPick)) return { why: 'a sling over gear and over picks at once' };
  const met = inner.filter((thing) => meets(thing) || isSheave(thing));
  const over = met.some((thing) => thing.item.keyword !== 'shackle')
    ? met.filter((thing) => thing.item.keyword !== 'shackle')
    : met;
  const [middle] = over;
  if (!middle) return { why: 'a sling from pick to pick over nothing that carries it' };
  const at = things.indexOf(middle);
  const before = things.slice(1, at);
  const after = things.slice(at + 1, -1);
  const top = things[0] as Thing;
  const bottom = things.at(-1) as Thing;
  if (over.length === 1 && before.some(isSling) && after.some(isSling) && runs !== 'free' && !isSheave(middle))
    return straight([plain([middle, ...before.toReversed(), top]), plain([middle, ...after, bottom])]);
  if (runs === 'free')
    return {
      chains: [],
      undecided: false,
      run: {
        top,
        over,
        bottom,
        items: inner.filter((thing) => !over.includes(thing)),
        friction: over.reduce((all, thing) => all * (isSheave(thing) ? onSheave : onPin), 1),
      },
    };
  if (over.length > 1) return { why: 'a sling held in its middle over several items' };
  return straight(
    halves(
      inner.filter(isSling),
      [middle, ...fittings(before).toReversed(), top],
      [middle, ...fittings(after), bottom],
      [],
    ),
  );
}

const plain = (things: readonly Thing[]): Chain => ({ things, halved: false, under: [] });
const fittings = (things: readonly Thing[]): readonly Thing[] => things.filter((thing) => !isSling(thing));

/** Both halves have the whole sling in them, right under their upper ends. */
function halves(
  slings: readonly Thing[],
  one: readonly Thing[],
  other: readonly Thing[],
  under: readonly Thing[],
): readonly Chain[] {
  return [one, other].map(([top, ...rest]) => ({ things: [top as Thing, ...slings, ...rest], halved: true, under }));
}

/** Down, under one or more picks, and up again: `R > S1 > A > B > R`. */
function overPicks(
  things: readonly Thing[],
  meets: (thing: Thing) => boolean,
  runs: string,
  gripped: boolean,
): Lie | { readonly why: string } {
  const from = things.findIndex(isPick);
  const until = things.findLastIndex(isPick);
  const picks = things.slice(from, until + 1);
  if (!picks.every(isPick)) return { why: 'a sling with gear between the picks it lies under' };
  const down = things.slice(0, from);
  const up = things.slice(until + 1);
  if (!up.length) return { why: 'a sling that passes a pick and ends at another' };
  const end = up.find((thing) => down.includes(thing) || meets(thing));
  const firstSling = down.findIndex(isSling);
  if (!end || firstSling < 0)
    return { why: end ? 'a basket without a sling on its way down' : 'a basket that comes back up to nothing' };
  const start = down.includes(end)
    ? down.indexOf(end)
    : down.findLastIndex((thing, i) => i === 0 || (i < firstSling && meets(thing)));
  const top = down[start] as Thing;
  const above = start > 0 ? [plain(down.slice(0, start + 1))] : [];
  const ahead = down.slice(start + 1);
  const behind = up.slice(0, up.indexOf(end));
  const items = [...ahead, ...behind];
  const alone = picks.length === 1;
  const decided = alone && end === top;
  if (decided || runs === 'free' || (!runs && !gripped))
    return {
      chains: above,
      undecided: !decided && !runs,
      run: { top, over: picks, bottom: end, items, friction: runs === 'free' && !decided ? onPin : 1 },
    };
  if (new Set(picks.map((pick) => pick.load)).size > 1) return { why: 'a basket under picks of several loads' };
  const [one, other] = halves(
    items.filter(isSling),
    [top, ...fittings(ahead), picks[0] as Thing],
    [end, ...fittings(behind).toReversed(), picks.at(-1) as Thing],
    picks,
  );
  return { chains: [...above, one as Chain, other as Chain], run: null, undecided: !runs };
}
