// Nesting by indentation, what it says of unclear nesting, and that untouched parts keep their identity.
import { describe, expect, test } from 'vitest';
import { editRows } from '../../../server/syntax/rows.ts';
import { editTree } from '../../../server/syntax/tree.ts';
import type { Problem, SyntaxFacts, Tree, TreeNode } from '../../../server/syntax/types.ts';
import { allProblems, language, outline, tree, under } from './reading.ts';

const plan = `plan "X": date 2026-05-18

load "Skid"
  datum "middle"
  # the deck
  part "Deck": plate 2 m x 1 m x 10 mm, of carbon steel
    less hole, diameter 6 in
    at (0, 0, 0)
  pick NW: at (1, 1, 0) m
gear
  block "Main": weight 610 lb
rig
  leg "Main" > NW`;

/** Problems of nesting with the row they stand in, the words under the place, and the facts. */
function nesting(text: string): { row: number; at: string; slug: string; facts: unknown }[] {
  const of = tree(text);
  const all = (node: TreeNode): Problem[] => [...node.problems, ...node.children.flatMap(all)];
  return [...of.problems, ...of.nodes.flatMap(all)].map((problem) => ({
    row: of.rowNumber(problem.at.row),
    at: under(problem.at.row.text, problem.at),
    slug: problem.slug,
    facts: problem.facts,
  }));
}

describe('rows', () => {
  test.each([
    ['\n', 'LF'],
    ['\r\n', 'CRLF'],
    ['\r', 'CR'],
  ])('a line ends at %j (%s)', (end) => {
    const of = tree(['load "A"', '  datum "x"', ''].join(end));
    expect([of.rows.map((row) => row.text), of.newline, of.nodes.length]).toEqual([
      ['load "A"', '  datum "x"', ''],
      end,
      1,
    ]);
  });

  test('and nowhere else', () => expect(tree('note "a\u2028b\u0085c\u000bd\u000ce"').rows.length).toBe(1));

  test('a byte-order mark is skipped', () => {
    const of = tree('\ufeffload "A"');
    expect([of.rows[0]?.text, allProblems(of)]).toEqual(['load "A"', []]);
  });

  test('every row knows its number, also in an older version', () => {
    const before = tree(plan);
    const after = editTree(
      before,
      editRows(before.rows, { row: 0, column: 0 }, { row: 0, column: 0 }, '# new\n\n'),
      language,
    );
    expect(after.rows.map((row) => after.rowNumber(row))).toEqual(after.rows.map((_, n) => n));
    expect(before.rows.map((row) => before.rowNumber(row))).toEqual(before.rows.map((_, n) => n));
    expect(before.rowNumber(after.rows[0] as never)).toBe(-1);
  });
});

