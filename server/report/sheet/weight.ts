// The section "Weight": what each weight rests on, which figure governs, and what the load is built up from.

import { isListed, textOf } from '../../plan/index.ts';
import type { Item } from '../../plan/types.ts';
import { type Derived, known, share as percent } from '../../quantities/index.ts';
import type { Body, Candidate, LoadResult } from '../../results/types.ts';
import { type ShapeName, shapes } from '../../vocabulary/index.ts';
import { type Context, section } from './context.ts';
import { doubt } from './doubt.ts';
import { figure, notKnown, row } from './figures.ts';
import type { Block, Cell, Row, Section, Table } from './types.ts';
import { buildUpBars } from './weight-bars.ts';
import { quoted, slice, valueText } from './written.ts';

export const weightSection = (context: Context): readonly Section[] =>
  section(
    'weight',
    'Weight',
    context.snapshot.results.loads.flatMap((load) => blocks(context, load)),
  );

function blocks(context: Context, load: LoadResult): readonly Block[] {
  const parts = load.body.bodies.length
    ? [buildUp(context, load), ...buildUpBars(context, load), ...doubt(context, load)]
    : [];
  return [evidence(context, load), ...parts];
}

/** Each candidate with what is added for doubt; the one that counts says so. */
function evidence({ system }: Context, load: LoadResult): Table {
  const rows = load.candidates.map((candidate) =>
    row(
      [candidate.at],
      word[candidate.kind],
      candidate.evidence ? `by ${candidate.evidence}` : 'nothing named',
      figure(candidate.weight, system),
      candidate.allowanceFrom ? `${percent(candidate.allowance)}: ${candidate.allowanceFrom}` : notKnown,
      figure(candidate.total, system),
      candidate === load.governing ? 'governs' : '',
    ),
  );
  const total: Row = {
    ...row([load.thing.item.at], 'Weight of the load', governs(load), '', '', figure(load.weight, system), ''),
    total: true,
  };
  return {
    kind: 'table',
    caption: `${quoted(load.thing.name)}: what the weight rests on`,
    columns: [
      { title: 'Weight' },
      { title: 'Rests on' },
      { title: 'Figure', figures: true },
      { title: 'Added for doubt' },
      { title: 'With that', figures: true },
      { title: 'Counts' },
    ],
    rows: [...rows, total],
  };
}

const word: Readonly<Record<Candidate['kind'], string>> = {
  calculated: 'Calculated',
  stated: 'Stated',
  measured: 'Measured',
};

const governs = ({ governing }: LoadResult) =>
  governing ? `${governing.kind} weight, the heaviest after what is added` : 'no figure is known';

function buildUp(context: Context, load: LoadResult): Table {
  const total: Row = {
    ...row([load.thing.item.at], 'All parts', '', '', figure(load.body.weight, context.system), '', ''),
    total: true,
    repeat: true,
  };
  return {
    kind: 'table',
    caption: `${quoted(load.thing.name)}: what it is built up from`,
    columns: [
      { title: 'Part' },
      { title: 'Count', figures: true },
      { title: 'Each', figures: true },
      { title: 'Weight', figures: true },
      { title: 'Share', figures: true },
      { title: 'Worked out from' },
    ],
    rows: [...load.body.bodies.flatMap((body) => bodyRows(context, body, load.body.weight, 0)), total],
  };
}

function bodyRows(context: Context, body: Body, whole: Derived, depth: number): readonly Row[] {
  const { system } = context;
  const { working } = body;
  const own: Row = {
    ...row(
      [body.thing.item.at],
      body.thing.name,
      working ? (working.count > 0 ? String(working.count) : notKnown) : '',
      working ? figure(working.each, system) : '',
      figure(body.weight, system),
      share(body.weight, whole, context),
      working ? origin(body, context) : 'what stands below it',
    ),
    depth,
  };
  return [own, ...body.bodies.flatMap((inner) => bodyRows(context, inner, whole, depth + 1))];
}

/** The shape as written, or the row of a list, and the density with the short name of its source. */
function origin({ thing: { item }, working }: Body, { system, sources }: Context): string {
  if (isListed(item)) return textOf(item, 'from') ?? '';
  const density = working?.density;
  const written = shapeText(item, working?.shape ?? '');
  return density
    ? `${written}; ${[sources.nameOf(density.source), figure(density, system, 'either').text].filter(Boolean).join(' ')}`
    : written;
}

/** `plate 12 ft x 4 ft x 1/2 in`; `tube, outside 30 in, wall 1 in, length 3 ft`. */
function shapeText(item: Item, shape: string): string {
  const words =
    shape in shapes ? [...Object.keys(shapes[shape as ShapeName].clauses), 'start', 'end', 'along', 'bend radius'] : [];
  const own = item.clauses.get(shape)?.[0];
  const size = own && own.valueAt.from !== own.keywordAt.from ? slice(own.valueAt) : '';
  const sizes = words.flatMap((keyword) =>
    (item.clauses.get(keyword) ?? []).map((use) => `${keyword} ${valueText(use)}`),
  );
  return [[shape, size].filter(Boolean).join(' '), ...sizes].join(', ');
}

/** Share of what all parts weigh together; not known as soon as either is. */
function share(weight: Derived, whole: Derived, { system }: Context): Cell {
  if (weight.value === null || whole.value === null || whole.value <= 0) return notKnown;
  return figure(known(weight.value / whole.value, '1'), system, 'either');
}
