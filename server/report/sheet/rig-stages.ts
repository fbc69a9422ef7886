// The stages of a lift: an elevation of each, side by side, and of an upending the pull of each hook along the way.
import { write } from '../../quantities/index.ts';
import type { HangingStage } from '../../results/hang/hang.ts';
import type { Context } from './context.ts';
import { notKnown, row, styled, unitAt } from './figures.ts';
import { described, signs } from './rig.ts';
import { openScene, sceneOf } from './rig-scene.ts';
import type { Block, Curve, Sketch, SketchView, Table, Tick } from './types.ts';
import { quoted } from './written.ts';

export function stageBlocks(context: Context): readonly Block[] {
  const { stages } = context.snapshot.results.hanging;
  if (!stages.length) return [];
  const views = stages.flatMap((stage, i) => stageViews(context, stage, `stage-${i + 1}`));
  const sketch: Sketch = {
    kind: 'sketch',
    system: context.system,
    views,
    note: `${signs} Of a stage that goes from one incline to another, both ends are drawn, with the worst figures of the whole way.`,
  };
  return [sketch, ...stages.flatMap((stage, i) => upending(context, stage, `stage-${i + 1}-curve`))];
}

function stageViews(context: Context, stage: HangingStage, id: string): readonly SketchView[] {
  const name = `Stage ${quoted(stage.name)}`;
  const view = (n: number, title: string, scene: SketchView['scene']): SketchView => ({
    id: n ? `${id}-${n + 1}` : id,
    view: 'elevation',
    width: 'half',
    title,
    description: described(scene),
    scene,
  });
  if (!stage.stands.length)
    return [view(0, name, openScene({ nodes: [], runs: [], beams: [], loads: [] }, stage.because[0]?.what ?? ''))];
  return stage.stands.map(({ angle, stand }, n) => {
    const title = angle === null ? `${name}, as drawn` : `${name}, ${inclineText(context, stage, angle)}`;
    return view(n, title, sceneOf(context, stand, stage.name));
  });
}

const degrees = ({ system }: Context, angle: number): string => write(angle, 'rad', styled(system, 'near'));

function inclineText(context: Context, { item }: HangingStage, angle: number): string {
  const value = item.clauses.get('incline')?.[0]?.value;
  const axis = value?.kind === 'tilt' ? value.axis : 'x';
  if (Math.abs(angle) < 1e-9) return `${axis} axis level`;
  return `${axis} axis ${degrees(context, Math.abs(angle))} ${angle < 0 ? 'below' : 'above'} horizontal`;
}

/** How the pull goes over from one hook to the other on the way from one incline to another. */
function upending(context: Context, stage: HangingStage, id: string): readonly [Curve, Table] | readonly [] {
  const { curve, worst } = stage;
  const hooks = worst.map(({ hook }) => hook);
  if (!curve || !hooks.length) return [];
  const [from, to] = [curve[0]?.angle ?? 0, curve.at(-1)?.angle ?? 0];
  const most = Math.max(...worst.map(({ pull }) => pull));
  const tag = context.snapshot.results.find(hooks[0]?.item.keyword ?? '', hooks[0]?.name ?? '', 'capacity');
  const unit = (tag && unitAt(tag.value)) ?? undefined;
  const pull = (newton: number) => write(newton, 'N', styled(context.system, 'up', unit));
  const across = (angle: number) => (to === from ? 0 : (angle - from) / (to - from));
  const title = `Stage ${quoted(stage.name)}: pull of each hook on what hangs`;
  const ends = worst.map(
    ({ hook, angle, pull: newton }) => `${hook.name} at most ${pull(newton)}, at ${degrees(context, angle)}`,
  );
  return [
    {
      kind: 'curve',
      id,
      title,
      description: `${ends.join('; ')}.`,
      across: ticks(4).map(({ at }): Tick => ({ at, text: degrees(context, from + at * (to - from)) })),
      up: [
        { at: 0, text: pull(0) },
        { at: 0.5, text: pull(most / 2) },
        { at: 1, text: pull(most) },
      ],
      acrossTitle: 'Incline',
      upTitle: 'Pull',
      lines: hooks.map((hook, k) => ({
        label: hook.name,
        points: curve.map(
          ({ angle, hooks: pulls }) => pulls && ([across(angle), (pulls[k] as number) / most] as const),
        ),
        at: [hook.item.at],
      })),
    },
    {
      kind: 'table',
      caption: `${title}, the worst of what the centre’s tolerance leaves`,
      columns: [{ title: 'Incline' }, ...hooks.map((hook) => ({ title: hook.name, figures: true as const }))],
      rows: curve.map(({ angle, hooks: pulls }) => ({
        ...row(
          [stage.item.at],
          degrees(context, angle),
          ...hooks.map((_, k) => (pulls ? pull(pulls[k] as number) : notKnown)),
        ),
        repeat: true as const,
      })),
    },
  ];
}

const ticks = (n: number): readonly { readonly at: number }[] =>
  Array.from({ length: n + 1 }, (_, i) => ({ at: i / n }));
