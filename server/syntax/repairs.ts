// Finds the nearest readings of a line that cannot be read: small changes, each kept only if the line then reads better.
import type { Code } from './code.ts';
import { isWordSign, type Scanned, type Token } from './scan.ts';
import type { LineProblem, Span, SyntaxFacts, ValueType, Words } from './types.ts';

export interface Edit extends Span {
  readonly text: string;
}

/** Where a line could not be read: the tokens of the value, the one it failed at, and the clauses that may follow. */
export interface Damage {
  readonly type: ValueType;
  readonly at: number;
  readonly to: number;
  readonly failedAt: number;
  readonly clauses?: Words;
  readonly more?: readonly Edit[][];
}

/** The problems of a line, each that cannot be read with the readings that would be. `reread` reads a changed text of the line. */
export function withReadings(
  code: Code,
  line: Scanned,
  reread: (text: string) => readonly LineProblem[],
): readonly LineProblem[] {
  if (!code.damages) return code.problems;
  return code.problems.map((problem) => {
    const damage = code.damages?.get(problem);
    if (!damage) return problem;
    const found = repairs(line, damage, (text) => reread(text).length < code.problems.length);
    if (!found) return problem;
    const facts = problem.facts as SyntaxFacts['line-unreadable'];
    return {
      slug: problem.slug,
      span: found.span,
      facts: { ...facts, text: line.text.slice(found.span.from, found.span.to), readings: found.readings },
    };
  });
}

/** The part of the line to change and what may stand there instead, at most three; null where nothing near reads better. */
function repairs(
  line: Scanned,
  damage: Damage,
  better: (text: string) => boolean,
): { span: Span; readings: string[] } | null {
  const good: Edit[][] = [];
  for (const edits of candidates(line, damage)) {
    if (good.length < 3 && edits.length > 0 && better(applied(line.text, 0, line.text.length, edits))) good.push(edits);
  }
  if (good.length === 0) return null;
  const spans = good.map((edits) => marked(line.tokens, damage, edits));
  const span = { from: Math.min(...spans.map((one) => one.from)), to: Math.max(...spans.map((one) => one.to)) };
  return { span, readings: [...new Set(good.map((edits) => applied(line.text, span.from, span.to, edits)))] };
}

function applied(text: string, from: number, to: number, edits: readonly Edit[]): string {
  let result = '';
  let at = from;
  for (const edit of edits) {
    result += text.slice(at, edit.from) + edit.text;
    at = edit.to;
  }
  return result + text.slice(at, to);
}

/** What is changed, widened to the whole of the operands around it, so that the reading can be judged by itself. */
function marked(tokens: readonly Token[], damage: Damage, edits: readonly Edit[]): Span {
  let from = Math.min(...edits.map((edit) => edit.from));
  let to = Math.max(...edits.map((edit) => edit.to));
  const inside = tokens.slice(damage.at, Math.max(damage.to, damage.failedAt + 1));
  const operand = ({ sign }: Token) => 'NUTD!¡.Wyz'.includes(sign);
  for (const token of [...inside].reverse())
    if (token.from < from && token.to >= from - 1 && operand(token)) from = token.from;
  for (const token of inside) if (token.to > to && token.from <= to + 1 && operand(token)) to = token.to;
  return { from, to };
}

// ---- what may have been meant, likeliest first

function candidates(line: Scanned, damage: Damage): Edit[][] {
  return [
    ...(damage.more ?? []),
    ...slips(line, damage),
    ...closings(line, damage),
    ...regrouped(line, damage),
    ...separated(line, damage),
    ...quoted(line, damage),
    ...dates(line, damage),
  ];
}

const replace = ({ from, to }: Span, text: string): Edit => ({ from, to, text });
const insert = (at: number, text: string): Edit => ({ from: at, to: at, text });

/** Marks without the spaces they need, and others whose right form is clear. */
function slips(line: Scanned, { type, at, to, failedAt }: Damage): Edit[][] {
  const inside = line.tokens.slice(at, Math.max(to, failedAt + 1));
  const flawed = inside.filter((token) => token.fix);
  const found: Edit[][] = [];
  if (flawed.length && type === 'names')
    found.push(flawed.map((token) => replace(token, token.text === ',' ? ' and ' : (token.fix ?? ''))));
  if (flawed.length) found.push(flawed.map((token) => spaced(line.text, token, token.fix ?? '')));
  if (flawed.some(isDash))
    found.push(flawed.map((token) => spaced(line.text, token, isDash(token) ? ' - ' : (token.fix ?? ''))));
  if (flawed.length && /^size/.test(type)) found.push(...bracketed(line, inside));
  const failed = line.tokens[failedAt];
  if (failed?.sign === '~') found.push([replace(failed, '- ')]);
  if (failed?.sign === ':' || failed?.sign === ';') found.push([replace(failed, ',')]);
  for (const token of inside) if (token.sign === 'U' && token.text === 'X') found.push([replace(token, 'x')]);
  for (const token of inside) if (token.text.startsWith('"') && token.sign === '¡') found.push(...earlierQuotes(token));
  return found;
}

const isDash = ({ text }: Token): boolean => text === '–' || text === '—';

