// What would hang a load level: settings of turnbuckles and hoists, other slings of the stock, or new lengths; each solved again after rounding.
import { type Adjustable, type HangModel, levelByLengths, solve } from '../../mechanics/hang/index.ts';
import type { Thing } from '../../plan/index.ts';
import { GearTable } from '../gear.ts';
import { Notes } from '../notes.ts';
import { limitOn } from '../rules.ts';
import type { GearUse, Results } from '../types.ts';
import { constructionOf } from './bends.ts';
import { adjusters } from './lengths.ts';
import { type Built, g } from './model.ts';

export type Change =
  | { readonly kind: 'set' | 'length'; readonly thing: Thing; readonly to: number } // m
  | { readonly kind: 'exchange'; readonly thing: Thing; readonly by: Thing };

export interface Levelling {
  readonly changes: readonly Change[];
  readonly tilt: number; // rad, with these changes
}

/** What settings and lengths are rounded to: 5 mm, or a quarter of an inch. */
export const roundTo = { metric: 0.005, US: 0.00635 } as const;
const mostExchanges = 3;
const mostAlike = 3; // stock slings of one length that are tried: each can be in one leg only

/** Ways to hang a load within the tilt that is allowed, the handiest first; none where nothing here reaches that. Takes some milliseconds: ask only on demand. */
export function levellings({ plan, gear, hanging }: Results, load: Thing): readonly Levelling[] {
  const { built, solved } = hanging;
  const body = built?.bodies.findIndex((one) => one.thing === load) ?? -1;
  if (!built || !solved || built.onLines || body < 0) return [];
  const now = solved.rest.bodies[body]?.tilt ?? 0;
  const aim: Aim = {
    built,
    body,
    limit: Math.min(limitOn(plan, ['load'], 'tilt', Math.PI / 36, 'most').value, now * 0.99),
    step: roundTo[plan.units],
    table: new GearTable(plan, new Notes()),
    gear,
    things: plan.names.things,
  };
  return [bySettings(aim), byExchange(aim), byLengths(aim)].filter((one) => one !== null);
}

interface Aim {
  readonly built: Built;
  readonly body: number;
  readonly limit: number; // rad
  readonly step: number; // m
  readonly table: GearTable;
  readonly gear: readonly GearUse[];
  readonly things: readonly Thing[];
}

/** Tilt of the load with those lengths (and weights) of slings; null where it does not come to rest as drawn. */
function tiltWith(
  { built, body }: Aim,
  lengths: readonly number[],
  weights: ReadonlyMap<number, number> = new Map(),
): number | null {
  if (lengths.some((length) => !(length > 0))) return null;
  const model: HangModel = {
    ...built.model,
    slings: built.model.slings.map((sling, s) => ({
      ...sling,
      length: lengths[s] as number,
      weight: weights.get(s) ?? sling.weight,
    })),
  };
  const hung = solve(model, { quick: true });
  if ('error' in hung || hung.kind.status === 'unstable' || hung.turnsOver) return null;
  const [x, y, z] = [0, 1, 2].map((d) => hung.pose.rotation[9 * body + 6 + d] as number) as [number, number, number];
  return Math.atan2(Math.hypot(x, y), z);
}

const lengthsOf = ({ built }: Aim): number[] => built.model.slings.map((sling) => sling.length);

/** One adjustable item of each leg, inside its take-up. */
function bySettings(aim: Aim): Levelling | null {
  const { built, table, step } = aim;
  const found = built.edges.flatMap(({ edge, sling }) => {
    const thing = edge.items.find((one) => adjusters.has(one.item.keyword));
    const set = thing ? table.given(thing.item, 'set') : null;
    const most = thing ? table.given(thing.item, 'take-up') : null;
    return thing && set?.state === 'known' && most?.state === 'known'
      ? [{ thing, sling, set: set.quantity.value, most: most.quantity.value }]
      : [];
  });
  const start = lengthsOf(aim);
  const free: readonly Adjustable[] = found.map(({ sling, set, most }) => ({
    sling,
    least: (start[sling] as number) - set,
    most: (start[sling] as number) - set + most,
  }));
  const level = free.length ? levelByLengths(built.model, aim.body, free) : null;
  if (!level || 'error' in level) return null;
  const lengths = [...start];
  const changes = found.flatMap(({ thing, sling, set, most }): Change[] => {
    const wanted = set + (level.lengths[sling] as number) - (start[sling] as number);
    const to = Math.min(Math.floor(most / step + 1e-9) * step, Math.max(0, Math.round(wanted / step) * step));
    if (Math.abs(to - set) < step / 2) return [];
    lengths[sling] = (start[sling] as number) - set + to;
    return [{ kind: 'set', thing, to }];
  });
  return within(aim, changes, tiltWith(aim, lengths));
}

const within = ({ limit }: Aim, changes: readonly Change[], tilt: number | null): Levelling | null =>
  changes.length && tilt !== null && tilt <= limit ? { changes, tilt } : null;

