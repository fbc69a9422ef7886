// A worked-out number with everything that a reader needs to check it, or the reasons why it is not known.

import type { Quantity } from './quantity.ts';

/** Units of results: SI, as in the JSON report. `1` is a plain number or share. */
export type ResultUnit = 'kg' | 'N' | 'm' | 'm2' | 'm3' | 'rad' | 'Pa' | 'm/s' | 'kg/m3' | 'kg/m' | 'kg/m2' | '1';

/** Why a number is not known. `what` is a short sentence without figures made up; `at` is opaque here: the place in the text, if there is one. */
export interface Cause {
  readonly what: string;
  readonly at: unknown;
  /** The text itself says that it is not known yet (`?`): nothing is broken. */
  readonly deliberate?: true;
}

export interface Input {
  readonly label: string; // as in the formula
  readonly value: Derived;
}

export interface Derived {
  readonly value: number | null; // null: not known; then `because` is not empty
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: ResultUnit;
  /** In symbols, readable by hand: `length * width * thickness * density`; '' for a figure taken as it stands. */
  readonly formula: string;
  readonly inputs: readonly Input[];
  /** What it rests on: a table, a document, a rule, `typed here`. */
  readonly source: string;
  readonly assumptions: readonly string[];
  readonly because: readonly Cause[];
  readonly at: unknown; // opaque: the place that states or causes it
}

export interface Origin {
  readonly formula?: string;
  /** A function is asked when somebody reads them: the sum of thousands of parts is worked out with every key, its working is not read then. */
  readonly inputs?: readonly Input[] | (() => readonly Input[]);
  readonly source?: string;
  readonly assumptions?: readonly string[];
  readonly at?: unknown;
}

/** A known number; low and high are the ends of its tolerance. A number that is not finite becomes open. */
export function known(value: number, unit: ResultUnit, origin: Origin = {}, low = value, high = value): Derived {
  if (!Number.isFinite(value) || !Number.isFinite(low) || !Number.isFinite(high))
    return open(unit, [{ what: 'The sum has no finite answer.', at: origin.at ?? null }], origin);
  return derived({ value, low, high }, unit, origin, none);
}

/** A number with other figures, resting on what it rests on. Its working is made when somebody reads it, as that of the number is. */
export const refigured = (of: Derived, value: number, low = value, high = value): Derived =>
  known(value, of.unit, { ...originOf(of), inputs: () => of.inputs }, low, high);

const originOf = ({ formula, source, assumptions, at }: Derived): Origin => ({ formula, source, assumptions, at });

/** A figure as somebody wrote it, with its tolerance. */
export const asWritten = (
  {
    quantity: { value, low, high },
    at,
  }: { readonly quantity: Pick<Quantity, 'value' | 'low' | 'high'>; readonly at: unknown },
  unit: ResultUnit,
  source: string,
): Derived => known(value, unit, { source, at }, low, high);

/** A number that is not known, with the reasons. */
export function open(unit: ResultUnit, because: readonly Cause[], origin: Origin = {}): Derived {
  const why = because.length ? because : [{ what: 'Nothing states it.', at: origin.at ?? null }];
  return derived(unknown, unit, origin, why);
}

const none: readonly never[] = [];
const unknown = { value: null, low: null, high: null };

function derived(
  { value, low, high }: Pick<Derived, 'value' | 'low' | 'high'>,
  unit: ResultUnit,
  { formula = '', inputs = none, source = '', assumptions = none, at = null }: Origin,
  because: readonly Cause[],
): Derived {
  if (typeof inputs !== 'function')
    return { value, low, high, unit, formula, inputs, source, assumptions, because, at };
  let made: readonly Input[] | undefined;
  return {
    value,
    low,
    high,
    unit,
    formula,
    get inputs() {
      made ??= inputs();
      return made;
    },
    source,
    assumptions,
    because,
    at,
  };
}

/** The sum of numbers; open as soon as one is, with all their reasons, so that an unknown never counts as zero. */
export function sum(items: readonly Derived[], unit: ResultUnit, origin: Origin = {}): Derived {
  const because: Cause[] = [];
  const total = { value: 0, low: 0, high: 0 };
  let lost = false;
  for (const item of items) {
    for (const cause of item.because) because.push(cause);
    lost ||= item.value === null;
    total.value += item.value ?? Number.NaN;
    total.low += item.low ?? Number.NaN;
    total.high += item.high ?? Number.NaN;
  }
  return lost || because.length
    ? open(unit, unique(because), origin)
    : known(total.value, unit, origin, total.low, total.high);
}

/** Causes without repeats. */
export function unique(causes: readonly Cause[]): readonly Cause[] {
  if (causes.length < 2) return causes;
  const seen = new Map<string, Set<unknown>>();
  return causes.filter(({ what, at }) => {
    const places = seen.get(what);
    if (!places) seen.set(what, new Set([at]));
    else if (places.has(at)) return false;
    else places.add(at);
    return true;
  });
}
