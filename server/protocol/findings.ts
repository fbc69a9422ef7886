// Findings as diagnostics, pushed calmly: one full set a version, what is put right goes at once, what is new waits for a pause.
import { type Diagnostic, DiagnosticSeverity, type PublishDiagnosticsParams } from 'vscode-languageserver';
import type { Finding, Severity } from '../checks/index.ts';
import type { Row, Tree } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/index.ts';
import { locationOf, rangeIn, treeOf } from './convert.ts';
import type { Identities } from './identities.ts';
import type { Settings } from './messages.ts';
import type { Tasks } from './tasks.ts';

/** Pause after which what is new on the line being written is shown, by `findings.when`; after `save` there is none. */
const pauses = { typing: 500, pause: 1_000 } as const;

/** A finding ready to be shown, with the line it belongs to. */
interface Ready {
  readonly slug: string;
  readonly row: Row;
  readonly diagnostic: Diagnostic;
}

/** One document's side of it. */
interface State {
  /** By the plan or library whose snapshot found them: a document has findings of its own and of each plan that takes it in. */
  readonly from: Map<string, readonly Ready[]>;
  shown: ReadonlySet<string>; // what the client has, each known by its kind and its line
  sent: string | null; // the set as it was sent, to compare; null: none yet
  version: number; // of the text that its own findings are of
  edited: Row | null; // the line written on last
  when: Settings['findings']['when'];
  unsaved: boolean;
}

/** What is asked of the server around. */
export interface Outlet {
  send(params: PublishDiagnosticsParams): void;
  spelled(file: string): string;
  /** Version and tree of an open document; null for any other. */
  live(file: string): { readonly version: number; readonly tree: Tree } | null;
  readonly related: boolean; // the client shows related places
}

export class Findings {
  private readonly states = new Map<string, State>();
  private readonly targets = new Map<string, ReadonlySet<string>>(); // by source: where it found something
  private readonly outlet: Outlet;
  private readonly tasks: Tasks;
  private readonly identities: Identities;

  constructor(outlet: Outlet, tasks: Tasks, identities: Identities) {
    this.outlet = outlet;
    this.tasks = tasks;
    this.identities = identities;
  }

  /** A line was written on: what is new there waits from now. */
  edited(file: string, row: Row, when: Settings['findings']['when']): void {
    const state = this.state(file);
    state.edited = row;
    state.when = when;
    state.unsaved = true;
    if (when !== 'save') this.tasks.later(`findings ${file}`, pauses[when], () => this.publish(file));
  }

  /** The document was saved: nothing waits any longer. */
  saved(file: string): void {
    this.rest(file);
    if (this.states.has(file)) this.publish(file);
  }

  /** What a snapshot found, wherever it found it. */
  take(snapshot: Snapshot): void {
    const source = snapshot.file;
    const by = new Map<string, Ready[]>([[source, []]]);
    for (const finding of snapshot.findings) {
      const { row } = finding.at;
      const list = by.get(row.file) ?? [];
      by.set(row.file, list);
      list.push({ slug: finding.slug, row, diagnostic: diagnosticOf(finding, snapshot, this.outlet) });
    }
    this.state(source).version = snapshot.version;
    const before = this.targets.get(source) ?? new Set();
    this.targets.set(source, new Set(by.keys()));
    for (const file of new Set([...by.keys(), ...before])) {
      const found = by.get(file);
      if (found) this.state(file).from.set(source, found);
      else this.state(file).from.delete(source);
      this.publish(file);
    }
  }

  /** A document is not written on now. */
  rest(file: string): void {
    this.tasks.cancel(`findings ${file}`);
    const state = this.states.get(file);
    if (!state) return;
    state.unsaved = false;
    state.edited = null;
  }

  /** A file is gone, with all that it found anywhere. */
  clear(file: string): void {
    this.rest(file);
    const targets = this.targets.get(file) ?? [];
    this.targets.delete(file);
    for (const target of targets) {
      this.states.get(target)?.from.delete(file);
      if (target !== file) this.publish(target);
    }
    const state = this.states.get(file);
    this.states.delete(file);
    if (state?.sent != null && state.sent !== '[]')
      this.outlet.send({ uri: this.outlet.spelled(file), diagnostics: [] });
  }

