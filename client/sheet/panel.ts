// The sheet beside the text: one panel that follows the active plan, asks the server for what changed and ties rows to lines.
import {
  commands,
  type Disposable,
  Range,
  Selection,
  type TextDocument,
  type TextEditor,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import {
  type Location,
  MARKS_AT,
  type MarksAtAnswer,
  PLACE_OF,
  SHEET,
  SHEET_CHANGED,
  type SheetAnswer,
  type SheetChangedParams,
} from '../../server/protocol/messages.ts';
import { isPlan, type Server } from '../server.ts';
import { type FromPage, readFromPage, readKept, type ToPage } from './messages.ts';
import { pageHtml } from './page.ts';
import { ShownSheet } from './shown.ts';

const viewType = 'becket.sheet';
/** After the last key, before the sheet is asked for again. */
const afterTyping = 250;
/** The cursor rests this long before its row is marked. */
const afterMoving = 150;
/** A sheet that is behind its text for longer says so. */
const lagSaid = 2_000;

export class SheetPanel implements Disposable {
  private panel: WebviewPanel | undefined;
  private shown: ShownSheet | undefined;
  private stay = false;
  private asking = false;
  private askAgain = false;
  private readonly timers: Partial<Record<'refresh' | 'marks' | 'lag', ReturnType<typeof setTimeout>>> = {};
  private readonly hooks: Disposable[];
  private readonly dist: Uri;
  private readonly server: Server;

  constructor(extension: Uri, server: Server) {
    this.dist = Uri.joinPath(extension, 'dist');
    this.server = server;
    server.onTold<SheetChangedParams>(SHEET_CHANGED, ({ uri }) => {
      if (uri === this.shown?.uri && !this.waitsForSave()) void this.refresh();
    });
    this.hooks = [
      commands.registerCommand('becket.showSheet', () => this.show()),
      window.registerWebviewPanelSerializer(viewType, {
        deserializeWebviewPanel: async (panel, kept) => this.restore(panel, kept),
      }),
      window.onDidChangeActiveTextEditor((editor) => editor && void this.follow(editor.document)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => this.markSoon(textEditor)),
      workspace.onDidChangeTextDocument(({ document }) => this.textChanged(document)),
      workspace.onDidSaveTextDocument((document) => {
        if (document.uri.toString() === this.shown?.uri) void this.refresh();
      }),
      server.onState((running) => (running ? void this.refresh() : this.post({ type: 'state', state: 'stopped' }))),
    ];
  }

  /** The plan whose sheet is shown, if any. */
  get shownUri(): string | undefined {
    return this.shown?.uri;
  }

  /** The same, but only while the sheet has the focus. */
  get focusedUri(): string | undefined {
    return this.panel?.active ? this.shown?.uri : undefined;
  }

  dispose(): void {
    for (const hook of this.hooks) hook.dispose();
    this.panel?.dispose();
  }

  private async show(): Promise<void> {
    const document = window.activeTextEditor?.document;
    if (this.panel) this.panel.reveal(undefined, true);
    else {
      const options = { enableScripts: true, localResourceRoots: [this.dist], enableFindWidget: true };
      const beside = { viewColumn: ViewColumn.Beside, preserveFocus: true };
      this.adopt(window.createWebviewPanel(viewType, 'Sheet', beside, options));
    }
    if (document && isPlan(document)) await this.turnTo(document.uri.toString());
  }

  private async restore(panel: WebviewPanel, state: unknown): Promise<void> {
    const kept = readKept(state);
    panel.webview.options = { enableScripts: true, localResourceRoots: [this.dist] };
    this.stay = kept?.stay ?? false;
    this.adopt(panel);
    if (!kept) return;
    // A plan that is open only in the sheet is not known to the server until its text is opened.
    await workspace.openTextDocument(Uri.parse(kept.uri)).then(undefined, () => undefined);
    await this.turnTo(kept.uri);
  }

  private adopt(panel: WebviewPanel): void {
    this.panel?.dispose();
    this.panel = panel;
    panel.webview.onDidReceiveMessage((message) => this.hear(readFromPage(message)));
    panel.onDidDispose(() => {
      if (this.panel !== panel) return;
      for (const timer of Object.values(this.timers)) clearTimeout(timer);
      this.panel = undefined;
      this.shown = undefined;
      this.stay = false;
    });
    panel.webview.html = pageHtml(panel.webview, this.dist);
  }

  /** The sheet follows from plan to plan, and stays where it is when a library or any other file comes to the front. */
  private async follow(document: TextDocument): Promise<void> {
    const uri = document.uri.toString();
    if (!this.panel || this.stay || !isPlan(document) || uri === this.shown?.uri) return;
    const answer = await this.server.ask<SheetAnswer>(SHEET, { uri, known: {} });
    if (!answer || (answer.ofLibrary && this.shown) || window.activeTextEditor?.document !== document) return;
    this.shown = new ShownSheet(uri);
    this.put(answer);
  }

  private async turnTo(uri: string): Promise<void> {
    if (uri !== this.shown?.uri) this.shown = new ShownSheet(uri);
    await this.refresh();
  }

  /** One question at a time: changes that arrive meanwhile are asked for together afterwards. */
  private async refresh(): Promise<void> {
    const shown = this.shown;
    if (!this.panel || !shown) return;
    if (this.asking) {
      this.askAgain = true;
      return;
    }
    this.asking = true;
    const answer = await this.server.ask<SheetAnswer>(SHEET, { uri: shown.uri, known: shown.known() });
    this.asking = false;
    if (answer && shown === this.shown) this.put(answer);
    if (this.askAgain) {
      this.askAgain = false;
      await this.refresh();
    }
  }

  private put(answer: SheetAnswer): void {
    if (!this.panel) return;
    this.shown?.take(answer);
    this.panel.title = `Sheet: ${answer.title}`;
    this.post({ type: 'sheet', ...answer });
    this.tellState();
  }

  private textChanged(document: TextDocument): void {
    if (!this.panel || document.uri.toString() !== this.shown?.uri) return;
    if (this.waitsForSave()) {
      this.tellState();
      return;
    }
    this.later('refresh', afterTyping, () => void this.refresh());
    this.timers.lag ??= setTimeout(() => this.lagging(), lagSaid);
  }

  /** Says that the sheet is behind its text, and asks again until it is not: an answer may have been lost. */
  private lagging(): void {
    const level = this.tellState();
    this.timers.lag = level ? undefined : setTimeout(() => this.lagging(), lagSaid);
    if (!level) void this.refresh();
  }

  private waitsForSave(): boolean {
    const whenSaved = workspace.getConfiguration('becket').get('sheet.refresh') === 'save';
    return whenSaved && this.shownDocument()?.isDirty === true;
  }

  /** Tells the page how it stands to the text; true when it is level with it. */
  private tellState(): boolean {
    const level = this.shown?.version === this.shownDocument()?.version || this.shownDocument() === undefined;
    if (level) this.post({ type: 'state', state: 'level' });
    else this.post({ type: 'state', state: this.waitsForSave() ? 'unsaved' : 'behind' });
    return level;
  }

  private shownDocument(): TextDocument | undefined {
    return workspace.textDocuments.find(({ uri }) => uri.toString() === this.shown?.uri);
  }

  private markSoon(editor: TextEditor): void {
    if (!this.panel?.visible || !isPlan(editor.document)) return;
    this.later('marks', afterMoving, async () => {
      const uri = editor.document.uri.toString();
      const { line, character } = editor.selection.active;
      const answer = await this.server.ask<MarksAtAnswer>(MARKS_AT, { uri, position: { line, character } });
      if (answer) this.post({ type: 'marks', ids: answer.ids });
    });
  }

  private hear(message: FromPage | null): void {
    switch (message?.type) {
      case 'ready':
        if (this.shown?.answer) this.post({ type: 'sheet', ...this.shown.answer });
        this.tellState();
        return;
      case 'stay':
        this.stay = message.on;
        return;
      case 'reveal':
        void this.reveal(message.id, message.go);
        return;
      case 'print':
        void commands.executeCommand('becket.printSheet');
        return;
      case 'export':
        void commands.executeCommand('becket.exportSheet');
        return;
    }
  }

  private async reveal(id: string, go: boolean): Promise<void> {
    if (!this.shown) return;
    const place = await this.server.ask<Location>(PLACE_OF, { uri: this.shown.uri, id });
    if (!place) return;
    const { start, end } = place.range;
    const range = new Range(start.line, start.character, end.line, end.character);
    const open = window.visibleTextEditors.find(({ document }) => document.uri.toString() === place.uri);
    const editor = await window.showTextDocument(open?.document ?? (await openText(place.uri)), {
      viewColumn: open?.viewColumn ?? ViewColumn.One,
      preserveFocus: !go,
    });
    editor.selection = new Selection(range.start, range.start);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  private later(what: keyof typeof this.timers, wait: number, deed: () => void): void {
    clearTimeout(this.timers[what]);
    this.timers[what] = setTimeout(deed, wait);
  }

  private post(message: ToPage): void {
    void this.panel?.webview.postMessage(message);
  }
}

const openText = (uri: string) => workspace.openTextDocument(Uri.parse(uri));
