// Input that cannot hang: a finding in plain words at the right line, results open, never a number that is none.
import { describe, expect, test } from 'vitest';
import type { Snapshot } from '../../../server/workspace/types.ts';
import { figure, g, hang, hook, openWhy, type Rigged, sling } from '../../support/hanging.ts';
import { slugs } from '../../support/lift.ts';

const rig: Rigged = {
  weight: 5000,
  cog: '(0, 0, -1) m',
  picks: { A: '(-1, 0, 0) m', B: '(1, 0, 0) m' },
  gear: [hook(), sling('S1', 3), sling('S2', 3)],
  legs: ['Hook > S1 > A', 'Hook > S2 > B'],
};
/** The finding of that slug: its sentence and the line it stands on. */
function said(s: Snapshot, slug: string): { readonly message: string; readonly line: string } {
  const found = s.findings.find((one) => one.slug === slug);
  if (!found) throw new Error(`No ${slug}, but ${slugs(s).join(', ')}`);
  return { message: found.message, line: found.at.row.text };
}
const open = (s: Snapshot) => expect(openWhy(s, 'sling', 'S1', 'tension')).not.toEqual([]);

test('legs too short to reach', () => {
  const s = hang({ ...rig, gear: [hook(), sling('S1', 0.9), sling('S2', 0.9)] });
  expect(said(s, 'hang-unsolved')).toMatchObject({
    message: expect.stringContaining('too short to reach'),
    line: expect.stringContaining('leg Hook > S'),
  });
  open(s);
});

test('a load that hangs from nothing beside one that hangs', () => {
  const s = hang({
    ...rig,
    legs: ['Hook > S1 > R', 'R2 > S2 > B'],
    gear: [...rig.gear, 'master link R: weight 3 kg, capacity 20 t', 'master link R2: weight 3 kg, capacity 20 t'],
  });
  expect(said(s, 'path-broken').line).toContain('leg R2 > S2 > B');
  open(s);
});

test('rings that carry each other in a circle', () => {
  const ring = (name: string) => `master link ${name}: weight 3 kg, capacity 20 t`;
  const s = hang({
    ...rig,
    gear: [...rig.gear, sling('S3', 2), ring('R1'), ring('R2')],
    legs: ['R1 > S1 > R2', 'R2 > S2 > R1', 'Hook > S3 > A'],
  });
  expect(said(s, 'path-broken').line).toContain('leg R');
  open(s);
});

test('a circle of slings that does hang from a hook is solved, or open, but never wrong', () => {
  const ring = (name: string) => `master link ${name}: weight 3 kg, capacity 20 t`;
  const s = hang({
    ...rig,
    gear: [...rig.gear, sling('S3', 2), sling('S4', 2), ring('R1'), ring('R2')],
    legs: ['Hook > S3 > R1', 'R1 > S1 > R2', 'R2 > S2 > R1', 'R2 > S4 > A'],
    picks: { A: '(0, 0, 0) m' },
  });
  // All of it hangs in one plumb line: two slings side by side between the rings.
  expect(figure(s, 'sling', 'S3', 'elastic tension') / (5006 * g)).toBeCloseTo(1, 6);
  expect(figure(s, 'sling', 'S1', 'elastic tension') + figure(s, 'sling', 'S2', 'elastic tension')).toBeCloseTo(
    5003 * g,
    0,
  );
});

test('a sling of no length, and a leg in which nothing has one', () => {
  const none = hang({ ...rig, gear: [hook(), 'sling S1: length 0 m, weight 0 kg, capacity 5 t', sling('S2', 3)] });
  open(none);
  const bare = hang({
    ...rig,
    gear: [hook(), 'shackle K: weight 1 kg, capacity 5 t', sling('S1', 3)],
    legs: ['Hook > K > A', 'Hook > S1 > B'],
  });
  expect(said(bare, 'hang-unsolved')).toMatchObject({
    message: expect.stringContaining('has no length'),
    line: expect.stringContaining('leg Hook > K > A'),
  });
  open(bare);
});

test('a billion kilograms on a rope: it would stretch by more than a tenth', () => {
  const s = hang({
    ...rig,
    weight: 1_000_000_000,
    gear: [
      hook(),
      'sling S1: wire rope, diameter 20 mm, length 3 m, weight 9 kg, capacity 4 t',
      'sling S2: wire rope, diameter 20 mm, length 3 m, weight 9 kg, capacity 4 t',
    ],
  });
  expect(said(s, 'hang-unsolved').message).toMatch(/stretch by more than a tenth/);
  open(s);
});

test('a beam point a kilometre off: what follows is far from level, flat or open, and always finite', () => {
  const s = hang({
    ...rig,
    gear: [
      hook(),
      sling('T1', 3),
      sling('T2', 3),
      'spreader Beam: weight 100 kg, capacity 20 t, length 2 m',
      '  point l: at (-1, 0, 0) m, capacity 20 t',
      '  point r: at (1000, 0, 0) m, capacity 20 t',
      sling('S1', 2),
      sling('S2', 2),
    ],
    legs: ['Hook > T1 > Beam.l', 'Hook > T2 > Beam.r', 'Beam.l > S1 > A', 'Beam.r > S2 > B'],
  });
  expect(said(s, 'hang-unsolved').message).toMatch(/too short to reach/);
  open(s);
});

describe('an end of the stated tolerances where it falls', () => {
  const high: Rigged = {
    ...rig,
    gear: [hook(), sling('S', 6)],
    legs: ['A > S > Hook > B'],
    cog: '(0, 0, -0.5 m ± 300 mm)',
  };

  test('is told, and nothing is known of its pulls', () => {
    // Running over the hook it stays while its centre is deeper than f² / b = 0.354 m under the picks.
    const s = hang(high);
    expect(said(s, 'hang-unsolved').message).toMatch(/at an end of its tolerances it turns over/);
    expect(openWhy(s, 'sling', 'S', 'tension')).not.toEqual([]);
    expect(slugs(hang({ ...high, cog: '(0, 0, -0.5 m ± 50 mm)' }))).not.toContain('hang-unsolved');
  });
});

test('tolerances of many lengths: bounded, with a margin, and the working says how they were swept', () => {
  const picks = Object.fromEntries(
    Array.from({ length: 6 }, (_, i) => [
      `P${i}`,
      `(${(2 * Math.cos(i)).toFixed(3)}, ${(2 * Math.sin(i)).toFixed(3)}, 0) m`,
    ]),
  );
  const at = (loose: string): Snapshot =>
    hang({
      ...rig,
      picks,
      cog: `(0.1, 0, -1) m${loose && ' ± 20 mm'}`,
      gear: [
        hook(),
        ...Array.from(
          { length: 6 },
          (_, i) => `sling S${i + 1}: length 4 m${loose}, stiffness 20 MN, weight 5 kg, capacity 50 t`,
        ),
      ],
      legs: Array.from({ length: 6 }, (_, i) => `Hook > S${i + 1} > P${i}`),
    });
  const loose = at(' ± 10 mm');
  expect(loose.results.find('sling', 'S1', 'tension')?.value.source).toContain('corners by sensitivity');
  for (let i = 1; i <= 6; i++)
    expect(figure(loose, 'sling', `S${i}`, 'tension')).toBeGreaterThanOrEqual(
      figure(at(''), 'sling', `S${i}`, 'tension') * (1 - 1e-9),
    );
});
