// What must hold for every text, however damaged.
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { format, formatText } from '../../../server/syntax/layout.ts';
import { editRows } from '../../../server/syntax/rows.ts';
import { scan } from '../../../server/syntax/scan.ts';
import { slotAt } from '../../../server/syntax/slot.ts';
import { editTree } from '../../../server/syntax/tree.ts';
import type { ReadLine, Span, Tree, TreeNode } from '../../../server/syntax/types.ts';
import { statements } from '../../../server/vocabulary/index.ts';
import { language, read, tree } from './reading.ts';

vi.setConfig({ testTimeout: 60_000 });

const plan = `# A transformer off its rails.
plan "Move transformer T3": date 2026-06-11, revision B
  units metric
  site "Substation, bay 3"
let high = 1,600 mm  # over the rails
material "cured grout": density 2,100 kg/m3

load "Transformer"
  datum "middle of the base, top of the rails"
  stated 12,450 kg ± 2 %, by marking, from "plate on the tank"
  cog (0.12 m, 0, ?), by drawing
  held by "rail clamps", released "clamps off"
  part "Tank": box 2.4 x 1.2 x 1.9 m, of carbon steel, at (0, 0, high + 2 in)
    less hole, diameter 6 1/2 in, at (-(1 ft + 3 in), 0, 0), count 2, every (0, 1 ft, 0)
  part "Oil": liquid
    fill 90 %, of oil
    inside "Tank"
  pick A: at (-1, -0.5, 2) m, capacity 5 t, kind lug
gear
  block "Main": weight 610 kg, capacity 50 t
  sling S1..S4: wire rope, diameter 3/4 in, length 14 ft 6 in, weight 22 lb, capacity 5.6 short ton
rig: crane "Yard 2"
  leg "Main" > S1 > A, hitch basket, direct "eye on the pin"
crane "Yard 2": kind mobile, chart "Full"
  deduct "Rope": 4 * 20 m * 1.6 kg/m
  position "lift": radius 8 m ± 0.3 m, boom 21 m
chart "Full": setup "outriggers out"
  columns 15; 21 m
  radius 8 m: 24,000; 23,500 kg
  radius 10 m: 19,100; none
expect gross load < 16,000 kg
expect load "Transformer" calculated weight between 11 t and 13 t`;

const rows = plan.split('\n');
const blocks = ['file', ...Object.keys(statements)];
const pieces = [
  '',
  ' ',
  '  ',
  '\n',
  '\n  ',
  '\r\n',
  '\t',
  ',',
  ', ',
  '"',
  '(',
  ')',
  '#',
  ' # ',
  ':',
  '.',
  '..',
  '-',
  ' - ',
  '/',
  '0',
  '7',
  '.5',
  '3,5',
  'x',
  ' x ',
  '?',
  'none',
  'load "B"',
  'part "C": tube',
  'gear',
  '<<<<<<< a\n',
  '>>>>>>> b\n',
  '\u200b',
  '×',
  'é',
  '👷',
  '±',
  '=',
];
const strange = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc
    .array(fc.constantFrom(...pieces, 'length', 'at', 'by', 'stated', 'marking', 'ft', '12', '1/2'), { maxLength: 14 })
    .map((parts) => parts.join('')),
);
const edit = fc.record({
  row: fc.nat(rows.length - 1),
  from: fc.nat(70),
  length: fc.oneof(fc.constant(0), fc.nat(12)),
  rows: fc.oneof(fc.constant(0), fc.constant(0), fc.nat(4)),
  text: fc.oneof(fc.constantFrom(...pieces), strange),
});
const within = (span: Span, text: string) => span.from >= 0 && span.from <= span.to && span.to <= text.length;
const seed = 20260611;

/** All that a tree says, without identities. */
function content(of: Tree): unknown {
  const node = ({ row, line, block, children, problems }: TreeNode): unknown => [
    of.rowNumber(row),
    row.text,
    line,
    block,
    problems.map(({ at, ...problem }) => ({ ...problem, from: at.from, to: at.to, row: of.rowNumber(at.row) })),
    children.map(node),
  ];
  return {
    nodes: of.nodes.map(node),
    lines: of.lines,
    parents: of.parentAt.map((parent) => (parent ? of.rowNumber(parent.row) : -1)),
    nodeAt: of.nodeAt.map((one) => (one ? of.rowNumber(one.row) : -1)),
    problems: of.problems.length,
  };
}

