// Plans around one row of the vocabulary: its example where it may stand, with all that the example names.
import { markdown, sheetOf } from '../../../server/report/index.ts';
import type { Snapshot } from '../../../server/workspace/types.ts';
import { check } from '../../../server/workspace/memory.ts';
import { type ClauseRow, type ShapeRow, statements } from '../../../server/vocabulary/index.ts';

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
  return placed([...parents(name), example]);
}

/** A shape's example as the shape of a part, or of a cut-out. */
export function shapeExample(name: string, { example, under }: ShapeRow): Placed {
  if (under.includes('part')) {
    const where = name === 'liquid' ? '' : ', at (0, 0, 9 m)';
    return placed(['load "Pump skid": contingency 5 %', `part "X": ${example}${where}`, ...(name === 'liquid' ? [] : ['  empty "looked through"'])]);
  }
  return placed(['load "Pump skid": contingency 5 %', 'part "X": box 4 x 4 x 0.2 m, of carbon steel, at (0, 0, 9 m)', `less: ${example}`]);
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
  const text = [...(isPlan ? [] : ['plan "P": date 2026-03-09, units metric', 'use "others.liftplan"']), ...own, ...more];
  const others = declared.filter((line) => !lines.some((written) => nameOf(written) !== '' && nameOf(written) === nameOf(line)));
  const files = { 'plan.liftplan': `${text.join('\n')}\n`, 'others.liftplan': others.join('\n'), 'library/yard.liftplan': '' };
  return { snapshot: check(files, 'plan.liftplan'), row: (isPlan ? 0 : 2) + lines.length - 1 };
}

const nameOf = (line: string): string => /^ *(?:[a-z -]+ )("[^"]+"|[A-Z][\w.-]*)/.exec(line)?.[1] ?? '';

/** What the sheet and the plan say beside the example itself, and what a person must judge, is not the example's fault. */
const others = new Set(['not-judged', 'left-unused', 'holding-unstated', 'contingency-missing', 'centre-assumed', 'weight-unplaced', 'evidence-disagrees', 'material-doubtful', 'part-unplaced', 'expect-failed', 'path-broken', 'hang-unsolved', 'contents-unstated', 'measured-lighter']);

/** Findings on the example's own line. */
export const ownFindings = ({ snapshot, row }: Placed): readonly string[] =>
  snapshot.findings.filter(({ at, slug }) => at.row === snapshot.tree.rows[row] && !others.has(slug)).map(({ slug, message }) => `${slug}: ${message}`);

const amounts: Readonly<Record<string, string>> = {
  weight: '77 kg', length: '1.5 m', area: '0.7 m2', volume: '3 L', angle: '12 deg', force: '9 kN', pressure: '90 kPa', speed: '8 m/s', time: '7 months', temperature: '11 degC', voltage: '33 kV',
  percent: '7 %', whole: '3', number: '1.3', any: '3 m', density: '999 kg/m3', 'weight per length': '9 kg/m', 'weight per area': '9 kg/m2',
};
const values: Readonly<Partial<Record<ClauseRow['takes'], string>>> = {
  nothing: '', point: '(0.3, 0.2, 0.1) m', points: '(0, 0) (1, 0) (1, 1) m', path: '"Main block" > S1', axis: 'x', turn: '30 deg about z', side: '"Shell" x', tilt: 'y 5 deg', circle: '2 m about z',
  row: '1; 2', compare: 'gross load < 1 t', subject: 'plan', trigger: 'two cranes', text: '"something said"', date: '2026-02-03', label: 'Q7', designation: 'carbon steel', 'amount or nothing': '3 L',
};
const named: Readonly<Record<string, string>> = {
  part: '"Deck plate"', pick: 'NW', gear: 'S1', sling: 'S1', crane: '"Yard crane 2"', chart: '"Yard 2, 60 ft boom"', stage: '"Turning"', load: '"Pump skid"', box: '"Deck plate"', contents: '"Casing"', anything: 'S1', material: 'carbon steel',
};

/** A clause with a value of its kind: its own example, or one made up. */
export function clauseExample(word: string, row: ClauseRow): string {
  if (row.example) return row.example;
  const measured = amounts[row.measures ?? 'any'] ?? '';
  switch (row.takes) {
    case 'amount': case 'size or amount': case 'designation or amount': return `${word} ${row.sides === 2 ? '0.4 x 0.3 m' : measured}`;
    case 'size': return `${word} ${row.sides === 3 ? '0.4 x 0.3 x 0.2 m' : '0.4 x 0.3 m'}`;
    case 'name': case 'names': return `${word} ${named[row.names ?? 'anything']}`;
    case 'word': return `${word} ${row.words?.[0]}`;
    case 'word and amount': return `${word} ${row.words?.[0]} ${measured}`;
    default: return `${word} ${values[row.takes]}`.trim();
  }
}

