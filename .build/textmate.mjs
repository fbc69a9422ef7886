// Writes grammar/liftplan.tmLanguage.json, the colours an editor has before the server starts: `node .build/textmate.mjs`.
// Its words come from the vocabulary and the table of units, so that they are spelled in one place only.
import { writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const target = 'grammar/liftplan.tmLanguage.json';

/** The text of the generated file. */
export async function textmateFile() {
  const { statements, clausesOf, units } = await words();
  const statementWords = Object.keys(statements);
  const clauseWords = [...new Set(['file', ...statementWords].flatMap((block) => Object.keys(clausesOf(block))))];
  // Statements with neither name nor value of their own may be followed by a clause at once: `less hole`.
  const bare = statementWords.filter(
    (word) => statements[word].names !== 'required' && statements[word].names !== 'range' && !statements[word].value,
  );
  return `${JSON.stringify(grammar(statementWords, clauseWords, bare, [...units().map((unit) => unit.text), 'days', 'weeks', 'months', 'years']), null, 2)}\n`;
}

async function words() {
  const contents =
    "export { clausesOf, statements } from './server/vocabulary/index.ts'; export { units } from './server/quantities/units.ts';";
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: '.', loader: 'ts' },
    bundle: true,
    format: 'esm',
    platform: 'node',
    write: false,
    logLevel: 'error',
  });
  return import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`);
}

const number = '(?:\\d+(?:[ -]\\d+)?/\\d+|\\d+(?:,\\d{3})+(?:\\.\\d+)?|\\d+(?:\\.\\d+)?(?:[ -]?[½¼¾⅛⅜⅝⅞])?|[½¼¾⅛⅜⅝⅞])';
const end = '(?![\\w-])';

/** Longest first, so that `load cell` is not taken for `load`. */
const anyOf = (list) =>
  `(?:${[...list]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((word) => word.replace(/ /g, '\\s+'))
    .join('|')})`;

function grammar(statementWords, clauseWords, bare, unitWords) {
  const unit = `(?:${anyOf(unitWords.filter((word) => word !== '%'))}(?:/${anyOf(unitWords.filter((word) => word !== '%'))})?(?![A-Za-z0-9])|%|°[CF]?)`;
  const onlyStatements = statementWords.filter((word) => !clauseWords.includes(word));
  const statement = { name: 'keyword.control.liftplan' };
  const clause = { name: 'support.type.property-name.liftplan' };
  return {
    name: 'Lift plan',
    scopeName: 'source.liftplan',
    patterns: [
      'comment',
      'text',
      'bare',
      'statement',
      'clause',
      'date',
      'quantity',
      'closing',
      'number',
      'operator',
    ].map((name) => ({ include: `#${name}` })),
    repository: {
      comment: { name: 'comment.line.number-sign.liftplan', match: '(?:^|(?<=\\s))#.*$' },
      text: {
        name: 'string.quoted.double.liftplan',
        match: '(?<![0-9½¼¾⅛⅜⅝⅞])(?:"(?:""|[^"])*(?:"|$)|[“„][^”“"]*(?:[”“"]|$))',
      },
      bare: {
        match: `^(\\s*)(${anyOf(bare)})(:?\\s+)(${anyOf(clauseWords)})${end}`,
        captures: { 2: statement, 4: clause },
      },
      // What may be both is a statement at the start of an unindented line, else a clause.
      statement: {
        match: `^(?:(${anyOf(statementWords)})|\\s+(${anyOf(onlyStatements)}))${end}`,
        captures: { 1: statement, 2: statement },
      },
      clause: { match: `(?:^\\s+|^|[,:]\\s+)(${anyOf(clauseWords)})${end}`, captures: { 1: clause } },
      date: { name: 'constant.other.date.liftplan', match: `\\b\\d{4}-\\d{2}-\\d{2}${end}` },
      quantity: {
        match: `(?<![\\w.])(${number})\\s*(${unit})`,
        captures: { 1: { name: 'constant.numeric.liftplan' }, 2: { name: 'keyword.other.unit.liftplan' } },
      },
      // One unit behind the bracket holds for all in it.
      closing: { match: `(?<=\\))\\s*(${unit})`, captures: { 1: { name: 'keyword.other.unit.liftplan' } } },
      number: { name: 'constant.numeric.liftplan', match: `(?<![\\w.])${number}(?![\\w])` },
      operator: {
        name: 'keyword.operator.liftplan',
        match:
          '<=|>=|\\+-|\\.\\.|[<>=≤≥±?]|(?<=[\\s(])[-−](?=[\\w(½¼¾⅛⅜⅝⅞])|(?<=\\s)(?:[-+*/·−×]|x|about|and|between|none|to)(?=[\\s,;]|$)',
      },
    },
  };
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) await writeFile(target, await textmateFile());
