// Speed is a shape before it is a number: twice the lines may cost twice the time, and no more. No absolute times, so no flaky machine.
import { expect, test } from 'vitest';
import { memoryFiles, Workspace } from '../../server/workspace/index.ts';
import { typing } from './large.ts';
import { plan } from './plans.ts';

const sizes = [500, 1_000, 2_000, 4_000] as const;
/** A machine that does something else meanwhile is measured again, so many times. */
const tries = 4;
/** Room for caches that a longer plan no longer fits: the price of a line may grow by so much from the first size to the last. */
const room = 1.7;

/** Milliseconds, the least of some. */
function least(times: number, deed: (n: number) => void): number {
  const took = Array.from({ length: times }, (_, n) => {
    const start = performance.now();
    deed(n);
    return performance.now() - start;
  });
  return Math.min(...took);
}

/** From a text to its findings, with nothing kept from before but what reading keeps of lines. */
function cold(lines: number): number {
  return least(3, (n) => {
    const workspace = new Workspace(memoryFiles(new Map()));
    workspace.openText('plan.liftplan', 1, plan(lines, n + 1));
    expect(workspace.snapshot('plan.liftplan')?.setAside).toBe(false);
  });
}

/** One key in the middle of the text, to its findings. */
function key(lines: number): number {
  const workspace = new Workspace(memoryFiles(new Map()));
  const text = plan(lines);
  workspace.openText('plan.liftplan', 1, text);
  workspace.snapshot('plan.liftplan');
  const rows = text.split('\n');
  const line = rows.findIndex((row, n) => n > lines / 2 && /: box \d/.test(row));
  const character = (rows[line] as string).indexOf(': box ') + ': box '.length;
  return least(9, (n) => {
    const put = n % 2 === 0;
    workspace.changeText('plan.liftplan', n + 2, [
      {
        range: { start: { line, character }, end: { line, character: character + (put ? 0 : 1) } },
        text: put ? '1' : '',
      },
    ]);
    workspace.snapshot('plan.liftplan');
  });
}

test.each([
  ['opening a plan', cold],
  ['a key', key],
] as const)('%s: the price of a line does not grow with the plan', { timeout: 120_000 }, (_, measure) => {
  const seen: string[] = [];
  for (let n = 0; n < tries; n++) {
    const prices = sizes.map((lines) => (measure(lines) / lines) * 1_000);
    seen.push(prices.map((price) => price.toFixed(1)).join(', '));
    if ((prices.at(-1) as number) <= room * Math.max(...prices.slice(0, 2))) return;
  }
  expect.fail(`microseconds a line at ${sizes.join(', ')} lines: ${seen.join('; ')}`);
});

/** A key in ten times the parts may cost so many times as much: it changes one part, and what is summed up from it. */
const tenfold = 6;

test('a key touches one part, however many there are', { timeout: 120_000 }, () => {
  const seen: string[] = [];
  for (let n = 0; n < tries; n++) {
    const [few, many] = [typing(500), typing(5_000)].map((key) => Math.min(...Array.from({ length: 40 }, key)));
    seen.push(`${few?.toFixed(2)} to ${many?.toFixed(2)}`);
    if ((many as number) <= tenfold * (few as number)) return;
  }
  expect.fail(`milliseconds of one key in 500 and in 5,000 parts: ${seen.join('; ')}`);
});
