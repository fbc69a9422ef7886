// Bought-in parts of pipework and bolting: their clauses, own axes and datum points. The figures stand in the tables of the standards.
import type { ClauseRow, ShapeRow } from '../types.ts';
import { length } from './clauses.ts';

const size: ClauseRow = { takes: 'designation', need: 'always', help: 'Nominal size, `NPS 8` or `DN 200`.' };
const schedule = (help: string): ClauseRow => ({ takes: 'label', help });
const pipeSchedule: ClauseRow = { ...schedule('Of the pipe it is welded to, such as 40, STD, XS.'), need: 'always' };
const pressureClass: ClauseRow = {
  takes: 'label',
  need: 'always',
  help: '150, 300, 600, 900, 1500 or 2500, or PN10, PN16, PN25 or PN40.',
};
const word = (words: readonly string[], help: string, need?: 'always'): ClauseRow => ({
  takes: 'word',
  words,
  help,
  ...(need && { need }),
});
const count = (help: string): ClauseRow => ({ takes: 'amount', measures: 'whole', least: 0, most: 8, help });
const boltDesignation: ClauseRow = {
  takes: 'designation or amount',
  measures: 'length',
  above: 0,
  need: 'always',
  help: '`M24`, or an inch size as `3/4 in`.',
};
const stub = {
  class: pressureClass,
  schedule: pipeSchedule,
  form: word(['weld neck', 'slip on'], 'Of its flange; left out: weld neck.'),
  projection: length('From where the pipe begins to the gasket face; on a round shell from the deepest cut.', 'always'),
  pad: {
    takes: 'size',
    sides: 2,
    measures: 'length',
    above: 0,
    help: 'Reinforcing pad, outside diameter × thickness.',
  },
} as const satisfies Readonly<Record<string, ClauseRow>>;

