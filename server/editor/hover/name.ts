// Hover on a name that has no result of its own: what it stands for, as declared, with the comment above it.
import type { PlanFile, Thing } from '../../plan/types.ts';
import { named, write } from '../../quantities/index.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { ownFile } from '../items.ts';
import { asDeclared } from '../spelling.ts';
import type { Hover } from '../types.ts';
import { useAt } from '../uses.ts';
import { hoverOf, type Line, note } from './page.ts';
import { aboutThing } from './result.ts';
import { unknownLines } from './working.ts';

export function hoverName(s: Snapshot, row: number, offset: number): Hover | null {
  const use = useAt(s, row, offset);
  if (!use) return hoverFile(s, row, offset);
  const [thing] = use.things;
  if (!thing) return null;
  const others = use.things.length - 1;
  const head = `${headOf(thing, s)}${others ? `, and ${others} more of that name` : ''}`;
  const open =
    thing.kind === 'let' && !thing.item.value?.value
      ? unknownLines([{ what: `${thing.name} could not be read.`, at: thing.item.at }])
      : [];
  return hoverOf(
    s.plan,
    use.at,
    note(head, {
      working: linesOf(thing, use.declares).filter(({ says }) => says !== head),
      rests: open,
      about: aboutThing(s, thing, use),
    }),
  );
}

function headOf(thing: Thing, { plan }: Snapshot): string {
  const name = `${thing.item.keyword} ${asDeclared(thing, 'declared')}`;
  const own =
    thing.kind === 'material'
      ? thing.item.clauses.get('density')?.[0]?.value
      : thing.kind === 'let' || thing.kind === 'deduction'
        ? thing.item.value?.value
        : undefined;
  if (own?.kind !== 'quantity') return name;
  const { value, dimension, percent } = own.quantity;
  const measure = percent ? '1' : named(dimension);
  return measure ? `${name} = ${write(value, measure, { system: plan.units, round: 'near', plain: false })}` : name;
}

/** Its statement and the clauses under it as written; where the reader is looking at them they are left out. */
const linesOf = ({ item }: Thing, declares: boolean): readonly Line[] =>
  declares
    ? []
    : [item.node, ...item.node.children.filter(({ line }) => line.kind === 'clauses')].map(({ row }) => ({
        says: row.text.trim(),
      }));

/** The path of a `use` line: what that file gives. */
function hoverFile(s: Snapshot, row: number, offset: number): Hover | null {
  const use = ownFile(s)?.uses.find(({ at }) => at.row === s.tree.rows[row] && offset >= at.from && offset <= at.to);
  const file = use?.file ? s.plan.files.find((one) => one.file === use.file) : undefined;
  return use && file ? hoverOf(s.plan, use.at, note(use.path, { working: givenBy(s, file) })) : null;
}

function givenBy({ plan }: Snapshot, { file }: PlanFile): readonly Line[] {
  const counts = new Map<string, number>();
  for (const thing of plan.names.things)
    if (thing.item.file === file) counts.set(thing.item.keyword, (counts.get(thing.item.keyword) ?? 0) + 1);
  const said = [...counts].map(([keyword, n]) => `${n} × ${keyword}`);
  return [{ says: said.length ? `names it gives: ${said.join(', ')}` : 'it gives no names' }];
}
