// Random rigs of every kind the solver knows, from a seed: for the second method, and wild ones for robustness.
import type { Vec3 } from '../../server/mechanics/vector.ts';
import type { ShortBody, ShortRig, ShortSling } from './rigs.ts';

export type Draw = (least: number, most: number) => number;

export const drawFrom =
  (random: () => number): Draw =>
  (least, most) =>
    least + (most - least) * random();

/** A rig that a careful rigger might draw: centres below the picks, legs that reach. */
export function tameRig(draw: Draw): ShortRig {
  const kinds = [bridle, ringAndBridle, spreader, frame, running, tandem];
  return kinds[Math.floor(draw(0, kinds.length))]!(draw);
}

/** The same with numbers as half-typed text has them: lengths and centres off by factors, loads far too heavy or none. */
export function wildRig(draw: Draw): ShortRig {
  const rig = tameRig(draw);
  const slings = Object.entries(rig.slings).map(([name, sling]) => {
    const factor = draw(0, 1) < 0.3 ? 10 ** draw(-1.5, 1) : 1;
    const softer = draw(0, 1) < 0.2 ? 10 ** draw(-4, 3) : 1;
    const [length, stiffness, mass] = sling.slice(-3) as [number, number, number];
    return [name, [...sling.slice(0, -3), length * factor, stiffness * softer, mass] as unknown as ShortSling];
  });
  const bodies = Object.entries(rig.bodies).map(([name, body]): [string, ShortBody] => {
    const off = draw(0, 1) < 0.3 ? draw(-20, 20) : 0;
    const up = draw(0, 1) < 0.3 ? draw(0, 4) : 0;
    const mass = draw(0, 1) < 0.1 ? 0 : body.mass * (draw(0, 1) < 0.2 ? 10 ** draw(-3, 3) : 1);
    return [name, { ...body, mass, cog: [body.cog[0] + off, body.cog[1], body.cog[2] + up] }];
  });
  return { ...rig, slings: Object.fromEntries(slings), bodies: Object.fromEntries(bodies) };
}

const hook: Record<string, Vec3> = { hook: [0, 0, 0] };
const stiffness = (draw: Draw) => 10 ** draw(6.8, 7.5);
const slingMass = (draw: Draw) => (draw(0, 1) < 0.5 ? draw(2, 40) : 0);

function load(draw: Draw, picks: number): { body: ShortBody; names: string[] } {
  const names = Array.from({ length: picks }, (_, i) => `P${i}`);
  const radius = draw(1, 3);
  const at = names.map((name, i): [string, Vec3] => {
    const angle = (2 * Math.PI * (i + draw(-0.15, 0.15))) / Math.max(2, picks);
    return [name, [radius * Math.cos(angle), radius * Math.sin(angle), draw(-0.2, 0.2)]];
  });
  const off = 0.2 * radius;
  const cog: Vec3 = [draw(-off, off), draw(-off, off), draw(-1.5, -0.5)];
  return { body: { mass: draw(2000, 20000), cog, at: Object.fromEntries(at) }, names };
}

function legs(draw: Draw, from: string, body: ShortBody, names: readonly string[]): Record<string, ShortSling> {
  const ea = stiffness(draw);
  const steep = draw(1, 2);
  const long = (name: string) => Math.hypot(...body.at[name]!) * steep + draw(0.5, 0.6);
  return Object.fromEntries(
    names.map((name) => [`leg ${name}`, [from, `load.${name}`, long(name), ea, slingMass(draw)]]),
  );
}

function wind(draw: Draw, body: ShortBody): ShortRig['push'] {
  if (draw(0, 1) < 0.7) return [];
  return [['load', [0, 0, body.cog[2] + draw(-0.2, 0.2)], [draw(-1, 1) * body.mass, draw(-1, 1) * body.mass, 0]]];
}

function bridle(draw: Draw): ShortRig {
  const { body, names } = load(draw, Math.floor(draw(1, 7)));
  return { hooks: hook, bodies: { load: body }, slings: legs(draw, 'hook', body, names), push: wind(draw, body)! };
}

function ringAndBridle(draw: Draw): ShortRig {
  const { body, names } = load(draw, Math.floor(draw(2, 5)));
  const pendant: ShortSling = ['hook', 'ring', draw(0.5, 4), stiffness(draw), slingMass(draw)];
  const slings = { pendant, ...legs(draw, 'ring', body, names) };
  return { hooks: hook, rings: { ring: draw(5, 80) }, bodies: { load: body }, slings, push: wind(draw, body)! };
}

