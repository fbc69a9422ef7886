// What a sling may carry in its hitch, factor by factor: choker, basket, doubled, and over a bend. A tag's own figure wins over a factor.
import { type Construction, chokeAngleFactor, chokerFactor } from '../../catalog/index.ts';
import { doubledShare } from '../../mechanics/index.ts';
import { type BoundPlan, given, type Thing } from '../../plan/index.ts';
import { type Cause, type Derived, type Input, known, open, unique } from '../../quantities/derived.ts';
import { capacityOf, type GearTable } from '../gear.ts';
import type { Notes } from '../notes.ts';
import type { LegUse } from '../types.ts';
import { wordOf } from './baskets.ts';
import { bendFactor, bendOf, constructionOf, kindUnread, pickKind } from './bends.ts';
import { assuming, factor, tagInput, times } from './factors.ts';

export interface HitchInput {
  readonly plan: BoundPlan;
  readonly legs: readonly LegUse[];
  readonly table: GearTable;
  readonly notes: Notes;
}

/** How a sling takes hold in a leg; `over`: it runs over gear with its body, from pick to pick; `part`: one part of a basket that comes back up. */
export type Hold = 'vertical' | 'choker' | 'basket' | 'part' | 'doubled' | 'over';

/**
 * What each sling may carry at its upper end, kg: in one part where its parts have a pull of their own (a basket whose path comes back up,
 * a sling over gear), in both together where they lie side by side (doubled, a basket that ends at its pick). Open where something
 * the hitch needs is not said.
 */
export function slingRatings(input: HitchInput): ReadonlyMap<Thing, Derived> {
  const ratings = new Map<Thing, Derived>();
  for (const leg of input.legs)
    if (!leg.broken)
      for (const { sling, hold } of holdsOf(leg)) {
        const rating =
          hold === 'choker'
            ? choker(sling, leg, input)
            : hold === 'basket' || hold === 'part'
              ? basket(sling, leg, hold, input)
              : hold === 'doubled'
                ? doubled(sling, leg, input)
                : straight(sling, leg, hold, input);
        const before = ratings.get(sling);
        ratings.set(sling, before && (before.low ?? 0) <= (rating.low ?? 0) ? before : rating);
      }
  return ratings;
}

/** Every sling of a leg with its hold. A hitch belongs to the sling that meets the load; a path over picks is a basket. */
export function holdsOf(leg: LegUse): readonly { readonly sling: Thing; readonly hold: Hold }[] {
  const things = leg.steps.map((step) => step.thing);
  const slings = things.filter((thing) => thing.item.keyword === 'sling');
  const hitch = wordOf(leg.item, 'hitch') || 'vertical';
  if (things[0]?.kind === 'pick') return slings.map((sling) => ({ sling, hold: 'over' }));
  const back = things.findIndex((thing, i) => things.indexOf(thing, i + 1) > 0);
  const overPicks = things.slice(0, -1).some((thing) => thing.kind === 'pick');
  if (overPicks) return slings.map((sling) => ({ sling, hold: things.indexOf(sling) > back ? 'part' : 'vertical' }));
  return slings.map((sling) => ({ sling, hold: sling === slings.at(-1) ? (hitch as Hold) : 'vertical' }));
}

function choker(sling: Thing, leg: LegUse, input: HitchInput): Derived {
  const { item } = sling;
  const tag = input.table.given(item, 'choker capacity');
  const cut = chokerFactors(sling, leg, tag.state !== 'absent', input);
  if ('causes' in cut) return open('kg', cut.causes, { at: item.nameAt });
  if (tag.state === 'known') return times(tagInput('choker capacity', sling, tag), cut.factors);
  if (tag.state === 'open') return open('kg', tag.because, { at: item.nameAt });
  return times({ label: 'vertical capacity', value: capacityOf(sling, input.table) }, cut.factors);
}

