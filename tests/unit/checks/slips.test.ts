// A beginner's first slips: each is told of once, where it stands, in plain words, with a way out that leads on.
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../server/checks/types.ts';
import { check } from '../../../server/workspace/memory.ts';
import { fixture } from '../../support/fixture.ts';
import { applied, run } from '../../support/pages.ts';

/** A lift that hangs on two legs, with some lines written otherwise. */
function lift(...changes: readonly (readonly [string, string])[]): string {
  const sound = [
    'plan "Lift the tank": date 2026-05-18',
    'load "Tank"',
    '  stated 3,200 kg, by marking, from "plate on the shell", contingency 5 %',
    '  cog (0, 0, 1 m), by drawing, from "T-12"',
    '  free "stands loose, seen by the foreman"',
    '  pick A: at (-1 m, 0, 2 m), capacity 5 t',
    '  pick B: at (1 m, 0, 2 m), capacity 5 t',
    'gear',
    '  block Block: weight 200 kg, capacity 20 t',
    '  sling S1..S2: wire rope, diameter 20 mm, length 3 m, weight 12 kg, capacity 4 t',
    '  shackle K1..K2: weight 3 kg, capacity 4.75 t',
    'rig',
    '  leg Block > S1 > K1 > A',
    '  leg Block > S2 > K2 > B',
  ].join('\n');
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`The plan has no ${from}`);
    return text.replaceAll(from, to);
  }, sound);
}

const errors = (text: string): readonly Finding[] =>
  check({ 'plan.liftplan': text }, 'plan.liftplan').findings.filter(({ severity }) => severity === 'error');
const place = ({ at }: Finding): string => at.row.text.slice(at.from, at.to);
const grossLoad = (text: string) =>
  check({ 'plan.liftplan': text }, 'plan.liftplan').results.find('lift', null, 'gross load')?.value.value ?? null;

/** The findings of a slug that stand on lines with this text. */
const on = (text: string, line: string, slug = 'line-unreadable'): readonly Finding[] =>
  errors(text).filter((finding) => finding.slug === slug && finding.at.row.text.includes(line));

/** The errors left, and the text, after the first way out of the first finding. */
function wayOut(text: string, slug: string): { readonly text: string; readonly left: readonly string[] } {
  const made = fixture(text);
  const snapshot = run(made);
  const fix = snapshot.findings.find((finding) => finding.slug === slug)?.fixes[0];
  if (!fix) throw new Error(`${slug} offers no way out`);
  const after = applied(snapshot, made.files, fix).files[made.file] ?? '';
  return { text: after, left: errors(after).map((finding) => `${finding.slug}: ${finding.message}`) };
}

test('the sound plan has no error', () => expect(errors(lift())).toEqual([]));

