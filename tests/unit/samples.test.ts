// The samples: each reads without an error, every `expect` in it holds, and its figures agree with numbers worked out elsewhere.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { checks } from '../../server/checks/index.ts';
import { language } from '../../server/plan/index.ts';
import { formatText } from '../../server/syntax/index.ts';
import { check } from '../../server/workspace/memory.ts';

const folder = join(import.meta.dirname, '../../samples');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => /\.(?:liftplan|csv|stl|obj|txt)$/.test(path))
  .sort();
const texts = Object.fromEntries(files.map((path) => [path, readFileSync(join(folder, path), 'utf8')]));
const paths = files.filter((path) => path.endsWith('.liftplan'));
const wrong = paths.filter((path) => path.startsWith('wrong/'));
const right = paths.filter((path) => !path.startsWith('wrong/'));
const plans = right.filter((path) => !path.startsWith('library/'));

/** Findings that a right sample may have: what a person must know, not what is to be put right. */
const allowed = new Set(['leg-share-uncertain']);

/** An `expect` line that does not hold where the one given does. */
function opposite(line: string): string {
  if (/ between /.test(line)) return line.replace(/ between .* and (.*)$/, ' > $1');
  if (/ = /.test(line)) return line.replace(/ = (.*) ± (.*)$/, ' = $1 + 20 * $2 ± $2');
  return line.replace(/ ([<>])=? (.*)$/, (_, sign, bound) => ` ${sign === '<' ? '>' : '<'} ${bound}`);
}

describe('right samples', () => {
  test.each(right)('%s has nothing to put right', (path) => {
    const findings = check(texts, path).findings.filter(({ slug }) => !allowed.has(slug));
    expect(findings.map(({ slug, message }) => `${slug}: ${message}`)).toEqual([]);
  });

  test.each(plans)('%s holds what it expects', (path) => {
    const { expects } = check(texts, path).results;
    expect(expects.length).toBeGreaterThanOrEqual(5);
    expect(expects.filter(({ state }) => state !== 'met').map(({ text, state }) => `${state}: ${text}`)).toEqual([]);
  });

  // A dead `expect` would hold whatever is asked of it: the same lines turned round must fail, each of them.
  test.each(plans)('%s does not hold the opposite', (path) => {
    const turned = (texts[path] ?? '').replace(/^expect .*$/gm, opposite);
    expect(
      turned.split('\n').filter((line, i) => line.startsWith('expect') && line === texts[path]?.split('\n')[i]),
    ).toEqual([]);
    const { expects } = check({ ...texts, [path]: turned }, path).results;
    expect(expects.filter(({ state }) => state !== 'not met').map(({ text, state }) => `${state}: ${text}`)).toEqual(
      [],
    );
  });

  test.each(right)('%s is set in order', (path) => {
    expect(formatText(texts[path] ?? '', language)).toBe(texts[path]);
  });

  test('the libraries are used', () => {
    for (const library of right.filter((path) => path.startsWith('library/')))
      expect(
        plans.some((path) => texts[path]?.includes(`use "${library}"`)),
        library,
      ).toBe(true);
  });
});

/**
 * Sample, subject, result, value in SI, how far it may be off, and where the number comes from. Weights, centres and angles by hand or
 * from printed unit weights; legs by the balance of stiff legs that hang from one point, solved apart from this program (least height of
 * the centre under legs of fixed length; for four legs the worst of all shares that balance, by linear programming).
 */