/** What a choker takes off a rating: off the choker rating of a tag only for its angle, off a vertical one for the choke as well. */
export function chokerFactors(
  sling: Thing,
  leg: LegUse,
  tagged: boolean,
  { table, notes }: Pick<HitchInput, 'table' | 'notes'>,
): { readonly factors: readonly Input[] } | { readonly causes: readonly Cause[] } {
  const causes: Cause[] = [];
  const where = leg.item.clauses.get('hitch')?.[0]?.at ?? leg.item.at;
  if (!leg.item.clauses.has('around') && !leg.item.clauses.has('wrap'))
    causes.push(
      notes.add(
        'clause-missing',
        where,
        { item: 'A choker', clause: 'around or wrap', why: 'how much of the sling it spends' },
        `Nothing says what ${sling.name} goes round.`,
      ),
    );
  const angle = given(leg.item, 'choke angle');
  if (angle.state === 'absent' || angle.state === 'none')
    causes.push(
      notes.add(
        'clause-missing',
        where,
        { item: 'A choker', clause: 'choke angle', why: 'its capacity falls with it' },
        `The choke angle of ${sling.name} is not said.`,
      ),
    );
  if (angle.state === 'open') causes.push(...angle.because);
  const of = constructionOf(sling.item, table);
  if (!tagged && !of)
    causes.push(
      notes.add(
        'clause-missing',
        sling.item.nameAt,
        {
          item: `sling ${sling.name}`,
          clause: 'choker capacity',
          why: 'nothing says what it is made of, so no factor holds',
        },
        `Nothing says what ${sling.name} is made of.`,
      ),
    );
  const around =
    given(leg.item, 'bend diameter').state === 'absent' ? given(leg.item, 'around') : given(leg.item, 'bend diameter');
  const bend =
    around.state === 'known'
      ? bendOf(sling, leg, { at: around.at, low: around.quantity.low, name: null }, { table, notes })
      : null;
  if (bend && 'causes' in bend) causes.push(...bend.causes);
  if (causes.length || angle.state !== 'known') return { causes: unique(causes) };
  const at = angle.quantity.low;
  if (tagged) return { factors: [factor('choke angle', chokeAngleFactor(at, null), angle.at)] };
  const own = chokerFactor(of as Construction);
  return { factors: [factor('choker', own, where), factor('choke angle', chokeAngleFactor(at, own.share), angle.at)] };
}

/** A basket: one part of it where each has its own pull (how they spread is in that pull already), else both. */
function basket(sling: Thing, leg: LegUse, hold: 'basket' | 'part', input: HitchInput): Derived {
  const { table } = input;
  const bend = bendFactor(sling, leg, input);
  const tag = table.given(sling.item, 'basket capacity');
  if (tag.state === 'open') return open('kg', tag.because, { at: sling.item.nameAt });
  if ('causes' in bend) return open('kg', bend.causes, { at: sling.item.nameAt });
  const both = hold === 'basket';
  if (tag.state !== 'known')
    return assuming(
      times(
        { label: 'vertical capacity', value: capacityOf(sling, table) },
        both ? [twoParts, ...bend.factors] : bend.factors,
      ),
      bend.assumptions,
    );
  const cut = bend.ratio !== null && bend.ratio >= tagBend ? [] : bend.factors;
  return assuming(
    times(tagInput('basket capacity', sling, tag), cut, both ? null : { label: '2', value: 2 }),
    bend.assumptions,
  );
}

const twoParts: Input = { label: 'parts', value: known(2, '1', { source: 'two parts of one sling, side by side' }) };

/** Basket ratings on tags hold for bends of at least 25 rope diameters (US rating tables for mechanical splices). */
const tagBend = 25;

/** Both parts together: one of them gets the larger share. */
function doubled(sling: Thing, leg: LegUse, input: HitchInput): Derived {
  const bend = bendFactor(sling, leg, input);
  if ('causes' in bend) return open('kg', bend.causes, { at: sling.item.nameAt });
  return assuming(
    times({ label: 'vertical capacity', value: capacityOf(sling, input.table) }, bend.factors, {
      label: 'larger share',
      value: doubledShare,
    }),
    bend.assumptions,
  );
}

function straight(sling: Thing, leg: LegUse, hold: Hold, input: HitchInput): Derived {
  const capacity = capacityOf(sling, input.table);
  if (hold === 'vertical' && !leg.item.clauses.has('bend diameter')) return capacity;
  const bend = bendFactor(sling, leg, input);
  return 'causes' in bend
    ? open('kg', bend.causes, { at: sling.item.nameAt })
    : assuming(times({ label: 'vertical capacity', value: capacity }, bend.factors), bend.assumptions);
}

/** Slings that bear on a bare edge: what they may carry is not known. */
export function bareEdges({ legs, notes }: HitchInput): ReadonlyMap<Thing, Cause> {
  const bare = new Map<Thing, Cause>();
  for (const leg of legs)
    if (!leg.broken && !leg.item.clauses.has('edge protection') && !leg.item.clauses.has('bend diameter'))
      leg.steps.forEach(({ thing, at }, i) => {
        const kind = pickKind(thing);
        if (kind !== 'edge' && kind !== null) return;
        const slings = leg.steps
          .slice(0, i)
          .map((step) => step.thing)
          .filter((one) => one.item.keyword === 'sling');
        const sling = slings.at(-1) ?? leg.steps.slice(i).find((step) => step.thing.item.keyword === 'sling')?.thing;
        if (sling && kind === null) bare.set(sling, kindUnread(thing));
        else if (sling)
          bare.set(
            sling,
            notes.add(
              'edge-bare',
              at,
              { sling: sling.name, load: thing.load?.name ?? 'the load' },
              `${sling.name} bears on a bare edge.`,
              [{ at: thing.item.nameAt, says: thing.name }],
            ),
          );
      });
  return bare;
}
