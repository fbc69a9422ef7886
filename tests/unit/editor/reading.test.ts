// Folding, growing selections, colours, links and the marks that tie the sheet to the text.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { folding } from '../../../server/editor/folding.ts';
import { links } from '../../../server/editor/links.ts';
import { idOf, marksAt, placeOf } from '../../../server/editor/marks.ts';
import { selection } from '../../../server/editor/selection.ts';
import { grossLoad } from '../../../server/editor/status.ts';
import { tokens } from '../../../server/editor/tokens.ts';
import { check } from '../../../server/workspace/memory.ts';
import { goodSamples, opened, sample, sampleFiles, withTokens, wordsOf } from '../../support/draw.ts';
import { column, instead, tank, withCursor } from './plans.ts';

test('blocks, use lines, comments and regions fold', () => {
  const text =
    '# one\n# two\nuse "a.liftplan"\nuse "b.liftplan"\n# region load\nload "L"\n  part "A": item 1 kg\n    note "n"\n\n  part "B": item 1 kg\n# endregion\ngear';
  expect(folding(opened(text).s)).toEqual([
    { first: 0, last: 1, kind: 'comment' },
    { first: 2, last: 3, kind: 'imports' },
    { first: 4, last: 10, kind: 'region' },
    { first: 5, last: 9, kind: 'block' },
    { first: 6, last: 7, kind: 'block' },
  ]);
});

test('folds are in order and lie within each other or apart', () => {
  for (const path of goodSamples()) {
    const found = folding(sample(path));
    for (const [i, a] of found.entries())
      for (const b of found.slice(i + 1)) {
        expect(a.first <= b.first, path).toBe(true);
        expect(b.first > a.last || b.last <= a.last, path).toBe(true);
      }
  }
});

const grown = (text: string): readonly string[] => {
  const { s, row, offset } = opened(text);
  return selection(s, row, offset).map((stretch) => wordsOf(s, stretch).split('\n')[0] ?? '');
};

test('a selection grows from the number outwards', () => {
  expect(grown(withCursor(tank, '0.75 m'))).toEqual([
    '0.75',
    '0.75 m',
    '(0, 0, 0.75 m)',
    'at (0, 0, 0.75 m)',
    'part "Shell": tube, outside 1 m, wall 8 mm, length 1.5 m, of stainless steel, at (0, 0, 0.75 m), empty "drained"',
    'assembly "Body": at (0, 0, 10 mm)',
    'load "Tank"',
    'plan "Set tank 4": date 2026-04-14, revision B, site "Dairy, cold store"',
  ]);
  expect(grown(withCursor(column, 'S1 > K1')).slice(0, 3)).toEqual([
    'S1',
    '"Hook" > S1 > K1 > TOP',
    'leg "Hook" > S1 > K1 > TOP',
  ]);
});

test('each stretch of a selection lies within the next, wherever it begins', () => {
  for (const path of goodSamples()) {
    const s = sample(path);
    s.tree.rows.forEach(({ text }, row) => {
      for (let offset = 0; offset <= text.length; offset += 5) {
        const all = selection(s, row, offset);
        for (const [i, outer] of all.entries()) {
          const inner = all[i - 1];
          if (!inner) continue;
          const starts = outer.first < inner.first || (outer.first === inner.first && outer.from <= inner.from);
          const ends = outer.last > inner.last || (outer.last === inner.last && outer.to >= inner.to);
          expect(starts && ends, `${path}:${row + 1}:${offset}`).toBe(true);
        }
      }
    });
  }
});

test('colours say what each word is; a name is marked only where the plan knows more', () => {
  const text =
    '\nload "L"\n  part "A": item 5 kg, by marking, on B   # here\n  pick N: at (0, 0, 1) m, capacity 2 t\ngear\n  sling S1: weight 3 kg, capacity 1 t\n  hook H: weight 1 kg\n  shackle K9: weight 1 kg\nrig\n  leg H > S1 > N';
  expect(withTokens(text)).toBe(`\
load "L"
  load keyword | "L" string.declaration
  part "A": item 5 kg, by marking, on B   # here
  part keyword | "A" string.declaration | item property | 5 number | kg type | by property | on property | B variable.unknown | # here comment
  pick N: at (0, 0, 1) m, capacity 2 t
  pick keyword | at property | 0 number | 0 number | 1 number | m type | capacity property | 2 number | t type
gear
  gear keyword
  sling S1: weight 3 kg, capacity 1 t
  sling keyword | weight property | 3 number | kg type | capacity property | 1 number | t type
  hook H: weight 1 kg
  hook keyword | weight property | 1 number | kg type
  shackle K9: weight 1 kg
  shackle keyword | K9 variable.declaration.unused | weight property | 1 number | kg type
rig
  rig keyword
  leg H > S1 > N
  leg keyword | > operator | > operator`);
});

/** The class that an editor's own colouring gives, by the scopes of the grammar for it. */
const classes: readonly (readonly [string, string])[] = [
  ['keyword.other.unit', 'type'],
  ['keyword.operator', 'operator'],
  ['keyword.control', 'keyword'],
  ['support.type.property-name', 'property'],
  ['string', 'string'],
  ['constant', 'number'],
  ['comment', 'comment'],
];

/** What one line cannot tell: a statement under one parent that is a clause under another, and an axis from the `x` of a size. */
const onlyByParent: readonly string[] = ['contingency', 'x'];

