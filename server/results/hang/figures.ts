// What each thing under the hook takes, and how that stands to what it may carry.
import type { Vec3 } from '../../mechanics/index.ts';
import { given, type Thing } from '../../plan/index.ts';
import { asWritten, type Derived, known, open } from '../../quantities/derived.ts';
import { because } from '../notes.ts';
import type { GearUse } from '../types.ts';
import { underOneTag } from './bridle.ts';
import { flattest } from './flattest.ts';
import { leansOf, type Spread, spreadsOf } from './hardware.ts';
import { type Built, g } from './model.ts';
import type { Ratings } from './ratings.ts';
import type { Solved } from './solve.ts';
import type { Share } from './tandem.ts';
import { ratio, whileHeld, worstOf } from './used.ts';

export type Figures = Record<string, Derived>;

/** Pulls of every run, point and hook of a rig that hangs, whatever way they were found. */
export interface Pulls {
  readonly edges: readonly {
    readonly elastic: number;
    readonly worst: number | null;
    readonly slack: boolean;
    readonly angle: number | null;
    readonly angleLeast: number | null; // over the tolerances
    readonly governs: string;
  }[];
  readonly points: readonly (readonly number[])[];
  readonly angles: readonly (readonly (number | null)[])[]; // of the flattest pull on each point, rad
  readonly leans: readonly (readonly (number | null)[])[]; // greatest angle between a pull on each point and the z of its body, rad
  readonly spreads: ReadonlyMap<Thing, Spread>; // of fittings that several runs meet at
  readonly anchors: readonly number[];
  readonly bodies: readonly {
    readonly tilt: number;
    readonly tiltMost: number;
    readonly up: Vec3 | null;
    readonly compression: Solved['compression'][number];
    readonly carried: number;
  }[]; // carried: pull of what hangs below, N
  readonly method: string;
}

/** Pulls of a solved rig. */
export function pullsOf(built: Built, solved: Solved): Pulls {
  const { rest } = solved;
  const touching = (b: number, p: number) =>
    built.model.slings.flatMap((sling, s) =>
      sling.path.some((node) => 'body' in node && node.body === b && node.point === p) ? [s] : [],
    );
  return {
    edges: rest.slings.map((sling, s) => ({
      elastic: sling.slack ? 0 : sling.upperTension,
      worst: solved.worst[s] ?? null,
      slack: sling.slack,
      angle: flattest(built, rest, s),
      angleLeast: sling.slack ? null : (solved.angles[s] ?? null),
      governs: solved.governs[s] === 'friction' ? 'elastic' : (solved.governs[s] as string),
    })),
    points: solved.points,
    angles: built.model.bodies.map((body, b) =>
      body.points.map((_, p) => {
        const angles = touching(b, p).flatMap((s) => flattest(built, rest, s, { body: b, point: p }) ?? []);
        return angles.length ? Math.min(...angles) : null;
      }),
    ),
    leans: leansOf(built, rest),
    spreads: spreadsOf(built, rest),
    anchors: solved.anchors.map((force, a) => force + (built.beside.hooks[a] ?? 0) * g),
    bodies: rest.bodies.map((body, b) => ({
      tilt: body.tilt,
      tiltMost: Math.max(body.tilt, solved.tilts[b] ?? 0),
      up: body.up,
      compression: solved.compression[b] ?? null,
      carried: carriedBy(built, solved, b),
    })),
    method: `equilibrium of elastic legs, residual below ${rest.residual < 1e-9 ? '1e-9' : '1e-8'} of the weight${built.assumedStiffness ? ', stiffness assumed by construction' : ''}${solved.redundancy ? `, worst of every way the ${built.model.slings.length} legs can share` : ''}${solved.swept === 'nothing' ? '' : `, tolerances at ${solved.swept}`}`,
  };
}

/** The pull of what hangs below a beam: all that pulls it down. */
function carriedBy(built: Built, { rest }: Solved, b: number): number {
  const up = rest.bodies[b]?.up as Vec3;
  return built.model.slings.reduce(
    (sum, sling, s) =>
      sling.path.reduce((total, node, i) => {
        if (!('body' in node) || node.body !== b) return total;
        const force = rest.slings[s]?.forces[i] as Vec3;
        return total + Math.max(0, -(force[0] * up[0] + force[1] * up[1] + force[2] * up[2]));
      }, sum),
    0,
  );
}

