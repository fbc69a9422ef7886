// Keywords that may stand here: what is still due first, then what usually follows in this file, then the rest as the vocabulary has them.
import type { ReadLine, TreeNode } from '../../syntax/types.ts';
import {
  type ClauseRow,
  clausesOf,
  everywhere,
  type ShapeName,
  type ShapeRow,
  shapeNames,
  shapes,
  statements,
  statementsUnder,
} from '../../vocabulary/index.ts';
import type { Completion } from '../types.ts';
import { follow } from './follow.ts';
import { type Asked, completion } from './types.ts';

export function keywords(asked: Asked): readonly Completion[] {
  const { row, slot, s, number } = asked;
  const starts = slot.statement === null && row.text.slice(0, slot.from).trim() === '';
  const node = slot.statement === null ? (s.tree.parentAt[number] ?? null) : (s.tree.nodeAt[number] ?? null);
  const given = givenOn(node, asked);
  const offers = [...(starts ? statementsFor(asked) : []), ...clausesFor(slot.block, given)];
  const next = follow(asked, starts, given);
  const shape = shapeNames.find((name) => given.includes(name));
  const order = shape
    ? Object.keys(shapes[shape].clauses)
    : (usual[slot.block] ?? []).flatMap((words) => words.split('/'));
  const place = (word: string): number => (order.includes(word) ? order.length - order.indexOf(word) : 0);
  const score = ({ word, due }: Offered): number =>
    (due ? mostWanted + place(word) : 0) + next(word) - (word in everywhere && word !== 'from' ? 1 : 0);
  const ordered = offers
    .map((offer, i) => ({ offer, i, score: score(offer) }))
    .sort((a, b) => b.score - a.score || a.i - b.i);
  return ordered.map(({ offer: { word, kind, detail, help } }) => completion(asked, kind, word, { detail, help }));
}

/** What is due stands before all that usually follows. */
const mostWanted = 1000;

interface Offered {
  readonly word: string;
  readonly kind: 'statement' | 'clause';
  readonly due: boolean;
  readonly detail: string;
  readonly help: string;
}

/** Clause keywords that a statement has already, on its line and its clause lines; those right of the caret among them. */
function givenOn(node: TreeNode | null, { s, number, slot }: Asked): readonly string[] {
  const here = s.tree.lines[number];
  const lines: readonly ReadLine[] = node
    ? [node.line, ...node.children.filter(({ line }) => line.kind === 'clauses').map(({ line }) => line)]
    : here
      ? [here]
      : [];
  const typing = (line: ReadLine, from: number) => line === here && from === slot.from;
  return lines.flatMap((line) =>
    line.clauses.filter(({ keyword }) => !typing(line, keyword.span.from)).map(({ keyword }) => keyword.word),
  );
}

/** What a block is hardly ever without, in the order it is usually written; of those joined by / one is enough. */
const usual: Readonly<Record<string, readonly string[]>> = {
  file: ['load', 'gear', 'rig'],
  load: ['datum', 'contingency', 'free/held by', 'part', 'pick'],
  gear: ['hook/block/ball', 'sling', 'shackle'],
  rig: ['leg'],
  crane: ['deduct', 'position'],
  chart: ['columns', 'radius'],
  weighed: ['support'],
  steps: ['step'],
  people: ['role'],
};

/** Words of the usual ones that nothing stands for yet. */
function dueIn(block: string, there: ReadonlySet<string>, head: boolean): readonly string[] {
  if (block === 'file' && !head) return [];
  return (usual[block] ?? [])
    .map((words) => words.split('/'))
    .filter((words) => !words.some((word) => there.has(word)))
    .flat();
}

function statementsFor({ slot, s, number }: Asked): readonly Offered[] {
  const here = s.tree.nodeAt[number];
  const siblings = new Set(
    (s.tree.parentAt[number]?.children ?? s.tree.nodes)
      .filter((node) => node !== here)
      .flatMap(({ line }) => line.statement?.keyword.word ?? []),
  );
  const rows = Object.entries(statementsUnder(slot.block)).filter(([word, row]) => !(row.once && siblings.has(word)));
  const wanted = dueIn(slot.block, siblings, s.plan.head !== null);
  return rows.map(
    ([word, row]): Offered => ({
      word,
      kind: 'statement',
      due: wanted.includes(word),
      detail: '',
      help: withExample(row.help, row.example ?? ''),
    }),
  );
}

