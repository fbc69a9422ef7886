// How long a rig takes to come to rest, beside a general library's solution of a dense system of sixty equations in the same run.
import { lusolve } from 'mathjs';
import { check } from '../../server/workspace/memory.ts';
import type { Snapshot } from '../../server/workspace/types.ts';
import { hook, rigText, sling } from '../support/hanging.ts';
import { seeded } from '../support/rigs.ts';

const names = (letter: string, count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => `${letter}${i + 1}`);
const corner = (i: number, x: number, y: number, z: number): string =>
  `(${i % 3 === 0 ? -x : i % 3 === 1 ? 0 : x}, ${i < 3 ? -y : y}, ${z}) m`;

/** Four slings to a frame, six from it to the load. */
const tiers = (kg: number): string =>
  rigText({
    weight: kg,
    cog: '(0.1, 0.05, 0) m',
    picks: Object.fromEntries(names('P', 6).map((name, i) => [name, corner(i, 2, 1, 1)])),
    gear: [
      hook('Hook'),
      'lifting beam Frame: weight 400 kg, capacity 50 t',
      ...names('F', 6).map((name, i) => `  point ${name}: at ${corner(i, 2, 1, 0)}, capacity 50 t`),
      ...names('T', 4).map((name) => sling(name, 4)),
      ...names('S', 6).map((name) => sling(name, 2)),
    ],
    legs: [
      ...['F1', 'F3', 'F4', 'F6'].map((point, i) => `Hook > T${i + 1} > ${point}`),
      ...names('S', 6).map((name, i) => `F${i + 1} > ${name} > P${i + 1}`),
    ],
  });

/** Two hooks turn a long load up by 85 deg: with the attitude as drawn, nineteen of them. */
const upending = (kg: number): string =>
  rigText({
    weight: kg,
    cog: '(5, 0, -0.3) m',
    picks: { Tail: '(0, 0, 0) m', Head: '(10, 0, 0) m' },
    gear: [hook('HT'), hook('HH'), sling('ST', 6), sling('SH', 6)],
    legs: { tail: ['HT > ST > Tail'], head: ['HH > SH > Head'] },
    more: ['stage "Upending": incline x 0 deg to 85 deg'],
  });

const took = (deed: () => unknown): number => {
  const start = performance.now();
  deed();
  return performance.now() - start;
};

/** From text to findings, each time with another weight, so that nothing is known beforehand. */
function rested(text: (kg: number) => string, result: readonly [string, string, string, string | null]) {
  let kg = 8000;
  const one = (): Snapshot => check({ 'plan.liftplan': text(kg++) }, 'plan.liftplan');
  const { findings, results } = one();
  if (!results.find(...result)?.value.value)
    throw new Error(`Nothing to time: ${result.join(' ')} is not known. ${findings.map(({ message }) => message)}`);
  return () => took(one);
}

function dense(): () => number {
  const random = seeded(1);
  const rows = Array.from({ length: 60 }, (_, i) =>
    Array.from({ length: 60 }, (_, j) => random() + (i === j ? 60 : 0)),
  );
  const right = rows.map(() => random());
  return () => took(() => lusolve(rows, right));
}

/** Milliseconds of each, in turns, when warm; a rig counts from its text to its findings. */
export function hangTimes(rounds: number): readonly { readonly what: string; readonly warm: readonly number[] }[] {
  const timed = [
    { what: 'ten slings in two tiers', one: rested(tiers, ['sling', 'S1', 'tension', null]) },
    { what: 'upending in nineteen attitudes', one: rested(upending, ['hook', 'HH', 'tension', 'Upending']) },
    { what: 'dense system of 60 (mathjs)', one: dense() },
  ].map((each) => ({ ...each, warm: [] as number[] }));
  for (let round = -20; round < rounds; round++)
    for (const { one, warm } of timed) {
      const time = one();
      if (round >= 0) warm.push(time);
    }
  return timed;
}
