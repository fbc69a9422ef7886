// Figures of the sentences, in the plan's units: what loads the gear is rounded up, what it may carry down.
import { type Comparison, type ResultUnit, type Round, type System, write, writePair } from '../quantities/index.ts';

/** The ways a sentence may write a figure (SI). */
export const figures = (system: System) => ({
  /** A weight, kg: rounded up. */
  weight: (kg: number) => write(kg, 'kg', { system, round: 'up' }),
  volume: (m3: number) => write(m3, 'm3', { system, round: 'up' }),
  density: (value: number) => write(value, 'kg/m3', { system, round: 'near' }),
  perLength: (value: number) => write(value, 'kg/m', { system, round: 'near' }),
  share: (part: number) => write(part, '1', { system, round: 'up' }),
  /** How many times as much: `12 times`. */
  times: (n: number) => `${write(n, 'number', { system, round: 'near', digits: 2 })} times`,
  /** Any figure, rounded to the side asked for. */
  any: (unit: ResultUnit, value: number, round: Round = 'near') => write(value, unit, { system, round }),
  /** Two figures, weights rounded up; both in the unit of the smaller, and with more digits where they would print alike. */
  unlike: (unit: ResultUnit, a: number, b: number): readonly [string, string] => {
    const round = unit === 'kg' ? 'up' : 'near';
    const [first, second] = [a, b].map((value) => write(value, unit, { system, round })) as [string, string];
    const [own, other] = [unitIn(first), unitIn(second)];
    if (first !== second && own === other) return [first, second];
    return both(a, b, a < b ? '<' : '>', unit, system, own === other ? undefined : a < b ? own : other);
  },
  /** A figure and the most it may be; in a unit asked for, such as that of a tag. */
  atMost: (unit: ResultUnit, value: number, limit: number, wanted?: string) =>
    both(value, limit, '<=', unit, system, wanted),
  /** A figure and the least it may be. */
  atLeast: (unit: ResultUnit, value: number, limit: number) => both(value, limit, '>=', unit, system),
});

/** `mm` of `14.1 mm`. */
const unitIn = (text: string): string => text.slice(text.indexOf(' ') + 1);

function both(
  a: number,
  b: number,
  op: Comparison,
  unit: ResultUnit,
  system: System,
  wanted?: string,
): readonly [string, string] {
  const { value, limit } = writePair(a, b, op, unit, { system, ...(wanted !== undefined && { unit: wanted }) });
  return [value, limit];
}
