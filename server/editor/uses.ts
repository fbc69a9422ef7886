// Every place where a name stands: where a thing is declared, and where it is used, with the things it means there.
import { subject } from '../plan/compare.ts';
import { fold, rangeNames } from '../plan/index.ts';
import type { BoundPlan, Item, PlanFile, TableKind, Thing } from '../plan/types.ts';
import type {
  Amount,
  CompareValue,
  Expression,
  NameUse,
  Place,
  PointValue,
  Row,
  Span,
  TreeNode,
  Value,
} from '../syntax/types.ts';
import { clausesOf, type GearKind, gearKinds, type Kind, statements } from '../vocabulary/index.ts';
import type { Snapshot } from '../workspace/types.ts';
import { allItems, itemAt, ownFile, statementAt } from './items.ts';

export interface Use {
  readonly at: Place;
  /** The name as written, without quotes; of a range its first one. */
  readonly name: string;
  /** The last name of a range. */
  readonly until: string | null;
  /** What it means; empty where nothing has that name. */
  readonly things: readonly Thing[];
  readonly declares: boolean;
  /** Kinds of things that may stand here. */
  readonly kinds: readonly TableKind[];
  /** How it is written here: bare words may need quotes in one place and not in another. */
  readonly where: 'declared' | 'named' | 'compared' | 'expression' | 'text' | 'designation';
}

/** The name at an offset of a row of the file asked about; null where there is none. */
export function useAt(s: Snapshot, row: number, offset: number): Use | null {
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  if (!item) return null;
  const here = usesOf(item, s.plan).filter(
    ({ at }) => at.row === s.tree.rows[row] && offset >= at.from && offset <= at.to,
  );
  return here.find(({ at }) => offset < at.to) ?? here[0] ?? null;
}

/** All names in one file of a plan. */
export const usesIn = (file: PlanFile, plan: BoundPlan): readonly Use[] =>
  allItems(file.items).flatMap((item) => usesOf(item, plan));

/** The names on a statement's line and its clause lines. */
export function usesOf(item: Item, plan: BoundPlan): readonly Use[] {
  const uses: Use[] = [];
  const reader = new Reader(item, plan, uses);
  reader.declaration();
  const { statement } = item.node.line;
  if (statement?.value) reader.value(statement.value, item.keyword, '', item.row.value?.names, item.node.row);
  const rows = clausesOf(item.keyword);
  for (const node of [item.node, ...item.node.children.filter(({ line }) => line.kind === 'clauses')]) {
    for (const { keyword, value } of node.line.clauses)
      if (value) reader.value(value, item.keyword, keyword.word, rows[keyword.word]?.names, node.row);
  }
  return uses;
}

/** Gear that legs hang from. */
export const hookKeywords: readonly string[] = ['block', 'hook', 'ball'] satisfies readonly GearKind[];

/** Things of any of these kinds by that name, as seen from an item: what is unique in a load is looked for in its own. */
export function thingsNamed(
  name: string,
  kinds: readonly TableKind[],
  item: Item | null,
  plan: BoundPlan,
): readonly Thing[] {
  const found = kinds.flatMap((kind) => plan.names.find(kind, fold(name)));
  const load = item && loadOf(item, plan);
  const near = load ? found.filter((thing) => thing.load === load) : [];
  return near.length ? near : found;
}

/** The load an item stands in; null at file level. */
export function loadOf(item: Item, plan: BoundPlan): Thing | null {
  if (item.keyword === 'load') return plan.names.of(item)[0] ?? null;
  const file = plan.files.find((one) => one.file === item.file);
  if (!file) return null;
  for (
    let node: TreeNode | null = statementAt(file.tree, file.tree.rowNumber(item.node.row));
    node;
    node = file.tree.parentAt[file.tree.rowNumber(node.row)] ?? null
  ) {
    const top: TreeNode = node;
    const load = top.line.statement?.keyword.word === 'load' ? file.items.find((one) => one.node === top) : undefined;
    if (load) return plan.names.of(load)[0] ?? null;
  }
  return null;
}

