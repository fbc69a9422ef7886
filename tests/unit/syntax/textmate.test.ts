// The TextMate grammar: up to date with the vocabulary, and right where it colours.
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import { textmateFile } from '../../../.build/textmate.mjs';
import { statements } from '../../../server/vocabulary/index.ts';

const path = 'grammar/liftplan.tmLanguage.json';
let grammar: textmate.IGrammar;

beforeAll(async () => {
  const wasm = await readFile(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
  await oniguruma.loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) as ArrayBuffer);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(await readFile(path, 'utf8'), path),
  });
  grammar = (await registry.loadGrammar('source.liftplan')) as textmate.IGrammar;
});

/** The coloured pieces of a line with the last part of their scope. */
function colours(line: string): string[] {
  const { tokens } = grammar.tokenizeLine(line, textmate.INITIAL);
  return tokens
    .filter((token) => token.scopes.length > 1)
    .map((token) => `${line.slice(token.startIndex, token.endIndex)} ${token.scopes.at(-1)?.replace('.liftplan', '')}`);
}

describe('colours before the server starts', () => {
  test('the file that is shipped was made from the vocabulary', async () =>
    expect(await readFile(path, 'utf8')).toBe(await textmateFile()));

  test('keywords, texts, numbers, units, operators, comments', () => {
    expect(colours('  part "Rails": section C8x11.5, length 12 ft - deck, count 2 # two, at all')).toEqual([
      'part keyword.control',
      '"Rails" string.quoted.double',
      'section support.type.property-name',
      'length support.type.property-name',
      '12 constant.numeric',
      'ft keyword.other.unit',
      '- keyword.operator',
      'count support.type.property-name',
      '2 constant.numeric',
      '# two, at all comment.line.number-sign',
    ]);
    expect(colours('  stated 4,850 lb ± 2 %, by marking, dated 2026-05-18')).toEqual([
      'stated keyword.control',
      '4,850 constant.numeric',
      'lb keyword.other.unit',
      '± keyword.operator',
      '2 constant.numeric',
      '% keyword.other.unit',
      'by support.type.property-name',
      'dated support.type.property-name',
      '2026-05-18 constant.other.date',
    ]);
    expect(colours('    less hole, diameter 6 1/2 in').slice(0, 3)).toEqual([
      'less keyword.control',
      'hole support.type.property-name',
      'diameter support.type.property-name',
    ]);
  });

  test('a comma or a # in a text begins nothing; a mark for inches opens no text', () => {
    expect(colours('  free "bolts, by hand, # 4"')).toEqual([
      'free keyword.control',
      '"bolts, by hand, # 4" string.quoted.double',
    ]);
    expect(colours('  wall 6", bore 3 in')).toContain('bore support.type.property-name');
  });

  test('every statement has its colour where it stands, longer keywords before shorter ones', () => {
    for (const [keyword, row] of Object.entries(statements)) {
      const indented = row.under[0] !== 'file';
      const [first] = colours(`${indented ? '  ' : ''}${row.example}`);
      expect([keyword, `${keyword} support.type.property-name`, `${keyword} keyword.control`]).toContain(first);
    }
    expect(colours('  load cell "C"')[0]).toBe('load cell keyword.control');
  });
});
