// What is read beside the text, asked over the protocol.
import { afterEach, expect, test } from 'vitest';
import { Client, type Position, type Range, type TextEdit } from '../support/client.ts';
import { folder } from '../support/folder.ts';
import { bench, gear, hung, stretch, whereIs } from '../support/plans.ts';

const uri = 'untitled:Bench';
const document = { textDocument: { uri } };
const whole: Range = { start: { line: 0, character: 0 }, end: { line: 1_000, character: 0 } };
let client: Client;
afterEach(() => client.stop());

const able = {
  textDocument: {
    inlayHint: {},
    semanticTokens: {},
    callHierarchy: {},
    hover: { contentFormat: ['markdown', 'plaintext'] },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
  },
};

/** Text with an emoji before the words asked about: two UTF-16 units, four bytes. */
const emoji = bench.replace('part "Frame"', 'part "Frame 🔩"');

test('a hover says what a part weighs, over the words it is about', async () => {
  client = await Client.start({ capabilities: able });
  client.open(uri, emoji);
  const hover = await client.request('textDocument/hover', { ...document, position: whereIs(emoji, 'Frame 🔩') });
  expect(hover.contents.kind).toBe('markdown');
  expect(hover.contents.value).toContain('157 kg'); // 2 m × 1 m × 10 mm × 7,850 kg/m³, worked out by hand
  expect(hover.range).toEqual(stretch(emoji, '"Frame 🔩"'));
});

test('a client without Markdown gets plain text', async () => {
  client = await Client.start();
  client.open(uri, bench);
  const hover = await client.request('textDocument/hover', { ...document, position: whereIs(bench, 'Frame') });
  expect(hover.contents.kind).toBe('plaintext');
  expect(hover.contents.value).toContain('157 kg');
  expect(hover.contents.value).not.toMatch(/\*\*|&nbsp;|<\w/);
});

test('hints stand at the ends of lines, none on the line being written, and come there after a pause', async () => {
  client = await Client.start({ capabilities: { ...able, workspace: { inlayHint: { refreshSupport: true } } } });
  client.open(uri, emoji);
  await client.idle();
  const { line } = whereIs(emoji, 'part');
  const ends = emoji.split('\n').map(({ length }) => length);
  const hints = await client.request('textDocument/inlayHint', { ...document, range: whole });
  const here = hints.find(({ position }: { position: Position }) => position.line === line);
  expect(here).toMatchObject({ paddingLeft: true });
  expect(JSON.stringify(here.label)).toContain('157 kg');
  for (const hint of hints) expect(hint.position.character).toBe(ends[hint.position.line]);
  client.change(uri, 2, { range: stretch(emoji, '2 m'), text: '3 m' });
  const busy = await client.request('textDocument/inlayHint', { ...document, range: whole });
  expect(busy.map(({ position }: { position: Position }) => position.line)).not.toContain(line);
  await client.until(() => client.asked.some(({ method }) => method === 'workspace/inlayHint/refresh'));
  const after = await client.request('textDocument/inlayHint', { ...document, range: whole });
  expect(JSON.stringify(after.find(({ position }: { position: Position }) => position.line === line).label)).toContain(
    '235.5 kg',
  );
});

test('settings of hints are live', async () => {
  let totals = true;
  client = await Client.start({
    capabilities: { ...able, workspace: { configuration: true, inlayHint: { refreshSupport: true } } },
    answers: { 'workspace/configuration': ({ items }) => items.map(() => ({ hints: { totals } })) },
  });
  client.open(uri, bench);
  await client.idle();
  const load = whereIs(bench, 'load').line;
  const lines = async () =>
    (await client.request('textDocument/inlayHint', { ...document, range: whole })).map(
      ({ position }: { position: Position }) => position.line,
    );
  expect(await lines()).toContain(load);
  totals = false;
  client.notify('workspace/didChangeConfiguration', { settings: null });
  await client.idle();
  expect(await lines()).not.toContain(load);
  expect(client.asked.some(({ method }) => method === 'workspace/inlayHint/refresh')).toBe(true);
});

test('the outline is a weight table, as a tree or flat, as the client can take it', async () => {
  client = await Client.start({ capabilities: able });
  client.open(uri, bench);
  const tree = await client.request('textDocument/documentSymbol', document);
  const load = tree.find(({ name }: { name: string }) => name.includes('Bench'));
  expect(load.detail).toContain('kg');
  expect(load.children.some(({ name }: { name: string }) => name.includes('Frame'))).toBe(true);
  await client.stop();
  client = await Client.start();
  client.open(uri, bench);
  const flat = await client.request('textDocument/documentSymbol', document);
  expect(flat.find(({ name }: { name: string }) => name.includes('Frame'))).toMatchObject({ location: { uri } });
});

