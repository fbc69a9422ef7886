// Which keyword usually comes next: learnt from what this file has after the same word, and from the examples of the vocabulary.
import type { TreeNode } from '../../syntax/types.ts';
import { clausesOf, shapeNames, shapes, statements } from '../../vocabulary/index.ts';
import { statementAt } from '../items.ts';
import type { Asked } from './types.ts';

// A neighbour seen in the file weighs more than the same keyword once more, that more than an example, that more than a source.
const seen = 20;
const again = 15;
const shown = 10;
const source = 5;
const most = 40; // neighbours looked at on each side of a place

/** How much speaks for each keyword at a place: nothing for one that never follows. */
export function follow(asked: Asked, starts: boolean, given: readonly string[]): (word: string) => number {
  const { s, number, slot } = asked;
  const scores = new Map<string, number>();
  const add = (word: string, score: number) => scores.set(word, (scores.get(word) ?? 0) + score);
  const here = s.tree.nodeAt[number] ?? null;
  if (starts) {
    const siblings = (s.tree.parentAt[number]?.children ?? s.tree.nodes).filter((node) => node !== here);
    const before =
      siblings.filter((node) => s.tree.rowNumber(node.row) < number).at(-1)?.line.statement?.keyword.word ?? null;
    for (const [first, next] of pairs(near(siblings, asked))) if (first === before && next) add(next, seen);
    if (before !== null && statements[before]?.declares) add(before, again);
  }
  if (!starts || slot.block !== 'file') {
    const left = leftOf(asked, given);
    const shape = shapeNames.find((name) => given.includes(name));
    for (const words of runsLike(asked)) {
      const weight = !shape || words.includes(shape) ? seen : shown;
      for (const [first, next] of pairs(words)) if (first === left && next) add(next, starts ? shown : weight);
    }
    for (const words of examples(slot.block))
      for (const [first, next] of pairs(words)) if (first === left && next) add(next, shown);
  }
  add('from', source);
  return (word) => scores.get(word) ?? 0;
}

/** The clause keyword before the place: on its line, else the last one given. */
function leftOf({ s, number, slot }: Asked, given: readonly string[]): string | null {
  const onLine = (s.tree.lines[number]?.clauses ?? []).filter(({ keyword }) => keyword.span.to <= slot.from).at(-1)
    ?.keyword.word;
  return onLine ?? (slot.statement === null ? (given.at(-1) ?? null) : null);
}

/** Keywords of the nearest statements beside a place. */
function near(siblings: readonly TreeNode[], { s, number }: Asked): readonly string[] {
  const at = siblings.findIndex((node) => s.tree.rowNumber(node.row) > number);
  const middle = at < 0 ? siblings.length : at;
  return siblings
    .slice(Math.max(0, middle - most), middle + most)
    .flatMap(({ line }) => line.statement?.keyword.word ?? []);
}

/** The clause keywords of the nearest statements of the same kind under the same parent, each in the order written. */
function runsLike({ s, number, slot }: Asked): readonly (readonly string[])[] {
  const own = statementAt(s.tree, number);
  const parent = own && (s.tree.parentAt[s.tree.rowNumber(own.row)] ?? null);
  const siblings = (parent?.children ?? s.tree.nodes).filter(
    (node) => node !== own && node.line.statement?.keyword.word === slot.block,
  );
  return siblings
    .slice(-most)
    .map((node) =>
      [node, ...node.children.filter(({ line }) => line.kind === 'clauses')].flatMap(({ line }) =>
        line.clauses.map(({ keyword }) => keyword.word),
      ),
    );
}

const kept = new Map<string, readonly (readonly string[])[]>();

/** The clause keywords of the vocabulary's examples of a statement, and of the shapes for a part. */
function examples(block: string): readonly (readonly string[])[] {
  let runs = kept.get(block);
  if (!runs) {
    const known = Object.keys(clausesOf(block)).sort((a, b) => b.length - a.length);
    const own = statements[block]?.example;
    const texts =
      block === 'part'
        ? Object.values(shapes).map(({ example }) => example)
        : own
          ? [own.replace(/^[^:]*:\s*/, '')]
          : [];
    runs = texts.map((text) =>
      text.split(/,\s+/).flatMap((piece) => known.find((word) => piece === word || piece.startsWith(`${word} `)) ?? []),
    );
    kept.set(block, runs);
  }
  return runs;
}

/** Each word with the one before it; the first with none. */
const pairs = (words: readonly string[]): readonly (readonly [string | null, string | undefined])[] =>
  words.map((word, i) => [i ? (words[i - 1] as string) : null, word]);
