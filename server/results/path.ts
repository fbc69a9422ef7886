// Reads the legs of the rigs: which things a path names, whether it runs from a hook to a pick, and how its items meet.
import { type BoundPlan, fold, type Item, namesOf, rangeMeant, type Thing } from '../plan/index.ts';
import { nearest } from '../quantities/nearest.ts';
import type { NameUse, Place } from '../syntax/types.ts';
import type { GearTable } from './gear.ts';
import type { Notes } from './notes.ts';
import { countOf } from './placing.ts';
import type { LegUse } from './types.ts';

const hooks = new Set(['block', 'hook', 'ball']);
export const isHook = (thing: Thing): boolean => hooks.has(thing.item.keyword);
const isPick = (thing: Thing): boolean => thing.kind === 'pick';
const isPoint = (thing: Thing): boolean => thing.kind === 'point';

/** All legs of all rigs, in order. */
export function readLegs(plan: BoundPlan, table: GearTable, notes: Notes): readonly LegUse[] {
  const taken = new Map<string, Thing>(); // points that a beam has by `like`
  const legs = plan.items
    .filter((item) => item.keyword === 'rig')
    .flatMap((rig) =>
      rig.children
        .filter((child) => child.keyword === 'leg')
        .map((item) => readLeg(item, rig, { plan, table, notes, taken })),
    );
  const sound = shareSlings(hangFromHooks(legs, notes), notes);
  for (const leg of sound) joints(leg, table, notes);
  hooksMissing(plan, sound, notes);
  return sound;
}

interface Reading {
  readonly plan: BoundPlan;
  readonly table: GearTable;
  readonly notes: Notes;
  readonly taken: Map<string, Thing>;
}

function readLeg(item: Item, rigItem: Item, reading: Reading): LegUse {
  const { plan, notes } = reading;
  const names = namesOf(item, '');
  const row = item.value?.at.row ?? item.at.row;
  const rig = plan.names.of(rigItem)[0] ?? null;
  const steps: { thing: Thing; at: Place }[] = [];
  let broken = !item.value?.value || item.opens.length > 0 || item.node.line.opens;
  for (const name of names) {
    const at: Place = { row, from: name.span.from, to: name.span.to };
    const thing = find(name, at, reading);
    if (!thing) broken = true;
    else if (thing.clash) broken = true;
    else steps.push({ thing, at });
  }
  const leg: LegUse = { rig, rigItem, item, steps, broken };
  if (broken) return leg;
  const where = fault(steps);
  if (!where) return leg;
  notes.add('path-broken', where.at, { where: where.says, nearest: where.nearest?.(plan) ?? [] }, '');
  return { ...leg, broken: true };
}

/** The gear that was declared as `S1-S4` where S1 to S4 were meant, if the name is one of those. */
function meantRange(name: string, plan: BoundPlan): { written: string; range: string; at: Place } | null {
  for (const { name: written, item } of plan.names.kind('gear')) {
    const range = rangeMeant(written, name);
    if (range) return { written, range, at: item.nameAt };
  }
  return null;
}

/** What a name of a path stands for: gear, a pick or a beam point; dotted where the plain name is not unique. */
function find(name: NameUse, at: Place, reading: Reading): Thing | null {
  const { plan, notes } = reading;
  const text = name.parts.map((part) => part.text);
  const key = fold(text.at(-1) ?? '');
  const unknown = (is: string | null, wanted: string): null => {
    const all = plan.names.things
      .filter((thing) => thing.kind === 'gear' || thing.kind === 'pick' || thing.kind === 'point')
      .map((thing) => thing.name);
    const facts = { name: text.join('.'), nearest: nearest(text.at(-1) ?? '', all), wanted, is, declare: null };
    const meant = is === null && text.length === 1 ? meantRange(facts.name, plan) : null;
    notes.add('name-unknown', at, meant ? { ...facts, meant } : facts, '');
    return null;
  };
  if (name.until) {
    notes.add(
      'path-broken',
      at,
      { where: 'a range cannot stand in a path; each leg names its own items', nearest: [] },
      '',
    );
    return null;
  }
  const candidates = (['gear', 'pick', 'point'] as const)
    .flatMap((kind) => plan.names.find(kind, key))
    .filter((thing) => text.length === 1 || within(thing, text));
  const [thing, second] = candidates;
  if (!thing) {
    const point = text.length === 2 ? takenOver(text as [string, string], reading) : null;
    if (point) return point;
    const other = plan.names.things.find((one) => one.key === key);
    return unknown(other ? `a ${other.kind}` : null, 'gear, a pick or a beam point');
  }
  if (second && !thing.clash && text.length === 1) {
    notes.add(
      'path-broken',
      at,
      {
        where: `${text[0]} stands for several things here; write which, such as ${candidates
          .slice(0, 2)
          .map((one) => dotted(one))
          .join(' or ')}`,
        nearest: candidates.slice(0, 3).map(dotted),
      },
      '',
    );
    return null;
  }
  return thing;
}

