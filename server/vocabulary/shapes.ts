// The shapes a part or a cut-out may have: their clauses, own axes and datum points.
import { cutouts } from './shapes/cutouts.ts';
import { flat } from './shapes/flat.ts';
import { pipework } from './shapes/pipework.ts';
import { round } from './shapes/round.ts';
import { shop } from './shapes/shop.ts';
import { stock } from './shapes/stock.ts';
import type { ShapeRow } from './types.ts';

export const shapes = { ...flat, ...round, ...shop, ...stock, ...pipework, ...cutouts } as const satisfies Readonly<
  Record<string, ShapeRow>
>;

export { welds } from './shapes/shop.ts';

export type ShapeName = keyof typeof shapes;
export const shapeNames = Object.keys(shapes) as ShapeName[];
