// All things a plan can name, over its own file and all it uses, with what is stated twice.
import type { Row } from '../syntax/types.ts';
import { joined, keptAlong } from './along.ts';
import { fold } from './fold.ts';
import type { Item, Names, PlanFile, PlanProblem, TableKind, Thing } from './types.ts';

/** Kinds that share one space of names in paths. */
const pathKinds: readonly TableKind[] = ['gear', 'pick', 'point', 'bridle'];
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
  const names = new Table(files);
  return { names, problems: names.problems };
}

/**
 * A load may hold thousands of parts, and each version makes its things anew, for each leads up to a load that has changed. So
 * parts become things only when somebody asks for parts; what there is beside them, few as it is, is declared with every key.
 */
class Table implements Names {
  readonly clashing: readonly Thing[];
  readonly problems: readonly PlanProblem[];
  private readonly few: Declared;
  private readonly single = new Map<Item, readonly Thing[]>(); // parts asked for one by one
  private every: Declared | undefined;

  constructor(private readonly files: readonly PlanFile[]) {
    this.few = declared(files, othersIn, () => undefined);
    const { things } = partsDiffer(files) ? this.few : this.all();
    this.problems = clashes(things);
    this.clashing = things.filter(({ clash }) => clash);
  }

  private all(): Declared {
    if (this.every) return this.every;
    const made = grouped(this.few.things, ({ item }) => item);
    this.every = declared(
      this.files,
      ({ children }) => children,
      (item) => made.get(item) ?? this.single.get(item),
    );
    return this.every;
  }

  get things(): readonly Thing[] {
    return this.all().things;
  }

  readonly kind = later((kind: TableKind) => {
    const { things } = kind === 'part' ? this.all() : this.few;
    return things.filter((thing) => thing.kind === kind);
  });

  private readonly byKey = later((kind: TableKind) => grouped(this.kind(kind), ({ key }) => key));
  private readonly byItem = later((kind: TableKind) => grouped(this.kind(kind), ({ item }) => item));

  find(kind: TableKind, key: string): readonly Thing[] {
    return this.byKey(kind).get(key) ?? none;
  }

  of(item: Item): readonly Thing[] {
    const kind = item.row.declares as TableKind | undefined;
    if (!kind) return none;
    return (kind === 'part' && !this.every ? this.part(item) : undefined) ?? this.byItem(kind).get(item) ?? none;
  }

  inside(owner: Thing): readonly Thing[] {
    return this.all().inside.get(owner) ?? none;
  }

  /** The thing of one part, made alone; undefined where it takes more to find. */
  private part(item: Item): readonly Thing[] | undefined {
    const known = this.single.get(item);
    if (known || !isPart(item)) return known;
    const owner = this.few.things.find(
      ({ kind, item: { children } }) => (kind === 'load' || kind === 'assembly') && children.includes(item),
    );
    if (!owner) return undefined;
    const load = owner.kind === 'load' ? owner : owner.load;
    const made = item.names.map((name) => thingOf('part', name, item, { owner, load, fromLibrary: owner.fromLibrary }));
    this.single.set(item, made);
    return made;
  }
}

const none: readonly never[] = [];

/** Worked out when first asked for: most keys that are pressed ask for no table of parts. */
function later<K, V>(make: (key: K) => V): (key: K) => V {
  const made = new Map<K, V>();
  return (key) => {
    const known = made.get(key) ?? make(key);
    made.set(key, known);
    return known;
  };
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

/** Things of a plan in the order of its files and lines, and which stand right in which. */
interface Declared {
  readonly things: readonly Thing[];
  readonly inside: ReadonlyMap<Thing, readonly Thing[]>;
}
type Within = Pick<Thing, 'owner' | 'load' | 'fromLibrary'>;

/** What items declare, of their children those that are asked for; things that are made already stay the same objects. */
function declared(
  files: readonly PlanFile[],
  within: (item: Item) => readonly Item[],
  made: (item: Item) => readonly Thing[] | undefined,
): Declared {
  const things: Thing[] = [];
  const inside = new Map<Thing, Thing[]>();
  const declare = (item: Item, here: Within): void => {
    const { owner, fromLibrary } = here;
    const kind = item.row.declares as TableKind | undefined;
    const load = kind === 'load' ? null : here.load;
    const own =
      made(item)?.filter((thing) => thing.owner === owner) ??
      (kind ? item.names : none).map((name) => thingOf(kind as TableKind, name, item, { owner, load, fromLibrary }));
    for (const thing of own) {
      things.push(thing);
      if (owner) push(inside, owner, thing);
    }
    // What stands in a beam declared as a range stands in each of it.
    for (const inner of own.length ? own : [owner])
      for (const child of within(item))
        declare(child, { owner: inner, load: kind === 'load' ? inner : load, fromLibrary });
  };
  files.forEach((file, index) => {
    for (const item of file.items) declare(item, { owner: null, load: null, fromLibrary: index > 0 });
  });
  return { things, inside };
}

const thingOf = (kind: TableKind, name: string, item: Item, { owner, load, fromLibrary }: Within): Thing => ({
  kind,
  name,
  key: keyOf(name),
  item,
  owner,
  load,
  path: owner ? [...owner.path, name] : [name],
  fromLibrary,
  clash: false,
});

/** A part, and nothing that is declared in it. */
const isPart = (item: Item): boolean => item.row.declares === 'part' && !item.children.some(declares);
const declares = (item: Item): boolean => item.row.declares !== undefined || item.children.some(declares);

const others = keptAlong<Item, readonly Item[]>();
const othersIn = (item: Item): readonly Item[] =>
  joined(others(item.node.row, item.children, (child) => (isPart(child) ? none : [child])));

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
  const spaces = later((_space: string) => new Map<string, Thing>());
  const problems: PlanProblem[] = [];
  let before: Thing | undefined;
  let seen = spaces('');
  for (const thing of things) {
    // One after the other, parts share their space with the part before: its table is looked up once for all of them.
    if (thing.kind !== before?.kind || withinOf(thing) !== withinOf(before)) seen = spaces(spaceOf(thing));
    before = thing;
    const path = pathKinds.includes(thing.kind);
    const other = seen.get(thing.key) ?? (path ? spaces(othersInPaths(thing)).get(thing.key) : undefined);
    if (other) problems.push(clash(thing, other));
    else {
      seen.set(thing.key, thing);
      if (path && scopeOf(thing)) spaces(anyPath).set(thing.key, thing);
    }
  }
  return problems;
}

