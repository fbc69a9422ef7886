// The measurements: two servers take turns, so that a noisy hour is noisy for both; medians, spreads and ratios are printed.
import { readFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { resolve } from 'node:path';
import { Client, type Position } from '../support/client.ts';
import { hangTimes } from './hang.ts';
import { largeTimes } from './large.ts';
import { jsonDocument, jsonSchema, plan } from './plans.ts';

const peer = resolve('.cache/bench/node_modules/vscode-langservers-extracted/bin/vscode-json-language-server');

interface Server {
  readonly name: string;
  readonly uri: string;
  readonly text: (lines: number) => string;
  readonly start: () => Promise<Client>;
  /** Waits for the findings of the newest version: pushed, or asked for where the server would wait before it pushes. */
  readonly findings: (client: Client, version: number) => Promise<void>;
  /** Where two digits are typed, and others in their place: the weight or size of a part in the middle. */
  readonly caret: (lines: readonly string[]) => Position;
}

const able = {
  textDocument: {
    inlayHint: {},
    hover: { contentFormat: ['markdown'] },
    diagnostic: {},
    completion: { completionItem: { snippetSupport: true } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
  },
};

const ours: Server = {
  name: 'becket',
  uri: 'untitled:bench.liftplan',
  text: (lines) => plan(lines),
  start: () => Client.start({ capabilities: able }),
  findings: (client, version) => client.until(() => client.published.at(-1)?.version === version, 60_000),
  // In front of the length of a box so large that another first digit moves the load's weight by more than its last printed digit.
  caret: (lines) => behind(lines, /part "Box \d+": box (?=\d+ mm x [23]\d\d mm x [5-9]\d mm)/),
};

const json = (name: string, dense: boolean): Server => ({
  name,
  uri: 'file:///bench.json',
  text: (lines) => jsonDocument(lines, dense),
  start: async () => {
    const client = await Client.start({ program: peer, capabilities: able, language: 'json' });
    client.notify('workspace/didChangeConfiguration', {
      settings: { json: { validate: { enable: true }, schemas: [{ fileMatch: ['bench.json'], schema: jsonSchema }] } },
    });
    return client;
  },
  findings: async (client) =>
    void (await client.request('textDocument/diagnostic', { textDocument: { uri: 'file:///bench.json' } })),
  caret: (lines) => behind(lines, /"weight": (?=\d)/),
});

/** Behind the first match in the second half of the text. */
function behind(lines: readonly string[], pattern: RegExp): Position {
  const from = Math.floor(lines.length / 2);
  const n = lines.slice(from).findIndex((line) => pattern.test(line));
  const [found] = pattern.exec(lines[from + n] as string) as RegExpExecArray;
  return { line: from + n, character: (lines[from + n] as string).indexOf(found) + found.length };
}

type Samples = Record<string, number[]>;

/** One life of a server: everything that is measured, once or as often as said. */
async function live(server: Server, lines: number, keys: number, into: Samples): Promise<void> {
  const note = (what: string, value: number): void => {
    into[what] = [...(into[what] ?? []), value];
  };
  const took = async (what: string, deed: () => Promise<unknown>): Promise<void> => {
    const start = performance.now();
    await deed();
    note(what, performance.now() - start);
  };
  let client = undefined as unknown as Client;
  await took('start', async () => {
    client = await server.start();
  });
  const text = server.text(lines);
  const rows = text.split('\n');
  const caret = server.caret(rows);
  const { uri } = server;
  let version = 1;
  await took('open to findings', async () => {
    client.open(uri, text, version);
    await server.findings(client, version);
  });
  /** Each key leaves a text that none of the last dozens left, so that a server that tells only what is new has something to tell. */
  const key = (): void => {
    const end = { ...caret, character: caret.character + (version > 1 ? 2 : 0) };
    version += 1;
    client.change(uri, version, { range: { start: caret, end }, text: String(10 + (version % 89)) });
  };
  const textDocument = { uri };
  const view = {
    start: { line: Math.max(caret.line - 30, 0), character: 0 },
    end: { line: caret.line + 30, character: 0 },
  };
  const asked: Record<string, () => Promise<unknown>> = {
    'hover after a key': () =>
      client.request('textDocument/hover', { textDocument, position: { line: caret.line, character: 10 } }),
    'completion after a key': () => client.request('textDocument/completion', { textDocument, position: caret }),
    'outline after a key': () => client.request('textDocument/documentSymbol', { textDocument }),
  };
  if (server === ours)
    asked['hints of the view after a key'] = () =>
      client.request('textDocument/inlayHint', { textDocument, range: view });
  for (let n = 0; n < 5; n++) {
    key();
    await server.findings(client, version);
  }
  for (let n = 0; n < keys; n++) {
    await took('key to findings', () => {
      key();
      return server.findings(client, version);
    });
  }
  for (const [what, ask] of Object.entries(asked)) {
    for (let n = 0; n < Math.max(keys / 4, 3); n++) {
      await took(what, () => {
        key();
        return ask();
      });
      await server.findings(client, version);
    }
  }
  await took('burst of 21 keys', () => {
    for (let n = 0; n < 21; n++) key();
    return server.findings(client, version);
  });
  note('memory, MB', memoryOf(client.process.pid as number));
  client.process.kill();
}

/** Resident memory in MB; NaN where the system does not say. */
function memoryOf(pid: number): number {
  try {
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
  } catch {
    return Number.NaN;
  }
}

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? Number.NaN;
const median = (values: readonly number[]): number => quantile(values, 0.5);
const shown = (value: number): string => (value < 10 ? value.toFixed(2) : value.toFixed(0));

/** Half of the samples lie between these. */
const spread = (values: readonly number[]): string =>
  `${shown(quantile(values, 0.25))} to ${shown(quantile(values, 0.75))}`;

/** Measures and prints; each size takes some lives of every server, in turns. */
export async function bench(sizes: readonly number[]): Promise<void> {
  const servers = [ours, json('json', false), json('dense', true)];
  console.log(
    `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model ?? 'unknown'}; milliseconds, median (middle half); ratios: becket to json, becket to dense`,
  );
  printHang();
  printLarge();
  for (const lines of sizes.length ? sizes : [1_000, 10_000]) {
    const keys = lines > 5_000 ? 20 : 40;
    const all = new Map(servers.map((server) => [server.name, {} as Samples]));
    for (let round = 0; round < 5; round++)
      for (const server of servers) await live(server, lines, keys, all.get(server.name) as Samples);
    print(lines, all);
  }
}

function printHang(): void {
  const times = hangTimes(60);
  const peer = median(times.at(-1)?.warm ?? []);
  console.log('\nrigs, from text to findings; ratio: to the dense system');
  for (const { what, warm } of times)
    console.log(
      `  ${what.padEnd(34)} ${shown(median(warm)).padStart(7)} (${spread(warm)})`.padEnd(64),
      `ratio ${(median(warm) / peer).toFixed(2)}`,
    );
}

function printLarge(): void {
  console.log('\nlarge plans; ratio: to one key in 500 parts, and to a general library that reads no file');
  for (const { what, times, peer } of largeTimes(60))
    console.log(
      `  ${what.padEnd(34)} ${shown(median(times)).padStart(7)} (${spread(times)}), 95th ${shown(quantile(times, 0.95))}`.padEnd(
        78,
      ),
      `peer ${shown(median(peer))}`.padEnd(14),
      `ratio ${(median(times) / median(peer)).toFixed(2)}`,
    );
}

function print(lines: number, all: ReadonlyMap<string, Samples>): void {
  const [own, plainPeer, densePeer] = [...all.values()] as [Samples, Samples, Samples];
  console.log(`\n${lines} lines`);
  for (const [what, values] of Object.entries(own)) {
    const others = [plainPeer[what], densePeer[what]];
    const ratios = others.map((other) => (other ? (median(values) / median(other)).toFixed(2) : '–'));
    console.log(
      `  ${what.padEnd(30)} ${shown(median(values)).padStart(7)} (${spread(values)})`.padEnd(64),
      `json ${others[0] ? shown(median(others[0])) : '–'}`.padEnd(14),
      `dense ${others[1] ? shown(median(others[1])) : '–'}`.padEnd(14),
      `ratios ${ratios.join(', ')}`,
    );
    if (what === 'key to findings')
      console.log(
        `  ${'  its 95th percentile'.padEnd(30)} ${shown(quantile(values, 0.95)).padStart(7)}`.padEnd(64),
        ...others.map((other, n) => `${n ? 'dense' : 'json'} ${other ? shown(quantile(other, 0.95)) : '–'}`.padEnd(14)),
      );
  }
}
