// The words for ground, weather and surroundings.
import type { Vocabulary } from './types.ts';

export const site = {
  ground: {
    under: ['file'],
    group: 'site',
    names: 'optional',
    declares: 'ground',
    help: 'What the crane stands on.',
    example: 'ground "Hard standing": bearing 150 kPa',
    clauses: {
      bearing: { takes: 'amount', measures: 'pressure', above: 0, help: 'Pressure it may take, with its source.' },
      slope: { takes: 'amount', measures: 'percent', help: 'Out of level.' },
    },
  },
  weather: {
    under: ['file'],
    group: 'site',
    names: 'none',
    once: true,
    help: 'Wind and temperature.',
    example: 'weather: wind limit 9 m/s',
    clauses: {
      'wind limit': { takes: 'amount', measures: 'speed', above: 0, help: 'Gusts at the boom tip.' },
      'sail area': { takes: 'amount', measures: 'area', above: 0, help: 'Of the load.' },
      'shape coefficient': { takes: 'amount', measures: 'number', above: 0, help: 'Of the load in the wind.' },
      temperature: { takes: 'amount', measures: 'temperature', help: 'Of the gear.' },
    },
  },
  surroundings: {
    under: ['file'],
    group: 'site',
    names: 'none',
    once: true,
    help: 'What stands near.',
    example: 'surroundings: exclusion 10 m',
    clauses: { exclusion: { takes: 'amount', measures: 'length', above: 0, help: 'Distance to keep people out.' } },
  },
  'power line': {
    under: ['surroundings'],
    group: 'site',
    names: 'required',
    declares: 'obstruction',
    help: 'A power line. Treat it as live.',
    example: 'power line "North line": distance 24 m, voltage 138 kV',
    clauses: {
      distance: { takes: 'amount', measures: 'length', above: 0, need: 'always', help: "From the crane's centre." },
      height: { takes: 'amount', measures: 'length', above: 0, help: 'Over the ground.' },
      voltage: { takes: 'amount', measures: 'voltage', above: 0, help: 'Named by its owner.' },
    },
  },
  obstruction: {
    under: ['surroundings'],
    group: 'site',
    names: 'required',
    declares: 'obstruction',
    help: 'Something in the way.',
    example: 'obstruction "Pipe rack": distance 6 m, height 9 m',
    clauses: {
      distance: { takes: 'amount', measures: 'length', above: 0, need: 'always', help: "From the crane's centre." },
      height: { takes: 'amount', measures: 'length', above: 0, help: 'Over the ground.' },
      voltage: { takes: 'amount', measures: 'voltage', above: 0, help: 'If live.' },
    },
  },
  'set-down': {
    under: ['surroundings'],
    group: 'site',
    names: 'required',
    declares: 'set-down',
    help: 'Where it lands, and when the gear may come off.',
    example: 'set-down "Trailer": capacity 20 t, release "lashed, person in charge says so"',
    clauses: {
      capacity: { takes: 'amount', measures: 'weight', above: 0, help: 'Of what receives it.' },
      bearing: { takes: 'amount', measures: 'pressure', above: 0, help: 'Of the ground there.' },
      release: { takes: 'text', help: 'What must be true before the gear comes off.' },
    },
  },
} as const satisfies Vocabulary;
