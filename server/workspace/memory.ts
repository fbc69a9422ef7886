// Plans whose files are texts in memory: for tests, and for pages that explain findings.
import { language, paperOf } from '../plan/index.ts';
import { readTree, type Tree } from '../syntax/index.ts';
import { joined, notRelative } from './paths.ts';
import { snapshotOf } from './snapshot.ts';
import type { Files, Snapshot } from './types.ts';

/** The snapshot of one of the texts, by paths such as `library/yard.liftplan`. Throws where no text has that path. */
export function check(texts: Readonly<Record<string, string | Uint8Array>>, file: string): Snapshot {
  const files = memoryFiles(new Map(Object.entries(texts)));
  const trees = new Map<string, Tree | null>();
  const tree = (name: string): Tree | null => {
    if (!trees.has(name)) {
      const text = files.read(name);
      trees.set(name, typeof text === 'string' ? readTree(name, text, language) : null);
    }
    return trees.get(name) ?? null;
  };
  const bytes = (name: string): Uint8Array | null => files.bytes(name) ?? null;
  return snapshotOf(file, 0, { ...files, bytes, paper: (name) => paperIn(bytes(name)), tree });
}

const paperIn = (bytes: Uint8Array | null) => bytes && paperOf(bytes);

/** Files whose texts or bytes stand in a map; nothing lies outside its top. */
export function memoryFiles(texts: ReadonlyMap<string, string | Uint8Array>): Files {
  return {
    read: (file) => {
      const text = texts.get(file);
      return typeof text === 'string' ? text : null;
    },
    bytes: (file) => {
      const text = texts.get(file);
      return typeof text === 'string' ? new TextEncoder().encode(text) : (text ?? null);
    },
    resolve(from, path) {
      const reason = notRelative(path);
      const file = reason === null ? joined(from.slice(0, Math.max(from.lastIndexOf('/'), 0)), path) : null;
      if (file !== null) return { file };
      return { reason: reason ?? 'it lies outside the opened folder' };
    },
    elsewhere(from, path) {
      const name = path.slice(path.lastIndexOf('/') + 1);
      const up = '../'.repeat(from.split('/').length - 1);
      return [...texts.keys()].filter((file) => file === name || file.endsWith(`/${name}`)).map((file) => up + file);
    },
  };
}
