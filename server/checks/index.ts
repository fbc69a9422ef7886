// Holds the words for every finding: one file a finding, grouped by what it is about, each with the page that explains it.
// Must never find anything itself: the stages below push facts, this room gives them severity, effect, sentence and ways out.
// Read types.ts first, then one finding with its page (writing/unit-missing), then gather.ts and waive.ts; cautions.ts stands for itself.
import type { ResultFacts, ResultProblem, Results } from '../results/types.ts';
import type { Place, Problem } from '../syntax/types.ts';
import { problemsOf } from './gather.ts';
import { gearCapacityMissing } from './gear/gear-capacity-missing.ts';
import { gearImplausible } from './gear/gear-implausible.ts';
import { gearWeightMissing } from './gear/gear-weight-missing.ts';
import { leftUnused } from './gear/left-unused.ts';
import { additionUnclear } from './load/addition-unclear.ts';
import { centreAssumed } from './load/centre-assumed.ts';
import { cogDisagrees } from './load/cog-disagrees.ts';
import { contentsUnstated } from './load/contents-unstated.ts';
import { contingencyMissing } from './load/contingency-missing.ts';
import { cutoutOutside } from './load/cutout-outside.ts';
import { evidenceChanged } from './load/evidence-changed.ts';
import { evidenceDisagrees } from './load/evidence-disagrees.ts';
import { evidenceMissing } from './load/evidence-missing.ts';
import { geometryImpossible } from './load/geometry-impossible.ts';
import { holdingUnstated } from './load/holding-unstated.ts';
import { materialDoubtful } from './load/material-doubtful.ts';
import { materialUnknown } from './load/material-unknown.ts';
import { measuredLighter } from './load/measured-lighter.ts';
import { partUnplaced } from './load/part-unplaced.ts';
import { readingUnclear } from './load/reading-unclear.ts';
import { releaseUnstated } from './load/release-unstated.ts';
import { sizeUnknown } from './load/size-unknown.ts';
import { stopDoubtful } from './load/stop-doubtful.ts';
import { weightImplausible } from './load/weight-implausible.ts';
import { weightUnknown } from './load/weight-unknown.ts';
import { weightUnplaced } from './load/weight-unplaced.ts';
import { dateAhead } from './papers/date-ahead.ts';
import { expectFailed } from './papers/expect-failed.ts';
import { angleFlat } from './rig/angle-flat.ts';
import { beamAngleOutside } from './rig/beam-angle-outside.ts';
import { bendTight } from './rig/bend-tight.ts';
import { capacityBasisMissing } from './rig/capacity-basis-missing.ts';
import { clearanceShort } from './rig/clearance-short.ts';
import { connectionMissing } from './rig/connection-missing.ts';
import { datePassed } from './rig/date-passed.ts';
import { edgeBare } from './rig/edge-bare.ts';
import { frictionHolds } from './rig/friction-holds.ts';
import { hangTilted } from './rig/hang-tilted.ts';
import { hangUnsolved } from './rig/hang-unsolved.ts';
import { hangUnstable } from './rig/hang-unstable.ts';
import { hookMissing } from './rig/hook-missing.ts';
import { jointWrong } from './rig/joint-wrong.ts';
import { legOverloaded } from './rig/leg-overloaded.ts';
import { legShareUncertain } from './rig/leg-share-uncertain.ts';
import { legSlack } from './rig/leg-slack.ts';
import { liftOffSwing } from './rig/lift-off-swing.ts';
import { pathBroken } from './rig/path-broken.ts';
import { pullBarred } from './rig/pull-barred.ts';
import { serialRepeated } from './rig/serial-repeated.ts';
import { temperatureOutside } from './rig/temperature-outside.ts';
import type { Asked, Check, Finding, Fix, Severity } from './types.ts';
import { waivers } from './waive.ts';
import { named } from './wording.ts';
import { clauseMissing } from './writing/clause-missing.ts';
import { decimalComma } from './writing/decimal-comma.ts';
import { definitionCircle } from './writing/definition-circle.ts';
import { dimensionMismatch } from './writing/dimension-mismatch.ts';
import { fileMissing } from './writing/file-missing.ts';
import { footInchMarks } from './writing/foot-inch-marks.ts';
import { hashAfterNumber } from './writing/hash-after-number.ts';
import { hiddenCharacter } from './writing/hidden-character.ts';
import { indentUnclear } from './writing/indent-unclear.ts';
import { lineUnreadable } from './writing/line-unreadable.ts';
import { listRowUnclear } from './writing/list-row-unclear.ts';
import { nameReserved } from './writing/name-reserved.ts';
import { nameUnknown } from './writing/name-unknown.ts';
import { notJudged } from './writing/not-judged.ts';
import { numberDoubtful } from './writing/number-doubtful.ts';
import { placeWrong } from './writing/place-wrong.ts';
import { statedTwice } from './writing/stated-twice.ts';
import { unitAmbiguous } from './writing/unit-ambiguous.ts';
import { unitMissing } from './writing/unit-missing.ts';
import { unitUnknown } from './writing/unit-unknown.ts';
import { valueOutside } from './writing/value-outside.ts';
import { wordUnknown } from './writing/word-unknown.ts';

