// What comes by its designation, its weight, or a file, and what hollow parts hold: sections, pipes, bars, ropes, chains, sheets, meshes, liquids, items.
import type { ClauseRow, ShapeRow } from '../types.ts';
import { must } from './clauses.ts';

const weightPerLength = (where = 'where the table has none or another'): ClauseRow => ({
  takes: 'amount',
  measures: 'weight per length',
  above: 0,
  help: `Weight per length, ${where}.`,
});
const construction: ClauseRow = {
  takes: 'designation',
  help: 'Such as 6x36 IWRC or 35x7; of chain short link, stud link, studless.',
};

export const stock = {
  section: {
    under: ['part'],
    form: { takes: 'designation', need: 'always', help: 'By its designation.' },
    clauses: {
      'unit weight': weightPerLength(),
      length: must('Along the section.'),
    },
    material: 'steel unless said',
    axis: 'x; depth z, width y, centre at the box centre (an assumption shown)',
    help: 'A rolled section, rail or sheet pile from the tables.',
    example: 'section W12x50, length 20 ft',
  },
  pipe: {
    under: ['part'],
    form: {
      takes: 'designation or amount',
      measures: 'length',
      above: 0,
      need: 'always',
      help: '`NPS 8`, `DN 200`, or `copper 28 mm`.',
    },
    clauses: {
      schedule: {
        takes: 'label',
        help: '40, STD, XS of steel; K, L, M of copper; K9, C40, PC350 of ductile iron; SDR11 of plastic.',
      },
      'unit weight': weightPerLength(),
      length: must('Along the pipe.'),
    },
    material: 'steel unless said',
    hollow: true,
    axis: 'x; box centre',
    help: 'A pipe by nominal size and schedule: steel, or what the schedule is of.',
    example: 'pipe NPS 8, schedule 40, length 20 ft',
  },
  bar: {
    under: ['part'],
    form: {
      takes: 'designation or amount',
      measures: 'length',
      above: 0,
      need: 'always',
      help: '`"#5"`, or a diameter.',
    },
    clauses: {
      'unit weight': weightPerLength(),
      length: must('Along the bar.'),
    },
    material: 'steel unless said',
    axis: 'x; box centre',
    help: 'A round or reinforcing bar.',
    example: 'bar 20 mm, length 6 m',
  },
  rope: {
    under: ['part'],
    form: { takes: 'amount', measures: 'length', above: 0, need: 'always', help: 'Its diameter.' },
    clauses: {
      construction,
      'unit weight': weightPerLength("in place of the construction's"),
      length: must('Along the rope.'),
    },
    material: 'none',
    axis: 'x; box centre',
    help: 'Wire rope by the length, stretched out.',
    example: 'rope 20 mm, construction 6x36 IWRC, length 40 m',
  },
  chain: {
    under: ['part'],
    form: { takes: 'amount', measures: 'length', above: 0, need: 'always', help: 'The diameter of its bar.' },
    clauses: {
      construction,
      'unit weight': weightPerLength("in place of the construction's"),
      length: must('Along the chain.'),
    },
    material: 'none',
    axis: 'x; box centre',
    help: 'Chain by the length, stretched out.',
    example: 'chain 13 mm, construction short link, length 10 m',
  },
  sheet: {
    under: ['part'],
    form: { takes: 'size or nothing', sides: 2, measures: 'length', above: 0, help: 'Length × width; or give `area`.' },
    clauses: {
      area: { takes: 'amount', measures: 'area', above: 0, help: 'Instead of two sides.' },
      kind: {
        takes: 'designation',
        help: '`plate 12 mm`, `floor plate 6 mm`, `sheet 10 gauge`, a grating, a mesh such as A393, a wall of sheet piles.',
      },
      'unit weight': {
        takes: 'amount',
        measures: 'weight per area',
        above: 0,
        help: 'Weight per area; or give `kind`.',
      },
    },
    material: 'none',
    axis: 'x, y; box centre',
    help: 'Floor plate, grating, mesh, cladding, matting: weight by area.',
    example: 'sheet 2 x 1 m, kind floor plate 6 mm',
  },
  mesh: {
    under: ['part'],
    form: {
      takes: 'text',
      need: 'always',
      help: 'A drawing file, .stl or .obj, by its path from this file.',
    },
    clauses: {
      unit: {
        takes: 'word',
        words: ['mm', 'cm', 'm', 'in', 'ft'],
        need: 'always',
        help: 'What one unit of length in the file is; such files do not say.',
      },
    },
    material: 'of',
    axis: "as drawn; the file's zero",
    help: 'A closed body from a drawing file.',
    example: 'mesh "bracket.stl", unit mm, of carbon steel',
  },
  liquid: {
    under: ['part'],
    form: { takes: 'amount or nothing', measures: 'volume', above: 0, help: 'Its volume; or give `fill` or `level`.' },
    clauses: {
      fill: { takes: 'amount', measures: 'percent', least: 0, most: 1, help: 'Share of the inside.' },
      level: { takes: 'amount', measures: 'length', least: 0, help: 'Depth from the lowest point of the inside.' },
    },
    material: 'of',
    axis: 'lies at the bottom of what `inside` names; else its centre stands `at`',
    help: 'What a hollow part holds.',
    example: 'liquid 55 US gal, of water, inside "Casing"',
  },
  item: {
    under: ['part'],
    form: { takes: 'amount', measures: 'weight', above: 0, need: 'always', help: 'The weight of each.' },
    clauses: {
      size: { takes: 'size', sides: 3, measures: 'length', least: 0, help: 'Length × width × height.' },
      centre: { takes: 'point', measures: 'length', help: 'Centre of gravity, counted from the box centre.' },
    },
    material: 'none',
    axis: 'box centre; without size a point',
    help: 'Something whose weight is known.',
    example: 'item 88 lb, by maker data, size 4 x 2 x 2 ft',
  },
} as const satisfies Readonly<Record<string, ShapeRow>>;
