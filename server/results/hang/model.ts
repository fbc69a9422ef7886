// Builds the model that statics solves from loads, beams and the network of legs; and says what stands in the way.
import type { HangModel, NodeRef } from '../../mechanics/hang/index.ts';
import { apply, still, type Vec3 } from '../../mechanics/index.ts';
import type { Item, Thing } from '../../plan/index.ts';
import { type Cause, unique } from '../../quantities/derived.ts';
import type { GearTable } from '../gear.ts';
import { because } from '../notes.ts';
import type { Layout } from '../place.ts';
import type { GearUse, LegUse, LoadResult } from '../types.ts';
import type { HungGear } from './hung-gear.ts';
import { type NoRun, type Run, runOf } from './lengths.ts';
import type { Edge, Network, Node } from './network.ts';

export const g = 9.80665;
const rigid = 1e5; // times all weight: what is taken for a run without any sling

export interface Built {
  readonly model: HangModel;
  readonly edges: readonly { readonly edge: Edge; readonly run: Run; readonly sling: number }[];
  readonly bodies: readonly { readonly thing: Thing; readonly half: Vec3 | null }[]; // half widths of the box its centre lies in
  readonly hooks: readonly Thing[];
  /** Where each node sits in the model; a ring without any run above it sits in its hook. */
  readonly places: ReadonlyMap<Thing, NodeRef>;
  /** What hangs right in a hook, on its way down to a ring that sits there, with the number of the hook. */
  readonly inHooks: readonly { readonly thing: Thing; readonly hook: number }[];
  readonly assumedStiffness: boolean;
  /** Gear that hangs beside the legs, kg: what each hook carries by itself, and what hangs below the hooks. */
  readonly beside: { readonly hooks: readonly number[]; readonly below: number };
  /** Its hooks hang as particles on long plumb lines, which are the last slings of the model. */
  readonly onLines?: true;
}

export interface Loads {
  readonly loads: readonly (LoadResult & { readonly layout: Layout })[];
  readonly beams: (thing: Thing) => readonly Item[]; // points
  readonly uses: ReadonlyMap<Thing, GearUse>;
  readonly table: GearTable;
  readonly hung: HungGear;
}

/** Why there is no model; `short`: a leg that nothing is left for, and why. */
export interface Unbuilt {
  readonly because: readonly Cause[];
  readonly short?: { readonly leg: LegUse; readonly reason: string };
}

/** The model, or why there is none. Gear weighs what it does at the heavy end of its tolerance. Hooks stand at the origin, or `at` their places. */
export function build(net: Network, from: Loads): Built | Unbuilt {
  const { loads } = from;
  const hung = loads.reduce((sum, load) => sum + (load.weight.value ?? 0) * g, 0);
  const runs = runsOf(net, from, hung);
  const causes: Cause[] = runs.flatMap(({ edge, run }) =>
    'missing' in run ? [because(`${run.missing} has no ${run.what}.`, edge.legs[0]?.item.at as never)] : [],
  );
  const short = runs.find((one): one is { edge: Edge; run: NoRun } => 'missing' in one.run && one.run.short === true);
  if (short) {
    const reason = `${short.run.missing} has no ${short.run.what}`;
    return { because: unique(causes), short: { leg: short.edge.legs[0] as LegUse, reason } };
  }
  const used = new Set(net.nodes.map((node) => node.thing));
  const lifted = loads.filter((load) => [...used].some((thing) => thing.kind === 'pick' && thing.load === load.thing));
  for (const load of lifted) {
    const factor = load.thing.item.clauses.get('dynamic factor')?.[0];
    if (factor && factor.value?.kind !== 'quantity')
      causes.push(because(`The dynamic factor of ${load.thing.name} is not known.`, factor.at));
  }
  causes.push(...from.hung.because);
  for (const load of lifted) causes.push(...load.weight.because, ...load.cog.flatMap((axis) => axis.because));
  if (causes.length) return { because: unique(causes) };
  const made: Bodies = { bodies: [], info: [], places: new Map(), causes };
  for (const load of lifted) addLoad(made, load, net);
  for (const beam of beamsOf(net.nodes)) addBeam(made, beam, net, from);
  for (const node of net.nodes)
    if ((node.kind === 'pick' || node.kind === 'point') && !made.places.has(node.thing))
      causes.push(because(`${node.thing.name} belongs to nothing that hangs.`, node.thing.item.nameAt));
  if (causes.length) return { because: unique(causes) };
  return assemble(net, runs as readonly { edge: Edge; run: Run }[], made.bodies, made.info, made.places, from, hung);
}

