// The table of units, built from relations fixed by definition, and look-up by exact spelling.
import { type Dimension, type DimensionName, dimensions, divided } from './dimension.ts';

export interface Unit {
  readonly text: string; // as the language spells it
  /** SI value = number × factor + offset; the offset is 0 but for degC and degF. */
  readonly factor: number;
  readonly offset: number;
  readonly dimension: Dimension;
}

/** Standard acceleration of free fall, m/s2, exact (3rd CGPM 1901; ISO 80000-3). The only bridge between mass and force. */
export const g0 = 9.80665;

/** The unit of that exact spelling, `days weeks months years` included; undefined for any other, also for joined ones. */
export const unit = (text: string): Unit | undefined =>
  table.get(text) ?? (/[²³°]/.test(text) ? table.get(ascii(text)) : undefined);

/** The unit of that exact spelling, or two of them joined by one `/`: `kg/m3`, `lb/US gal`. */
export function joined(text: string): Unit | undefined {
  const single = unit(text);
  if (single) return single;
  const [over = '', under = '', ...more] = text.split('/');
  const [a, b] = [unit(over), unit(under)];
  if (more.length || !a || !b || !joins(a) || !joins(b)) return undefined;
  return {
    text: `${a.text}/${b.text}`,
    factor: a.factor / b.factor,
    offset: 0,
    dimension: divided(a.dimension, b.dimension),
  };
}

/** Every unit, in the order of the reference. */
export const units = (): readonly Unit[] => [...new Set(table.values())];

/**
 * Number of calendar months behind a time written in months or years, null for any other time. A month counts as a twelfth of 365.25
 * days in sums; a due date counts these months in the calendar instead, and any other time in whole days, rounded down.
 */
export function wholeMonths(seconds: number): number | null {
  const months = seconds / MONTH;
  return seconds > 0 && Math.abs(months - Math.round(months)) < 1e-9 ? Math.round(months) : null;
}

// Each factor is one division of two whole numbers below 2^53, so that it is the double nearest to the exact relation.
// degF: 459.67 × 5/9. Pound, yard and with it inch and foot: international yard and pound agreement of 1959. US gallon 231 in3 and long ton 2240 lb:
// NIST Handbook 44, appendix C. Imperial gallon 4.54609 L: UK Weights and Measures Act 1985, schedule 1. Nautical mile 1852 m: SI brochure.
const POUND = 45_359_237; // 1e-8 kg
const G = 980_665; // 1e-5 m/s2
const POUND_FORCE = POUND * G; // 1e-13 N
const INCH = 254; // 1e-4 m
const FOOT = 12 * INCH;
const YARD = 3 * FOOT;
const MILE = 5280 * FOOT;
const US_GALLON = 231 * INCH ** 3; // 1e-12 m3
const DAY = 86_400; // s
const YEAR = (DAY * 1461) / 4; // 365.25 days
const MONTH = YEAR / 12;

type Row = readonly [text: string, factor: number, offset?: number];

const rows: Readonly<Partial<Record<DimensionName, readonly Row[]>>> = {
  length: [
    ['mm', 1 / 1000],
    ['cm', 1 / 100],
    ['m', 1],
    ['in', INCH / 1e4],
    ['ft', FOOT / 1e4],
    ['yd', YARD / 1e4],
  ],
  area: [
    ['mm2', 1 / 1e6],
    ['cm2', 1 / 1e4],
    ['m2', 1],
    ['in2', INCH ** 2 / 1e8],
    ['ft2', FOOT ** 2 / 1e8],
  ],
  volume: [
    ['mm3', 1 / 1e9],
    ['cm3', 1 / 1e6],
    ['m3', 1],
    ['L', 1 / 1000],
    ['in3', INCH ** 3 / 1e12],
    ['ft3', FOOT ** 3 / 1e12],
    ['yd3', YARD ** 3 / 1e12],
    ['bbl', (42 * US_GALLON) / 1e12],
    ['US gal', US_GALLON / 1e12],
    ['imperial gal', 454_609 / 1e8],
  ],
  mass: [
    ['g', 1 / 1000],
    ['kg', 1],
    ['t', 1000],
    ['lb', POUND / 1e8],
    ['oz', POUND / 16e8],
    ['kip', POUND / 1e5],
    ['short ton', (2000 * POUND) / 1e8],
    ['long ton', (2240 * POUND) / 1e8],
  ],
  force: [
    ['N', 1],
    ['kN', 1000],
    ['MN', 1e6],
    ['lbf', POUND_FORCE / 1e13],
    ['kipf', POUND_FORCE / 1e10],
    ['kgf', G / 1e5],
    ['tf', G / 100],
  ],
  pressure: [
    ['Pa', 1],
    ['kPa', 1000],
    ['MPa', 1e6],
    ['psi', POUND_FORCE / (INCH ** 2 * 1e5)],
    ['psf', POUND_FORCE / (FOOT ** 2 * 1e5)],
    ['ksi', POUND_FORCE / (INCH ** 2 * 100)],
    ['bar', 1e5],
  ],
  speed: [
    ['m/s', 1],
    ['km/h', 10 / 36],
    ['ft/s', FOOT / 1e4],
    ['mph', MILE / (3600 * 1e4)],
    ['knot', 1852 / 3600],
  ],
  angle: [
    ['deg', Math.PI / 180],
    ['rad', 1],
  ],
  temperature: [
    ['degC', 1, 273.15],
    ['degF', 5 / 9, 229_835 / 900],
  ],
  voltage: [
    ['V', 1],
    ['kV', 1000],
  ],
  time: [
    ['s', 1],
    ['min', 60],
    ['h', 3600],
    ['day', DAY],
    ['week', 7 * DAY],
    ['month', MONTH],
    ['year', YEAR],
  ],
  number: [['%', 1 / 100]],
};

const table: ReadonlyMap<string, Unit> = new Map(
  Object.entries(rows).flatMap(([name, list]) =>
    list.flatMap(([text, factor, offset = 0]): [string, Unit][] => {
      const one: Unit = { text, factor, offset, dimension: dimensions[name as DimensionName] };
      return ['day', 'week', 'month', 'year'].includes(text)
        ? [
            [text, one],
            [`${text}s`, one],
          ]
        : [[text, one]];
    }),
  ),
);

/** Temperatures and shares join with nothing; `km/h` and the like stand for themselves. */
const joins = (one: Unit): boolean => one.offset === 0 && one.text !== '%' && !one.text.includes('/');

const ascii = (text: string): string => text.replace('²', '2').replace('³', '3').replace('°', 'deg');
