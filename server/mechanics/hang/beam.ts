// Section forces along a beam that hangs: compression, shear, torsion and bending between its lugs, self weight included.
import { cross, rotate, scale, subtract, transpose, type Vec3 } from '../vector.ts';
import type { HangModel, Placed } from './model.ts';

/** A largest value along the beam and where it stands on the beam's x axis, m. */
export interface Peak {
  readonly value: number;
  readonly at: number;
}

/** About the beam's own x axis, left end's side; N and N m. All values at least 0. */
export interface Sections {
  readonly compression: Peak;
  readonly tension: Peak;
  readonly shearY: Peak;
  readonly shearZ: Peak;
  readonly torsion: Peak;
  /** About y: bending in the vertical plane. */
  readonly bendingY: Peak;
  readonly bendingZ: Peak;
  /** What is left beyond the right end, as a part of the forces at work: the check of the whole. */
  readonly residual: number;
}

interface PointForce {
  readonly at: Vec3;
  readonly force: Vec3;
}

/** Self weight: q = mean (1 + slope · 2(x − middle)/length) N/m from x0 to x1, at (y, z) of the centre. */
interface SelfWeight {
  readonly x0: number;
  readonly x1: number;
  readonly mean: number;
  readonly slope: number;
  readonly aside: Vec3;
  readonly down: Vec3;
}

/**
 * Section forces of a body with an `axis`, from the forces on its nodes; null for a body without one.
 * Section at s, everything left of it: F = −Σ f, M = −Σ (P − (s, 0, 0)) × f. Compression = −F_x. Between stations each
 * is at most cubic in s, so peaks are found exactly; both sides of each station are looked at.
 */
export function sectionForces(model: HangModel, placed: Placed, body: number): Sections | null {
  const axis = model.bodies[body]?.axis;
  if (!axis) return null;
  const { points, self } = loads(model, placed, body, axis);
  const stations = [...new Set([axis[0], axis[1], ...points.map((point) => point.at[0])])].sort((a, b) => a - b);
  const section = (s: number, beyond: boolean) => sectionAt(points, self, s, beyond);
  const peaks = newPeaks();
  stations.forEach((s, i) => {
    note(peaks, s, section(s, false));
    note(peaks, s, section(s, true));
    const next = stations[i + 1];
    if (next !== undefined) for (const x of turningPoints(section, s, next)) note(peaks, x, section(x, true));
  });
  const work = points.reduce((sum, point) => sum + Math.hypot(...point.force), 0) + self.mean * (axis[1] - axis[0]);
  const end = section(stations.at(-1)!, true);
  const reach = Math.max(...stations.map(Math.abs), axis[1] - axis[0]);
  const left = Math.max(Math.hypot(end[0]!, end[1]!, end[2]!), Math.hypot(end[3]!, end[4]!, end[5]!) / reach);
  const [compression, tension, shearY, shearZ, torsion, bendingY, bendingZ] = peaks as [Peak, ...Peak[]] as Seven;
  const residual = work > 0 ? left / work : 0;
  return { compression, tension, shearY, shearZ, torsion, bendingY, bendingZ, residual };
}

type Seven = [Peak, Peak, Peak, Peak, Peak, Peak, Peak];

function newPeaks(): Peak[] {
  return Array.from({ length: 7 }, () => ({ value: 0, at: 0 }));
}

/** Fx, Fy, Fz, Mx, My, Mz against the peaks: compression, tension, the two shears, torsion, the two bendings. */
function note(peaks: Peak[], at: number, [fx, fy, fz, mx, my, mz]: Section): void {
  [-fx, fx, Math.abs(fy), Math.abs(fz), Math.abs(mx), Math.abs(my), Math.abs(mz)].forEach((value, i) => {
    if (value > peaks[i]!.value) peaks[i] = { value, at };
  });
}

type Section = [number, number, number, number, number, number];

