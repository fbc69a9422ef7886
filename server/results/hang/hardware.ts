// What fittings and picks may carry at the angle they are pulled: shackles, eyebolts, hoist rings, and what a pick's own figure holds for.
import { barredBeyond, eyeboltFactor, type Factor, shackleFactor, straight } from '../../catalog/index.ts';
import type { HangResult } from '../../mechanics/hang/index.ts';
import { add, angleBetween, scale, type Vec3 } from '../../mechanics/index.ts';
import { given, openLines, type Thing } from '../../plan/index.ts';
import { asWritten, type Derived, known, open } from '../../quantities/derived.ts';
import type { Place } from '../../syntax/types.ts';
import type { GearTable } from '../gear.ts';
import { because, type Notes } from '../notes.ts';
import type { LegUse } from '../types.ts';
import { kindUnread, pickKind } from './bends.ts';
import { times } from './factors.ts';
import type { Built } from './model.ts';

/** How the runs on one fitting spread: angles off its line, rad. */
export interface Spread {
  readonly offLine: number; // of the run furthest off
  readonly widest: number; // between two runs
  readonly even: boolean; // all runs lean alike, and what they pull together is in line
}

const down: Vec3 = [0, 0, -1];
const up: Vec3 = [0, 0, 1];

/** Greatest angle between a tight run and the z of the body it pulls, rad; by bodies, then points; null where nothing pulls. */
export function leansOf({ model }: Built, rest: HangResult): readonly (readonly (number | null)[])[] {
  return model.bodies.map((body, b) =>
    body.points.map((_, p) => {
      const angles = model.slings.flatMap((sling, s) =>
        rest.slings[s]?.slack
          ? []
          : sling.path.flatMap((node, i) =>
              'body' in node && node.body === b && node.point === p
                ? (angleBetween(rest.slings[s]?.forces[i] as Vec3, up) ?? [])
                : [],
            ),
      );
      return angles.length ? Math.max(...angles) : null;
    }),
  );
}

/** Fittings that several runs meet at, with how these spread. Its line runs along the single run on its other side, else straight down. */
export function spreadsOf({ edges }: Pick<Built, 'edges'>, rest: HangResult): ReadonlyMap<Thing, Spread> {
  const spreads = new Map<Thing, Spread>();
  const things = new Set(
    edges.flatMap(({ edge }) => [edge.top.thing, edge.bottom.thing]).filter((thing) => thing.kind === 'gear'),
  );
  const force = (sling: number, end: 0 | -1): Vec3 => rest.slings[sling]?.forces.at(end) as Vec3;
  const tight = edges.filter(({ sling }) => !rest.slings[sling]?.slack);
  for (const thing of things) {
    const below = tight.filter(({ edge }) => edge.top.thing === thing).map(({ sling }) => force(sling, 0));
    const above = tight.filter(({ edge }) => edge.bottom.thing === thing).map(({ sling }) => force(sling, -1));
    if (below.length > 1) spreads.set(thing, spread(below, above.length === 1 ? scale(above[0] as Vec3, -1) : down));
    else if (above.length > 1) spreads.set(thing, spread(above, below.length === 1 ? scale(below[0] as Vec3, -1) : up));
  }
  return spreads;
}

function spread(pulls: readonly Vec3[], line: Vec3): Spread {
  const off = pulls.map((pull) => angleBetween(pull, line) ?? Math.PI);
  const between = pulls.flatMap((a, i) => pulls.slice(i + 1).map((b) => angleBetween(a, b) ?? Math.PI));
  const together = angleBetween(pulls.reduce(add), line) ?? Math.PI;
  return {
    offLine: Math.max(...off),
    widest: Math.max(...between),
    even: Math.max(...off) - Math.min(...off) <= straight && together <= straight,
  };
}

export interface Pulled {
  readonly leg: LegUse; // one it is pulled in
  readonly at: Place; // where that leg names it
  readonly lean: number | null; // angle of the pull off the bolt's or the pick's upright, rad
  readonly spread: Spread | null;
}

/** What a fitting may carry as it is pulled here, kg. */
export function fittingRating(
  thing: Thing,
  capacity: Derived,
  pulled: Pulled,
  table: GearTable,
  notes: Notes,
): Derived {
  const { keyword } = thing.item;
  if (keyword === 'shackle') return shackle(thing, capacity, pulled, notes);
  if (keyword !== 'eyebolt' && keyword !== 'hoist ring') return capacity;
  if (table.given(thing.item, 'least angle').state !== 'absent') return capacity; // its own figure holds down to there
  return keyword === 'eyebolt'
    ? bolt(thing, capacity, pulled, notes)
    : byMaker(thing, capacity, pulled, notes, 'its bolt');
}

function shackle(thing: Thing, capacity: Derived, { leg, at, spread }: Pulled, notes: Notes): Derived {
  if (!spread) return { ...capacity, assumptions: [...capacity.assumptions, `${thing.name} is pulled in line`] };
  const wide = spread.widest > barredBeyond.spread.angle + 1e-9;
  const side = shackleFactor(spread.offLine);
  if (wide || !side)
    return barred(
      thing,
      'a shackle',
      wide ? spread.widest / 2 : spread.offLine,
      wide ? { angle: barredBeyond.spread.angle / 2, source: barredBeyond.spread.source } : barredBeyond.shackle,
      { leg, at },
      notes,
    );
  return spread.even ? capacity : cut(capacity, 'side load', side, at);
}

