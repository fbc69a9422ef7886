// The server as the browser runs it: the same plans give the same answers, and files come from the client.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';
import { afterEach, expect, test } from 'vitest';
import { Client } from '../support/client.ts';
import { cold, plain } from '../support/cold.ts';
import { folder } from '../support/folder.ts';
import { bench, gear, hung, stretch } from '../support/plans.ts';

/** Runs the worker's bundle with nothing of Node around it, and talks to it as a page would. */
class Worker {
  readonly told: { readonly method: string; readonly params: never }[] = [];
  readonly read: string[] = [];
  readonly files: Record<string, string>;
  private readonly self: {
    onmessage?: (event: { data: unknown }) => void;
    postMessage(message: unknown): void;
    addEventListener(): void;
  };
  private readonly waiting = new Map<number, (result: never) => void>();
  private last = 0;

  constructor(files: Record<string, string>) {
    this.files = files;
    this.self = {
      addEventListener: () => {},
      postMessage: (message) => setTimeout(() => this.hear(structuredClone(message) as never)),
    };
    const globals = {
      self: this.self,
      importScripts: () => {},
      setTimeout,
      clearTimeout,
      queueMicrotask,
      console,
      TextDecoder,
      TextEncoder,
      performance,
      atob,
      structuredClone,
    };
    runInNewContext(readFileSync('dist/server.js', 'utf8'), globals);
  }

  request(method: string, params: unknown): Promise<never> {
    this.last += 1;
    const id = this.last;
    this.send({ id, method, params });
    return new Promise((resolve) => this.waiting.set(id, resolve));
  }

  send(message: object): void {
    setTimeout(() => this.self.onmessage?.({ data: { jsonrpc: '2.0', ...message } })); // a task of its own, as from a page
  }

  private hear(message: { id?: number; method?: string; params: never; result: never }): void {
    if (message.method === undefined) this.waiting.get(message.id as number)?.(message.result);
    else if (message.id === undefined) this.told.push(message as never);
    else this.send({ id: message.id, result: this.answer(message.method, message.params) });
  }

  private answer(method: string, { uri, folderUri }: { uri: string; folderUri: string }): unknown {
    if (method === 'becket/readFile') {
      this.read.push(uri);
      return { text: this.files[uri] ?? null };
    }
    if (method === 'becket/readBytes') {
      this.read.push(uri);
      const text = this.files[uri];
      return { base64: text === undefined ? null : Buffer.from(text).toString('base64') };
    }
    return method === 'becket/listFiles'
      ? {
          uris: Object.keys(this.files).filter(
            (file) => file.startsWith(`${folderUri}/`) && file.endsWith('.liftplan'),
          ),
        }
      : null;
  }
}

let client: Client | undefined;
afterEach(async () => {
  await client?.stop();
  client = undefined;
});

const root = 'memfs:/site';
const [plan, library, pages] = [`${root}/cover.liftplan`, `${root}/library/gear.liftplan`, 'memfs:/pages.json'];
const started = async (files: Record<string, string>) => {
  const worker = new Worker(files);
  await worker.request('initialize', {
    processId: null,
    rootUri: root,
    capabilities: {},
    workspaceFolders: [{ uri: root, name: 'site' }],
    initializationOptions: { pages },
  });
  worker.send({ method: 'initialized', params: {} });
  return worker;
};
const findings = (worker: Worker, uri: string) =>
  worker.told
    .filter(
      ({ method, params }) => method === 'textDocument/publishDiagnostics' && (params as { uri: string }).uri === uri,
    )
    .map(({ params }) => params as { diagnostics: never[] });

test('a plan waits for its library, says nothing meanwhile, and says then what Node says', async () => {
  const worker = await started({ [plan]: hung, [library]: gear });
  worker.send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri: plan, languageId: 'liftplan', version: 1, text: hung } },
  });
  await worker.request('becket/idle', {});
  expect(findings(worker, plan).map(({ diagnostics }) => plain(diagnostics))).toEqual([
    cold({ 'cover.liftplan': hung, 'library/gear.liftplan': gear }, 'cover.liftplan'),
  ]);
  expect(worker.read.filter((uri) => uri === library)).toHaveLength(1);
  const json = (await worker.request('becket/exportSheet', { uri: plan, format: 'json' })) as { text: string };
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ folders: [place.uri] });
  client.open(place.of('cover.liftplan'), hung);
  const same = await client.request('becket/exportSheet', { uri: place.of('cover.liftplan'), format: 'json' });
  expect(json.text).toBe(same.text);
});