/** Pulls of two plumb lines. */
export function pullsOfShare(built: Built, found: Share): Pulls {
  const added = built.edges.map(({ run }) => (run.slingWeight + run.upper + run.lower + built.beside.below) * g); // what hangs beside the legs: either line may carry it
  const line = (s: number): 0 | 1 => (found.edges[0] === s ? 0 : 1);
  const points = (built.model.bodies[0]?.points ?? []).map((_, p) =>
    built.model.slings.findIndex((sling) => sling.path.some((node) => 'body' in node && node.point === p)),
  );
  return {
    edges: built.edges.map((_, s) => ({
      elastic: found.pulls[line(s)] + (added[s] as number),
      worst: found.worst[line(s)] + (added[s] as number),
      slack: false,
      angle: Math.PI / 2,
      angleLeast: Math.PI / 2,
      governs: 'elastic',
    })),
    points: [points.map((s) => (s < 0 ? 0 : found.worst[line(s)] + built.beside.below * g))],
    angles: [points.map(() => Math.PI / 2)],
    leans: [points.map(() => found.tilt)],
    spreads: new Map(),
    anchors: found.edges.map((s, i) => {
      const upper = built.edges[s]?.run.upper ?? 0; // what hangs right in the hook has it already
      return found.worst[i as 0 | 1] + (added[s] as number) + ((built.beside.hooks[i] ?? 0) - upper) * g;
    }),
    bodies: [{ tilt: found.tilt, tiltMost: found.tiltMost, up: null, compression: null, carried: 0 }],
    method: 'both hooks pull straight up; balance of moments',
  };
}