let grammar: {
  tokenizeLine(
    text: string,
    stack: unknown,
  ): { tokens: readonly { startIndex: number; endIndex: number; scopes: readonly string[] }[]; ruleStack: unknown };
};
let start: unknown;
beforeAll(async () => {
  const require = createRequire(import.meta.url);
  const oniguruma = await import('vscode-oniguruma');
  const textmate = await import('vscode-textmate');
  await oniguruma.loadWASM(readFileSync(join(require.resolve('vscode-oniguruma'), '../onig.wasm')).buffer);
  const source = readFileSync(join(import.meta.dirname, '../../../grammar/liftplan.tmLanguage.json'), 'utf8');
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns: string[]) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text: string) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(source, 'liftplan.tmLanguage.json'),
  });
  grammar = (await registry.loadGrammar('source.liftplan')) as unknown as typeof grammar;
  start = textmate.INITIAL;
});

test('both ways of colouring give every word of the samples the same class', () => {
  let seen = 0;
  const apart: string[] = [];
  for (const path of goodSamples()) {
    const s = sample(path);
    s.tree.rows.forEach(({ text }, row) => {
      const byLine = grammar.tokenizeLine(text, start).tokens;
      for (const { from, to, type, modifiers } of tokens(s, row, row)) {
        if (type === 'variable' || type === 'enumMember') continue;
        seen++;
        for (let at = from; at < to; at++) {
          if (text.charAt(at) === ' ') continue;
          const scopes =
            byLine.find(({ startIndex, endIndex }) => at >= startIndex && at < endIndex)?.scopes.join(' ') ?? '';
          const [, other] = classes.find(([scope]) => scopes.includes(scope)) ?? [];
          if (other !== type && !onlyByParent.includes(text.slice(from, to))) {
            apart.push(
              `${path}:${row + 1} ${text.slice(from, to)}: ${type} ${modifiers.join('.')}, by the line ${other ?? 'nothing'}`,
            );
            break;
          }
        }
      }
    });
  }
  expect(seen).toBeGreaterThan(1500);
  expect(apart).toEqual([]);
});

test('tokens of a stretch are those of the whole', () => {
  const s = sample('skid.liftplan');
  const all = tokens(s, 0, s.tree.rows.length);
  for (let row = 0; row < s.tree.rows.length; row++)
    expect(tokens(s, row, row)).toEqual(all.filter((one) => one.row === row));
});

test('use lines, documents and web addresses can be opened', () => {
  const text = `${instead(tank, '--- gear.liftplan', 'hazard "Wind": control "see plans/wind-note.pdf", control "plans/wind-note.pdf"\napproval "Person": named "to be named", note "https://example.org/form?id=4"\n--- gear.liftplan')}`;
  const { s } = opened(text);
  expect(links(s).map(({ at, to }) => [at.row.text.slice(at.from, at.to), ...Object.entries(to).flat()])).toEqual([
    ['gear.liftplan', 'file', 'gear.liftplan'],
    ['plans/wind-note.pdf', 'path', 'plans/wind-note.pdf'],
    ['https://example.org/form?id=4', 'address', 'https://example.org/form?id=4'],
  ]);
});

test('a paper that a figure comes from can be opened where it is there, without the remark behind it', () => {
  const text =
    'load "L"\n  stated 1 t, by marking, from "papers/plate 3.pdf, lower line"\n  cog (0, 0, 0), by drawing, from "papers/none.pdf"\n';
  const s = check({ 'plan.liftplan': text, 'papers/plate 3.pdf': 'x' }, 'plan.liftplan');
  expect(links(s).map(({ at, to }) => [at.row.text.slice(at.from, at.to), ...Object.entries(to).flat()])).toEqual([
    ['papers/plate 3.pdf', 'file', 'papers/plate 3.pdf'],
  ]);
});

test('marks are unique, lead back to their line, and stay while lines move', () => {
  let seen = 0;
  for (const path of goodSamples()) {
    const s = sample(path);
    const ids = new Set<string>();
    s.tree.nodes.forEach(function each(node): void {
      if (node.line.kind === 'statement') {
        const id = idOf(s, { row: node.row, from: 0, to: 1 });
        expect(id).toMatch(/^\S+$/);
        expect(ids.has(id ?? ''), `${path}: ${id}`).toBe(false);
        ids.add(id ?? '');
        expect(placeOf(s, id ?? '')?.row).toBe(node.row);
        expect(marksAt(s, s.tree.rowNumber(node.row))[0]).toBe(id);
        seen++;
      }
      node.children.forEach(each);
    });
    const moved = check({ ...sampleFiles(), [path]: `# first\n\n${sampleFiles()[path]}` }, path);
    for (const id of ids) expect(placeOf(moved, id)?.row.text).toBe(placeOf(s, id)?.row.text);
  }
  expect(seen).toBeGreaterThan(100);
});

test('marks run from the statement outwards; a clause line counts to its statement', () => {
  const { s, row } = opened('\nload "L"\n  assembly "A"\n    part "P"\n      item 5| kg');
  expect(marksAt(s, row)).toEqual(['load:L/assembly:A/part:P', 'load:L/assembly:A', 'load:L']);
});

test('the gross load is said with its unit, rounded up, and not at all where it is not known', () => {
  expect(grossLoad(opened(column).s)).toBe('1,035 kg');
  expect(grossLoad(opened(instead(column, 'weight 4 kg', 'weight ?')).s)).toBeNull();
  expect(grossLoad(opened('gear\n  hook H: weight 5 kg').s)).toBeNull();
});
