// Lays what the grammar matched over the tokens of a line, and makes our own values of it.
import type { Token } from './scan.ts';
import type {
  Amount,
  AxisText,
  CompareValue,
  CompareWord,
  Expression,
  NameUse,
  PointValue,
  QuantityPart,
  Span,
  UnitText,
  Value,
} from './types.ts';

/** A rule that matched, from token to token; shared by all values of one shape. */
export interface Match {
  readonly rule: string;
  readonly at: number;
  readonly to: number;
  readonly parts: readonly Match[];
}

/** What a value is made from: the tokens, where its first one stands among them, and the line. */
export interface Source {
  readonly tokens: readonly Token[];
  readonly offset: number;
  readonly text: string;
  /** The place made last: a value and what it is made of often take the same one, and then share it. */
  last: Span;
}

/** The value of a matched start rule; null where it is written as nothing. */
export function valueOf(match: Match, source: Source): Value | null {
  const span = spanOf(match, source);
  const first = match.parts[0];
  if (first?.rule === 'unknown' || first?.rule === 'unknownOnly')
    return { kind: 'amount', span, amount: { kind: 'unknown', span } };
  return VALUES[match.rule]?.(match, source, span) ?? null;
}

/** A name, with the things it lies in, and the last of a range. */
export function nameOf(match: Match, source: Source): NameUse {
  const dotted = match.rule === 'ranged' ? part(match, 'dotted') : match;
  const until = match.rule === 'ranged' ? match.parts.find((inner) => inner.rule === 'namePart') : undefined;
  return {
    span: spanOf(match, source),
    parts: (dotted?.parts ?? []).filter((inner) => inner.rule === 'namePart').map((inner) => wordOf(inner, source)),
    until: until ? wordOf(until, source) : null,
  };
}

type Maker = (match: Match, source: Source, span: Span) => Value | null;

const VALUES: Readonly<Record<string, Maker>> = {
  nothing: () => null,
  amount: (match, source, span) => ({ kind: 'amount', span, amount: amountOf(match, source) }),
  amountOrNothing: (match, source, span) =>
    match.parts[0] ? { kind: 'amount', span, amount: amountOf(match.parts[0], source) } : null,
  size: sizeOf,
  sizeOrAmount: (match, source, span) =>
    match.parts[0]?.rule === 'amount'
      ? { kind: 'amount', span, amount: amountOf(match.parts[0], source) }
      : sizeOf(match, source, span),
  sizeOrNothing: (match, source, span) => (match.parts[0] ? sizeOf(match.parts[0], source, span) : null),
  point: (match, source) => pointOf(part(match, 'place') ?? match, source),
  points: pointsOf,
  line: pointsOf,
  name: (match, source, span) => ({
    kind: 'names',
    span,
    names: all(match, 'dotted').map((inner) => nameOf(inner, source)),
  }),
  names: (match, source, span) => ({
    kind: 'names',
    span,
    names: all(part(match, 'list'), 'ranged').map((inner) => nameOf(inner, source)),
  }),
  path: (match, source, span) => ({
    kind: 'path',
    span,
    names: all(match, 'dotted').map((inner) => nameOf(inner, source)),
  }),
  axis: (match, source, span) => ({ kind: 'axis', span, axis: axisOf(match, source) }),
  turn: (match, source, span) => ({ kind: 'turn', span, angle: sumIn(match, source), axis: axisOf(match, source) }),
  circle: (match, source, span) => ({
    kind: 'circle',
    span,
    diameter: sumIn(match, source),
    axis: axisOf(match, source),
  }),
  side: sideOf,
  tilt: tiltOf,
  row: rowOf,
  compare: compareOf,
  subject: (match, source, span) => ({
    kind: 'subject',
    span,
    words: all(match, 'subjectWord').map((inner) => compareWord(inner, source)),
  }),
  trigger: (match, source, span) =>
    match.parts[0]?.rule === 'compare' ? compareOf(match.parts[0], source, span) : phrase(match, source, span),
  text: (match, source, span) => ({ kind: 'text', span, text: tokenAt(match.at, source).text }),
  date: (match, source, span) => ({ kind: 'date', span, text: tokenAt(match.at, source).text }),
  label: (match, source, span) => ({
    kind: 'label',
    span,
    text: part(match, 'quoted') ? tokenAt(match.at, source).text : written(span, source),
  }),
  words: phrase,
  wordsAndAmount: (match, source, span) => phrase(match, source, span),
  designation: designationOf,
  designationOrAmount: (match, source, span) => {
    const inner = match.parts.find((one) => one.rule === 'amount' || one.rule === 'designation') ?? match;
    return inner.rule === 'amount'
      ? { kind: 'amount', span, amount: amountOf(inner, source) }
      : designationOf(inner, source, span);
  },
};

