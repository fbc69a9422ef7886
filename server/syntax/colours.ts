// What each part of a line is, for colouring: keywords and clauses by how the line was read, the rest by the tokens themselves.
import { type Scanned, type Token, isWordSign } from './scan.ts';
import type { ColouredSpan, ReadLine, Span, TokenClass } from './types.ts';

/** The coloured parts of a read line, from left to right, none overlapping. */
export function coloursOf(line: Pick<ReadLine, 'statement' | 'clauses'>, scanned: Scanned): ColouredSpan[] {
  const spans: ColouredSpan[] = [];
  const keywords = [...(line.statement ? [{ ...line.statement.keyword.span, class: 'keyword' as const }] : []), ...line.clauses.map((clause) => ({ ...clause.keyword.span, class: 'clause' as const }))];
  const plain = line.clauses.flatMap((clause) => (clause.value?.kind === 'word' || clause.value?.kind === 'designation' ? [clause.value.span] : []));
  for (const token of scanned.tokens) {
    const keyword = keywords.find((span) => token.from >= span.from && token.to <= span.to);
    const last = spans.at(-1);
    if (keyword) {
      if (last?.from !== keyword.from) spans.push(keyword);
    } else {
      const kind = plain.some((span: Span) => token.from >= span.from && token.to <= span.to) && token.sign !== 'T' ? 'word' : classOf(token);
      if (kind && !(scanned.comment && token.from >= scanned.comment.from)) spans.push({ from: token.from, to: token.to, class: kind });
    }
  }
  if (scanned.comment) spans.push({ ...scanned.comment, class: 'comment' });
  return spans;
}

function classOf({ sign }: Token): TokenClass | null {
  if (sign === 'N' || sign === 'D') return 'number';
  if (sign === 'U') return 'unit';
  if (sign === 'T') return 'text';
  if ('x×aobF&0?+-*/~^<>≤≥=±‥'.includes(sign)) return 'operator';
  if (isWordSign(sign)) return 'name';
  return null;
}
