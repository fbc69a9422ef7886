// The statements of a plan as they are compared: one line for each name that is declared, each knowing what it stands under.
import { designationKey } from '../../catalog/index.ts';
import { fold, isListed } from '../../plan/index.ts';
import type { BoundClause, BoundPlan, Item } from '../../plan/types.ts';
import { clauseMeaning, type Spell } from '../meaning.ts';
import { heading, quoted } from '../sheet/written.ts';

export interface Line {
  readonly item: Item;
  readonly name: string; // as declared; '' for a statement that declares none
  readonly parent: Line | null;
  /** Of a file that the plan takes in. */
  readonly used: boolean;
  readonly under: readonly Line[];
}

/**
 * All lines of a plan and of what it takes in, the top ones. The blocks that only hold gear are left out: their items stand by
 * themselves, in whichever block. `expect` has its own comparison.
 */
export const linesOf = (plan: BoundPlan): readonly Line[] =>
  plan.items.flatMap((item) => {
    const used = item.file !== plan.file;
    if (item.keyword === 'expect') return [];
    if (item.keyword !== 'gear') return linesFor(item, null, used);
    const block = item.clauses.size ? linesFor({ ...item, children: [] }, null, used) : [];
    return [...block, ...item.children.flatMap((child) => linesFor(child, null, used))];
  });

function linesFor(item: Item, parent: Line | null, used: boolean): readonly Line[] {
  const names = item.row.names !== 'none' && item.names.length ? item.names : [''];
  return names.map((name) => {
    const under: Line[] = [];
    const line: Line = { item, name, parent, used, under };
    under.push(...item.children.flatMap((child) => linesFor(child, line, used)));
    return line;
  });
}

/** A line and all lines under it, however deep. */
export const withUnder = (line: Line): readonly Line[] => [line, ...line.under.flatMap(withUnder)];

/** What a clause means, designations spelled one way. */
export const meaningOf = (use: BoundClause, spell: Spell = fold): string =>
  use.value?.kind === 'text' && use.row.takes.startsWith('designation')
    ? designationKey(use.value.text)
    : clauseMeaning(use, spell);

/**
 * The clauses of a statement by keyword, its own value under `''`; one that repeats keeps its order. Which row of a list a part
 * stands in says nothing.
 */
export const clausesOf = (item: Item): ReadonlyMap<string, readonly BoundClause[]> =>
  new Map([
    ...(item.value ? [['', [item.value]] as const] : []),
    ...[...item.clauses].filter(([keyword]) => keyword !== 'from' || !isListed(item)),
  ]);

/** What each clause means. */
export const saysOf = (item: Item, spell: Spell = fold): ReadonlyMap<string, string> =>
  new Map(
    [...clausesOf(item)].map(([keyword, uses]) => [keyword, JSON.stringify(uses.map((use) => meaningOf(use, spell)))]),
  );

/** All that a line says but its own name, with what stands under it: equal for two lines that mean the same. */
export const printOfLine = (line: Line, spell: Spell = fold): string =>
  JSON.stringify([
    line.item.keyword,
    [...saysOf(line.item, spell)].sort(([a], [b]) => (a < b ? -1 : 1)),
    line.under.map((child) => [spell(child.name), printOfLine(child, spell)].join(' ')).sort(),
  ]);

/** What statement it is, with those of its names that are meant: `sling S1..S4`, `stated 4,850 lb`, `less under part Deck`. */
export function headingOf(lines: readonly Line[]): string {
  const [first] = lines;
  if (!first) return '';
  const { item, parent } = first;
  if (!first.name && !item.value && parent) return `${heading(item)} under ${headingOf([parent])}`;
  if (lines.length === item.names.length || !first.name)
    return isListed(item) ? `part ${quoted(first.name)}` : heading(item);
  return `${item.keyword} ${lines.map(({ name }) => quoted(name)).join(', ')}`;
}
