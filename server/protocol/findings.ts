// Findings as diagnostics, pushed calmly: one full set a version, what is put right goes at once, what is new waits for a pause.
import { type Diagnostic, DiagnosticSeverity, type PublishDiagnosticsParams } from 'vscode-languageserver-types';
import type { Finding, Severity } from '../checks/index.ts';
import type { Row } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/index.ts';
import { locationOf, rangeIn } from './convert.ts';
import type { Identities } from './identities.ts';
import type { Settings } from './messages.ts';
import type { Tasks } from './tasks.ts';

/** Pause after which what is new on the line being written is shown, by `findings.when`; after `save` there is none. */
const pauses = { typing: 500, pause: 1_000 } as const;

/** A diagnostic with what it is known by from version to version. */
interface Shown {
  readonly key: string;
  readonly row: Row;
  readonly diagnostic: Diagnostic;
}

/** One document's side of it. */
interface State {
  shown: ReadonlySet<string>; // keys of what the client has
  sent: string; // the set as it was sent, to compare
  all: readonly Shown[];
  version: number | undefined;
  edited: Row | null; // the line written on last
  when: Settings['findings']['when'];
  unsaved: boolean;
}

/** What the publisher needs of the server around it. */
export interface Outlet {
  readonly send: (params: PublishDiagnosticsParams) => void;
  readonly spelled: (file: string) => string;
  readonly related: boolean; // the client shows related places
}

export class Findings {
  private readonly states = new Map<string, State>();
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
    const state = this.state(file);
    state.unsaved = false;
    state.edited = null;
    this.tasks.cancel(`findings ${file}`);
    this.publish(file);
  }

  /** The findings of a document as they are now. `version` is undefined for one that is not open. */
  set(file: string, version: number | undefined, snapshots: readonly Snapshot[]): void {
    const state = this.state(file);
    state.version = version;
    state.all = this.shownIn(file, snapshots);
    this.publish(file);
  }

  /** The document is gone: nothing is shown for it any more. */
  clear(file: string): void {
    const state = this.states.get(file);
    this.tasks.cancel(`findings ${file}`);
    this.states.delete(file);
    if (state && state.sent !== '[]') this.outlet.send({ uri: this.outlet.spelled(file), diagnostics: [] });
  }

  private state(file: string): State {
    let state = this.states.get(file);
    if (!state) {
      state = { shown: new Set(), sent: '[]', all: [], version: undefined, edited: null, when: 'typing', unsaved: false };
      this.states.set(file, state);
    }
    return state;
  }

  private publish(file: string): void {
    const state = this.state(file);
    const calm = state.all.filter(({ key, row }) => state.shown.has(key) || !this.waits(file, state, row));
    state.shown = new Set(calm.map(({ key }) => key));
    const diagnostics = calm.map(({ diagnostic }) => diagnostic);
    const sent = JSON.stringify(diagnostics);
    if (sent === state.sent) return;
    state.sent = sent;
    this.outlet.send({ uri: this.outlet.spelled(file), diagnostics, ...(state.version !== undefined && { version: state.version }) });
  }

  /** Whether something new on that line has to wait. */
  private waits(file: string, { when, edited, unsaved }: State, row: Row): boolean {
    if (when === 'save') return unsaved;
    return this.tasks.waits(`findings ${file}`) && (when === 'pause' || row === edited);
  }

  /** The findings of several snapshots whose place is in one file; what two of them find counts once. */
  private shownIn(file: string, snapshots: readonly Snapshot[]): readonly Shown[] {
    const found = new Map<string, Shown>();
    const counts = new Map<string, number>();
    for (const snapshot of snapshots) {
      const here = snapshot.file === file ? snapshot.own : snapshot.findings.filter(({ at }) => at.row.file === file);
      for (const finding of here) {
        const mark = `${finding.slug} ${this.identities.of(finding.at.row)} ${finding.at.from} ${finding.at.to}`;
        if (found.has(mark)) continue;
        const line = `${finding.slug} ${this.identities.of(finding.at.row)}`;
        const nth = (counts.get(line) ?? 0) + 1;
        counts.set(line, nth);
        found.set(mark, { key: `${line} ${nth}`, row: finding.at.row, diagnostic: diagnosticOf(finding, snapshot, this.outlet) });
      }
    }
    return [...found.values()];
  }
}

/** A finding in the protocol's form. One that a rule sets aside stays to be seen, as a remark with the reason. */
export function diagnosticOf({ slug, severity, message, at, related, waived }: Finding, snapshot: Snapshot, { spelled, related: shows }: Pick<Outlet, 'spelled' | 'related'>): Diagnostic {
  const tree = snapshot.file === at.row.file ? snapshot.tree : snapshot.plan.files.find(({ file }) => file === at.row.file)?.tree;
  const range = rangeIn(tree ?? snapshot.tree, at);
  if (range.end.character === range.start.character && range.end.character < at.row.text.length) range.end.character += 1;
  const relatedInformation = related.flatMap(({ at: place, message: says }) => {
    const location = locationOf(snapshot, place, spelled);
    return location ? [{ location, message: says }] : [];
  });
  return {
    range,
    severity: waived ? DiagnosticSeverity.Information : severities[severity],
    code: slug,
    source: 'becket',
    message: waived ? `${message} Set aside by ${waived.approvedBy}: ${waived.reason}` : message,
    ...(shows && relatedInformation.length > 0 && { relatedInformation }),
  };
}

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};
