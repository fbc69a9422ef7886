// Reads a mesh from the bytes of a drawing file: STL (binary or text) and OBJ. Knows nothing of files; units are the caller's.

/** Corners three coordinates each, triangles three indices each. */
export interface Mesh {
  readonly corners: Float64Array;
  readonly triangles: Uint32Array;
}

/** Why there is no mesh. `row` counts lines of text from 1; null where there are none. */
export interface MeshFault {
  readonly fault: 'not-a-mesh' | 'cut-short' | 'runs-on' | 'too-large' | 'bad-number' | 'no-triangles' | 'curved';
  readonly row: number | null;
}

/** More triangles than this are not read. */
export const mostTriangles = 2_000_000;

const header = 84;
const record = 50;

/** The mesh in a file's bytes; `kind` by the file's ending. Never throws. */
export function readMesh(bytes: Uint8Array, kind: 'stl' | 'obj'): Mesh | MeshFault {
  if (kind === 'obj') return readObj(new TextDecoder().decode(bytes));
  const count =
    bytes.length >= header ? new DataView(bytes.buffer, bytes.byteOffset, bytes.length).getUint32(80, true) : 0;
  const binary = bytes.length >= header && bytes.length === header + count * record;
  if (binary) return readBinary(bytes, count);
  if (/^\s*solid\b/i.test(new TextDecoder().decode(bytes.subarray(0, 100)))) {
    const text = new TextDecoder().decode(bytes);
    if (/\bfacet\b/i.test(text.slice(0, 2000)) || /^\s*solid[^\r\n]*\s+endsolid/i.test(text)) return readText(text);
  }
  if (bytes.length <= header || count === 0 || count > mostTriangles) return { fault: 'not-a-mesh', row: null };
  return { fault: bytes.length < header + count * record ? 'cut-short' : 'runs-on', row: null };
}

function readBinary(bytes: Uint8Array, count: number): Mesh | MeshFault {
  if (count === 0) return { fault: 'no-triangles', row: null };
  if (count > mostTriangles) return { fault: 'too-large', row: null };
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const weld = new Weld(count * 3);
  const triangles = new Uint32Array(count * 3);
  for (let t = 0; t < count; t++)
    for (let c = 0; c < 3; c++) {
      const at = header + t * record + 12 + c * 12;
      const x = view.getFloat32(at, true);
      const y = view.getFloat32(at + 4, true);
      const z = view.getFloat32(at + 8, true);
      if (!Number.isFinite(x + y + z)) return { fault: 'bad-number', row: null };
      triangles[t * 3 + c] = weld.corner(x, y, z);
    }
  return { corners: weld.corners(), triangles };
}

function readText(text: string): Mesh | MeshFault {
  const weld = new Weld(1024);
  const triangles: number[] = [];
  const vertex = /\bvertex\s+(\S+)\s+(\S+)\s+(\S+)/gi;
  for (let found = vertex.exec(text); found; found = vertex.exec(text)) {
    const [x, y, z] = [Number(found[1]), Number(found[2]), Number(found[3])] as [number, number, number];
    if (!Number.isFinite(x + y + z)) return { fault: 'bad-number', row: rowOf(text, found.index) };
    triangles.push(weld.corner(x, y, z));
    if (triangles.length > mostTriangles * 3) return { fault: 'too-large', row: null };
  }
  if (!triangles.length) return { fault: 'no-triangles', row: null };
  if (triangles.length % 3 !== 0 || !/endsolid\b[^\r\n]*\s*$/i.test(text))
    return { fault: 'cut-short', row: rowOf(text, text.length) };
  return { corners: weld.corners(), triangles: Uint32Array.from(triangles) };
}

const rowOf = (text: string, at: number): number => text.slice(0, at).split('\n').length;

/** Bodies of curves and surfaces: passed over, their weight would be lost. */
const curved: ReadonlySet<string> = new Set(['curv', 'surf', 'bzp', 'bsp', 'cdc', 'cdp']);

