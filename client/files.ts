// Files for a server that has none of its own: the browser's server reads and lists them through the editor.
import { Disposable, RelativePattern, Uri, workspace } from 'vscode';
import {
  LIST_FILES,
  type ListFilesAnswer,
  type ListFilesParams,
  READ_BYTES,
  READ_FILE,
  type ReadBytesAnswer,
  type ReadBytesParams,
  type ReadFileAnswer,
  type ReadFileParams,
} from '../server/protocol/messages.ts';
import type { Server } from './server.ts';

/** More plans than this in one folder are not looked up; those that are opened or used still are. */
const mostFiles = 5_000;

export function answerForFiles(server: Server): Disposable {
  server.onAsked<ReadFileParams, ReadFileAnswer>(READ_FILE, async ({ uri }) => ({ text: await readText(uri) }));
  server.onAsked<ReadBytesParams, ReadBytesAnswer>(READ_BYTES, async ({ uri, most }) => ({
    base64: await readBytes(Uri.parse(uri), most),
  }));
  server.onAsked<ListFilesParams, ListFilesAnswer>(LIST_FILES, async ({ folderUri }) => ({
    uris: await listPlans(folderUri),
  }));
  return new Disposable(() => {});
}

async function readText(uri: string): Promise<string | null> {
  try {
    return new TextDecoder().decode(await workspace.fs.readFile(Uri.parse(uri)));
  } catch {
    return null;
  }
}

async function readBytes(uri: Uri, most: number): Promise<string | null> {
  try {
    if ((await workspace.fs.stat(uri)).size > most) return null;
    return base64(await workspace.fs.readFile(uri));
  } catch {
    return null;
  }
}

/** In pieces: a call takes only so many arguments. A multiple of three, so that the pieces join. */
function base64(bytes: Uint8Array): string {
  const piece = 3 * 8192;
  let text = '';
  for (let at = 0; at < bytes.length; at += piece) text += btoa(String.fromCharCode(...bytes.subarray(at, at + piece)));
  return text;
}

async function listPlans(folderUri: string): Promise<string[]> {
  const inside = new RelativePattern(folderOf(folderUri) ?? Uri.parse(folderUri), '**/*.liftplan');
  const found = await workspace.findFiles(inside, undefined, mostFiles);
  return found.map((uri) => uri.toString()).sort();
}

/** The opened folder itself, however the server spells its end: the search knows it by the editor's own spelling. */
const folderOf = (uri: string) =>
  workspace.workspaceFolders?.find((folder) => withoutSlash(folder.uri.toString()) === withoutSlash(uri));

const withoutSlash = (uri: string) => uri.replace(/\/$/, '');
