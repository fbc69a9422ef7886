// One client's session: what is open, what is due, and who is told of what when a text changes.
import type { Connection } from 'vscode-languageserver';
import type { Row } from '../syntax/types.ts';
import { type Counts, type Snapshot, Survey, type TextChange, Workspace } from '../workspace/index.ts';
import { Addresses } from './addresses.ts';
import type { Announced } from './announced.ts';
import { Findings, type Outlet } from './findings.ts';
import type { Host } from './host.ts';
import { Identities } from './identities.ts';
import { type Settings, SHEET_CHANGED, STATUS } from './messages.ts';
import { defaults } from './settings.ts';
import { type SheetDesk, statusOf } from './sheets.ts';
import { Tasks } from './tasks.ts';

/** After the last key, before closed plans are looked at and the status is written anew. */
const quiet = 250;
/** After the last key, before hints stand on the line that was written on. */
const hintPause = 400;
/** Plans of an opened folder that are checked without being opened, and other files that are known by name. */
const mostFiles = 1_000;

const isPlan = (file: string): boolean => file.endsWith('.liftplan');

export class Session {
  readonly addresses: Addresses;
  readonly workspace: Workspace;
  readonly survey = new Survey();
  readonly identities = new Identities();
  readonly tasks: Tasks;
  readonly findings: Findings;
  readonly desk: SheetDesk;
  private readonly shown = new Map<string, Snapshot>(); // last snapshot whose findings were sent
  private readonly sheets = new Map<string, Snapshot>(); // last snapshot whose sheet was asked for
  private readonly statuses = new Map<string, { readonly snapshot: Snapshot; readonly counts: Counts }>(); // as last told
  private readonly settings = new Map<string, Settings>();
  private readonly editedRows = new Map<string, Row>();
  private readonly withheld = new Set<string>(); // documents that were answered without the hints of a line
  private readonly logged = new Set<string>();
  private readonly closing: ((file: string) => void)[] = [];

  constructor(
    readonly connection: Connection,
    readonly host: Host,
    readonly announced: Announced,
  ) {
    this.tasks = new Tasks(host);
    this.addresses = new Addresses(host);
    this.workspace = new Workspace(this.addresses, (file, error) => this.log(`working out ${file}`, error));
    const outlet: Outlet = {
      send: (params) => void connection.sendDiagnostics(params),
      spelled: (file) => this.addresses.spelled(file),
      live: (file) => this.workspace.live(file),
      related: announced.related,
    };
    this.findings = new Findings(outlet, this.tasks, this.identities);
    this.desk = { addresses: this.addresses, plansWith: (file) => this.survey.plansWith(file) };
    host.arrived((uri) => this.takeUp([uri]));
  }

  // ------------------------------------------------------------- documents

  open(uri: string, version: number, text: string): void {
    const file = this.addresses.opened(uri);
    this.workspace.openText(file, version, text);
    this.survey.add(file);
    this.survey.touch(file);
    this.checkSoon();
  }

  change(uri: string, version: number, changes: readonly TextChange[]): void {
    const file = this.addresses.of(uri);
    const replaced = this.workspace.changeText(file, version, changes);
    for (const one of replaced) this.identities.follow(one);
    const row = replaced.at(-1)?.rows.at(-1);
    if (row) {
      this.editedRows.set(file, row);
      this.findings.edited(file, row, this.settingsOf(file).findings.when);
      this.tasks.later(`hints ${file}`, hintPause, () => this.lineDone(file));
    }
    this.survey.touch(file);
    this.checkSoon();
  }

  save(uri: string): void {
    const file = this.addresses.of(uri);
    this.findings.rest(file);
    if (this.isStale(file)) this.check(file);
    else this.findings.saved(file);
    if (!this.announced.watching) this.rereadAll();
  }

  /** Hears of documents that are closed. */
  onClose(listener: (file: string) => void): void {
    this.closing.push(listener);
  }

  close(uri: string): void {
    const file = this.addresses.of(uri);
    for (const hear of this.closing) hear(file);
    this.workspace.closeText(file);
    this.shown.delete(file);
    this.sheets.delete(file);
    this.statuses.delete(file);
    this.settings.delete(file);
    this.editedRows.delete(file);
    this.tasks.cancel(`hints ${file}`);
    this.findings.rest(file);
    if (!this.addresses.inFolder(file)) this.drop(file);
    this.host.forget(file);
    this.survey.touch(file);
    this.checkSoon();
  }

