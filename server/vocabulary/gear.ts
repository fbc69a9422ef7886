// The words under `gear`: everything that hangs between hook and load.
import type { ClauseRow, StatementRow, Vocabulary } from './types.ts';

const yes = (help: string): ClauseRow => ({ takes: 'nothing', help });

/** Clauses every piece of gear takes. */
export const common = {
  weight: {
    takes: 'amount',
    measures: 'weight',
    least: 0,
    need: 'always',
    help: 'Counted under the hook, for each.',
    example: 'weight 22 lb',
  },
  capacity: {
    takes: 'amount',
    measures: 'weight',
    above: 0,
    need: 'when loaded',
    help: 'For one straight vertical leg, from the tag.',
    example: 'capacity 5.6 short ton',
  },
  length: { takes: 'amount', measures: 'length', above: 0, help: 'Bearing to bearing.', example: 'length 14 ft' },
  count: { takes: 'amount', measures: 'whole', above: 0, most: 10000, help: 'So many alike; figures are for each.' },
  like: { takes: 'name', names: 'gear', help: "All figures as that one's, but serial, inspection, place and spare." },
  serial: { takes: 'text', help: 'What is stamped on it.' },
  inspected: { takes: 'date', help: 'Day of the last inspection.' },
  interval: {
    takes: 'amount',
    measures: 'time',
    above: 0,
    help: 'How long an inspection holds.',
    example: 'interval 12 months',
  },
  spare: yes('Lies ready, hangs nowhere.'),
  'hangs from': {
    takes: 'name',
    names: 'anything',
    help: "Hangs there without being in a leg: tag lines, a load cell's cable.",
  },
} as const satisfies Readonly<Record<string, ClauseRow>>;

const angle: Readonly<Record<string, ClauseRow>> = {
  'least angle': {
    takes: 'amount',
    measures: 'angle',
    least: 0,
    help: 'Flattest pull its capacity holds for, from horizontal.',
  },
};
const pin: Readonly<Record<string, ClauseRow>> = {
  'pin diameter': { takes: 'amount', measures: 'length', above: 0, help: 'Of its pin.' },
};
const adjust: Readonly<Record<string, ClauseRow>> = {
  'take-up': { takes: 'amount', measures: 'length', above: 0, help: 'How far it can be let out.' },
  set: { takes: 'amount', measures: 'length', least: 0, help: 'How far it is let out, beyond its closed length.' },
  ends: { takes: 'word', words: ['jaw', 'eye', 'hook'], help: 'What its ends are.' },
};

const kind = (help: string, example: string, clauses: Readonly<Record<string, ClauseRow>> = {}): StatementRow => ({
  under: ['gear'],
  group: 'gear',
  names: 'range',
  declares: 'gear',
  help,
  example,
  clauses: { ...common, ...clauses },
});
const upper: Readonly<Record<string, ClauseRow>> = {
  at: {
    takes: 'point',
    measures: 'length',
    help: 'Where this hook stands, in the axes of the load; for lifts with two hooks.',
  },
};
const beam: Readonly<Record<string, ClauseRow>> = {
  ...angle,
  'compression capacity': { takes: 'amount', measures: 'force', above: 0, help: 'Greatest pressure along the beam.' },
};