function loads(model: HangModel, placed: Placed, body: number, [x0, x1]: readonly [number, number]) {
  const points: PointForce[] = [];
  const { weight, cog, points: named } = model.bodies[body]!;
  const place = placed.bodies[body]!;
  model.slings.forEach((sling, s) => {
    sling.path.forEach((node, k) => {
      if (!('body' in node) || node.body !== body) return;
      points.push({ at: named[node.point]!.at, force: placed.slings[s]!.forces[k]! });
    });
  });
  for (const dead of model.forces ?? []) {
    if (dead.body !== body) continue;
    points.push({ at: dead.point, force: rotate(transpose(place.rotation), dead.force) });
  }
  const down = scale(place.up, -1);
  const middle = (x0 + x1) / 2;
  const half = (x1 - x0) / 2;
  // A line load can stand for a centre within the middle third; what lies further out is a point weight at the end.
  const lean = (3 * (cog[0] - middle)) / half;
  const slope = Math.min(1, Math.max(-1, lean));
  const share = Math.abs(lean) <= 1 ? 1 : Math.max(0, (half - Math.abs(cog[0] - middle)) / (half - half / 3));
  const self: SelfWeight = { x0, x1, mean: (share * weight) / (x1 - x0), slope, aside: [0, cog[1], cog[2]], down };
  if (share < 1) {
    const lineCentre = middle + (slope * half) / 3;
    const at = share > 0 ? (cog[0] - share * lineCentre) / (1 - share) : cog[0];
    points.push({ at: [at, cog[1], cog[2]], force: scale(down, (1 - share) * weight) });
  }
  return { points, self };
}

/** F and M at s of all that acts left of it; point forces at s itself count when looking from beyond. */
function sectionAt(points: readonly PointForce[], self: SelfWeight, s: number, beyond: boolean): Section {
  const total: Section = [0, 0, 0, 0, 0, 0];
  const origin: Vec3 = [s, 0, 0];
  const addForce = (at: Vec3, force: Vec3) => {
    const moment = cross(subtract(at, origin), force);
    for (let d = 0; d < 3; d++) {
      total[d] = total[d]! - force[d]!;
      total[d + 3] = total[d + 3]! - moment[d]!;
    }
  };
  for (const { at, force } of points) if (at[0] < s || (beyond && at[0] === s)) addForce(at, force);
  const end = Math.min(s, self.x1);
  if (end > self.x0) {
    const { amount, centre } = lineLoad(self, end);
    if (amount > 0) addForce([centre, self.aside[1], self.aside[2]], scale(self.down, amount));
  }
  return total;
}

/** Weight of the line load from x0 up to `end`, and the x of its resultant. */
function lineLoad({ x0, x1, mean, slope }: SelfWeight, end: number): { amount: number; centre: number } {
  const length = x1 - x0;
  const t = (end - x0) / length;
  // With t the part of the length: q = mean (1 − slope + 2 slope t).
  const amount = mean * length * ((1 - slope) * t + slope * t * t);
  const moment = mean * length * length * (((1 - slope) * t * t) / 2 + (2 * slope * t ** 3) / 3);
  return { amount, centre: amount > 0 ? x0 + moment / amount : x0 };
}

/** Where a moment has an extreme inside (a, b): roots of the derivative of the cubic through four sections. */
function turningPoints(section: (s: number, beyond: boolean) => Section, a: number, b: number): number[] {
  const span = b - a;
  const values = [section(a, true), section(a + span / 3, true), section(b - span / 3, true), section(b, false)];
  const found: number[] = [];
  for (let m = 3; m < 6; m++) {
    const [v0, v1, v2, v3] = values.map((value) => value[m]!) as [number, number, number, number];
    // Newton's forward differences at t = 0, 1, 2, 3 give v = v0 + c1 t + c2 t² + c3 t³.
    const d1 = v1 - v0;
    const d2 = v2 - 2 * v1 + v0;
    const d3 = v3 - 3 * v2 + 3 * v1 - v0;
    const c1 = d1 - d2 / 2 + d3 / 3;
    const c2 = d2 / 2 - d3 / 2;
    const c3 = d3 / 6;
    const size = Math.abs(v0) + Math.abs(v1) + Math.abs(v2) + Math.abs(v3);
    for (const t of quadraticRoots(3 * c3, 2 * c2, c1, 1e-12 * size)) {
      if (t > 0 && t < 3) found.push(a + (t / 3) * span);
    }
  }
  return found;
}

function quadraticRoots(a: number, b: number, c: number, nothing: number): number[] {
  if (Math.abs(a) <= nothing) return Math.abs(b) <= nothing ? [] : [-c / b];
  const under = b * b - 4 * a * c;
  if (under < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(under));
  return q === 0 ? [0] : [q / a, c / q];
}