/** What comes of a statement without and with a clause: its findings and its sheet, which shows every result. */
export function traceOf(name: string, word: string, row: ClauseRow): readonly [string, string] {
  const clause = clauseExample(word, row);
  const group = statements[name]?.group;
  if (name === 'load' || name === 'pick' || name === 'bridle' || name === 'point' || group === 'gear' || group === 'rig') return [seen(hung(name, word, null)), seen(hung(name, word, clause))];
  const lines = [...parents(name), without(statements[name]?.example ?? '', word)];
  return [seen(placed(lines)), seen(placed(lines, [`${'  '.repeat(lines.length)}${clause}`]))];
}

/** A statement's example without one of its clauses. */
const without = (example: string, word: string): string => {
  const [first = '', ...rest] = example.split(/, (?=[a-z])/);
  const kept = rest.filter((part) => part !== word && !part.startsWith(`${word} `));
  return [first.replace(new RegExp(`: ${word}( .*|$)`), ''), ...kept].join(', ');
};

const constructions: readonly string[] = ['wire rope', 'chain', 'round', 'web', 'fibre rope', 'mesh'];
const hooks: readonly string[] = ['block', 'hook', 'ball'];
const beams: readonly string[] = ['spreader', 'lifting beam', 'point'];
const idle: readonly string[] = ['hangs from', 'spare'];

/** A load on four legs, with one piece of gear of the kind asked about among them; the clause stands under the line it is for. */
function hung(name: string, word: string, clause: string | null): Placed {
  const kind = name === 'bridle' || !(statements[name]?.group === 'gear') ? 'link' : name === 'point' ? 'spreader' : name;
  const figures = ['weight 5 kg', 'capacity 30 t', 'length 2 m', ...(kind === 'sling' && !constructions.includes(word) ? ['wire rope', 'diameter 40 mm'] : [])].filter((part) => !part.startsWith(word) || name !== kind);
  const legs = [1, 2, 3, 4].map((n) => `  leg ${legTo(n, kind, idle.includes(word))}`);
  const lines = [
    'plan "P": date 2026-03-09, units metric',
    'load "Frame"',
    '  stated 3 t, by marking, from "plate"',
    '  cog (0.05, 0, 0.4) m, by drawing, from "F-1"',
    '  free "loose, seen"',
    ...[1, 2, 3, 4].map((n) => `  pick P${n}: at (${n % 2 ? -1 : 1}, ${n < 3 ? -0.7 : 0.7}, 1) m${n === 1 && word === 'capacity' ? '' : ', capacity 9 t'}`),
    'gear',
    '  hook "Hook": weight 60 kg, capacity 20 t',
    '  sling S1..S5: wire rope, diameter 30 mm, length 3 m, weight 9 kg, capacity 7 t',
    '  shackle K1..K5: weight 1 kg, capacity 9 t',
    `  ${kind} X1: ${figures.join(', ')}`,
    ...(beams.includes(kind) ? ['    point T: at (0, 0, 1) m', '    point B1: at (-1, 0, 0) m', '    point B2: at (1, 0, 0) m'] : []),
    ...(name === 'bridle' ? ['  bridle "Set": items S1..S4, capacity 20 t, least angle 60 deg'] : []),
    'crane "Yard crane 2": kind mobile',
    'stage "Turning"',
    'rig',
    ...legs,
  ];
  const target = lines.findIndex((line) => line.trim().startsWith({ load: 'load', pick: 'pick P1', rig: 'rig', leg: 'leg', stage: 'stage', bridle: 'bridle', point: 'point B1' }[name] ?? `${name} X1`));
  const bare = (line: string) => (['bridle', 'point'].includes(name) ? without(line, word) : line);
  const text = lines.flatMap((line, i) => (i !== target ? [line] : clause === null ? [bare(line)] : [bare(line), `${/^ */.exec(line)?.[0]}  ${clause.replace('"Pump skid"', '"Frame"')}`]));
  return { snapshot: check({ 'plan.liftplan': `${text.join('\n')}\n` }, 'plan.liftplan'), row: target };
}

/** The path of one leg: from the piece asked about where it is a hook, through it where it hangs in a leg, below it where it is a beam. */
function legTo(n: number, kind: string, isIdle: boolean): string {
  const end = `S${n} > K${n} > P${n}`;
  if (isIdle) return `"Hook" > ${end}`;
  if (hooks.includes(kind)) return `X1 > ${end}`;
  if (beams.includes(kind)) return n === 4 ? '"Hook" > S5 > K5 > X1.T' : n === 3 ? `"Hook" > ${end}` : `X1.B${n} > K${n === 1 ? 3 : 4} > S${n} > K${n} > P${n}`;
  return `"Hook" > ${n === 1 && kind === 'sling' ? 'X1 > K1 > P1' : n === 1 ? `X1 > ${end}` : end}`;
}

function seen({ snapshot }: Placed): string {
  const sheet = markdown(sheetOf(snapshot, { pathOf: (file) => file }), 'plan.liftplan').replace(/content mark\W+[0-9a-f-]+/gi, '');
  return [sheet, ...snapshot.findings.map(({ message }) => message)].join('\n');
}
