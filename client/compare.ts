// "Compare With an Earlier Version": the open text against the saved file, the last commit or another file, as a Markdown document.
import { commands, Disposable, EventEmitter, extensions, type TextDocument, Uri, window, workspace } from 'vscode';
import { COMPARE, type CompareAnswer } from '../server/protocol/messages.ts';
import { showMarkdown } from './markdown.ts';
import { isPlan, type Server } from './server.ts';

const scheme = 'becket-comparison';

/** The earlier text, and what it is called. */
interface Earlier {
  readonly name: string;
  readonly text: string;
}

interface Choice {
  readonly label: string;
  readonly description: string;
  readonly which: 'saved' | 'commit' | 'file';
  /** Null where the person gives up. */
  readonly read: () => Promise<Earlier | null>;
}

export function comparePlans(server: Server): Disposable {
  const made = new Map<string, string>();
  const changed = new EventEmitter<Uri>();
  return Disposable.from(
    changed,
    workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      provideTextDocumentContent: ({ path }) => made.get(path) ?? '',
    }),
    workspace.onDidCloseTextDocument(({ uri }) => uri.scheme === scheme && made.delete(uri.path)),
    commands.registerCommand('becket.compareEarlier', async (asked?: unknown) => {
      const document = window.activeTextEditor?.document;
      if (!document || !isPlan(document))
        return void window.showInformationMessage(
          'Open a lift plan first: it is compared with an earlier version of it.',
        );
      const choices = choicesFor(document, await lastCommit(document.uri));
      const chosen =
        choices.find(({ which }) => which === asked) ??
        (await window.showQuickPick(choices, { title: 'Compare the open text with' }));
      const earlier = await chosen?.read();
      if (!earlier) return;
      const uri = document.uri.toString();
      const answer = await server.ask<CompareAnswer>(COMPARE, { uri, ...earlier });
      if (!answer) return void window.showInformationMessage('These two versions cannot be compared now.');
      const page = Uri.from({ scheme, path: `/${nameOf(document.uri)} compared.md` });
      made.set(page.path, answer.markdown);
      changed.fire(page);
      await showMarkdown(page);
    }),
  );
}

function choicesFor({ uri }: TextDocument, commit: string | null): readonly Choice[] {
  const saved: Choice = {
    label: 'The saved file',
    description: 'what has changed since it was saved',
    which: 'saved',
    read: async () => ({ name: 'the saved file', text: await readText(uri) }),
  };
  const committed: readonly Choice[] =
    commit === null
      ? []
      : [
          {
            label: 'The last commit',
            description: 'what has changed since HEAD',
            which: 'commit',
            read: async () => ({ name: 'the last commit (HEAD)', text: commit }),
          },
        ];
  const other: Choice = {
    label: 'Another file…',
    description: 'an earlier version kept beside it',
    which: 'file',
    read: () => anotherFile(uri),
  };
  return [...(uri.scheme === 'untitled' ? [] : [saved]), ...committed, other];
}

async function anotherFile(beside: Uri): Promise<Earlier | null> {
  const [file] =
    (await window.showOpenDialog({
      ...(beside.scheme === 'untitled' ? {} : { defaultUri: Uri.joinPath(beside, '..') }),
      filters: { 'Lift plans': ['liftplan'] },
      title: 'The earlier version',
    })) ?? [];
  return file ? { name: nameOf(file), text: await readText(file) } : null;
}

const readText = async (uri: Uri) => new TextDecoder().decode(await workspace.fs.readFile(uri));

const nameOf = ({ path }: Uri) => path.slice(path.lastIndexOf('/') + 1);

/** What we use of the editor's own source control; a host in the browser has none. */
interface Git {
  getAPI(version: 1): {
    getRepository(uri: Uri): { show(revision: string, path: string): Promise<string> } | null;
  };
}

/** The text of a file at HEAD; null where it is in no commit, or the editor's source control cannot be asked. */
async function lastCommit(uri: Uri): Promise<string | null> {
  try {
    const git = await extensions.getExtension<Git>('vscode.git')?.activate();
    return (await git?.getAPI(1).getRepository(uri)?.show('HEAD', uri.fsPath)) ?? null;
  } catch {
    return null;
  }
}
