// Semantic colours: the same class for every word that the editor's own colouring gives, and beyond it what only the whole plan knows.
import type { Row, TokenClass } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { itemsIn, ownFile } from './items.ts';
import { type Use, usesOf } from './uses.ts';

/** Standard classes of tokens, as editors know them, for each class of words of a line. */
export const tokenTypes = {
  keyword: 'keyword',
  clause: 'property',
  name: 'variable',
  text: 'string',
  number: 'number',
  unit: 'type',
  operator: 'operator',
  comment: 'comment',
  word: 'enumMember',
} as const satisfies Readonly<Record<TokenClass, string>>;

/** Classes that colouring by the line alone does not set apart either: a token of them stands only where the plan has something to say. */
const plain: readonly TokenClass[] = ['name', 'word'];

/** What only the plan knows: the name is declared here, nothing has that name, or what it names hangs nowhere. */
export const tokenModifiers = ['declaration', 'unknown', 'unused'] as const;
export type TokenModifier = (typeof tokenModifiers)[number];

export interface Token {
  readonly row: number;
  readonly from: number;
  readonly to: number;
  readonly type: (typeof tokenTypes)[TokenClass];
  readonly modifiers: readonly TokenModifier[];
}

/** The tokens of those rows, from left to right and top to bottom, none overlapping. */
export function tokens(s: Snapshot, firstRow: number, lastRow: number): readonly Token[] {
  const { tree } = s;
  const file = ownFile(s);
  const unused = new Set(s.own.filter(({ slug }) => slug === 'left-unused').map(({ at }) => at.row));
  const uses = new Map<Row, Use[]>();
  for (const item of file ? itemsIn(file, headRow(s, firstRow), lastRow) : []) {
    for (const use of usesOf(item, s.plan)) uses.set(use.at.row, [...(uses.get(use.at.row) ?? []), use]);
  }
  const found: Token[] = [];
  for (let row = firstRow; row <= lastRow && row < tree.rows.length; row++) {
    const named = uses.get(tree.rows[row] as Row);
    for (const { from, to, class: kind } of tree.lines[row]?.colours ?? []) {
      const use = named?.find(({ at }) => at.from === from);
      const modifiers = use ? modifiersOf(use, unused.has(use.at.row)) : [];
      if (!plain.includes(kind) || modifiers.some((one) => one !== 'declaration'))
        found.push({ row, from, to, type: tokenTypes[kind], modifiers });
    }
  }
  return found;
}

/** The row of the statement whose clause lines the first row may be among. */
function headRow({ tree }: Snapshot, row: number): number {
  const parent = tree.lines[row]?.kind === 'clauses' ? tree.parentAt[row] : null;
  return parent ? tree.rowNumber(parent.row) : row;
}

const modifiersOf = ({ declares, things, kinds, where }: Use, unused: boolean): readonly TokenModifier[] => [
  ...(declares ? (['declaration'] as const) : []),
  ...(declares || things.length || !kinds.length || where === 'designation' || where === 'text'
    ? []
    : (['unknown'] as const)),
  ...(declares && unused ? (['unused'] as const) : []),
];
