// What must hold for every rig: balance, and no change under anything that only looks different.
import { describe, expect, test } from 'vitest';
import { type HangModel, type HangResult, hang, sectionForces } from '../../../server/mechanics/hang/index.ts';
import { add, multiply, rotate, type Vec3 } from '../../../server/mechanics/vector.ts';
import { drawFrom, tameRig } from '../../support/random-rigs.ts';
import { modelOf, rotation, seeded, solved } from '../../support/rigs.ts';

const draw = drawFrom(seeded(4711));
const rigs = Array.from({ length: 40 }, (_, i) => ({ i, model: modelOf(tameRig(draw)) }))
  .map(({ i, model }) => ({ i, model, result: solved(hang(model)) }))
  .filter(({ result }) => result.status === 'stable' && !result.turnsOver);

test('there are rigs to look at', () => expect(rigs.length).toBeGreaterThan(30));

const near = (a: number, b: number, within: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(within);

/** Same tensions and the same up directions; `order` gives the sling of the changed model for each of the first. */
function same(a: HangResult, b: HangResult, order = a.slings.map((_, s) => s), within = 1e-9): void {
  expect(b.status).toBe(a.status);
  a.slings.forEach((sling, s) => near(sling.tension, b.slings[order[s]!]!.tension, within * a.totalWeight));
  a.bodies.forEach((body, i) => body.up.forEach((v, d) => near(v, b.bodies[i]!.up[d]!, within * 10)));
}

describe.each(rigs)('rig $i', ({ model, result }) => {
  const all = result.totalWeight;

  test('anchors carry all the weight and all the wind', () => {
    const wind = (d: number) => (model.forces ?? []).reduce((sum, force) => sum + force.force[d]!, 0);
    [wind(0), wind(1), wind(2) - all].forEach((wanted, d) => {
      near(
        result.anchors.reduce((sum, anchor) => sum + anchor.force[d]!, 0),
        wanted,
        1e-8 * all,
      );
    });
  });

  test('every body is in balance by the forces reported', () => {
    model.bodies.forEach((body, i) => {
      const place = result.bodies[i]!;
      const force = [0, 0, -body.weight];
      for (const dead of model.forces ?? []) if (dead.body === i) dead.force.forEach((f, d) => (force[d]! += f));
      model.slings.forEach((sling, s) => {
        sling.path.forEach((node, k) => {
          if (!('body' in node) || node.body !== i) return;
          rotate(place.rotation, result.slings[s]!.forces[k]!).forEach((f, d) => (force[d]! += f));
        });
      });
      for (const f of force) near(f, 0, 1e-8 * all);
      const sections = sectionForces(model, result, i);
      if (body.axis) expect(sections!.residual).toBeLessThan(1e-8);
    });
  });

  test('seen in a mirror it is the mirror', () => {
    const flip = (v: Vec3): Vec3 => [v[0], -v[1], v[2]];
    const mirrored: HangModel = {
      ...model,
      anchors: model.anchors.map((one) => ({ ...one, at: flip(one.at) })),
      bodies: model.bodies.map((body) => ({
        ...body,
        cog: flip(body.cog),
        points: body.points.map((point) => ({ ...point, at: flip(point.at) })),
      })),
      forces: (model.forces ?? []).map((one) => ({ ...one, point: flip(one.point), force: flip(one.force) })),
    };
    const other = solved(hang(mirrored));
    result.slings.forEach((sling, s) => near(sling.tension, other.slings[s]!.tension, 1e-9 * all));
    result.bodies.forEach((body, i) => flip(body.up).forEach((v, d) => near(v, other.bodies[i]!.up[d]!, 1e-8)));
  });

  test('turned about the vertical and moved, nothing changes', () => {
    const turn = rotation([0, 0, 0.7]);
    const away: Vec3 = [40, -25, 12];
    const other: HangModel = {
      ...model,
      anchors: model.anchors.map((one) => ({ ...one, at: add(rotate(turn, one.at), away) })),
      bodies: model.bodies.map((body) => ({
        ...body,
        orientation: multiply(turn, body.orientation ?? rotation([0, 0, 0])),
      })),
      forces: (model.forces ?? []).map((one) => ({ ...one, force: rotate(turn, one.force) })),
    };
    same(result, solved(hang(other)));
  });

  test('a datum a kilometre away changes nothing', () => {
    const far: Vec3 = [700, -600, 400];
    const other: HangModel = {
      ...model,
      bodies: model.bodies.map((body) => ({
        ...body,
        cog: add(body.cog, far),
        points: body.points.map((point) => ({ ...point, at: add(point.at, far) })),
      })),
      forces: (model.forces ?? []).map((one) => ({ ...one, point: add(one.point, far) })),
    };
    same(result, solved(hang(other)), undefined, 1e-8);
  });

  test('the order of slings, and of the ends of a sling, does not matter', () => {
    const last = model.slings.length - 1;
    const slings = [...model.slings].reverse().map((sling) => ({ ...sling, path: [...sling.path].reverse() }));
    same(
      result,
      solved(hang({ ...model, slings })),
      model.slings.map((_, s) => last - s),
    );
  });

  test('a weightless ring in the middle of a sling changes nothing', () => {
    const s = model.slings.findIndex(
      (sling, i) => sling.path.length === 2 && sling.weight === 0 && !result.slings[i]!.slack,
    );
    if (s < 0) return;
    const sling = model.slings[s]!;
    const ring = { particle: model.particles.length };
    const upper = { ...sling, path: [sling.path[0]!, ring], length: 0.4 * sling.length };
    const lower = { ...sling, path: [ring, sling.path[1]!], length: 0.6 * sling.length };
    const slings = model.slings.map((one, i) => (i === s ? upper : one));
    const particles = [...model.particles, { name: 'joint', weight: 0 }];
    same(result, solved(hang({ ...model, particles, slings: [...slings, lower] })), undefined, 1e-8);
  });

  test('all lengths half as long again: tensions and tilts stay', () => {
    const k = 1.5;
    const larger = (v: Vec3): Vec3 => [k * v[0], k * v[1], k * v[2]];
    const other: HangModel = {
      ...model,
      anchors: model.anchors.map((one) => ({ ...one, at: larger(one.at) })),
      bodies: model.bodies.map((body) => ({
        ...body,
        cog: larger(body.cog),
        points: body.points.map((point) => ({ ...point, at: larger(point.at) })),
      })),
      slings: model.slings.map((sling) => ({ ...sling, length: k * sling.length })),
      forces: (model.forces ?? []).map((one) => ({ ...one, point: larger(one.point) })),
    };
    const scaled = solved(hang(other));
    same(result, scaled);
    result.bodies.forEach((body, i) => {
      if (body.rightingLever !== null) near(scaled.bodies[i]!.rightingLever! / (k * body.rightingLever), 1, 1e-6);
    });
  });

  test('all weights and stiffnesses three times: tensions three times, tilts stay', () => {
    const other: HangModel = {
      ...model,
      bodies: model.bodies.map((body) => ({ ...body, weight: 3 * body.weight })),
      particles: model.particles.map((one) => ({ ...one, weight: 3 * one.weight })),
      slings: model.slings.map((one) => ({ ...one, stiffness: 3 * one.stiffness, weight: 3 * one.weight })),
      forces: (model.forces ?? []).map((one) => ({ ...one, force: one.force.map((f) => 3 * f) as unknown as Vec3 })),
    };
    const scaled = solved(hang(other));
    result.slings.forEach((sling, s) => near(3 * sling.tension, scaled.slings[s]!.tension, 3e-9 * all));
    result.bodies.forEach((body, i) => body.up.forEach((v, d) => near(v, scaled.bodies[i]!.up[d]!, 1e-8)));
  });

  test('the same numbers give the same answer, to the last bit', () => {
    expect(hang(structuredClone(model))).toEqual(result);
  });
});

test('determinate tensions move by no more than the strain when everything is ten times stiffer', () => {
  const legs = rigs.filter(({ model }) => model.bodies.length === 1 && model.slings.length <= 3);
  expect(legs.length).toBeGreaterThan(5);
  for (const { model, result } of legs) {
    const stiff = { ...model, slings: model.slings.map((one) => ({ ...one, stiffness: 10 * one.stiffness })) };
    const other = solved(hang(stiff));
    const strain = Math.max(...result.slings.map((sling, s) => sling.tension / model.slings[s]!.stiffness));
    result.slings.forEach((sling, s) =>
      near(sling.tension, other.slings[s]!.tension, 10 * strain * result.totalWeight),
    );
  }
});