const figures: readonly (readonly [string, string, string | null, string, number, number, string])[] = [
  ['block', 'load', 'Anvil block', 'calculated weight', 3768, 0.01, '1.2 × 0.8 × 0.5 m3 × 7,850 kg/m3'],
  ['block', 'load', 'Anvil block', 'weight', 3956.4, 0.01, '5 % more'],
  ['block', 'plan', null, 'rigging weight', 72.6, 0.001, '62 + 2 × 4 + 2 × 1.3 kg'],
  ['block', 'sling', 'S1', 'angle', Math.acos(0.4 / 1.57), 0.002, 'leg of 1.57 m, 0.4 m out'],
  [
    'block',
    'sling',
    'S1',
    'load',
    (3956.4 / 2 + 5.3) / Math.sin(Math.acos(0.4 / 1.57)),
    2,
    'half the load and the leg over the sine',
  ],
  [
    'spool',
    'load',
    'Spool',
    'calculated weight',
    885.8 * 0.45359237,
    0.8,
    '40.48 lb/ft (ASME B36.10M) × 15 ft; Pappus for the elbow',
  ],
  [
    'separator',
    'load',
    'Separator 12',
    'calculated weight',
    1980.457,
    0.01,
    'dimensions of B16.5 and B16.9 by hand, heads by numerical integration',
  ],
  ['separator', 'load', 'Separator 12', 'cog x', 0.067503, 2e-6, 'moments'],
  [
    'separator',
    'load',
    'Separator 12',
    'cog z',
    0.061743,
    2e-6,
    'moments; centres of flanges by first moments of their steps',
  ],
  [
    'separator',
    'part',
    'N1',
    'weight',
    20.6577,
    0.0005,
    'flange 30.2 mm thick at most, pipe to 210 mm, pad 300 mm × 12 mm',
  ],
  ['separator', 'part', 'Manway', 'weight', 329.352, 0.001, '120.321 + 144.082 + 26.949 + 38 kg'],
  [
    'separator',
    'part',
    'Anchor bolts',
    'weight',
    4.38323,
    0.00005,
    'two of M24 x 500 mm with two heavy nuts and a washer',
  ],
  ['separator', 'part', 'Outlet reducer', 'weight', 6.15023, 0.00005, 'cone less cone times 1.15'],
  ['spool', 'load', 'Spool', 'cog x', -4.8304 * 0.3048, 0.003, 'moments'],
  ['spool', 'load', 'Spool', 'cog y', 1.1502 * 0.3048, 0.003, 'moments; elbow centre by integration'],
  ['spool', 'load', 'Spool', 'cog z', 0.0546 * 0.3048, 0.0005, 'moments'],
  ['spool', 'pick', 'A', 'load', 457.1 * 0.45359237, 5, 'three legs by balance'],
  ['spool', 'pick', 'B', 'load', 283.0 * 0.45359237, 5, 'three legs by balance'],
  ['spool', 'pick', 'C', 'load', 368.0 * 0.45359237, 5, 'three legs by balance'],
  ['spool', 'sling', 'S2', 'angle', (69.14 * Math.PI) / 180, 0.01, 'three legs by balance'],
  ['panel', 'load', 'Panel E-3', 'volume', 3.045, 1e-6, '3.6 - 0.42 - 0.36 + 0.225 m3'],
  ['panel', 'load', 'Panel E-3', 'calculated weight', 7764.75, 0.1, '3.045 m3 × 2,550 kg/m3'],
  ['panel', 'load', 'Panel E-3', 'cog x', 0.24 / 3.045, 1e-5, 'moments'],
  ['panel', 'load', 'Panel E-3', 'cog y', 0.039375 / 3.045, 1e-5, 'moments'],
  ['panel', 'sling', 'S1', 'angle', Math.acos(1.5 / 4.12), 0.003, 'leg of 4.12 m, 1.5 m out'],
  [
    'skid',
    'load',
    'Seal oil skid',
    'calculated weight',
    2787.58,
    0.3,
    'EN 10365 kg/m; plates and tank by volume; 1,410 lb',
  ],
  ['skid', 'load', 'Seal oil skid', 'weight', 2987.74, 0.1, '(2,760 + 85.466) × 1.05'],
  ['skid', 'load', 'Seal oil skid', 'cog x', 0.12316, 2e-4, 'moments'],
  ['skid', 'load', 'Seal oil skid', 'cog z', 0.394, 2e-4, 'moments'],
  ['skid', 'load', 'Seal oil skid', 'tilt', (1.823 * Math.PI) / 180, 0.002, 'four stiff legs, least height'],
  ['skid', 'pick', 'NE', 'load', 1637.2, 20, 'one diagonal carries all'],
  ['skid', 'plan', null, 'gross load', 3820.34, 0.2, 'load, gear 355.4 kg, deductions 477.2 kg'],
  [
    'shop',
    'load',
    'Lot 4',
    'calculated weight',
    3012.9,
    0.8,
    'EN 10365 and ASME B36.10M kg/m by the line; volumes; EN 10080 kg/m',
  ],
  ['shop', 'part', 'Handrail', 'cog z', 0.98145, 2e-5, 'straights and quarter bends by moments'],
  ['shop', 'part', 'Bent fascia', 'cog x', 2.084375, 1e-6, 'mitred strips by moments'],
  ['shop', 'part', 'Strip coil', 'weight', 680.58, 0.05, 'pi / 4 (0.9^2 - 0.508^2) x 0.2 m3 x 7,850 kg/m3'],
  ['shop', 'part', 'Wire reel', 'weight', 295.94, 0.1, '3,000 m of 4 mm wire'],
  ['shop', 'part', 'Gravel', 'weight', 43.56, 0.02, 'cone of 0.6 m at 35 deg x 2,200 kg/m3'],
  [
    'vessel',
    'load',
    'Knock-out drum 7',
    'calculated weight',
    4058.2,
    1.5,
    'shell and segment by formula, heads by integration',
  ],
  ['vessel', 'load', 'Knock-out drum 7', 'cog z', 1.10599, 1e-3, 'moments'],
  [
    'vessel',
    'part',
    'Inlet head',
    'weight',
    322.83,
    0.2,
    'ellipsoid of half-axes 786 and 393 mm and its parallel surface 14 mm out, integrated',
  ],
  ['vessel', 'part', 'Slops', 'weight', 625.79, 0.05, 'circular segment and half-deep ball caps × 860 kg/m3'],
  ['vessel', 'sling', 'T1', 'angle', Math.acos(0.4), 1e-3, '1.8 m of 4.5 m'],
  ['vessel', 'sling', 'T1', 'load', 2476, 2, 'half of load, bar and lower gear over the sine, with the leg itself'],
  ['vessel', 'spreader', 'Bar 3.6', 'compression', 9671, 40, 'the same half over the tangent'],
  [
    'bundle',
    'load',
    'Beam bundle',
    'calculated weight',
    4925.05 * 0.45359237,
    0.1,
    '6 × 30 ft × 26 lb/ft, oak 1,230 kg/m3, cradles, 18 ft × 227 kg/m3 × (10 mm)²',
  ],
  ['bundle', 'load', 'Beam bundle', 'cog z', 13.231 * 0.0254, 1e-4, 'moments'],
  ['bundle', 'sling', 'D1', 'load', (4925.05 * 1.05 * 0.45359237) / 2 + 13 * 0.45359237, 3, 'half and the drop itself'],
  [
    'truss',
    'load',
    'Truss 2',
    'calculated weight',
    838.3,
    0.3,
    '28.26 kg/m (ASME B36.10M) × 20 m, bars, half rings and plates by volume, 59.8 kg by the list',
  ],
  ['truss', 'load', 'Truss 2', 'cog x', 0.002863, 1e-5, 'name plate 1.2 kg, 2 m out'],
  [
    'truss',
    'load',
    'Truss 2',
    'cog z',
    0.62202,
    3e-4,
    'moments; half ring 4 (R3 - r3) / 3 pi (R2 - r2) below its axis',
  ],
  ['truss', 'part', 'Gussets', 'weight', 3 * 0.3 * 0.012 * 0.2 * 7850, 1e-6, 'three plates of 300 × 12 × 200 mm'],
  ['truss', 'part', 'Bolt sets', 'weight', 21.6, 1e-9, '24 × 0.9 kg'],
  ['truss', 'sling', 'S1', 'angle', Math.acos(3 / 5.06), 0.003, 'leg of 5.06 m, 3 m out'],
  ['machine', 'load', 'Milling machine', 'weight', 15414, 0.01, '(14,800 - 120) × 1.05'],
  [
    'machine',
    'sling',
    'S1',
    'elastic tension',
    (15414 * 9.80665) / 4 / Math.sin((66.964 * Math.PI) / 180),
    450,
    'a quarter each, the leg itself beside',
  ],
  ['machine', 'pick', 'B', 'load', 8647, 60, 'centre 50 mm off towards B, its diagonal carries all'],
  ['gearbox', 'load', 'Gearbox G-2', 'measured weight', (107.2e5 * 71e-4) / 9.80665 - 60, 0.01, 'pressure times area'],
  ['gearbox', 'load', 'Gearbox G-2', 'cog z', 0.6261, 2e-4, 'two balances of moments'],
  [
    'gearbox',
    'load',
    'Gearbox G-2',
    'stated weight',
    6900 + 240 + 87.56 + 150 + 164.16 + 99.36 + 13.8,
    0.1,
    'EN 10365 19.9 kg/m; volumes times densities',
  ],
  ['transformer', 'load', 'Transformer T-6', 'measured weight', 224000 / 9.80665, 0.01, 'readings'],
  ['transformer', 'load', 'Transformer T-6', 'cog x', (1.4 * 19) / 224, 1e-6, 'moments of the readings'],
  ['transformer', 'load', 'Transformer T-6', 'cog y', (0.8 * 3) / 224, 1e-6, 'moments of the readings'],
  ['transformer', 'load', 'Transformer T-6', 'tilt', (1.154 * Math.PI) / 180, 0.002, 'four stiff legs, least height'],
  [
    'transformer',
    'pick',
    'B',
    'load',
    12666,
    80,
    'one diagonal carries all: half of it and y / 1.8 m, with y as far as the jacks may be off',
  ],
];

