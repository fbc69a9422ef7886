// A beginner's slips with names: words without quotes, a range with a dash, several names on a line, a path with commas.
import { clauseAt, keywordAt } from './phrases.ts';
import type { Piece } from './reader.ts';
import type { Edit } from './repairs.ts';
import { isWordSign, type Scanned, type Token } from './scan.ts';
import type { Language, NameSlip, Span, StatementForm, Words } from './types.ts';

/** A slip: the tokens it takes in, and the text that was meant, where there is one. */
export interface Slip extends Piece {
  readonly slip: NameSlip;
  readonly reading: string | null;
}

/** What a name is followed by in its own piece: the rest of a name of several words, or of a range without its two dots; null: neither. */
export function nameSlip(
  { text, tokens }: Scanned,
  { at, to }: Piece,
  end: number,
  form: StatementForm,
  inner: Words,
  language: Language,
): Slip | null {
  let stop = to;
  while (stop < end && tokens[stop]?.sign !== ':' && !clauseAt(inner, tokens, stop, end)) stop++;
  const run = tokens.slice(at, stop);
  const first = tokens[to];
  const closed = tokens[stop]?.sign === ':';
  if (!first || stop === to || form.equals || (form.value && !closed)) return null;
  const written = text.slice(run[0]?.from, run.at(-1)?.to);
  const range = form.name === 'range' ? rangeOf(written) : null;
  if (range) return { at, to: stop, slip: 'range', reading: range };
  if (!run.every(({ sign }) => sign === 'N' || sign === 'U' || isWordSign(sign))) return null;
  // Without a colon behind it, a word may as well be a clause with a slip in it, or one without its comma.
  const isClause = keywordAt(inner, tokens, to, end) || language.nearest(first.text, inner.clauses.keys()).length > 0;
  if (!closed && (isClause || language.keywords.includes(first.text))) return null;
  return { at, to: stop, slip: 'words', reading: `"${written}"` };
}

/** `S1..S4` for a range as it is often written: `S1-S4`, `S1 – 4`, `S1 to S4`; null where it is none. */
export function rangeOf(written: string): string | null {
  const [, stem = '', from, again, to] =
    /^([A-Za-z][\w-]*?)(\d+) *(?:-|–|—|…|\.\.\.|to) *([A-Za-z][\w-]*?)?(\d+)$/.exec(written) ?? [];
  if (from === undefined || (again !== undefined && again !== stem) || Number(from) >= Number(to)) return null;
  return `${stem}${from}..${stem}${to}`;
}

/** Several names where a statement takes one, up to a colon or of one kind: `K1, K2 and K3: …`; null: no more than one. */
export function listedNames(
  { tokens }: Scanned,
  name: Piece,
  form: StatementForm,
  inner: Words,
  language: Language,
): Slip | null {
  const parts = [tokens[name.at] as Token];
  let to = name.to;
  for (let next = followed(tokens, to, inner); next; next = followed(tokens, to, inner)) {
    if (!isAlike(parts, next) && (tokens[to]?.sign === '&' || !isFar(next, inner, language))) break;
    parts.push(next);
    to += 2;
  }
  const sure = tokens[to]?.sign === ':' || parts.slice(1).every((part) => isAlike(parts, part));
  if (parts.length < 2 || !sure) return null;
  const ranges = form.name === 'range';
  const range = ranges && name.to === name.at + 1 ? counted(parts) : null;
  return { at: name.at, to, slip: ranges ? 'names or range' : 'names', reading: range };
}

/** The name alone behind a comma or `and` at token `at`; null: something else stands there. */
function followed(tokens: readonly Token[], at: number, inner: Words): Token | null {
  const [joint, token, behind] = tokens.slice(at, at + 3);
  if (!(joint?.sign === ',' || joint?.sign === '&') || !token || !isName(token)) return null;
  if (behind && !',&:'.includes(behind.sign)) return null;
  return clauseAt(inner, tokens, at + 1, tokens.length) ? null : token;
}

