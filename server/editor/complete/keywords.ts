// Keywords that may stand here: what is still due first, then what usually follows in this file, then the rest as the vocabulary has them.
import type { ReadLine, TreeNode } from '../../syntax/types.ts';
import { type ClauseRow, clausesOf, everywhere, type ShapeName, shapeNames, type ShapeRow, shapes, statements, statementsUnder } from '../../vocabulary/index.ts';
import type { Completion } from '../types.ts';
import { statementAt } from '../items.ts';
import { type Asked, completion } from './types.ts';

export function keywords(asked: Asked): readonly Completion[] {
  const { row, slot, s, number } = asked;
  const starts = row.text.slice(0, slot.from).trim() === '';
  const node = slot.statement === null ? parentOf(asked) : (s.tree.nodeAt[number] ?? null);
  const given = givenOn(node, asked);
  const clauses = clausesFor(asked, given);
  const wanted = starts && slot.statement === null ? [...statementsFor(asked), ...clauses] : clauses;
  const usual = followers(asked, starts, given);
  const place = ({ word }: Offered) => usual.get(word) ?? 0;
  const ordered = wanted.map((offer, i) => ({ offer, i })).sort((a, b) => a.offer.group - b.offer.group || place(b.offer) - place(a.offer) || a.i - b.i);
  return ordered.map(({ offer: { word, kind, detail, help } }) => completion(asked, kind, word, { detail, help }));
}

interface Offered {
  readonly word: string;
  readonly kind: 'statement' | 'clause';
  readonly group: 0 | 1 | 2 | 3; // due, fitting, rest, everywhere
  readonly detail: string;
  readonly help: string;
}

/** The statement a line without one of its own belongs to. */
const parentOf = ({ s, number }: Asked): TreeNode | null => s.tree.parentAt[number] ?? null;

/** Clause keywords that a statement has already, on its line and its clause lines; those right of the caret among them. */
function givenOn(node: TreeNode | null, { s, number, slot }: Asked): readonly string[] {
  const lines: readonly ReadLine[] = node ? [node.line, ...node.children.filter(({ line }) => line.kind === 'clauses').map(({ line }) => line)] : [s.tree.lines[number]].flatMap((line) => line ?? []);
  const typing = (line: ReadLine, from: number) => line === s.tree.lines[number] && from === slot.from;
  return lines.flatMap((line) => line.clauses.filter(({ keyword }) => !typing(line, keyword.span.from)).map(({ keyword }) => keyword.word));
}

function statementsFor({ slot, s, number }: Asked): readonly Offered[] {
  const here = s.tree.nodeAt[number];
  const siblings = (s.tree.parentAt[number]?.children ?? s.tree.nodes).filter((node) => node !== here).map(({ line }) => line.statement?.keyword.word);
  return Object.entries(statementsUnder(slot.block))
    .filter(([word, row]) => !(row.once && siblings.includes(word)))
    .map(([word, row]) => ({ word, kind: 'statement' as const, group: 1 as const, detail: '', help: row.help }));
}

function clausesFor({ slot: { block } }: Asked, given: readonly string[]): readonly Offered[] {
  const rows = clausesOf(block);
  const shape = shapeNames.find((name) => given.includes(name));
  const shaped = block === 'part' || block === 'less';
  return Object.entries(rows).filter(([word, row]) => (row.repeat || !given.includes(word)) && (!shaped || fits(word, shape, given))).map(([word, row]): Offered => {
    const own: ClauseRow | undefined = shape ? (shapes[shape] as ShapeRow).clauses[word] : undefined;
    const due = own ? own.need === 'always' || eitherDue(shape, word, given) : row.need === 'always' || (shaped && ((!shape && word in shapes) || materialDue(word, shape, given)));
    return { word, kind: 'clause', group: word in everywhere ? 3 : due ? 0 : 1, detail: detailOf(row, due), help: own?.help || row.help };
  });
}

const placeWords = ['at', 'on', 'against', 'inside'];

