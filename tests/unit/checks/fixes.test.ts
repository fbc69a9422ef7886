// Ways out as texts: where a clause, a line or a block is put, and how it is joined to what is there.
import { expect, test } from 'vitest';
import type { Fix } from '../../../server/checks/types.ts';
import { CURSOR, fixture } from '../../support/fixture.ts';
import { applied, run } from '../../support/pages.ts';

/** The text after the fix whose title begins so, of the first finding of a slug; the cursor drawn into it. */
function after(slug: string, title: string, text: string): string {
  const made = fixture(text);
  const snapshot = run(made);
  const fixes = snapshot.findings
    .filter((finding) => finding.slug === slug)
    .flatMap((finding): readonly Fix[] => finding.fixes);
  const fix = fixes.find((one) => one.title.startsWith(title));
  if (!fix) throw new Error(`${slug} offers: ${fixes.map((one) => one.title).join(' · ') || 'nothing'}`);
  const { files, cursor } = applied(snapshot, made.files, fix);
  const lines = (files[made.file] ?? '').split('\n');
  if (cursor)
    lines[cursor.line] =
      `${lines[cursor.line]?.slice(0, cursor.column)}${CURSOR}${lines[cursor.line]?.slice(cursor.column)}`;
  return lines.join('\n');
}

test('a clause joins the line with a comma, before its comment', () => {
  expect(
    after('evidence-missing', 'Insert from', 'load "Skid"\n  part "Motor": item 800 kg, at (0, 0, 0)  # north end'),
  ).toBe('load "Skid"\n  part "Motor": item 800 kg, at (0, 0, 0), from "|"  # north end');
});

test('a clause needs no second comma where the line ends in one', () => {
  expect(after('evidence-missing', 'Insert by', 'load "Skid"\n  part "Motor": item 800 kg, at (0, 0, 0),')).toBe(
    'load "Skid"\n  part "Motor": item 800 kg, at (0, 0, 0), by |',
  );
});

test('a clause joins a clause line, where the figure stands on one', () => {
  expect(after('evidence-missing', 'Insert by', 'load "Skid"\n  part "Motor"\n    item 800 kg\n    at (0, 0, 0)')).toBe(
    'load "Skid"\n  part "Motor"\n    item 800 kg, by |\n    at (0, 0, 0)',
  );
});

test('a clause after a bare name gets the colon', () => {
  expect(after('clause-missing', 'Insert at', 'load "Skid"\n  stated 3 t, by marking\n  pick A')).toBe(
    'load "Skid"\n  stated 3 t, by marking\n  pick A: at (|)',
  );
});

test('a line under a statement stands as deep as what is there', () => {
  expect(after('holding-unstated', 'Insert free', 'load "Skid"\n    stated 3 t, by marking')).toBe(
    'load "Skid"\n    free "|"\n    stated 3 t, by marking',
  );
});

test('an unknown name of a value can be declared above the statement that uses it', () => {
  expect(
    after('name-unknown', 'Insert a line: let deck', 'load "Bar"\n  part "Bar": bar 40 mm, length deck, at (0, 0, 0)'),
  ).toBe('let deck = |\nload "Bar"\n  part "Bar": bar 40 mm, length deck, at (0, 0, 0)');
});

test('a material of its own stands above the load', () => {
  expect(
    after(
      'material-unknown',
      'Insert a line',
      'load "Bench"\n  part "Top": plate 2 m x 1 m x 50 mm, of unobtainium, at (0, 0, 0)',
    ),
  ).toBe(
    'material "unobtainium": density |\nload "Bench"\n  part "Top": plate 2 m x 1 m x 50 mm, of unobtainium, at (0, 0, 0)',
  );
});

const rigged = (gear: string, leg: string): string =>
  `plan "Lift": date 2026-05-18\nload "Tank"\n  stated 3 t, by marking\n  pick A: at (0, 0, 2 m), capacity 5 t\n${gear}rig\n  ${leg}`;

