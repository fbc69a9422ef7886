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
  const tables = new Map<string, Thing[]>();
  const byItem = new Map<Item, Thing[]>();
  for (const thing of things) {
    push(tables, `${thing.kind} ${thing.key}`, thing);
    push(byItem, thing.item, thing);
  }
  const names: Names = {
    things,
    find: (kind, key) => tables.get(`${kind} ${key}`) ?? [],
    of: (item) => byItem.get(item) ?? [],
  };
  return { names, problems };
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
          key: fold(name),
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

type Mutable = { -readonly [K in keyof Thing]: Thing[K] };

/** Marks things whose name is taken: neither counts until one goes. */
function clashes(things: readonly Thing[]): readonly PlanProblem[] {
  const seen = new Map<string, Thing>();
  const problems: PlanProblem[] = [];
  for (const thing of things) {
    const space = spaceOf(thing.kind);
    const scope = scoped.includes(thing.kind) ? scopeOf(thing) : '';
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
const scopeOf = (thing: Thing): string => {
  const within = thing.kind === 'part' || thing.kind === 'assembly' || thing.kind === 'pick' ? thing.load : thing.owner;
  return within ? within.path.map(fold).join('>') + (within.library ? ' library' : '') : '';
};