function applied(
  of: Tree,
  { row, from, length, rows: more, text }: { row: number; from: number; length: number; rows: number; text: string },
) {
  const start = Math.min(row, of.rows.length - 1);
  const column = Math.min(from, of.rows[start]?.text.length ?? 0);
  return editRows(
    of.rows,
    { row: start, column },
    { row: start + more, column: more ? length : column + length },
    text,
  );
}

/** Characters of a line that are in nothing that was read: white space, separating commas and the = of `let` are not counted. */
function left(line: ReadLine): string {
  const { statement, clauses, comment } = line;
  const spans: (Span | null | undefined)[] = [
    statement?.keyword.span,
    statement?.name?.span,
    statement?.colon,
    statement?.value?.span,
    comment,
    ...clauses.map((clause) => clause.span),
  ];
  const chars = [...Array(line.text.length).keys()].filter(
    (at) => !spans.some((span) => span && at >= span.from && at < span.to),
  );
  return chars
    .map((at) => line.text.charAt(at))
    .join('')
    .replace(/[\s,]/g, '')
    .replace(statement?.keyword.word === 'let' ? '=' : '', '');
}

describe('every text', () => {
  test('reads without an exception, with every place inside its line', () => {
    fc.assert(
      fc.property(fc.constantFrom(...blocks), strange, (block, text) => {
        const line = read(block, text.replace(/[\r\n]/g, ' '));
        const spans = [
          line.comment,
          line.statement?.keyword.span,
          line.statement?.name?.span,
          line.statement?.value?.span,
          ...line.clauses.flatMap((clause) => [clause.span, clause.keyword.span, clause.value?.span]),
          ...line.problems.map((problem) => problem.span),
          ...line.colours,
        ];
        for (const span of spans) if (span) expect(within(span, line.text)).toBe(true);
        for (let n = 1; n < line.colours.length; n++)
          expect(line.colours[n]?.from).toBeGreaterThanOrEqual(line.colours[n - 1]?.to ?? 0);
        expect(line.problems.every((problem) => problem.slug === 'number-doubtful') || line.opens).toBe(true);
        expect(JSON.stringify(line)).not.toMatch(/:null,"text":"\d/); // a value that is no finite number would be written as null
        for (const at of [0, Math.floor(text.length / 2), text.length])
          expect(slotAt(line.text, Math.min(at, line.text.length), language.under(block), language).kind).toBeTruthy();
      }),
      { numRuns: 600, seed },
    );
  });

  test('of a line that does not open, every character was read', () => {
    const of = tree(plan);
    let closed = 0;
    fc.assert(
      fc.property(edit, fc.nat(20), strange, (one, cut, more) => {
        const { text } = of.rows[one.row] as { text: string };
        const line = read(
          of.nodeAt[one.row]?.block ?? 'file',
          `${text.slice(0, one.from)}${one.rows ? more : one.text}${text.slice(one.from + cut)}`.replace(
            /[\r\n]/g,
            ' ',
          ),
        );
        closed += line.kind !== 'blank' && line.kind !== 'comment' && !line.opens ? 1 : 0;
        if (!line.opens) expect(left(line)).toBe('');
      }),
      { numRuns: 1000, seed },
    );
    expect(closed).toBeGreaterThan(30);
  });

  test('formatting twice is formatting once, and keeps every character but white space and colons put in', () => {
    const bare = (text: string) => text.replace(/[\s\u3000]/g, '').replace(/:/g, '');
    const comments = (text: string) =>
      tree(text).lines.map((line) => (line?.comment ? line.text.slice(line.comment.from).trimEnd() : ''));
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 4 }), (edits) => {
        const text = edits.reduce(
          (before, one) =>
            applied(tree(before), one)
              .map((row) => row.text)
              .join('\n'),
          plan,
        );
        const once = formatText(text, language);
        expect(formatText(once, language)).toBe(once);
        expect(bare(once)).toBe(bare(text));
        expect(once.split('\n').length).toBe(text.split('\n').length);
        expect(comments(once)).toEqual(comments(text));
        expect(format(tree(once), language)).toEqual([]);
      }),
      { numRuns: 150, seed },
    );
  });

  test('formatting changes no meaning: every line reads as before, and nests as before', () => {
    const said = (of: Tree) =>
      of.nodes.map(function node(one: TreeNode): unknown {
        const { line } = one;
        const strip = (value: unknown) =>
          JSON.parse(
            JSON.stringify(value ?? null, (key, inner) =>
              key === 'span' || key === 'subjectSpan'
                ? undefined
                : typeof inner === 'string'
                  ? inner.replace(/\s+/g, ' ')
                  : inner,
            ),
          );
        return [
          one.block,
          line.kind,
          line.opens,
          line.statement?.keyword.word,
          strip(line.statement?.name),
          strip(line.statement?.value),
          line.clauses.map((clause) => [clause.keyword.word, strip(clause.value)]),
          one.problems.length,
          one.children.map(node),
        ];
      });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 3 }), (edits) => {
        const text = edits.reduce(
          (before, one) =>
            applied(tree(before), one)
              .map((row) => row.text)
              .join('\n'),
          plan,
        );
        expect(said(tree(formatText(text, language)))).toEqual(said(tree(text)));
      }),
      { numRuns: 150, seed },
    );
  });

  test('an edited tree says what a tree read anew says', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        let now = tree(plan);
        for (const one of edits) now = editTree(now, applied(now, one), language);
        expect(content(now)).toEqual(content(tree(now.rows.map((row) => row.text).join('\n'))));
      }),
      { numRuns: 200, seed },
    );
  });

  test('reading the whole changed text gives the same as editing, and shares as much', () => {
    fc.assert(
      fc.property(edit, (one) => {
        const before = tree(plan);
        const changed = applied(before, one);
        const after = tree(changed.map((row) => row.text).join('\n'), before);
        expect(content(after)).toEqual(content(editTree(before, changed, language)));
      }),
      { numRuns: 80, seed },
    );
  });

  test('nodes of which no row changed, and that nest as before, keep their identity', () => {
    fc.assert(
      fc.property(edit, (one) => {
        const before = tree(plan);
        const after = editTree(before, applied(before, one), language);
        const untouched = (node: TreeNode): boolean => after.rows.includes(node.row) && node.children.every(untouched);
        const rowsOf = (node: TreeNode): unknown[] => [
          node.row,
          node.block,
          node.problems.length,
          ...node.children.map(rowsOf),
        ];
        const kept = (node: TreeNode): void => {
          const now = after.nodeAt[after.rows.indexOf(node.row)];
          if (now && untouched(node) && JSON.stringify(rowsOf(node)) === JSON.stringify(rowsOf(now)))
            expect(now).toBe(node);
          node.children.forEach(kept);
        };
        before.nodes.forEach(kept);
      }),
      { numRuns: 120, seed },
    );
  });
});

