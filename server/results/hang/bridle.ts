// One tag over several slings: all they lift together against the tag, the flattest of them against its angle.
import { type BoundPlan, given, namesOf, type Thing } from '../../plan/index.ts';
import { type Derived, known, open, unique } from '../../quantities/derived.ts';
import type { NameUse } from '../../syntax/types.ts';
import type { Notes } from '../notes.ts';
import type { LegUse } from '../types.ts';
import type { Figures, Pulls } from './figures.ts';
import { flat } from './hardware.ts';
import { type Built, g } from './model.ts';
import { ratio, worstOf } from './used.ts';

/** Every bridle of a plan with the slings its tag is for. */
export function bridlesOf(plan: BoundPlan): readonly { readonly bridle: Thing; readonly slings: readonly Thing[] }[] {
  const gear = plan.names.things.filter((thing) => thing.kind === 'gear');
  return plan.names.things.filter((thing) => thing.kind === 'bridle').map((bridle) => {
    const names = namesOf(bridle.item, 'items');
    return { bridle, slings: gear.filter((thing) => names.some((name) => covers(name, thing.name))) };
  });
}

/** Lowers what slings under one tag have left to what the tag leaves them. */
export function underOneTag(plan: BoundPlan, legs: readonly LegUse[], built: Built, pulls: Pulls, figures: Map<Thing, Figures>, notes: Notes): void {
  for (const { bridle, slings } of bridlesOf(plan)) {
    const edges = built.edges.flatMap(({ edge }, s) => (edge.items.some((thing) => slings.includes(thing)) ? [{ edge, pull: pulls.edges[s] as Pulls['edges'][number] }] : []));
    const [first] = edges;
    if (!first) continue;
    const alone = built.edges.every(({ edge }) => edge.items.every((thing) => thing.item.keyword !== 'sling' || slings.includes(thing)));
    const capacity = tagOf(bridle, edges.flatMap(({ pull }) => pull.angle ?? []), first.edge.legs[0] as LegUse, notes);
    const lifted = together(edges, alone, bridle);
    for (const thing of slings) {
      const own = figures.get(thing);
      if (!own) continue;
      const tagged = ratio(lifted, capacity);
      const used = own['capacity used'] as Derived;
      figures.set(thing, { ...own, 'capacity used': thing.item.clauses.has('capacity') || used.because.length === 0 ? worstOf([used, tagged]) : tagged });
    }
  }
}

/** What the tag allows; open below its angle. */
function tagOf(bridle: Thing, angles: readonly number[], leg: LegUse, notes: Notes): Derived {
  const [capacity, least] = [given(bridle.item, 'capacity'), given(bridle.item, 'least angle')];
  if (capacity.state !== 'known' || least.state !== 'known') {
    const because = unique([capacity, least].flatMap((one) => (one.state === 'open' ? one.because : [])));
    return open('kg', because.length ? because : [{ what: `The tag of ${bridle.name} is not complete.`, at: bridle.item.nameAt }]);
  }
  const flattest = Math.min(...angles);
  if (flattest < least.quantity.high - 1e-12) return open('kg', [flat(bridle, { leg, angle: flattest }, least.quantity.high, notes)]);
  return known(capacity.quantity.value, 'kg', { source: `tag of ${bridle.name}`, at: capacity.at }, capacity.quantity.low, capacity.quantity.high);
}

/** What the slings lift together, kg: as they hang where they lift all of it, for their sum is certain however they share; else each at its worst. */
function together(edges: readonly { readonly edge: Built['edges'][number]['edge']; readonly pull: Pulls['edges'][number] }[], alone: boolean, { name, item }: Thing): Derived {
  const rise = edges.map(({ edge, pull }) => {
    const newton = alone ? pull.elastic : pull.worst;
    return newton === null ? null : edge.over.length ? newton * (edge.over.length + 1) : newton * Math.sin(pull.angle ?? Math.PI / 2);
  });
  if (rise.includes(null)) return open('kg', [{ what: `Nothing bounds what ${name} lifts.`, at: item.nameAt }]);
  const sum = rise.reduce<number>((all, one) => all + (one as number), 0);
  return known(sum / g, 'kg', { source: `what the slings of ${name} lift together`, at: item.nameAt });
}

function covers(use: NameUse, name: string): boolean {
  const first = use.parts.at(-1)?.text ?? '';
  if (!use.until) return first.toLowerCase() === name.toLowerCase();
  const number = (text: string) => Number(/\d+$/.exec(text)?.[0] ?? Number.NaN);
  const stem = (text: string) => text.replace(/\d+$/, '').toLowerCase();
  return stem(name) === stem(first) && number(name) >= number(first) && number(name) <= number(use.until.text);
}
