// The body in a drawing file: read and measured once for each content of the file, then brought to metres by the unit the plan states.
import {
  type MeshFault,
  type MeshOpen,
  type MeshSolid,
  measureMesh,
  readMesh,
  type Shape,
  type Vec3,
} from '../mechanics/index.ts';
import { type BoundClause, type BoundPlan, type Item, textOf } from '../plan/index.ts';
import { unit } from '../quantities/units.ts';
import { because, type Notes } from './notes.ts';
import type { Done, Refuse, ShapeGiven } from './shape.ts';

const measured = new WeakMap<Uint8Array, Partial<Record<'stl' | 'obj', MeshSolid | MeshOpen | MeshFault>>>();

function measureOf(bytes: Uint8Array, kind: 'stl' | 'obj'): MeshSolid | MeshOpen | MeshFault {
  const known = measured.get(bytes) ?? {};
  measured.set(bytes, known);
  let found = known[kind];
  if (!found) {
    const mesh = readMesh(bytes, kind);
    found = 'fault' in mesh ? mesh : measureMesh(mesh);
    known[kind] = found;
  }
  return found;
}

/** The shape of `mesh`; a file that is not there, or holds no closed body, gives none. */
export function drawing(
  item: Item,
  clause: BoundClause,
  plan: BoundPlan,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const file = plan.attached.get(item);
  if (!file?.bytes) return refuse(because(`${file?.path ?? 'Its drawing'} cannot be read.`, clause.at));
  const found = measureOf(file.bytes, /\.obj$/i.test(file.path) ? 'obj' : 'stl');
  if (!('volume' in found)) {
    const [reason, figure] = 'fault' in found ? [found.fault, found.row ?? 0] : [found.not, found.count];
    return refuse(
      notes.add(
        'geometry-impossible',
        clause.valueAt,
        { shape: 'mesh', reason: `mesh-${reason}`, figures: [figure] },
        `${file.path} holds no closed body.`,
      ),
    );
  }
  const scale = unit(textOf(item, 'unit') ?? '')?.factor;
  if (scale === undefined) return refuse(because('The unit of its drawing could not be read.', item.at));
  const scaled = (point: Vec3): Vec3 => [point[0] * scale, point[1] * scale, point[2] * scale];
  const shape: Shape = {
    kind: 'mesh',
    volume: found.volume * scale ** 3,
    centre: scaled(found.centre),
    min: scaled(found.box.min),
    max: scaled(found.box.max),
  };
  return done(() => shape, textOf(item, 'from') ?? file.path, ['the drawing shows all of it, in the unit stated']);
}