describe('nesting', () => {
  test('a line belongs to the nearest line above that is indented less; blank and comment lines never count', () => {
    expect(outline(tree(plan).nodes)).toEqual([
      ['plan "X": date 2026-05-18', 'file'],
      [
        'load "Skid"',
        'file',
        ['datum "middle"', 'load'],
        [
          'part "Deck": plate 2 m x 1 m x 10 mm, of carbon steel',
          'load',
          ['less hole, diameter 6 in', 'part'],
          ['at (0, 0, 0)', 'part'],
        ],
        ['pick NW: at (1, 1, 0) m', 'load'],
      ],
      ['gear', 'file', ['block "Main": weight 610 lb', 'gear']],
      ['rig', 'file', ['leg "Main" > NW', 'rig']],
    ]);
    expect(allProblems(tree(plan))).toEqual([]);
  });

  test('nodes and parents by row', () => {
    const of = tree(plan);
    expect(of.parentAt.map((parent) => (parent ? of.rowNumber(parent.row) : -1))).toEqual([
      -1, -1, -1, 2, 2, 2, 5, 5, 2, -1, 9, -1, 11,
    ]);
    expect(of.nodeAt.map((node) => node !== null)).toEqual([
      true,
      false,
      true,
      true,
      false,
      true,
      true,
      true,
      true,
      true,
      true,
      true,
      true,
    ]);
    expect(of.lines.map((line) => line?.kind)).toEqual([
      'statement',
      'blank',
      'statement',
      'clauses',
      'comment',
      'statement',
      'statement',
      'clauses',
      'statement',
      'statement',
      'statement',
      'statement',
      'statement',
    ]);
  });

  test('any depth of indentation, as long as children of one parent stand alike', () => {
    expect(
      nesting('load "A"\n    part "B": tube\n     length 3 m\n     wall 3 mm\n    datum "x"\nload "C"\n datum "y"'),
    ).toEqual([]);
  });

  test('the odd one is unclear, and read as belonging to the nearest line indented less', () => {
    const text =
      'load "A"\n  datum "x"\n    contingency 5 %\n   part "B": tube\n  part "C": tube\n     wall 3 mm\n   length 3 m';
    expect(nesting(text)).toEqual([
      { row: 2, at: '    ', slug: 'indent-unclear', facts: { found: 4, levels: [0, 2], tab: false } },
      { row: 3, at: '   ', slug: 'indent-unclear', facts: { found: 3, levels: [0, 2], tab: false } },
      { row: 6, at: '   ', slug: 'indent-unclear', facts: { found: 3, levels: [0, 2, 5], tab: false } },
    ]);
    expect(outline(tree(text).nodes)).toEqual([
      [
        'load "A"',
        'file',
        ['datum "x"', 'load'],
        ['contingency 5 %', 'load'],
        ['part "B": tube', 'load'],
        ['part "C": tube', 'load', ['wall 3 mm', 'part'], ['length 3 m', 'part']],
      ],
    ]);
  });

  test("nothing stands under a clause: it belongs to the clause's own statement", () => {
    const text = 'load "A"\n  contingency 5 %\n    part "B": tube';
    expect(outline(tree(text).nodes)).toEqual([
      ['load "A"', 'file', ['contingency 5 %', 'load'], ['part "B": tube', 'load']],
    ]);
    expect(nesting(text).map((problem) => problem.slug)).toEqual(['indent-unclear']);
  });

  test('the top level too', () => {
    expect(nesting('load "A"\n  datum "x"\n note "y"')).toMatchObject([
      { row: 2, facts: { found: 1, levels: [0, 2] } },
    ]);
    expect(nesting('  load "A"\ngear')).toMatchObject([{ row: 1, at: 'gear', facts: { found: 0, levels: [2] } }]);
  });

  test('a tab counts two and is unclear', () => {
    expect(nesting('load "A"\n\tdatum "x"\n  contingency 5 %')).toEqual([
      { row: 1, at: '\t', slug: 'indent-unclear', facts: { found: 2, levels: [0], tab: true } },
    ]);
    expect(nesting('load "A" # a\tb\n  datum\t"x"')).toEqual([]);
  });

  test('what stands under a misspelt statement is read as under the one meant, and says nothing of its own', () => {
    const of = tree('laod "A"\n  part "B": tube\n  xyzzy 3\n    frob 4');
    expect(of.nodes[0]).toMatchObject({
      line: { kind: 'unread', meant: 'load', opens: true },
      children: [
        { block: 'load', line: { kind: 'statement' } },
        { block: 'load', line: { opens: true } },
      ],
    });
    expect(allProblems(of)).toEqual(['word-unknown', 'word-unknown']);
    expect(allProblems(tree('xyzzy\n  part "B": tube\n    wall 3 mm'))).toEqual(['word-unknown']);
    expect(tree('xyzzy\n  part "B": tube').nodes[0]?.children[0]).toMatchObject({
      line: { kind: 'unread', opens: true },
    });
  });

  test('marks of an unfinished merge: one finding, both sides stay where they are, the top is open', () => {
    const of = tree(
      'load "A"\n<<<<<<< ours\n  stated 3 t, by marking\n=======\n  stated 4 t, by marking\n>>>>>>> theirs\n  datum "x"',
    );
    expect(allProblems(of)).toEqual(['line-unreadable']);
    expect(of.nodes.map((node) => [node.line.kind, node.line.opens, node.children.length])).toEqual([
      ['statement', false, 3],
      ['unread', true, 0],
      ['unread', true, 0],
      ['unread', true, 0],
    ]);
  });
});