function spreader(draw: Draw): ShortRig {
  const half = draw(1.5, 4);
  const beam: ShortBody = {
    mass: draw(200, 1200),
    cog: [0, 0, 0],
    axis: [-half, half],
    at: { TL: [-half, 0, 0.2], TR: [half, 0, 0.2], BL: [-half, 0, -0.2], BR: [half, 0, -0.2] },
  };
  const wide = draw(0, 1) < 0.5 ? draw(0.4, 1.2) : 0;
  const at: Record<string, Vec3> = { A: [-half, wide, 0], B: [half, wide, 0] };
  if (wide > 0) Object.assign(at, { C: [-half, -wide, 0], D: [half, -wide, 0] });
  const off = 0.1 * half;
  const body: ShortBody = {
    mass: draw(2000, 20000),
    cog: [draw(-off, off), draw(-off, off) / 4, draw(-1.5, -0.5)],
    at,
  };
  const ea = stiffness(draw);
  const drop = draw(1.5, 3);
  const top = half * draw(1.2, 2);
  const drops = Object.keys(at).map((name): [string, ShortSling] => [
    `drop ${name}`,
    [`beam.${name === 'A' || name === 'C' ? 'BL' : 'BR'}`, `load.${name}`, drop, ea, slingMass(draw)],
  ]);
  const slings: Record<string, ShortSling> = {
    left: ['hook', 'beam.TL', top, ea, slingMass(draw)],
    right: ['hook', 'beam.TR', top + draw(-0.05, 0.05), ea, slingMass(draw)],
    ...Object.fromEntries(drops),
  };
  return { hooks: hook, bodies: { beam, load: body }, slings };
}

function frame(draw: Draw): ShortRig {
  const x = draw(1, 3);
  const y = draw(1, 2);
  const corners: Vec3[] = [
    [x, y, 0],
    [-x, y, 0],
    [-x, -y, 0],
    [x, -y, 0],
  ];
  const named = (letter: string, z: number) =>
    Object.fromEntries(corners.map((c, i): [string, Vec3] => [`${letter}${i}`, [c[0], c[1], z]]));
  const ea = stiffness(draw);
  const top = Math.hypot(x, y) * draw(1.3, 2);
  const slings = corners.flatMap((_, i): [string, ShortSling][] => [
    [`top ${i}`, ['hook', `frame.T${i}`, top + draw(-0.003, 0.003), ea, slingMass(draw)]],
    [`drop ${i}`, [`frame.B${i}`, `load.P${i}`, 2 + draw(-0.003, 0.003), ea, 0]],
  ]);
  const cog: Vec3 = [draw(-0.1, 0.1) * x, draw(-0.1, 0.1) * y, draw(-1.5, -0.5)];
  return {
    hooks: hook,
    bodies: {
      frame: { mass: draw(500, 2000), cog: [0, 0, 0], at: { ...named('T', 0.1), ...named('B', -0.1) } },
      load: { mass: draw(2000, 20000), cog, at: named('P', 0) },
    },
    slings: Object.fromEntries(slings),
  };
}

function running(draw: Draw): ShortRig {
  const half = draw(1, 2);
  const length = 2 * half * draw(1.4, 2.2);
  const deep = half ** 2 / Math.sqrt(length ** 2 / 4 - half ** 2);
  const body: ShortBody = {
    mass: draw(2000, 20000),
    cog: [draw(-0.1, 0.1), 0, -deep - draw(0.5, 1.5)],
    at: { A: [half, 0, 0], B: [-half, 0, 0] },
  };
  const slings: Record<string, ShortSling> = {
    run: ['load.A', 'block', 'load.B', length, stiffness(draw), slingMass(draw)],
    line: ['hook', 'block', draw(1, 4), stiffness(draw), 0],
  };
  return { hooks: hook, rings: { block: draw(10, 200) }, bodies: { load: body }, slings };
}

function tandem(draw: Draw): ShortRig {
  const span = draw(4, 12);
  const body: ShortBody = {
    mass: draw(5000, 20000),
    cog: [draw(0.3, 0.7) * span, draw(-0.1, 0.1), draw(-1.5, -0.5)],
    at: { A: [0, 0, 0], B: [span, 0, 0] },
  };
  const ea = stiffness(draw);
  const slings: Record<string, ShortSling> = {
    a: ['left', 'load.A', draw(8, 9), ea, slingMass(draw)],
    b: ['right', 'load.B', draw(8, 9), ea, slingMass(draw)],
  };
  return { hooks: { left: [0, 0, 30], right: [span + draw(-0.3, 0.5), 0, 30] }, bodies: { load: body }, slings };
}