function runsOf(
  net: Network,
  { loads, uses, table }: Loads,
  hung: number,
): readonly { edge: Edge; run: Run | NoRun }[] {
  const apart = (a: Thing, b: Thing): number | null => {
    const layout = a.load === b.load ? loads.find((load) => load.thing === a.load)?.layout : undefined;
    const [from, to] = [layout ? pickPlace(a, layout) : null, layout ? pickPlace(b, layout) : null];
    return from && to ? Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) : null;
  };
  return net.edges.map((edge) => ({ edge, run: runOf(edge, { table, uses, hung, apart }) }));
}

/** Bodies as they are gathered, with where their points are found and what is not known of them. */
interface Bodies {
  readonly bodies: HangModel['bodies'][number][];
  readonly info: Built['bodies'][number][];
  readonly places: Map<Thing, NodeRef>;
  readonly causes: Cause[];
}

function addLoad({ bodies, info, places, causes }: Bodies, load: Loads['loads'][number], net: Network): void {
  const half = load.cog.map((axis) => ((axis.high as number) - (axis.low as number)) / 2) as unknown as Vec3;
  const points: { name: string; at: Vec3 }[] = [];
  for (const node of net.nodes)
    if (node.kind === 'pick' && node.thing.load === load.thing) {
      const at = pickPlace(node.thing, load.layout);
      if (!at) causes.push(because(`${node.thing.name} has no place that is known.`, node.thing.item.at));
      else places.set(node.thing, { body: bodies.length, point: points.push({ name: node.thing.name, at }) - 1 });
    }
  bodies.push({
    name: load.thing.name,
    weight: (load.weight.value as number) * dynamic(load.thing) * g,
    cog: load.cog.map((axis) => axis.value as number) as unknown as Vec3,
    points,
  });
  info.push({ thing: load.thing, half: half.some((x) => x > 0) ? half : null });
}

function addBeam({ bodies, info, places, causes }: Bodies, beam: Thing, net: Network, { uses, beams }: Loads): void {
  const use = uses.get(beam);
  if (!use || use.weight.value === null) {
    causes.push(...(use?.weight.because ?? [because(`${beam.name} has no weight.`, beam.item.at)]));
    return;
  }
  const points: { name: string; at: Vec3 }[] = [];
  const own = beams(beam);
  for (const node of net.nodes)
    if (node.kind === 'point' && node.thing.owner === beam) {
      const at = pointAt(own.find((item) => item.names.some((name) => name === node.thing.name)) ?? node.thing.item);
      if (!at)
        causes.push(because(`${node.thing.name} of ${beam.name} has no place that is known.`, node.thing.item.at));
      else places.set(node.thing, { body: bodies.length, point: points.push({ name: node.thing.name, at }) - 1 });
    }
  const xs = own.flatMap((item) => pointAt(item)?.[0] ?? []);
  bodies.push({
    name: beam.name,
    weight: (use.weight.high as number) * g,
    cog: [0, 0, 0],
    points,
    ...(Math.max(...xs) > Math.min(...xs) && { axis: [Math.min(...xs), Math.max(...xs)] as const }),
  });
  info.push({ thing: beam, half: null });
}

