// Random plans of every kind of rig the language can say, from a seed: sound ones, and ones with numbers as half-typed text has them.
import { hook, plainly, type Rigged } from './hanging.ts';
import type { Draw } from './random-rigs.ts';

const pick = <T>(draw: Draw, list: readonly T[]): T =>
  list[Math.min(list.length - 1, Math.floor(draw(0, list.length)))] as T;
const number = (value: number): string => plainly(Number(value.toFixed(3)));
const point = (x: number, y: number, z: number): string => `(${number(x)}, ${number(y)}, ${number(z)}) m`;

/** A plan text's pieces; `wild`: some numbers are off by factors, some legs missing. */
export function randomPlan(draw: Draw, wild: boolean): Rigged {
  const kind = pick(draw, [bridle, ring, beam, twoHooks, twoBridles, basket, overHook, overSheave, placed]);
  const rig = kind(draw);
  const loose = draw(0, 1) < 0.15 ? ' ± 30 mm' : '';
  const stages =
    draw(0, 1) < 0.2
      ? [`stage "S": incline x ${number(draw(0, 30))} deg to ${number(draw(30, 80))} deg`]
      : draw(0, 1) < 0.1
        ? ['stage "S": incline y 5 deg']
        : [];
  const made: Rigged = { ...rig, cog: `${rig.cog}${loose}`, more: stages };
  return wild ? spoiled(made, draw) : made;
}

/** Numbers off by a power of ten here and there, and a line that is gone. */
function spoiled(rig: Rigged, draw: Draw): Rigged {
  const spoil = (text: string): string =>
    text.replace(/(length|weight) ([\d.]+)/g, (whole, word: string, value: string) =>
      draw(0, 1) < 0.2 ? `${word} ${number(Number(value) * 10 ** Math.round(draw(-3, 3)))}` : whole,
    );
  const legs = rig.legs as readonly string[];
  return {
    ...rig,
    gear: rig.gear.map(spoil),
    weight: draw(0, 1) < 0.1 ? 1_000_000_000 : rig.weight,
    cog: draw(0, 1) < 0.2 ? point(draw(-20, 20), draw(-20, 20), draw(-5, 20)) : rig.cog,
    picks: Object.fromEntries(
      Object.entries(rig.picks).map(([name, at]) => [
        name,
        draw(0, 1) < 0.05 ? at.replace(/^\([^)]*\) m/, '(0, 0, 0) m') : at,
      ]),
    ),
    legs: draw(0, 1) < 0.1 && legs.length > 1 ? legs.slice(1) : legs,
  };
}

const ropes = (draw: Draw, names: readonly string[], long: number, spread = 0): string[] => {
  const weight = draw(0, 1) < 0.5 ? 0 : number(draw(2, 40));
  const stiff = pick(draw, [
    'stiffness 20 MN, ',
    'stiffness 5 MN, ',
    'wire rope, diameter 22 mm, ',
    'wire rope, diameter 12 mm, ',
  ]);
  const loose = draw(0, 1) < 0.05 ? ' ± 10 mm' : '';
  return names.map(
    (name) =>
      `sling ${name}: ${stiff}length ${number(long + draw(-spread, spread))} m${loose}, weight ${weight} kg, capacity 50 t`,
  );
};

function around(draw: Draw, n: number, radius: number, more = ''): Record<string, string> {
  return Object.fromEntries(
    Array.from({ length: n }, (_, i) => {
      const angle = (2 * Math.PI * (i + draw(-0.15, 0.15))) / Math.max(2, n);
      return [`P${i}`, `${point(radius * Math.cos(angle), radius * Math.sin(angle), draw(-0.2, 0.2))}${more}`];
    }),
  );
}
const centre = (draw: Draw, radius: number): string =>
  point(draw(-0.2, 0.2) * radius, draw(-0.2, 0.2) * radius, draw(-1.5, -0.5));
const tonnes = (draw: Draw): number => Math.round(draw(1000, 20000));

function bridle(draw: Draw): Rigged {
  const n = Math.floor(draw(1, 7));
  const radius = draw(0.5, 3);
  const slings = Array.from({ length: n }, (_, i) => `S${i}`);
  return {
    weight: tonnes(draw),
    cog: centre(draw, radius),
    picks: around(draw, n, radius),
    gear: [hook(), ...ropes(draw, slings, radius * draw(1.2, 2) + 0.5, 0.02)],
    legs: slings.map((name, i) => `Hook > ${name} > P${i}`),
  };
}

function ring(draw: Draw): Rigged {
  const inner = bridle(draw);
  return {
    ...inner,
    gear: [...inner.gear, ...ropes(draw, ['Top'], 3), 'master link Ring: weight 20 kg, capacity 60 t, length 0.3 m'],
    legs: ['Hook > Top > Ring', ...(inner.legs as string[]).map((leg) => leg.replace('Hook', 'Ring'))],
  };
}