  private state(file: string): State {
    let state = this.states.get(file);
    if (!state) {
      state = {
        from: new Map(),
        shown: new Set(),
        sent: null,
        version: 0,
        edited: null,
        when: 'typing',
        unsaved: false,
      };
      this.states.set(file, state);
    }
    return state;
  }

  private publish(file: string): void {
    const state = this.state(file);
    const live = this.outlet.live(file);
    const shown = new Set<string>();
    const diagnostics = this.distinct(state, file, live?.tree).flatMap(({ key, row, diagnostic }) => {
      if (!state.shown.has(key) && this.waits(file, state, row)) return [];
      shown.add(key);
      return [diagnostic];
    });
    state.shown = shown;
    const sent = JSON.stringify(diagnostics);
    if (sent === (state.sent ?? (live ? null : '[]'))) return;
    state.sent = sent;
    this.outlet.send({ uri: this.outlet.spelled(file), diagnostics, ...(live && { version: state.version }) });
  }

  /** Whether something new on that line has to wait. */
  private waits(file: string, { when, edited, unsaved }: State, row: Row): boolean {
    if (when === 'save') return unsaved;
    return this.tasks.waits(`findings ${file}`) && (when === 'pause' || row === edited);
  }

  /** The findings in a document, its own first; what several plans find there counts once, and stands where its line stands now. */
  private distinct(
    { from }: State,
    file: string,
    tree: Tree | undefined,
  ): readonly (Ready & { readonly key: string })[] {
    const found = new Map<string, Ready & { readonly key: string }>();
    const counts = new Map<string, number>();
    const sources = [...from.keys()].sort((a, b) => Number(b === file) - Number(a === file) || (a < b ? -1 : 1));
    for (const source of sources) {
      for (const ready of from.get(source) ?? []) {
        const { slug, row } = ready;
        const moved = source === file || !tree ? ready : movedTo(ready, tree);
        if (!moved) continue;
        const line = `${slug} ${this.identities.of(row)}`;
        const { start, end } = moved.diagnostic.range;
        const mark = `${line} ${start.character} ${end.character} ${moved.diagnostic.message}`;
        if (found.has(mark)) continue;
        const nth = (counts.get(line) ?? 0) + 1;
        counts.set(line, nth);
        found.set(mark, { ...moved, key: `${line} ${nth}` });
      }
    }
    return [...found.values()];
  }
}

/** With its line as numbered in a newer tree; null where that line is no more. */
function movedTo(ready: Ready, tree: Tree): Ready | null {
  const line = tree.rowNumber(ready.row);
  if (line < 0) return null;
  const { start, end } = ready.diagnostic.range;
  if (start.line === line) return ready;
  return { ...ready, diagnostic: { ...ready.diagnostic, range: { start: { ...start, line }, end: { ...end, line } } } };
}

/** A finding in the protocol's form. One that a rule sets aside stays to be seen, as a remark with the reason. */
function diagnosticOf(
  { slug, severity, message, at, related, waived }: Finding,
  snapshot: Snapshot,
  { spelled, related: shows }: Outlet,
): Diagnostic {
  const range = rangeIn(treeOf(snapshot, at.row.file) ?? snapshot.tree, at);
  if (range.end.character === range.start.character && range.end.character < at.row.text.length)
    range.end.character += 1;
  const relatedInformation = (shows ? related : []).flatMap(({ at: place, message: says }) => {
    const location = locationOf(snapshot, place, spelled);
    return location ? [{ location, message: says }] : [];
  });
  return {
    range,
    severity: waived ? DiagnosticSeverity.Information : severities[severity],
    code: slug,
    source: 'becket',
    message: waived ? `${message} Set aside by ${waived.approvedBy}: ${waived.reason}` : message,
    ...(relatedInformation.length > 0 && { relatedInformation }),
  };
}

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};
