// The sections that show site, people, steps, hazards, approvals, rules and notes as they are written.
import { has } from '../../plan/index.ts';
import type { Item } from '../../plan/types.ts';
import { type Context, section, statementsOf } from './context.ts';
import { row } from './figures.ts';
import { fileClauses } from './file-clauses.ts';
import type { Row, Section, Table } from './types.ts';
import { capital, clauseText, heading, valueText, writtenTable } from './written.ts';

export const siteSection = (context: Context): readonly Section[] =>
  section(
    'site',
    'Ground, wind and surroundings',
    ['ground', 'weather', 'surroundings']
      .flatMap((keyword) => statementsOf(context, keyword))
      .map((item) => writtenTable(item)),
  );

export function peopleSection(context: Context): readonly Section[] {
  const people = statementsOf(context, 'people');
  const signals = people
    .filter((item) => has(item, 'signals'))
    .map((item) => ({
      kind: 'paragraph' as const,
      look: 'plain' as const,
      text: `Signals: ${clauseText(item, 'signals')}`,
      at: [item.at],
    }));
  const roles = people.flatMap(({ children }) => children);
  return section('people', 'People', [
    ...signals,
    ...list(roles, 'Who does what', 'Duty', [
      ['named', 'Named'],
      ['holds', 'Holds'],
    ]),
  ]);
}

export function stepsSection(context: Context): readonly Section[] {
  const steps = statementsOf(context, 'steps').flatMap(({ children }) => children);
  const rows = steps.map((item, i) =>
    row(
      [item.at],
      String(i + 1),
      ownText(item),
      has(item, 'hold') ? 'hold: go on only when told' : '',
      clauseText(item, 'who'),
      remarks(item, ['hold', 'who']),
    ),
  );
  const columns = [
    { title: 'Step', figures: true as const },
    { title: 'What is done' },
    { title: 'Hold' },
    { title: 'Who' },
    { title: 'Remarks' },
  ];
  return section('steps', 'Steps', rows.length ? [{ kind: 'table', caption: 'In this order', columns, rows }] : []);
}

/** What still holds a load before it leaves the ground, or who saw that nothing does. */
export const holdingSection = (context: Context): readonly Section[] =>
  section(
    'holding',
    'Before it leaves the ground',
    list(
      statementsOf(context, 'load').flatMap(({ children }) =>
        children.filter(({ keyword }) => keyword === 'held by' || keyword === 'free'),
      ),
      'What still holds the load, or who saw that it is free',
      'Held by, or free',
      [
        ['released', 'Let go'],
        ['breakout', 'Extra pull it may take'],
      ],
    ),
  );

export const hazardSection = (context: Context): readonly Section[] =>
  section(
    'hazards',
    'Hazards',
    list(statementsOf(context, 'hazard'), 'What can go wrong, and what is done about it', 'Hazard', [
      ['control', 'Control'],
      ['remaining', 'What remains'],
    ]),
  );

export const approvalSection = (context: Context): readonly Section[] =>
  section('approvals', 'Approvals, permits and records', [
    ...list(statementsOf(context, 'approval'), 'Approvals, as written', 'Duty', signed),
    ...list(statementsOf(context, 'permit'), 'Permits, as written', 'Permit', signed),
    ...list(statementsOf(context, 'record'), 'What was found on the day', 'Record', [
      ['dated', 'Dated'],
      ['reads', 'Reads'],
      ['radius', 'Radius'],
      ['wind', 'Wind'],
      ['named', 'By'],
    ]),
  ]);

const signed: Clauses = [
  ['named', 'Named'],
  ['date', 'Date'],
  ['mark', 'Content mark approved'],
  ['until', 'Until'],
];

export const rulesSection = (context: Context): readonly Section[] =>
  section(
    'rules',
    'Rules in force',
    statementsOf(context, 'rules').map((item) => writtenTable(item)),
  );

type Clauses = readonly (readonly [keyword: string, title: string])[];

/** A table of like statements: their own text, one column a clause, and whatever else is written behind. */
function list(items: readonly Item[], caption: string, first: string, clauses: Clauses): readonly Table[] {
  if (!items.length) return [];
  const rows = items.map((item) =>
    row(
      [item.at],
      ownText(item),
      ...clauses.map(([keyword]) => clauseText(item, keyword)),
      remarks(
        item,
        clauses.map(([keyword]) => keyword),
      ),
    ),
  );
  return [
    {
      kind: 'table',
      caption,
      columns: [first, ...clauses.map(([, title]) => title), 'Remarks'].map((title) => ({ title })),
      rows: rows as readonly Row[],
    },
  ];
}

const ownText = (item: Item): string => (item.value ? valueText(item.value) : '');

const remarks = (item: Item, shown: readonly string[]): string =>
  [...item.clauses.keys()]
    .filter((keyword) => !shown.includes(keyword) && keyword !== 'note')
    .map((keyword) => `${keyword} ${clauseText(item, keyword)}`)
    .join('; ');

/** Notes of every statement, and those of the file itself. */
export function notesSection(context: Context): readonly Section[] {
  const own = fileClauses(context.snapshot.plan, 'note').map(({ text, at }) => row([at], 'The plan', text));
  const rows = [...own, ...context.snapshot.plan.items.flatMap(notes)];
  return section(
    'notes',
    'Notes',
    rows.length
      ? [{ kind: 'table', caption: 'Notes, as written', columns: [{ title: 'To' }, { title: 'Note' }], rows }]
      : [],
  );
}

function notes(item: Item): readonly Row[] {
  const rows = (item.clauses.get('note') ?? []).map((use) => row([use.at], capital(heading(item)), valueText(use)));
  return [...rows, ...item.children.flatMap(notes)];
}
