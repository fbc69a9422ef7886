// Random rigs as plan text: each hangs in balance or is open with a reason, and none takes long.
// `npm run fuzz` makes 20,000 of them; FUZZ_RIGS and FUZZ_SEED choose others.
import { expect, test } from 'vitest';
import { check } from '../../server/workspace/memory.ts';
import type { Snapshot } from '../../server/workspace/types.ts';
import { rigText } from '../support/hanging.ts';
import { randomPlan } from '../support/random-plans.ts';
import { drawFrom } from '../support/random-rigs.ts';
import { seeded } from '../support/rigs.ts';

const total = Number(process.env.FUZZ_RIGS ?? 400);
const seed = Number(process.env.FUZZ_SEED ?? 1);

const run = (text: string): { readonly snapshot: Snapshot; readonly spent: number } => {
  const before = process.cpuUsage();
  const snapshot = check({ 'plan.liftplan': text }, 'plan.liftplan');
  const { user, system } = process.cpuUsage(before);
  return { snapshot, spent: (user + system) / 1000 };
};

/** Nothing is a number that is none; what hangs is in balance; what is open says why. */
function sound({ results }: Snapshot, text: string): void {
  for (const { value, subject, result, stage } of results.list) {
    const where = `${subject.kind} ${subject.name} ${result} ${stage ?? ''}\n${text}`;
    if (value.value === null) expect(value.because.length, where).toBeGreaterThan(0);
    else for (const one of [value.value, value.low, value.high]) expect(Number.isFinite(one), where).toBe(true);
  }
  const { hanging } = results;
  expect(hanging.drawn.size > 0 || hanging.because.length > 0, text).toBe(true);
  for (const { figures, because } of hanging.stages) expect(figures.size > 0 || because.length > 0, text).toBe(true);
  if (!hanging.solved || hanging.because.length) return;
  const { rest } = hanging.solved;
  expect(rest.residual, text).toBeLessThan(1e-8);
  const up = rest.anchors.reduce((sum, { force }) => sum - force[2], 0);
  expect(Math.abs(up / rest.totalWeight - 1), text).toBeLessThan(1e-7);
}

for (const wild of [false, true]) {
  test(`${total / 2} ${wild ? 'spoiled' : 'sound'} rigs, seed ${seed}`, { timeout: 120_000 + total * 60 }, () => {
    const draw = drawFrom(seeded(seed * 7919 + (wild ? 1 : 0)));
    const slow: string[] = [];
    let hung = 0;
    for (let i = 0; i < total / 2; i++) {
      const text = rigText(randomPlan(draw, wild));
      const { snapshot, spent } = run(text);
      sound(snapshot, text);
      if (snapshot.results.hanging.drawn.size) hung++;
      // The compiler and the collector take their time too: what is slow is tried again with other numbers that come to the same.
      if (
        spent > 100 &&
        i > 50 &&
        Math.min(
          ...[1, 2, 3].map((n) => run(text.replace(/stated (\d+) kg/, (_, kg) => `stated ${Number(kg) + n} kg`)).spent),
        ) > 100
      )
        slow.push(text);
    }
    expect(hung).toBeGreaterThan(total * (wild ? 0.1 : 0.35));
    expect(slow).toEqual([]);
  });
}