/** Other slings of the same make and at least the capacity, up to three, one after the other as each brings the load nearest to level. */
function byExchange(aim: Aim): Levelling | null {
  const slots = slotsOf(aim);
  const lengths = lengthsOf(aim);
  const weights = new Map<number, number>();
  const changes: Change[] = [];
  let tilt = Number.POSITIVE_INFINITY;
  while (changes.length < mostExchanges && tilt > aim.limit) {
    let best: { slot: Slot; by: Stock; tilt: number } | null = null;
    for (const slot of slots)
      if (!changes.some((one) => one.thing === slot.thing))
        for (const by of slot.stock) {
          if (changes.some((one) => one.kind === 'exchange' && one.by === by.thing)) continue;
          const tried = tiltWith(
            aim,
            lengths.with(slot.sling, slot.rest + by.length * slot.share),
            new Map(weights).set(slot.sling, by.weight * slot.share * g),
          );
          if (tried !== null && tried < (best?.tilt ?? tilt) * (1 - 1e-6)) best = { slot, by, tilt: tried };
        }
    if (!best) break;
    lengths[best.slot.sling] = best.slot.rest + best.by.length * best.slot.share;
    weights.set(best.slot.sling, best.by.weight * best.slot.share * g);
    changes.push({ kind: 'exchange', thing: best.slot.thing, by: best.by.thing });
    tilt = best.tilt;
  }
  return within(aim, changes, Number.isFinite(tilt) ? tilt : null);
}

interface Stock {
  readonly thing: Thing;
  readonly length: number;
  readonly weight: number; // kg
}
interface Slot {
  readonly thing: Thing;
  readonly sling: number;
  readonly rest: number; // of the run's length, what is not this sling
  readonly share: number; // of a sling's length that the run has
  readonly stock: readonly Stock[];
}

/** Every run with one straight sling in it, and what could take its place. */
function slotsOf(aim: Aim): readonly Slot[] {
  const { built, table, gear, things } = aim;
  const used = new Set(gear.filter((use) => use.legs.length).map((use) => use.thing));
  const idle = things.filter(
    (thing) =>
      thing.kind === 'gear' &&
      thing.item.keyword === 'sling' &&
      !used.has(thing) &&
      !thing.clash &&
      !table.clause(thing.item, 'hangs from'),
  );
  const figure = (thing: Thing, word: string): number | null => {
    const given = table.given(thing.item, word);
    return given.state === 'known' ? given.quantity.value : null;
  };
  return built.edges.flatMap(({ edge, run, sling }) => {
    const [thing, second] = edge.items.filter((one) => one.item.keyword === 'sling');
    const own = thing ? figure(thing, 'length') : null;
    const capacity = thing ? figure(thing, 'capacity') : null;
    if (
      !thing ||
      second ||
      own === null ||
      capacity === null ||
      edge.over.length ||
      edge.halved ||
      edge.hitch === 'basket'
    )
      return [];
    const share = edge.hitch === 'doubled' ? 0.5 : 1;
    const alike = new Map<string, number>();
    const stock = idle.flatMap((one): Stock[] => {
      const [length, weight, carries] = [figure(one, 'length'), figure(one, 'weight'), figure(one, 'capacity')];
      if (
        length === null ||
        weight === null ||
        carries === null ||
        carries < capacity * (1 - 1e-9) ||
        constructionOf(one.item, table) !== constructionOf(thing.item, table)
      )
        return [];
      const seen = (alike.get(length.toFixed(4)) ?? 0) + 1;
      alike.set(length.toFixed(4), seen);
      return seen > mostAlike || Math.abs(length - own) < 1e-4 ? [] : [{ thing: one, length, weight }];
    });
    return [{ thing, sling, rest: run.length - own * share, share, stock }];
  });
}

/** New lengths of the slings whose length is written in a line of their own, the least change that levels it. */
function byLengths(aim: Aim): Levelling | null {
  const { built, table, step } = aim;
  const start = lengthsOf(aim);
  const found = built.edges.flatMap(({ edge, sling }) => {
    const [thing, second] = edge.items.filter((one) => one.item.keyword === 'sling');
    const own =
      thing && !thing.fromLibrary && thing.item.names.length === 1 && thing.item.clauses.has('length')
        ? table.given(thing.item, 'length')
        : null;
    return thing && !second && own?.state === 'known' && !edge.halved && edge.hitch === 'vertical' && !edge.over.length
      ? [{ thing, sling, own: own.quantity.value }]
      : [];
  });
  const level = found.length
    ? levelByLengths(
        built.model,
        aim.body,
        found.map(({ sling, own }) => ({
          sling,
          least: (start[sling] as number) - own / 2,
          most: (start[sling] as number) + own / 2,
        })),
      )
    : null;
  if (!level || 'error' in level) return null;
  const lengths = [...start];
  const changes = found.flatMap(({ thing, sling, own }): Change[] => {
    const to = Math.round((own + (level.lengths[sling] as number) - (start[sling] as number)) / step) * step;
    if (Math.abs(to - own) < step / 2) return [];
    lengths[sling] = (start[sling] as number) - own + to;
    return [{ kind: 'length', thing, to }];
  });
  return within(aim, changes, tiltWith(aim, lengths));
}