/** Whether a clause can stand beside the shape chosen: sizes of other shapes cannot, nor a second place or material. */
function fits(word: string, shape: ShapeName | undefined, given: readonly string[]): boolean {
  if (word in shapes && shape) return word in (shapes[shape] as ShapeRow).clauses;
  if (placeWords.includes(word)) return !placeWords.some((other) => given.includes(other));
  if (word === 'of' || word === 'density') return !given.includes('of') && !given.includes('density') && (!shape || (shapes[shape] as ShapeRow).material !== 'none');
  if (word === 'empty') return !shape || Boolean((shapes[shape] as ShapeRow).hollow);
  const owners = shapeNames.filter((name) => word in (shapes[name] as ShapeRow).clauses);
  if (!owners.length || alsoOfParts.includes(word)) return true;
  return shape !== undefined && owners.includes(shape);
}
const alsoOfParts = ['count', 'by', 'contingency'];

/** A wall or a bore, a fill or a level: one of them is due while none is given. */
function eitherDue(shape: ShapeName | undefined, word: string, given: readonly string[]): boolean {
  const pairs = [['tube', 'wall', 'bore'], ['liquid', 'fill', 'level']];
  return pairs.some(([name, ...either]) => name === shape && either.includes(word) && !either.some((one) => given.includes(one)));
}

const materialDue = (word: string, shape: ShapeName | undefined, given: readonly string[]): boolean =>
  word === 'of' && shape !== undefined && (shapes[shape] as ShapeRow).material === 'of' && !given.includes('density');

const detailOf = (row: ClauseRow, due: boolean): string => [due ? 'needed' : row.need === 'when loaded' ? 'needed when it carries load' : '', row.words && row.words.length <= 4 ? row.words.join(', ') : ''].filter(Boolean).join(' · ');

/** How often each keyword comes next in this file, after the one that stands before the place. */
function followers(asked: Asked, starts: boolean, given: readonly string[]): ReadonlyMap<string, number> {
  const { s, number, slot } = asked;
  const counts = new Map<string, number>();
  const count = (word: string) => counts.set(word, (counts.get(word) ?? 0) + 1);
  const here = s.tree.nodeAt[number] ?? null;
  if (starts && slot.statement === null) {
    const siblings = s.tree.parentAt[number]?.children ?? s.tree.nodes;
    const before = siblings.filter((node) => node !== here && s.tree.rowNumber(node.row) < number).at(-1)?.line.statement?.keyword.word ?? null;
    for (const [first, next] of neighbours(s.tree.nodes, slot.block, here)) if (first === before) count(next);
    return counts;
  }
  const left = (s.tree.lines[number]?.clauses ?? []).filter(({ keyword }) => keyword.span.to <= slot.from).at(-1)?.keyword.word ?? (slot.statement === null ? (given.at(-1) ?? null) : null);
  const shape = shapeNames.find((name) => given.includes(name));
  for (const words of clauseRuns(s.tree.nodes, slot.block, statementAt(s.tree, number))) {
    const alike = !shape || words.includes(shape) ? 2 : 1;
    words.forEach((word, i) => {
      if ((i === 0 ? null : words[i - 1]) === left) for (let n = 0; n < alike; n++) count(word);
    });
  }
  return counts;
}

/** Keywords of statements under one kind of block, each with the one before it. */
function neighbours(nodes: readonly TreeNode[], block: string, except: TreeNode | null): readonly (readonly [string | null, string])[] {
  const own = nodes[0]?.block === block ? nodes : [];
  const words = own.filter((node) => node !== except).flatMap(({ line }) => line.statement?.keyword.word ?? []);
  return [...words.map((word, i): readonly [string | null, string] => [i ? (words[i - 1] as string) : null, word]), ...nodes.flatMap((node) => neighbours(node.children, block, except))];
}

/** The clause keywords of every statement of one kind, in the order written. */
function clauseRuns(nodes: readonly TreeNode[], keyword: string, except: TreeNode | null): readonly (readonly string[])[] {
  return nodes.flatMap((node) => {
    const own = node !== except && node.line.statement?.keyword.word === keyword ? [[node, ...node.children].filter((one) => one === node || one.line.kind === 'clauses').flatMap(({ line }) => line.clauses.map((clause) => clause.keyword.word))] : [];
    return [...own, ...clauseRuns(node.children, keyword, except)];
  });
}

/** The row of the clause or value a place is in; null where it is in none. */
export function rowOf(block: string, statement: string | null, clause: string | null): ClauseRow | null {
  if (clause !== null) return clausesOf(block)[clause] ?? null;
  return statement === null ? null : (statements[statement]?.value ?? null);
}
