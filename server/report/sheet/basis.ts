// The words for what a part's weight rests on, short beside a figure and long in a table or picture.
import type { Basis } from '../../results/index.ts';

export const basisText: Readonly<Record<Basis, { readonly short: string; readonly long: string }>> = {
  unnamed: { short: 'figure on nothing named', long: 'Nothing named' },
  estimate: { short: 'estimate', long: 'Estimates' },
  bound: { short: 'bound', long: 'Upper bounds (envelopes)' },
  stated: { short: 'stated', long: 'Stated with evidence' },
  calculated: { short: 'calculated', long: 'Worked out from shape and material' },
};
