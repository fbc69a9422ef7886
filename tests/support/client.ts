// A small client of the language server for tests: starts the bundled server, speaks the protocol, keeps what the server says.
import { type ChildProcess, spawn } from 'node:child_process';
import { resolve } from 'node:path';

/** A diagnostic as it arrives. */
export interface Shown {
  readonly range: Range;
  readonly severity: number;
  readonly code: string;
  readonly source: string;
  readonly message: string;
  readonly relatedInformation?: readonly {
    readonly location: { readonly uri: string; readonly range: Range };
    readonly message: string;
  }[];
}
export interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: readonly Shown[];
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}
export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface TextEdit {
  readonly range: Range;
  readonly newText: string;
}

// biome-ignore lint/suspicious/noExplicitAny: what a server answers is read by the test that asked.
type Answer = any;

export interface Options {
  readonly capabilities?: object;
  readonly initializationOptions?: object;
  readonly folders?: readonly string[];
  readonly args?: readonly string[];
  /** Another server than ours, and the language its documents are in: for measuring. */
  readonly program?: string;
  readonly language?: string;
  /** Answers to what the server asks, by method. */
  readonly answers?: Readonly<Record<string, (params: Answer) => unknown>>;
}

const bundle = resolve('dist/server.js'); // tests run from the folder of package.json

export class Client {
  /** Every set of findings in the order it came. */
  readonly published: Published[] = [];
  /** Every other notification. */
  readonly told: { readonly method: string; readonly params: Answer }[] = [];
  /** Every request of the server. */
  readonly asked: { readonly method: string; readonly params: Answer }[] = [];
  readonly process: ChildProcess;
  answers: Readonly<Record<string, (params: Answer) => unknown>>;
  initialized: Answer;
  private readonly language: string;
  private readonly waiting = new Map<number, { resolve(value: Answer): void; reject(error: Error): void }>();
  private readonly watchers = new Set<() => void>();
  private lastId = 0;
  private buffer: Buffer = Buffer.alloc(0);

  private constructor(program: string, args: readonly string[], language: string, answers: Client['answers']) {
    this.answers = answers;
    this.language = language;
    this.process = spawn(process.execPath, [program, ...args], { stdio: ['pipe', 'pipe', 'inherit'] });
    this.process.stdout?.on('data', (chunk: Buffer) => this.take(chunk));
  }

  /** Starts a server and shakes hands with it. */
  static async start({
    capabilities = {},
    initializationOptions,
    folders = [],
    args = ['--stdio'],
    answers = {},
    program = bundle,
    language = 'liftplan',
  }: Options = {}): Promise<Client> {
    const client = new Client(program, args, language, answers);
    client.initialized = await client.request('initialize', {
      processId: process.pid,
      rootUri: folders[0] ?? null,
      capabilities,
      ...(initializationOptions && { initializationOptions }),
      ...(folders.length > 0 && { workspaceFolders: folders.map((uri) => ({ uri, name: uri })) }),
    });
    client.notify('initialized', {});
    return client;
  }

  async stop(): Promise<number | null> {
    const ended = new Promise<number | null>((done) => this.process.once('exit', (code) => done(code)));
    if (this.process.exitCode === null) {
      await this.request('shutdown', null);
      this.notify('exit', null);
    }
    return this.process.exitCode ?? ended;
  }

  request(method: string, params: unknown): Promise<Answer> {
    const { promise } = this.ask(method, params);
    return promise;
  }

  /** A request with its number, so that it can be cancelled. */
  ask(method: string, params: unknown): { readonly id: number; readonly promise: Promise<Answer> } {
    this.lastId += 1;
    const id = this.lastId;
    const promise = new Promise<Answer>((resolve, reject) => this.waiting.set(id, { resolve, reject }));
    this.send({ id, method, params });
    return { id, promise };
  }

  notify(method: string, params: unknown): void {
    this.send({ method, params });
  }

  open(uri: string, text: string, version = 1): void {
    this.notify('textDocument/didOpen', { textDocument: { uri, languageId: this.language, version, text } });
  }

  /** Replaces a stretch; the whole text where no range is given. */
  change(uri: string, version: number, ...changes: readonly { readonly range?: Range; readonly text: string }[]): void {
    this.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges: changes });
  }

  close(uri: string): void {
    this.notify('textDocument/didClose', { textDocument: { uri } });
  }

  save(uri: string): void {
    this.notify('textDocument/didSave', { textDocument: { uri } });
  }

  /** Waits until the server has nothing pending. */
  async idle(): Promise<Readonly<Record<string, number>>> {
    return (await this.request('becket/idle', {})).versions;
  }

  /** The findings a document has now, as the client was told last. */
  findings(uri: string): readonly Shown[] {
    return this.published.findLast((set) => set.uri === uri)?.diagnostics ?? [];
  }

  codes(uri: string): readonly string[] {
    return this.findings(uri).map(({ code }) => code);
  }

  /** Waits for something that a message brings about. */
  async until(holds: () => boolean, wait = 5_000): Promise<void> {
    if (holds()) return;
    await new Promise<void>((resolve, reject) => {
      const end = setTimeout(() => {
        this.watchers.delete(look);
        reject(
          new Error(
            `Waited ${wait} ms in vain; last published: ${JSON.stringify(this.published.at(-1))?.slice(0, 400)}`,
          ),
        );
      }, wait);
      const look = () => {
        if (!holds()) return;
        clearTimeout(end);
        this.watchers.delete(look);
        resolve();
      };
      this.watchers.add(look);
    });
  }

  private send(message: object): void {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    this.process.stdin?.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.process.stdin?.write(body);
  }

  private take(chunk: Buffer): void {
    this.buffer = this.buffer.length ? Buffer.concat([this.buffer, chunk]) : chunk;
    for (;;) {
      const end = this.buffer.indexOf('\r\n\r\n');
      if (end < 0) return;
      const length = Number(/Content-Length: (\d+)/i.exec(this.buffer.toString('utf8', 0, end))?.[1]);
      if (this.buffer.length < end + 4 + length) return;
      const message = JSON.parse(this.buffer.toString('utf8', end + 4, end + 4 + length));
      this.buffer = this.buffer.subarray(end + 4 + length);
      this.hear(message);
      for (const look of [...this.watchers]) look();
    }
  }

  private hear(message: Answer): void {
    if (message.method === undefined) {
      const waiting = this.waiting.get(message.id);
      this.waiting.delete(message.id);
      if (message.error) waiting?.reject(Object.assign(new Error(message.error.message), { code: message.error.code }));
      else waiting?.resolve(message.result);
    } else if (message.id !== undefined) {
      this.asked.push(message);
      const answer = this.answers[message.method]?.(message.params);
      this.send({ id: message.id, result: answer ?? null });
    } else if (message.method === 'textDocument/publishDiagnostics') this.published.push(message.params);
    else this.told.push(message);
  }
}
