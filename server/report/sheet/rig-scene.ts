// A rig's things in space as the signs of a sketch, each with its words and the statements it stands for.
import type { Thing } from '../../plan/index.ts';
import { write } from '../../quantities/index.ts';
import type { LoadStand, Stand } from '../../results/hang/where.ts';
import type { Result } from '../../results/types.ts';
import type { Context } from './context.ts';
import { rounding, styled, unitAt, worseEnd } from './figures.ts';
import type { BoxOutline, Label, Scene, Sign, Stroke } from './types.ts';

/** With the figures of one stage; null: of none. */
export function sceneOf(context: Context, stand: Stand, stage: string | null): Scene {
  const figures = new Figures(context, stage);
  return {
    strokes: [...plumbLines(stand), ...stand.runs.map((run) => runStroke(run, figures)), ...beams(stand, figures)],
    signs: [
      ...nodeSigns(stand, figures),
      ...stand.loads.flatMap((load) => centreSign(load, figures.outOfLevel(load.thing))),
    ],
    boxes: stand.loads.flatMap((load) => boxOf(load, figures.outOfLevel(load.thing))),
    axes: stand.loads[0]?.axes ?? null,
    open: '',
  };
}

/** What is known of a rig that is not worked out: no figures, and why. */
export const openScene = (stand: Stand, because: string): Scene => ({
  strokes: [],
  signs: [
    ...stand.nodes.map(
      ({ thing, at }): Sign => ({ is: 'pick', place: at, label: plain(thing.name), at: [thing.item.at] }),
    ),
    ...stand.loads.flatMap((load) => centreSign(load, '')),
  ],
  boxes: stand.loads.flatMap((load) => boxOf(load, '')),
  axes: stand.loads[0]?.axes ?? null,
  open: ['Not worked out how it hangs', because].filter(Boolean).join(': '),
});

const plain = (name: string): Label => ({ name, figures: '' });

/** What hangs on a run: the sling, or the first item where there is none; the ring at its lower end where it has no item. */
const mainOf = ({ items, bottom }: Stand['runs'][number]['edge']): Thing =>
  items.find(({ item }) => item.keyword === 'sling') ?? items[0] ?? bottom.thing;

function runStroke({ edge, path, slack }: Stand['runs'][number], figures: Figures): Stroke {
  const main = mainOf(edge);
  const leg = edge.bottom.kind !== 'gear' || main.item.keyword === 'sling';
  const own = leg ? figures.ofLeg(main) : plain(main.name);
  const label = slack ? { ...own, name: `${main.name} slack`, figures: own.figures && `at worst ${own.figures}` } : own;
  return {
    is: slack ? 'slack' : 'leg',
    path,
    label: main === edge.bottom.thing ? null : label, // the ring itself has the name
    at: [...edge.legs.map(({ item }) => item.at), main.item.at],
  };
}

const beams = ({ beams }: Stand, figures: Figures): readonly Stroke[] =>
  beams.map(({ thing, outline }) => ({
    is: 'beam',
    path: outline,
    ...(outline.length > 2 && { closed: true }),
    label: { name: thing.name, figures: figures.compression(thing) },
    at: [thing.item.at],
  }));

/** From each hook down to the lowest thing that hangs. */
function plumbLines({ nodes, loads }: Stand): readonly Stroke[] {
  const heights = [
    ...nodes.map(({ at }) => at[2]),
    ...loads.flatMap(({ corners, centre }) => [...(corners ?? []), ...(centre ? [centre] : [])].map(([, , z]) => z)),
  ];
  const lowest = Math.min(...heights);
  return nodes.flatMap(({ thing, kind, at }): readonly Stroke[] =>
    kind === 'hook' ? [{ is: 'plumb', path: [at, [at[0], at[1], lowest]], label: null, at: [thing.item.at] }] : [],
  );
}

function nodeSigns({ nodes }: Stand, figures: Figures): readonly Sign[] {
  const is = { hook: 'hook', gear: 'ring', point: 'point', pick: 'pick' } as const;
  return nodes.map(({ thing, kind, at }) => ({
    is: is[kind],
    place: at,
    label: kind === 'hook' ? figures.ofHook(thing) : plain(thing.name),
    at: [thing.item.at],
  }));
}

/** Where the load has no outline, its name stands at its centre. */
function centreSign({ thing, centre, corners }: LoadStand, outOfLevel: string): readonly Sign[] {
  const label: Label = corners ? plain('centre') : { name: `centre of ${thing.name}`, figures: outOfLevel };
  return centre ? [{ is: 'centre', place: centre, label, at: [thing.item.at] }] : [];
}

const boxOf = ({ thing, corners }: LoadStand, outOfLevel: string): readonly BoxOutline[] =>
  corners ? [{ corners, label: { name: thing.name, figures: outOfLevel }, at: [thing.item.at] }] : [];

/** Words of the results of things: the worse end of each, rounded to its worse side, in the unit of the tag. */
class Figures {
  constructor(
    private readonly context: Context,
    private readonly stage: string | null,
  ) {}

  /** Worst load and angle; over, where it takes more than it may. */
  ofLeg(thing: Thing): Label {
    const figures = [this.load(thing), this.text(thing, 'angle')].filter(Boolean).join(', ');
    const used = this.find(thing, 'capacity used')?.value;
    const over = used && used.value !== null && (used.high ?? used.value) > 1;
    return over ? { name: thing.name, figures: `${figures}, over`, over: true } : { name: thing.name, figures };
  }

  ofHook = (thing: Thing): Label => ({ name: thing.name, figures: this.load(thing) });

  compression(thing: Thing): string {
    const text = this.text(thing, 'compression');
    return text && !text.startsWith('0 ') ? `${text} compression` : '';
  }

  /** Not in a stage, which says itself how the load lies. */
  outOfLevel(load: Thing): string {
    if (this.stage !== null) return '';
    const text = this.text(load, 'tilt');
    return text && `${text} out of level`;
  }

  private load(thing: Thing): string {
    const { snapshot } = this.context;
    const tag = snapshot.results.find(thing.item.keyword, thing.name, 'capacity');
    return this.text(thing, 'load', (tag && unitAt(tag.value)) ?? undefined) || 'not known';
  }

  private text(thing: Thing, result: string, unit?: string): string {
    const found = this.find(thing, result);
    if (!found || found.value.value === null) return '';
    const { value, low, high, unit: of } = found.value;
    const worse = worseEnd(found.subject.kind, result);
    const end = { up: high ?? value, down: low ?? value, either: value }[worse];
    return write(end, of, styled(this.context.system, rounding[worse], unit));
  }

  private find(thing: Thing, result: string): Result | undefined {
    return this.context.snapshot.results.find(thing.item.keyword, thing.name, result, this.stage);
  }
}
