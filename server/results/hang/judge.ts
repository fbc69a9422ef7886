// Findings of the hang: what does not hang, tilts, goes slack, lies flat or is over what it may carry. Facts only.
import type { Vec3 } from '../../mechanics/index.ts';
import type { Item, Thing } from '../../plan/index.ts';
import type { Cause, Derived } from '../../quantities/derived.ts';
import { limitOn } from '../rules.ts';
import type { LegEnd, LegUse } from '../types.ts';
import { runsThrough, swings } from './clearance.ts';
import type { Figures, Pulls } from './figures.ts';
import type { HangInput } from './hang.ts';
import { type Built, g, pickPlace } from './model.ts';
import type { Edge } from './network.ts';
import type { Solved } from './solve.ts';

const reasons: Readonly<Record<string, string>> = {
  'bad-number': 'a figure is out of all range',
  'bad-path': 'a leg begins and ends on the same thing',
  'no-weight': 'nothing that hangs has a weight',
  'unsupported-body': 'it hangs from nothing',
  'legs-too-short': 'the legs are too short to reach',
  'too-soft': 'the slings would stretch by more than a tenth',
  'does-not-hang-as-drawn': 'it turns far from how it is drawn',
  'no-convergence': 'no position at rest was found',
};

const loadOf = (input: HangInput): Thing | undefined => input.loads[0]?.thing;
const legRelated = (legs: readonly LegUse[]) => legs.slice(1).map((leg) => ({ at: leg.item.at, says: 'leg' }));

export function unsolved(
  input: HangInput,
  built: Built,
  error: { readonly error: string; readonly name: string | null; readonly reason?: string },
): Cause {
  const load = loadOf(input);
  const edge = built.edges.find((one) => one.edge.key === error.name);
  const at = edge?.edge.legs[0]?.item.at ?? input.legs[0]?.item.at ?? load?.item.nameAt;
  const reason =
    error.reason ??
    `${reasons[error.error] ?? 'no position at rest was found'}${edge ? ` (the leg to ${endOf(edge.edge)})` : error.name ? ` (${error.name})` : ''}`;
  return input.notes.add(
    'hang-unsolved',
    at as never,
    { load: load?.name ?? 'the load', reason },
    `No position was found in which ${load?.name ?? 'the load'} hangs at rest.`,
    legRelated(input.legs),
  );
}

/** It would turn over: how far its centre stands over what it may, m, or, where that is not known, above the middle of its picks. */
export function unstable(input: HangInput, built: Built, over?: number): Cause {
  const load = loadOf(input) as Thing;
  const picks = [...built.places.keys()].filter((thing) => thing.kind === 'pick' && thing.load === load);
  const heights = picks.flatMap((pick) => pickPlace(pick, input.loads[0]?.layout as never)?.[2] ?? []);
  const centre = built.model.bodies[0]?.cog[2] ?? 0;
  const height = over ?? centre - heights.reduce((sum, z) => sum + z, 0) / Math.max(1, heights.length);
  return input.notes.add(
    'hang-unstable',
    load.item.nameAt,
    { load: load.name, height, above: over === undefined ? 'picks' : 'limit' },
    `${load.name} would turn over.`,
    picks.map((pick) => ({ at: pick.item.nameAt, says: pick.name })),
  );
}

/** What each run ends at; where several end at the same, by their slings too. */
function endsOf(edges: readonly { readonly edge: Edge }[]): readonly LegEnd[] {
  const names = edges.map(({ edge }) => endOf(edge));
  return edges.map(({ edge }, s) => {
    const alone = names.indexOf(names[s] as string) === names.lastIndexOf(names[s] as string);
    const sling = edge.items.find((thing) => thing.item.keyword === 'sling');
    return { to: names[s] as string, sling: alone ? null : (sling?.name ?? null) };
  });
}

const legName = (leg: LegUse): string =>
  `the leg to ${(leg.steps.findLast((step) => step.thing.kind === 'pick') ?? leg.steps.at(-1))?.thing.name ?? 'its pick'}`;
/** The pick a run ends at or lies under, else what it ends at. */
const endOf = ({ bottom, over }: Edge): string =>
  (bottom.kind === 'pick' ? bottom : (over.findLast((node) => node.kind === 'pick') ?? bottom)).thing.name;

/** Holds pulls, angles and tilt against the limits in force; each finding stands on its leg or load. */
export function judge(
  input: HangInput,
  built: Built,
  pulls: Pulls,
  figures: ReadonlyMap<Thing, Figures>,
  solved: Solved | null,
  stage: Item | null,
): void {
  const { notes, plan } = input;
  tilted(input, pulls, built, stage);
  const ends = endsOf(built.edges);
  const tight = ends.filter((_, s) => !pulls.edges[s]?.slack);
  built.edges.forEach(({ edge }, s) => {
    if (pulls.edges[s]?.slack)
      notes.add('leg-slack', (edge.legs[0] as LegUse).item.at, { leg: ends[s] as LegEnd, legs: tight }, '');
  });
  if (solved && solved.redundancy > 0 && built.edges.some((_, s) => pulls.edges[s]?.governs !== 'elastic')) {
    const { sharing } = solved;
    notes.add(
      'leg-share-uncertain',
      (input.legs[0] as LegUse).rigItem.at,
      {
        n: sharing?.shared.length ?? built.edges.length,
        hardest: sharing && {
          leg: ends[sharing.hardest] as LegEnd,
          slack: sharing.slack.map((s) => ends[s] as LegEnd),
        },
      },
      '',
      legRelated([input.legs[0] as LegUse, ...input.legs]),
    );
  }
  built.edges.forEach(({ edge }, s) => {
    const angle = flattestOf(pulls.edges[s]);
    const sling = edge.items.find((thing) => thing.item.keyword === 'sling');
    if (angle === null || angle === undefined || !sling) return;
    const limit = limitOn(plan, ['sling', 'gear'], 'angle', Math.PI / 4, 'least');
    if (angle < limit.value * (1 - 1e-9))
      notes.add(
        'angle-flat',
        (edge.legs[0] as LegUse).item.at,
        { leg: legName(edge.legs[0] as LegUse), angle, limit: limit.value, rule: limit.name },
        '',
        limit.at ? [{ at: limit.at, says: limit.name }] : [],
      );
  });
  overloaded(input, figures);
  if (solved) runsThrough(input, built, solved.rest);
  if (solved && !stage) swings(input, built, solved.rest);
}

