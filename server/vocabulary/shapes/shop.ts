// What shops make and heap up: weld metal, coils, heaps, hollow-core slabs.
import type { ShapeRow } from '../types.ts';
import { length, must, nothing, sides3, sidesOr } from './clauses.ts';

/** Kinds of weld by the names of ISO 17659 and ISO 2553, with how much of one face bevelled on both edges they open. */
export const welds = {
  fillet: null,
  'square butt': 0,
  'single V butt': 1,
  'single bevel butt': 1 / 2,
  'double V butt': 1 / 2,
  'double bevel butt': 1 / 4,
} as const;

const rightAngle = Math.PI / 2;

export const shop = {
  weld: {
    under: ['part'],
    form: { takes: 'word', words: Object.keys(welds), need: 'always', help: 'The kind of weld.' },
    clauses: {
      'leg length': {
        takes: 'size or amount',
        sides: 2,
        measures: 'length',
        above: 0,
        help: 'Leg of a fillet, or both where they differ; or give `throat`.',
      },
      throat: length('Height of a fillet of even legs, as drawings with an `a` give it.'),
      thickness: length('Of the plates that a butt weld joins.'),
      gap: {
        takes: 'amount',
        measures: 'length',
        least: 0,
        help: 'Root opening of a butt weld; 0 where the edges touch.',
      },
      'root face': {
        takes: 'amount',
        measures: 'length',
        least: 0,
        help: 'Left square under the bevel; left out: none.',
      },
      bevel: {
        takes: 'amount',
        measures: 'angle',
        above: 0,
        most: rightAngle,
        help: 'Of one edge, from square: half of the groove angle where both are bevelled.',
      },
      excess: {
        takes: 'amount',
        measures: 'percent',
        least: 0,
        help: 'Metal above the flat; left out: 50 %, as welds are billed.',
      },
      length: must('Of all runs of it together, or of each with `count`.'),
    },
    material: 'steel unless said',
    axis: 'x; box centre (an assumption shown)',
    help: 'Weld metal by its size and length.',
    example: 'weld fillet, leg length 8 mm, length 6 m',
  },
  coil: {
    under: ['part'],
    form: nothing,
    clauses: {
      outside: must('Outside diameter.'),
      bore: must('Inside diameter.'),
      width: must('Along its axis.'),
      wire: length('Diameter of the wire; left out: strip.'),
      length: length('Of the wire on it, where that is known.'),
      'fill factor': {
        takes: 'amount',
        measures: 'percent',
        above: 0,
        most: 1,
        help: 'Share of the ring that is metal (stacking factor of strip); left out: all of it, of wire as close as round wires lie.',
      },
    },
    material: 'of',
    axis: 'z; box centre',
    help: 'A coil of strip, or of wire or rope with or without its reel.',
    example: 'coil, outside 1.4 m, bore 508 mm, width 1.2 m, of carbon steel',
  },
  heap: {
    under: ['part'],
    form: nothing,
    clauses: {
      base: sidesOr('Diameter of the base, or its width where the heap is longer.'),
      length: length('Over all, of a heap that is longer than wide; left out: a cone.'),
      height: length('From base to top; or give `angle`.'),
      angle: {
        takes: 'amount',
        measures: 'angle',
        above: 0,
        most: rightAngle,
        help: 'Angle of repose, from level; or give `height`.',
      },
    },
    material: 'of',
    axis: 'z, base first, length along x; box centre',
    help: 'Loose material on a level floor: a cone, or a ridge between two half cones.',
    example: 'heap, base 3 m, angle 35 deg, of sand',
  },
  'hollow core': {
    under: ['part'],
    form: sides3('Length × width × depth of the slab.'),
    clauses: {
      cores: { takes: 'amount', measures: 'whole', above: 0, need: 'always', help: 'How many cores.' },
      core: {
        takes: 'size or amount',
        sides: 2,
        measures: 'length',
        above: 0,
        need: 'always',
        help: 'Diameter of a core, or width × height of an oval one, which counts as an ellipse.',
      },
    },
    material: 'of',
    axis: 'length x, width y, depth z; box centre',
    help: 'A slab with cores right through along its length, at mid-depth and evenly spread.',
    example: 'hollow core 6 x 1.2 x 0.2 m, cores 6, core 140 mm, of reinforced concrete',
  },
} as const satisfies Readonly<Record<string, ShapeRow>>;
