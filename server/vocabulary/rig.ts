// The words for how the load hangs: rigs, their legs, and stages of the lift.
import type { Vocabulary } from './types.ts';

export const rig = {
  rig: {
    under: ['file'],
    group: 'rig',
    names: 'optional',
    declares: 'rig',
    help: 'How the load hangs: one leg a line, from the hook down.',
    example: 'rig: crane "Yard crane 2"',
    clauses: { crane: { takes: 'name', names: 'crane', help: 'The crane it hangs on.' } },
  },
  leg: {
    under: ['rig'],
    group: 'rig',
    names: 'none',
    help: 'One load path from the hook down to a pick or beam point.',
    example: 'leg "Main block" > S1 > K1 > NW',
    value: { takes: 'path', names: 'anything', need: 'always', help: 'From top to bottom, joined by >.' },
    clauses: {
      hitch: { takes: 'word', words: ['vertical', 'choker', 'basket', 'doubled'], help: 'How the sling takes hold.' },
      'choke angle': { takes: 'amount', measures: 'angle', least: 0, help: 'Angle the sling makes where it chokes.' },
      around: { takes: 'amount', measures: 'length', above: 0, help: 'Diameter of what a choker goes round.' },
      wrap: { takes: 'amount', measures: 'length', least: 0, help: 'Length of sling that lies on the load.' },
      'bend diameter': {
        takes: 'amount',
        measures: 'length',
        above: 0,
        help: 'Diameter of what the sling bends over.',
      },
      'edge protection': { takes: 'text', help: 'What lies between sling and edge.' },
      runs: {
        takes: 'word',
        words: ['free', 'held'],
        help: 'free: one tension on both sides; held: its middle stays in the middle.',
      },
      direct: { takes: 'text', help: 'Why an eye sits on the lug without a shackle.' },
    },
  },
  stage: {
    under: ['file'],
    group: 'rig',
    names: 'required',
    declares: 'stage',
    help: 'A moment of the lift in another attitude, or with something let go.',
    example: 'stage "Upending": incline x 0 deg to 90 deg',
    clauses: {
      incline: { takes: 'tilt', measures: 'angle', help: 'How far its axis points above horizontal; `to` sweeps.' },
      without: {
        takes: 'names',
        names: 'anything',
        help: 'Rigs, with their gear, or parts that are not there in this stage.',
      },
    },
  },
} as const satisfies Vocabulary;
