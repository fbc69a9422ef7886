// Writes the tables of grammar/README.md from the vocabulary, the units, the materials and the findings: `node .build/reference.mjs`.
// Each table stands between `<!-- table: NAME -->` and `<!-- end of table -->`; what stands outside of these is written by hand.
import { readFile, writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const target = 'grammar/README.md';
const rooms = `
  export * from './server/vocabulary/index.ts';
  export { common, gear } from './server/vocabulary/gear.ts';
  export { place } from './server/vocabulary/load.ts';
  export { nameOf } from './server/quantities/dimension.ts';
  export { units } from './server/quantities/unit-table.ts';
  export { materials } from './server/catalog/index.ts';
  export { checks } from './server/checks/index.ts';`;

/** The reference with its tables as they should be. Throws for a table nobody makes. */
export async function referenceText(text) {
  const tables = tablesOf(await loadRooms());
  return text.replace(/^<!-- table: ([^\n]+?) -->\n.*?^<!-- end of table -->$/gms, (_, name) => {
    const table = tables[name];
    if (!table) throw new Error(`Nobody makes the table "${name}".`);
    return `<!-- table: ${name} -->\n\n${table()}\n\n<!-- end of table -->`;
  });
}

async function loadRooms() {
  const { outputFiles } = await build({
    stdin: { contents: rooms, resolveDir: process.cwd(), loader: 'ts' },
    bundle: true,
    platform: 'neutral',
    mainFields: ['module', 'main'],
    format: 'esm',
    write: false,
    loader: { '.ohm': 'text' },
    logLevel: 'warning',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString('base64')}`);
}

/** Every table by its name. */
function tablesOf(rooms) {
  const groups = Object.fromEntries(
    ['plan', 'load', 'rig', 'crane', 'site', 'papers', 'rules'].map((group) => [
      `statements about ${group}`,
      () => statementsOf(group, rooms),
    ]),
  );
  return {
    ...groups,
    'clauses allowed everywhere': () => clauseTable(rooms.everywhere),
    'clauses that place things': () => clauseTable(rooms.place),
    'clauses of all gear': () => clauseTable(rooms.common),
    'kinds of gear': () => gearKinds(rooms),
    shapes: () => shapeTable(rooms),
    evidence: () => evidenceTable(rooms),
    triggers: () => rooms.triggers.map((words) => `\`${words}\``).join(', '),
    units: () => unitTable(rooms),
    results: () => resultTable(rooms),
    findings: () => findingTable(rooms),
    materials: () => materialTable(rooms),
  };
}

// ---- statements

function statementsOf(group, { statements, shapes, place, gearKinds: kinds }) {
  const taken = new Set([...Object.keys(place), ...Object.keys(shapes), ...shapeWords(shapes)]);
  return Object.entries(statements)
    .filter(([name, row]) => row.group === group && !kinds.includes(name))
    .map(([name, row]) => {
      const placed = ['assembly', 'part', 'less'].includes(name);
      const own = Object.entries(row.clauses).filter(([word]) => !placed || !taken.has(word));
      const more = placed
        ? `Beside these: ${name === 'assembly' ? '' : 'one shape with its clauses, and '}the clauses that place things.`
        : '';
      return section(name, row, Object.fromEntries(own), more);
    })
    .join('\n\n');
}

const shapeWords = (shapes) =>
  Object.values(shapes).flatMap(({ clauses }) => [...Object.keys(clauses), 'of', 'density']);

function gearKinds({ statements, gearKinds: kinds, common }) {
  const table = kinds.map((name) => {
    const { help, clauses, example } = statements[name];
    const own = Object.entries(clauses).filter(([word]) => !(word in common));
    return [`\`${name}\``, help, own.map(inline).join(', '), `\`${example}\``];
  });
  const others = ['point', 'bridle'].map((name) => section(name, statements[name], statements[name].clauses));
  return [rows(['Kind', 'Meaning', 'Clauses beside those of all gear', 'Example'], table), ...others].join('\n\n');
}

