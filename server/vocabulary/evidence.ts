// Words for what a figure rests on, and the built-in contingency of each.

export const evidence = [
  'marking',
  'drawing',
  'shipping paper',
  'maker data',
  'load cell',
  'weighbridge',
  'jack reading',
  'calculation',
  'estimate',
] as const;
export type Evidence = (typeof evidence)[number];

/** Evidence that is a reading: it may govern downwards only when everything about it is said. */
export const readings: readonly Evidence[] = ['load cell', 'weighbridge', 'jack reading'];

export const evidenceHelp: Readonly<Record<Evidence, string>> = {
  marking: 'A weight marked on the load itself, such as a plate or stencil.',
  drawing: 'A weight on a certified or checked drawing.',
  'shipping paper': 'A weight on a shipping paper; say whether net, gross or tare with `state`.',
  'maker data': 'A weight from the maker: data sheet, catalogue, manual.',
  'load cell': 'A reading of a load cell or crane indicator.',
  weighbridge: 'A reading of a weighbridge.',
  'jack reading': 'Readings of jacks under the load.',
  calculation: 'Worked out by somebody, from drawings or measurements.',
  estimate: 'A guess with some reason behind it. It always carries at least the contingency of an estimate.',
};

/** Built-in contingencies (share of the weight); common practice, no single source: 3 % on readings, 10 % on calculation, 25 % on estimate, else 5 %. */
export const builtInContingency = (by: Evidence | null): number =>
  by === 'estimate' ? 0.25 : by === 'calculation' ? 0.1 : by !== null && readings.includes(by) ? 0.03 : 0.05;

export const triggers = [
  'two cranes',
  'people lifted',
  'centre moves',
  'weight not measured',
  'out of sight',
  'over live plant',
  'near power line',
  'submerged',
] as const;
