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

export function answerForFiles(server: Server): Disposable {
  server.onAsked<ReadFileParams, ReadFileAnswer>(READ_FILE, async ({ uri }) => ({ text: await readText(uri) }));
  server.onAsked<ReadBytesParams, ReadBytesAnswer>(READ_BYTES, async ({ uri, most }) => ({
    base64: await readBytes(Uri.parse(uri), most),
  }));
  server.onAsked<ListFilesParams, ListFilesAnswer>(LIST_FILES, async ({ folderUri, most }) => ({
    uris: await list(folderUri, most),
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

const leftOut = '{**/node_modules/**,**/.*/**}';

/** Plans, then other files; hidden folders, other hidden files and installed packages are left out. */
async function list(folderUri: string, most: number): Promise<string[]> {
  const folder = folderOf(folderUri) ?? Uri.parse(folderUri);
  const find = async (files: string) =>
    (await workspace.findFiles(new RelativePattern(folder, files), leftOut, most)).map((uri) => uri.toString()).sort();
  const others = (await find('**/*')).filter((uri) => !/\.liftplan$|\/\.[^/]*$/.test(uri));
  return [...(await find('**/*.liftplan')), ...others];
}

/** The opened folder itself, however the server spells its end: the search knows it by the editor's own spelling. */
const folderOf = (uri: string) =>
  workspace.workspaceFolders?.find((folder) => withoutSlash(folder.uri.toString()) === withoutSlash(uri));

const withoutSlash = (uri: string) => uri.replace(/\/$/, '');
