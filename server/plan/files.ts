// Follows `use` lines: which files a plan takes in, in order of first use, with what is missing or runs in a circle.
import type { Place, Tree, TreeNode } from '../syntax/types.ts';
import type { Paper } from './cited.ts';
import type { PlanProblem } from './types.ts';

/** Where trees come from; the workspace keeps them. */
export interface Source {
  tree(file: string): Tree | null; // null: cannot be read
  /** What stands in a drawing or list; the same object while the file has the same content. Null: cannot be read. */
  bytes(file: string): Uint8Array | null;
  /** What is known of a paper that a `from` names; the same object while the file has the same content. Null: cannot be read. */
  paper(file: string): Paper | null;
  resolve(from: string, path: string): { readonly file: string } | { readonly reason: string };
  elsewhere(from: string, path: string): readonly string[];
}

export interface Use {
  readonly at: Place; // the path
  readonly path: string;
  readonly file: string | null;
}

export interface Taken {
  readonly file: string;
  readonly tree: Tree;
  readonly uses: readonly Use[];
}

/** The file itself first, then all it uses, transitively. */
export function takeFiles(
  file: string,
  source: Source,
): { readonly files: readonly Taken[]; readonly problems: readonly PlanProblem[] } {
  const files: Taken[] = [];
  const problems: PlanProblem[] = [];
  const done = new Set<string>();
  const visit = (current: string, trail: readonly string[]): void => {
    done.add(current);
    const tree = source.tree(current);
    if (!tree) return;
    const uses = usesOf(tree).map((use): Use => {
      const found = source.resolve(current, use.path);
      if ('reason' in found) return missing(use, found.reason);
      if (!source.tree(found.file)) return missing(use, 'there is no such file, or it cannot be opened');
      return { ...use, file: found.file };
    });
    files.push({ file: current, tree, uses });
    for (const use of uses) {
      if (!use.file) continue;
      if (trail.includes(use.file) || use.file === current) {
        const circle = [
          ...trail.slice(trail.indexOf(use.file) < 0 ? trail.length : trail.indexOf(use.file)),
          current,
          use.file,
        ];
        problems.push({ slug: 'definition-circle', at: use.at, related: [], facts: { names: circle.map(base) } });
      } else if (!done.has(use.file)) visit(use.file, [...trail, current]);
    }
    function missing(use: Omit<Use, 'file'>, reason: string): Use {
      problems.push({
        slug: 'file-missing',
        at: use.at,
        related: [],
        facts: { path: use.path, reason, elsewhere: source.elsewhere(current, use.path) },
      });
      return { ...use, file: null };
    }
  };
  visit(file, []);
  return { files, problems };
}

const base = (file: string): string => file.slice(file.lastIndexOf('/') + 1);

function usesOf(tree: Tree): readonly Omit<Use, 'file'>[] {
  return tree.nodes.flatMap((node: TreeNode) => {
    const statement = node.line.statement;
    if (statement?.keyword.word !== 'use' || statement.value?.kind !== 'text') return [];
    const { span, text } = statement.value;
    return [{ at: { row: node.row, from: span.from, to: span.to }, path: text }];
  });
}
