// A damaged line never makes a load lighter: one character taken out, changed or put in, or an indentation slipped, over every sample.
// What still reads as another number (`1 in` for `12 in`) is the author's statement; only lines that stop reading count here.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { check } from '../../server/workspace/memory.ts';
import type { Snapshot } from '../../server/workspace/types.ts';

const folder = 'samples';
const plans = readdirSync(folder).filter((file) => file.endsWith('.liftplan'));
const libraries = Object.fromEntries(
  readdirSync(`${folder}/library`).map((file) => [
    `library/${file}`,
    readFileSync(`${folder}/library/${file}`, 'utf8'),
  ]),
);

/** Every how-manieth place is damaged; FUZZ=all tries every one. */
const stride = process.env.FUZZ === 'all' ? 1 : 29;

/** Findings that say a line or value could not be read: their effect is to open what they belong to. */
const unread = new Set([
  'line-unreadable',
  'word-unknown',
  'place-wrong',
  'hidden-character',
  'indent-unclear',
  'foot-inch-marks',
  'hash-after-number',
  'decimal-comma',
  'unit-missing',
  'unit-unknown',
  'unit-ambiguous',
  'dimension-mismatch',
  'value-outside',
  'clause-missing',
  'stated-twice',
  'name-unknown',
  'material-unknown',
  'size-unknown',
  'file-missing',
  'definition-circle',
  'name-reserved',
]);

const damages: readonly ((text: string, at: number) => string)[] = [
  (text, at) => text.slice(0, at) + text.slice(at + 1),
  (text, at) => `${text.slice(0, at)}q${text.slice(at + 1)}`,
  (text, at) => `${text.slice(0, at)} ${text.slice(at)}`,
  (text, at) => `${text.slice(0, at)},${text.slice(at)}`,
  (text, at) => `${text.slice(0, at)}"${text.slice(at)}`,
];

const figures = (s: Snapshot) => [
  s.results.totals.loadWeight.value,
  s.results.totals.gross.value,
  s.results.totals.rigging.value,
  s.results.totals.deductions.value,
];

describe.each(plans)('%s', (file) => {
  test('no damage that stops a line from reading makes it lighter', () => {
    const text = readFileSync(`${folder}/${file}`, 'utf8');
    const whole = check({ [file]: text, ...libraries }, file);
    const before = figures(whole);
    const known = new Set(whole.findings.map((finding) => finding.message));
    let broken = 0;
    for (let at = 0; at < text.length; at += stride) {
      const damage = damages[(at / stride) % damages.length] as (typeof damages)[number];
      const damaged = damage(text, at);
      const after = check({ [file]: damaged, ...libraries }, file);
      if (!after.findings.some((finding) => unread.has(finding.slug) && !known.has(finding.message))) continue;
      broken++;
      figures(after).forEach((value, i) => {
        const was = before[i] as number | null;
        expect(
          value === null || was === null || value >= was * (1 - 1e-12),
          `${file} at ${at}: ${value} was ${was}\n${damaged.slice(0, at).split('\n').at(-1)}⟨here⟩${damaged.slice(at).split('\n')[0]}`,
        ).toBe(true);
      });
    }
    expect(broken).toBeGreaterThan(5);
  });
});
