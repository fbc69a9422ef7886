// "Hold this result" and "Copy result": the worked-out figure of a line as an `expect` line, or as text that the language reads back.
import type { Item, Thing } from '../plan/types.ts';
import { asInput, type Derived, type ResultUnit, type Round, write } from '../quantities/index.ts';
import type { Result, Results } from '../results/index.ts';
import type { Row } from '../syntax/types.ts';
import { resultsOf } from '../vocabulary/index.ts';
import type { Snapshot } from '../workspace/types.ts';
import { resultOf, worseEnd } from './figures.ts';
import { itemAt, lastRow, ownFile } from './items.ts';
import { spelled } from './spelling.ts';
import type { Edit } from './types.ts';

export type Held =
  | { readonly title: string; readonly line: string; readonly edits: readonly Edit[] }
  | { readonly refused: string };

/** The `expect` line that holds the result of the statement on a row, put behind the last one of the file; null where nothing is worked out. */
export function hold(s: Snapshot, row: number): Held | null {
  const result = resultAt(s, row);
  if (!result) return null;
  if (!s.plan.head || s.plan.file !== s.file) return { refused: 'Only a plan holds results; this is a library.' };
  if (result.value.value === null)
    return { refused: `It is not known: ${result.value.because[0]?.what ?? 'nothing states it.'}` };
  const line = `expect ${subject(result, s.results)} ${bound(result, s.plan.units)}${result.stage ? `, stage ${spelled(result.stage, 'named')}` : ''}`;
  if (s.plan.items.some(({ keyword, node }) => keyword === 'expect' && node.row.text.trim() === line))
    return { refused: 'An expect line holds this already.' };
  return { title: `Hold this result: ${line}`, line, edits: [insertion(s, line)] };
}

/** The result of the statement on a row as plan text, to 15 digits: `2,142 kg`; null where there is none or it is not known. */
export function copyResult(s: Snapshot, row: number): string | null {
  const value = resultAt(s, row)?.value;
  return value && value.value !== null ? asInput(value.value, value.unit, s.plan.units) : null;
}

/** The result a hint or the outline shows on that row. */
function resultAt(s: Snapshot, row: number): Result | null {
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  if (!item) return null;
  const { results } = s;
  if (item.keyword === 'plan') return results.find('plan', null, 'gross load') ?? null;
  if (item.keyword === 'leg') return weakest(item, results);
  if (item.keyword === 'expect') return results.expects.find((one) => one.item === item)?.worst ?? null;
  if (item.keyword === 'stated' || item.keyword === 'weighed') return statedResult(item, results);
  for (const thing of s.plan.names.of(item)) {
    const found =
      thing.kind === 'gear' || thing.kind === 'pick'
        ? heldOf(thing, results)
        : (resultOf(results, thing, 'weight') ?? resultOf(results, thing, 'capacity used'));
    if (found) return found;
  }
  return null;
}

/** How much of its capacity a piece of gear uses; what it may carry where it is in no leg. */
function heldOf(thing: Thing, results: Results): Result | undefined {
  const used = resultOf(results, thing, 'capacity used');
  return used?.value.value === null ? (resultOf(results, thing, 'capacity') ?? used) : used;
}

function statedResult(item: Item, { list, loads }: Results): Result | null {
  const load = loads.find(({ candidates }) => candidates.some(({ at }) => at === item.at));
  const name = item.keyword === 'stated' ? 'stated weight' : 'measured weight';
  return (
    list.find(({ subject, result, at }) => subject.kind === 'load' && result === name && at === load?.thing.item.at) ??
    null
  );
}

function weakest(item: Item, results: Results): Result | null {
  const leg = results.legs.find((one) => one.item === item);
  const used = leg?.steps.flatMap(({ thing }) => resultOf(results, thing, 'capacity used') ?? []) ?? [];
  return (
    used.find(({ value }) => value.value === null) ??
    used.reduce<Result | null>(
      (most, one) => (most && (most.value.high ?? 0) >= (one.value.high ?? 0) ? most : one),
      null,
    )
  );
}

/** `part "Pump skid".Rails weight`: with as much of the path as it takes to be the only one. */
function subject({ subject: { kind, name, path }, result }: Result, { list }: Results): string {
  if (name === null) return kind === 'plan' ? result : `${kind} ${result}`;
  const alike = list.filter((other) => other.result === result && other.subject.kind === kind && other.stage === null);
  const endsAlike = (n: number) =>
    alike.filter(({ subject }) => path.slice(-n).every((part, i) => subject.path.slice(-n)[i] === part)).length;
  let n = 1;
  while (n < path.length && endsAlike(n) > 1) n++;
  return `${kind} ${path
    .slice(-n)
    .map((part) => spelled(part, 'compared'))
    .join('.')} ${result}`;
}

/** The bound a figure keeps: on its worse side where it has one, else close to it on both. */
function bound({ subject: { kind }, result, value }: Result, system: 'US' | 'metric'): string {
  const worse = worseEnd(kind, result);
  const text = (number: number, round: Round) => write(number, value.unit, { system, round });
  const { low, high } = ends(value);
  const sizes = resultsOf[kind]?.[result];
  const twoSided = worse === 'either' || sizes?.measures === 'weight' || sizes?.measures === 'volume';
  if (!twoSided)
    return worse === 'up' ? `<= ${text(Math.max(high, least[value.unit] ?? 0), 'up')}` : `>= ${text(low, 'down')}`;
  const room = (high - low) / 2 > Math.abs(value.value ?? 0) * 0.01 ? 0 : margin(value.value ?? 0, value.unit);
  return `between ${text(low - room, 'down')} and ${text(high + room, 'up')}`;
}

/** What is as good as nothing is held at this much, SI: a tenth of a degree, of a per cent; ten newtons, a tenth of a kilogram. */
const least: Readonly<Partial<Record<ResultUnit, number>>> = { rad: Math.PI / 1800, '1': 0.001, N: 10, kg: 0.1 };

/** How far a figure that is held on both sides may move: a hundredth of it, of a length at least a millimetre. */
const margin = (value: number, unit: ResultUnit): number => Math.max(Math.abs(value) * 0.01, unit === 'm' ? 0.001 : 0);

const ends = ({ value, low, high }: Derived) => ({
  low: low ?? value ?? Number.NaN,
  high: high ?? value ?? Number.NaN,
});

/** Behind the last `expect` line, else at the end of the file. */
function insertion(s: Snapshot, line: string): Edit {
  const { tree } = s;
  const last = tree.nodes.filter((node) => node.line.statement?.keyword.word === 'expect').at(-1) ?? tree.nodes.at(-1);
  const row = tree.rows[last ? lastRow(tree, last) : 0] as Row;
  return { kind: 'insert', after: { row, from: 0, to: row.text.length }, lines: [line] };
}