function assemble(
  net: Network,
  runs: readonly { edge: Edge; run: Run }[],
  bodies: HangModel['bodies'][number][],
  info: Built['bodies'],
  places: Map<Thing, NodeRef>,
  { uses, hung: beside }: Loads,
  hung: number,
): Built | Unbuilt {
  const hooks = net.nodes.filter((node) => node.kind === 'hook').map((node) => node.thing);
  const anchors = hooks.map((hook, i) => {
    places.set(hook, { anchor: i });
    return { name: hook.name, at: pointAt(hook.item) ?? ([0, 0, 0] as Vec3) };
  });
  // A ring with nothing above it that has a length sits in what is above it.
  const sits = (thing: Thing, above: Thing) => {
    const place = places.get(above);
    if (place) places.set(thing, place);
  };
  for (const { edge, run } of runs)
    if (run.length <= 0 && edge.bottom.kind === 'gear' && !edge.over.length) sits(edge.bottom.thing, edge.top.thing);
  const particles: { name: string; weight: number }[] = [];
  const seated = net.nodes.filter((node) => node.kind === 'gear' && places.has(node.thing));
  for (const node of net.nodes)
    if (node.kind === 'gear' && !places.has(node.thing)) {
      const weight = uses.get(node.thing)?.weight;
      if (!weight || weight.value === null) return { because: weight?.because ?? [] };
      places.set(node.thing, {
        particle: particles.push({ name: node.thing.name, weight: (weight.high as number) * g }) - 1,
      });
    }
  const forces: { body: number; point: Vec3; force: Vec3 }[] = [];
  const onHooks = hooks.map(() => beside.anywhere);
  const press = (thing: Thing, kg: number): void => {
    const place = places.get(thing);
    if (kg === 0 || !place) return;
    if ('anchor' in place) onHooks[place.anchor] = (onHooks[place.anchor] as number) + kg;
    else if ('particle' in place) {
      const one = particles[place.particle];
      if (one) one.weight += kg * g;
    } else
      forces.push({
        body: place.body,
        point: bodies[place.body]?.points[place.point]?.at as Vec3,
        force: [0, 0, -kg * g],
      });
  };
  for (const { thing } of seated) press(thing, uses.get(thing)?.weight.high ?? 0);
  // What hangs beside the legs: on a hook, in a run at its lower end, on a body at its centre; else any hook may carry it.
  let below = 0;
  for (const [thing, kg] of beside.on) {
    const carrier = runs.find(({ edge }) => edge.items.includes(thing))?.edge.bottom.thing ?? thing;
    const place = places.get(carrier);
    const body = info.findIndex((one) => one.thing === carrier);
    if (place ? 'anchor' in place : body < 0) {
      const anchor = place && 'anchor' in place ? place.anchor : null;
      for (const a of hooks.keys()) if (anchor === null || anchor === a) onHooks[a] = (onHooks[a] as number) + kg;
      continue;
    }
    below += kg;
    if (place) press(carrier, kg);
    else forces.push({ body, point: bodies[body]?.cog as Vec3, force: [0, 0, -kg * g] });
  }
  const slings: { name: string; path: NodeRef[]; length: number; stiffness: number; weight: number }[] = [];
  const edges: { edge: Edge; run: Run; sling: number }[] = [];
  const inHooks: { thing: Thing; hook: number }[] = [];
  for (const { edge, run } of runs) {
    press(edge.top.thing, run.upper);
    press(edge.bottom.thing, run.lower);
    if (run.length <= 0 && edge.bottom.kind === 'gear') {
      const place = places.get(edge.bottom.thing);
      if (place && 'anchor' in place) for (const thing of edge.items) inHooks.push({ thing, hook: place.anchor });
      continue;
    }
    if (run.length <= 0)
      return {
        because: [because(`The leg to ${edge.bottom.thing.name} has no length.`, edge.legs[0]?.item.at as never)],
        short: { leg: edge.legs[0] as LegUse, reason: `the leg to ${edge.bottom.thing.name} has no length` },
      };
    const path = [edge.top, ...edge.over, edge.bottom].map((node) => places.get(node.thing) as NodeRef);
    edges.push({
      edge,
      run,
      sling:
        slings.push({
          name: edge.key,
          path,
          length: run.length,
          stiffness: run.stiffness ?? rigid * hung,
          weight: run.slingWeight * g,
        }) - 1,
    });
  }
  return {
    model: { anchors, bodies, particles, slings, ...(forces.length && { forces }) },
    edges,
    bodies: info,
    hooks,
    places,
    inHooks,
    beside: { hooks: onHooks, below },
    assumedStiffness: edges.some((one) => one.run.assumed),
  };
}

const beamsOf = (nodes: readonly Node[]): readonly Thing[] => [
  ...new Set(nodes.flatMap((node) => (node.kind === 'point' && node.thing.owner ? [node.thing.owner] : []))),
];

/** A pick's place in the axes of its load; null where an axis is not known. */
export function pickPlace(pick: Thing, layout: Layout): Vec3 | null {
  const at = pointAt(pick.item);
  if (!at || layout.frameOpen(pick.owner).open.some((causes) => causes.length)) return null;
  return apply(layout.frames(pick.owner)[0] ?? still, at);
}

export function pointAt(item: Item): Vec3 | null {
  const value = item.clauses.get('at')?.[0]?.value;
  const cells =
    value?.kind === 'point' ? value.at.map((cell) => (cell && typeof cell !== 'string' ? cell.value : null)) : [null];
  return cells.includes(null) ? null : (cells as unknown as Vec3);
}

/** The load's dynamic factor, at the high end of its tolerance: tensions and pulls are multiplied by it. */
export function dynamic(load: Thing): number {
  const value = load.item.clauses.get('dynamic factor')?.[0]?.value;
  return value?.kind === 'quantity' ? value.quantity.high : 1;
}