function clausesFor(block: string, given: readonly string[]): readonly Offered[] {
  const shape = shapeNames.find((name) => given.includes(name));
  const shaped = block === 'part' || block === 'less';
  const wanted = dueIn(block, new Set(given), true);
  return Object.entries(clausesOf(block))
    .filter(([word, row]) => (row.repeat || !given.includes(word)) && (!shaped || fits(word, block, shape, given)))
    .map(([word, row]): Offered => {
      const own: ClauseRow | undefined = shape && shaped ? (shapes[shape] as ShapeRow).clauses[word] : undefined;
      const needed = own
        ? own.need === 'always' || eitherDue(shape, word, given)
        : row.need === 'always' || (shaped && ((!shape && word in shapes) || materialDue(word, shape, given)));
      return {
        word,
        kind: 'clause',
        due: needed || wanted.includes(word),
        detail: detailOf(row, needed),
        help: shaped && !shape && word in shapes ? shapeHelp(word as ShapeName) : own?.help || row.help,
      };
    });
}

const withExample = (help: string, example: string): string => (example ? `${help} Such as \`${example}\`.` : help);

/** What a shape is, what its sides are, and how it is written. */
function shapeHelp(name: ShapeName): string {
  const { help, form, example } = shapes[name] as ShapeRow;
  return withExample([help, form.help].filter(Boolean).join(' '), example);
}

const placeWords = ['at', 'on', 'against', 'inside'];

/** Whether a clause can stand beside the shape chosen: sizes of other shapes cannot, nor a second place or material. */
function fits(word: string, block: string, shape: ShapeName | undefined, given: readonly string[]): boolean {
  if (eitherOf(shape, word).some((other) => given.includes(other))) return false;
  if (word === 'bend radius' && given.includes('along')) return true;
  if (word in shapes)
    return shape
      ? word in (shapes[shape] as ShapeRow).clauses
      : (shapes[word as ShapeName].under as readonly string[]).includes(block);
  if (placeWords.includes(word)) return !placeWords.some((other) => given.includes(other));
  if (word === 'of' || word === 'density')
    return (
      !given.includes('of') && !given.includes('density') && (!shape || (shapes[shape] as ShapeRow).material !== 'none')
    );
  if (word === 'empty') return !shape || Boolean((shapes[shape] as ShapeRow).hollow);
  const owners = shapeNames.filter((name) => word in (shapes[name] as ShapeRow).clauses);
  return !owners.length || (shape !== undefined && owners.includes(shape));
}

/** Clauses of a shape of which one is enough: a wall or a bore, a fill or a level; a davit, be it none. */
const either: Readonly<Partial<Record<ShapeName, readonly string[]>>> = {
  tube: ['wall', 'bore'],
  liquid: ['fill', 'level'],
  manway: ['davit'],
  weld: ['leg length', 'throat'],
  heap: ['angle', 'height'],
};

const eitherOf = (shape: ShapeName | undefined, word: string): readonly string[] => {
  const words = (shape && either[shape]) ?? [];
  return words.includes(word) ? words : [];
};

/** One of them is due while none is given. */
const eitherDue = (shape: ShapeName | undefined, word: string, given: readonly string[]): boolean => {
  const words = eitherOf(shape, word);
  return words.length > 0 && !words.some((one) => given.includes(one));
};

const materialDue = (word: string, shape: ShapeName | undefined, given: readonly string[]): boolean =>
  word === 'of' && shape !== undefined && (shapes[shape] as ShapeRow).material === 'of' && !given.includes('density');

const detailOf = (row: ClauseRow, due: boolean): string =>
  [
    due ? 'needed' : row.need === 'when loaded' ? 'needed when it carries load' : '',
    row.words && row.words.length <= 4 ? row.words.join(', ') : '',
  ]
    .filter(Boolean)
    .join(' · ');

/** The row of the clause or value a place is in; null where it is in none. */
export function rowOf(block: string, statement: string | null, clause: string | null): ClauseRow | null {
  if (clause !== null) return clausesOf(block)[clause] ?? null;
  return statement === null ? null : (statements[statement]?.value ?? null);
}