test('a shackle goes into the gear and into the leg, under a name nothing has', () => {
  const gear =
    'gear\n  block B: weight 200 kg, capacity 20 t\n  sling S1: weight 12 kg, capacity 4 t, length 3 m\n  shackle K1: weight 3 kg, capacity 5 t, spare\n';
  expect(after('connection-missing', 'Insert shackle K2', rigged(gear, 'leg B > S1 > A'))).toBe(
    rigged(`${gear}  shackle K2: weight |, capacity \n`, 'leg B > S1 > K2 > A'),
  );
});

test('that an eye goes on directly is said on the leg', () => {
  const gear = 'gear\n  block B: weight 200 kg, capacity 20 t\n  sling S1: weight 12 kg, capacity 4 t, length 3 m\n';
  expect(after('connection-missing', 'Say why', rigged(gear, 'leg B > S1 > A'))).toBe(
    rigged(gear, 'leg B > S1 > A, direct "|"'),
  );
});

test('where the gear is in a library, a block of gear is begun', () => {
  const yard =
    '--- yard.liftplan\ngear\n  block B: weight 200 kg, capacity 20 t\n  sling S1: weight 12 kg, capacity 4 t, length 3 m';
  const text = `use "yard.liftplan"\n${rigged('', 'leg B > S1 > A')}`;
  expect(after('connection-missing', 'Insert shackle K1', `${text}\n${yard}`)).toBe(
    text.replace('rig\n', 'gear\n  shackle K1: weight |, capacity \nrig\n').replace('S1 > A', 'S1 > K1 > A'),
  );
});

test('a statement behind a comma gets a line of its own', () => {
  expect(after('place-wrong', 'Put it on a line', 'load "Tank": stated 3 t, by drawing')).toBe(
    'load "Tank"\n  stated 3 t, by drawing',
  );
});

test('a shape right under a load becomes a part of its own, and is moved under no other', () => {
  const tank = 'load "Tank"\n  part "Shell": box 1 x 1 x 1 m, of steel, at (0, 0, 0)';
  expect(after('place-wrong', 'Make it a part', `${tank}\n  weld fillet, leg length 8 mm, length 3 m`)).toBe(
    `${tank}\n  part "|": weld fillet, leg length 8 mm, length 3 m`,
  );
  expect(() => after('place-wrong', 'Move it under', `${tank}\n  weld fillet, length 3 m`)).toThrow('offers');
});

test('a statement of the left margin moves out, above the one it stood in', () => {
  expect(
    after('place-wrong', 'Move it to the left', 'load "Tank"\n  use "yard.liftplan"\n  stated 3 t, by drawing'),
  ).toBe('use "yard.liftplan"\nload "Tank"\n\n  stated 3 t, by drawing');
});

test('a bare sum gets its unit by multiplying', () => {
  expect(
    after('unit-missing', 'Write (2 + 3) * 1 ft', 'load "Bar"\n  part "Bar": bar 40 mm, length 2 + 3, at (0, 0, 0)'),
  ).toBe('load "Bar"\n  part "Bar": bar 40 mm, length (2 + 3) * 1 ft, at (0, 0, 0)');
});

test('a copied name gets the next free number', () => {
  expect(
    after(
      'stated-twice',
      'Rename it',
      'gear\n  sling S1..S3: weight 12 kg, capacity 4 t\n  sling S2: weight 12 kg, capacity 4 t',
    ),
  ).toContain('\n  sling S4: weight');
});

test('only another spelling of the same unit is preferred', () => {
  const preferred = (unit: string) =>
    run(fixture(`load "Tank"\n  stated 3 ${unit}, by marking`)).findings.flatMap((finding) =>
      finding.fixes.filter((fix) => fix.preferred).map((fix) => fix.title),
    );
  expect(preferred('lbs')).toEqual(['Write lb']);
  expect(preferred('KG')).toEqual(['Write kg']);
  expect(preferred('ton')).toEqual([]);
});