// ---- the kinds of values

function sizeOf(match: Match, source: Source, span: Span): Value {
  const sides = part(match, 'sides');
  return {
    kind: 'size',
    span,
    sides: all(sides, 'factor').map((inner) => factorOf(inner, source)),
    tolerance: toleranceOf(sides, source),
  };
}

function pointOf(match: Match, source: Source): PointValue {
  const coordinates = match.rule === 'coordinates' ? match : part(match, 'coordinates');
  const spread = part(match, 'spread');
  const other = spread && part(spread, 'coordinates');
  return {
    kind: 'point',
    span: spanOf(match, source),
    coordinates: all(coordinates, 'amount').map((inner) => amountOf(inner, source)),
    unit: unitOf(coordinates, source),
    tolerance: spread ? (other ? pointOf(other, source) : sumIn(spread, source)) : null,
  };
}

function pointsOf(match: Match, source: Source, span: Span): Value {
  const outline = part(match, 'outline') ?? part(match, 'corners');
  const points = [...all(outline, 'pair'), ...all(outline, 'triple')].map((one) =>
    all(one, 'amount').map((inner) => amountOf(inner, source)),
  );
  return { kind: 'points', span, points, unit: unitOf(outline, source), tolerance: toleranceOf(outline, source) };
}

function sideOf(match: Match, source: Source, span: Span): Value {
  const inner = part(match, 'sideOf') ?? match;
  return { kind: 'side', span, name: nameOf(part(inner, 'dotted') ?? inner, source), axis: axisOf(inner, source) };
}

function tiltOf(match: Match, source: Source, span: Span): Value {
  const inner = part(match, 'incline') ?? match;
  const [angle, to] = all(inner, 'sum');
  return {
    kind: 'tilt',
    span,
    axis: axisOf(inner, source),
    angle: sumOf(angle ?? inner, source),
    to: to ? sumOf(to, source) : null,
  };
}

function rowOf(match: Match, source: Source, span: Span): Value {
  const head = part(match, 'head');
  const before = head && part(head, 'amount');
  return {
    kind: 'row',
    span,
    head: before ? amountOf(before, source) : null,
    cells: all(match, 'amount').map((inner) => amountOf(inner, source)),
  };
}

function compareOf(match: Match, source: Source, span: Span): CompareValue {
  const words = all(match, 'subjectWord');
  const bound = part(match, 'bound')?.parts[0] ?? match;
  const [left, right] = all(bound, 'sum').map((inner) => sumOf(inner, source));
  const subject = words.map((inner) => compareWord(inner, source));
  return {
    kind: 'compare',
    span,
    subject,
    subjectSpan: { from: subject[0]?.span.from ?? span.from, to: subject.at(-1)?.span.to ?? span.to },
    op:
      bound.rule === 'ranging'
        ? 'between'
        : bound.rule === 'equalled'
          ? '='
          : (ORDERS[tokenAt(bound.at, source).sign] ?? '<'),
    left: left ?? sumOf(bound, source),
    right: bound.rule === 'equalled' ? toleranceOf(bound, source) : (right ?? null),
  };
}

const ORDERS: Readonly<Record<string, CompareValue['op']>> = { '<': '<', '≤': '<=', '>': '>', '≥': '>=' };

function compareWord(match: Match, source: Source): CompareWord {
  const token = tokenAt(match.at, source);
  const span = spanOf(match, source);
  const ranged = part(match, 'ranged') ?? match;
  return match.to - match.at === 1 && token.sign !== 'T'
    ? { kind: 'word', text: token.text, span }
    : { kind: 'name', use: nameOf(ranged, source), span };
}

/** Words, joined by one space, and the amount behind them if there is one. */
function phrase(match: Match, source: Source, span: Span): Value {
  const words =
    match.rule === 'phrase' ? match : (part(match, 'phrase') ?? part(part(match, 'words') ?? match, 'phrase') ?? match);
  const amount = part(match, 'amount');
  const word = source.tokens
    .slice(source.offset + words.at, source.offset + words.to)
    .map((token) => token.text)
    .join(' ');
  return { kind: 'word', span, word, amount: amount ? amountOf(amount, source) : null };
}

function designationOf(match: Match, source: Source, span: Span): Value {
  return {
    kind: 'designation',
    span,
    text: part(match, 'quotedOnly') ? tokenAt(match.at, source).text : written(span, source),
  };
}

// ---- amounts and sums

function amountOf(match: Match, source: Source): Amount {
  const span = spanOf(match, source);
  const inner = match.rule === 'amount' ? (match.parts[0] ?? match) : match;
  if (inner.rule === 'unknown' || inner.rule === 'none') return { kind: inner.rule, span };
  return { kind: 'sum', span, value: sumIn(inner, source), tolerance: toleranceOf(inner, source) };
}