export { cautions } from './cautions.ts';
export type { Asked, Check, Edit, Effect, Finding, Fix, Severity } from './types.ts';

/** Every finding by its slug. */
export const checks: { readonly [S in keyof ResultFacts]: Check<S> } = {
  'clause-missing': clauseMissing,
  'decimal-comma': decimalComma,
  'definition-circle': definitionCircle,
  'dimension-mismatch': dimensionMismatch,
  'file-missing': fileMissing,
  'foot-inch-marks': footInchMarks,
  'hash-after-number': hashAfterNumber,
  'hidden-character': hiddenCharacter,
  'indent-unclear': indentUnclear,
  'line-unreadable': lineUnreadable,
  'list-row-unclear': listRowUnclear,
  'name-reserved': nameReserved,
  'name-unknown': nameUnknown,
  'not-judged': notJudged,
  'number-doubtful': numberDoubtful,
  'place-wrong': placeWrong,
  'stated-twice': statedTwice,
  'unit-ambiguous': unitAmbiguous,
  'unit-missing': unitMissing,
  'unit-unknown': unitUnknown,
  'value-outside': valueOutside,
  'word-unknown': wordUnknown,
  'centre-assumed': centreAssumed,
  'reading-unclear': readingUnclear,
  'addition-unclear': additionUnclear,
  'cog-disagrees': cogDisagrees,
  'weight-implausible': weightImplausible,
  'contents-unstated': contentsUnstated,
  'contingency-missing': contingencyMissing,
  'cutout-outside': cutoutOutside,
  'evidence-changed': evidenceChanged,
  'evidence-disagrees': evidenceDisagrees,
  'evidence-missing': evidenceMissing,
  'geometry-impossible': geometryImpossible,
  'holding-unstated': holdingUnstated,
  'material-doubtful': materialDoubtful,
  'material-unknown': materialUnknown,
  'measured-lighter': measuredLighter,
  'part-unplaced': partUnplaced,
  'release-unstated': releaseUnstated,
  'size-unknown': sizeUnknown,
  'stop-doubtful': stopDoubtful,
  'weight-unknown': weightUnknown,
  'weight-unplaced': weightUnplaced,
  'gear-capacity-missing': gearCapacityMissing,
  'gear-implausible': gearImplausible,
  'gear-weight-missing': gearWeightMissing,
  'left-unused': leftUnused,
  'angle-flat': angleFlat,
  'connection-missing': connectionMissing,
  'friction-holds': frictionHolds,
  'hang-tilted': hangTilted,
  'hang-unsolved': hangUnsolved,
  'hang-unstable': hangUnstable,
  'hook-missing': hookMissing,
  'leg-overloaded': legOverloaded,
  'leg-share-uncertain': legShareUncertain,
  'leg-slack': legSlack,
  'path-broken': pathBroken,
  'temperature-outside': temperatureOutside,
  'serial-repeated': serialRepeated,
  'pull-barred': pullBarred,
  'lift-off-swing': liftOffSwing,
  'joint-wrong': jointWrong,
  'edge-bare': edgeBare,
  'date-passed': datePassed,
  'clearance-short': clearanceShort,
  'capacity-basis-missing': capacityBasisMissing,
  'bend-tight': bendTight,
  'beam-angle-outside': beamAngleOutside,
  'date-ahead': dateAhead,
  'expect-failed': expectFailed,
};

