// The rig as it hangs: its sketch in three views, and the table of where its things stand.
import { known, type System } from '../../quantities/index.ts';
import { type Stand, unhung } from '../../results/hang/where.ts';
import type { Context } from './context.ts';
import { figureText, row } from './figures.ts';
import { openScene, sceneOf } from './rig-scene.ts';
import type { Row, Scene, Sketch, SketchView, Table } from './types.ts';
import { capital, quoted } from './written.ts';

/** Elevation, plan and oblique view; of a rig that is not worked out, its loads alone and why. */
export function rigSketch(context: Context): Sketch {
  const { results } = context.snapshot;
  const { stand, because } = results.hanging;
  const scene = stand ? sceneOf(context, stand, null) : openScene(unhung(results), because[0]?.what ?? '');
  return {
    kind: 'sketch',
    system: context.system,
    views: [
      viewOf('elevation', 'Elevation, seen along y', scene),
      viewOf('plan', 'Plan, seen from above, to the same scale', scene),
      viewOf('oblique', 'Oblique view, with what runs along y at half its length', scene),
    ],
    note: stand ? `${signs} ${heading(stand)}`.trim() : 'Drawn as stated, level, with nothing said of how it hangs.',
  };
}

const viewOf = (view: SketchView['view'], title: string, scene: Scene): SketchView => ({
  id: `rig-${view}`,
  view,
  width: 'whole',
  title,
  description: described(scene),
  scene,
});

/** The picture in words: why it has no figures, else everything that is named in it. */
export function described({ open, strokes, signs, boxes }: Scene): string {
  if (open) return open;
  const named = [...boxes, ...signs, ...strokes].flatMap(({ label }) =>
    label ? [[label.name, label.figures].filter(Boolean).join(': ')] : [],
  );
  return `${[...new Set(named)].join('; ')}.`;
}

export const signs =
  'Square: hook. Circle: pick. Dot: ring or beam point. Quartered circle: centre of gravity. Thick line: beam. Dashed line: slack. Line of dashes and dots: plumb line under a hook. Figures of legs: worst load and angle from horizontal, as in the tables.';

/** Hooks that have a place of their own hold the load in its heading; else it is drawn along its own x. */
const turns = ({ nodes }: Stand): boolean => {
  const hooks = nodes.filter(({ kind }) => kind === 'hook');
  return hooks.length < 2 || hooks.some(({ thing }) => !thing.item.clauses.has('at'));
};

const heading = (stand: Stand): string =>
  turns(stand)
    ? 'The load can turn under its hook; it is drawn with its x axis across the page.'
    : 'The load is drawn along the x and y in which the places of its hooks are given.';

/** Where everything hangs from the first hook, in whole millimetres; heights to the longer side. */
export function placesTable({ snapshot, system }: Context): readonly Table[] {
  const { stand } = snapshot.results.hanging;
  const hook = stand?.nodes.find(({ kind }) => kind === 'hook');
  if (!stand || !hook) return [];
  const nodes = (['hook', 'gear', 'point', 'pick'] as const).flatMap((wanted) =>
    stand.nodes
      .filter(({ kind }) => kind === wanted)
      .map(({ thing, kind, at }) => placeRow([thing.item.at], nameOf(thing, kind), at, system)),
  );
  const loads = stand.loads.flatMap(({ thing, centre, corners }): readonly Row[] => {
    const of = `of ${quoted(thing.name)}`;
    const depths = corners?.map((corner) => corner[2]);
    return [
      ...(centre ? [placeRow([thing.item.at], `Centre of gravity ${of}`, centre, system)] : []),
      ...(depths ? [depthRow([thing.item.at], `Highest point ${of}`, Math.max(...depths), system)] : []),
      ...(depths ? [depthRow([thing.item.at], `Lowest point ${of}`, Math.min(...depths), system)] : []),
    ];
  });
  return [
    {
      kind: 'table',
      caption: `Where things hang: along ${turns(stand) ? 'the load’s' : 'the hooks’'} x and y from the plumb line under ${quoted(hook.thing.name)}, and how far below it`,
      columns: [
        { title: 'What' },
        { title: 'Along x', figures: true },
        { title: 'Along y', figures: true },
        { title: 'Below', figures: true },
      ],
      rows: [...nodes, ...loads],
    },
  ];
}

type Node = Stand['nodes'][number];

const nameOf = (thing: Node['thing'], kind: Node['kind']): string => {
  if (kind === 'point') return `Point ${quoted(thing.name)} of ${quoted(thing.owner?.name ?? '')}`;
  return `${capital(kind === 'pick' ? kind : thing.item.keyword)} ${quoted(thing.name)}`;
};

const millimetre = 1000;
/** What lies a hair off a whole millimetre is rounding of the sums, not a length. */
const hair = 1e-6;

function placeRow(at: Row['at'], name: string, [x, y, z]: Node['at'], system: System): Row {
  const along = (value: number) => lengthText(Math.round(value * millimetre), system, 'either');
  return { ...row(at, name, along(x), along(y), below(z, system)), repeat: true };
}

const depthRow = (at: Row['at'], name: string, z: number, system: System): Row => ({
  ...row(at, name, '', '', below(z, system)),
  repeat: true,
});

const below = (z: number, system: System): string => lengthText(Math.ceil(-z * millimetre - hair), system, 'up');

const lengthText = (millimetres: number, system: System, worse: 'up' | 'either'): string =>
  figureText(known(millimetres / millimetre + 0, 'm'), system, worse);
