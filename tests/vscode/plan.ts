// A plan as the suite handles it: opened, waited for, looked at by the words in it instead of by line and column.
import {
  type Diagnostic,
  DiagnosticSeverity,
  extensions,
  languages,
  Position,
  Range,
  type TextDocument,
  type TextEditor,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import type { Exports } from '../../client/activate.ts';
import { until } from './checks.ts';

export const extension = () => {
  const found = extensions.getExtension<Exports>('becket.becket');
  if (!found) throw new Error('The extension is not installed.');
  return found;
};

export class Plan {
  readonly document: TextDocument;
  readonly editor: TextEditor;

  private constructor(document: TextDocument, editor: TextEditor) {
    this.document = document;
    this.editor = editor;
  }

  /** Opens the file of this name and waits until the server has worked it out. */
  static async open(name: string): Promise<Plan> {
    const [uri] = await workspace.findFiles(`**/${name}`);
    if (!uri) throw new Error(`There is no ${name}.`);
    const document = await workspace.openTextDocument(uri);
    const plan = new Plan(document, await window.showTextDocument(document, { preview: false, viewColumn: 1 }));
    await plan.settled();
    return plan;
  }

  /** Waits until the server has nothing pending and has seen the text as it is now. */
  async settled(): Promise<void> {
    await until('the extension', () => extension().isActive, Boolean);
    const uri = this.document.uri.toString();
    await until(
      `version ${this.document.version} of ${uri}`,
      () => extension().exports.idle(),
      (versions) => versions[uri] === this.document.version,
    );
  }

  get text(): string {
    return this.document.getText();
  }

  /** Where these words stand; of several places the first after the words `after`. */
  at(words: string, after = ''): Range {
    const from = after ? this.text.indexOf(after) + after.length : 0;
    const start = this.text.indexOf(words, from);
    if (start < 0) throw new Error(`"${words}" is not in the plan.`);
    return new Range(this.document.positionAt(start), this.document.positionAt(start + words.length));
  }

  /** Just inside these words, where a cursor would be to ask about them. */
  inside(words: string, after = ''): Position {
    return this.at(words, after).start.translate(0, 1);
  }

  get whole(): Range {
    return new Range(new Position(0, 0), this.document.lineAt(this.document.lineCount - 1).range.end);
  }

  /** Puts `text` in the place of `range` and waits for the server. */
  async replace(range: Range, text: string): Promise<void> {
    const edit = new WorkspaceEdit();
    edit.replace(this.document.uri, range, text);
    await workspace.applyEdit(edit);
    await this.settled();
  }

  /** Does something with the text and puts it back afterwards, so that the next check begins with the same plan. */
  async restoring(deed: () => Promise<void>): Promise<void> {
    const before = this.text;
    try {
      await deed();
    } finally {
      if (this.text !== before) await this.replace(this.whole, before);
    }
  }

  /** The findings as one line each: severity, slug, words under the mark. */
  findings(): string[] {
    return languages
      .getDiagnostics(this.document.uri)
      .map((finding) => `${severity(finding)} ${slug(finding)} at "${this.document.getText(finding.range)}"`);
  }
}

export const slug = ({ code }: Diagnostic) => (typeof code === 'object' ? code.value : code);

const severity = (finding: Diagnostic) => DiagnosticSeverity[finding.severity]?.toLowerCase();
