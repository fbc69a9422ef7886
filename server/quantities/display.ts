// Which unit a figure is shown in: by what it measures, the plan's system and its size, or the unit asked for.
import type { ResultUnit } from './derived.ts';
import { type Dimension, type DimensionName, dimensions, named, same } from './dimension.ts';
import { g0, joined, type Unit } from './unit-table.ts';

export type System = 'US' | 'metric';

/** A unit ready to show a value in: shown number = (value × bridge − offset) ÷ factor. */
export interface Shown {
  readonly unit: Unit;
  readonly bridge: number; // 1, or g0 or 1/g0 where a force is shown in a unit of mass or a mass in one of force
  readonly decimals: number; // at most, unless more digits are asked for
}

/** What results are kept in, as a dimension. `1` is a share, shown in %. */
const resultDimensions: Readonly<Record<ResultUnit, DimensionName>> = {
  kg: 'mass',
  N: 'force',
  m: 'length',
  m2: 'area',
  m3: 'volume',
  rad: 'angle',
  Pa: 'pressure',
  'm/s': 'speed',
  'kg/m3': 'mass density',
  'kg/m': 'mass per length',
  'kg/m2': 'mass per area',
  '1': 'number',
};

/** The unit to show values of about that size in. One that does not fit the measure gives way to the system's own. */
export function shownIn(unit: ResultUnit | DimensionName, size: number, system: System, wanted?: string): Shown {
  const name = unit in resultDimensions ? resultDimensions[unit as ResultUnit] : (unit as DimensionName);
  const found = wanted === undefined ? undefined : joined(wanted);
  const bridge = found ? bridgeTo(found.dimension, dimensions[name]) : null;
  if (found && bridge !== null) return { unit: found, bridge, decimals: decimalsOf(found.text) };
  const text = unit === '1' ? '%' : usualUnit(name, size, system);
  const own: Unit = joined(text) ?? combined[text] ?? { text: '', factor: 1, offset: 0, dimension: dimensions[name] };
  return { unit: own, bridge: 1, decimals: decimalsOf(own.text) };
}

/** Factor from a value of one dimension to a unit of another: 1 if they are the same, by g0 between mass and force, else null. */
function bridgeTo(wanted: Dimension, kept: Dimension): number | null {
  if (same(wanted, kept)) return 1;
  const pair = `${named(kept)} > ${named(wanted)}`;
  return massToForce.has(pair) ? g0 : massToForce.has(pair.split(' > ').reverse().join(' > ')) ? 1 / g0 : null;
}

const massToForce: ReadonlySet<string> = new Set([
  'mass > force',
  'mass per length > force per length',
  'mass per area > pressure',
  'mass density > force density',
]);

type Steps = readonly (readonly [unit: string, fromSi: number])[];

// Steps from small to large values; `zero` is the unit that most values of the measure are read in.
interface Scale {
  readonly zero: string;
  readonly steps: Steps;
}

const one = (unit: string): Scale => ({ zero: unit, steps: [[unit, 0]] });
const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;
const time: Scale = {
  zero: 's',
  steps: [
    ['s', 0],
    ['min', 2 * MINUTE],
    ['h', 2 * HOUR],
    ['day', 2 * DAY],
  ],
};
const voltage: Scale = {
  zero: 'V',
  steps: [
    ['V', 0],
    ['kV', 1000],
  ],
};

const scales: Readonly<Record<DimensionName, Readonly<Record<System, Scale>>>> = {
  number: both(one('')),
  length: {
    metric: {
      zero: 'm',
      steps: [
        ['mm', 0],
        ['m', 0.1],
      ],
    },
    US: {
      zero: 'ft',
      steps: [
        ['in', 0],
        ['ft', 0.03048],
      ],
    },
  },
  area: {
    metric: {
      zero: 'm2',
      steps: [
        ['cm2', 0],
        ['m2', 0.01],
      ],
    },
    US: {
      zero: 'ft2',
      steps: [
        ['in2', 0],
        ['ft2', 0.01],
      ],
    },
  },
  volume: {
    metric: {
      zero: 'm3',
      steps: [
        ['L', 0],
        ['m3', 0.1],
      ],
    },
    US: {
      zero: 'ft3',
      steps: [
        ['in3', 0],
        ['ft3', 0.003],
      ],
    },
  },
  mass: { metric: one('kg'), US: one('lb') },
  force: {
    metric: {
      zero: 'kN',
      steps: [
        ['N', 0],
        ['kN', 1000],
      ],
    },
    US: one('lbf'),
  },
  pressure: {
    metric: {
      zero: 'kPa',
      steps: [
        ['Pa', 0],
        ['kPa', 1000],
        ['MPa', 1e7],
      ],
    },
    US: {
      zero: 'psf',
      steps: [
        ['psf', 0],
        ['psi', 1e6],
      ],
    },
  },
  speed: { metric: one('m/s'), US: one('mph') },
  time: both(time),
  angle: both(one('deg')),
  temperature: { metric: one('degC'), US: one('degF') },
  voltage: both(voltage),
  'mass per length': { metric: one('kg/m'), US: one('lb/ft') },
  'mass per area': { metric: one('kg/m2'), US: one('lb/ft2') },
  'mass density': { metric: one('kg/m3'), US: one('lb/ft3') },
  'force per length': { metric: one('kN/m'), US: one('lbf/ft') },
  'force density': { metric: one('kN/m3'), US: one('lbf/ft3') },
  acceleration: { metric: one('m/s2'), US: one('ft/s2') },
  moment: { metric: one('kN m'), US: one('lbf ft') },
};

function both(scale: Scale): Readonly<Record<System, Scale>> {
  return { metric: scale, US: scale };
}

function usualUnit(name: DimensionName, size: number, system: System): string {
  const { zero, steps } = scales[name][system];
  return size === 0 ? zero : (steps.filter(([, from]) => Math.abs(size) >= from).at(-1)?.[0] ?? zero);
}

// Shown, but never written in a plan: the language has no unit for them.
const combined: Readonly<Record<string, Unit>> = {
  'm/s2': { text: 'm/s2', factor: 1, offset: 0, dimension: dimensions.acceleration },
  'ft/s2': { text: 'ft/s2', factor: 0.3048, offset: 0, dimension: dimensions.acceleration },
  'kN m': { text: 'kN m', factor: 1000, offset: 0, dimension: dimensions.moment },
  'lbf ft': {
    text: 'lbf ft',
    factor: (joined('lbf')?.factor ?? Number.NaN) * 0.3048,
    offset: 0,
    dimension: dimensions.moment,
  },
};

/** Decimals beyond which nobody measures, per unit. */
const decimalsOf = (unit: string): number => finest[unit] ?? 2;
const finest: Readonly<Record<string, number>> = {
  m: 3,
  t: 3,
  'short ton': 3,
  'long ton': 3,
  m3: 3,
  rad: 4,
  '': 4,
  mm: 1,
  cm: 1,
  '%': 1,
  deg: 1,
  degC: 1,
  degF: 1,
  'm/s': 1,
  mph: 1,
  'km/h': 1,
  'ft/s': 1,
  knot: 1,
  L: 1,
  Pa: 1,
  N: 1,
};
