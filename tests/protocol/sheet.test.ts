// Our own messages: the sheet by sections, what its rows and the text's lines have to do with each other, the status, the pages.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { checks } from '../../server/checks/index.ts';
import { Client } from '../support/client.ts';
import { folder } from '../support/folder.ts';
import { bench, gear, hung, stretch, whereIs } from '../support/plans.ts';

const uri = 'untitled:Bench';
const pages = pathToFileURL(resolve('dist/pages.json')).toString();
const ours = { initializationOptions: { pages } };
let client: Client;
afterEach(() => client.stop());

const told = (method: string) => client.told.filter((one) => one.method === method).map(({ params }) => params);

test('the sheet comes by sections, and only those that changed come again', async () => {
  client = await Client.start(ours);
  client.open(uri, bench, 3);
  const first = await client.request('becket/sheet', { uri, known: {} });
  expect(first).toMatchObject({ uri, version: 3, title: 'Move a workbench', ofLibrary: false });
  expect(first.sections.map(({ id }: { id: string }) => id)).toEqual(first.order);
  const known = Object.fromEntries(first.sections.map(({ id, hash }: { id: string; hash: string }) => [id, hash]));
  expect((await client.request('becket/sheet', { uri, known })).sections).toEqual([]);
  client.change(uri, 4, { range: stretch(bench, 'Hall 2'), text: 'Hall 3' });
  const next = await client.request('becket/sheet', { uri, known });
  expect(next.version).toBe(4);
  expect(next.order).toEqual(first.order);
  expect(next.sections.map(({ id }: { id: string }) => id)).toContain('head');
  expect(next.sections.length).toBeLessThan(first.order.length);
  expect(next.sections[0].html).toContain('Hall 3');
});

test('its asker is told once when there is a newer one', async () => {
  client = await Client.start(ours);
  client.open(uri, bench);
  await client.request('becket/sheet', { uri, known: {} });
  await client.idle();
  expect(told('becket/sheetChanged')).toEqual([]);
  client.change(uri, 2, { range: stretch(bench, 'Hall 2'), text: 'Hall 3' });
  client.change(uri, 3, { range: stretch(bench, 'Hall 2'), text: 'Hall 4' });
  await client.idle();
  expect(told('becket/sheetChanged')).toEqual([{ uri, version: 3 }]);
});

test('a line of the text leads to its rows on the sheet and back, and stays the same while lines are put in above', async () => {
  client = await Client.start(ours);
  client.open(uri, bench);
  const [part, load] = (await client.request('becket/marksAt', { uri, position: whereIs(bench, 'Frame') })).ids;
  const { sections } = await client.request('becket/sheet', { uri, known: {} });
  const shown = sections.flatMap(({ html }: { html: string }) =>
    [...html.matchAll(/data-id="([^"]+)"/g)].flatMap(([, ids]) => (ids as string).split(' ')),
  );
  expect(shown).toContain(part);
  expect(shown).toContain(load);
  client.change(uri, 2, {
    range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } },
    text: '# a comment\n\n',
  });
  const place = await client.request('becket/placeOf', { uri, id: part });
  expect(place).toMatchObject({ uri, range: { start: { line: whereIs(bench, 'part').line + 2, character: 2 } } });
  expect(await client.request('becket/placeOf', { uri, id: 'part:nobody' })).toBeNull();
});

test('a row of the sheet can lead into a library', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ ...ours, folders: [place.uri] });
  const plan = place.of('cover.liftplan');
  client.open(plan, hung);
  const { sections } = await client.request('becket/sheet', { uri: plan, known: {} });
  const ids: string[] = sections.flatMap(({ html }: { html: string }) =>
    [...html.matchAll(/data-id="([^"]+)"/g)].flatMap(([, found]) => (found as string).split(' ')),
  );
  const places = await Promise.all([...new Set(ids)].map((id) => client.request('becket/placeOf', { uri: plan, id })));
  expect(places.every((found) => found !== null)).toBe(true);
  expect(places).toContainEqual(expect.objectContaining({ uri: place.of('library/gear.liftplan') }));
});

test('a library has a sheet too, which says who uses it', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ ...ours, folders: [place.uri] });
  const library = place.of('library/gear.liftplan');
  client.open(library, gear);
  await client.idle();
  const sheet = await client.request('becket/sheet', { uri: library, known: {} });
  expect(sheet.ofLibrary).toBe(true);
  expect(sheet.sections.map(({ html }: { html: string }) => html).join()).toContain('../cover.liftplan');
});