/** Corners and faces; faces of more than three corners are cut into a fan. */
function readObj(text: string): Mesh | MeshFault {
  const weld = new Weld(1024);
  const named: number[] = [];
  const triangles: number[] = [];
  for (const [i, line] of text.split(/\r\n|\n|\r/).entries()) {
    const words = line.trim().split(/\s+/);
    if (words[0] === 'v') {
      const [x, y, z] = words.slice(1, 4).map(Number) as [number, number, number];
      if (!Number.isFinite(x + y + z)) return { fault: 'bad-number', row: i + 1 };
      named.push(weld.corner(x, y, z));
    } else if (words[0] === 'f') {
      const corners = words.slice(1).map((word) => {
        const index = Number(word.split('/')[0]);
        return named[index < 0 ? named.length + index : index - 1];
      });
      if (corners.length < 3 || corners.some((corner) => corner === undefined))
        return { fault: 'bad-number', row: i + 1 };
      for (let c = 1; c + 1 < corners.length; c++)
        triangles.push(corners[0] as number, corners[c] as number, corners[c + 1] as number);
      if (triangles.length > mostTriangles * 3) return { fault: 'too-large', row: i + 1 };
    } else if (curved.has(words[0] as string)) return { fault: 'curved', row: i + 1 };
  }
  if (!triangles.length) return { fault: named.length ? 'no-triangles' : 'not-a-mesh', row: null };
  return { corners: weld.corners(), triangles: Uint32Array.from(triangles) };
}

/** Gives corners at exactly one place one number: a table of hashes with open addresses. */
class Weld {
  private xyz: Float64Array;
  private table: Int32Array;
  private used = 0;

  constructor(expected: number) {
    this.xyz = new Float64Array(Math.max(16, expected) * 3);
    this.table = new Int32Array(powerOf2(Math.max(16, expected) * 2)).fill(-1);
  }

  corner(x: number, y: number, z: number): number {
    const [a, b, c] = [x + 0, y + 0, z + 0]; // -0 is 0
    if (this.used * 2 >= this.table.length) this.grow();
    let slot = hash(a, b, c) & (this.table.length - 1);
    for (let found = this.table[slot] as number; found >= 0; found = this.table[slot] as number) {
      if (this.xyz[found * 3] === a && this.xyz[found * 3 + 1] === b && this.xyz[found * 3 + 2] === c) return found;
      slot = (slot + 1) & (this.table.length - 1);
    }
    this.table[slot] = this.used;
    if ((this.used + 1) * 3 > this.xyz.length) {
      const more = new Float64Array(this.xyz.length * 2);
      more.set(this.xyz);
      this.xyz = more;
    }
    this.xyz.set([a, b, c], this.used * 3);
    return this.used++;
  }

  corners(): Float64Array {
    return this.xyz.slice(0, this.used * 3);
  }

  private grow(): void {
    this.table = new Int32Array(this.table.length * 2).fill(-1);
    for (let i = 0; i < this.used; i++) {
      let slot =
        hash(this.xyz[i * 3] as number, this.xyz[i * 3 + 1] as number, this.xyz[i * 3 + 2] as number) &
        (this.table.length - 1);
      while ((this.table[slot] as number) >= 0) slot = (slot + 1) & (this.table.length - 1);
      this.table[slot] = i;
    }
  }
}

const powerOf2 = (n: number): number => 2 ** Math.ceil(Math.log2(n));
const bits = new Float64Array(1);
const words = new Int32Array(bits.buffer);

function hash(x: number, y: number, z: number): number {
  let h = 17;
  for (const value of [x, y, z]) {
    bits[0] = value;
    h = Math.imul(h ^ (words[0] as number), 0x9e3779b1);
    h = Math.imul(h ^ (words[1] as number) ^ (h >>> 15), 0x85ebca6b);
  }
  return (h ^ (h >>> 13)) >>> 0;
}
