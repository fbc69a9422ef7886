// "Explain This Finding": the page of a finding's kind, kept inside the extension, opened as a Markdown document.
import { commands, type Diagnostic, Disposable, languages, Uri, window, workspace } from 'vscode';
import { EXPLAIN, type ExplainAnswer } from '../server/protocol/messages.ts';
import { showMarkdown } from './markdown.ts';
import type { Server } from './server.ts';

const scheme = 'becket-page';

export function explainFindings(server: Server): Disposable {
  return Disposable.from(
    workspace.registerTextDocumentContentProvider(scheme, {
      provideTextDocumentContent: async (uri) => (await pageOf(server, slugOf(uri)))?.markdown ?? '',
    }),
    commands.registerCommand('becket.explainFinding', async (asked?: unknown) => {
      const slug = typeof asked === 'string' ? asked : await slugAtCursor();
      if (slug === undefined) return;
      if (await pageOf(server, slug)) await openPage(slug);
      else void window.showInformationMessage(`There is no page about ${slug} in this version.`);
    }),
  );
}

/** Makes the slug of each finding a link to its page, wherever the editor shows it. */
export function linkFindings(findings: readonly Diagnostic[]): Diagnostic[] {
  return findings.map((finding) => {
    const slug = slugOfFinding(finding);
    if (slug !== undefined) finding.code = { value: slug, target: pageLink(slug) };
    return finding;
  });
}

const pageLink = (slug: string) => Uri.parse('command:becket.explainFinding').with({ query: JSON.stringify([slug]) });

const pageOf = (server: Server, slug: string) => server.ask<ExplainAnswer>(EXPLAIN, { slug });

const slugOf = (uri: Uri) => uri.path.replace(/^\//, '').replace(/\.md$/, '');

const openPage = (slug: string): Promise<void> => showMarkdown(Uri.from({ scheme, path: `/${slug}.md` }));

/** The slug of the finding under the cursor; of several, or of none there but some in the file, the one that is chosen. */
async function slugAtCursor(): Promise<string | undefined> {
  const editor = window.activeTextEditor;
  if (!editor) return undefined;
  const all = languages.getDiagnostics(editor.document.uri).filter((finding) => slugOfFinding(finding) !== undefined);
  const here = all.filter(({ range }) => range.contains(editor.selection.active));
  const slugs = [...new Set((here.length > 0 ? here : all).map((finding) => slugOfFinding(finding) as string))];
  if (slugs.length === 0) {
    void window.showInformationMessage('There is no finding in this file to explain.');
    return undefined;
  }
  return slugs.length === 1 ? slugs[0] : window.showQuickPick(slugs, { title: 'Explain which finding?' });
}

function slugOfFinding({ source, code }: Diagnostic): string | undefined {
  if (source !== 'becket') return undefined;
  const value = typeof code === 'object' ? code.value : code;
  return typeof value === 'string' ? value : undefined;
}