/** The flattest angle of a run, over its tolerances where they make it flatter. */
const flattestOf = (edge: Pulls['edges'][number] | undefined): number | null =>
  edge?.angle === null || edge?.angle === undefined ? null : Math.min(edge.angle, edge.angleLeast ?? edge.angle);

function tilted({ notes, plan }: HangInput, pulls: Pulls, built: Built, stage: Item | null): void {
  if (stage?.clauses.has('incline')) return; // inclined on purpose
  const limit = limitOn(plan, ['load'], 'tilt', Math.PI / 36, 'most');
  built.bodies.forEach(({ thing }, b) => {
    const body = pulls.bodies[b];
    if (!body || thing.kind !== 'load' || !(body.tiltMost > limit.value * (1 + 1e-9))) return;
    notes.add(
      'hang-tilted',
      thing.item.nameAt,
      { load: thing.name, angle: body.tiltMost, end: lowEnd(body.up, built, b), limit: limit.value, rule: limit.name },
      '',
      limit.at ? [{ at: limit.at, says: limit.name }] : [],
    );
  });
}

/** The side that hangs low, by the pick that lies furthest that way, else by its axis. */
function lowEnd(up: Vec3 | null, built: Built, b: number): string {
  if (!up) return 'one';
  const picks = [...built.places].filter(
    ([thing, place]) => thing.kind === 'pick' && 'body' in place && place.body === b,
  );
  const low = picks
    .map(([thing, place]) => ({
      name: thing.name,
      along:
        'body' in place
          ? (built.model.bodies[b]?.points[place.point]?.at.reduce(
              (sum, x, i) => sum - x * (i < 2 ? (up[i] as number) : 0),
              0,
            ) ?? 0)
          : 0,
    }))
    .sort((x, y) => y.along - x.along);
  const [first, second] = low;
  if (first && second && first.along > second.along + 1e-9) return first.name;
  const axis = Math.abs(up[0]) >= Math.abs(up[1]) ? 0 : 1;
  return `${(up[axis] as number) > 0 ? '-' : '+'}${'xy'[axis]}`;
}

/** Items, picks and beam points above the share of their capacity that may be used. */
function overloaded({ notes, plan, legs }: HangInput, figures: ReadonlyMap<Thing, Figures>): void {
  const seen = new Set<Thing>();
  for (const leg of legs)
    for (const thing of leg.steps.flatMap(({ thing: step }) =>
      step.kind === 'point' && step.owner ? [step, step.owner] : [step],
    )) {
      const used = figures.get(thing)?.['capacity used'];
      if (seen.has(thing) || !used || used.value === null) continue;
      seen.add(thing);
      const keyword = thing.kind === 'point' ? (thing.owner as Thing).item.keyword : thing.item.keyword;
      const limit = limitOn(plan, thing.kind === 'pick' ? ['pick'] : [keyword, 'gear'], 'capacity used', 1, 'most');
      const ofPoint = [...figures].some(
        ([point, figure]) => point.owner === thing && point.kind === 'point' && figure['capacity used'] === used,
      );
      if (ofPoint || !(used.value > limit.value * (1 + 1e-9))) continue;
      const [load, capacity] = used.inputs.map(({ value }) => value) as [Derived, Derived];
      const related = [
        { at: thing.item.nameAt, says: thing.name },
        ...(limit.at ? [{ at: limit.at, says: limit.name }] : []),
      ];
      const name = thing.kind === 'point' ? `${(thing.owner as Thing).name}.${thing.name}` : thing.name;
      notes.add(
        'leg-overloaded',
        leg.item.at,
        {
          item: name,
          leg: legName(leg),
          tension: (load.value as number) * (load.unit === 'kg' ? g : 1),
          breakout: breakoutIn(load),
          capacity: (capacity.low as number) / (capacity.unit === 'kg' ? 1 : g),
          used: used.value,
          limit: limit.value,
          unit: tagUnit(thing),
        },
        '',
        related,
      );
    }
}

/** What of a load is there to break the load free, N. */
function breakoutIn({ inputs }: Derived): number {
  const of = (label: string) => inputs.find((input) => input.label === label)?.value;
  const angle = of('angle')?.value ?? null;
  return angle === null ? 0 : ((of('breakout')?.high ?? 0) * g) / Math.sin(angle);
}

/** The unit its capacity is written in. */
function tagUnit(thing: Thing): string {
  const at = thing.item.clauses.get('capacity')?.[0]?.valueAt;
  return at ? (/[A-Za-z][A-Za-z ]*$/.exec(at.row.text.slice(at.from, at.to).trim())?.[0] ?? '') : '';
}
