// Volume, centre and box of a closed mesh, and why a mesh has none: open edges, faces turned the wrong way, bodies that run into each other.
import type { Box } from '../extent.ts';
import type { Vec3 } from '../vector.ts';
import type { Mesh } from './read.ts';

export interface MeshSolid {
  readonly volume: number;
  readonly centre: Vec3;
  readonly box: Box;
}

/** `open`: edges with a face on one side only; `turned`: faces of two directions meet; `crossing`: it runs through itself; `empty`: it encloses nothing. */
export interface MeshOpen {
  readonly not: 'open' | 'turned' | 'crossing' | 'empty';
  readonly count: number; // of edges, or of lines that saw it
}

/**
 * Sum of tetrahedra from the middle of the box to each triangle: V = Σ a·(b × c)/6, centre Σ V (a + b + c)/4 (divergence
 * theorem). Only of a mesh whose every edge has two faces with one sense of turning, and that does not run into itself along
 * 4,096 lines through it.
 */
export function measureMesh({ corners, triangles }: Mesh): MeshSolid | MeshOpen {
  const box = boxOf(corners);
  const edges = edgeFaults(triangles, corners.length / 3);
  if (edges) return edges;
  const middle = [0, 1, 2].map((i) => ((box.min[i] as number) + (box.max[i] as number)) / 2) as unknown as Vec3;
  let volume = 0;
  const moment = [0, 0, 0] as [number, number, number];
  for (let t = 0; t < triangles.length; t += 3) {
    const [i, j, k] = [
      (triangles[t] as number) * 3,
      (triangles[t + 1] as number) * 3,
      (triangles[t + 2] as number) * 3,
    ] as const;
    const ax = (corners[i] as number) - middle[0];
    const ay = (corners[i + 1] as number) - middle[1];
    const az = (corners[i + 2] as number) - middle[2];
    const bx = (corners[j] as number) - middle[0];
    const by = (corners[j + 1] as number) - middle[1];
    const bz = (corners[j + 2] as number) - middle[2];
    const cx = (corners[k] as number) - middle[0];
    const cy = (corners[k + 1] as number) - middle[1];
    const cz = (corners[k + 2] as number) - middle[2];
    const v = (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
    volume += v;
    moment[0] += (v * (ax + bx + cx)) / 4;
    moment[1] += (v * (ay + by + cy)) / 4;
    moment[2] += (v * (az + bz + cz)) / 4;
  }
  const size = Math.hypot(box.max[0] - box.min[0], box.max[1] - box.min[1], box.max[2] - box.min[2]);
  if (!(Math.abs(volume) > 1e-12 * size ** 3)) return { not: 'empty', count: 0 };
  const crossing = crossings(corners, triangles, box, Math.sign(volume));
  if (crossing) return { not: 'crossing', count: crossing };
  return {
    volume: Math.abs(volume),
    centre: middle.map((x, i) => x + (moment[i] as number) / volume) as unknown as Vec3,
    box,
  };
}

function boxOf(corners: Float64Array): Box {
  const min = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const max = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < corners.length; i++) {
    const value = corners[i] as number;
    const axis = i % 3;
    if (value < (min[axis] as number)) min[axis] = value;
    if (value > (max[axis] as number)) max[axis] = value;
  }
  return { min: min as unknown as Vec3, max: max as unknown as Vec3 };
}

/** Every edge once in each direction: closed, and all faces turned alike. Triangles without area are passed over. */
function edgeFaults(triangles: Uint32Array, corners: number): MeshOpen | null {
  const table = new Edges(triangles.length);
  let twice = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] as number, triangles[t + 1] as number, triangles[t + 2] as number];
    if (a === b || b === c || c === a) continue;
    twice += table.add(a * corners + b) + table.add(b * corners + c) + table.add(c * corners + a);
  }
  let open = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] as number, triangles[t + 1] as number, triangles[t + 2] as number];
    if (a === b || b === c || c === a) continue;
    open +=
      (table.has(b * corners + a) ? 0 : 1) +
      (table.has(c * corners + b) ? 0 : 1) +
      (table.has(a * corners + c) ? 0 : 1);
  }
  if (twice) return { not: 'turned', count: twice };
  return open ? { not: 'open', count: open } : null;
}