/** Kinds of things that the names of a clause may name. */
export function kindsOf(keyword: string, clause: string, names: Kind | undefined): readonly TableKind[] {
  if (keyword === 'leg') return paths;
  if (clause === 'hangs from') return [...paths, 'load'];
  if (keyword === 'stage' && clause === 'without') return ['rig', 'part', 'assembly'];
  switch (names) {
    case 'part':
    case 'box':
    case 'contents':
      return ['part', 'assembly'];
    case 'gear':
    case 'sling':
      return ['gear'];
    case 'anything':
      return everything;
    case 'pick':
    case 'rig':
    case 'crane':
    case 'chart':
    case 'stage':
    case 'material':
    case 'load':
      return [names];
    case undefined:
      return [];
  }
}
const paths: readonly TableKind[] = ['gear', 'pick', 'point'];
const everything: readonly TableKind[] = [
  'load',
  'assembly',
  'part',
  'pick',
  'gear',
  'point',
  'bridle',
  'rig',
  'stage',
  'crane',
  'position',
  'chart',
  'deduction',
  'material',
  'ground',
  'support',
  'obstruction',
  'set-down',
];

/** The kind of thing a kind of subject is: every gear keyword is gear. */
export function subjectKinds(kind: string): readonly TableKind[] {
  if (kind === 'gear' || (gearKinds as readonly string[]).includes(kind)) return ['gear'];
  const declares = statements[kind]?.declares;
  return declares && declares !== 'box' && declares !== 'contents' && declares !== 'anything' && declares !== 'sling'
    ? [declares]
    : [];
}

/** Adds what it finds on one statement to a list. */
class Reader {
  private readonly item: Item;
  private readonly plan: BoundPlan;
  private readonly uses: Use[];

  constructor(item: Item, plan: BoundPlan, uses: Use[]) {
    this.item = item;
    this.plan = plan;
    this.uses = uses;
  }

  declaration(): void {
    const { item, plan } = this;
    const name = item.node.line.statement?.name;
    const things = plan.names.of(item);
    const kinds = things.length && things[0] ? [things[0].kind] : [];
    if (name)
      this.add(name.span, item.node.row, {
        name: name.parts.at(-1)?.text ?? '',
        until: name.until?.text ?? null,
        things,
        declares: true,
        kinds,
        where: 'declared',
      });
    else if (things.length && item.value?.value?.kind === 'text')
      this.add(item.value.valueAt, item.node.row, {
        name: item.value.value.text,
        until: null,
        things,
        declares: true,
        kinds,
        where: 'text',
      });
  }

  value(value: Value, keyword: string, clause: string, names: Kind | undefined, row: Row): void {
    switch (value.kind) {
      case 'names':
      case 'path':
        for (const name of value.names) this.name(name, kindsOf(keyword, clause, names), row);
        return;
      case 'side':
        this.name(value.name, kindsOf(keyword, clause, names), row);
        return;
      case 'compare':
        return this.compare(value, row);
      case 'subject':
        return this.subject(value, row);
      case 'designation':
        if (names === 'material') this.text(value.span, value.text, ['material'], 'designation', row);
        return;
      case 'text':
        if (keyword === 'plan' && clause === 'category') this.text(value.span, value.text, ['category'], 'text', row);
        return;
      default:
        for (const expression of expressionsIn(value)) this.lets(expression, row);
    }
  }

  private name(name: NameUse, kinds: readonly TableKind[], row: Row, where: Use['where'] = 'named'): void {
    const last = name.parts.at(-1);
    if (!last) return;
    const found = this.lastOf(name, kinds);
    if (name.until) {
      const all = rangeNames(last.text, name.until.text);
      const things =
        typeof all === 'string' ? found : all.flatMap((one) => thingsNamed(one, kinds, this.item, this.plan));
      return this.add({ from: last.span.from, to: name.until.span.to }, row, {
        name: last.text,
        until: name.until.text,
        things,
        declares: false,
        kinds,
        where,
      });
    }
    name.parts.slice(0, -1).forEach((part, i) => {
      const owners = found.flatMap((thing) => ownersOf(thing).filter((owner) => owner.key === fold(part.text)));
      this.add(part.span, row, {
        name: part.text,
        until: null,
        things: [...new Set(owners)].slice(0, i === 0 ? undefined : 1),
        declares: false,
        kinds: ['load', 'assembly', 'gear', 'crane', 'ground'],
        where,
      });
    });
    this.add(last.span, row, { name: last.text, until: null, things: found, declares: false, kinds, where });
  }

