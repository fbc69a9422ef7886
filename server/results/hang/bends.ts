// What a bend leaves of a sling: over what its body bears, how tight, and the table of its construction.
import {
  type Construction,
  chainBendFactor,
  constructions,
  type Factor,
  leastBend,
  ropeBendOnCurve,
  ropeBendSource,
} from '../../catalog/index.ts';
import { bendEfficiency } from '../../mechanics/index.ts';
import { given, type Item, type Thing } from '../../plan/index.ts';
import type { Cause, Input } from '../../quantities/derived.ts';
import type { Place } from '../../syntax/types.ts';
import type { GearTable } from '../gear.ts';
import { because, type Notes } from '../notes.ts';
import type { LegUse } from '../types.ts';
import { wordOf } from './baskets.ts';
import { factor } from './factors.ts';

interface BendInput {
  readonly table: GearTable;
  readonly notes: Notes;
}

export interface Bend {
  readonly factors: readonly Input[];
  readonly assumptions: readonly string[];
  readonly ratio: number | null; // D/d; null: no table by ratio
}

/** What a bend leaves of a sling, or why that cannot be said. */
export function bendFactor(sling: Thing, leg: LegUse, input: BendInput): Bend | { readonly causes: readonly Cause[] } {
  const { notes, table } = input;
  const of = constructionOf(sling.item, table);
  if (of === 'web' || of === 'round')
    return {
      factors: [],
      ratio: null,
      assumptions: [`${sling.name} bears over its whole width, on nothing sharper than its maker allows`],
    };
  if (of !== 'wire rope' && of !== 'chain')
    return {
      causes: [
        because(
          `No table here says what a bend leaves of ${sling.name}${of ? `, a ${of} sling` : ''}.`,
          sling.item.nameAt,
        ),
      ],
    };
  const over = diameterOver(leg);
  if (over.state === 'open') return { causes: over.because };
  if (over.state === 'absent')
    return {
      causes: [
        notes.add(
          'clause-missing',
          leg.item.clauses.get('hitch')?.[0]?.at ?? leg.item.at,
          {
            item: 'This leg',
            clause: 'bend diameter',
            why: `${of === 'chain' ? 'a chain' : 'wire rope'} loses capacity where it bends`,
          },
          `Nothing says over what ${sling.name} bends.`,
        ),
      ],
    };
  return bendOf(sling, leg, over, input);
}

/** The bend of a rope or chain over a diameter; notes one that is tight. */
export function bendOf(
  sling: Thing,
  leg: LegUse,
  over: { readonly at: Place; readonly low: number; readonly name: string | null },
  { table, notes }: BendInput,
): Bend | { readonly causes: readonly Cause[] } {
  const of = constructionOf(sling.item, table);
  const thick = table.given(sling.item, 'diameter');
  if (of !== 'wire rope' && of !== 'chain') return { factors: [], assumptions: [], ratio: null };
  if (thick.state !== 'known')
    return {
      causes:
        thick.state === 'open'
          ? thick.because
          : [
              notes.add(
                'clause-missing',
                sling.item.nameAt,
                { item: `sling ${sling.name}`, clause: 'diameter', why: 'how tight it bends' },
                `The diameter of ${sling.name} is not said.`,
              ),
            ],
    };
  const ratio = over.low / thick.quantity.high;
  const left = of === 'chain' ? chainBendFactor(ratio) : ropeFactor(ratio);
  const barred = ratio < leastBend.ratio || !left;
  const facts = {
    sling: sling.name,
    d: thick.quantity.high,
    over: over.name,
    D: over.low,
    ratio,
    least: barred ? leastBend.ratio : null,
    falls: left?.share ?? 0,
  };
  const cause =
    ratio < tight
      ? notes.add('bend-tight', over.at, facts, `${sling.name} bends too tight.`, [{ at: leg.item.at, says: 'leg' }])
      : null;
  if (barred || !left) return { causes: [cause ?? because(`${sling.name} bends too tight.`, over.at)] };
  return { factors: [factor('bend', left, over.at)], assumptions: [], ratio };
}

/** An eye goes over nothing thinner than two rope diameters (0027/ND rev 11.2, 7.8.5; EN 13414-1); a body so bent is told of. */
const tight = 2;

/** The lower of the published formula and the curve. */
function ropeFactor(ratio: number): Factor | null {
  const [formula, curve] = [bendEfficiency(ratio), ropeBendOnCurve(ratio)];
  return formula === null || curve === null ? null : { share: Math.min(formula, curve), source: ropeBendSource };
}

type Over =
  | { readonly state: 'known'; readonly at: Place; readonly low: number; readonly name: string | null }
  | { readonly state: 'open'; readonly because: readonly Cause[] }
  | { readonly state: 'absent' };

/** What the body of a leg's sling bends over: as the leg says, else the thinnest round pick or trunnion in it. */
function diameterOver(leg: LegUse): Over {
  const said = given(leg.item, 'bend diameter');
  if (said.state === 'open') return said;
  // What the leg says and what the picks say: the tighter bend counts.
  let thinnest: Over =
    said.state === 'known' ? { state: 'known', at: said.at, low: said.quantity.low, name: null } : { state: 'absent' };
  for (const { thing } of leg.steps) {
    const kind = pickKind(thing);
    if (kind === null) return { state: 'open', because: [kindUnread(thing)] };
    if (kind !== 'round' && kind !== 'trunnion') continue;
    const across = given(thing.item, 'diameter');
    if (across.state === 'open') return across;
    if (across.state === 'known' && (thinnest.state !== 'known' || across.quantity.low < thinnest.low))
      thinnest = { state: 'known', at: across.at, low: across.quantity.low, name: thing.name };
  }
  return thinnest;
}

export const constructionOf = (item: Item, table: GearTable): Construction | null =>
  constructions.find((word) => table.clause(item, word)) ?? null;

/** The kind of a pick; '' where none is said or it is no pick, null where it could not be read. */
export const pickKind = (thing: Thing): string | null => (thing.kind === 'pick' ? wordOf(thing.item, 'kind') : '');

export const kindUnread = (pick: Thing): Cause =>
  because(`What kind of pick ${pick.name} is could not be read.`, pick.item.nameAt);