/** A side of a size that is worked out needs brackets: `(10 ft / 2) x 3 ft`. */
function bracketed(line: Scanned, inside: readonly Token[]): Edit[][] {
  return inside
    .filter((token) => token.sign === '!' && '+-*/'.includes(token.text))
    .map((token) => {
      const { from, to } = marked(
        line.tokens,
        { type: 'size', at: line.tokens.indexOf(inside[0] ?? token), to: line.tokens.length, failedAt: 0 },
        [token],
      );
      return [{ from, to, text: `(${applied(line.text, from, to, [spaced(line.text, token, token.fix ?? '')])})` }];
    });
}

/** The fix without a second space where one stands already. */
function spaced(text: string, { from, to }: Span, fix: string): Edit {
  const before = text.charAt(from - 1) === ' ' && fix.startsWith(' ') ? fix.slice(1) : fix;
  return { from, to, text: text.charAt(to) === ' ' && before.endsWith(' ') ? before.slice(0, -1) : before };
}

/** A text that is never closed may end before any comma in it. */
const earlierQuotes = (token: Token): Edit[][] =>
  [...token.text.matchAll(/, /g)].slice(0, 8).map((comma) => [insert(token.from + comma.index, '"')]);

/** A bracket that is missing or too many. */
function closings(line: Scanned, { at, to, failedAt }: Damage): Edit[][] {
  const inside = line.tokens.slice(at, to);
  const open = inside.filter((token) => token.sign === '(').length;
  const closed = inside.filter((token) => token.sign === ')').length;
  const last = inside.at(-1);
  const failed = line.tokens[failedAt];
  if (closed > open && failed?.sign === ')') return [[replace(failed, '')]];
  if (open <= closed || !last) return [];
  const before = inside.at(-2);
  return [[insert(last.to, ')')], ...(last.sign === 'U' && before ? [[insert(before.to, ')')]] : [])];
}

/** Coordinates that ran together because a comma stood without its space. */
function regrouped(line: Scanned, { type, at, to }: Damage): Edit[][] {
  if (type !== 'point' && type !== 'points' && type !== 'line') return [];
  return line.tokens
    .slice(at, to)
    .filter((token) => token.sign === 'N' && token.text.includes(','))
    .map((token) => [replace(token, token.text.replace(/,/g, ', '))]);
}

/** A comma left out before the next clause. */
function separated(line: Scanned, { at, to, failedAt, clauses }: Damage): Edit[][] {
  if (!clauses) return [];
  return [failedAt, failedAt - 1].flatMap((n) => {
    const [before, token] = [line.tokens[n - 1], line.tokens[n]];
    if (!before || !token || n <= at || n >= to || !(isWordSign(token.sign) || token.sign === 'U')) return [];
    return [[insert(before.to, ',')]];
  });
}

const NAMES: readonly ValueType[] = ['name', 'names', 'path', 'side', 'compare', 'subject'];

/** Words that need quotation marks to be one text or one name, and a number sign that does not begin a comment. */
function quoted(line: Scanned, { type, at, to, failedAt }: Damage): Edit[][] {
  const inside = line.tokens.slice(at, to);
  const [first, last] = [inside[0], inside.at(-1)];
  if (type === 'text' && first && last && inside.every((token) => token.sign !== 'T'))
    return [[replace({ from: first.from, to: last.to }, `"${line.text.slice(first.from, last.to)}"`)]];
  if ((type === 'designation' || type === 'designation or amount') && line.comment && inside.length === 0) {
    const word = /^#[\w/.-]+/.exec(line.text.slice(line.comment.from));
    if (word) return [[replace({ from: line.comment.from, to: line.comment.from + word[0].length }, `"${word[0]}"`)]];
  }
  if (!NAMES.includes(type) || failedAt >= to) return [];
  const isPart = (n: number) =>
    n >= at && n < to && ('NU'.includes(line.tokens[n]?.sign ?? '?') || isWordSign(line.tokens[n]?.sign ?? '?'));
  let from = failedAt;
  while (isPart(from - 1)) from--;
  let end = failedAt;
  while (isPart(end)) end++;
  const [start, stop] = [line.tokens[from], line.tokens[end - 1]];
  return start && stop && end > failedAt
    ? [[replace({ from: start.from, to: stop.to }, `"${line.text.slice(start.from, stop.to)}"`)]]
    : [];
}

/** Dates written another way: the year first, or last with the day and the month in either order. */
function dates(line: Scanned, { type, at, to }: Damage): Edit[][] {
  const inside = line.tokens.slice(at, to);
  const [first, last] = [inside[0], inside.at(-1)];
  if (type !== 'date' || !first || !last) return [];
  const span = { from: first.from, to: last.to };
  const text = line.text.slice(span.from, span.to);
  const two = (part = '') => part.padStart(2, '0');
  const yearFirst = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  if (yearFirst) return [[replace(span, `${yearFirst[1]}-${two(yearFirst[2])}-${two(yearFirst[3])}`)]];
  const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/.exec(text);
  if (!yearLast) return [];
  const ways = [
    [yearLast[2], yearLast[1]],
    [yearLast[1], yearLast[2]],
  ].filter(([month]) => Number(month) <= 12);
  return ways.map(([month, day]) => [replace(span, `${yearLast[3]}-${two(month)}-${two(day)}`)]);
}