test('a library that changes is fetched again; closed plans are checked too', async () => {
  const worker = await started({
    [plan]: hung,
    [library]: gear,
    [`${root}/bench.liftplan`]: bench.replace('2 m x', '2 x'),
  });
  worker.send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri: plan, languageId: 'liftplan', version: 1, text: hung } },
  });
  await worker.request('becket/idle', {});
  expect(plain(findings(worker, `${root}/bench.liftplan`).at(-1)?.diagnostics ?? []).map(({ code }) => code)).toEqual([
    'unit-missing',
  ]);
  worker.files[library] = gear.replace('K1..K2', 'N1..N2');
  worker.send({ method: 'workspace/didChangeWatchedFiles', params: { changes: [{ uri: library, type: 2 }] } });
  await worker.request('becket/idle', {});
  expect(plain(findings(worker, plan).at(-1)?.diagnostics ?? []).map(({ code }) => code)).toContain('name-unknown');
});

test('files of the folder are offered by their paths, as the client lists them', async () => {
  const text = 'load "Cover"\n  list ""\n';
  const worker = await started({ [plan]: text, [`${root}/bills/cover.csv`]: 'name,weight kg\nCover,5\n' });
  worker.send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri: plan, languageId: 'liftplan', version: 1, text } },
  });
  const { items } = (await worker.request('textDocument/completion', {
    textDocument: { uri: plan },
    position: { line: 1, character: 8 },
  })) as { items: { label: string }[] };
  expect(items.map(({ label }) => label)).toEqual(['bills/cover.csv']);
});

test('a paper is fetched once, and again when it changes: then the plan says so', async () => {
  const slip = `${root}/papers/slip%207.txt`;
  const said = 'Net 1,860 kg\n';
  const print = createHash('sha256').update(said).digest('hex').slice(0, 12);
  const text = `plan "Move": date 2026-03-09\nload "Frame"\n  free "loose"\n  contingency 5 %\n  stated 1,860 kg, by drawing, from "papers/slip 7.txt", seen "${print}"\n  cog (0, 0, 1 m), by drawing\n`;
  const worker = await started({ [plan]: text, [slip]: said });
  const codes = () => plain(findings(worker, plan).at(-1)?.diagnostics ?? []).map(({ code }) => code);
  worker.send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri: plan, languageId: 'liftplan', version: 1, text } },
  });
  await worker.request('becket/idle', {});
  expect(codes()).toEqual([]);
  const address = worker.read.filter((uri) => uri.includes('slip'));
  expect(address).toHaveLength(1);
  worker.files[address[0] ?? ''] = 'Net 1,910 kg\n';
  worker.send({ method: 'workspace/didChangeWatchedFiles', params: { changes: [{ uri: address[0], type: 2 }] } });
  await worker.request('becket/idle', {});
  expect(codes()).toEqual(['evidence-changed']);
});

test('the pages come from where the client says they lie', async () => {
  const page = { title: 'A number without a unit', markdown: '# A number without a unit' };
  const worker = await started({ [pages]: JSON.stringify({ 'unit-missing': page }) });
  expect(await worker.request('becket/explain', { slug: 'unit-missing' })).toEqual(page);
  expect(await worker.request('becket/explain', { slug: 'none' })).toBeNull();
});

test('edits are lived through as in Node', async () => {
  const worker = await started({});
  worker.send({
    method: 'textDocument/didOpen',
    params: { textDocument: { uri: 'untitled:a', languageId: 'liftplan', version: 1, text: bench } },
  });
  worker.send({
    method: 'textDocument/didChange',
    params: {
      textDocument: { uri: 'untitled:a', version: 2 },
      contentChanges: [{ range: stretch(bench, '2 m'), text: '2' }],
    },
  });
  expect(await worker.request('becket/idle', {})).toEqual({ versions: { 'untitled:a': 2 } });
  expect(plain(findings(worker, 'untitled:a').at(-1)?.diagnostics ?? [])).toEqual(
    cold({ plan: bench.replace('2 m', '2') }, 'plan'),
  );
});
