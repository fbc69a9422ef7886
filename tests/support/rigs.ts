// Rigs written short: names for nodes ("load.A", "hook", "ring"), masses in kg, and the models the solver takes.
import { expect } from 'vitest';
import type { HangError, HangModel, HangResult, NodeRef } from '../../server/mechanics/hang/index.ts';
import type { Mat3, Vec3 } from '../../server/mechanics/vector.ts';

export const gravity = 9.80665;
export const degrees = Math.PI / 180;

export interface ShortBody {
  readonly mass: number;
  readonly cog: Vec3;
  readonly at: Readonly<Record<string, Vec3>>;
  readonly axis?: readonly [number, number];
  /** Drawn orientation: axis times angle, rad. */
  readonly drawn?: Vec3;
}

/** Path, then unstretched length (m), EA (N), mass (kg). */
export type ShortSling = readonly [...path: string[], length: number, stiffness: number, mass: number];

export interface ShortRig {
  readonly hooks: Readonly<Record<string, Vec3>>;
  readonly bodies: Readonly<Record<string, ShortBody>>;
  readonly slings: Readonly<Record<string, ShortSling>>;
  /** Mass, kg. */
  readonly rings?: Readonly<Record<string, number>>;
  /** Body, point in body axes, force in world axes (N). */
  readonly push?: readonly (readonly [string, Vec3, Vec3])[];
}

export function modelOf(rig: ShortRig): HangModel {
  const hooks = Object.keys(rig.hooks);
  const bodies = Object.keys(rig.bodies);
  const rings = Object.keys(rig.rings ?? {});
  const node = (name: string): NodeRef => {
    if (hooks.includes(name)) return { anchor: hooks.indexOf(name) };
    if (rings.includes(name)) return { particle: rings.indexOf(name) };
    const [body, point] = name.split('.') as [string, string];
    return { body: bodies.indexOf(body), point: Object.keys(rig.bodies[body]!.at).indexOf(point) };
  };
  return {
    anchors: Object.entries(rig.hooks).map(([name, at]) => ({ name, at })),
    bodies: Object.entries(rig.bodies).map(([name, body]) => ({
      name,
      weight: body.mass * gravity,
      cog: body.cog,
      points: Object.entries(body.at).map(([point, at]) => ({ name: point, at })),
      ...(body.axis ? { axis: body.axis } : {}),
      ...(body.drawn ? { orientation: rotation(body.drawn) } : {}),
    })),
    particles: Object.entries(rig.rings ?? {}).map(([name, mass]) => ({ name, weight: mass * gravity })),
    slings: Object.entries(rig.slings).map(([name, sling]) => ({
      name,
      path: (sling.slice(0, -3) as string[]).map(node),
      length: sling.at(-3) as number,
      stiffness: sling.at(-2) as number,
      weight: (sling.at(-1) as number) * gravity,
    })),
    forces: (rig.push ?? []).map(([body, point, force]) => ({ body: bodies.indexOf(body), point, force })),
  };
}

/** Rotation about an axis by its length, rad (Rodrigues). */
export function rotation(vector: Vec3): Mat3 {
  const angle = Math.hypot(...vector);
  if (angle === 0) return [1, 0, 0, 0, 1, 0, 0, 0, 1];
  const [x, y, z] = vector.map((v) => v / angle) as unknown as Vec3;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const v = 1 - c;
  return [
    c + x * x * v,
    x * y * v - z * s,
    x * z * v + y * s,
    y * x * v + z * s,
    c + y * y * v,
    y * z * v - x * s,
    z * x * v - y * s,
    z * y * v + x * s,
    c + z * z * v,
  ];
}

/** Legs from a hook at the origin to picks given from it; stiff, so that the printed rigid statics applies (1e-4). */
export function bridle(mass: number, picks: readonly Vec3[], cog: Vec3): ShortRig {
  const names = picks.map((_, i) => `P${i}`);
  const at = Object.fromEntries(names.map((name, i): [string, Vec3] => [name, picks[i]!]));
  const slings = names.map((name, i): [string, ShortSling] => [
    name,
    ['hook', `load.${name}`, Math.hypot(...picks[i]!), 2e4 * mass * gravity, 0],
  ]);
  return { hooks: { hook: [0, 0, 0] }, bodies: { load: { mass, cog, at } }, slings: Object.fromEntries(slings) };
}

/** Within an absolute difference, naming both numbers when not. */
export const close = (value: number, wanted: number, within: number) =>
  expect(Math.abs(value - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(within);

/** The result, or a failing test that says why there is none. */
export function solved(result: HangResult | HangError): HangResult {
  if ('error' in result) throw new Error(`no result: ${result.error} ${result.name}`);
  return result;
}

/** Numbers in [0, 1) from a seed, the same on every machine (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
