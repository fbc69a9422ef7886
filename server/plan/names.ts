// All things a plan can name, over its own file and all it uses, with what is stated twice.
import { fold } from './fold.ts';
import type { Item, Names, PlanFile, PlanProblem, TableKind, Thing } from './types.ts';

/** Kinds that share one space of names in paths. */
const pathKinds: readonly TableKind[] = ['gear', 'pick', 'point', 'bridle'];
const spaceOf = (kind: TableKind): string => (pathKinds.includes(kind) ? 'path' : kind === 'assembly' ? 'part' : kind);
/** Kinds that are unique within what they stand in, not over the whole plan. */
const scoped: readonly TableKind[] = [
  'part',
  'assembly',
  'pick',
  'point',
  'position',
  'deduction',
  'support',
  'weighing',
  'category',
];

/** The table of names of a plan, and a fact for each name stated twice. */
export function buildNames(files: readonly PlanFile[]): {
  readonly names: Names;
  readonly problems: readonly PlanProblem[];
} {
  const things: Thing[] = [];
  files.forEach((file, index) => {
    for (const item of file.items) declare(item, null, null, index > 0, things);
  });
  const problems = clashes(things);
  const kinds = grouped(things, ({ kind }) => kind);
  const tables = new Map<TableKind, ReadonlyMap<string, readonly Thing[]>>();
  const tableOf = (kind: TableKind): ReadonlyMap<string, readonly Thing[]> => {
    const table = tables.get(kind) ?? grouped(kinds.get(kind) ?? [], ({ key }) => key);
    tables.set(kind, table);
    return table;
  };
  const byItem = grouped(things, ({ item }) => item);
  let inside: ReadonlyMap<Thing | null, readonly Thing[]> | undefined;
  const names: Names = {
    things,
    find: (kind, key) => tableOf(kind).get(key) ?? [],
    kind: (kind) => kinds.get(kind) ?? [],
    of: (item) => byItem.get(item) ?? [],
    inside(owner) {
      inside ??= grouped(things, (thing) => thing.owner);
      return inside.get(owner) ?? [];
    },
  };
  return { names, problems };
}

function grouped<K, V>(list: readonly V[], keyOf: (one: V) => K): ReadonlyMap<K, readonly V[]> {
  const groups = new Map<K, V[]>();
  for (const one of list) push(groups, keyOf(one), one);
  return groups;
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

function declare(item: Item, owner: Thing | null, load: Thing | null, library: boolean, things: Thing[]): void {
  const kind = item.row.declares as TableKind | undefined;
  const own = kind
    ? item.names.map(
        (name): Thing => ({
          kind,
          name,
          key: keyOf(name),
          item,
          owner,
          load: kind === 'load' ? null : load,
          path: owner ? [...owner.path, name] : [name],
          library,
          clash: false,
        }),
      )
    : [];
  for (const thing of own) things.push(thing);
  // What stands in a beam declared as a range stands in each of it.
  for (const inner of own.length ? own : [owner])
    for (const child of item.children) declare(child, inner, kind === 'load' ? inner : load, library, things);
}

const keys = new Map<string, string>();
const mostKeys = 20_000;

/** The folded name; kept, since the same names come again with every key that is pressed. */
function keyOf(name: string): string {
  let key = keys.get(name);
  if (key === undefined) {
    if (keys.size >= mostKeys) keys.clear();
    key = fold(name);
    keys.set(name, key);
  }
  return key;
}

type Mutable = { -readonly [K in keyof Thing]: Thing[K] };

/** Marks things whose name is taken: neither counts until one goes. */
function clashes(things: readonly Thing[]): readonly PlanProblem[] {
  const seen = new Map<string, Thing>();
  const scopes = new Map<Thing | null, string>();
  const problems: PlanProblem[] = [];
  for (const thing of things) {
    const space = spaceOf(thing.kind);
    const scope = scoped.includes(thing.kind) ? scopeOf(thing, scopes) : '';
    const key = `${space}|${scope}|${thing.key}`;
    const other = seen.get(key) ?? (space === 'path' ? takenInPaths(seen, thing) : undefined);
    if (!other) {
      seen.set(key, thing);
      if (space === 'path' && scope) seen.set(`path in any|${thing.key}`, thing);
      continue;
    }
    (thing as Mutable).clash = true;
    (other as Mutable).clash = true;
    problems.push({
      slug: 'stated-twice',
      at: thing.item.nameAt,
      related: [{ at: other.item.nameAt, says: 'stated here' }],
      facts: {
        name: thing.name,
        place:
          thing.item.file === other.item.file
            ? 'this file'
            : other.item.file.slice(other.item.file.lastIndexOf('/') + 1),
      },
    });
  }
  return problems;
}

/** Gear against picks and beam points: they meet in paths. */
const takenInPaths = (seen: ReadonlyMap<string, Thing>, thing: Thing): Thing | undefined =>
  scoped.includes(thing.kind) ? seen.get(`path||${thing.key}`) : seen.get(`path in any|${thing.key}`);

/** Parts, assemblies and picks are unique in their load; points in their beam; positions in their crane. */
function scopeOf(thing: Thing, scopes: Map<Thing | null, string>): string {
  const within = thing.kind === 'part' || thing.kind === 'assembly' || thing.kind === 'pick' ? thing.load : thing.owner;
  let scope = scopes.get(within);
  if (scope === undefined) {
    scope = within ? within.path.map(keyOf).join('>') + (within.library ? ' library' : '') : '';
    scopes.set(within, scope);
  }
  return scope;
}