describe('names', () => {
  test.each([
    ['  block Block:', '  block Block 1:', 'Block 1', '"Block 1"', 'Block Block'],
    ['  block Block:', '  block Main block:', 'Main block', '"Main block"', 'Block Main'],
    ['load "Tank"', 'load Big tank', 'Big tank', '"Big tank"', 'Load Big'],
  ])('of several words stand in quotes: %s as %s', (from, to, at, quoted, owner) => {
    const text = lift([from, to]);
    const found = on(text, to);
    expect(found.map(place)).toEqual([at]);
    expect(found[0]?.message).toBe(
      `A name of several words stands in quotes: ${quoted}. ${owner} stays open until it is put right.`,
    );
    expect(found[0]?.fixes.map(({ title }) => title)).toEqual([`Write ${quoted}`]);
    expect(grossLoad(text)).toBeNull();
    expect(wayOut(text, 'line-unreadable').text).toContain(to.replace(at, quoted));
  });

  test('put in quotes, they are read', () => {
    const text = lift(['  block Block:', '  block Block 1:'], ['leg Block >', 'leg "Block 1" >']);
    expect(wayOut(text, 'line-unreadable').left).toEqual([]);
  });

  test.each([
    ['K1, K2', 'K1..K2'],
    ['K1 and K2', 'K1..K2'],
    ['"K1", "K2"', '"K1".."K2"'],
  ])('%s on one line are a range', (names, range) => {
    const text = lift(['shackle K1..K2', `shackle ${names}`]);
    const line = errors(text).filter(({ at }) => at.row.text.includes('shackle'));
    expect(line.map(place)).toEqual([names]);
    expect(line[0]?.message).toBe(
      `Several names, ${names}, but one is due here. Write them as a range, ${range}, or give each a line of its own. Shackle ${names.split(/,| and/)[0]} stays open until it is put right.`,
    );
    expect(grossLoad(text)).toBeNull();
    const after = wayOut(text, 'line-unreadable');
    expect(after.text).toBe(lift(['shackle K1..K2', `shackle ${range}`]));
    expect(after.left).toEqual([]);
  });

  test('that do not count up, or of what has no ranges, get a line each', () => {
    const gap = on(lift(['shackle K1..K2', 'shackle K1, K3']), 'shackle');
    expect(gap.map(place)).toEqual(['K1, K3']);
    expect(gap[0]?.message).toContain('Give each a line of its own; only names that count up without a gap');
    expect(gap[0]?.fixes).toEqual([]);
    const picks = on(lift(['pick A:', 'pick A, C:']), 'pick A');
    expect(picks.map(({ message }) => message)).toEqual([
      'Several names, A, C, but one is due here. Give each a line of its own. Pick A stays open until it is put right.',
    ]);
  });

  test.each(['S1–S2', 'S1 - S2', 'S1 to S2', 'S1–2'])('%s is a range with the wrong sign', (written) => {
    const text = lift(['sling S1..S2', `sling ${written}`]);
    const found = on(text, 'sling');
    expect(found.map(place)).toEqual([written]);
    expect(found[0]?.message).toBe(
      `A range of names is written with two dots: S1..S2, not ${written}. Sling S1 stays open until it is put right.`,
    );
    expect(wayOut(text, 'line-unreadable')).toEqual({ text: lift(), left: [] });
  });

  test('S1-S2 is a name, which a leg with S1 takes for a range', () => {
    const text = lift(['sling S1..S2', 'sling S1-S2']);
    const found = errors(text).filter(({ slug }) => slug === 'name-unknown');
    expect(found.map(place)).toEqual(['S1', 'S2']);
    expect(found[0]?.message).toBe(
      'Nothing called S1 is in this plan or its libraries: S1-S2 is one name. A range of names is written with two dots: S1..S2.',
    );
    expect(wayOut(text, 'name-unknown')).toEqual({ text: lift(), left: [] });
    expect(errors(lift(['sling S1..S2', 'sling S3-S4'])).map(({ message }) => message)).toContainEqual(
      expect.stringMatching(/^Nothing called S1 is in this plan or its libraries\. Nearest/),
    );
  });

  test('a statement behind a comma is no second name', () =>
    expect(on(lift(['load "Tank"', 'load "Tank", weighed: kind scale']), 'load', 'place-wrong').map(place)).toEqual([
      'weighed',
    ]));

  test('a clause with a slip is no second name', () => {
    for (const line of ['shackle K1, weigth: 3 kg, capacity 4.75 t', 'shackle K1 weigth 3 kg, capacity 4.75 t'])
      expect(errors(lift(['shackle K1..K2: weight 3 kg, capacity 4.75 t', line])).map(place)).toContain('weigth');
    expect(on(lift(['> K2 > B', '> K2 > B, drect "seen"']), 'leg', 'word-unknown').map(place)).toEqual(['drect']);
  });
});

describe('figures without their word', () => {
  const part = (text: string) =>
    `plan "x": date 2026-01-05, units metric\nload "Mill"\n  contingency 5 %\n  free "seen"\n  part "P": ${text}\n`;

  test.each([
    ['420 kg, by marking, at (0, 0, 0)', '420 kg', 'item 420 kg'],
    ['box 1 x 1 x 1 m, of oak, 6 off, at (0, 0, 0)', '6 off', 'count 6'],
    ['box 1 x 1 x 1 m, of oak, at (0, 0, 0), 4x', '4x', 'count 4'],
    ['box 1 x 1 x 1 m, of oak, at 1600, -600, 1100 mm', '1600, -600, 1100 mm', '(1600, -600, 1100) mm'],
    ['box 1 x 1 x 1 m, of oak, at 1.6, 0, 2, axis x', '1.6, 0, 2', '(1.6, 0, 2)'],
  ])('%s: said once, at all of it, with the way to write it', (text, at, meant) => {
    const found = errors(part(text)).filter(({ slug }) => slug === 'line-unreadable');
    expect(found.map(place)).toEqual([at]);
    expect(found[0]?.fixes.map(({ title }) => title)).toEqual([`Write ${meant}`]);
  });

  test('a size without a unit is one finding, put right behind its last side', () => {
    const found = errors(part('box 1800 x 600 x 150, of cast iron, at (0, 0, 0)'));
    expect(found.map(({ slug }) => slug)).toEqual(['unit-missing']);
    expect(found[0]?.message).toMatch(/^1800 x 600 x 150 of what\? Box needs a unit of length/);
    expect(found[0]?.fixes.map(({ title }) => title)).toContain('Write 150 mm');
  });
});

