// A load: what each piece of evidence says it weighs, which figure governs, and where its centre is.
import { type BoundPlan, childrenOf, given, type Thing, textOf } from '../plan/index.ts';
import { type Cause, type Derived, open, unique } from '../quantities/derived.ts';
import { type Summed, sumUp } from './bodies.ts';
import { calculated, statedBy, weighedBy } from './candidates.ts';
import { unstatedContents } from './contents.ts';
import { govern } from './governing.ts';
import { centre, doubt, reaching } from './load-centre.ts';
import type { Context } from './load-context.ts';
import type { Notes } from './notes.ts';
import { ahead } from './papers.ts';
import { Layout } from './place.ts';
import type { LoadResult } from './types.ts';

/** Everything known about one load. */
export function loadResult(
  thing: Thing,
  plan: BoundPlan,
  notes: Notes,
): LoadResult & { readonly body: Summed; readonly layout: Layout } {
  const layout = new Layout(plan, thing, notes);
  const body = withContents(sumUp(thing, layout, notes), unstatedContents(layout, notes));
  const context: Context = {
    thing,
    plan,
    body,
    layout,
    notes,
    item: thing.item,
    own: given(thing.item, 'contingency'),
  };
  const candidates = [
    ...calculated(context),
    ...childrenOf(thing.item, 'stated').map((item) => statedBy(item, context)),
    ...childrenOf(thing.item, 'weighed').map((item) => weighedBy(item, context)),
  ];
  const { governing, weight } = govern(context, candidates);
  const cog = centre(context, candidates, governing);
  holding(context);
  dates(context);
  const other = doubt(context, { thing, body, candidates, ...cog });
  return {
    thing,
    body,
    layout,
    candidates,
    governing,
    weight,
    ...cog,
    cog: other ? (cog.cog.map((axis, i) => reaching(axis, other[i])) as unknown as LoadResult['cog']) : cog.cog,
  };
}

/** A closed space of which nothing is said leaves the sum open, not the part: what is in it is not known. */
function withContents(body: Summed, unstated: ReadonlyMap<Thing, Cause>): Summed {
  if (!unstated.size) return body;
  const causes = [...unstated.values()];
  const guard = (value: Derived): Derived => open(value.unit, unique([...causes, ...value.because]), { at: value.at });
  return { ...body, weight: guard(body.weight), cog: [guard(body.cog[0]), guard(body.cog[1]), guard(body.cog[2])] };
}

/** What was read or written after the lift was not read for it. */
function dates({ item, plan, notes }: Context): void {
  const lift = plan.head ? textOf(plan.head, 'date') : null;
  for (const one of item.children) {
    if (one.keyword === 'stated') ahead(one, 'dated', 'The stated weight', lift, plan, notes);
    if (one.keyword === 'weighed') ahead(one, 'dated', 'The weighing', lift, plan, notes);
    if (one.keyword === 'cog') ahead(one, 'dated', 'The centre of gravity', lift, plan, notes);
  }
  ahead(item, 'modified', 'The change of the load', lift, plan, notes);
}

/** Nothing says what holds the load, or that it is free. */
function holding({ item, notes, thing }: Context): void {
  if (!item.children.some((child) => child.keyword === 'held by' || child.keyword === 'free'))
    notes.add('holding-unstated', item.nameAt, { load: thing.name }, '');
}
