// The language server as the rest of the client sees it: started, asked, listened to, and started again when it ends.
import { type Disposable, EventEmitter, type TextDocument, workspace } from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  type CloseHandlerResult,
  ErrorAction,
  type GenericNotificationHandler,
  type GenericRequestHandler,
  type LanguageClientOptions,
  RevealOutputChannelOn,
} from 'vscode-languageclient';
import type { StartOptions } from '../server/protocol/messages.ts';
import { linkFindings } from './explain.ts';

/** A client that is not yet started, and the way to be rid of it for good. */
export type MakeClient = (options: LanguageClientOptions) => { client: BaseLanguageClient; end: () => Promise<void> };

/** Versions of a file that source control shows beside it: their numbers would stand next to the wrong text. */
const oldVersions = new Set([
  'git',
  'gitfs',
  'gitlens',
  'git-graph',
  'svn',
  'hg',
  'pr',
  'review',
  'conflictResolution',
]);
/** After so many ends within three minutes only the person starts it again. */
const endsAllowed = 3;
const endsWithin = 3 * 60_000;

export const isPlan = (document: TextDocument) =>
  document.languageId === 'liftplan' && !oldVersions.has(document.uri.scheme);

export class Server implements Disposable {
  private current: ReturnType<MakeClient> | undefined;
  private ends: number[] = [];
  private lastTouched: string | undefined;
  private readonly setAside = new Set<string>();
  private readonly notified: [string, GenericNotificationHandler][] = [];
  private readonly asked: [string, GenericRequestHandler<unknown, void>][] = [];
  private readonly stateChanged = new EventEmitter<boolean>();
  /** Fires with true when the server answers again, with false when it has ended and is not started by itself. */
  readonly onState = this.stateChanged.event;
  private readonly make: MakeClient;
  private readonly pages: string;

  constructor(make: MakeClient, pages: string) {
    this.make = make;
    this.pages = pages;
  }

  /** Starts the server. Never throws: a server that does not start shows in the status item, with "Restart" beside it. */
  async start(): Promise<void> {
    const made = this.make(this.options());
    this.current = made;
    for (const [method, handler] of this.notified) made.client.onNotification(method, handler);
    for (const [method, handler] of this.asked) made.client.onRequest(method, handler);
    try {
      await made.client.start();
      this.stateChanged.fire(true);
    } catch {
      this.stateChanged.fire(false);
    }
  }

  /** Begins anew with nothing set aside; a client that failed cannot be started twice, so a new one takes its place. */
  async restart(): Promise<void> {
    const old = this.current;
    this.current = undefined;
    this.ends = [];
    this.setAside.clear();
    await old?.end().catch(() => {});
    await this.start();
  }

  /** The server's answer, or null where it cannot answer now: a feature that fails is empty, never a message box. */
  async ask<Answer>(method: string, params: unknown): Promise<Answer | null> {
    const client = this.current?.client;
    if (!client?.isRunning()) return null;
    try {
      return await client.sendRequest<Answer | null>(method, params);
    } catch (error) {
      client.outputChannel.error(`${method}: ${error}`);
      return null;
    }
  }

  /** To be called before `start`: what the server tells us. */
  onTold<Params>(method: string, handler: (params: Params) => void): void {
    this.notified.push([method, handler]);
  }

  /** To be called before `start`: what the server asks of us. */
  onAsked<Params, Answer>(method: string, handler: (params: Params) => Promise<Answer>): void {
    this.asked.push([method, handler]);
  }

  dispose(): Promise<void> | undefined {
    this.stateChanged.dispose();
    return this.current?.end().catch(() => {});
  }

  private options(): LanguageClientOptions {
    return {
      documentSelector: [{ language: 'liftplan' }],
      diagnosticCollectionName: 'becket',
      revealOutputChannelOn: RevealOutputChannelOn.Never,
      synchronize: { configurationSection: 'becket' },
      initializationOptions: (): StartOptions => ({ pages: this.pages, setAside: [...this.setAside] }),
      initializationFailedHandler: () => false,
      errorHandler: {
        error: () => ({ action: ErrorAction.Continue, handled: true }),
        closed: () => this.afterEnd(),
      },
      middleware: {
        didOpen: async (document, next) => {
          if (!isPlan(document)) return;
          this.lastTouched = document.uri.toString();
          await next(document);
        },
        didChange: async (event, next) => {
          if (!isPlan(event.document)) return;
          this.lastTouched = event.document.uri.toString();
          this.setAside.delete(this.lastTouched);
          await next(event);
        },
        didClose: async (document, next) => {
          if (isPlan(document)) await next(document);
        },
        handleDiagnostics: (uri, findings, next) => next(uri, linkFindings(findings)),
      },
    };
  }

  /** The document touched last is the likeliest cause: the next server sets it aside, so that every other stays live. */
  private afterEnd(): CloseHandlerResult {
    const now = Date.now();
    this.ends = [...this.ends.filter((end) => now - end < endsWithin), now];
    if (this.lastTouched && workspace.textDocuments.some(({ uri }) => uri.toString() === this.lastTouched)) {
      this.setAside.add(this.lastTouched);
    }
    if (this.ends.length <= endsAllowed) return { action: CloseAction.Restart, handled: true };
    this.stateChanged.fire(false);
    return { action: CloseAction.DoNotRestart, handled: true };
  }
}
