// Files that a load takes in beside plans: drawings named by `mesh`, bills of material named by `list`. Their bytes, or why there are none.
import type { Cause } from '../quantities/derived.ts';
import type { Source } from './files.ts';
import { type ListFault, listOf } from './list.ts';
import type { BoundClause, BoundPlan, Item, Place, PlanFile, PlanProblem } from './types.ts';

export interface Attachment {
  readonly at: Place; // the path
  readonly path: string;
  /** Identity; null where the path leads nowhere it may. */
  readonly file: string | null;
  readonly bytes: Uint8Array | null;
  /** A list's rows that cannot be used; none for a mesh. */
  readonly faults: readonly ListFault[];
}

/** How the names of such files end. */
export const endings: Readonly<Record<'mesh' | 'list', RegExp>> = { mesh: /\.(?:stl|obj)$/i, list: /\.csv$/i };

const otherEnding: Readonly<Record<'mesh' | 'list', string>> = {
  mesh: 'a mesh is read from a file that ends in .stl or .obj',
  list: 'a list is read from a file that ends in .csv',
};

/** What the items of those files name, by item, and a fact for each file that is not there. */
export function attach(
  files: readonly PlanFile[],
  source: Source,
): { readonly attached: ReadonlyMap<Item, Attachment>; readonly problems: readonly PlanProblem[] } {
  const attached = new Map<Item, Attachment>();
  const problems: PlanProblem[] = [];
  for (const { file, items } of files)
    for (const item of items.flatMap(wanting)) {
      const kind = item.keyword === 'list' ? 'list' : 'mesh';
      const clause = pathOf(item);
      if (clause?.value?.kind !== 'text') continue;
      const path = clause.value.text;
      const at = clause.valueAt;
      const found = endings[kind].test(path) ? source.resolve(file, path) : { reason: otherEnding[kind] };
      const bytes = 'file' in found ? source.bytes(found.file) : null;
      const reason =
        'reason' in found
          ? found.reason
          : bytes
            ? null
            : 'there is no such file, or it is too large or cannot be opened';
      if (reason !== null)
        problems.push({
          slug: 'file-missing',
          at,
          related: [],
          facts: { path, reason, elsewhere: source.elsewhere(file, path) },
        });
      const faults = kind === 'list' && bytes ? listOf(item, bytes).faults : [];
      if (faults.length) problems.push(faulty(at, path, faults));
      attached.set(item, { at, path, file: 'file' in found ? found.file : null, bytes, faults });
    }
  return { attached, problems };
}

function faulty(at: Place, path: string, faults: readonly ListFault[]): PlanProblem {
  const { line, reason } = faults[0] as ListFault;
  return {
    slug: 'list-row-unclear',
    at,
    related: [],
    facts: { file: base(path), line, reason, more: faults.length - 1 },
  };
}

export const base = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

const pathOf = (item: Item): BoundClause | null | undefined =>
  item.keyword === 'list' ? item.value : item.clauses.get('mesh')?.[0];

const kept = new WeakMap<Item, readonly Item[]>();

/** The items in and under an item that name a file; kept by item. */
function wanting(item: Item): readonly Item[] {
  let found = kept.get(item);
  if (!found) {
    const own = item.keyword === 'list' || (item.keyword === 'part' && item.clauses.has('mesh')) ? [item] : [];
    found = [...own, ...item.children.flatMap(wanting)];
    kept.set(item, found);
  }
  return found;
}

const grown = new WeakMap<Item, Item>();

/** The item with the rows of each list under it as parts beside the list; the same object as before while they are the same. */
export function withLists(item: Item, attached: ReadonlyMap<Item, Attachment>): Item {
  if (item.keyword === 'list' || !wanting(item).some((one) => one.keyword === 'list')) return item;
  const children = item.children.flatMap((child): readonly Item[] => {
    const bytes = child.keyword === 'list' ? attached.get(child)?.bytes : null;
    return [withLists(child, attached), ...(bytes ? listOf(child, bytes).items : [])];
  });
  const before = grown.get(item);
  if (before?.children.length === children.length && before.children.every((child, i) => child === children[i]))
    return before;
  const whole = { ...item, children };
  grown.set(item, whole);
  return whole;
}

/** Every file that went into a plan: its own first, what it uses, its drawings and lists, then the papers it cites that are there. */
export const filesOf = ({ files, attached, cited }: BoundPlan): readonly string[] => [
  ...new Set(
    [...files, ...attached.values(), ...[...cited.values()].filter(({ paper }) => paper)].flatMap(
      ({ file }) => file ?? [],
    ),
  ),
];

/** Whether an item stands for a row of a list: nothing of it is written in the plan but the list's own line. */
export const isListed = (item: Item): boolean =>
  item.keyword === 'part' && item.node.line.statement?.keyword.word === 'list';

/** Why what an item holds is not known, as far as its lists are the cause: a row left out would make it lighter. */
export function lostLists(item: Item, { attached }: BoundPlan): readonly Cause[] {
  return item.children
    .filter((child) => child.keyword === 'list')
    .flatMap((list) => {
      const file = attached.get(list);
      if (!file) return [{ what: 'A list here names no file that can be read.', at: list.at }];
      if (!file.bytes) return [{ what: `${file.path} cannot be read.`, at: file.at }];
      return file.faults.length ? [{ what: `${file.path} has rows that cannot be used.`, at: file.at }] : [];
    });
}