test('semantic colours: full, a range, and the difference to the answer before', async () => {
  client = await Client.start({ capabilities: able });
  client.open(uri, bench);
  const { legend } = client.initialized.capabilities.semanticTokensProvider;
  const full = await client.request('textDocument/semanticTokens/full', document);
  expect(full.data.length % 5).toBe(0);
  expect(legend.tokenTypes[full.data[3]]).toBe('keyword');
  const { line } = whereIs(bench, 'part');
  const part = await client.request('textDocument/semanticTokens/range', {
    ...document,
    range: { start: { line, character: 0 }, end: { line, character: 80 } },
  });
  expect(part.data.length).toBeLessThan(full.data.length);
  client.change(uri, 2, { range: stretch(bench, '2 m'), text: '22 m' });
  const delta = await client.request('textDocument/semanticTokens/full/delta', {
    ...document,
    previousResultId: full.resultId,
  });
  const data = [...full.data];
  for (const { start, deleteCount, data: put = [] } of [...delta.edits].reverse())
    data.splice(start, deleteCount, ...put);
  const anew = await client.request('textDocument/semanticTokens/full', document);
  expect(data).toEqual(anew.data);
});

test('folds, growing selections and links', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ folders: [place.uri] });
  const plan = { textDocument: { uri: place.of('cover.liftplan') } };
  client.open(place.of('cover.liftplan'), hung);
  const folds = await client.request('textDocument/foldingRange', plan);
  expect(folds).toContainEqual({ startLine: whereIs(hung, 'rig').line, endLine: whereIs(hung, 'R2 > K2').line });
  const [selection] = await client.request('textDocument/selectionRange', {
    ...plan,
    positions: [whereIs(hung, '20 mm')],
  });
  const texts: string[] = [];
  for (let one = selection; one; one = one.parent) texts.push(textIn(hung, one.range));
  expect(texts.slice(0, 2)).toEqual(['20', '20 mm']);
  expect(texts.at(-1)).toBe(hung);
  const links = await client.request('textDocument/documentLink', plan);
  expect(links).toEqual([{ range: stretch(hung, 'library/gear.liftplan'), target: place.of('library/gear.liftplan') }]);
});

test('the load path as call hierarchy, down from the block and up from a pick', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ capabilities: able, folders: [place.uri] });
  const plan = { textDocument: { uri: place.of('cover.liftplan') } };
  client.open(plan.textDocument.uri, hung);
  const [block] = await client.request('textDocument/prepareCallHierarchy', {
    ...plan,
    position: whereIs(hung, 'Block 5'),
  });
  expect(block).toMatchObject({ name: 'Block 5', uri: place.of('library/gear.liftplan') });
  const below = await client.request('callHierarchy/outgoingCalls', { item: block });
  expect(below.map(({ to }: { to: { name: string } }) => to.name)).toEqual(['R1', 'R2']);
  const [pick] = await client.request('textDocument/prepareCallHierarchy', { ...plan, position: whereIs(hung, 'P1:') });
  const above = await client.request('callHierarchy/incomingCalls', { item: pick });
  expect(above.map(({ from }: { from: { name: string } }) => from.name)).toEqual(['K1']);
  expect(textIn(hung, above[0].fromRanges[0])).toContain('K1');
});

test('formatting: the whole, a range, and on Enter only the line just left', async () => {
  client = await Client.start();
  const loose = emoji
    .replace('🔩": box', '🔩":   box')
    .replace('load "Bench"', 'load   "Bench"')
    .replaceAll('\n', '\r\n');
  client.open(uri, loose);
  const options = { tabSize: 2, insertSpaces: true };
  const all: TextEdit[] = await client.request('textDocument/formatting', { ...document, options });
  expect(all.map(({ range }) => textIn(loose, range))).toEqual(['  ', '  ']);
  expect(all.every(({ newText }) => newText === '')).toBe(true);
  const { line } = whereIs(loose, 'part');
  const one = await client.request('textDocument/rangeFormatting', {
    ...document,
    range: { start: { line, character: 0 }, end: { line: line + 1, character: 0 } },
    options,
  });
  expect(one).toEqual([all[1]]);
  const left = await client.request('textDocument/onTypeFormatting', {
    ...document,
    position: { line: line + 1, character: 0 },
    ch: '\n',
    options,
  });
  expect(left).toEqual([all[1]]);
});

/** The text of a range, in UTF-16 units. */
function textIn(text: string, { start, end }: Range): string {
  const lines = text.split(/\r\n|\n/);
  if (start.line === end.line) return (lines[start.line] as string).slice(start.character, end.character);
  return [
    (lines[start.line] as string).slice(start.character),
    ...lines.slice(start.line + 1, end.line),
    (lines[end.line] as string).slice(0, end.character),
  ].join('\n');
}