test('the status tells how the plan stands, its gross load, and how many plans are checked', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear, 'bench.liftplan': bench });
  client = await Client.start({ ...ours, folders: [place.uri] });
  client.open(place.of('cover.liftplan'), hung);
  await client.idle();
  // Disc 0.25 π × 1² × 0.02 × 7,850 = 123.3 kg and 5 % on it; block, two slings and two shackles 63 kg: worked out by hand.
  expect(told('becket/status').at(-1)).toMatchObject({
    uri: place.of('cover.liftplan'),
    version: 1,
    grossLoad: expect.stringMatching(/^19[2-3][.\d]* kg$/),
    plansChecked: 2,
    plansTotal: 2,
  });
});

test('a client that does not know our messages is sent none', async () => {
  client = await Client.start();
  client.open(uri, bench);
  await client.request('becket/sheet', { uri, known: {} });
  client.change(uri, 2, { range: stretch(bench, 'Hall 2'), text: 'Hall 3' });
  await client.idle();
  expect(client.told).toEqual([]);
  expect(client.asked).toEqual([]);
});

test('the sheet as a file in every form', async () => {
  const place = folder({ 'my plan.liftplan': bench });
  client = await Client.start(ours);
  const plan = place.of('my plan.liftplan');
  client.open(plan, bench);
  const as = async (format: string) => client.request('becket/exportSheet', { uri: plan, format });
  expect(await as('html')).toMatchObject({ name: 'my plan.html', text: expect.stringMatching(/^<!DOCTYPE html>/) });
  expect(await as('markdown')).toMatchObject({
    name: 'my plan.md',
    text: expect.stringContaining('from my plan.liftplan'),
  });
  expect(await as('lines')).toMatchObject({ name: 'my plan.txt' });
  const report = JSON.parse((await as('json')).text);
  expect(report).toMatchObject({ format: 'liftplan report', version: 1, files: ['my plan.liftplan'] });
  expect(await client.request('becket/exportSheet', { uri: place.of('none.liftplan'), format: 'html' })).toBeNull();
});

test('every finding has its page', async () => {
  client = await Client.start(ours);
  for (const slug of Object.keys(checks)) {
    const page = await client.request('becket/explain', { slug });
    expect(page.markdown).toContain(`# ${page.title}`);
  }
  expect(await client.request('becket/explain', { slug: 'nothing-like-that' })).toBeNull();
  expect(await client.request('becket/explain', { slug: 'constructor' })).toBeNull();
});

test('an editor without a sheet of its own writes it as a page and shows it, or says where it lies', async () => {
  client = await Client.start({
    capabilities: { window: { showDocument: { support: true } } },
    answers: { 'window/showDocument': () => ({ success: true }) },
  });
  client.open(uri, bench);
  expect(client.initialized.capabilities.executeCommandProvider.commands).toEqual(['becket.openSheet']);
  const page = await client.request('workspace/executeCommand', { command: 'becket.openSheet', arguments: [uri] });
  expect(client.asked.map(({ method, params }) => [method, params.uri, params.external])).toEqual([
    ['window/showDocument', page, true],
  ]);
  expect(readFileSync(new URL(page), 'utf8')).toContain('<title>Move a workbench');
  client.answers = { 'window/showDocument': () => ({ success: false }) };
  const again = await client.request('workspace/executeCommand', { command: 'becket.openSheet', arguments: [uri] });
  await client.until(() => client.told.length > 0);
  expect(client.told[0]).toMatchObject({
    method: 'window/showMessage',
    params: { message: expect.stringContaining(decodeURIComponent(new URL(again).pathname)) },
  });
});

test('the open text is compared with an earlier one, in meaning, with the files it uses as they are now', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ ...ours, folders: [place.uri] });
  const plan = place.of('cover.liftplan');
  client.open(plan, hung.replace('length 20 mm', 'length 25 mm'));
  const compare = (text: string) => client.request('becket/compare', { uri: plan, text, name: 'the saved file' });
  const { markdown } = await compare(hung);
  expect(markdown).toContain('Before: the saved file. Now: the open text.');
  expect(markdown).toContain('| changed | part Disc | length 20 mm → 25 mm | line 7 |');
  expect(markdown).toMatch(/\| part Disc: weight \| 123\.\d+ kg \| 154\.\d+ kg \|/); // π/4 × 1 m² × 20 or 25 mm × 7,850 kg/m³
  expect(markdown).not.toContain('file-missing');
  const same = await compare(hung.replace('length 20 mm', 'length 0.025 m').replace('rig\n', '# as bought\nrig\n'));
  expect(same.markdown).toMatch(/\n\nNo change in meaning\.\n\nBefore: the saved file\. Now: the open text\./);
  expect(await client.request('becket/compare', { uri: 'untitled:Nobody', text: hung, name: 'x' })).toBeNull();
});
