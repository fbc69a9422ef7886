// The load path as a hierarchy (what carries, and what is carried by), and the chain of `like`.
import { fold, namesOf } from '../plan/index.ts';
import type { Thing } from '../plan/types.ts';
import type { LegUse, Results } from '../results/index.ts';
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { declaredAt } from './definition.ts';
import { kindOf, resultOf, worst } from './figures.ts';
import { useAt } from './uses.ts';

export interface Carrier {
  /** Finds it again in a later snapshot: its kind and path. */
  readonly id: string;
  readonly name: string;
  readonly keyword: string;
  /** Its tension, pull or weight, and how much of its capacity is used. */
  readonly detail: string;
  readonly at: Place;
}

/** A carrier with the places of the legs that say so. */
export interface Link {
  readonly carrier: Carrier;
  readonly places: readonly Place[];
}

/** What carries or is carried at an offset: gear, a pick, a point of a beam, or a load. */
export function carrierAt(s: Snapshot, row: number, offset: number): Carrier | null {
  const [thing] = useAt(s, row, offset)?.things ?? [];
  return thing && ['gear', 'pick', 'point', 'load'].includes(thing.kind) ? carrier(thing, s.results) : null;
}

/** What hangs below: the next items down every leg, the load of a pick, the points of a beam. */
export function carries(s: Snapshot, id: string): readonly Link[] {
  return links(
    s,
    id,
    (steps, i) => steps[i + 1],
    (thing) => below(thing, s.results),
  );
}

/** What it hangs on: the next items up every leg, the picks of a load, the beam of a point. */
export function carriedBy(s: Snapshot, id: string): readonly Link[] {
  return links(
    s,
    id,
    (steps, i) => steps[i - 1],
    (thing) => above(thing, s.results),
  );
}

type Steps = LegUse['steps'];

function links(
  s: Snapshot,
  id: string,
  next: (steps: Steps, i: number) => Steps[number] | undefined,
  beside: (thing: Thing) => readonly Thing[],
): readonly Link[] {
  const thing = thingOf(s, id);
  if (!thing) return [];
  const found = new Map<Thing, Place[]>();
  for (const { steps } of s.results.legs) {
    steps.forEach((step, i) => {
      const other = step.thing === thing ? next(steps, i) : undefined;
      if (other) found.set(other.thing, [...(found.get(other.thing) ?? []), other.at]);
    });
  }
  for (const other of beside(thing)) if (!found.has(other)) found.set(other, [other.item.nameAt]);
  return [...found].map(([other, places]) => ({ carrier: carrier(other, s.results), places }));
}

function below(thing: Thing, { plan, legs }: Results): readonly Thing[] {
  if (thing.kind === 'pick') return thing.load ? [thing.load] : [];
  if (thing.kind !== 'gear') return [];
  return plan.names.things.filter(
    (one) =>
      one.kind === 'point' && one.owner === thing && legs.some(({ steps }) => steps.some((step) => step.thing === one)),
  );
}

function above(thing: Thing, { plan, legs }: Results): readonly Thing[] {
  if (thing.kind === 'point') return thing.owner ? [thing.owner] : [];
  if (thing.kind !== 'load') return [];
  return plan.names.things.filter(
    (one) =>
      one.kind === 'pick' && one.load === thing && legs.some(({ steps }) => steps.some((step) => step.thing === one)),
  );
}

function carrier(thing: Thing, results: Results): Carrier {
  return {
    id: idOf(thing),
    name: thing.name,
    keyword: kindOf(thing),
    detail: detail(thing, results),
    at: declaredAt(thing),
  };
}

const idOf = (thing: Thing): string => JSON.stringify([thing.kind, ...thing.path]);

const thingOf = (s: Snapshot, id: string): Thing | null =>
  s.plan.names.things.find((thing) => idOf(thing) === id) ?? null;

function detail(thing: Thing, results: Results): string {
  const { units } = results.plan;
  if (thing.kind === 'load') return resultText(thing, 'weight', results) ?? '';
  const pull = resultText(thing, thing.kind === 'pick' ? 'pull' : 'tension', results);
  const used = resultOf(results, thing, 'capacity used');
  if (pull === null) return '';
  return used && used.value.value !== null ? `${pull}, ${worst(used.value, units)} used` : pull;
}

const resultText = (thing: Thing, result: string, results: Results): string | null => {
  const found = resultOf(results, thing, result);
  return found ? worst(found.value, results.plan.units) : null;
};

/** What a piece of gear takes its figures from with `like`. */
export function likeOf(s: Snapshot, id: string): readonly Carrier[] {
  const key = likeKey(thingOf(s, id));
  return key ? s.plan.names.find('gear', key).map((one) => carrier(one, s.results)) : [];
}

/** The gear that takes its figures from this one. */
export function takenBy(s: Snapshot, id: string): readonly Carrier[] {
  const thing = thingOf(s, id);
  return s.plan.names.things.filter((one) => thing && likeKey(one) === thing.key).map((one) => carrier(one, s.results));
}

const likeKey = (thing: Thing | null): string | null => {
  const name = thing?.kind === 'gear' ? namesOf(thing.item, 'like')[0]?.parts.at(-1)?.text : undefined;
  return name === undefined ? null : fold(name);
};