/** A point of a beam that has its points by `like`. */
function takenOver([beam, point]: readonly [string, string], { plan, table, taken }: Reading): Thing | null {
  const [owner] = plan.names.find('gear', fold(beam));
  const item = owner && table.points(owner.item).find((one) => one.names.some((name) => fold(name) === fold(point)));
  if (!owner || !item) return null;
  const key = `${owner.key}.${fold(point)}`;
  const name = item.names[0] ?? point;
  const thing: Thing = taken.get(key) ?? {
    kind: 'point',
    name,
    key: fold(name),
    item,
    owner,
    load: null,
    path: [...owner.path, name],
    fromLibrary: owner.fromLibrary,
    clash: false,
  };
  taken.set(key, thing);
  return thing;
}

const quoted = (name: string): string =>
  /^[A-Za-z][A-Za-z0-9_-]*$/.test(name) ? name : `"${name.replace(/"/g, '""')}"`;
const dotted = (thing: Thing): string =>
  thing.owner ? `${quoted(thing.owner.name)}.${quoted(thing.name)}` : quoted(thing.name);

/** Is the thing in what the dotted name says? A beam declared as a range or taken over by `like` owns its points by each name. */
const within = (thing: Thing, text: readonly string[]): boolean => {
  const owners = thing.path.slice(0, -1).map(fold);
  const wanted = text.slice(0, -1).map(fold);
  return wanted.every((one) => owners.includes(one));
};

/** Where a path is broken: it runs from the top down to a pick, a beam point, or gear that other legs go on from. */
function fault(
  steps: LegUse['steps'],
): { readonly at: Place; readonly says: string; readonly nearest?: (plan: BoundPlan) => readonly string[] } | null {
  const [first] = steps;
  const last = steps.at(-1);
  if (!first || !last) return null;
  if (steps.length < 2)
    return { at: first.at, says: `it names only ${first.thing.name}; a leg runs from the hook down to a pick` };
  const many = steps.find(({ thing }) => isPick(thing) && copied(thing));
  if (many)
    return {
      at: many.at,
      says: `the pick ${many.thing.name} is there in each copy of ${copied(many.thing)?.name}; give each place that a leg meets a pick of its own, outside of it`,
    };
  const fromPick = isPick(first.thing);
  // A sling from pick to pick may run over the hook itself.
  const hook = fromPick ? undefined : steps.slice(1).find((step) => isHook(step.thing) && step.thing !== first.thing);
  if (hook)
    return { at: hook.at, says: `${hook.thing.name} stands below ${first.thing.name}; a hook stands at the top` };
  if (fromPick && !isPick(last.thing))
    return { at: first.at, says: `it begins at ${first.thing.name}, a pick, and ends at ${last.thing.name}` };
  if (
    !fromPick &&
    ['sling', 'shackle', 'turnbuckle', 'chain hoist', 'lever hoist', 'eyebolt', 'hoist ring'].includes(
      last.thing.item.keyword,
    ) &&
    last.thing.kind === 'gear' &&
    last.thing !== first.thing
  )
    return {
      at: last.at,
      says: `it ends at ${last.thing.name}; below it a pick or a beam point is due`,
      nearest: (plan) =>
        nearest(
          last.thing.name,
          plan.names.kind('pick').map((thing) => thing.name),
        ),
    };
  const beam = steps.find(
    (step) =>
      step.thing.kind === 'gear' &&
      (step.thing.item.keyword === 'spreader' || step.thing.item.keyword === 'lifting beam'),
  );
  if (beam) return { at: beam.at, says: `${beam.thing.name} is a beam; name the point of it that the leg meets` };
  return null;
}

/** The assembly that a pick stands in more than once with. */
function copied({ owner }: Thing): Thing | null {
  if (owner?.kind !== 'assembly') return null;
  return countOf(owner.item) === 1 ? copied(owner) : owner;
}

const bodyOf = (thing: Thing): Thing => (isPoint(thing) && thing.owner ? thing.owner : thing);

