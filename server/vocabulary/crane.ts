// The words for cranes and their charts.
import type { Vocabulary } from './types.ts';

export const crane = {
  crane: {
    under: ['file'], group: 'crane', names: 'required', declares: 'crane', help: 'What lifts: its chart, set-up, deductions and positions.', example: 'crane "Yard crane 2": kind mobile, chart "Yard 2, 60 ft boom"',
    clauses: {
      kind: { takes: 'word', words: ['mobile', 'crawler', 'tower', 'loader', 'bridge', 'gantry', 'forklift', 'floating'], help: 'What kind of crane.' },
      capacity: { takes: 'amount', measures: 'weight', above: 0, help: 'Of a crane without a chart.' },
      chart: { takes: 'name', names: 'chart', repeat: true, help: 'The maker\'s chart it is read from.' },
      setup: { takes: 'text', help: 'How it stands: outriggers, counterweight, boom, jib.' },
      'chart wind': { takes: 'amount', measures: 'speed', above: 0, help: 'Wind the chart holds up to.' },
      'parts of line': { takes: 'amount', measures: 'whole', above: 0, help: 'Falls of rope at the block.' },
      'line pull': { takes: 'amount', measures: 'weight', above: 0, help: 'Of one fall.' },
      weight: { takes: 'amount', measures: 'weight', above: 0, help: 'Of the crane itself.' },
      centre: { takes: 'point', measures: 'length', help: 'Of the crane itself, from the middle of its base.' },
      base: { takes: 'size', sides: 2, measures: 'length', above: 0, help: 'Distance of its supports.' },
      'stands on': { takes: 'text', help: 'What it stands on.' },
      serial: { takes: 'text', help: 'Its number.' },
      inspected: { takes: 'date', help: 'Day of the last examination.' },
      interval: { takes: 'amount', measures: 'time', above: 0, help: 'How long it holds.' },
    },
  },
  deduct: {
    under: ['crane'], group: 'crane', names: 'required', declares: 'deduction', help: 'Weight at the tip that the chart still counts as load: jib, rope, idle hook.', example: 'deduct "Stowed jib": 1,100 lb',
    value: { takes: 'amount', measures: 'weight', least: 0, need: 'always', help: 'Its weight; `none` with `from` where the chart already has it.' }, clauses: {},
  },
  position: {
    under: ['crane'], group: 'crane', names: 'required', declares: 'position', help: 'Where the hook stands at one moment.', example: 'position "lift-off": radius 26 ft ± 1 ft, boom 60 ft',
    clauses: {
      radius: { takes: 'amount', measures: 'length', above: 0, need: 'always', help: 'Measured with the load hanging, with its tolerance.' },
      boom: { takes: 'amount', measures: 'length', above: 0, help: 'Length of the boom.' },
      'boom angle': { takes: 'amount', measures: 'angle', least: 0, help: 'From horizontal.' },
      chart: { takes: 'name', names: 'chart', help: 'Where the crane has several.' },
      stage: { takes: 'name', names: 'stage', help: 'The stage it belongs to; else all.' },
      deflection: { takes: 'amount', measures: 'length', least: 0, help: 'How far the radius grows under load.' },
      'tip height': { takes: 'amount', measures: 'length', above: 0, help: 'Of the boom tip over the ground.' },
      'lift height': { takes: 'amount', measures: 'length', least: 0, help: 'Of the load\'s lowest point over the ground.' },
    },
  },
  chart: {
    under: ['file'], group: 'crane', names: 'required', declares: 'chart', help: 'The maker\'s chart, typed row by row.', example: 'chart "Yard 2, 60 ft boom": setup "outriggers fully out"',
    clauses: {
      setup: { takes: 'text', need: 'always', help: 'What the chart is for.' },
      interpolation: { takes: 'word', words: ['allowed'], help: 'Only where the maker\'s notes say so.' },
    },
  },
  columns: { under: ['chart'], group: 'crane', names: 'none', once: true, help: 'Boom lengths or boom angles of the columns.', example: 'columns 50; 60 ft', value: { takes: 'row', measures: 'any', need: 'always', help: 'One a column.' }, clauses: {} },
  radius: { under: ['chart'], group: 'crane', names: 'none', help: 'One row: the radius, then a capacity a column.', example: 'radius 25 ft: 24,000; 23,500 lb', value: { takes: 'row', measures: 'weight', need: 'always', help: '`none` where there is no capacity.' }, clauses: {} },
} as const satisfies Vocabulary;
