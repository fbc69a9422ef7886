// Files and folders: changes from outside, several roots, lone files, and one document under each spelling of its address.
import { createHash } from 'node:crypto';
import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { Client } from '../support/client.ts';
import { cold, plain } from '../support/cold.ts';
import { folder } from '../support/folder.ts';
import { bench, gear, hung } from '../support/plans.ts';

let client: Client;
afterEach(() => client.stop());

const watching = { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } };
const created = 1;
const changedType = 2;
const deleted = 3;
const outside = (uri: string, type: number) =>
  client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri, type }] });
const expected = cold({ 'cover.liftplan': hung, 'library/gear.liftplan': gear }, 'cover.liftplan');

test('the server asks to be told of plans that change, of a client that can tell', async () => {
  client = await Client.start({ capabilities: watching });
  await client.until(() => client.asked.length > 0);
  expect(client.asked[0]).toMatchObject({
    method: 'client/registerCapability',
    params: {
      registrations: [
        {
          method: 'workspace/didChangeWatchedFiles',
          registerOptions: {
            watchers: [
              { globPattern: '**/*.liftplan' },
              { globPattern: expect.stringMatching(/[{,]stl,STL,.*[{,]csv,CSV[,}]|[{,]csv,CSV,.*[{,]stl,STL[,}]/) },
            ],
          },
        },
      ],
    },
  });
});

test('a library that comes, changes and goes outside the editor', async () => {
  const place = folder({ 'cover.liftplan': hung });
  client = await Client.start({ capabilities: watching, folders: [place.uri] });
  const [plan, library] = [place.of('cover.liftplan'), place.of('library/gear.liftplan')];
  client.open(plan, hung);
  await client.idle();
  expect(client.codes(plan)).toContain('file-missing');
  place.write('library/gear.liftplan', gear);
  outside(library, created);
  await client.idle();
  expect(plain(client.findings(plan))).toEqual(expected);
  place.write('library/gear.liftplan', gear.replace('K1..K2', 'N1..N2'));
  outside(library, changedType);
  await client.idle();
  expect(client.codes(plan)).toContain('name-unknown');
  place.remove('library');
  outside(library, deleted);
  await client.idle();
  expect(client.codes(plan)).toContain('file-missing');
});

test('a list that comes and changes outside the editor', async () => {
  const text =
    'plan "Frame": date 2026-03-02\nload "Frame"\n  contingency 0 %\n  free "stands loose"\n  list "bill.csv", by drawing\nexpect load weight < 150 kg\n';
  const place = folder({ 'frame.liftplan': text });
  client = await Client.start({ capabilities: watching, folders: [place.uri] });
  const [plan, list] = [place.of('frame.liftplan'), place.of('bill.csv')];
  client.open(plan, text);
  await client.idle();
  expect(client.codes(plan)).toContain('file-missing');
  place.write('bill.csv', 'name,weight kg,x m,y m,z m\nBeam,100,0,0,0\n');
  outside(list, created);
  await client.idle();
  expect(client.codes(plan)).toEqual([]);
  place.write('bill.csv', 'name,weight kg,x m,y m,z m\nBeam,200,0,0,0\n');
  outside(list, changedType);
  await client.idle();
  expect(client.codes(plan)).toEqual(['expect-failed']);
  place.write('bill.csv', 'name,weight kg,x m,y m,z m\nBeam,"1,5",0,0,0\n');
  outside(list, changedType);
  await client.idle();
  expect(client.codes(plan)).toContain('list-row-unclear');
});

test('a paper that changes and goes outside the editor; confirming it, and marking another one', async () => {
  const said = 'Net 1,860 kg\n';
  const mark = (text: string) => {
    const print = createHash('sha256').update(text).digest('hex');
    return `${print.slice(0, 4)}-${print.slice(4, 8)}-${print.slice(8, 12)}`;
  };
  const text = `plan "Move": date 2026-03-09
load "Frame"
  free "stands loose"
  contingency 5 %
  stated 1,860 kg, by drawing, from "papers/slip.txt, net", seen "${mark(said)}"
  cog (0, 0, 1 m), by drawing, from "papers/slip.txt"
`;
  const place = folder({ 'move.liftplan': text, 'papers/slip.txt': said });
  client = await Client.start({
    capabilities: {
      ...watching,
      textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
    },
    folders: [place.uri],
  });
  const [plan, slip] = [place.of('move.liftplan'), place.of('papers/slip.txt')];
  const actions = async (line: number, only: string) => {
    const found = await client.request('textDocument/codeAction', {
      textDocument: { uri: plan },
      range: { start: { line, character: 4 }, end: { line, character: 4 } },
      context: { diagnostics: [], only: [only] },
    });
    return (found as { title: string; edit: { changes: Record<string, { newText: string }[]> } }[])
      .filter(({ title }) => title.includes('seen'))
      .map(({ edit }) => edit.changes[plan]?.[0]?.newText);
  };
  client.open(plan, text);
  await client.idle();
  expect(client.codes(plan)).toEqual([]);
  expect(await actions(4, 'refactor')).toEqual([]);
  expect(await actions(5, 'refactor')).toEqual([`, seen "${mark(said)}"`]);
  const links = await client.request('textDocument/documentLink', { textDocument: { uri: plan } });
  expect(links.map(({ target }: { target: string }) => target)).toEqual([slip, slip]);
  const again = 'Net 1,910 kg\n';
  place.write('papers/slip.txt', again);
  outside(slip, changedType);
  await client.idle();
  expect(client.codes(plan)).toEqual(['evidence-changed']);
  expect(await actions(4, 'quickfix')).toEqual([`"${mark(again)}"`]);
  place.remove('papers/slip.txt');
  outside(slip, deleted);
  await client.idle();
  expect(client.codes(plan)).toEqual(['evidence-changed']);
  expect(await actions(4, 'quickfix')).toEqual([]);
  place.write('papers/slip.txt', said);
  outside(slip, created);
  await client.idle();
  expect(client.codes(plan)).toEqual([]);
});

test('a closed plan that is deleted loses its findings', async () => {
  const place = folder({ 'bench.liftplan': bench.replace('2 m x', '2 x') });
  client = await Client.start({ capabilities: watching, folders: [place.uri] });
  await client.idle();
  expect(client.codes(place.of('bench.liftplan'))).toContain('unit-missing');
  place.remove('bench.liftplan');
  outside(place.of('bench.liftplan'), deleted);
  await client.idle();
  expect(client.published.at(-1)).toMatchObject({ uri: place.of('bench.liftplan'), diagnostics: [] });
});

test('a branch is changed: two hundred files at once are looked at together, and one that stays the same is left alone', async () => {
  const names = Array.from({ length: 200 }, (_, n) => `plan ${n}.liftplan`);
  const place = folder(Object.fromEntries(names.map((name) => [name, bench])));
  client = await Client.start({ capabilities: watching, folders: [place.uri] });
  await client.idle();
  expect(client.published).toEqual([]);
  for (const name of names.slice(0, 100)) place.write(name, bench.replace('2 m x', '2 x'));
  client.notify('workspace/didChangeWatchedFiles', {
    changes: names.map((name) => ({ uri: place.of(name), type: changedType })),
  });
  await client.idle();
  expect(client.published.map(({ uri }) => uri).sort()).toEqual(
    names
      .slice(0, 100)
      .map((name) => place.of(name))
      .sort(),
  );
});

test('what is open counts as it stands in the editor, whatever happens on disk', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ capabilities: watching, folders: [place.uri] });
  const [plan, library] = [place.of('cover.liftplan'), place.of('library/gear.liftplan')];
  client.open(plan, hung);
  client.open(library, gear);
  place.remove('library');
  outside(library, deleted);
  await client.idle();
  expect(plain(client.findings(plan))).toEqual(expected);
  client.close(library);
  await client.idle();
  expect(client.codes(plan)).toContain('file-missing');
});