function beam(draw: Draw): Rigged {
  const half = draw(1, 3);
  return {
    weight: tonnes(draw),
    cog: centre(draw, half),
    picks: { A: point(-half, 0, 0), B: point(half, 0, 0) },
    gear: [
      hook(),
      ...ropes(draw, ['T1', 'T2'], half * 1.5 + 1),
      ...ropes(draw, ['D1', 'D2'], draw(1, 4)),
      `spreader Beam: weight ${number(draw(50, 900))} kg, capacity 60 t, length ${number(2 * half)} m`,
      `  point l: at ${point(-half, 0, draw(0, 0.3))}, capacity 60 t`,
      `  point r: at ${point(half, 0, draw(0, 0.3))}, capacity 60 t`,
      `  point m: at ${point(-half, 0, draw(-0.3, 0))}, capacity 60 t`,
      `  point n: at ${point(half, 0, draw(-0.3, 0))}, capacity 60 t`,
    ],
    legs: ['Hook > T1 > Beam.l', 'Hook > T2 > Beam.r', 'Beam.m > D1 > A', 'Beam.n > D2 > B'],
  };
}

function twoHooks(draw: Draw): Rigged {
  const half = draw(2, 8);
  return {
    weight: tonnes(draw),
    cog: point(draw(-0.6, 0.6) * half, draw(-0.5, 0.5), draw(-2, -0.3)),
    picks: { A: point(-half, 0, draw(-1, 1)), B: point(half, 0, draw(-1, 1)) },
    gear: [hook('HA'), hook('HB'), ...ropes(draw, ['SA', 'SB'], draw(2, 20))],
    legs: ['HA > SA > A', 'HB > SB > B'],
  };
}

function twoBridles(draw: Draw): Rigged {
  const half = draw(3, 8);
  const w = draw(0.5, 2);
  const long = draw(0, 1) < 0.5;
  const at = (x: number, side: number): string => (long ? point(x + side * w, 0, 0) : point(x, side * w, 0));
  return {
    weight: tonnes(draw),
    cog: point(draw(-0.5, 0.5) * half, draw(-0.1, 0.1), draw(-2, -0.3)),
    picks: { A: at(-half, -1), B: at(-half, 1), C: at(half, -1), D: at(half, 1) },
    gear: [hook('HA'), hook('HB'), ...ropes(draw, ['S1', 'S2', 'S3', 'S4'], w * 1.5 + draw(1, 4), 0.01)],
    legs: ['HA > S1 > A', 'HA > S2 > B', 'HB > S3 > C', 'HB > S4 > D'],
  };
}

function basket(draw: Draw): Rigged {
  const w = draw(0.5, 1.5);
  const l = draw(0.5, 2);
  const runs = pick(draw, ['', ', runs free', ', runs held']);
  const round = ', kind round, diameter 1 m';
  return {
    weight: tonnes(draw),
    cog: point(draw(-0.05, 0.05), draw(-0.05, 0.05), draw(-1, 0.5)),
    picks: {
      A: point(-w, l, 0) + round,
      B: point(w, l, 0) + round,
      C: point(-w, -l, 0) + round,
      D: point(w, -l, 0) + round,
    },
    gear: [hook(), ...ropes(draw, ['S', 'T'], 2 * w + 2 * Math.hypot(w, l) * draw(1.2, 2))],
    legs: [`Hook > S > A > B > Hook${runs}`, `Hook > T > C > D > Hook${runs}`],
  };
}

function overHook(draw: Draw): Rigged {
  const f = draw(0.5, 2);
  return {
    weight: tonnes(draw),
    cog: point(draw(-0.1, 0.1) * f, 0, draw(-4, -1)),
    picks: { A: point(-f, 0, 0), B: point(f, 0, 0) },
    gear: [hook(), ...ropes(draw, ['S'], f * draw(3, 5))],
    legs: [`A > S > Hook > B${pick(draw, ['', ', runs held'])}`],
  };
}

function overSheave(draw: Draw): Rigged {
  const inner = bridle(draw);
  const f = draw(0.5, 2);
  return {
    ...inner,
    picks: { A: point(-f, 1, 0), B: point(f, 1, 0), C: point(0, -1.5, 0) },
    cog: point(0, draw(-0.3, 0.3), draw(-3, -1.5)),
    gear: [
      hook(),
      ...ropes(draw, ['Top', 'Down'], 3),
      'sheave Wheel: weight 15 kg, capacity 40 t',
      ...ropes(draw, ['S'], f * draw(3, 4) + 1),
    ],
    legs: ['Hook > Top > Wheel', 'A > S > Wheel > B', 'Hook > Down > C'],
  };
}

function placed(draw: Draw): Rigged {
  const rig = twoHooks(draw);
  return {
    ...rig,
    gear: rig.gear.map((line) =>
      line.startsWith('hook HA')
        ? hook('HA', `at ${point(draw(-5, -3), 0, 10)}`)
        : line.startsWith('hook HB')
          ? hook('HB', `at ${point(draw(3, 5), 0, 10)}`)
          : line,
    ),
  };
}
