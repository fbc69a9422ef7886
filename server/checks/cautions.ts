// The standing cautions: one place for the words that every output must carry. No setting switches them off, folds or shortens them.
import { words } from '../quantities/write.ts';
import { unstopped } from './wording.ts';

const are = (n: number): string => (n === 1 ? 'is' : 'are');

/** Values for the words that tell the crew when to stop; null where the plan has none, and then the words say that it is not stated. */
export interface StopValues {
  /** The reading, and what it includes: `7,420 lb, with block and rigging`. */
  readonly reading: string | null;
  readonly tilt: string | null;
  readonly radius: string | null;
  readonly wind: string | null;
}

const stated = (value: string | null): string => value ?? 'a value this plan does not state';

export const cautions = {
  /** First screen of the README. */
  readme: {
    title: 'Before you rely on it.',
    text: 'Lifting can kill. Becket is a planning aid: it does the arithmetic of what a plan says. It cannot see the load, the gear, the crane, the ground or the weather. It approves nothing and replaces nobody. The law and codes where you lift, the crane maker\'s chart and manual, the tags and instructions of every item, and the judgement of a qualified person (licensed, where the law asks) come first and win over any number here. Have someone qualified who did not write the plan check inputs and results by other means. Where a weight is in doubt, weigh the load. "No findings" means only that these checks found nothing in what was written. Tables and rules name their source; compare them with the edition in force. No warranty: see LICENSE.',
  },
  /** Head of the sheet and of its preview; member `caution` of JSON. */
  sheetHead:
    "Planning aid, not an approval. A qualified person must check every figure against the load, gear, crane and ground as they really are. Local codes and makers' instructions come first.",
  /** Head of the sheet when open points exist. */
  openFigures: (n: number): string =>
    `${words(n, 'figure')} ${are(n)} not known. This plan cannot be used as it stands.`,
  /** Head of the sheet when rules are set aside. */
  rulesSetAside: (list: readonly string[]): string =>
    `${words(list.length, 'rule')} set aside: ${list.join(', ')}. Each stands on the named person's authority, not on a calculation.`,
  /** Head of the sheet when this version lacks a judgement. */
  notJudged: (list: readonly string[]): string =>
    `Not judged by this version: ${list.join(', ')}. A qualified person must judge these before any use.`,
  /** Foot of every page of the sheet and the lift-day page. */
  pageFoot: (revision: string, mark: string): string =>
    `Revision ${revision}, content mark ${mark}. Good only while load, gear, crane set-up, ground and weather are as written. Anything different: stop; have the plan changed, checked and approved again.`,
  /** Top of the lift-day page. */
  liftDay: ({ reading, tilt, radius, wind }: StopValues): string =>
    `Stop if the load cell or crane indicator reads more than ${stated(reading)}; if a leg named tight goes slack; if the load hangs more than ${stated(tilt)} out of level; if the measured radius passes ${stated(radius)} or the wind ${stated(wind)}; if you are in doubt. Anyone may stop the lift. Nobody under the load.`,
  /** Hover on a number that rests on an assumption. */
  assumed: (assumption: string): string =>
    `Assumed: ${unstopped(assumption)}. Nobody has confirmed it for this lift. Find evidence or measure before relying on this number.`,
  /** Hover on a number that rests on an estimate. */
  estimate: (source: string, percent: string, rule: string): string =>
    `Rests on an estimate (${source}); ${percent} is added under ${rule}. Weigh before the lift where you can.`,
  /** Hover on an open number. */
  notKnown: (reason: string): string =>
    `Not known: ${unstopped(reason)}. Everything built on it is not known either. Unknown is not zero.`,
  /** Hover on a built-in limit or table. */
  builtIn: (source: string): string => `A default of this program (${source}), not a rule of your site or country.`,
  /** Command line, after a check that found something. */
  checked: (findings: number, plans: number): string =>
    `${words(findings, 'finding')} in ${words(plans, 'plan')}. Only what is written was checked; this approves no lift.`,
  /** Command line, after a check that found nothing. */
  nothingFound: (plans: number, subjects: readonly string[]): string =>
    `No findings in ${words(plans, 'plan')}. Not stated, so not checked: ${subjects.join(', ')}. This approves no lift.`,
  /** Command line, help. */
  help: "Planning aid. Local codes, makers' instructions and qualified or licensed people decide.",
  /** First line of a pull-request comment. */
  pullRequest: "Figures worked out from the plan's text. Merging is not an approval to lift.",
} as const;