function toleranceOf(match: Match | undefined, source: Source): Expression | null {
  const tolerance = match && part(match, 'tolerance');
  return tolerance ? sumIn(tolerance, source) : null;
}

/** The first sum a rule holds, directly or one rule further in. */
function sumIn(match: Match, source: Source): Expression {
  return sumOf(part(match, 'sum') ?? part(part(match, 'angleAbout') ?? match, 'sum') ?? match, source);
}

function sumOf(match: Match, source: Source): Expression {
  return chain(match, source, match.rule === 'product' ? factorOf : sumOrFactor);
}
const sumOrFactor = (match: Match, source: Source): Expression =>
  match.rule === 'product' ? chain(match, source, factorOf) : factorOf(match, source);

/** Operands with signs of arithmetic between them, taken from the left. */
function chain(match: Match, source: Source, operand: (match: Match, source: Source) => Expression): Expression {
  const [first, ...rest] = match.parts;
  let left = operand(first ?? match, source);
  for (let n = 0; n + 1 < rest.length; n += 2) {
    const sign = rest[n];
    const next = rest[n + 1];
    if (!sign || !next) break;
    const right = operand(next, source);
    const op = tokenAt(sign.at, source).sign as '+' | '-' | '*' | '/';
    left = { kind: 'binary', span: { from: left.span.from, to: right.span.to }, op, left, right };
  }
  return left;
}

function factorOf(match: Match, source: Source): Expression {
  const inner = match.rule === 'factor' ? (match.parts[0] ?? match) : match;
  if (inner.rule !== 'negative') return operandOf(inner, source);
  const span = spanOf(inner, source);
  const of = operandOf(part(inner, 'operand') ?? inner, source);
  return of.kind === 'quantity' && !of.negative ? { ...of, span, negative: true } : { kind: 'negative', span, of };
}

function operandOf(match: Match, source: Source): Expression {
  const inner = match.rule === 'operand' ? (match.parts[0] ?? match) : match;
  const span = spanOf(inner, source);
  if (inner.rule === 'quantity')
    return { kind: 'quantity', span, negative: false, parts: quantityParts(inner, source) };
  if (inner.rule === 'call')
    return {
      kind: 'call',
      span,
      fn: tokenAt(inner.at, source).text,
      args: all(inner, 'sum').map((one) => sumOf(one, source)),
    };
  if (inner.rule === 'bracket') return { ...sumIn(inner, source), span };
  return { kind: 'name', span, name: tokenAt(inner.at, source).text };
}

function quantityParts(match: Match, source: Source): QuantityPart[] {
  const parts: QuantityPart[] = [];
  for (let at = match.at; at < match.to; ) {
    const number = tokenAt(at, source);
    const next = at + 1 < match.to ? tokenAt(at + 1, source) : undefined;
    const unit = next?.sign === 'U' ? unitText(next) : null;
    parts.push({ value: number.number as number, text: number.text, span: { from: number.from, to: number.to }, unit });
    at += unit ? 2 : 1;
  }
  return parts;
}

// ---- words, units, axes

const unitText = (token: Token): UnitText => ({ text: token.text, span: { from: token.from, to: token.to } });

function unitOf(match: Match | undefined, source: Source): UnitText | null {
  const unit = match && part(match, 'unit');
  return unit ? unitText(tokenAt(unit.at, source)) : null;
}

function axisOf(match: Match, source: Source): AxisText {
  const axis = part(match, 'axisName') ?? part(match.parts[0] ?? match, 'axisName') ?? match;
  const first = tokenAt(axis.at, source).sign;
  return `${first === '~' ? '-' : ''}${tokenAt(axis.to - 1, source).text}` as AxisText;
}

function wordOf(match: Match, source: Source): { text: string; span: Span } {
  return { text: tokenAt(match.at, source).text, span: spanOf(match, source) };
}

// ---- matches and tokens

const part = (match: Match, rule: string): Match | undefined => match.parts.find((inner) => inner.rule === rule);
const all = (match: Match | undefined, rule: string): Match[] =>
  match?.parts.filter((inner) => inner.rule === rule) ?? [];
const tokenAt = (at: number, source: Source): Token => source.tokens[source.offset + at] as Token;
const written = (span: Span, source: Source): string => source.text.slice(span.from, span.to);

function spanOf(match: Match, source: Source): Span {
  const first = source.tokens[source.offset + match.at];
  const from = first?.from ?? 0;
  const to = source.tokens[source.offset + match.to - 1]?.to ?? from;
  if (source.last.from !== from || source.last.to !== to) source.last = { from, to };
  return source.last;
}
