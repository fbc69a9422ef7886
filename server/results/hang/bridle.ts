// One tag over several slings: all they lift together against the tag, the flattest of them against its angle.
import { type BoundPlan, given, namesOf, openLines, type Thing } from '../../plan/index.ts';
import { asWritten, type Derived, known, open, unique } from '../../quantities/derived.ts';
import type { NameUse } from '../../syntax/types.ts';
import type { LegUse } from '../types.ts';
import { times } from './factors.ts';
import type { Figures, Pulls } from './figures.ts';
import type { HangInput } from './hang.ts';
import { flat } from './hardware.ts';
import { chokerFactors, holdsOf } from './hitch.ts';
import { type Built, g } from './model.ts';
import type { Ratings } from './ratings.ts';
import { ratio, whileHeld, worstOf } from './used.ts';

/** Every bridle of a plan with the slings its tag is for. */
export function bridlesOf(plan: BoundPlan): readonly { readonly bridle: Thing; readonly slings: readonly Thing[] }[] {
  const gear = plan.names.things.filter((thing) => thing.kind === 'gear');
  return plan.names.things
    .filter((thing) => thing.kind === 'bridle')
    .map((bridle) => {
      const names = namesOf(bridle.item, 'items');
      const unread = !names.length || bridle.item.opens.length > 0; // then it may be about any sling
      const is = (thing: Thing): boolean =>
        unread ? thing.item.keyword === 'sling' : names.some((name) => covers(name, thing.name));
      return { bridle, slings: gear.filter(is) };
    });
}

/** Lowers what slings under one tag have left to what the tag leaves them. A sling without a capacity of its own has only the tag's. */
export function underOneTag(ratings: Ratings, built: Built, pulls: Pulls, figures: Map<Thing, Figures>): void {
  const { input } = ratings;
  for (const { bridle, slings } of bridlesOf(input.plan)) {
    const edges = built.edges.flatMap(({ edge }, s) =>
      edge.items.some((thing) => slings.includes(thing))
        ? [{ edge, pull: pulls.edges[s] as Pulls['edges'][number] }]
        : [],
    );
    if (!edges.length) continue;
    const alone = built.edges.every(({ edge }) =>
      edge.items.every((thing) => thing.item.keyword !== 'sling' || slings.includes(thing)),
    );
    const lifted = whileHeld(together(edges, alone, bridle), input.held, null);
    const tagged = ratio(lifted, tagOf(bridle, slings, edges, input));
    for (const thing of slings) {
      const own = figures.get(thing);
      if (!own) continue;
      const barred = ratings.barred(thing);
      const bare = barred.length ? open('1', barred) : tagged;
      figures.set(thing, {
        ...own,
        'capacity used':
          input.table.given(thing.item, 'capacity').state === 'absent'
            ? bare
            : worstOf([own['capacity used'] as Derived, tagged]),
      });
    }
  }
}

type Pulled = { readonly edge: Built['edges'][number]['edge']; readonly pull: Pulls['edges'][number] };

/** What the tag allows: as it says for straight legs, cut as the worst of its chokers; open below its angle and in other hitches. */
function tagOf(
  bridle: Thing,
  slings: readonly Thing[],
  edges: readonly Pulled[],
  { legs, table, notes }: HangInput,
): Derived {
  const [capacity, least] = [given(bridle.item, 'capacity'), given(bridle.item, 'least angle')];
  const lines = openLines(bridle.item);
  if (capacity.state !== 'known' || least.state !== 'known' || lines.length) {
    const because = unique([
      ...lines,
      ...[capacity, least].flatMap((one) => (one.state === 'open' ? one.because : [])),
    ]);
    return open(
      'kg',
      because.length ? because : [{ what: `The tag of ${bridle.name} is not complete.`, at: bridle.item.nameAt }],
    );
  }
  const flattest = edges.reduce<Pulled | null>(
    (least, one) =>
      one.pull.angle !== null && (least?.pull.angle ?? Number.POSITIVE_INFINITY) > one.pull.angle ? one : least,
    null,
  );
  const angle = flattest?.pull.angle ?? null;
  if (flattest && angle !== null && angle < least.quantity.high - 1e-12)
    return open('kg', [flat(bridle, { leg: flattest.edge.legs[0] as LegUse, angle }, least.quantity.high, notes)]);
  const rated: Derived = asWritten(capacity, 'kg', `tag of ${bridle.name}`);
  const held = legs.flatMap((leg) =>
    holdsOf(leg).flatMap(({ sling, hold }) => (slings.includes(sling) ? [{ leg, sling, hold }] : [])),
  );
  const cuts = held.map(({ leg, sling, hold }): Derived => {
    if (hold === 'vertical') return rated;
    if (hold !== 'choker')
      return open('kg', [
        { what: `The tag of ${bridle.name} is for straight legs, and ${sling.name} is not one.`, at: leg.item.at },
      ]);
    const cut = chokerFactors(sling, leg, false, { table, notes });
    return 'causes' in cut ? open('kg', cut.causes) : times({ label: 'tag capacity', value: rated }, cut.factors);
  });
  const causes = unique(cuts.flatMap((one) => one.because));
  return causes.length
    ? open('kg', causes)
    : cuts.reduce((worst, one) => ((one.low as number) < (worst.low as number) ? one : worst), rated);
}

/** What the slings lift together, kg: as they hang where they lift all of it, for their sum is certain however they share; else each at its worst. */
function together(edges: readonly Pulled[], alone: boolean, { name, item }: Thing): Derived {
  const rise = edges.map(({ edge, pull }) => {
    const newton = alone ? pull.elastic : pull.worst;
    return newton === null
      ? null
      : edge.over.length
        ? newton * (edge.over.length + 1)
        : newton * Math.sin(pull.angle ?? Math.PI / 2);
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
