// The section "Centre of gravity": where it lies in the load's own axes, between which ends, and what that rests on.
import type { LoadResult } from '../../results/types.ts';
import { type Context, section } from './context.ts';
import { figure, row } from './figures.ts';
import type { Block, Section, Table } from './types.ts';
import { clauseText, quoted } from './written.ts';

export const centreSection = (context: Context): readonly Section[] =>
  section(
    'centre',
    'Centre of gravity',
    context.snapshot.results.loads.flatMap((load) => blocks(context, load)),
  );

function blocks(context: Context, load: LoadResult): readonly Block[] {
  const datum = clauseText(load.thing.item, 'datum');
  const text = datum
    ? `${quoted(load.thing.name)} is measured from: ${datum}. x along, y across, z up.`
    : `${quoted(load.thing.name)}: the plan does not say where its axes begin. x along, y across, z up.`;
  return [{ kind: 'paragraph', look: 'plain', text, at: [load.thing.item.at] }, table(context, load)];
}

function table({ system, snapshot, sources }: Context, load: LoadResult): Table {
  const rows = load.cog.map((value, i) => {
    const axis = 'xyz'.charAt(i);
    const at = snapshot.results.find('load', load.thing.name, `cog ${axis}`)?.at ?? load.thing.item.at;
    return row([at], axis, figure(value, system, 'either'), sources.nameOf(value.source), value.assumptions.join(' '));
  });
  return {
    kind: 'table',
    caption: `${quoted(load.thing.name)}: centre of gravity (${from[load.cogFrom]})`,
    columns: [{ title: 'Along' }, { title: 'Distance', figures: true }, { title: 'Rests on' }, { title: 'Assumed' }],
    rows,
  };
}

const from: Readonly<Record<LoadResult['cogFrom'], string>> = {
  weighed: 'from the weighing',
  stated: 'as stated',
  calculated: 'from the parts',
  mixed: 'each axis from the best evidence',
};
