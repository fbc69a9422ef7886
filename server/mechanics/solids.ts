// How much material a shape holds and where its centre is, or why it cannot be made.

import { type Box, boxOf } from './extent.ts';
import type { Shape, ShapeKind } from './shapes.ts';
import { bent } from './solids/bent.ts';
import { bolting } from './solids/bolting.ts';
import { curved } from './solids/curved.ts';
import { flat } from './solids/flat.ts';
import { heads } from './solids/heads.ts';
import { members } from './solids/members.ts';
import { pipework } from './solids/pipework.ts';
import { round } from './solids/round.ts';
import { figureOf, type Impossible, type Row, type Worked } from './solids/row.ts';
import { shop } from './solids/shop.ts';
import { led } from './solids/swept.ts';
import { identity, type Vec3 } from './vector.ts';

export type { Fault, Impossible } from './solids/row.ts';

/** What a shape amounts to; centre and box are measured from its datum point, in its own axes. */
export interface Solid {
  /** Of the material (of an envelope: of all it encloses), m3; left out where only a mass is given (section, sheet). */
  readonly volume?: number;
  /** kg, where the shape states a mass per length or area; it goes before volume times density. */
  readonly mass?: number;
  readonly centre: Vec3;
  readonly box: Box;
}

/** The printed formula of a figure and its inputs by name (SI). */
export interface Working {
  readonly gives: 'volume' | 'mass';
  readonly formula: string;
  readonly inputs: Readonly<Record<string, number>>;
  /** Inputs that are worked out themselves. */
  readonly from?: Readonly<Record<string, Working>>;
}

type Rows = { readonly [Kind in ShapeKind]: Row<Extract<Shape, { kind: Kind }>> };
const rows: Rows = {
  ...flat,
  ...round,
  ...bent,
  ...curved,
  ...heads,
  ...members,
  ...shop,
  ...led,
  ...pipework,
  ...bolting,
};
const rowOf = (shape: Shape): Row<Shape> => rows[shape.kind] as unknown as Row<Shape>;

/** Material, centre and box of a shape, or why it cannot be made: sizes not above zero, walls that do not fit and the like. */
export function solid(shape: Shape): Solid | Impossible {
  const row = rowOf(shape);
  const fault = row.fault(shape);
  if (fault) return fault;
  const [volume, mass] = [row.volume?.(shape), row.mass?.(shape)];
  return {
    ...(volume && { volume: figureOf(volume) }),
    ...(mass && { mass: figureOf(mass) }),
    centre: row.centre(shape),
    box: boxOf(shape, identity),
  };
}

/** What the weight of a shape is worked out from: its mass where it states one, else its volume. Nothing if impossible. */
export function working(shape: Shape): Working | undefined {
  const row = rowOf(shape);
  if (row.fault(shape)) return undefined;
  const mass = row.mass?.(shape);
  const worked = mass ?? row.volume?.(shape);
  return worked && workingOf(worked, mass ? 'mass' : 'volume');
}

function workingOf({ formula, inputs, from }: Worked, gives: Working['gives']): Working {
  const pieces = Object.entries(from ?? {}).map(([name, piece]) => [name, workingOf(piece, gives)] as const);
  return { gives, formula: formula.text, inputs, ...(pieces.length && { from: Object.fromEntries(pieces) }) };
}
