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
  readonly inputs?: readonly Input[];
  readonly source?: string;
  readonly assumptions?: readonly string[];
  readonly at?: unknown;
}

/** A known number; low and high are the ends of its tolerance. A number that is not finite becomes open. */
export function known(value: number, unit: ResultUnit, origin: Origin = {}, low = value, high = value): Derived {
  if (!Number.isFinite(value) || !Number.isFinite(low) || !Number.isFinite(high))
    return open(unit, [{ what: 'The sum has no finite answer.', at: origin.at ?? null }], origin);
  return { value, low, high, unit, ...fill(origin), because: [] };
}

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
  return {
    value: null,
    low: null,
    high: null,
    unit,
    ...fill(origin),
    because: because.length ? because : [{ what: 'Nothing states it.', at: origin.at ?? null }],
  };
}

const fill = (origin: Origin) => ({
  formula: origin.formula ?? '',
  inputs: origin.inputs ?? [],
  source: origin.source ?? '',
  assumptions: origin.assumptions ?? [],
  at: origin.at ?? null,
});

/** The sum of numbers; open as soon as one is, with all their reasons, so that an unknown never counts as zero. */
export function sum(items: readonly Derived[], unit: ResultUnit, origin: Origin = {}): Derived {
  const because = items.flatMap((item) => item.because);
  if (because.length || items.some((item) => item.value === null)) return open(unit, unique(because), origin);
  const add = (pick: (item: Derived) => number | null) =>
    items.reduce((total, item) => total + (pick(item) ?? Number.NaN), 0);
  return known(
    add((i) => i.value),
    unit,
    origin,
    add((i) => i.low),
    add((i) => i.high),
  );
}

/** Causes without repeats. */
export function unique(causes: readonly Cause[]): readonly Cause[] {
  return causes.length < 2
    ? causes
    : causes.filter(
        (cause, i) => causes.findIndex((other) => other.what === cause.what && other.at === cause.at) === i,
      );
}
