// The section "Said quietly": what a reader could pass over in the text although it changes what is counted or judged.
import { fold, has, namesOf } from '../../plan/index.ts';
import type { BoundClause, BoundPlan, BoundValue, Cell as Coordinate, Item } from '../../plan/types.ts';
import type { Place, Tree } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { type Context, section } from './context.ts';
import { row } from './figures.ts';
import { letNames } from './let-names.ts';
import type { Row, Section } from './types.ts';
import { capital, clauseText, heading, quoted, slice, valueText } from './written.ts';

/** One short word or sign, in the words of the sheet, with the clauses that it stands in. */
export interface Quiet {
  readonly what: string;
  readonly text: string;
  readonly at: readonly Place[];
  readonly item: Item;
  readonly uses: readonly BoundClause[];
}

export function quietSection({ snapshot }: Context): readonly Section[] {
  const rows = quietIn(snapshot).map(({ what, text, at }): Row => ({ ...row(at, what, text), repeat: true }));
  return section(
    'quiet',
    'Said quietly',
    rows.length
      ? [
          {
            kind: 'table',
            caption: 'Short words in the text that change what is counted or judged',
            columns: [{ title: 'What' }, { title: 'As written' }],
            rows,
          },
        ]
      : [],
  );
}

/** All that is said quietly in a plan, in its order; of what it takes in only the gear that hangs, waivers and rules. */
export function quietIn({ plan, results }: Snapshot): readonly Quiet[] {
  const used = new Set(
    results.gear.filter(({ hangs, thing }) => hangs && thing.fromLibrary).map(({ thing }) => thing.item),
  );
  const items = plan.items.filter(
    ({ file, keyword }) => file === plan.file || keyword === 'waive' || keyword === 'rules',
  );
  return [...[...items, ...used].flatMap((item) => inItem(item, plan)), ...letsUsed(plan)];
}

function inItem(item: Item, plan: BoundPlan): readonly Quiet[] {
  const head = capital(heading(item));
  const say = (what: string, at: Place, text = head, uses: readonly BoundClause[] = []): Quiet => ({
    what,
    text,
    at: [at],
    item,
    uses,
  });
  const values = [...(item.value ? [item.value] : []), ...[...item.clauses.values()].flat()];
  return [
    ...(has(item, 'spare') ? [say('Not counted: lies ready (spare)', item.at)] : []),
    ...values.flatMap((use) => inValue(item, use, head)),
    ...clauses(item, 'without').map((use) =>
      say('Left out (without)', use.at, `${head}: without ${valueText(use)}`, [use]),
    ),
    ...clauses(item, 'direct').map((use) =>
      say(
        'Joined without a shackle or link (direct)',
        use.at,
        `${item.value ? valueText(item.value) : head}: “${valueText(use)}”`,
        [use],
      ),
    ),
    ...(item.keyword === 'waive' ? [say('Set aside (waive)', item.at, waiver(item), values)] : []),
    ...clauses(item, 'like').flatMap((use) => likeness(item, use, plan)),
    ...item.children.flatMap((child) => inItem(child, plan)),
  ];
}

const clauses = (item: Item, keyword: string): readonly BoundClause[] => item.clauses.get(keyword) ?? [];

function inValue(item: Item, use: BoundClause, head: string): readonly Quiet[] {
  const kinds = use.value ? blanks(use.value) : [];
  const text = [`${head}:`, use.keyword, slice(use.valueAt)].filter(Boolean).join(' ');
  const said = { at: [use.at], item, uses: [use] };
  return [
    ...(kinds.includes('unknown') ? [{ what: 'Not known yet (?)', text, ...said }] : []),
    ...(kinds.includes('none') ? [{ what: 'Deliberately nothing (none)', text, ...said }] : []),
  ];
}

function blanks(value: BoundValue): readonly Coordinate[] {
  if (value.kind === 'unknown' || value.kind === 'none') return [value.kind];
  if (value.kind === 'point') return value.at;
  return value.kind === 'row' ? [value.head, ...value.cells] : [];
}

const waiver = (item: Item): string =>
  [
    item.value ? valueText(item.value) : '',
    ...['on', 'reason', 'approved by', 'until']
      .filter((keyword) => has(item, keyword))
      .map((keyword) => `${keyword} ${clauseText(item, keyword)}`),
  ].join(', ');

/** Which clauses come from the thing named; what belongs to the one piece alone is never taken over. */
function likeness(item: Item, use: BoundClause, { names }: BoundPlan): readonly Quiet[] {
  const name = namesOf(item, 'like')[0]?.parts.at(-1)?.text ?? '';
  const [other] = names.find('gear', fold(name));
  const taken = other
    ? [...other.item.clauses.keys()].filter((keyword) => !item.clauses.has(keyword) && !never.has(keyword))
    : [];
  const words = taken.map((keyword) => (keyword === 'from' ? 'source' : keyword)).join(', ') || 'nothing';
  return [
    {
      what: 'Taken over from another item (like)',
      text: `${capital(heading(item))}: ${words} as for ${quoted(name)}`,
      at: [use.at],
      item,
      uses: [use],
    },
  ];
}

const never = new Set(['serial', 'inspected', 'at', 'spare', 'like', 'hangs from', 'count', 'note']);

/** Each `let` of the plan's own file with the lines whose figures come from it. */
function letsUsed({ file, files, items }: BoundPlan): readonly Quiet[] {
  const uses = files.filter((part) => part.file === file).flatMap(({ tree }) => usesIn(tree));
  return items
    .filter((item) => item.keyword === 'let')
    .flatMap((item): readonly Quiet[] => {
      const name = item.names[0] ?? '';
      const lines = uses.filter(({ names }) => names.has(fold(name)));
      const times = lines.length === 1 ? 'on one line' : `on ${lines.length} lines`;
      return lines.length
        ? [
            {
              what: 'Figure taken from a name (let)',
              text: `${name} = ${item.value ? valueText(item.value) : ''}, used ${times}`,
              at: [item.at, ...lines.map(({ at }) => at)],
              item,
              uses: item.value ? [item.value] : [],
            },
          ]
        : [];
    });
}

const usesIn = (tree: Tree): readonly { readonly names: ReadonlySet<string>; readonly at: Place }[] =>
  tree.lines.flatMap((line, i) => {
    const place = tree.rows[i];
    return line && place
      ? [{ names: new Set(letNames(line).map(fold)), at: { row: place, from: line.indent, to: place.text.length } }]
      : [];
  });
