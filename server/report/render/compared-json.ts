// The JSON comparison, version 1: the contract with other programs. Keys and their order are fixed; figures are SI and unrounded.
import { cautions, type Finding } from '../../checks/index.ts';
import type { Derived } from '../../quantities/index.ts';
import type { Expectation, Share } from '../../results/index.ts';
import type { Place } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import type { PathOf } from '../compare/said-tables.ts';
import type { Comparison, Footing } from '../compare/types.ts';
import { contentMark } from '../mark.ts';
import { spotOf } from '../places.ts';
import { standing, standingWords } from '../standing.ts';
import type { ComparedPlan } from './compared.ts';
import { ends, subject } from './json.ts';

/** One object for all that was compared; two spaces, a line break at the end. */
export function comparedJson(plans: readonly ComparedPlan[], pathOf: PathOf): string {
  const all = {
    format: 'liftplan comparison',
    version: 1,
    caution: cautions.sheetHead,
    plans: plans.map(({ path, old, now, comparison }) => ({
      path,
      change: comparison ? (comparison.same ? 'none' : 'changed') : old ? 'gone' : 'new',
      old: old && plan(old),
      new: now && plan(now),
      ...lists(comparison, pathOf),
    })),
  };
  return `${JSON.stringify(all, null, 2)}\n`;
}

const plan = (snapshot: Snapshot) => ({
  mark: contentMark(snapshot.plan),
  standing: snapshot.plan.head ? standingWords(standing(snapshot)) : null,
});

function lists(comparison: Comparison | null, pathOf: PathOf) {
  if (!comparison) return { figures: [], expects: [], findings: [], refined: [], rests: [], quiet: [], statements: [] };
  const { old, now } = comparison;
  const at = (snapshot: Snapshot) => (place: Place) => {
    const { file, line } = spotOf(snapshot.plan, place);
    return { file: pathOf(snapshot, file), line };
  };
  const [before, after] = [at(old), at(now)];
  return {
    figures: comparison.figures.map((one) => ({
      subject: subject(one.subject),
      result: one.result,
      stage: one.stage,
      unit: (one.now ?? one.old)?.unit ?? null,
      old: one.old && ends(one.old),
      new: one.now && ends(one.now),
    })),
    expects: comparison.expects.map((one) => ({
      change: one.kind,
      bound: one.bound,
      old: one.old && expectation(one.old, before),
      new: one.now && expectation(one.now, after),
    })),
    findings: comparison.findings.map((one) => ({
      change: one.kind,
      old: one.old && finding(one.old, before),
      new: one.now && finding(one.now, after),
    })),
    refined: comparison.refined.map((one) => ({ name: one.name, old: footing(one.old), new: footing(one.now) })),
    rests: comparison.rests.map((one) => ({ load: one.load, old: rests(one.old), new: rests(one.now) })),
    quiet: comparison.quiet.map((one) => ({ change: one.kind, what: one.what, old: one.old, new: one.now })),
    statements: comparison.statements.map((one) => ({
      change: one.kind,
      keyword: one.keyword,
      heading: one.heading,
      was: one.was,
      under: one.under && { old: one.under.old, new: one.under.now },
      clauses: one.clauses.map(({ keyword, old: was, now: is }) => ({ keyword, old: was, new: is })),
      below: one.below,
      old: one.oldAt && before(one.oldAt),
      new: one.nowAt && after(one.nowAt),
    })),
  };
}

type Where = (place: Place) => { readonly file: string; readonly line: number };

const expectation = ({ text, state, at }: Expectation, where: Where) => ({ text, state, ...where(at) });

const finding = ({ slug, severity, message, waived, at }: Finding, where: Where) => ({
  slug,
  severity,
  message,
  waived: waived !== null,
  ...where(at),
});

const footing = ({ basis, evidence, parts, weight }: Footing) => ({ basis, evidence, parts, weight: weightOf(weight) });

const weightOf = (weight: Derived) => ({ unit: weight.unit, ...ends(weight) });

const rests = (all: readonly Share[] | null) => all?.map(({ basis, kg }) => ({ basis, weight: kg })) ?? null;