/** Each leg that does not begin at a hook must hang from something that other legs carry. */
function hangFromHooks(legs: readonly LegUse[], notes: Notes): readonly LegUse[] {
  const sound = legs.filter((leg) => !leg.broken);
  if (!sound.some((leg) => leg.steps.some((step) => isHook(step.thing)))) return legs;
  const carried = new Set<unknown>(
    sound.flatMap((leg) => leg.steps.filter((step) => isHook(step.thing)).map((step) => bodyOf(step.thing).item)),
  );
  for (let grew = true; grew; ) {
    grew = false;
    for (const leg of sound) {
      const top = leg.steps[0]?.thing;
      if (!top || isPick(top) || !carried.has(bodyOf(top).item)) continue;
      for (const { thing } of leg.steps)
        if (!carried.has(bodyOf(thing).item)) {
          carried.add(bodyOf(thing).item);
          grew = true;
        }
    }
    for (const leg of sound) {
      const over =
        leg.steps[0] && isPick(leg.steps[0].thing) && leg.steps.find((step) => carried.has(bodyOf(step.thing).item));
      if (over)
        for (const { thing } of leg.steps)
          if (!carried.has(bodyOf(thing).item)) {
            carried.add(bodyOf(thing).item);
            grew = true;
          }
    }
  }
  return legs.map((leg) => {
    const top = leg.steps[0];
    if (
      leg.broken ||
      !top ||
      carried.has(bodyOf(top.thing).item) ||
      (isPick(top.thing) && leg.steps.some((step) => carried.has(bodyOf(step.thing).item)))
    )
      return leg;
    notes.add(
      'path-broken',
      top.at,
      { where: `${bodyOf(top.thing).name} at its top hangs from nothing: no leg carries it`, nearest: [] },
      '',
    );
    return { ...leg, broken: true };
  });
}

/** A sling is in one leg, unless all above it is the same in both: one pendant down to a ring. */
function shareSlings(legs: readonly LegUse[], notes: Notes): readonly LegUse[] {
  const first = new Map<Thing, LegUse>();
  return legs.map((leg) => {
    if (leg.broken) return leg;
    for (const [i, { thing, at }] of leg.steps.entries()) {
      if (thing.item.keyword !== 'sling') continue;
      const other = first.get(thing);
      if (!other) first.set(thing, leg);
      else if (other !== leg && !leg.steps.slice(0, i + 1).every((step, k) => other.steps[k]?.thing === step.thing)) {
        notes.add(
          'path-broken',
          at,
          { where: `${thing.name} is already in another leg; one sling cannot be in two places`, nearest: [] },
          '',
          [{ at: other.item.at, says: 'the other leg' }],
        );
        return { ...leg, broken: true };
      } else if (other === leg && leg.steps.findIndex((step) => step.thing === thing) !== i) {
        notes.add('path-broken', at, { where: `${thing.name} stands twice in this leg`, nearest: [] }, '');
        return { ...leg, broken: true };
      }
    }
    return leg;
  });
}

/** An eye meets a lug, eyebolt or beam point only through a shackle, link or hook, or where the leg says `direct`. */
function joints(leg: LegUse, table: GearTable, notes: Notes): void {
  if (leg.item.clauses.get('direct')?.[0]?.value) return;
  for (let i = 0; i + 1 < leg.steps.length; i++) {
    const [above, below] = [leg.steps[i] as LegUse['steps'][number], leg.steps[i + 1] as LegUse['steps'][number]];
    const eyeDown =
      above.thing.item.keyword === 'sling' && !hasFitting(above.thing.item, table) && needsJoiner(below.thing);
    const eyeUp =
      below.thing.item.keyword === 'sling' &&
      needsJoiner(above.thing) &&
      !(isPick(above.thing) && i === 0 && hasFitting(below.thing.item, table));
    const twoEyes =
      above.thing.item.keyword === 'sling' &&
      below.thing.item.keyword === 'sling' &&
      !hasFitting(above.thing.item, table);
    if (eyeDown || eyeUp || twoEyes)
      notes.add('connection-missing', below.at, { a: above.thing.name, b: below.thing.name }, '', [
        { at: above.at, says: above.thing.name },
      ]);
  }
}

/** A lower end that is a hook or link joins by itself. */
function hasFitting(item: Item, table: GearTable): boolean {
  const end = table.clause(item, 'lower end')?.value;
  return end?.kind === 'word' && (end.word === 'hook' || end.word === 'link');
}

function needsJoiner(thing: Thing): boolean {
  if (isPick(thing)) {
    const kind = thing.item.clauses.get('kind')?.[0]?.value;
    return !(kind?.kind === 'word' && ['trunnion', 'edge', 'round'].includes(kind.word));
  }
  return isPoint(thing) || thing.item.keyword === 'eyebolt' || thing.item.keyword === 'hoist ring';
}

/** Legs with no hook at all hang from nothing: their load is named. */
function hooksMissing(plan: BoundPlan, legs: readonly LegUse[], notes: Notes): void {
  const sound = legs.filter((leg) => !leg.broken);
  const [first] = sound;
  if (!first || sound.some((leg) => leg.steps.some((step) => isHook(step.thing)))) return;
  const load =
    sound.flatMap((leg) => leg.steps).find((step) => isPick(step.thing))?.thing.load ?? plan.names.kind('load')[0];
  notes.add(
    'hook-missing',
    first.item.at,
    { load: load?.name ?? 'the load' },
    '',
    sound.slice(1).map((leg) => ({ at: leg.item.at, says: 'leg' })),
  );
}
