// Writes server/syntax/grammar.ts from grammar/liftplan.ohm, so that no start has to read the grammar's text: `node .build/grammar.mjs`.
import { readFile, writeFile } from 'node:fs/promises';
import { pathToFileURL } from 'node:url';
import { grammars } from 'ohm-js';

const source = 'grammar/liftplan.ohm';
const target = 'server/syntax/grammar.ts';

/** The text of the generated file: Ohm's own recipe of `Values`, without the places in the source. */
export async function grammarFile() {
  const { Values } = grammars(await readFile(source, 'utf8'));
  // Ohm prints a recipe as the text of a JavaScript array; it is read back once here, as data of our own file.
  const recipe = withoutPlaces(new Function(`return ${Values.toRecipe()}`)());
  return `// Written by .build/grammar.mjs from grammar/liftplan.ohm: the grammar of values as Ohm's recipe. Change it there.\nexport const recipe =\n  '${JSON.stringify(recipe).replace(/[\\']/g, '\\$&')}';\n`;
}

/** Places in the grammar's source serve only messages about the grammar itself. */
function withoutPlaces(part) {
  if (Array.isArray(part)) return part.map(withoutPlaces);
  if (part === null || typeof part !== 'object') return part;
  const { sourceInterval: _place, source: _text, ...rest } = part;
  return Object.fromEntries(Object.entries(rest).map(([key, value]) => [key, withoutPlaces(value)]));
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) await writeFile(target, await grammarFile());
