// The picture of a file that made the program fail: its text, one finding that says so, and nothing worked out.
import type { Finding } from '../checks/types.ts';
import { language } from '../plan/index.ts';
import { readTree, type Tree } from '../syntax/index.ts';
import { snapshotOf } from './snapshot.ts';
import type { Snapshot } from './types.ts';

/** Every figure of it is open, as in a file without a line. */
export function aside(tree: Tree, version: number): Snapshot {
  const { file } = tree;
  const empty = readTree(file, '', language);
  const bare = snapshotOf(file, version, {
    tree: (name) => (name === file ? empty : null),
    bytes: () => null,
    paper: () => null,
    resolve: () => ({ reason: 'the file is set aside' }),
    elsewhere: () => [],
  });
  const finding = says(tree);
  return { ...bare, tree, findings: [finding], own: [finding], setAside: true };
}

const says = (tree: Tree): Finding => {
  const row = tree.rows[0] ?? { file: tree.file, text: '' };
  return {
    slug: 'not-judged',
    severity: 'error',
    message:
      'This program failed on this file, so nothing in it is worked out until its text changes. That is a fault of the program: please report it with the file.',
    at: { row, from: 0, to: row.text.length },
    related: [],
    fixes: [],
    waived: null,
  };
};