  /** Files that may have another text, may have come or gone; what is open is not asked of the disk. */
  changedOutside(uris: readonly string[]): void {
    this.addresses.forgetLinks();
    for (const file of uris.map((uri) => this.addresses.of(uri)))
      if (!this.workspace.isOpen(file)) this.host.forget(file);
    this.takeUp(uris);
    if (!uris.every(isPlan)) void this.listFiles();
  }

  /** Closed files whose text is there to be read anew: what rests on them is worked out again. */
  private takeUp(uris: readonly string[]): void {
    let anew = false;
    for (const uri of uris) {
      const file = this.addresses.of(uri);
      if (this.workspace.isOpen(file)) continue;
      if (!this.workspace.reread(file)) continue;
      anew = true;
      if (isPlan(file) && this.addresses.inFolder(file) && !this.survey.has(file)) this.survey.add(file);
      this.survey.touch(file);
    }
    if (!anew) return;
    this.filesKnown();
  }

  /** For clients that do not watch files: looks at all closed ones that are known. */
  rereadAll(): void {
    this.changedOutside(this.survey.withTaken);
  }

  /** The opened folders, from now on; their plans are listed and checked when there is time. */
  setFolders(uris: readonly string[]): void {
    this.addresses.setFolders(uris);
    this.workspace.forgetPaths();
    for (const file of this.survey.files)
      if (!this.workspace.isOpen(file) && !this.addresses.inFolder(file)) this.drop(file);
    void this.listFiles();
    this.checkSoon();
  }

  /** Looks anew at what lies in the opened folders. */
  async listFiles(): Promise<void> {
    await this.tasks.during(Promise.all(this.addresses.openedFolders.map((folder) => this.list(folder))));
  }

  private async list(folder: string): Promise<void> {
    try {
      const files = await this.host.list(folder, mostFiles);
      const fresh = files.filter((uri) => isPlan(uri) && !this.survey.has(this.addresses.of(uri)));
      for (const uri of fresh) this.survey.add(this.addresses.of(uri));
      const others = this.addresses.setOthers(
        folder,
        files.filter((uri) => !isPlan(uri)),
      );
      if (fresh.length || others) this.filesKnown();
    } catch (error) {
      this.log(`listing ${folder}`, error);
    }
  }

  /** Files came or went: whoever misses one may find it now, or learn where one of that name lies. */
  private filesKnown(): void {
    this.addresses.setPlans(this.survey.files.filter((file) => this.addresses.inFolder(file)));
    this.survey.touchMissing();
    this.workspace.forgetMissing();
    this.checkSoon();
  }

  private drop(file: string): void {
    this.survey.remove(file);
    this.findings.clear(file);
  }

  // ------------------------------------------------------------- snapshots and settings

  /** The snapshot of a document as it is this very moment; null for one that has no text. */
  snapshot(uri: string): Snapshot | null {
    return this.workspace.snapshot(this.addresses.of(uri));
  }

  settingsOf(file: string): Settings {
    return this.settings.get(file) ?? defaults;
  }

  setSettings(file: string, settings: Settings): void {
    const before = this.settingsOf(file);
    this.settings.set(file, settings);
    if (JSON.stringify(before.hints) !== JSON.stringify(settings.hints)) this.refreshHints();
    if (before.findings.when !== settings.findings.when) this.findings.saved(file);
  }

  /** The line of a document that is being written on, where no hint shall stand now. */
  lineWrittenOn(file: string): Row | null {
    if (!this.tasks.waits(`hints ${file}`)) return null;
    this.withheld.add(file);
    return this.editedRows.get(file) ?? null;
  }

  private lineDone(file: string): void {
    if (this.withheld.delete(file)) this.refreshHints();
  }

  private refreshHints(): void {
    if (this.announced.refreshHints) void this.connection.languages.inlayHint.refresh().catch(() => {});
  }

  /** The sheet of this snapshot was handed over: its asker is told when there is a newer one. */
  sheetAsked(snapshot: Snapshot): void {
    this.sheets.set(snapshot.file, snapshot);
  }

