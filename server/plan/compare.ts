// Sorts the words of a bound (`sling S1 angle >= 60 deg`) by the table of results: kind, names, result.
import { nearest } from '../quantities/nearest.ts';
import { withTolerance } from '../quantities/quantity.ts';
import type { CompareValue, CompareWord, NameUse } from '../syntax/types.ts';
import { type ResultRow, resultsOf } from '../vocabulary/index.ts';
import { evaluate, measured, note, type Sheet } from './evaluate.ts';
import type { Compare } from './types.ts';

/** The bound with its subject found in the table; null after a problem has been noted. Plan results are tried first. */
export function bindCompare(written: CompareValue, sheet: Sheet): Compare | null {
  const found = subject(written.subject);
  if (!('result' in found))
    return note(sheet, 'name-unknown', written.subjectSpan, {
      name: sheet.row.text.slice(written.subjectSpan.from, written.subjectSpan.to),
      nearest: found.nearest,
      wanted: 'a result, such as "gross load" or "sling S1 angle"',
      is: null,
      declare: null,
    });
  const row = resultsOf[found.kind]?.[found.result] as ResultRow;
  const label = found.result;
  const left = measured(
    evaluate(written.left, sheet, label, row.measures),
    written.left.span,
    sheet,
    label,
    row.measures,
  );
  const right = written.right && evaluate(written.right, sheet, label, row.measures);
  if (!left || (written.right && !right)) return null;
  const bound = { subject: { kind: found.kind, names: found.names }, result: found.result };
  if (written.op === '=') {
    const ranged = right && withTolerance(left, right);
    if (!ranged || 'clash' in ranged)
      return note(sheet, 'dimension-mismatch', (written.right ?? written.left).span, {
        clause: label,
        wanted: 'a tolerance in the same unit or in %',
        text: sheet.row.text.slice(written.span.from, written.span.to),
        found: 'something else',
        sum: false,
      });
    return { ...bound, op: 'between', low: ranged.low, high: ranged.high };
  }
  if (written.op === 'between') {
    const upper = written.right && measured(right, written.right.span, sheet, label, row.measures);
    return upper ? { ...bound, op: 'between', low: left.value, high: upper.value } : null;
  }
  return { ...bound, op: written.op, low: left.value, high: left.value };
}

/** Kind, names and result that the words of a bound speak of; nearest ones where there is no such result. */
export function subject(
  words: readonly CompareWord[],
): { kind: string; names: readonly NameUse[]; result: string } | { nearest: readonly string[] } {
  const plain = words.map((word) => (word.kind === 'word' ? word.text : null));
  const all = plain.includes(null) ? null : plain.join(' ');
  if (all !== null && resultsOf.plan && all in resultsOf.plan) return { kind: 'plan', names: [], result: all };
  for (let n = words.length - 1; n > 0; n--) {
    const kind = plain.slice(0, n).every((word) => word !== null) ? plain.slice(0, n).join(' ') : '';
    const table = resultsOf[kind];
    if (!table || kind === 'plan') continue;
    for (let from = n; from < words.length; from++) {
      const tail = plain.slice(from);
      if (tail.includes(null) || !(tail.join(' ') in table)) continue;
      return { kind, names: namesOf(words.slice(n, from)), result: tail.join(' ') };
    }
    const last = plain
      .slice(n)
      .filter((word) => word !== null)
      .join(' ');
    return { nearest: nearest(last, Object.keys(table)).map((result) => `${kind} … ${result}`) };
  }
  return {
    nearest: nearest(plain.filter((word) => word !== null).join(' '), [
      ...Object.keys(resultsOf.plan ?? {}),
      ...Object.keys(resultsOf),
    ]),
  };
}

/** Names between kind and result, joined by `and`. */
function namesOf(words: readonly CompareWord[]): readonly NameUse[] {
  const names: NameUse[] = [];
  for (const word of words) {
    if (word.kind === 'name') names.push(word.use);
    else if (word.text !== 'and')
      names.push({ span: word.span, parts: [{ text: word.text, span: word.span }], until: null });
  }
  return names;
}
