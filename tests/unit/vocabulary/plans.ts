// Plans around one row of the vocabulary: its example where it may stand, with all that the example names.
import { report } from '../../../server/report/index.ts';
import { type ClauseRow, type ShapeRow, statements } from '../../../server/vocabulary/index.ts';
import { check } from '../../../server/workspace/memory.ts';
import type { Snapshot } from '../../../server/workspace/types.ts';

/** What examples name, by the line that declares it; one that an example declares itself is left out. */
const declared: readonly string[] = [
  'material "cured grout": density 131 lb/ft3, from "supplier sheet 11"',
  'load "Pump skid": contingency 5 %, datum "middle"',
  '  part "Deck plate": plate 4 x 2 x 0.1 m, of carbon steel, at (0, 0, 0)',
  '  part "Casing": tube, outside 30 in, wall 1 in, length 3 ft, of cast iron, at (0, 0, 2 m)',
  '  part "Shell": tube, outside 1 m, wall 10 mm, length 2 m, of carbon steel, at (0, 0, 4 m)',
  '  part "East head": hemispherical head, outside 1 m, wall 10 mm, of carbon steel, against "Shell" z',
  '  pick NW: at (-1, 1, 0.1) m, capacity 3 t',
  'gear',
  '  block "Main block": weight 610 lb, capacity 20 short ton',
  '  sling S1..S4: wire rope, diameter 20 mm, length 4 m, weight 12 kg, capacity 4 t',
  '  shackle K1..K4: weight 5 lb, capacity 4.75 t',
  'crane "Yard crane 2": kind mobile',
  'chart "Yard 2, 60 ft boom": setup "outriggers fully out"',
  'stage "Turning": incline x 30 deg',
];

export interface Placed {
  readonly snapshot: Snapshot;
  readonly row: number; // of the line asked about
}

/** The example of a statement under the first block it may stand in. */
export function planFor(name: string, example: string): Placed {
  // A weighing is only one with the supports it was read on.
  const supports =
    name === 'weighed'
      ? ['    support J1: at (1 m, 0, 0), reads 20 kN', '    support J2: at (-1 m, 0, 0), reads 20 kN']
      : [];
  return placed([...parents(name), example], supports);
}

/** A shape's example as the shape of a part, or of a cut-out. */
export function shapeExample(name: string, { example, under }: ShapeRow): Placed {
  if (under.includes('part')) {
    if (name === 'liquid')
      return placed(
        ['load "Pump skid": contingency 5 %', `part "X": ${example}`],
        ['  part "Casing": tube, outside 30 in, wall 1 in, length 3 ft, of cast iron, at (0, 0, 2 m)'],
      );
    return placed(
      ['load "Pump skid": contingency 5 %', `part "X": ${example}, at (0, 0, 9 m)`],
      ['    empty "looked through"'],
    );
  }
  return placed([
    'load "Pump skid": contingency 5 %',
    'part "X": box 4 x 4 x 0.2 m, of carbon steel, at (0, 0, 9 m)',
    `less: ${example}`,
  ]);
}

/** Lines above a statement, from the top level down: the examples of the blocks it stands in. */
function parents(name: string): readonly string[] {
  const [block = 'file'] = statements[name]?.under ?? [];
  return block === 'file' ? [] : [...parents(block), statements[block]?.example ?? ''];
}

/** A plan with these lines, each in the one before. What else it names stands in a library. */
function placed(lines: readonly string[], more: readonly string[] = []): Placed {
  const own = lines.map((line, level) => `${'  '.repeat(level)}${line}`);
  const isPlan = lines[0]?.startsWith('plan') === true;
  const text = [
    ...(isPlan ? [] : ['plan "P": date 2026-05-18, units metric', 'use "others.liftplan"']),
    ...own,
    ...more,
  ];
  const others = declared.filter(
    (line) => !lines.some((written) => headOf(written) !== '' && headOf(written) === headOf(line)),
  );
  const files = {
    'plan.liftplan': `${text.join('\n')}\n`,
    'others.liftplan': others.join('\n'),
    'library/yard.liftplan': '',
    'bill.csv': 'name,weight kg,x m,y m,z m\nBeam,412.5,0,0,0.2\n',
    'bracket.stl': stlOf([
      [0, 0, 0],
      [200, 0, 0],
      [0, 100, 0],
      [0, 0, 50],
    ]),
  };
  return { snapshot: check(files, 'plan.liftplan'), row: (isPlan ? 0 : 2) + lines.length - 1 };
}

/** A tetrahedron as a text STL. */
const stlOf = (corners: readonly (readonly number[])[]): string =>
  [
    'solid bracket',
    ...[
      [0, 2, 1],
      [0, 1, 3],
      [1, 2, 3],
      [0, 3, 2],
    ].flatMap((face) => [
      'facet normal 0 0 0',
      'outer loop',
      ...face.map((corner) => `vertex ${corners[corner]?.join(' ')}`),
      'endloop',
      'endfacet',
    ]),
    'endsolid bracket',
    '',
  ].join('\n');

