// The words under `load`: how its weight and centre are known, its parts and its picks.
import { evidence } from './evidence.ts';
import type { ClauseRow, Vocabulary } from './types.ts';

export const place = {
  at: {
    takes: 'point',
    measures: 'length',
    help: 'Where its datum point stands, in the axes of the load or assembly it belongs to.',
    example: 'at (2 m, 0, 0.5 m)',
  },
  on: {
    takes: 'names',
    names: 'box',
    help: 'Its box stands centred on top of the box of what is named.',
    example: 'on "Deck plate"',
  },
  against: {
    takes: 'side',
    names: 'box',
    help: 'Its box touches that side of what is named, centred.',
    example: 'against "Shell" x',
  },
  inside: {
    takes: 'names',
    names: 'contents',
    help: 'Centred in the box of what is named; a liquid lies at the bottom of its inside.',
    example: 'inside "Shell" and "East head"',
  },
  shift: { takes: 'point', measures: 'length', help: 'Moved from there by so much.', example: 'shift (-4 ft, 0, 0)' },
  axis: { takes: 'axis', help: 'Lays its own z along that axis.', example: 'axis x' },
  turn: {
    takes: 'turn',
    measures: 'angle',
    repeat: true,
    help: 'Turned about its datum point, counter-clockwise seen with the axis pointing at you; several in the order written.',
    example: 'turn 30 deg about z',
  },
  count: {
    takes: 'amount',
    measures: 'whole',
    above: 0,
    most: 10000,
    help: 'So many alike; sizes and weights are for each, results for all.',
    example: 'count 2',
  },
  every: {
    takes: 'point',
    measures: 'length',
    help: 'The step from one copy to the next.',
    example: 'every (0, 4 ft, 0)',
  },
  circle: {
    takes: 'circle',
    measures: 'length',
    help: 'Copies spread round a circle of that diameter about the place.',
    example: 'circle 17 in about y',
  },
} as const satisfies Readonly<Record<string, ClauseRow>>;

/** Of a straight member, instead of a length and a place: the middle of each of its ends, or the corners it is led through. */
const ends = {
  start: {
    takes: 'point',
    measures: 'length',
    help: 'Where the middle of one end of a straight member stands; with `end` it gives its length and its place.',
    example: 'start (0, 0, 0)',
  },
  end: {
    takes: 'point',
    measures: 'length',
    help: 'Where the middle of its other end stands.',
    example: 'end (2 m, 0, 1.5 m)',
  },
  along: {
    takes: 'line',
    measures: 'length',
    repeat: true,
    help: 'Corners of the line its middle is led along, on as many lines of text as needed; mitred, or bent to a `bend radius`; a ring where it ends as it began.',
    example: 'along (0, 0, 0) (2, 0, 0) (2, 1, 0) m',
  },
} as const satisfies Readonly<Record<string, ClauseRow>>;

/** Of a cut-out: it has no neighbours to stand on, only its place in the part. */
const { on: _on, against: _against, inside: _inside, ...cutting } = place;

const by: ClauseRow = { takes: 'word', words: evidence, help: 'What the figure rests on.', example: 'by marking' };
const contingency: ClauseRow = {
  takes: 'amount',
  measures: 'percent',
  least: 0,
  help: 'Added to the weight, once.',
  example: 'contingency 5 %',
};
const dated: ClauseRow = { takes: 'date', help: 'The day it was read or written.', example: 'dated 2026-05-04' };

const accuracy = { takes: 'amount', measures: 'percent', least: 0, most: 0.5 } as const;