test.each(figures)('%s: %s %s %s', (sample, kind, name, result, value, within) => {
  const found = check(texts, `${sample}.liftplan`).results.find(kind, name, result)?.value.value;
  expect(Math.abs((found ?? Number.NaN) - value)).toBeLessThanOrEqual(within);
});

test('every right plan is in the table', () => {
  expect([...new Set(figures.map(([sample]) => `${sample}.liftplan`))].sort()).toEqual([...plans].sort());
});

/** What hangs far out of level has swung there. */
const companions: Readonly<Record<string, readonly string[]>> = { 'hang-tilted': ['lift-off-swing'] };

describe('wrong samples', () => {
  test.each(wrong)('%s raises its own finding and no other', (path) => {
    const own = basename(path, '.liftplan');
    const slugs = new Set(check(texts, path).findings.map(({ slug }) => slug));
    for (const slug of [...allowed, ...(companions[own] ?? [])]) if (slug !== own) slugs.delete(slug);
    expect([...slugs]).toEqual([own]);
  });

  test.each(wrong)('%s says what is wrong in its first line', (path) => {
    expect(texts[path]).toMatch(/^# Wrong on purpose\. .{10,}/);
  });

  test('there is one for every finding', () => {
    const missing = Object.keys(checks).filter((slug) => !wrong.includes(`wrong/${slug}.liftplan`));
    expect(missing).toEqual([]);
  });
});