export const gear = {
  gear: {
    under: ['file'],
    group: 'gear',
    names: 'none',
    help: 'What hangs between hook and load, item by item.',
    example: 'gear',
    clauses: {},
  },
  block: kind('Hook block of the crane.', 'block "Main block": weight 610 lb, capacity 20 short ton', upper),
  hook: kind('A hook that legs hang from.', 'hook "Main hook": weight 340 kg, capacity 50 t', upper),
  ball: kind('Ball hook of a single line.', 'ball "Ball": weight 120 kg, capacity 8 t', upper),
  sling: kind('One sling.', 'sling S1: wire rope, diameter 20 mm, length 4 m, weight 12 kg, capacity 4 t', {
    'wire rope': yes('Of wire rope.'),
    chain: yes('Of chain.'),
    round: yes('Endless round sling.'),
    web: yes('Flat woven sling.'),
    'fibre rope': yes('Of fibre rope.'),
    mesh: yes('Of metal mesh.'),
    diameter: { takes: 'amount', measures: 'length', above: 0, help: "Of the rope or the chain's bar." },
    grade: { takes: 'label', help: 'Such as 80 or 100 for chain.' },
    circumference: { takes: 'amount', measures: 'length', above: 0, help: 'Of an endless sling, all round.' },
    'lower end': { takes: 'word', words: ['eye', 'hook', 'link', 'socket'], help: 'What its lower end is.' },
    'choker capacity': { takes: 'amount', measures: 'weight', above: 0, help: 'From the tag; wins over any factor.' },
    'basket capacity': { takes: 'amount', measures: 'weight', above: 0, help: 'From the tag; wins over any factor.' },
    stiffness: {
      takes: 'amount',
      measures: 'force',
      above: 0,
      help: 'Pull that would stretch it to double length (EA).',
    },
  }),
  spreader: kind(
    'A bar pressed together by the slings above it.',
    'spreader "Bar 4": weight 390 kg, capacity 20 t, least angle 60 deg',
    beam,
  ),
  'lifting beam': kind('A beam bent by what hangs on it.', 'lifting beam "Beam 3": weight 250 kg, capacity 10 t', beam),
  shackle: kind('Joins a sling, link or lug.', 'shackle K1..K4: weight 5 lb, capacity 4.75 t', pin),
  'master link': kind('Gathers several legs.', 'master link "Ring": weight 14 kg, capacity 17 t, length 340 mm', pin),
  link: kind('A link or ring between two items.', 'link L1: weight 2 kg, capacity 5 t', pin),
  swivel: kind('Turns under load.', 'swivel "Swivel": weight 9 kg, capacity 10 t', pin),
  sheave: kind('A sling runs over it.', 'sheave "Sheave": weight 18 kg, capacity 10 t', pin),
  turnbuckle: kind(
    "Adjusts a leg's length.",
    'turnbuckle T1: weight 8 kg, capacity 5 t, length 600 mm, take-up 300 mm, set 0 mm',
    adjust,
  ),
  'chain hoist': kind(
    "Adjusts a leg's length by chain.",
    'chain hoist H1: weight 35 kg, capacity 5 t, length 500 mm, take-up 3 m, set 200 mm',
    adjust,
  ),
  'lever hoist': kind(
    "Adjusts a leg's length by a lever.",
    'lever hoist H2: weight 18 kg, capacity 3 t, length 400 mm, take-up 1.5 m, set 150 mm',
    adjust,
  ),
  eyebolt: kind('Screwed into the load.', 'eyebolt E1..E4: weight 1 kg, capacity 1.2 t', angle),
  'hoist ring': kind('Swivelling lifting point, screwed in.', 'hoist ring R1..R4: weight 2 kg, capacity 2 t', angle),
  clamp: kind('Holds by clamping.', 'clamp C1: weight 12 kg, capacity 2 t', angle),
  magnet: kind('Holds by magnetic pull.', 'magnet "Magnet": weight 95 kg, capacity 1 t', angle),
  'vacuum lifter': kind('Holds by suction.', 'vacuum lifter "Vacuum": weight 180 kg, capacity 1 t', angle),
  'personnel platform': kind('Carries people.', 'personnel platform "Basket": weight 220 kg, capacity 400 kg', angle),
  skip: kind('Carries loose goods.', 'skip "Skip": weight 350 kg, capacity 3 t', angle),
  'load cell': kind('Shows the pull.', 'load cell "Cell": weight 17 kg, capacity 25 t, length 350 mm', angle),
  other: kind('Anything else that hangs.', 'other "Tag lines": weight 2 kg, hangs from "Pump skid"', angle),
  point: {
    under: ['spreader', 'lifting beam'],
    group: 'gear',
    names: 'required',
    declares: 'point',
    help: 'A hole or lug of the beam, from its own centre.',
    example: 'point TW: at (-2.2, 0, 0.12) m',
    clauses: {
      at: { takes: 'point', measures: 'length', need: 'always', help: "From the beam's own centre." },
      capacity: { takes: 'amount', measures: 'weight', above: 0, help: 'Of this point.' },
    },
  },
  bridle: {
    under: ['gear'],
    group: 'gear',
    names: 'required',
    declares: 'bridle',
    help: 'One tag over several slings.',
    example: 'bridle "Four-leg set": items S1..S4, capacity 11.2 t, least angle 60 deg',
    clauses: {
      items: { takes: 'names', names: 'gear', need: 'always', help: 'The slings it is made of.' },
      capacity: { takes: 'amount', measures: 'weight', above: 0, need: 'always', help: 'Of all of it together.' },
      'least angle': {
        takes: 'amount',
        measures: 'angle',
        least: 0,
        need: 'always',
        help: 'Flattest leg its capacity holds for, from horizontal.',
      },
    },
  },
} as const satisfies Vocabulary;

/** Keywords that are gear: what may stand in a path. */
export const gearKinds = [
  'block',
  'hook',
  'ball',
  'sling',
  'spreader',
  'lifting beam',
  'shackle',
  'master link',
  'link',
  'swivel',
  'sheave',
  'turnbuckle',
  'chain hoist',
  'lever hoist',
  'eyebolt',
  'hoist ring',
  'clamp',
  'magnet',
  'vacuum lifter',
  'personnel platform',
  'skip',
  'load cell',
  'other',
] as const satisfies readonly (keyof typeof gear)[];
export type GearKind = (typeof gearKinds)[number];
