// What comes by its designation, its weight, or a file, and what hollow parts hold: sections, pipes, bars, sheets, meshes, liquids, items.
import type { ShapeRow } from '../types.ts';
import { must } from './clauses.ts';

export const stock = {
  section: {
    under: ['part'],
    form: { takes: 'designation', need: 'always', help: 'A rolled section by its designation.' },
    clauses: {
      'unit weight': {
        takes: 'amount',
        measures: 'weight per length',
        above: 0,
        help: 'Weight per length, where the table has none or another.',
      },
      length: must('Along the section.'),
    },
    material: 'steel unless said',
    axis: 'x; depth z, width y, centre at the box centre (an assumption shown)',
    help: 'A rolled section from the tables.',
    example: 'section W12x50, length 20 ft',
  },
  pipe: {
    under: ['part'],
    form: {
      takes: 'designation or amount',
      measures: 'length',
      above: 0,
      need: 'always',
      help: '`NPS 8` or `DN 200`.',
    },
    clauses: {
      schedule: { takes: 'label', help: 'Such as 40, 80, STD, XS.' },
      'unit weight': {
        takes: 'amount',
        measures: 'weight per length',
        above: 0,
        help: 'Weight per length, where the table has none or another.',
      },
      length: must('Along the pipe.'),
    },
    material: 'steel unless said',
    hollow: true,
    axis: 'x; box centre',
    help: 'A steel pipe by nominal size and schedule.',
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
      'unit weight': {
        takes: 'amount',
        measures: 'weight per length',
        above: 0,
        help: 'Weight per length, where the table has none or another.',
      },
      length: must('Along the bar.'),
    },
    material: 'steel unless said',
    axis: 'x; box centre',
    help: 'A round or reinforcing bar.',
    example: 'bar 20 mm, length 6 m',
  },
  sheet: {
    under: ['part'],
    form: { takes: 'size or amount', sides: 2, measures: 'length', above: 0, help: 'Length × width; or give `area`.' },
    clauses: {
      area: { takes: 'amount', measures: 'area', above: 0, help: 'Instead of two sides.' },
      'unit weight': {
        takes: 'amount',
        measures: 'weight per area',
        above: 0,
        need: 'always',
        help: 'Weight per area.',
      },
    },
    material: 'none',
    axis: 'x, y; box centre',
    help: 'Grating, cladding, matting: weight by area.',
    example: 'sheet 2 x 1 m, unit weight 30 kg/m2',
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
