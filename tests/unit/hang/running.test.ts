// A sling that runs free over the hook, against the ellipse its hook moves on.
import { describe, expect, test } from 'vitest';
import { hang } from '../../../server/mechanics/hang/index.ts';
import { close, degrees, gravity, modelOf, type ShortRig, solved } from '../../support/rigs.ts';

describe('a sling that runs free over the hook (ellipse of equal length: closed form)', () => {
  const [f, length, e] = [1.8, 7.2, 2.4];
  const free = (x0: number, depth: number): ShortRig => ({
    hooks: { hook: [0, 0, 0] },
    bodies: { load: { mass: 10000, cog: [x0, 0, -depth], at: { A: [f, 0, 0], B: [-f, 0, 0] } } },
    slings: { run: ['load.A', 'hook', 'load.B', length, 1e5 * 10000 * gravity, 0] },
  });

  /** Rest on the ellipse about the picks: a x0 sin t + b e cos t = f² sin t cos t, hook at (a cos t, b sin t). */
  function ellipse(x0: number) {
    const a = length / 2;
    const b = Math.sqrt(a * a - f * f);
    const off = (t: number) => a * x0 * Math.sin(t) + b * e * Math.cos(t) - f * f * Math.sin(t) * Math.cos(t);
    let [low, high] = [Math.PI / 2, 2];
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2;
      if (off(middle) > 0) low = middle;
      else high = middle;
    }
    const [x, z] = [a * Math.cos(low), b * Math.sin(low)];
    const parts = [Math.hypot(x + f, z), Math.hypot(x - f, z)]; // the hook stands on the side of x < 0
    const [across, up] = [x - x0, z + e];
    const angle = Math.acos(((x - f) * across + z * up) / (parts[1]! * Math.hypot(across, up)));
    const tilt = Math.atan2(Math.abs(across), up);
    return { tilt, angle, tension: 1 / (2 * Math.cos(angle)), parts };
  }

  test('centre 0.12 m off: tension, one angle for both parts, tilt and lengths', () => {
    const result = solved(hang(modelOf(free(0.12, e))));
    const [run] = result.slings;
    const exact = ellipse(0.12);
    close(exact.tilt / degrees, 5.02, 5e-4);
    // What is left is the stretch of a rope of 1e5 W.
    close(run!.tension / result.totalWeight, exact.tension, 3e-6);
    for (const part of run!.parts) close(Math.PI / 2 - part.angle, exact.angle, 1e-5);
    close(result.bodies[0]!.tilt, exact.tilt, 1e-5);
    const parts = run!.parts.map((part) => part.length).sort((a, b) => a - b);
    exact.parts.forEach((part, i) => close(parts[i]!, part, 5e-5));
    expect(result.status).toBe('stable');
  });

  test('centre in the middle: righting lever e − f²/b, and over that depth it runs away', () => {
    const b = Math.sqrt(length ** 2 / 4 - f ** 2);
    close(solved(hang(modelOf(free(0, e)))).bodies[0]!.rightingLever!, 1.361, 1e-3);
    expect(solved(hang(modelOf(free(0, f ** 2 / b + 0.02)))).status).toBe('stable');
    expect(solved(hang(modelOf(free(0, f ** 2 / b - 0.02)))).status).toBe('unstable');
  });

  test('cut at the hook into two legs that happen to pull alike: the same pose', () => {
    const ea = 3e7;
    const rig = free(0.12, e);
    const run = solved(hang(modelOf({ ...rig, slings: { run: ['load.A', 'hook', 'load.B', length, ea, 0] } })));
    const cut = (share: number): ShortRig => ({
      ...rig,
      slings: { a: ['hook', 'load.A', share * length, ea, 0], b: ['hook', 'load.B', (1 - share) * length, ea, 0] },
    });
    const difference = (share: number) => {
      const [a, b] = solved(hang(modelOf(cut(share)))).slings;
      return a!.tension - b!.tension;
    };
    let [low, high] = [0.4, 0.6];
    const rising = difference(high) > difference(low);
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (difference(middle) > 0 === rising) high = middle;
      else low = middle;
    }
    const legs = solved(hang(modelOf(cut(low))));
    close(legs.slings[0]!.tension, run.slings[0]!.tension, 1e-7 * run.totalWeight);
    close(legs.bodies[0]!.tilt, run.bodies[0]!.tilt, 1e-7);
  });
});