/** All facts about a plan and what it takes in, worded, in the order of files, lines and columns. What is said twice of one place counts once. */
export function findings(results: Results): readonly Finding[] {
  const asked: Asked = { results, system: results.plan.units };
  const rule = waivers(results);
  return inOrder(problemsOf(results), asked).map((problem): Finding => {
    const { effect, fixes: waysOut } = checkOf(problem);
    const { severity, message, related } = worded(problem, asked);
    const ruling = rule(problem, severity, effect);
    let fixes: readonly Fix[] | undefined;
    return {
      slug: problem.slug,
      severity,
      message,
      at: problem.at,
      related: ruling && 'refused' in ruling ? [...related, ruling.refused] : related,
      waived: ruling && 'waived' in ruling ? ruling.waived : null,
      get fixes() {
        fixes ??= waysOut?.(problem, asked) ?? [];
        return fixes;
      },
    };
  });
}

type Words = Pick<Finding, 'severity' | 'message' | 'related'>;
const kept = new WeakMap<Problem, { readonly system: Asked['system']; readonly words: Words }>();

/** The words of a fact: worked out once for as long as the stages hand over the same one. They rest on the fact and the plan's units alone. */
function worded(problem: ResultProblem, asked: Asked): Words {
  const known = kept.get(problem);
  if (known?.system === asked.system) return known.words;
  const { severity, says } = checkOf(problem);
  const words: Words = {
    severity: typeof severity === 'function' ? severity(problem) : severity,
    message: inStage(problem) + says(problem, asked),
    related: problem.related.map(({ at, says: message }) => ({ at, message })),
  };
  kept.set(problem, { system: asked.system, words });
  return words;
}

/** What is found in a stage alone says so. */
const inStage = ({ facts }: ResultProblem): string =>
  'inStage' in facts && typeof facts.inStage === 'string' ? `Stage ${named(facts.inStage)}: ` : '';

/** A check as it is asked. Each takes the facts of its own slug only: the table sees to that, the type of a look-up cannot say it. */
interface AnyCheck extends Pick<Check, 'effect'> {
  readonly severity: Severity | ((problem: ResultProblem) => Severity);
  readonly says: (problem: ResultProblem, asked: Asked) => string;
  readonly fixes?: (problem: ResultProblem, asked: Asked) => readonly Fix[];
}
const checkOf = ({ slug }: ResultProblem): AnyCheck => checks[slug] as unknown as AnyCheck;

function inOrder(problems: readonly ResultProblem[], asked: Asked): readonly ResultProblem[] {
  const { files } = asked.results.plan;
  const numbers = new Map(files.map((file, i) => [file.file, i]));
  const lineOf = ({ row }: Place): number => files[numbers.get(row.file) ?? -1]?.tree.rowNumber(row) ?? -1;
  const seen = new Set<string>();
  return problems
    .map((problem) => ({
      problem,
      from: problem.at.from,
      file: numbers.get(problem.at.row.file) ?? files.length,
      line: lineOf(problem.at),
    }))
    .filter(({ problem, file, line }) => {
      const said = `${problem.slug} ${file}:${line}:${problem.at.from}-${problem.at.to} ${worded(problem, asked).message}`;
      return seen.has(said) ? false : Boolean(seen.add(said));
    })
    .sort((a, b) => a.file - b.file || a.line - b.line || a.from - b.from || (a.problem.slug < b.problem.slug ? -1 : 1))
    .map(({ problem }) => problem);
}
