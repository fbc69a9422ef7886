// One row teaches the language a clause: with it added to a copy of the table, it is read, checked, offered and explained.
import { expect, test, vi } from 'vitest';

vi.mock('../../../server/vocabulary/gear.ts', async (original) => {
  const real = await original<typeof import('../../../server/vocabulary/gear.ts')>();
  const { shackle } = real.gear;
  const added = { takes: 'amount', measures: 'length', above: 0, help: 'Inside width of its bow.' } as const;
  return {
    ...real,
    gear: { ...real.gear, shackle: { ...shackle, clauses: { ...shackle.clauses, 'bow width': added } } },
  };
});

const { check } = await import('../../../server/workspace/memory.ts');
const { complete } = await import('../../../server/editor/complete.ts');
const { hover } = await import('../../../server/editor/hover.ts');
const { tokens } = await import('../../../server/editor/tokens.ts');

const withLine = (line: string) =>
  check({ 'gear.liftplan': `gear\n  shackle K1: weight 1 kg, capacity 4.75 t\n    ${line}\n` }, 'gear.liftplan');

test('it is read, with its unit', () => {
  expect(withLine('bow width 60 mm').findings).toEqual([]);
  const [item] = withLine('bow width 60 mm').plan.items[0]?.children ?? [];
  expect(item?.clauses.get('bow width')?.[0]?.value).toMatchObject({ kind: 'quantity', quantity: { value: 0.06 } });
});

test('what does not fit it is found', () => {
  const slugs = (line: string) => withLine(line).findings.map(({ slug }) => slug);
  expect(slugs('bow width 60 kg')).toEqual(['dimension-mismatch']);
  expect(slugs('bow width 60')).toEqual(['unit-missing']);
  expect(slugs('bow width 0 mm')).toEqual(['value-outside']);
  expect(slugs('bow widht 60 mm')).toEqual(['word-unknown']);
});

test('it is offered and explained', () => {
  const { items } = complete(withLine('bow'), 2, 7);
  expect(items.map(({ label, help }) => `${label}: ${help}`)).toContain('bow width: Inside width of its bow.');
  expect(hover(withLine('bow width 60 mm'), 2, 6)?.plain).toContain('Inside width of its bow.');
});

test('it has the colour of its kind', () => {
  const snapshot = withLine('bow width 60 mm');
  expect(tokens(snapshot, 0, 2).length).toBeGreaterThan(tokens(withLine('# bow width 60 mm'), 0, 2).length);
});

test('without the row it is not known', async () => {
  const { gear } = await vi.importActual<typeof import('../../../server/vocabulary/gear.ts')>(
    '../../../server/vocabulary/gear.ts',
  );
  expect(gear.shackle.clauses).not.toHaveProperty('bow width');
});