test('a client that cannot watch: files are looked at again when one is opened or saved', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ folders: [place.uri] });
  const plan = place.of('cover.liftplan');
  client.open(plan, hung);
  await client.idle();
  place.write('library/gear.liftplan', gear.replace('K1..K2', 'N1..N2'));
  client.save(plan);
  await client.idle();
  expect(client.codes(plan)).toContain('name-unknown');
});

test('`use` reaches into the opened folder and no further', async () => {
  const place = folder({
    'open/plans/cover.liftplan': hung.replace('library/', '../../'),
    'gear.liftplan': gear,
    'open/gear.liftplan': gear,
  });
  client = await Client.start({ folders: [place.of('open')] });
  const plan = place.of('open/plans/cover.liftplan');
  client.open(plan, hung.replace('library/', '../../'));
  await client.idle();
  expect(client.findings(plan)[0]).toMatchObject({
    code: 'file-missing',
    message: expect.stringContaining('outside the opened folder'),
  });
  client.change(plan, 2, { text: hung.replace('library/', '../') });
  await client.idle();
  expect(client.codes(plan)).not.toContain('file-missing');
});

test('a link that points out of the opened folder is not followed', async () => {
  const place = folder({ 'open/cover.liftplan': hung.replace('library/', ''), 'gear.liftplan': gear });
  symlinkSync(join(place.path, 'gear.liftplan'), join(place.path, 'open/gear.liftplan'));
  client = await Client.start({ folders: [place.of('open')] });
  client.open(place.of('open/cover.liftplan'), hung.replace('library/', ''));
  await client.idle();
  expect(client.codes(place.of('open/cover.liftplan'))).toContain('file-missing');
});

