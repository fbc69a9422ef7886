// The sections of a library's sheet: its gear, charts, materials and rules as they are stated.
import type { Item } from '../../plan/types.ts';
import { type Context, section } from './context.ts';
import { craneSection } from './cranes.ts';
import { row } from './figures.ts';
import { notesSection, rulesSection } from './papers.ts';
import type { Block, Section } from './types.ts';
import { capital, namesText, statementText, writtenTable } from './written.ts';

export function librarySection(context: Context): readonly Section[] {
  const own = context.snapshot.plan.items.filter(({ file }) => file === context.snapshot.plan.file);
  const gear = own.filter(({ keyword }) => keyword === 'gear').flatMap(({ children }) => children);
  const others = own.filter(({ keyword }) => !elsewhere.has(keyword));
  return [
    ...section('gear', 'Gear', gear.length ? [gearTable(gear)] : []),
    ...section(
      'stated',
      'Stated',
      others.map((item) => writtenTable(item)),
    ),
    ...craneSection(context),
    ...rulesSection(context),
    ...notesSection(context),
  ];
}

const elsewhere = new Set(['gear', 'use', 'crane', 'chart', 'rules']);

const gearTable = (gear: readonly Item[]): Block => ({
  kind: 'table',
  caption: 'Each item, as stated',
  columns: [{ title: 'Item' }, { title: 'Kind' }, { title: 'Stated' }],
  rows: gear.map((item) => row([item.at], namesText(item), capital(item.keyword), statementText(item, ['note']))),
});