export const pipework = {
  flange: {
    under: ['part'],
    form: size,
    clauses: {
      class: pressureClass,
      form: word(
        ['weld neck', 'slip on', 'threaded', 'socket weld', 'lap joint', 'blind'],
        'How it is joined to the pipe.',
        'always',
      ),
      schedule: schedule('Of the pipe; sets the bore of a weld neck, of a thread and of a socket.'),
    },
    material: 'steel unless said',
    hollow: true,
    axis: 'z, towards the gasket face; middle of the gasket face',
    help: 'A pipe flange with its raised face, by size, class and form (ASME B16.5, EN 1092-1).',
    example: 'flange NPS 8, class 150, form weld neck, schedule 40',
  },
  'pipe elbow': {
    under: ['part'],
    form: size,
    clauses: {
      schedule: pipeSchedule,
      form: word(['long radius', 'short radius'], 'Bend radius 1.5 times the nominal size, or once.', 'always'),
      angle: {
        takes: 'amount',
        measures: 'angle',
        above: 0,
        most: Math.PI + 1e-12,
        need: 'always',
        help: 'How far it turns: 90 deg, 45 deg, or as cut.',
      },
    },
    material: 'steel unless said',
    hollow: true,
    axis: 'comes in along +x, turns towards +y; where the centre lines cross (180 deg: bend centre)',
    help: 'A butt-weld elbow by size and schedule (ASME B16.9).',
    example: 'pipe elbow NPS 8, schedule 40, form long radius, angle 90 deg',
  },
  'pipe tee': {
    under: ['part'],
    form: {
      takes: 'designation',
      need: 'always',
      help: 'Nominal size, `NPS 8`; of a reducing tee run × branch, `NPS 8 x 4`.',
    },
    clauses: { schedule: pipeSchedule },
    material: 'steel unless said',
    hollow: true,
    axis: 'run along x, branch towards +y; where the centre lines cross',
    help: 'A butt-weld tee by size and schedule (ASME B16.9); a reducing one counts as the equal tee of its run.',
    example: 'pipe tee NPS 8, schedule 40',
  },
  'pipe reducer': {
    under: ['part'],
    form: { takes: 'designation', need: 'always', help: 'Large end × small end, `NPS 8 x 6` or `DN 200 x 150`.' },
    clauses: {
      schedule: pipeSchedule,
      form: word(['concentric', 'eccentric'], 'Eccentric: flat on the -y side.', 'always'),
    },
    material: 'steel unless said',
    hollow: true,
    axis: 'z, large end first; on the axis of the large end at mid-length; flat side towards -y',
    help: 'A butt-weld reducer by size and schedule (ASME B16.9).',
    example: 'pipe reducer NPS 8 x 6, schedule 40, form concentric',
  },
  'pipe cap': {
    under: ['part'],
    form: size,
    clauses: { schedule: pipeSchedule },
    material: 'steel unless said',
    hollow: true,
    axis: 'z, opening first; box centre',
    help: 'A butt-weld cap by size and schedule (ASME B16.9).',
    example: 'pipe cap NPS 8, schedule 40',
  },
  nozzle: {
    under: ['part'],
    form: size,
    clauses: stub,
    material: 'steel unless said',
    hollow: true,
    axis: 'z, towards the gasket face; middle of the gasket face',
    help: 'A pipe stub with its flange, as on a vessel, with a reinforcing pad or without.',
    example: 'nozzle NPS 6, class 150, schedule 40, projection 200 mm, pad 300 x 10 mm',
  },
  manway: {
    under: ['part'],
    form: size,
    clauses: {
      ...stub,
      davit: {
        takes: 'amount',
        measures: 'weight',
        above: 0,
        help: 'Weight of the davit or hinge of its cover, from its drawing, or `none`; one of them is due.',
      },
    },
    material: 'steel unless said',
    hollow: true,
    axis: 'z, towards the gasket face; middle of the gasket face',
    help: 'A nozzle with a blind cover and its studs.',
    example: 'manway NPS 24, class 150, schedule STD, projection 250 mm, davit 60 kg',
  },
  bolt: {
    under: ['part'],
    form: boltDesignation,
    clauses: {
      length: length('Without the head; of a stud or anchor bolt all of it.', 'always'),
      form: word(
        ['hex', 'structural', 'stud', 'anchor'],
        'hex and structural: head, nut, and one washer or two; stud: two heavy nuts; anchor: two heavy nuts and a washer.',
        'always',
      ),
      nuts: count('Instead of as many as the form has.'),
      washers: count('Instead of as many as the form has.'),
    },
    material: 'steel unless said',
    axis: 'z, head first; box centre',
    help: 'A bolt with its nuts and washers by size and length (ISO 4014 and 4032, ASME B18.2). Thread is not taken off.',
    example: 'bolt M24, length 120 mm, form hex',
  },
  'bolt set': {
    under: ['part'],
    form: size,
    clauses: {
      class: pressureClass,
      length: length(
        'Of each stud; left out: as the standard gives it for raised faces, or by the thickness of two flanges.',
      ),
    },
    material: 'steel unless said',
    axis: 'z, square to the joint; middle of the joint',
    help: 'All studs of one flanged joint, each with two heavy nuts, by size and class of the flange.',
    example: 'bolt set NPS 8, class 150',
  },
  nut: {
    under: ['part'],
    form: boltDesignation,
    clauses: { form: word(['hex', 'heavy'], 'Hexagon nut, or heavy hexagon nut.', 'always') },
    material: 'steel unless said',
    axis: 'z; box centre',
    help: 'A nut by itself (ISO 4032, ASME B18.2.2).',
    example: 'nut M24, form hex',
  },
  washer: {
    under: ['part'],
    form: boltDesignation,
    clauses: {},
    material: 'steel unless said',
    axis: 'z; box centre',
    help: 'A plain washer by itself (ISO 7090, ASTM F436).',
    example: 'washer M24',
  },
} as const satisfies Readonly<Record<string, ShapeRow>>;
