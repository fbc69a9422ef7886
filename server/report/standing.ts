// How a plan stands: what is over a limit, at odds, not known, set aside, left to a person, or not stated at all.
import { checks, type Effect, type Finding } from '../checks/index.ts';
import { fold } from '../plan/index.ts';
import type { Cause } from '../quantities/index.ts';
import type { Result, Results } from '../results/types.ts';
import type { Snapshot } from '../workspace/index.ts';
import { placeIn } from './places.ts';
import { notStated } from './unstated.ts';

export interface Standing {
  readonly over: readonly Finding[]; // over a limit or against a rule; the figure is known
  readonly atOdds: readonly Finding[]; // two figures disagree; the safer one is used
  readonly notJudged: readonly Finding[]; // this version reads it but does not work it out
  readonly gaps: readonly Gap[];
  /** Results of consequence that are not known, for a reason that lies in the text; what this version cannot work out has no place there. */
  readonly open: readonly Result[];
  readonly setAside: readonly Finding[];
  readonly toDecide: readonly Finding[]; // warnings
  readonly remarks: readonly Finding[]; // notes
  readonly notStated: readonly string[];
}

/** Something that is missing, and the figures that it leaves open. */
export interface Gap {
  readonly finding: Finding | null; // null: no finding stands on that line
  readonly causes: readonly Cause[]; // of one line; empty where a finding says it
  readonly leaves: readonly Result[];
}

export function standing({ findings, plan, results }: Snapshot): Standing {
  const active = findings.filter(({ waived }) => !waived);
  const used = inLegs(results);
  const open = results.list.filter(
    (result) => result.value.because.some(({ at }) => placeIn(at)) && ofConsequence(result, used),
  );
  const undecided = new Set(results.expects.filter(({ state }) => state === 'open').map(({ at }) => at.row));
  const isOpen = (finding: Finding): boolean =>
    opens(finding) || (finding.slug === 'expect-failed' && undecided.has(finding.at.row));
  const error = (...effects: readonly Effect[]) =>
    active.filter(({ slug, severity }) => severity === 'error' && effects.includes(effectOf(slug)));
  const notJudged = active.filter(({ slug }) => slug === 'not-judged');
  const opening = active.filter((finding) => isOpen(finding) && !notJudged.includes(finding));
  return {
    over: error('stands').filter((finding) => !isOpen(finding)),
    atOdds: error('heavier'),
    notJudged,
    gaps: gaps(opening, open),
    open,
    setAside: findings.filter(({ waived }) => waived),
    toDecide: active.filter((finding) => finding.severity === 'warning' && !opens(finding)),
    remarks: active.filter((finding) => finding.severity === 'note'),
    notStated: plan.head ? notStated(plan) : [],
  };
}

const opens = ({ slug, severity }: Finding): boolean =>
  effectOf(slug) === 'opens centre' || (severity === 'error' && effectOf(slug) === 'open');

/** In words, worst first: `1 over, 3 not known, 4 not stated`. */
export function standingWords(standing: Standing): string {
  const { over, atOdds, notJudged, setAside, toDecide, notStated } = standing;
  const notKnown = countOpen(standing);
  const counts: readonly (readonly [number, string])[] = [
    [over.length, 'over'],
    [atOdds.length, 'at odds'],
    [notKnown, 'not known'],
    [notJudged.length, 'not judged'],
    [setAside.length, 'set aside'],
    [toDecide.length, 'to decide'],
    [notStated.length, 'not stated'],
  ];
  const said = counts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`);
  const found = over.length + atOdds.length + notKnown + notJudged.length + setAside.length;
  return found ? said.join(', ') : [...said, `no ${said.length ? 'other ' : ''}open points found`].join(', ');
}

/** How many figures are not known; at least one for each thing that is missing. */
export const countOpen = ({ open, gaps }: Standing): number => Math.max(open.length, gaps.length);

/** A slug without a check cannot come; if it did, what it speaks of would count as open. */
const effectOf = (slug: string): Effect => (slug in checks ? checks[slug as keyof typeof checks].effect : 'open');

/** Names of all that legs run through, by their paths. */
const inLegs = ({ legs }: Results): ReadonlySet<string> =>
  new Set(legs.flatMap(({ steps }) => steps.map(({ thing }) => pathKey(thing.path))));

const pathKey = (path: readonly string[]) => JSON.stringify(path.map(fold));

/** Results without which the plan cannot be used. Sizes and volumes may stay open without harm, and so may what hangs in no leg. */
function ofConsequence({ subject: { kind, path }, result }: Result, used: ReadonlySet<string>): boolean {
  const asked = consequence[kind];
  if (asked && kind !== 'pick') return asked.includes(result);
  return (asked ?? gearConsequence).includes(result) && used.has(pathKey(path));
}

const gearConsequence: readonly string[] = ['tension', 'capacity used', 'compression'];
const consequence: Readonly<Record<string, readonly string[]>> = {
  plan: ['load weight', 'rigging weight', 'deductions', 'gross load'],
  load: ['weight', 'cog x', 'cog y', 'cog z'],
  assembly: [],
  part: ['weight'],
  pick: ['pull', 'capacity used'],
  crane: ['gross load', 'gross capacity', 'capacity used'],
  position: ['gross load', 'gross capacity', 'capacity used'],
  support: ['reaction', 'pressure', 'capacity used'],
  ground: ['pressure', 'capacity used'],
  weather: ['wind force', 'wind limit'],
};

/** Each finding that opens something with the figures its line leaves open; then the causes that no finding speaks of. */
function gaps(findings: readonly Finding[], open: readonly Result[]): readonly Gap[] {
  const rows = new Set(findings.map(({ at }) => at.row));
  const found = findings.map(
    (finding): Gap => ({
      finding,
      causes: [],
      leaves: open.filter(({ value }) => value.because.some(({ at }) => placeIn(at)?.row === finding.at.row)),
    }),
  );
  const others = new Map<unknown, { readonly causes: Cause[]; readonly leaves: Result[] }>();
  for (const result of open) {
    for (const cause of result.value.because) {
      const row = placeIn(cause.at)?.row;
      if (row && rows.has(row)) continue;
      const gap = others.get(row ?? cause.what) ?? { causes: [], leaves: [] };
      others.set(row ?? cause.what, gap);
      if (!gap.causes.some(({ what }) => what === cause.what)) gap.causes.push(cause);
      if (!gap.leaves.includes(result)) gap.leaves.push(result);
    }
  }
  return [...found, ...[...others.values()].map((gap): Gap => ({ finding: null, ...gap }))];
}
