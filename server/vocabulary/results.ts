// The second table of the language: what can be asked of each subject, in `expect`, hover, hints, the sheet and JSON.
import { gearKinds } from './gear.ts';
import type { ResultRow } from './types.ts';

const mass = (help: string, worse: ResultRow['worse'] = 'up'): ResultRow => ({
  measures: 'weight',
  unit: 'kg',
  worse,
  help,
});
const force = (help: string): ResultRow => ({ measures: 'force', unit: 'N', worse: 'up', help });
const length = (help: string, worse: ResultRow['worse'] = 'either'): ResultRow => ({
  measures: 'length',
  unit: 'm',
  worse,
  help,
});
const angle = (help: string, worse: ResultRow['worse']): ResultRow => ({ measures: 'angle', unit: 'rad', worse, help });
const share = (help: string): ResultRow => ({ measures: 'percent', unit: '1', worse: 'up', help });

const box = {
  length: length('Of its box along x.', 'up'),
  width: length('Of its box along y.', 'up'),
  height: length('Of its box along z.', 'up'),
};
const centre = {
  'cog x': length('Centre of gravity along x.'),
  'cog y': length('Centre of gravity along y.'),
  'cog z': length('Centre of gravity along z.'),
};
const volume: ResultRow = { measures: 'volume', unit: 'm3', worse: 'up', help: 'Of the material.' };
const body = { weight: mass('Of all copies, with what is cut out taken off.'), volume, ...centre, ...box };

const gearResults = {
  tension: force('At its upper end, worst over sharing and over every stated tolerance.'),
  'elastic tension': force('At its upper end, by the elastic solve at nominal lengths and centre.'),
  load: mass('Its tension as mass.'),
  capacity: mass('For one straight vertical leg.', 'down'),
  'capacity used': share('Worst load over what it may carry here.'),
  angle: angle('From horizontal.', 'down'),
} as const;
const beamResults = {
  ...gearResults,
  compression: force('Greatest pressure along its own x.'),
  tilt: angle('Out of level.', 'up'),
} as const;

const readings = {
  'expected reading': mass(
    'What is read once the load hangs free, block and gear in it as far as they hang below: at least without allowance, at most with it. Of the plan: on the indicator of the crane, deductions not in it.',
  ),
  'stop reading': mass(
    'The reading at which the lift stops: as `stop at` says, else the most that is expected, with what it may take to break the load free.',
    'down',
  ),
} as const;
const cellResults = { ...gearResults, ...readings } as const;

export const results = {
  plan: {
    'load weight': mass('Governing weight of all loads, with allowance.'),
    'rigging weight': mass('All gear that hangs.'),
    deductions: mass('What the chart still counts as load.'),
    'gross load': mass('Load weight, rigging weight and deductions together.'),
    ...readings,
  },
  load: {
    weight: mass('Governing weight, with allowance.'),
    'calculated weight': mass('All parts together, without allowance.'),
    'stated weight': mass('The heaviest stated figure with what is added and taken off, without allowance.'),
    'measured weight': mass('The sum of readings with what is added and taken off, without allowance.'),
    volume,
    ...centre,
    tilt: angle('Out of level as it hangs.', 'up'),
    ...box,
  },
  assembly: body,
  part: body,
  pick: {
    pull: force('Worst pull on it.'),
    load: mass('Its pull as mass.'),
    angle: angle('Of the flattest pull, from horizontal.', 'down'),
    'capacity used': share('Worst pull over its capacity.'),
  },
  crane: {
    'gross load': mass('What hangs on this crane in all.'),
    'gross capacity': mass('Of the chart cell read, worst position.', 'down'),
    'net capacity': mass('Gross capacity less deductions and gear.', 'down'),
    'capacity used': share('Gross load over gross capacity, worst position.'),
    radius: length('The radius read, with tolerance and deflection.', 'up'),
    headroom: length('What is left between tip and rigging.', 'down'),
  },
  support: {
    reaction: force('What it presses with.'),
    pressure: { measures: 'pressure', unit: 'Pa', worse: 'up', help: 'On the ground under it.' },
    'capacity used': share('Pressure over what the ground may take.'),
  },
  weather: {
    'wind force': force('On the load at the wind limit.'),
    'wind limit': { measures: 'speed', unit: 'm/s', worse: 'down', help: 'For this load.' },
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, ResultRow>>>>;

function resultsOfGear(kind: string): Readonly<Record<string, ResultRow>> {
  if (kind === 'load cell') return cellResults;
  return kind === 'spreader' || kind === 'lifting beam' ? beamResults : gearResults;
}

/** Results of every kind of subject: gear keywords, `gear` for any gear, position as crane, ground as support. */
export const resultsOf: Readonly<Record<string, Readonly<Record<string, ResultRow>>>> = {
  ...results,
  position: results.crane,
  ground: results.support,
  gear: beamResults,
  ...Object.fromEntries(gearKinds.map((kind) => [kind, resultsOfGear(kind)])),
};
