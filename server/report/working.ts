// How a figure came about, step by step: shared by the sheet's appendix and the JSON report.
import type { Derived } from '../quantities/index.ts';
import type { Result } from '../results/types.ts';

export interface Step {
  readonly label: string; // as in the formula it goes into; the result's own name for the first step
  readonly derived: Derived;
}

/**
 * The figure itself, then what it rests on, depth first. A figure that is a result of its own is named but not followed
 * further: its own working stands with it.
 */
export function workingOf(
  { result, value }: Pick<Result, 'result' | 'value'>,
  results: ReadonlySet<Derived>,
): readonly Step[] {
  const steps: Step[] = [];
  const seen = new Set<Derived>();
  const follow = (label: string, derived: Derived): void => {
    steps.push({ label, derived });
    if (seen.has(derived) || (derived !== value && results.has(derived))) return;
    seen.add(derived);
    for (const input of derived.inputs) follow(input.label, input.value);
  };
  follow(result, value);
  return steps;
}

/** Every figure behind the results, each once, in order. */
export function allFigures(list: readonly Result[]): readonly Derived[] {
  const results = figuresOf(list);
  return [...new Set(list.flatMap((result) => workingOf(result, results).map(({ derived }) => derived)))];
}

/** The figures that are results of their own. */
export const figuresOf = (list: readonly Result[]): ReadonlySet<Derived> => new Set(list.map(({ value }) => value));