export const load = {
  load: {
    under: ['file'],
    group: 'load',
    names: 'required',
    declares: 'load',
    help: 'What is lifted.',
    example: 'load "Pump skid"',
    clauses: {
      datum: {
        takes: 'text',
        help: "Where the load's zero stands and how its axes run, in words.",
        example: 'datum "middle of the skid, underside of the rails"',
      },
      contingency,
      'dynamic factor': {
        takes: 'amount',
        measures: 'number',
        least: 1,
        help: 'Multiplies tensions and pulls, not the gross load.',
      },
      modified: {
        takes: 'date',
        help: 'The day it was last changed; figures from before may not hold any more.',
        example: 'modified 2026-04-20',
      },
      'stop at': { takes: 'amount', measures: 'weight', above: 0, help: 'The reading at which the lift stops.' },
    },
  },
  stated: {
    under: ['load'],
    group: 'load',
    names: 'none',
    help: 'A weight somebody states for the whole load.',
    example: 'stated 4,850 lb, by marking, from "plate on the north rail"',
    value: { takes: 'amount', measures: 'weight', above: 0, need: 'always', help: 'The figure as stated.' },
    clauses: {
      by: { ...by, need: 'always' },
      dated,
      state: { takes: 'text', help: 'The state the figure is for: dry, with oil, as shipped.' },
      without: { takes: 'names', names: 'part', help: 'Parts that are lifted but not in the figure.' },
      tare: { takes: 'amount', measures: 'weight', least: 0, help: 'In the figure but not lifted.' },
      accuracy: {
        ...accuracy,
        help: 'Of a reading, as a share of what truly hangs: 19 t shown 5 % low may be 20 t.',
        example: 'accuracy 5 %',
      },
      contingency,
    },
  },
  weighed: {
    under: ['load'],
    group: 'load',
    names: 'optional',
    declares: 'weighing',
    help: 'A weighing on supports: the readings add up to the weight and show where it sits.',
    example: 'weighed "On four jacks": by jack reading, dated 2026-05-04',
    clauses: {
      by: { ...by, need: 'always' },
      dated,
      state: { takes: 'text', help: 'The state it was weighed in.' },
      without: { takes: 'names', names: 'part', help: 'Parts that are lifted but were not weighed.' },
      tare: { takes: 'amount', measures: 'weight', least: 0, help: 'Weighed with it but not lifted.' },
      accuracy: { ...accuracy, help: 'Of the readings.', example: 'accuracy 1 %' },
      contingency,
      incline: { takes: 'tilt', measures: 'angle', help: 'How the load stood while it was weighed.' },
    },
  },
  support: {
    under: ['weighed', 'ground'],
    group: 'load',
    names: 'required',
    declares: 'support',
    help: 'A place that carries: under the load while it is weighed, or under the crane.',
    example: 'support J1: at (4 m, 2 m, 0), reads 207 kN',
    clauses: {
      at: { ...place.at, need: 'always' },
      reads: { takes: 'amount', measures: 'weight', least: 0, help: 'What the scale or cell under it shows.' },
      reaction: { takes: 'amount', measures: 'weight', least: 0, help: 'What it presses with, by the crane maker.' },
      mat: { takes: 'size', sides: 3, measures: 'length', above: 0, help: 'Size of the mat under it.' },
      'mat weight': { takes: 'amount', measures: 'weight', least: 0, help: 'Weight of the mat.' },
      'effective area': {
        takes: 'amount',
        measures: 'area',
        above: 0,
        help: 'The area that really spreads the pressure.',
      },
    },
  },
  cog: {
    under: ['load'],
    group: 'load',
    names: 'none',
    help: 'A centre of gravity somebody states.',
    example: 'cog (0.4 m, 0, ?), by drawing, from "D-104"',
    value: {
      takes: 'point',
      measures: 'length',
      need: 'always',
      help: 'Where it lies; `?` for an axis that is not known.',
    },
    clauses: { by: { ...by, need: 'always' }, dated },
  },
  assembly: {
    under: ['load', 'assembly'],
    group: 'load',
    names: 'required',
    declares: 'assembly',
    help: 'Parts that belong together, with axes of their own.',
    example: 'assembly "Vessel": at (0, 0, 1,600 mm)',
    clauses: { ...place },
  },
  part: {
    under: ['load', 'assembly'],
    group: 'load',
    names: 'required',
    declares: 'part',
    help: 'One shape of one material, or an item whose weight is known.',
    example: 'part "Deck plate": plate 2 m x 1 m x 10 mm, of carbon steel, at (0, 0, 0)',
    clauses: {
      ...place,
      ...ends,
      by,
      contingency,
      empty: { takes: 'text', help: 'Nothing is inside; say who saw it.' },
    }, // shapes and their clauses are added in index.ts
  },
  list: {
    under: ['load', 'assembly'],
    group: 'load',
    names: 'none',
    help: 'A bill of materials, a bar schedule or a list of members in a CSV file: each row becomes a part. Columns `name` and `weight`, or `size` and `length` of bars and sections, and if there are any `count`, `x`, `y`, `z`.',
    example: 'list "bill.csv", by drawing',
    value: { takes: 'text', need: 'always', help: 'The file by its path from this file.' },
    clauses: {
      by,
      at: { ...place.at, help: 'Where the rows stand that have no place of their own.', example: 'at (0, 0, 0.5 m)' },
      inside: {
        ...place.inside,
        help: 'Rows without a place of their own are centred in the box of what is named, such as bars in concrete.',
        example: 'inside "Deck plate"',
      },
    },
  },
  less: {
    under: ['part'],
    group: 'load',
    names: 'none',
    help: 'Cut out of the part, measured from its datum point in its own axes.',
    example: 'less hole, diameter 6 in, at (5 ft, 0, 0)',
    clauses: cutting,
  },
  pick: {
    under: ['load', 'assembly'],
    group: 'load',
    names: 'required',
    declares: 'pick',
    help: 'Where a leg takes hold of the load.',
    example: 'pick NW: at (-5 ft, 2 ft, 8 in), capacity 3 t',
    clauses: {
      at: { ...place.at, need: 'always' },
      capacity: { takes: 'amount', measures: 'weight', above: 0, need: 'when loaded', help: 'For one straight pull.' },
      'least angle': { takes: 'amount', measures: 'angle', least: 0, help: 'Flattest pull allowed, from horizontal.' },
      kind: {
        takes: 'word',
        words: ['lug', 'eye', 'anchor', 'trunnion', 'edge', 'round'],
        help: 'What the sling takes hold of.',
      },
      diameter: { takes: 'amount', measures: 'length', above: 0, help: 'Of the hole, trunnion or round.' },
    },
  },
  'held by': {
    under: ['load'],
    group: 'load',
    names: 'none',
    help: 'What still holds the load before lift-off.',
    example: 'held by "grout under the rails", released "broken out, step 1", breakout 600 lb',
    value: { takes: 'text', need: 'always', help: 'Bolts, grout, suction, ice, pipework.' },
    clauses: {
      released: { takes: 'text', help: 'How and when it lets go.' },
      breakout: { takes: 'amount', measures: 'weight', least: 0, help: 'Extra pull it may take to free the load.' },
    },
  },
  free: {
    under: ['load'],
    group: 'load',
    names: 'none',
    help: 'Nothing holds the load; say who saw it.',
    example: 'free "stands loose on timber, seen 4 May"',
    value: { takes: 'text', need: 'always', help: 'Who saw it, and when.' },
    clauses: {},
  },
} as const satisfies Vocabulary;
