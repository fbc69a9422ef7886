// Findings as an editor sees them: complete for every version, calm while one writes, gone at once when put right.
import { afterEach, expect, test } from 'vitest';
import { Client, type Options } from '../support/client.ts';
import { cold, plain } from '../support/cold.ts';
import { folder } from '../support/folder.ts';
import { bench, gear, hung, stretch, whereIs } from '../support/plans.ts';

const uri = 'untitled:Bench';
let client: Client;
const start = async (options?: Options): Promise<Client> => {
  client = await Client.start(options);
  return client;
};
afterEach(() => client.stop());

/** Puts a text in at a place and gives the new one. */
function typed(
  text: string,
  version: number,
  at: { line: number; character: number },
  put: string,
  document = uri,
): string {
  client.change(document, version, { range: { start: at, end: at }, text: put });
  const lines = text.split('\n');
  const line = lines[at.line] as string;
  lines[at.line] = line.slice(0, at.character) + put + line.slice(at.character);
  return lines.join('\n');
}

const behind = (text: string, words: string) => {
  const { line, character } = whereIs(text, words);
  return { line, character: character + words.length };
};

test('a plan without findings gets one empty set, with its version', async () => {
  await start();
  client.open(uri, bench, 7);
  await client.idle();
  expect(client.published).toEqual([{ uri, version: 7, diagnostics: [] }]);
});

test('a finding carries its slug, its source and the place in UTF-16 units, behind an emoji too', async () => {
  await start();
  const text = bench.replace('part "Frame": box 2 m', 'part "Frame 🔩": box 2');
  client.open(uri, text);
  await client.idle();
  expect(plain(client.findings(uri))).toEqual(cold({ plan: text }, 'plan'));
  const [finding] = client.findings(uri);
  expect(finding).toMatchObject({ source: 'becket', code: 'unit-missing', severity: 1 });
  const line = text.split('\n')[finding?.range.start.line as number] as string;
  expect(line.slice(finding?.range.start.character, finding?.range.end.character)).toBe('2');
});

test('nothing is sent again while the findings stay the same', async () => {
  await start();
  client.open(uri, bench);
  await client.idle();
  typed(bench, 2, { line: 0, character: bench.indexOf('bench') }, 'solid ');
  expect(await client.idle()).toEqual({ [uri]: 2 });
  expect(client.published).toHaveLength(1);
});

test('what is new on the line being written waits for a pause, and what is put right goes at once', async () => {
  await start();
  client.open(uri, bench);
  await client.idle();
  const broken = typed(bench, 2, behind(bench, 'box 2 m'), 'q');
  await client.request('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 0 } });
  expect(client.published).toHaveLength(1);
  const asked = performance.now();
  await client.until(() => client.published.length > 1);
  expect(performance.now() - asked).toBeGreaterThan(300);
  expect(plain(client.findings(uri))).toEqual(cold({ plan: broken }, 'plan'));
  client.change(uri, 3, { range: { start: behind(bench, 'box 2 m'), end: behind(broken, 'box 2 mq') }, text: '' });
  const repaired = performance.now();
  await client.until(() => client.published.length > 2);
  expect(performance.now() - repaired).toBeLessThan(300);
  expect(client.findings(uri)).toEqual([]);
  expect(client.published.map(({ version }) => version)).toEqual([1, 2, 3]);
});

test('what was shown already stays while its line is written on', async () => {
  await start();
  const text = bench.replace('2 m x', '2 mq x');
  client.open(uri, text);
  await client.until(() => client.published.length > 0);
  expect(client.codes(uri)).toContain('unit-unknown');
  typed(text, 2, behind(text, 'part "Frame'), 's');
  await client.until(() => client.published.length > 1);
  expect(client.codes(uri)).toContain('unit-unknown');
});

test('another line, or saving, ends the wait', async () => {
  await start();
  client.open(uri, bench);
  await client.idle();
  const broken = typed(bench, 2, behind(bench, 'box 2 m'), 'q');
  client.save(uri);
  await client.until(() => client.published.length > 1, 300);
  expect(client.codes(uri)).toEqual(cold({ plan: broken }, 'plan').map(({ code }) => code));
  client.change(uri, 3, { range: { start: behind(bench, 'box 2 m'), end: behind(broken, 'box 2 mq') }, text: 'q' });
  const twice = typed(broken, 4, behind(broken, 'contingency 5'), 'q');
  typed(twice, 5, behind(twice, 'site "Hall'), ' ');
  await client.until(() => client.codes(uri).length > cold({ plan: broken }, 'plan').length, 300);
});

test('no key of a part typed one by one brings up a finding on its own line', async () => {
  await start();
  client.open(uri, bench);
  await client.idle();
  const line = '  part "Lamp": cylinder, diameter 90 mm, length 400 mm, of aluminium, at (0, 0, 210 mm)';
  const at = { line: bench.split('\n').length - 1, character: 0 };
  for (const [n, key] of [...line].entries()) {
    client.change(uri, n + 2, { range: { start: { ...at, character: n }, end: { ...at, character: n } }, text: key });
    await client.request('textDocument/documentSymbol', { textDocument: { uri } });
  }
  expect(
    client.published.flatMap(({ diagnostics }) => diagnostics.filter(({ range }) => range.start.line === at.line)),
  ).toEqual([]);
  await client.idle();
  expect(plain(client.findings(uri))).toEqual(cold({ plan: bench + line }, 'plan'));
});

test('`findings.when` is live: after a pause, or when the file is saved', async () => {
  let when = 'save';
  await start({
    capabilities: { workspace: { configuration: true } },
    answers: { 'workspace/configuration': ({ items }) => items.map(() => ({ findings: { when } })) },
  });
  client.open(uri, bench);
  await client.idle();
  const broken = typed(bench, 2, behind(bench, 'box 2 m'), 'q');
  await client.idle();
  expect(client.published).toHaveLength(1);
  client.save(uri);
  await client.idle();
  expect(plain(client.findings(uri))).toEqual(cold({ plan: broken }, 'plan'));
  when = 'pause';
  client.notify('workspace/didChangeConfiguration', { settings: null });
  await client.idle();
  client.change(uri, 3, { text: bench });
  await client.until(() => client.findings(uri).length === 0, 300);
  client.change(uri, 4, { text: broken });
  await client.request('textDocument/documentSymbol', { textDocument: { uri } });
  expect(client.findings(uri)).toEqual([]);
  await client.idle();
  expect(plain(client.findings(uri))).toEqual(cold({ plan: broken }, 'plan'));
});

test('a plan counts the unsaved text of its library, and is told of again when that changes', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  await start({ folders: [place.uri] });
  const [plan, library] = [place.of('cover.liftplan'), place.of('library/gear.liftplan')];
  client.open(plan, hung);
  client.open(library, gear);
  await client.idle();
  expect(plain(client.findings(plan))).toEqual(
    cold({ 'cover.liftplan': hung, 'library/gear.liftplan': gear }, 'cover.liftplan'),
  );
  const renamed = gear.replace('K1..K2', 'N1..N2');
  client.change(library, 2, { text: renamed });
  await client.idle();
  expect(client.codes(plan)).toContain('name-unknown');
  expect(plain(client.findings(plan))).toEqual(
    cold({ 'cover.liftplan': hung, 'library/gear.liftplan': renamed }, 'cover.liftplan'),
  );
  client.close(library);
  await client.idle();
  expect(client.codes(plan)).not.toContain('name-unknown');
});