/** A clause in a cell: `pin diameter` length. */
const inline = ([word, row]) => `\`${word}\`${row.takes === 'nothing' ? '' : ` ${takes(row)}`}${due(row)}`;

function section(name, row, clauses, more = '') {
  const heading = `#### \`${name}\`${named[row.names]}${row.value ? ` ${row.equals ? '= ' : ''}${valueName(row.value)}` : ''}`;
  const blocks = row.under.map((block) => (block === 'file' ? 'at the top level' : `under \`${block}\``));
  const value = row.value ? ` Its value: ${row.value.help}` : '';
  const facts = `${row.help} Stands ${blocks.join(' or ')}${row.once ? ', once' : ''}.${value}`;
  const table = Object.keys(clauses).length ? clauseTable(clauses) : '';
  return [heading, facts, `\`${row.example}\``, table, more].filter(Boolean).join('\n\n');
}

const named = { required: ' NAME', optional: ' [NAME]', range: ' NAME or NAME..NAME', none: '' };

/** What stands behind the keyword, as a word in capitals. */
function valueName(row) {
  const words = {
    amount: amountOf(row.measures ?? ''),
    compare: 'condition',
    subject: 'statement',
    label: 'finding',
    'word and amount': 'evidence share',
  };
  return (words[row.takes] ?? row.takes).replace(' in %', '').toUpperCase();
}

const clauseTable = (clauses) =>
  rows(
    ['Clause', 'Takes', 'Meaning'],
    Object.entries(clauses).map(([word, row]) => [`\`${word}\`${due(row)}`, takes(row), row.help]),
  );

const due = ({ need, repeat }) =>
  `${need === 'always' ? ' (due)' : need ? ' (due when it carries load)' : ''}${repeat ? ' (may repeat)' : ''}`;

// ---- how a value is written

const written = {
  nothing: 'the word alone',
  point: 'point',
  line: 'corners `(x, y, z) (x, y, z) …`',
  points: 'points `(x, y) (x, y) …`',
  name: 'name',
  names: 'names',
  path: 'path `name > name > …`',
  axis: 'axis: `x`, `-x`, `y` …',
  turn: 'angle about an axis',
  side: 'name and side, such as `"Shell" -x`',
  tilt: 'axis and angle, `to` a second angle',
  circle: 'diameter about an axis',
  row: 'row `a; b; c`',
  compare: 'condition',
  subject: 'a statement\u2019s keyword, with its name if one is meant',
  trigger: 'condition, or one of the triggers',
  text: 'text',
  date: 'date',
  label: 'word, number or text',
  designation: 'designation',
};

function takes(row) {
  const what = row.measures ? amountOf(row.measures) : 'amount';
  switch (row.takes) {
    case 'amount':
      return `${what}${bounds(row)}`;
    case 'amount or nothing':
      return `${what}, or nothing`;
    case 'size':
      return sides(row.sides);
    case 'size or amount':
      return row.sides ? sides(row.sides) : what;
    case 'size or nothing':
      return `${sides(row.sides)}, or nothing`;
    case 'designation or amount':
      return `designation, or ${what}`;
    case 'word':
      return oneOf(row.words);
    case 'word and amount':
      return `evidence, then ${what}`;
    default:
      return written[row.takes];
  }
}

const amountOf = (measures) =>
  ({
    whole: 'whole number',
    number: 'plain number',
    percent: 'share in %',
    any: 'amount',
    density: 'weight per volume',
  })[measures] ?? measures;
const sides = (count) => (count === 2 ? 'sides `A x B`' : count === 3 ? 'sides `A x B x C`' : 'sides joined by `x`');
const oneOf = (words) => (words.length > 8 ? 'evidence' : words.map((word) => `\`${word}\``).join(' / '));