describe('one character changed', () => {
  const replacements = ['', ' ', ',', '"', '#', '.', '-', '7', 'q', '(', ':', '\u200b'];

  test('no line falls away in silence: it opens, or all of it was read', () => {
    const before = tree(plan);
    let opened = 0;
    before.rows.forEach(({ text }, row) => {
      if (!before.nodeAt[row]) return;
      for (let at = 0; at < text.length; at++) {
        for (const insert of replacements) {
          const changed = text.slice(0, at) + insert + text.slice(at + 1);
          const line = read(before.nodeAt[row]?.block ?? 'file', changed);
          const commented = line.comment && line.comment.from <= at; // the rest was made a comment, which everyone can see
          opened += line.opens ? 1 : 0;
          if (line.opens || commented || changed.trim() === '') continue;
          expect([changed, left(line), line.kind === 'statement' || line.kind === 'clauses']).toEqual([
            changed,
            '',
            true,
          ]);
        }
      }
    });
    expect(opened).toBeGreaterThan(3000);
  });

  test('every line of the plan reads, and every token of it has a sign of the grammar', () => {
    const of = tree(plan);
    expect(of.lines.flatMap((line) => line?.problems ?? [])).toEqual([]);
    expect(
      of.rows
        .flatMap((row) => scan(row.text, language).tokens.map((token) => token.sign))
        .filter((sign) => '!¡'.includes(sign)),
    ).toEqual([]);
  });
});