describe('limits', () => {
  test('32 levels', () => {
    const levels = (n: number) =>
      [
        'load "A"',
        ...Array.from({ length: n - 1 }, (_, level) => `${'  '.repeat(level + 1)}assembly "L${level}": at (0, 0, 0)`),
      ].join('\n');
    expect(allProblems(tree(levels(32)))).toEqual([]);
    const of = tree(levels(36));
    expect(nesting(levels(36))).toMatchObject([
      { row: 32, slug: 'line-unreadable', facts: { expected: 'at most 32 levels' } },
    ]);
    expect([
      of.lines.slice(31).map((line) => line?.kind ?? null),
      of.nodeAt[32]?.line.opens,
      of.parentAt[35] === of.nodeAt[31],
    ]).toEqual([['statement', null, null, null, null], true, true]);
  });

  test('4 MB', () => {
    const of = tree(`load "A"\n${'# x\n'.repeat(1024 * 1024)}`);
    expect([
      of.problems.map((problem) => [problem.slug, (problem.facts as SyntaxFacts['line-unreadable']).expected]),
      of.nodes,
      of.lines[0],
    ]).toEqual([[['line-unreadable', 'a file of at most 4 MB']], [], null]);
    const smaller = editTree(
      of,
      editRows(of.rows, { row: 1, column: 0 }, { row: of.rows.length, column: 0 }, ''),
      language,
    );
    expect([smaller.problems, smaller.nodes.length]).toEqual([[], 1]);
  });
});

describe('from version to version', () => {
  const edits = (
    text: string,
    row: number,
    from: number,
    to: number,
    inserted: string,
  ): { before: Tree; after: Tree; cold: Tree } => {
    const before = tree(text);
    const rows = editRows(before.rows, { row, column: from }, { row, column: to }, inserted);
    return { before, after: editTree(before, rows, language), cold: tree(rows.map((one) => one.text).join('\n')) };
  };

  test('a changed line is read again; its parents are new, all else is the same', () => {
    const { before, after, cold } = edits(plan, 6, 29, 30, '8');
    expect(after.rows[6]?.text).toBe(
      '    less hole, diameter 6 in'
        .replace('6', '6')
        .slice(0, 29)
        .concat('8', '    less hole, diameter 6 in'.slice(30)),
    );
    expect(outline(after.nodes)).toEqual(outline(cold.nodes));
    expect(after.rows.map((row, n) => row === before.rows[n])).toEqual(before.rows.map((_, n) => n !== 6));
    expect(after.nodeAt.map((node, n) => node === before.nodeAt[n])).toEqual(
      before.nodeAt.map((_, n) => ![2, 5, 6].includes(n)),
    );
    expect(after.lines.map((line, n) => line === before.lines[n])).toEqual(before.lines.map((_, n) => n !== 6));
  });

  test('the whole text again gives the very same tree', () => {
    const before = tree(plan);
    expect(tree(plan, before)).toBe(before);
    const after = tree(plan.replace('610 lb', '620 lb'), before);
    expect(after.nodeAt.map((node, n) => node === before.nodeAt[n])).toEqual(
      before.nodeAt.map((_, n) => n !== 9 && n !== 10),
    );
  });

  test('lines put in or taken out leave the others their identity', () => {
    const { before, after, cold } = edits(plan, 8, 0, 0, '  contingency 5 %\n');
    expect(outline(after.nodes)).toEqual(outline(cold.nodes));
    expect(after.nodes.map((node, n) => node === before.nodes[n])).toEqual([true, false, true, true]);
    expect(after.nodes[1]?.children.filter((child) => before.nodes[1]?.children.includes(child)).length).toBe(3);
    const back = editTree(after, editRows(after.rows, { row: 8, column: 0 }, { row: 9, column: 0 }, ''), language);
    expect([outline(back.nodes), back.rows.length]).toEqual([outline(before.nodes), before.rows.length]);
  });

  test('a changed keyword reads its children again', () => {
    const { after, cold } = edits(plan, 9, 0, 4, 'rig');
    expect([outline(after.nodes), allProblems(after)]).toEqual([outline(cold.nodes), allProblems(cold)]);
    expect(allProblems(after)).toContain('place-wrong');
  });

  test('a changed indentation moves what stands below', () => {
    const { after, cold } = edits(plan, 5, 0, 2, '');
    expect([outline(after.nodes), allProblems(after)]).toEqual([outline(cold.nodes), allProblems(cold)]);
  });

  test('positions outside the text are taken as its nearest place', () => {
    const { rows } = tree('a\nb');
    expect(editRows(rows, { row: 7, column: 9 }, { row: 9, column: 0 }, 'c').map((row) => row.text)).toEqual([
      'a',
      'bc',
    ]);
    expect(editRows(rows, { row: 0, column: 99 }, { row: 1, column: 0 }, '-').map((row) => row.text)).toEqual(['a-b']);
  });
});
