// Units that fit the figure before the caret: those of what the clause measures, in the plan's system and as this file writes them.

import { joined, unitsFor } from '../../quantities/index.ts';
import type { Tree } from '../../syntax/types.ts';
import type { Measure } from '../../vocabulary/index.ts';
import type { Completion } from '../types.ts';
import { compareMeasure } from './compare.ts';
import { type Asked, begun, completion } from './types.ts';

export function units(asked: Asked): readonly Completion[] {
  const { slot, clause, s } = asked;
  const compared = slot.type === 'compare' || slot.type === 'trigger' ? compareMeasure(asked) : null;
  const measure: Measure =
    compared ?? (slot.clause === null && slot.block === 'columns' ? 'length' : (clause?.measures ?? 'any'));
  const fitting =
    measure === 'any'
      ? common
      : [
          ...unitsFor(measure),
          ...(/ [*/] /.test(begun(asked).text) || / [*/] /.test(asked.row.text.slice(asked.offset)) ? common : []),
        ];
  const used = usedUnits(s.tree);
  const metric = s.plan.units === 'metric';
  const score = (unit: string) => (used.get(unit) ?? 0) * 2 + (customary.test(unit) === metric ? 0 : 1);
  const ordered = [...new Set(fitting)]
    .map((unit, i) => ({ unit, i }))
    .sort((a, b) => score(b.unit) - score(a.unit) || a.i - b.i);
  const joiner =
    slot.type === 'size' || slot.type === 'size or amount' || slot.type === 'size or nothing'
      ? [completion(asked, 'word', 'x', { detail: 'the next side' })]
      : [];
  return [
    ...ordered.map(({ unit }) => completion(asked, 'unit', unit, { detail: joined(unit) ? '' : unit })),
    ...joiner,
  ];
}

/** Where anything may be measured: `let`, chart columns, and products such as the pressure of a jack times the area of its ram. */
const common = [
  'ft',
  'm',
  'in',
  'mm',
  'lb',
  'kg',
  't',
  'short ton',
  'kN',
  'lbf',
  'deg',
  '%',
  'ft2',
  'm2',
  'cm2',
  'in2',
  'ft3',
  'm3',
  'lb/ft',
  'kg/m',
  'kg/m3',
  'lb/ft3',
  'psf',
  'bar',
  'MPa',
  'psi',
  'kPa',
  'mph',
  'm/s',
];
const customary =
  /(?:^|\/)(?:in|ft|yd)[23]?(?:$|\/)|(?:^|\/)(?:bbl|lb|oz|kip|lbf|kipf|psi|psf|ksi|mph|degF)(?:$|\/)|gal|short ton|long ton/;

const kept = new WeakMap<Tree, ReadonlyMap<string, number>>();

/** How often each unit stands in a file. */
function usedUnits(tree: Tree): ReadonlyMap<string, number> {
  let counts = kept.get(tree) as Map<string, number> | undefined;
  if (counts) return counts;
  counts = new Map();
  for (const line of tree.lines) {
    for (const [, unit] of (line?.kind === 'statement' || line?.kind === 'clauses' ? line.text : '').matchAll(
      /\d\)?\s*((?:US gal|imperial gal|short ton|long ton|[A-Za-z%][\w%]*)(?:\/[A-Za-z]\w*)?)/g,
    )) {
      if (unit && joined(unit)) counts.set(unit, (counts.get(unit) ?? 0) + 1);
    }
  }
  kept.set(tree, counts);
  return counts;
}