/** Keyword and name: `sling S1..S4`. */
const headOf = (line: string): string => /^ *([a-z -]+ (?:"[^"]+"|[A-Z][\w.-]*))/.exec(line)?.[1] ?? '';

/** What the sheet and the plan say beside the example itself, and what a person must judge, is not the example's fault. */
const others = new Set([
  'weight-unknown',
  'reading-unclear',
  'cutout-outside',
  'not-judged',
  'left-unused',
  'holding-unstated',
  'contingency-missing',
  'centre-assumed',
  'weight-unplaced',
  'evidence-disagrees',
  'material-doubtful',
  'part-unplaced',
  'expect-failed',
  'path-broken',
  'hang-unsolved',
  'contents-unstated',
  'measured-lighter',
]);

/** Findings on the example's own line. */
export const ownFindings = ({ snapshot, row }: Placed): readonly string[] =>
  snapshot.findings
    .filter(({ at, slug }) => at.row === snapshot.tree.rows[row] && !others.has(slug))
    .map(({ slug, message }) => `${slug}: ${message}`);

const amounts: Readonly<Record<string, string>> = {
  weight: '77 kg',
  length: '1.5 m',
  area: '0.7 m2',
  volume: '3 L',
  angle: '12 deg',
  force: '9 kN',
  pressure: '90 kPa',
  speed: '8 m/s',
  time: '7 months',
  temperature: '11 degC',
  voltage: '33 kV',
  percent: '7 %',
  whole: '3',
  number: '1.3',
  any: '3 m',
  density: '999 kg/m3',
  'weight per length': '9 kg/m',
  'weight per area': '9 kg/m2',
};
const values: Readonly<Partial<Record<ClauseRow['takes'], string>>> = {
  nothing: '',
  point: '(0.3, 0.2, 0.1) m',
  line: '(0, 0, 0) (1, 0, 0) (1, 1, 0) m',
  points: '(0, 0) (1, 0) (1, 1) m',
  path: '"Main block" > S1',
  axis: 'x',
  turn: '30 deg about z',
  side: '"Shell" x',
  tilt: 'y 5 deg',
  circle: '2 m about z',
  row: '1; 2',
  compare: 'gross load < 1 t',
  subject: 'plan',
  trigger: 'two cranes',
  text: '"something said"',
  date: '2026-02-03',
  label: 'Q7',
  designation: 'carbon steel',
  'amount or nothing': '3 L',
};
const named: Readonly<Record<string, string>> = {
  part: '"Deck plate"',
  pick: 'NW',
  gear: 'S1',
  sling: 'S1',
  crane: '"Yard crane 2"',
  chart: '"Yard 2, 60 ft boom"',
  stage: '"Turning"',
  load: '"Pump skid"',
  box: '"Deck plate"',
  contents: '"Casing"',
  anything: 'S1',
  material: 'carbon steel',
};

/** A clause with a value of its kind: its own example, or one made up. */
export function clauseExample(word: string, row: ClauseRow): string {
  if (row.example) return row.example;
  const measured = amounts[row.measures ?? 'any'] ?? '';
  switch (row.takes) {
    case 'amount':
    case 'size or amount':
    case 'size or nothing':
    case 'designation or amount':
      return `${word} ${row.sides === 2 ? '0.4 x 0.3 m' : measured}`;
    case 'size':
      return `${word} ${row.sides === 3 ? '0.4 x 0.3 x 0.2 m' : '0.4 x 0.3 m'}`;
    case 'name':
    case 'names':
      return `${word} ${named[row.names ?? 'anything']}`;
    case 'word':
      return `${word} ${row.words?.[0]}`;
    case 'word and amount':
      return `${word} ${row.words?.[0]} ${measured}`;
    default:
      return `${word} ${values[row.takes]}`.trim();
  }
}

/** What comes of a load without and with a clause under its assembly, part or cut-out: its findings and every result. */
export const traceOf = (name: string, word: string, row: ClauseRow): readonly [string, string] => [
  seen(built(name, word, '')),
  seen(built(name, word, clauseExample(word, row))),
];

const placing: readonly string[] = ['at', 'on', 'against', 'inside'];

/** A load of lopsided things, so that wherever a clause moves, turns or repeats one of them it shows. */
function built(name: string, word: string, clause: string): Placed {
  const more = [['every', 'circle'].includes(word) ? 'count 2' : '', clause].filter(Boolean).join(', ');
  const added = (owner: string) => (name === owner && more ? `, ${more}` : '');
  const shape =
    word === 'empty'
      ? 'tube, outside 1 m, wall 10 mm, length 1 m, of lead'
      : word === 'by'
        ? 'item 100 kg, size 1 x 0.5 x 0.2 m'
        : word === 'density' || word === 'of'
          ? 'wedge 1 x 0.5 x 0.2 m'
          : 'wedge 1 x 0.5 x 0.2 m, of lead';
  const place = name === 'part' && placing.includes(word) ? '' : ', at (5, 3, 1) m';
  const lines = [
    'plan "P": date 2026-05-18, units metric',
    'load "Pump skid": contingency 4 %',
    '  part "Deck plate": plate 4 x 2 x 0.1 m, of carbon steel, at (1, 0, 0) m',
    '  part "Shell": rectangular tube 1 x 1 m, wall 10 mm, length 2 m, of carbon steel, at (0, 0, 4) m',
    '    empty "looked through"',
    `  assembly "Group"${added('assembly').replace(/^,/, ':')}`,
    '    part "In it": wedge 1 x 0.5 x 0.2 m, of lead, at (0.3, 0.2, 0.1) m',
    `  part "Asked": ${shape}${place}${added('part')}`,
    '  part "Cut": box 9 x 5 x 4 m, of carbon steel, at (9, 0, 0) m',
    `    less: wedge 1 x 0.8 x 0.6 m${added('less')}`,
  ];
  return { snapshot: check({ 'plan.liftplan': `${lines.join('\n')}\n` }, 'plan.liftplan'), row: 0 };
}

/** All results, unrounded, and all findings; the digest of the text is no result. */
const seen = ({ snapshot }: Placed): string => JSON.stringify({ ...report(snapshot, (file) => file), mark: '' });
