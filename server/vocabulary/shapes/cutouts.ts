// Shapes that only take something away: holes and openings.
import type { ShapeRow } from '../types.ts';
import { length, must, nothing } from './clauses.ts';

export const cutouts = {
  hole: {
    under: ['less'],
    form: nothing,
    clauses: { diameter: must('Across the hole.'), depth: length('Left out: right through a box, plate or cylinder.') },
    material: 'none',
    axis: 'z',
    help: 'A round hole.',
    example: 'hole, diameter 6 in',
  },
  opening: {
    under: ['less'],
    form: { takes: 'size', sides: 2, measures: 'length', above: 0, need: 'always', help: 'Along own x × along own y.' },
    clauses: { depth: length('Left out: right through a box, plate or cylinder.') },
    material: 'none',
    axis: 'z; sides along own x, y',
    help: 'A rectangular opening.',
    example: 'opening 1.2 x 1.5 m',
  },
} as const satisfies Readonly<Record<string, ShapeRow>>;