describe('legs', () => {
  test.each(['Block, S2, K2, B', 'Block > S2, K2 > B'])('%s: the items are joined by >', (path) => {
    const text = lift(['Block > S2 > K2 > B', `${path}, hitch vertical # seen`]);
    const found = errors(text);
    expect(found.map(place)).toEqual([path]);
    expect(found[0]?.message).toBe(
      `The items of a leg are joined by >, from the hook down: Block > S2 > K2 > B, not ${path}. Leg stays open until it is put right.`,
    );
    expect(grossLoad(text)).toBeNull();
    expect(wayOut(text, 'line-unreadable')).toEqual({
      text: lift(['Block > S2 > K2 > B', 'Block > S2 > K2 > B, hitch vertical # seen']),
      left: [],
    });
  });
});

describe('words', () => {
  test('where nothing is near, all that can stand there is said, nearest first', () => {
    const [found] = errors(lift(['capacity 5 t', 'capacity 5 t, kind anker']));
    expect(found && place(found)).toBe('anker');
    expect(found?.message).toBe('"anker" cannot stand here. Here can stand anchor, eye, edge, lug, round or trunnion.');
  });

  test('of many words, the nearest and how many more there are', () => {
    const [found] = errors('load "Wall"\n  part "Wall": box 6 x 0.2 x 3 m, of concrete\n    less door 0.9 x 2.1 m');
    expect(found && [place(found), found.message]).toEqual([
      'door',
      expect.stringMatching(
        /^"door" cannot stand here\. Here can stand (\w[\w ]*, ){11}\w[\w ]* or one of \d+ other words\.$/,
      ),
    ]);
    expect(found?.message).toMatch(/\bbox\b.*\bhole\b/);
  });
});

describe('numbers', () => {
  test('a place takes three numbers: only the reading that gives three is offered', () => {
    const text = lift(['at (-1 m, 0, 2 m)', 'at (-1,0,2) m']);
    const [found] = errors(text);
    expect(found && [found.slug, place(found), found.message]).toEqual([
      'decimal-comma',
      '1,0,2',
      '1,0,2 can only mean 1, 0, 2 here, for no other reading gives as many numbers as are due. Decimals take a point; a comma between two numbers has a space behind it.',
    ]);
    expect(wayOut(text, 'decimal-comma')).toEqual({ text: lift(['at (-1 m, 0, 2 m)', 'at (-1, 0, 2) m']), left: [] });
  });

  const titles = (units: string, line: string) =>
    errors(`plan "Lift": date 2026-05-18\n  units ${units}\n${line}`)
      .filter(({ slug }) => slug === 'unit-missing')
      .map(({ fixes }) => fixes.map(({ title }) => title));
  const says = (units: string, line: string) =>
    errors(`plan "Lift": date 2026-05-18\n  units ${units}\n${line}`).find(({ slug }) => slug === 'unit-missing')
      ?.message;

  test('the units of the plan come first, and some of the other system', () => {
    expect(titles('US', 'expect gross load < 12000')).toEqual([
      ['Write 12000 lb', 'Write 12000 short ton', 'Write 12000 kg', 'Write 12000 t'],
    ]);
    expect(titles('metric', 'expect gross load < 12000')[0]?.slice(0, 2)).toEqual(['Write 12000 kg', 'Write 12000 t']);
    expect(titles('metric', 'expect gross load < 12000')[0]).toContain('Write 12000 lb');
    expect(says('US', 'expect gross load < 12000')).toBe(
      '12000 of what? Gross load needs a unit of weight: lb, short ton, kg, t, kip or oz.',
    );
  });

  test('a fraction is offered in inches first', () => {
    const sling = 'gear\n  sling S1: wire rope, diameter 3/4';
    expect(titles('US', sling)[0]?.[0]).toBe('Write 3/4 in');
    expect(titles('metric', sling)[0]?.slice(0, 2)).toEqual(['Write 3/4 in', 'Write 3/4 m']);
  });
});

test.each([
  ['12.345 kg', '12.345 kg is read as 12.345 kg (twelve point three four five).'],
  ['120.500 lb', '120.500 lb is read as 120.5 lb (one hundred twenty point five).'],
  ['21.000 kN', '21.000 kN is read as 21.0 kN (twenty-one point zero).'],
])('a point before just three digits, %s, is said aloud', (text, words) => {
  const { findings } = check({ 'a.liftplan': lift(['3,200 kg', text]) }, 'a.liftplan');
  expect(findings.find(({ slug }) => slug === 'number-doubtful')?.message).toContain(words);
});