test('what a plan finds in its library stands in the library', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear.replace('weight 1.1 kg, ', '') });
  await start({ folders: [place.uri] });
  client.open(place.of('cover.liftplan'), hung);
  await client.idle();
  expect(client.codes(place.of('library/gear.liftplan'))).toContain('gear-weight-missing');
});

test('closed plans of the folder are checked too, and break when their library is changed unsaved', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  await start({ folders: [place.uri] });
  const library = place.of('library/gear.liftplan');
  client.open(library, gear);
  await client.idle();
  expect(client.codes(place.of('cover.liftplan'))).toEqual(
    cold({ 'cover.liftplan': hung, 'library/gear.liftplan': gear }, 'cover.liftplan').map(({ code }) => code),
  );
  client.change(library, 2, { range: stretch(gear, 'K1..K2'), text: 'N1..N2' });
  await client.idle();
  const closed = client.published.findLast((set) => set.uri === place.of('cover.liftplan'));
  expect(closed?.diagnostics.map(({ code }) => code)).toContain('name-unknown');
  expect(closed).not.toHaveProperty('version');
});

test('a document of no folder is let go when it is closed: an empty set', async () => {
  await start();
  client.open(uri, bench.replace('2 m x', '2 x'));
  await client.until(() => client.findings(uri).length > 0);
  client.close(uri);
  await client.idle();
  expect(client.published.at(-1)).toMatchObject({ uri, diagnostics: [] });
});

test('one cause is one finding, and says what it rests on where the client can show it', async () => {
  await start({ capabilities: { textDocument: { publishDiagnostics: { relatedInformation: true } } } });
  const twice = `${bench}  part "Frame": box 1 m x 1 m x 10 mm, of carbon steel, at (0, 0, 2 m)\n`;
  client.open(uri, twice);
  await client.idle();
  const stated = client.findings(uri).filter(({ code }) => code === 'stated-twice');
  expect(stated).toHaveLength(1);
  expect(stated[0]?.relatedInformation?.map(({ location }) => location)).toEqual([
    { uri, range: stretch(twice, '"Frame"') },
  ]);
});

test('no set that was sent holds more than a run from nothing finds in that version, and the last of each version is all of it', async () => {
  await start();
  const texts = new Map<number, string>();
  let text = bench;
  texts.set(1, text);
  client.open(uri, text);
  const edits: readonly [string, string][] = [
    ['2 m x 1 m', '2 m x 1'],
    ['carbon steel', 'granit'],
    ['2 m x 1,', '2 m x 1 m,'],
    ['granit', 'granite'],
    ['"Frame"', 'Frame'],
    ['datum', 'dtum'],
    ['dtum', 'datum'],
  ];
  for (const [n, [old, put]] of edits.entries()) {
    if (!text.includes(old)) continue;
    client.change(uri, n + 2, { range: stretch(text, old), text: put });
    text = text.replace(old, put);
    texts.set(n + 2, text);
    client.save(uri);
    await client.idle();
  }
  expect(client.published.length).toBeGreaterThan(3);
  // What is new on the line being typed waits for a pause or a save; what is gone goes at once.
  const last = new Map<number, (typeof client.published)[number]>();
  for (const sent of client.published) {
    last.set(sent.version as number, sent);
    const all = cold({ plan: texts.get(sent.version as number) as string }, 'plan');
    for (const one of plain(sent.diagnostics)) expect(all).toContainEqual(one);
  }
  expect([...last.keys()].filter((version) => version > 1)).toEqual([...texts.keys()].slice(1));
  for (const [version, { diagnostics }] of last)
    expect(plain(diagnostics)).toEqual(cold({ plan: texts.get(version) as string }, 'plan'));
});