/** An eyebolt, or a pick that is one: straight, or cut by the angle off its bolt. */
function bolt(thing: Thing, capacity: Derived, pulled: Pulled, notes: Notes): Derived {
  const { lean, at } = pulled;
  if (lean === null) return open('kg', [because(`How ${thing.name} is pulled is not known.`, at)]);
  const left = eyeboltFactor(lean);
  if (!left) return barred(thing, 'an eyebolt', lean, barredBeyond.eyebolt, pulled, notes);
  const assumptions = [
    ...capacity.assumptions,
    `the bolt of ${thing.name} stands along the load's z, and its shoulder bears all round`,
  ];
  return { ...cut(capacity, 'pull angle', left, at), assumptions };
}

/** What only its maker can say for a pull off its line. */
function byMaker(thing: Thing, capacity: Derived, { lean, at, leg }: Pulled, notes: Notes, line: string): Derived {
  if (lean !== null && lean <= straight + 1e-9) return capacity;
  const cause = notes.add(
    'clause-missing',
    thing.item.nameAt,
    {
      item: `${thing.kind === 'pick' ? 'pick' : thing.item.keyword} ${thing.name}`,
      clause: 'least angle',
      why: `it is pulled off ${line}, and only its maker's figure says how flat it may be`,
    },
    `Nothing says how flat ${thing.name} may be pulled.`,
    [{ at: leg.item.at, says: 'leg' }],
  );
  return open('kg', [cause], { at });
}

function barred(
  thing: Thing,
  kind: string,
  angle: number,
  most: { readonly angle: number; readonly source: string },
  { leg, at }: Pick<Pulled, 'leg' | 'at'>,
  notes: Notes,
): Derived {
  const related = [
    { at: leg.item.at, says: 'leg' },
    { at: thing.item.nameAt, says: thing.name },
  ];
  return open(
    'kg',
    [
      notes.add(
        'pull-barred',
        at,
        { item: thing.name, angle, limit: most.angle, kind, source: most.source },
        `${thing.name} is pulled further off its line than is allowed.`,
        related,
      ),
    ],
    { at },
  );
}

const cut = (capacity: Derived, label: string, left: Factor, at: Place): Derived =>
  left.share === 1
    ? capacity
    : times({ label: 'straight capacity', value: capacity }, [
        { label, value: known(left.share, '1', { source: left.source, at }) },
      ]);

/** What a pick may carry as it is pulled, kg. Its own `least angle` says what its figure holds for; an eye without one is taken as an eyebolt. */
export function pickRating(pick: Thing, pulled: Pulled & { readonly angle: number | null }, notes: Notes): Derived {
  const { item } = pick;
  const lines = openLines(item);
  if (lines.length) return open('kg', lines, { at: item.nameAt });
  const capacity = given(item, 'capacity');
  if (capacity.state !== 'known')
    return open(
      'kg',
      capacity.state === 'open' ? capacity.because : [because(`${pick.name} has no capacity.`, item.nameAt)],
      { at: item.nameAt },
    );
  const rated = asWritten(capacity, 'kg', 'typed here');
  const least = given(item, 'least angle');
  if (least.state === 'open') return open('kg', least.because, { at: item.nameAt });
  if (
    least.state === 'known' &&
    !(pickKind(pick) === 'eye' && least.quantity.low < leastOfTable && !isFlat(pulled.angle, least.quantity.high))
  )
    return pulled.angle !== null && pulled.angle < least.quantity.high - 1e-12
      ? open('kg', [flat(pick, pulled, least.quantity.high, notes)], { at: item.nameAt })
      : rated;
  const word = pickKind(pick);
  if (word === null) return open('kg', [kindUnread(pick)], { at: item.nameAt });
  return word === 'eye'
    ? bolt(pick, rated, pulled, notes)
    : word === 'anchor'
      ? byMaker(pick, rated, pulled, notes, 'its line')
      : rated;
}

/** The table of eyes ends at 45 deg off their line; a least angle flatter than that is no maker's figure for it, and lifts no capacity. */
const leastOfTable = Math.PI / 4 - 1e-9;
const isFlat = (angle: number | null, limit: number): boolean => angle !== null && angle < limit - 1e-12;

/** A pull flatter than the figure of a thing holds for. */
export const flat = (
  thing: Thing,
  { leg, angle }: { readonly leg: LegUse; readonly angle: number | null },
  limit: number,
  notes: Notes,
) =>
  notes.add(
    'angle-flat',
    leg.item.at,
    {
      leg: `the leg to ${leg.steps.at(-1)?.thing.name ?? ''}`,
      angle: angle ?? 0,
      limit,
      rule: `least angle of ${thing.name}`,
    },
    `${thing.name} is pulled flatter than its capacity holds for.`,
    [{ at: thing.item.nameAt, says: thing.name }],
  );