/** The items of a path with commas between them: `Hook, S4, K4, SW`; null: there is nothing behind but clauses. */
export function listedPath(
  { text, tokens }: Scanned,
  pieces: readonly Piece[],
  from: number,
  inner: Words,
  language: Language,
): Slip | null {
  const head = pieces[0] as Piece;
  let to = head.to;
  for (const piece of pieces.slice(1)) {
    const first = tokens[piece.at];
    if (!first || !isName(first) || keywordAt(inner, tokens, piece.at, piece.to)) break;
    const parts = tokens.slice(piece.at, piece.to);
    if (!parts.every((token, i) => (i % 2 ? '.>'.includes(token.sign) : isName(token)))) break;
    if (first.sign !== 'T' && piece.to === piece.at + 1 && !isFar(first, inner, language)) break;
    to = piece.to;
  }
  const [first, last] = [tokens[from], tokens[to - 1]];
  if (to === head.to || !first || !last || from >= head.to) return null;
  let reading = text.slice(first.from, last.to);
  for (const token of tokens.slice(from, to).reverse())
    if (token.sign === ',')
      reading = `${reading.slice(0, token.from - first.from).trimEnd()} >${reading.slice(token.to - first.from)}`;
  return { at: from, to, slip: 'path', reading };
}

/** Coordinates without their bracket, `1600, -600, 1100 mm`: how far they reach, and how they are written; null: there are not three. */
export function bareCoordinates(
  { text, tokens }: Scanned,
  at: number,
): { readonly to: number; readonly edit: Edit } | null {
  let to = at;
  while (tokens[to] && /^(?:[\d.]+|[-−,])$/.test((tokens[to] as Token).text)) to++;
  if (tokens[to - 1]?.sign === ',') to--;
  const [first, last, unit] = [tokens[at], tokens[to - 1], tokens[to]];
  if (!first || !last) return null;
  const numbers = text.slice(first.from, last.to).split(',');
  if (numbers.length !== 3 || !numbers.every((number) => /^ *[-−]? *[\d.]+ *$/.test(number))) return null;
  const written = `(${numbers.map((number) => number.replace(/ /g, '')).join(', ')})`;
  const closing = unit?.sign === 'U' ? unit : null;
  const edit = { from: first.from, to: (closing ?? last).to, text: closing ? `${written} ${closing.text}` : written };
  return { to: closing ? to + 1 : to, edit };
}

/** What a figure without a word before it may be: `6 off` is a count, `420 kg` the weight of an item. */
export function bareFigure({ tokens }: Scanned, { at, to }: Piece, words: Words): Edit[][] {
  const [number, many] = [tokens[at], tokens[at + 1]];
  if (number?.sign !== 'N') return [];
  const counted = many && to === at + 2 && /^(?:off|x|times|pcs?|pieces|nos?|ea)$/i.test(many.text);
  if (counted && words.clauses.has('count'))
    return [[{ from: number.from, to: many.to, text: `count ${number.text}` }]];
  return words.clauses.has('item') ? [[{ from: number.from, to: number.from, text: 'item ' }]] : [];
}

/** The place of the tokens of a slip. */
export const slipSpan = (tokens: readonly Token[], { at, to }: Piece): Span => ({
  from: tokens[at]?.from ?? 0,
  to: tokens[to - 1]?.to ?? 0,
});

const isName = ({ sign }: Token): boolean => sign === 'T' || isWordSign(sign);

/** The word is no keyword, and no clause of these with a slip of the keyboard. */
const isFar = ({ sign, text }: Token, inner: Words, language: Language): boolean =>
  sign === 'T' || !(language.keywords.includes(text) || language.nearest(text, inner.clauses.keys()).length > 0);

const NUMBERED = /^(.*?)(\d+)$/;

/** Both end in a number and are the same before it, or both stand in quotes. */
function isAlike([first]: readonly Token[], token: Token): boolean {
  const stem = NUMBERED.exec(first?.text ?? '')?.[1];
  return (stem !== undefined && stem === NUMBERED.exec(token.text)?.[1]) || (first?.sign === 'T' && token.sign === 'T');
}

/** `K1..K4` for names that count up by one without a gap; null where they do not. */
function counted(parts: readonly Token[]): string | null {
  const [first, last] = [parts[0], parts.at(-1)];
  const numbers = parts.map(({ text }) => NUMBERED.exec(text));
  const stem = numbers[0]?.[1];
  const counts = numbers.every(
    (one, i) => one && one[1] === stem && Number(one[2]) === Number(numbers[0]?.[2]) + i && !one[2]?.startsWith('0'),
  );
  const quoted = (token: Token | undefined): string => (token?.sign === 'T' ? `"${token.text}"` : (token?.text ?? ''));
  return counts ? `${quoted(first)}..${quoted(last)}` : null;
}