function bounds({ measures, above, least, most }) {
  const low = above === 0 ? 'more than 0' : least === undefined || least === 0 ? '' : `at least ${least}`;
  const high =
    most === undefined || measures === 'percent' || measures === 'angle' ? '' : `at most ${most.toLocaleString('en')}`;
  const said = [low === 'more than 0' && measures !== 'whole' ? '' : low, high].filter(Boolean).join(', ');
  return said ? ` (${said})` : '';
}

// ---- shapes

function shapeTable({ shapes }) {
  const table = Object.entries(shapes).map(([name, shape]) => {
    const form = shape.form.takes === 'nothing' ? '' : ` ${takes(shape.form)}`;
    const clauses = Object.entries(shape.clauses).map(inline).join(', ');
    return [`\`${name}\`${form}`, clauses, notesOn(shape), shape.axis, `\`${shape.example}\``];
  });
  return rows(['Shape', 'Clauses', 'Meaning', 'Own axes; datum point', 'Example'], table);
}

function notesOn({ help, form, hollow, material, under }) {
  const where = under.length === 2 ? '' : under[0] === 'less' ? 'Only under `less`.' : 'Not under `less`.';
  const made = material === 'steel unless said' ? 'Of carbon steel unless said otherwise.' : '';
  return [help, form.help, hollow ? 'Has an inside.' : '', made, where].filter(Boolean).join(' ');
}

// ---- lists

const evidenceTable = ({ evidence, evidenceHelp, builtInContingency, readings }) =>
  rows(
    ['Evidence', 'Meaning', 'Added where nothing is said'],
    evidence.map((by) => [
      `\`${by}\`${readings.includes(by) ? ' (a reading)' : ''}`,
      evidenceHelp[by],
      `${Math.round(builtInContingency(by) * 100)} %`,
    ]),
  );

function unitTable({ units, nameOf }) {
  const kinds = new Map();
  for (const unit of units()) {
    const kind = unit.text === '%' ? 'share' : nameOf(unit.dimension);
    kinds.set(kind, [...(kinds.get(kind) ?? []), `\`${unit.text}\``]);
  }
  return rows(
    ['Of', 'Units'],
    [...kinds].map(([kind, texts]) => [kind, texts.join(' ')]),
  );
}

function resultTable({ resultsOf }) {
  const seen = new Map();
  for (const [kind, results] of Object.entries(resultsOf)) seen.set(results, [...(seen.get(results) ?? []), kind]);
  return [...seen]
    .map(([results, kinds]) => {
      const table = rows(
        ['Result', 'Unit in JSON', 'Meaning'],
        Object.entries(results).map(([name, row]) => [`\`${name}\``, row.unit, row.help]),
      );
      return `**${kinds.map((kind) => `\`${kind}\``).join(', ')}**\n\n${table}`;
    })
    .join('\n\n');
}

const findingTable = ({ checks }) =>
  rows(
    ['Finding', 'Severity', 'What becomes of the figure'],
    Object.values(checks).map(({ slug, severity, effect }) => [
      `\`${slug}\``,
      typeof severity === 'string' ? severity : 'by what is found',
      effect,
    ]),
  );

const materialTable = ({ materials }) =>
  rows(
    ['Material', 'Also', 'kg/m3 used', 'kg/m3 in the sources', 'Source'],
    materials().map(({ name, aliases, density, low, high, source, choices }) => [
      `${name}${choices.length ? ' (doubtful)' : ''}`,
      choices.length ? `say which: ${choices.join(', ')}` : aliases.join(', '),
      `${density}`,
      low === high ? `${low}` : `${low} to ${high}`,
      source,
    ]),
  );

const cell = (text) => text.replace(/\|/g, '\\|');
const rows = (head, body) =>
  [head, head.map(() => '---'), ...body].map((line) => `| ${line.map(cell).join(' | ')} |`).join('\n');

if (import.meta.url === pathToFileURL(process.argv[1]).href)
  await writeFile(target, await referenceText(await readFile(target, 'utf8')));
