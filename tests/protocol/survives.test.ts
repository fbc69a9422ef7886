// What the server outlives: clients that can do little, requests that make no sense, cancelled ones, files that are set aside.
import { afterEach, expect, test } from 'vitest';
import { Client } from '../support/client.ts';
import { cold, plain } from '../support/cold.ts';
import { bench, stretch } from '../support/plans.ts';

const uri = 'untitled:Bench';
const document = { textDocument: { uri } };
let client: Client;
afterEach(() => client.stop());

test('a client that announces nothing is offered only what needs nothing', async () => {
  client = await Client.start();
  const { capabilities } = client.initialized;
  expect(capabilities.positionEncoding).toBe('utf-16');
  expect(capabilities).toMatchObject({
    hoverProvider: true,
    completionProvider: { triggerCharacters: [' ', '>', '"', '/'] },
    textDocumentSync: { openClose: true, change: 2 },
  });
  for (const name of [
    'inlayHintProvider',
    'semanticTokensProvider',
    'codeActionProvider',
    'callHierarchyProvider',
    'diagnosticProvider',
    'codeLensProvider',
  ])
    expect(capabilities).not.toHaveProperty(name);
  expect(capabilities.completionProvider).not.toHaveProperty('allCommitCharacters');
});

test('positions outside the text, documents nobody opened and parameters of the wrong form do no harm', async () => {
  client = await Client.start({
    capabilities: { textDocument: { inlayHint: {}, codeAction: { codeActionLiteralSupport: {} }, callHierarchy: {} } },
  });
  client.open(uri, bench);
  const far = { line: 99_999, character: 99_999 };
  const none = { textDocument: { uri: 'untitled:None' } };
  for (const method of ['hover', 'completion', 'definition', 'documentHighlight', 'prepareRename']) {
    await client.request(`textDocument/${method}`, { ...document, position: far });
    await client.request(`textDocument/${method}`, { ...none, position: far });
    await client
      .request(`textDocument/${method}`, { ...document, position: { line: -1, character: -5 } })
      .catch(() => {});
  }
  await client.request('textDocument/inlayHint', { ...document, range: { start: far, end: far } });
  await client.request('textDocument/codeAction', {
    ...document,
    range: { start: far, end: far },
    context: { diagnostics: [] },
  });
  await client.request('textDocument/selectionRange', { ...document, positions: [far] });
  for (const params of [null, {}, [], { uri: 4 }, { uri, position: null, known: null }]) {
    for (const method of ['becket/sheet', 'becket/marksAt', 'becket/placeOf', 'becket/exportSheet', 'becket/explain'])
      await client.request(method, params).catch(() => {});
  }
  client.change('untitled:None', 2, { text: 'nobody opened this' });
  client.change(uri, 2, { range: { start: far, end: far }, text: '# at the end' });
  expect(await client.idle()).toEqual({ [uri]: 2 });
  expect(plain(client.findings(uri))).toEqual(cold({ plan: `${bench}# at the end` }, 'plan'));
});

test('requests in flight while keys come are answered from the newest text, and a thousand cancelled ones cost nothing', async () => {
  client = await Client.start();
  client.open(uri, bench);
  const asked = Array.from({ length: 1_000 }, (_, n) => {
    const one = client.ask('textDocument/hover', { ...document, position: { line: 5, character: 9 } });
    if (n % 50 === 0) client.change(uri, n + 2, { range: stretch(bench, '2 m'), text: '2 m' });
    client.notify('$/cancelRequest', { id: one.id });
    return one.promise.catch((error) => error.code);
  });
  const answers = await Promise.all(asked);
  expect(answers.every((answer) => typeof answer !== 'number' || answer === -32800 || answer === -32801)).toBe(true);
  const hover = await client.request('textDocument/hover', { ...document, position: { line: 5, character: 9 } });
  expect(hover.contents.value).toContain('157 kg');
  expect(client.told).toEqual([]);
});

test('twenty keys that arrive together are one piece of work, of the last version', async () => {
  client = await Client.start();
  client.open(uri, bench);
  await client.idle();
  const { start } = stretch(bench, '1 m');
  for (let n = 0; n < 20; n++) client.change(uri, n + 2, { range: { start, end: start }, text: '1' });
  client.save(uri);
  await client.idle();
  expect(client.published.length).toBeLessThanOrEqual(2);
  expect(client.published.at(-1)?.version === 21 || client.published.length === 1).toBe(true);
});

test('a file that an earlier server ended over is set aside until its text changes; every other stays live', async () => {
  client = await Client.start({ initializationOptions: { setAside: [uri] } });
  client.open(uri, bench);
  client.open('untitled:Other', bench.replace('2 m x', '2 x'));
  await client.idle();
  expect(client.codes(uri)).toEqual(['not-judged']);
  expect(client.codes('untitled:Other')).toEqual(['unit-missing']);
  expect(
    client.told.filter(({ method, params }) => method === 'becket/status' && params.uri === uri).at(-1)?.params,
  ).toMatchObject({ standing: 'set aside', grossLoad: null });
  const sheet = await client.request('becket/sheet', { uri, known: {} });
  expect(JSON.stringify(sheet)).not.toContain('157');
  expect(await client.request('textDocument/foldingRange', document)).not.toEqual([]);
  client.change(uri, 2, { range: stretch(bench, 'Hall 2'), text: 'Hall 3' });
  await client.idle();
  expect(client.findings(uri)).toEqual([]);
});

test('it ends as the protocol says: 0 after shutdown, 1 where the client is gone without it', async () => {
  client = await Client.start();
  expect(await client.stop()).toBe(0);
  client = await Client.start();
  const ended = new Promise((done) => client.process.once('exit', done));
  client.process.stdin?.end();
  expect(await ended).toBe(1);
});
