// Plans of a load that hangs, as text from short pieces: for tests of how rigs come to rest.
import { check } from '../../server/workspace/memory.ts';
import type { Snapshot } from '../../server/workspace/types.ts';

export const g = 9.80665;

export interface Rigged {
  /** kg; its centre in m, with ± if wanted. */
  readonly weight: number | string;
  readonly cog: string;
  /** By name, `(x, y, z) m` with more clauses if wanted. */
  readonly picks: Readonly<Record<string, string>>;
  readonly gear: readonly string[];
  /** Without the word `leg`; of a rig with a name, by name. */
  readonly legs: readonly string[] | Readonly<Record<string, readonly string[]>>;
  /** More lines under the load, and at file level. */
  readonly load?: readonly string[];
  readonly more?: readonly string[];
}

/** The text of a plan in which every eye sits where it is told to without a shackle, and nothing but the load weighs anything unless said. */
export function rigText({ weight, cog, picks, gear, legs, load = [], more = [] }: Rigged): string {
  const rigs: readonly (readonly [string, readonly string[]])[] = Array.isArray(legs)
    ? [['', legs]]
    : Object.entries(legs);
  return [
    'plan "Rig": date 2026-03-02, units metric',
    'load "Load"',
    '  contingency 0 %',
    `  stated ${typeof weight === 'number' ? `${plainly(weight)} kg` : weight}, by drawing, from "D-1"`,
    `  cog ${cog}, by drawing, from "D-1"`,
    '  free "stands loose"',
    ...load.map((line) => `  ${line}`),
    ...Object.entries(picks).map(
      ([name, at]) => `  pick ${name}: at ${at}${at.includes('capacity') ? '' : ', capacity 500 t'}`,
    ),
    'gear',
    ...gear.map((line) => `  ${line}`),
    ...rigs.flatMap(([name, lines]) => [
      name ? `rig "${name}"` : 'rig',
      ...lines.map((line) => `  leg ${line}, direct "told so for this rig"`),
    ]),
    ...more,
    '',
  ].join('\n');
}

/** A number as the language writes it: no exponent. */
export const plainly = (value: number): string =>
  Number.isInteger(value) ? String(value) : value.toFixed(12).replace(/0+$/, '');

export const hang = (rig: Rigged): Snapshot => check({ 'plan.liftplan': rigText(rig) }, 'plan.liftplan');

/** A stiff sling without weight. */
export const sling = (name: string, length: number, more = ''): string =>
  `sling ${name}: length ${plainly(length)} m, stiffness 400 MN, weight 0 kg, capacity 500 t${more ? `, ${more}` : ''}`;
export const hook = (name = 'Hook', more = ''): string =>
  `hook ${name}: weight 0 kg, capacity 900 t${more ? `, ${more}` : ''}`;

/** A figure in SI; throws where there is none, so that no test compares nothing. */
export function figure(s: Snapshot, kind: string, name: string, result: string, stage: string | null = null): number {
  const found = s.results.find(kind, name, result, stage);
  const value = found?.value.high ?? found?.value.value;
  if (value === null || value === undefined)
    throw new Error(
      `${kind} ${name} ${result} is open: ${found?.value.because.map((one) => one.what).join(' ') ?? 'no such result'}`,
    );
  return value;
}

/** Why a figure is open; throws where it is known. */
export function openWhy(
  s: Snapshot,
  kind: string,
  name: string,
  result: string,
  stage: string | null = null,
): readonly string[] {
  const found = s.results.find(kind, name, result, stage);
  if (!found || found.value.value !== null)
    throw new Error(`${kind} ${name} ${result} is ${found ? found.value.value : 'no result'}`);
  return found.value.because.map((one) => one.what);
}