function clash(thing: Thing, other: Thing): PlanProblem {
  (thing as Mutable).clash = true;
  (other as Mutable).clash = true;
  const { file } = other.item;
  return {
    slug: 'stated-twice',
    at: thing.item.nameAt,
    related: [{ at: other.item.nameAt, says: 'stated here' }],
    facts: {
      name: thing.name,
      place: thing.item.file === file ? 'this file' : file.slice(file.lastIndexOf('/') + 1),
    },
  };
}

/** Where its name must be its own: a kind of names, and what it stands in where the kind is unique only there. */
function spaceOf(thing: Thing): string {
  const { kind } = thing;
  const space = pathKinds.includes(kind) ? 'path' : kind === 'assembly' ? 'part' : kind;
  return `${space}|${scopeOf(thing)}`;
}

const anyPath = 'path in any';
/** Gear against picks and beam points: they meet in paths. */
const othersInPaths = ({ kind }: Thing): string => (scoped.includes(kind) ? 'path|' : anyPath);

/** Parts, assemblies and picks are unique in their load; points in their beam; positions in their crane. */
const withinOf = ({ kind, load, owner }: Thing): Thing | null =>
  kind === 'part' || kind === 'assembly' || kind === 'pick' ? load : owner;

function scopeOf(thing: Thing): string {
  const within = scoped.includes(thing.kind) ? withinOf(thing) : null;
  return within ? within.path.map(keyOf).join('>') + (within.fromLibrary ? ' library' : '') : '';
}

/** Whether no two parts or assemblies of a load have one name, told without making things of them. False where it takes more to tell. */
function partsDiffer(files: readonly PlanFile[]): boolean {
  const loads = new Set<string>();
  return files.every(({ items }, index) =>
    items.every((item) => {
      if (item.row.declares !== 'load') return !partKeys(item).length;
      const [name, second] = item.names;
      const key = `${index > 0} ${keyOf(name ?? '')}`;
      if (name === undefined || second !== undefined || loads.has(key)) return false;
      loads.add(key);
      return namesDiffer(item);
    }),
  );
}

const compared = new WeakMap<Row, { readonly names: readonly (readonly string[])[]; readonly differ: boolean }>();

/** The same for one load; rests on the names alone, so that what was found holds until one of them changes. One finding is kept for the load's row. */
function namesDiffer({ node: { row }, children }: Item): boolean {
  const names = keysAlong(row, children, partKeys);
  const before = compared.get(row);
  const same = before?.names.length === names.length && names.every((own, i) => alike(own, before.names[i] ?? none));
  const differ = same ? before.differ : new Set(names.flat()).size === names.reduce((sum, own) => sum + own.length, 0);
  compared.set(row, { names, differ });
  return differ;
}

const alike = (a: readonly string[], b: readonly string[]): boolean =>
  a === b || (a.length === b.length && a.every((one, i) => one === b[i]));

const keysAlong = keptAlong<Item, readonly string[]>();
/** A load where none may stand: what is in it is no part of the load around it, so that takes more to tell. */
const unclear: readonly string[] = ['', ''];

/** Names of the parts and assemblies an item declares, and of all in it. */
function partKeys(item: Item): readonly string[] {
  const kind = item.row.declares;
  if (kind === 'load') return unclear;
  const own = kind === 'part' || kind === 'assembly' ? item.names.map(keyOf) : none;
  return item.children.length ? joined([own, ...keysAlong(item.node.row, item.children, partKeys)]) : own;
}