  private lastOf(name: NameUse, kinds: readonly TableKind[]): readonly Thing[] {
    const found = thingsNamed(
      name.parts.at(-1)?.text ?? '',
      kinds,
      name.parts.length > 1 ? null : this.item,
      this.plan,
    );
    const owners = name.parts.slice(0, -1).map((part) => fold(part.text));
    return found.filter((thing) => owners.every((owner) => ownersOf(thing).some(({ key }) => key === owner)));
  }

  private compare(value: CompareValue, row: Row): void {
    const about = subject(value.subject);
    if ('result' in about) for (const name of about.names) this.name(name, subjectKinds(about.kind), row, 'compared');
    this.lets(value.left, row);
    if (value.right) this.lets(value.right, row);
  }

  /** `require approval "Person in charge"`: the keyword's words, then names. */
  private subject(value: Extract<Value, { kind: 'subject' }>, row: Row): void {
    const bound = [this.item.value, ...[...this.item.clauses.values()].flat()].find(
      (clause) => clause?.valueAt.row === row && clause.valueAt.from === value.span.from,
    )?.value;
    if (bound?.kind !== 'subject') return;
    const skipped = bound.keyword.split(' ').length;
    for (const word of value.words.slice(skipped)) {
      if (word.kind === 'name') this.name(word.use, subjectKinds(bound.keyword), row, 'compared');
      else this.name({ span: word.span, parts: [word], until: null }, subjectKinds(bound.keyword), row, 'compared');
    }
  }

  private lets(expression: Expression, row: Row): void {
    for (const { name, span } of namesIn(expression)) this.text(span, name, ['let'], 'expression', row);
  }

  private text(span: Span, name: string, kinds: readonly TableKind[], where: Use['where'], row: Row): void {
    this.add(span, row, {
      name,
      until: null,
      things: kinds.flatMap((kind) => this.plan.names.find(kind, fold(name))),
      declares: false,
      kinds,
      where,
    });
  }

  private add({ from, to }: Span, row: Row, use: Omit<Use, 'at'>): void {
    this.uses.push({ at: { row, from, to }, ...use });
  }
}

/** What a thing stands in, from the nearest outwards. */
function ownersOf(thing: Thing): readonly Thing[] {
  return thing.owner ? [thing.owner, ...ownersOf(thing.owner)] : [];
}

/** The expressions of a value, in any order. */
export function expressionsIn(value: Value): readonly Expression[] {
  switch (value.kind) {
    case 'amount':
      return inAmount(value.amount);
    case 'size':
      return [...value.sides, ...(value.tolerance ? [value.tolerance] : [])];
    case 'point':
      return inPoint(value);
    case 'points':
      return [...value.points.flat().flatMap(inAmount), ...(value.tolerance ? [value.tolerance] : [])];
    case 'turn':
      return [value.angle];
    case 'tilt':
      return value.to ? [value.angle, value.to] : [value.angle];
    case 'circle':
      return [value.diameter];
    case 'row':
      return [...(value.head ? inAmount(value.head) : []), ...value.cells.flatMap(inAmount)];
    case 'compare':
      return value.right ? [value.left, value.right] : [value.left];
    case 'word':
      return value.amount ? inAmount(value.amount) : [];
    default:
      return [];
  }
}

const inAmount = (amount: Amount): readonly Expression[] =>
  amount.kind === 'sum' ? [amount.value, ...(amount.tolerance ? [amount.tolerance] : [])] : [];

function inPoint({ coordinates, tolerance }: PointValue): readonly Expression[] {
  const spread = tolerance === null ? [] : tolerance.kind === 'point' ? inPoint(tolerance) : [tolerance];
  return [...coordinates.flatMap(inAmount), ...spread];
}

/** The names an expression rests on. */
function namesIn(expression: Expression): readonly Extract<Expression, { kind: 'name' }>[] {
  switch (expression.kind) {
    case 'name':
      return [expression];
    case 'quantity':
      return [];
    case 'call':
      return expression.args.flatMap(namesIn);
    case 'negative':
      return namesIn(expression.of);
    case 'binary':
      return [...namesIn(expression.left), ...namesIn(expression.right)];
  }
}
