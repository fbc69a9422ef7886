// What large plans cost: one key in thousands of parts, beside one key in hundreds, and a drawing of 200,000 triangles, beside a general
// library that finds the same volume in the same run.
import { geometries, measurements, primitives } from '@jscad/modeling';
import { measureMesh } from '../../server/mechanics/mesh/measure.ts';
import { readMesh } from '../../server/mechanics/mesh/read.ts';
import { memoryFiles, Workspace } from '../../server/workspace/index.ts';
import { plan } from './plans.ts';

/** A plan of about so many parts: the generator puts a comment over each forty of them and a note under each nine. */
export const planOfParts = (parts: number): string => plan(Math.round(26 + parts * (1 + 1 / 40 + 1 / 9)));

/** A plan that is open; each call presses one key in a part in its middle and waits for results and findings; milliseconds. */
export function typing(parts: number): () => number {
  const file = `${parts}.liftplan`; // what is kept of `let` values is kept by the name
  const workspace = new Workspace(memoryFiles(new Map()));
  const text = planOfParts(parts);
  workspace.openText(file, 1, text);
  workspace.snapshot(file);
  const rows = text.split('\n');
  const line = rows.findIndex((row, n) => n > rows.length / 2 && /: box \d/.test(row));
  const character = (rows[line] as string).indexOf(': box ') + ': box '.length;
  let version = 1;
  return () => {
    version += 1;
    const put = version % 2 === 0;
    const end = { line, character: character + (put ? 0 : 1) };
    const start = performance.now();
    workspace.changeText(file, version, [{ range: { start: { line, character }, end }, text: put ? '1' : '' }]);
    const snapshot = workspace.snapshot(file);
    const time = performance.now() - start;
    if (!snapshot?.findings.length || snapshot.setAside)
      throw new Error('Nothing to time: the key changed no finding.');
    return time;
  };
}

/** A ball of the library as a binary STL file and as the library's own body. */
function ball(triangles: number) {
  const body = primitives.sphere({ radius: 1000, segments: 2 * Math.round(Math.sqrt(triangles / 4)) });
  const faces = geometries.geom3
    .toPolygons(body)
    .flatMap(({ vertices }) => vertices.slice(2).map((_, i) => [vertices[0], vertices[i + 1], vertices[i + 2]].flat()));
  const view = new DataView(new ArrayBuffer(84 + faces.length * 50));
  view.setUint32(80, faces.length, true);
  faces.forEach((face, t) => face.forEach((x, i) => view.setFloat32(84 + t * 50 + 12 + i * 4, x as number, true)));
  return { body, bytes: new Uint8Array(view.buffer) };
}

export interface Timed {
  readonly what: string;
  readonly times: readonly number[];
  readonly peer: readonly number[]; // what it is held against
}

/** Milliseconds of each, in turns with what it is held against. */
export function largeTimes(rounds: number): readonly Timed[] {
  const [few, many] = [typing(500), typing(5_000)];
  const { body, bytes } = ball(200_000);
  const ours = (): number => {
    const start = performance.now();
    const mesh = readMesh(bytes, 'stl');
    const found = 'fault' in mesh ? mesh : measureMesh(mesh);
    const time = performance.now() - start;
    // Corners in a file have seven digits.
    if (!('volume' in found) || Math.abs(found.volume / measurements.measureVolume(body) - 1) > 1e-5)
      throw new Error('Nothing to time: the two volumes differ.');
    return time;
  };
  const library = (): number => {
    const copy = geometries.geom3.clone(body); // the library keeps what it measured with the body
    const start = performance.now();
    measurements.measureVolume(copy);
    return performance.now() - start;
  };
  return [
    inTurns('one key in 5,000 parts, to findings', many, few, rounds, 20),
    inTurns('mesh of 200,000 triangles', ours, library, Math.ceil(rounds / 4), 2),
  ];
}

function inTurns(what: string, own: () => number, other: () => number, rounds: number, warm: number): Timed {
  const timed = { what, times: [] as number[], peer: [] as number[] };
  for (let round = -warm; round < rounds; round++) {
    const [time, peer] = [own(), other()];
    if (round < 0) continue;
    timed.times.push(time);
    timed.peer.push(peer);
  }
  return timed;
}
