// Clauses of one statement in two versions: which came, went, or mean something else, each in the words of the text.
import { isListed } from '../../plan/index.ts';
import type { BoundClause, Item } from '../../plan/types.ts';
import { named, type Quantity, type System, write } from '../../quantities/index.ts';
import type { Spell } from '../meaning.ts';
import { valueText } from '../sheet/written.ts';
import { clausesOf, saysOf } from './lines.ts';
import type { ClauseChange } from './types.ts';

/** In the order of the new statement, then what went; null: the statement is not there. */
export function clauseChanges(
  old: Item | null,
  now: Item | null,
  spell: Spell,
  system: System,
): readonly ClauseChange[] {
  const [before, after] = [old ? saysOf(old, spell) : new Map(), now ? saysOf(now) : new Map()];
  const keywords = [...new Set([...after.keys(), ...before.keys()])];
  return keywords
    .filter((keyword) => before.get(keyword) !== after.get(keyword))
    .map((keyword) => {
      const [was, is] = [textOf(old, keyword, system), textOf(now, keyword, system)];
      if (was !== is) return { keyword, old: was, now: is };
      const [a, b] = [figured(old, keyword, system), figured(now, keyword, system)];
      return { keyword, old: a, now: a === b ? `${b}, where a name stands for something else now` : b };
    });
}

/** As written; null where it is not said. */
function textOf(item: Item | null, keyword: string, system: System): string | null {
  const uses = item && clausesOf(item).get(keyword);
  if (!item || !uses) return null;
  return uses.map((use) => (isListed(item) ? amount(use, system) : null) ?? written(use)).join('; ');
}

/** The same words that stand for another figure, through a name given with `let`: the figure behind them. */
function figured(item: Item | null, keyword: string, system: System): string | null {
  const uses = (item && clausesOf(item).get(keyword)) ?? [];
  return uses.map((use) => [written(use), amount(use, system)].filter(Boolean).join(' = ')).join('; ') || null;
}

/** Its value in its own words, a text in quotes; '' for a clause that has none. */
function written(use: BoundClause): string {
  const { takes } = use.row;
  return takes === 'nothing' ? '' : takes === 'text' && use.value ? `“${valueText(use)}”` : valueText(use);
}

/** A quantity or its sides or coordinates as figures; null for what has none. */
function amount({ value }: BoundClause, system: System): string | null {
  if (value?.kind === 'quantity') return figure(value.quantity, system);
  if (value?.kind === 'size') return value.sides.map((side) => figure(side, system)).join(' × ');
  if (value?.kind !== 'point') return null;
  const cells = value.at.map((cell) =>
    cell === null || cell === 'unknown' ? '?' : cell === 'none' ? 'none' : figure(cell, system),
  );
  return `(${cells.join(', ')})`;
}

/** With digits enough to tell two figures apart. */
function figure({ value, low, high, dimension, percent }: Quantity, system: System): string {
  const measure = percent ? '1' : named(dimension);
  if (!measure) return 'a figure of no measure that has a name';
  const text = (number: number) => write(number, measure, { system, round: 'near', digits: 6, plain: false });
  return low === high ? text(value) : `${text(value)} (${text(low)} to ${text(high)})`;
}