/** A set of whole numbers up to 2^53 in one flat table. */
class Edges {
  private readonly slots: Float64Array;
  private readonly mask: number;

  constructor(expected: number) {
    const size = 2 ** Math.ceil(Math.log2(Math.max(16, expected * 2)));
    this.slots = new Float64Array(size).fill(-1);
    this.mask = size - 1;
  }

  /** 1 if it was there already. */
  add(key: number): 0 | 1 {
    const slot = this.slot(key);
    if (this.slots[slot] === key) return 1;
    this.slots[slot] = key;
    return 0;
  }

  has(key: number): boolean {
    return this.slots[this.slot(key)] === key;
  }

  private slot(key: number): number {
    let slot = (Math.imul(key >>> 0, 0x9e3779b1) ^ Math.imul((key / 4294967296) >>> 0, 0x85ebca6b)) >>> 0;
    slot = (slot ^ (slot >>> 15)) & this.mask;
    while (this.slots[slot] !== -1 && this.slots[slot] !== key) slot = (slot + 1) & this.mask;
    return slot;
  }
}

const rays = 64; // along each side of the box

/**
 * Upright lines through the box: going up, the number of bodies one is inside of may only be 0 or 1. How many lines saw
 * something else. Bodies that overlap in less than the distance of two lines may go unseen.
 */
function crossings(corners: Float64Array, triangles: Uint32Array, box: Box, sense: number): number {
  const [x0, y0] = [box.min[0], box.min[1]];
  const [dx, dy] = [(box.max[0] - x0) / rays, (box.max[1] - y0) / rays];
  const hits: number[][] = Array.from({ length: rays * rays }, () => []);
  // Lines stand a little off the middle of their cells, so that they do not meet edges of regular meshes.
  const [offX, offY] = [0.5137, 0.5274];
  for (let t = 0; t < triangles.length; t += 3) {
    const a = (triangles[t] as number) * 3;
    const b = (triangles[t + 1] as number) * 3;
    const c = (triangles[t + 2] as number) * 3;
    const ax = corners[a] as number;
    const ay = corners[a + 1] as number;
    const bx = corners[b] as number;
    const by = corners[b + 1] as number;
    const cx = corners[c] as number;
    const cy = corners[c + 1] as number;
    const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
    if (area === 0) continue;
    const up = area * sense > 0 ? 1 : -1;
    const i0 = Math.max(0, Math.ceil((Math.min(ax, bx, cx) - x0) / dx - offX));
    const i1 = Math.min(rays - 1, Math.floor((Math.max(ax, bx, cx) - x0) / dx - offX));
    const j0 = Math.max(0, Math.ceil((Math.min(ay, by, cy) - y0) / dy - offY));
    const j1 = Math.min(rays - 1, Math.floor((Math.max(ay, by, cy) - y0) / dy - offY));
    for (let i = i0; i <= i1; i++) {
      const px = x0 + (i + offX) * dx - ax;
      for (let j = j0; j <= j1; j++) {
        const py = y0 + (j + offY) * dy - ay;
        const u = (px * (cy - ay) - (cx - ax) * py) / area;
        const v = ((bx - ax) * py - px * (by - ay)) / area;
        if (u < 0 || v < 0 || u + v > 1) continue;
        const az = corners[a + 2] as number;
        const z = az + u * ((corners[b + 2] as number) - az) + v * ((corners[c + 2] as number) - az);
        hits[i * rays + j]?.push(z, up);
      }
    }
  }
  const touching = 1e-9 * Math.hypot(dx * rays, dy * rays, box.max[2] - box.min[2]);
  return hits.filter((line) => tangled(line, touching)).length;
}

/**
 * Heights and senses of one line, in pairs: is one ever inside of less than none or more than one body? What lies at one height
 * counts together: bodies may stand on each other, and a face that is not convex is cut into triangles that fold back over it.
 */
function tangled(line: readonly number[], touching: number): boolean {
  const order = Array.from({ length: line.length / 2 }, (_, i) => i * 2).sort(
    (a, b) => (line[a] as number) - (line[b] as number),
  );
  let inside = 0;
  return order.some((at, i) => {
    inside -= line[at + 1] as number;
    const next = order[i + 1];
    const stays = next !== undefined && (line[next] as number) - (line[at] as number) <= touching;
    return !stays && (inside < 0 || inside > 1);
  });
}