/** Results of every gear item, beam point, pick and load of a rig. */
export function figuresOf(
  built: Built,
  pulls: Pulls,
  uses: ReadonlyMap<Thing, GearUse>,
  ratings: Ratings,
): ReadonlyMap<Thing, Figures> {
  const all = new Map<Thing, Figures>();
  const { held } = ratings.input;
  const origin = (source: string, at: unknown) => ({ source, at });
  const force = (newton: number | null, thing: Thing): Derived =>
    newton === null
      ? open('N', [because('The legs can pull against each other: nothing bounds it.', thing.item.nameAt)])
      : known(newton, 'N', origin(pulls.method, thing.item.nameAt));
  const gear = (
    thing: Thing,
    elastic: number,
    worst: number | null,
    angle: number | null,
    extra: Figures = {},
    onto: number | null = worst,
    lean: number | null = null,
    least: number | null = angle,
  ): void => {
    const before = all.get(thing);
    const taken = onto === null ? open('kg', force(onto, thing).because) : massOf(force(onto, thing));
    const own = ratio(whileHeld(taken, held, least ?? angle), ratings.gear(thing, angle, lean, pulls));
    const used = before ? worstOf([before['capacity used'] as Derived, own]) : own;
    if (before && (before.tension?.value ?? Number.POSITIVE_INFINITY) >= (worst ?? Number.POSITIVE_INFINITY)) {
      all.set(thing, { ...before, 'capacity used': used });
      return;
    }
    const tension = force(worst, thing);
    const steepest: Derived =
      angle === null
        ? open('rad', [because(`${thing.name} hangs slack, so it has no angle.`, thing.item.nameAt)])
        : known(angle, 'rad', origin(pulls.method, thing.item.nameAt), Math.min(angle, least ?? angle), angle);
    all.set(thing, {
      tension,
      'elastic tension': force(elastic, thing),
      load: massOf(tension),
      angle: steepest,
      'capacity used': used,
      ...extra,
    });
  };
  built.edges.forEach(({ edge }, s) => {
    const pull = pulls.edges[s] as Pulls['edges'][number];
    for (const thing of edge.items)
      gear(thing, pull.elastic, pull.worst, pull.angle, {}, pull.worst, leanOf(edge, pull.angle), pull.angleLeast);
    if (edge.bottom.kind === 'gear') gear(edge.bottom.thing, pull.elastic, pull.worst, pull.angle);
  });
  built.hooks.forEach((hook, a) => {
    const own = (uses.get(hook)?.weight.high ?? 0) * g;
    const force_ = pulls.anchors[a] as number;
    gear(hook, force_ + own, force_ + own, Math.PI / 2, {}, force_);
    for (const [thing, place] of built.places)
      if ('anchor' in place && place.anchor === a && thing !== hook) gear(thing, force_, force_, Math.PI / 2);
    for (const one of built.inHooks) if (one.hook === a) gear(one.thing, force_, force_, Math.PI / 2);
  });
  built.bodies.forEach(({ thing }, b) => {
    const body = pulls.bodies[b] as Pulls['bodies'][number];
    const tilt = known(body.tilt, 'rad', origin(pulls.method, thing.item.nameAt), body.tilt, body.tiltMost);
    if (thing.kind === 'load') all.set(thing, { tilt });
    else beam(thing, body, tilt, b);
    built.model.bodies[b]?.points.forEach((_, p) => {
      const pick = [...built.places].find(
        ([one, place]) => one.kind === 'pick' && 'body' in place && place.body === b && place.point === p,
      )?.[0];
      if (pick) pickFigures(pick, pulls.points[b]?.[p] ?? 0, pulls.angles[b]?.[p] ?? null, pulls.leans[b]?.[p] ?? null);
    });
  });
  underOneTag(ratings, built, pulls, all);
  return all;

  /** How far a run leans off the z of the body it ends at; of others off the plumb line. */
  function leanOf(edge: Built['edges'][number]['edge'], angle: number | null): number | null {
    const place = built.places.get(edge.bottom.thing);
    const off =
      place && 'body' in place
        ? (pulls.leans[place.body]?.[place.point] ?? null)
        : angle === null
          ? null
          : Math.PI / 2 - angle;
    return off !== null && edge.bottom.kind === 'point' ? Math.min(off, Math.PI - off) : off;
  }

  function beam(thing: Thing, body: Pulls['bodies'][number], tilt: Derived, b: number): void {
    const own = (uses.get(thing)?.weight.high ?? 0) * g;
    const tops = built.edges
      .flatMap(({ edge }, s) => (edge.bottom.thing.owner === thing ? [pulls.edges[s]?.angle ?? null] : []))
      .filter((angle) => angle !== null);
    const flattest = tops.length ? Math.min(...tops) : null;
    const compression =
      body.compression === null
        ? open('N', [because(`The points of ${thing.name} do not lie along its own x.`, thing.item.nameAt)])
        : known(
            body.compression.value,
            'N',
            origin(pulls.method, thing.item.nameAt),
            body.compression.value,
            body.compression.worst,
          );
    // What hangs on a beam pulls straight down on it, however its top slings lean.
    const straight = Math.PI / 2;
    const carried = body.carried + own;
    gear(thing, carried, carried, flattest, { tilt, compression }, body.carried, null, straight);
    const figures = all.get(thing) as Figures;
    figures['capacity used'] = worstOf([
      figures['capacity used'] as Derived,
      ...pressed(thing, compression, flattest),
      ...pointsOf(thing, b),
    ]);
  }

  /** Its worst end; while the load is being broken free with what one top leg may take of that, as it leans. */
  function pressedBy(compression: Derived, flattest: number | null): Derived {
    const { value, high } = compression;
    if (value === null) return compression;
    if (held.value === null) return open('N', held.because, { at: compression.at });
    const lean = flattest === null ? 0 : Math.cos(flattest) / Math.sin(flattest);
    return known((high as number) + (held.high as number) * g * lean, 'N', compression);
  }

  /** What presses a beam together against its compression capacity, where it has one; its worst end. */
  function pressed(thing: Thing, compression: Derived, flattest: number | null): readonly Derived[] {
    const stated = ratings.input.table.given(thing.item, 'compression capacity');
    if (stated.state === 'absent' || stated.state === 'none') return [];
    const most = stated.state === 'known' ? asWritten(stated, 'N', 'typed here') : open('N', stated.because);
    return [
      ratio(pressedBy(compression, flattest), most, {
        load: 'compression',
        capacity: 'compression capacity',
      }),
    ];
  }

  /** Points of a beam that say what they may carry. */
  function pointsOf(thing: Thing, b: number): readonly Derived[] {
    return [...built.places].flatMap(([point, place]) => {
      if (point.owner !== thing || !('body' in place) || place.body !== b) return [];
      const stated = given(point.item, 'capacity');
      if (stated.state === 'absent' || stated.state === 'none') return [];
      const pull = force(pulls.points[b]?.[place.point] ?? null, point);
      const used = ratio(
        whileHeld(massOf(pull), held, pulls.angles[b]?.[place.point] ?? null),
        stated.state === 'known'
          ? asWritten(stated, 'kg', `${point.name} of ${thing.name}`)
          : open('kg', stated.because),
      );
      all.set(point, { pull, 'capacity used': used });
      return [used];
    });
  }

  function pickFigures(pick: Thing, newton: number, angle: number | null, lean: number | null): void {
    const pull = force(newton, pick);
    all.set(pick, {
      pull,
      load: massOf(pull),
      angle:
        angle === null
          ? open('rad', [because(`Nothing pulls at ${pick.name}.`, pick.item.nameAt)])
          : known(angle, 'rad', origin(pulls.method, pick.item.nameAt)),
      'capacity used': ratio(whileHeld(massOf(pull), held, angle), ratings.pick(pick, angle, lean)),
    });
  }
}

const massOf = (force: Derived): Derived =>
  force.value === null
    ? open('kg', force.because, { at: force.at })
    : known(force.value / g, 'kg', {
        formula: 'tension / 9.80665',
        inputs: [{ label: 'tension', value: force }],
        source: force.source,
        at: force.at,
      });