test('with several folders open, a plan may take in from each; one that is closed is out of reach', async () => {
  const place = folder({
    'plans/cover.liftplan': hung.replace('library/', '../register/'),
    'register/gear.liftplan': gear,
  });
  client = await Client.start({
    capabilities: { workspace: { workspaceFolders: true } },
    folders: [place.of('plans'), place.of('register')],
  });
  const plan = place.of('plans/cover.liftplan');
  client.open(plan, hung.replace('library/', '../register/'));
  await client.idle();
  expect(client.codes(plan)).not.toContain('file-missing');
  client.notify('workspace/didChangeWorkspaceFolders', {
    event: { added: [], removed: [{ uri: place.of('register'), name: 'register' }] },
  });
  await client.idle();
  expect(client.codes(plan)).toContain('file-missing');
  client.notify('workspace/didChangeWorkspaceFolders', {
    event: { added: [{ uri: place.of('register'), name: 'register' }], removed: [] },
  });
  await client.idle();
  expect(client.codes(plan)).not.toContain('file-missing');
});

test('a lone file, without any folder, finds what lies beside it', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start();
  client.open(place.of('cover.liftplan'), hung);
  await client.idle();
  expect(plain(client.findings(place.of('cover.liftplan')))).toEqual(expected);
});

test('a path that is wrong is corrected by what there is', async () => {
  const place = folder({ 'cover.liftplan': hung, 'stores/lib räry/gear.liftplan': gear });
  client = await Client.start({
    capabilities: { textDocument: { codeAction: { codeActionLiteralSupport: {} } } },
    folders: [place.uri],
  });
  const plan = place.of('cover.liftplan');
  client.open(plan, hung);
  await client.idle();
  const actions = await client.request('textDocument/codeAction', {
    textDocument: { uri: plan },
    range: { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } },
    context: { diagnostics: [] },
  });
  expect(actions[0].edit.changes[plan][0].newText).toBe('"stores/lib räry/gear.liftplan"');
});

/** Names of files, and other spellings of the same address. */
const spellings: readonly (readonly [string, (uri: string) => string])[] = [
  ['a plan.liftplan', (uri) => uri.replace('%20', ' ')],
  ['plan #3.liftplan', (uri) => uri.replace('%20', ' ')],
  ['plan (old).liftplan', (uri) => uri.replace('(', '%28').replace(')', '%29')],
  ['Träger.liftplan', (uri) => decodeURI(uri)],
  ['吊り.liftplan', (uri) => uri.replace(/%[0-9A-F]{2}/g, (code) => code.toLowerCase())],
  ['50 % off.liftplan', (uri) => uri],
  [
    "it's; a, plan & more=@$+!.liftplan",
    (uri) => uri.replace(/[';,&=@$+!]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`),
  ],
];

test.each(spellings)(
  "%s is one document under each spelling of its address, and answers come in the client's own",
  async (name, other) => {
    const place = folder({ [name]: bench, 'library/gear.liftplan': gear });
    client = await Client.start({ folders: [place.uri] });
    const uri = place.of(name);
    client.open(uri, bench.replace('2 m x', '2 x'));
    await client.idle();
    expect(client.published.map((set) => set.uri)).toEqual([uri]);
    expect(
      await client.request('textDocument/hover', {
        textDocument: { uri: other(uri) },
        position: { line: 5, character: 9 },
      }),
    ).not.toBeNull();
    client.change(other(uri), 2, { text: bench });
    expect(await client.idle()).toEqual({ [uri]: 2 });
    expect(client.published.at(-1)).toEqual({ uri, version: 2, diagnostics: [] });
  },
);

test('the drive letter of a Windows address may be written in each way', async () => {
  client = await Client.start();
  client.open('file:///C%3A/plans/bench.liftplan', bench.replace('2 m x', '2 x'));
  client.change('file:///c:/plans/bench.liftplan', 2, { text: bench });
  expect(await client.idle()).toEqual({ 'file:///C%3A/plans/bench.liftplan': 2 });
});

test('a file reached by a link is the same file', async () => {
  const place = folder({ 'real/cover.liftplan': hung.replace('library/', ''), 'real/gear.liftplan': gear });
  symlinkSync(join(place.path, 'real'), join(place.path, 'link'));
  client = await Client.start({ folders: [place.uri] });
  const [plan, library] = [place.of('link/cover.liftplan'), place.of('real/gear.liftplan')];
  client.open(plan, hung.replace('library/', ''));
  client.open(library, gear.replace('K1..K2', 'N1..N2'));
  await client.idle();
  expect(client.codes(plan)).toContain('name-unknown');
  expect(client.published.map(({ uri }) => uri)).not.toContain(place.of('real/cover.liftplan'));
});