  // ------------------------------------------------------------- checking

  private checkSoon(): void {
    this.tasks.soon('check', () => this.checkOpen());
    this.tasks.later('quiet', quiet, () => this.whenQuiet());
  }

  /** Every open document whose snapshot is not the one shown; the ones written on last come first. */
  private checkOpen(): void {
    const files = this.workspace.openFiles;
    const next =
      files.find((file) => this.isStale(file) && this.editedRows.has(file)) ?? files.find((file) => this.isStale(file));
    if (next === undefined) return;
    this.check(next);
    if (files.some((file) => this.isStale(file))) this.tasks.soon('check', () => this.checkOpen());
  }

  private isStale(file: string): boolean {
    const shown = this.shown.get(file);
    return !shown || !this.workspace.isCurrent(file, shown);
  }

  private check(file: string): void {
    const snapshot = this.workspace.snapshot(file);
    if (!snapshot) return;
    const others = this.shown.size > 0 && this.shown.has(file);
    this.shown.set(file, snapshot);
    if (this.workspace.incomplete(file)) return;
    this.survey.done(file, snapshot);
    this.findings.take(snapshot);
    if (others && this.editedRows.get(file)?.file !== file) this.refreshHints();
  }

  /** Nothing was written for a moment: closed plans are looked at one by one, the status and the sheet are brought up to date. */
  private whenQuiet(): void {
    this.tell();
    this.checkClosed();
  }

  private checkClosed(): void {
    const file = this.survey.next();
    if (file === undefined) return this.tell();
    if (this.workspace.isOpen(file)) this.survey.done(file, this.workspace.snapshot(file));
    else this.checkClosedFile(file);
    this.tasks.soon('closed', () => this.checkClosed());
  }

  private checkClosedFile(file: string): void {
    const snapshot = this.workspace.snapshot(file);
    this.survey.done(file, snapshot);
    if (this.workspace.incomplete(file)) return; // it comes up again when the text has arrived
    if (snapshot) this.findings.take(snapshot);
    else this.drop(file);
  }

  private tell(): void {
    if (!this.announced.ours) return;
    for (const [file, snapshot] of this.sheets) {
      if (this.workspace.isCurrent(file, snapshot)) continue;
      this.sheets.delete(file);
      void this.connection.sendNotification(SHEET_CHANGED, {
        uri: this.addresses.spelled(file),
        version: this.workspace.versionOf(file),
      });
    }
    const counts = this.survey.counts();
    for (const file of this.workspace.openFiles) {
      const snapshot = this.workspace.snapshot(file);
      const before = this.statuses.get(file);
      if (
        !snapshot ||
        (before?.snapshot === snapshot &&
          before.counts.checked === counts.checked &&
          before.counts.total === counts.total)
      )
        continue;
      this.statuses.set(file, { snapshot, counts });
      void this.connection.sendNotification(STATUS, statusOf(snapshot, counts, this.addresses));
    }
  }

  // ------------------------------------------------------------- what goes wrong

  /** A failure is told to the log once, never to the person. */
  log(what: string, error: unknown): void {
    const text = `${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
    if (this.logged.has(text)) return;
    if (this.logged.size > 1_000) this.logged.clear();
    this.logged.add(text);
    this.connection.console.error(text);
  }

  /** A handler of something told, which fails alone. */
  guarded<P>(name: string, deed: (params: P) => void): (params: P) => void {
    return this.answer<P, void>(name, undefined, deed);
  }

  /** A handler about one document as it stands now: empty for one that is not known, and where the feature fails. */
  answerAt<P extends { readonly textDocument: { readonly uri: string } }, R>(
    name: string,
    empty: R,
    feature: (snapshot: Snapshot, params: P) => R,
  ): (params: P) => R {
    return this.answer<P, R>(name, empty, (params) => {
      const snapshot = this.snapshot(params.textDocument.uri);
      return snapshot ? feature(snapshot, params) : empty;
    });
  }

  /** A handler that answers empty where the feature fails. */
  answer<P, R>(name: string, empty: R, feature: (params: P) => R): (params: P) => R {
    return (params) => {
      try {
        return feature(params);
      } catch (error) {
        this.log(name, error);
        return empty;
      }
    };
  }
}
