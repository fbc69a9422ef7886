// The section "Cranes": what each position asks of the crane, the crane as stated, and its charts as typed.
import { has } from '../../plan/index.ts';
import type { Item } from '../../plan/types.ts';
import type { Result } from '../../results/types.ts';
import { placeIn } from '../places.ts';
import { type Context, section, statementsOf } from './context.ts';
import { figure, overCapacity, row, worseEnd } from './figures.ts';
import type { Block, Cell, Row, Section, Table } from './types.ts';
import { clauseText, namesText, quoted, slice, writtenTable } from './written.ts';

export function craneSection(context: Context): readonly Section[] {
  const cranes = statementsOf(context, 'crane').flatMap((item) => [
    ...positions(context, item),
    writtenTable(item, `Crane ${namesText(item)}, as stated`),
  ]);
  const charts = statementsOf(context, 'chart').map(chart);
  return section('cranes', 'Cranes', [...cranes, ...charts]);
}

const results = [
  ['radius', 'Radius'],
  ['gross load', 'Gross load'],
  ['gross capacity', 'Gross capacity'],
  ['capacity used', 'Capacity used'],
  ['net capacity', 'Net capacity'],
  ['headroom', 'Headroom'],
] as const;

/** Worked-out figures of a crane and its positions, where there are any. */
function positions({ snapshot, system }: Context, crane: Item): readonly Block[] {
  const name = crane.names[0] ?? '';
  const subjects = [
    { kind: 'crane', name, at: crane.at, title: `Crane ${quoted(name)}, worst` },
    ...crane.children
      .filter(({ keyword }) => keyword === 'position')
      .map((item) => ({
        kind: 'position',
        name: item.names[0] ?? '',
        at: item.at,
        title: `Position ${namesText(item)}`,
      })),
  ];
  const rows = subjects.flatMap(({ kind, name, at, title }): readonly Row[] => {
    const cells = results.map(([result]): Cell | string => {
      const found = snapshot.results.find(kind, name, result);
      if (!found || notWorkedOut(found)) return '';
      const cell = figure(found.value, system, worseEnd(kind, result));
      return result === 'capacity used' ? overCapacity(found.value, cell) : cell;
    });
    return cells.some((cell) => cell !== '') ? [{ ...row([at], title, ...cells), repeat: true }] : [];
  });
  const columns = [{ title: 'Where' }, ...results.map(([, title]) => ({ title, figures: true as const }))];
  return rows.length
    ? [{ kind: 'table', caption: `What each position asks of crane ${quoted(name)}`, columns, rows }]
    : [];
}

/** Open for no reason that lies in the text: this version does not work it out, as the head of the sheet says. */
const notWorkedOut = ({ value }: Result): boolean =>
  value.value === null && !value.because.some(({ at }) => placeIn(at));

/** The chart as somebody typed it: heads over columns, radii down the side; an empty cell is no capacity. */
function chart(item: Item): Table {
  const caption = [
    `Chart ${namesText(item)}, as typed`,
    clauseText(item, 'setup'),
    has(item, 'from') ? `from “${clauseText(item, 'from')}”` : 'nothing says which document it comes from',
    has(item, 'compared by')
      ? `compared by ${clauseText(item, 'compared by')}`
      : 'no second person is named who compared it with the maker’s document',
  ]
    .filter(Boolean)
    .join('; ');
  const heads = item.children.find(({ keyword }) => keyword === 'columns');
  const titles = ['Radius', ...(heads ? cellsOf(heads) : [])];
  const lines = item.children
    .filter((child) => child !== heads)
    .map((child) => ({ at: child.at, cells: cellsOf(child) }));
  const width = Math.max(titles.length, ...lines.map(({ cells }) => cells.length));
  const columns = Array.from({ length: width }, (_, i) => ({
    title: titles[i] ?? 'Capacity',
    ...(i > 0 && { figures: true as const }),
  }));
  const rows = lines.map(({ at, cells }) => row([at], ...Array.from({ length: width }, (_, i) => cells[i] ?? '')));
  return { kind: 'table', caption, columns, rows };
}

/** `10 ft: 60,000; 51,000 lb; none` as written, cell by cell. */
const cellsOf = ({ value }: Item): readonly string[] => (value ? slice(value.valueAt).split(/\s*[:;]\s*/) : []);
