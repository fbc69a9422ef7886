// Sums parts up to assemblies and the load: weight, volume, centre and box, each with its reasons where it is not known.
import { type Box, unionOf } from '../mechanics/index.ts';
import {
  type BoundPlan,
  type Item,
  joined,
  keptAlong,
  lostCauses,
  lostLists,
  openLines,
  type Thing,
} from '../plan/index.ts';
import { type Cause, type Derived, type Input, open, sum, unique } from '../quantities/derived.ts';
import type { Row } from '../syntax/types.ts';
import { Batch, mostInBatch } from './batch.ts';
import { centreOf } from './centre.ts';
import { because, Notes } from './notes.ts';
import { partOf } from './part.ts';
import { isLiquid, type Layout, type Placed, standsAlone } from './place.ts';
import { type Frame, liquidOf, type Rests, type Solid, sameFrame, solidOf } from './solid.ts';
import type { Body, ResultProblem } from './types.ts';

/** A body with what its load needs to sum it up. */
export interface Summed extends Body {
  readonly bodies: readonly Summed[]; // made when somebody reads them
  readonly pieces: readonly Piece[]; // what it was summed up from, in the order of the lines
  readonly solid: Solid | null; // of a part
  readonly unplaced: boolean;
}

/** A part among them. */
export type Leaf = Summed & { readonly solid: Solid };

/** Parts in a row, or an assembly. */
export type Piece = Batch | Group;
type Group = Summed & { readonly solid: null };

/** Whether a piece stands for any part or assembly at all. */
export const hasParts = (piece: Piece): boolean => !(piece instanceof Batch) || piece.solids.length > 0;

const isLeaf = (body: Summed): body is Leaf => body.solid !== null;

/** All parts in a body as bodies, in the order of their lines; the body itself where it is one. */
export const leavesOf = (body: Summed): readonly Leaf[] => (isLeaf(body) ? [body] : body.bodies.flatMap(leavesOf));

/** All batches of a load or assembly, in the order of their lines. */
export const batchesOf = ({ pieces }: Pick<Summed, 'pieces'>): readonly Batch[] =>
  pieces.flatMap((piece) => (piece instanceof Batch ? [piece] : batchesOf(piece)));

/** Everything directly and indirectly in a load or assembly. */
export function sumUp(thing: Thing, layout: Layout, notes: Notes): Group {
  const { nameAt: at } = thing.item;
  const unplaced = thing.kind === 'assembly' && unspread(thing.item, layout.place(thing.item), notes);
  const pieces = piecesIn(thing.item, frameOf(thing, layout), layout, notes);
  const causes = lacking(thing, pieces, layout.plan);
  const guard = (value: Derived): Derived =>
    causes.length ? open(value.unit, unique([...causes, ...value.because]), { at }) : value;
  const formula = 'sum of parts';
  const inputs = () => bodies().map((body) => ({ label: body.thing.name, value: body.weight }));
  const weights = pieces.map((piece) => piece.weight);
  const volumes = pieces.map((piece) => piece.volume);
  const boxes = pieces.map((piece) => piece.box).filter((box) => box !== undefined);
  const masses = batchesOf({ pieces }).map((batch) => batch.masses);
  let made: readonly Summed[] | undefined;
  const bodies = (): readonly Summed[] => {
    made ??= bodiesOf(thing, pieces, layout.plan);
    return made;
  };
  return {
    thing,
    weight: guard(sum(weights, 'kg', { formula, inputs, at })),
    volume: guard(sum(volumes, 'm3', { formula, at })),
    cog: centreOf(masses, at, causes, () => weighing({ pieces })),
    box: boxes.includes(null) || causes.length ? null : (unionOf(boxes as Box[]) ?? null),
    get bodies() {
      return bodies();
    },
    pieces,
    working: null,
    solid: null,
    unplaced: unplaced || pieces.some((one) => one.unplaced),
  };
}

/** Whether nothing says where something stands, or how its copies do; said in the notes. */
function unspread(item: Item, { unplaced, count, spread }: Placed, notes: Notes): boolean {
  if (unplaced && count !== null && !item.opens.length)
    notes.add('part-unplaced', item.nameAt, { part: item.names[0] ?? '', copies: spread ? 1 : count }, '');
  return unplaced;
}

/** The body with another weight and centre. */
export const otherwise = (body: Summed, weight: Derived, cog: Summed['cog']): Summed => ({
  thing: body.thing,
  weight,
  volume: body.volume,
  cog,
  box: body.box,
  get bodies() {
    return body.bodies;
  },
  pieces: body.pieces,
  working: body.working,
  solid: body.solid,
  unplaced: body.unplaced,
});

/** The parts that weigh anything, as they go into the centre. */
const weighing = (body: Pick<Summed, 'pieces'>): readonly Input[] =>
  batchesOf(body)
    .flatMap(({ solids }) => solids)
    .filter(({ figures }) => figures.weight.value !== 0)
    .map(({ name, figures }) => ({ label: name, value: figures.weight }));

/** Why what an assembly or load comes to is not known, beside what its parts say themselves. */
function lacking(thing: Thing, pieces: readonly Piece[], plan: BoundPlan): readonly Cause[] {
  const { item } = thing;
  const clashing = plan.names.clashing.filter(
    ({ kind, owner }) => owner === thing && (kind === 'part' || kind === 'assembly'),
  );
  return [
    ...openLines(item),
    ...lostCauses(item),
    ...clashing.map((one) => because(`${one.name} is stated twice.`, one.item.nameAt)),
    ...nameless(item),
    ...lostLists(item, plan),
    ...(pieces.some(hasParts) ? [] : [because(`${thing.name} has no parts.`, item.nameAt)]),
  ];
}

/** Part and assembly lines that declare no name are in no table: their parent must not be lighter for it. */
const nameless = ({ node, children }: Item): readonly Cause[] =>
  joined(
    unnamed(node.row, children, (child) =>
      isBody(child) && !child.names.length
        ? [because(`A ${child.keyword} here has no name that can be read.`, child.at)]
        : none,
    ),
  );
const unnamed = keptAlong<Item, readonly Cause[]>();

const isBody = ({ keyword }: Item): boolean => keyword === 'part' || keyword === 'assembly';

/** Where what a thing holds stands; asked of the layout once something needs it. */
function frameOf(thing: Thing, layout: Layout): () => Frame {
  let found: Frame | undefined;
  return () => {
    found ??= { frames: layout.frames(thing), many: layout.copiesOpen(thing), outer: layout.frameOpen(thing) };
    return found;
  };
}

/** What a child adds to its parent: nothing, a part, or a piece of its own. */
type Kind = 0 | 1 | 2;

function kindOf({ keyword, names, row, children }: Item): Kind {
  if (names.length && row.declares) return keyword === 'part' ? 1 : keyword === 'assembly' ? 2 : 0;
  return children.length ? 2 : 0; // what stands in a thing without a name belongs to what that stands in
}

const kinds = keptAlong<Item, Kind>();
const batches = new WeakMap<Row, readonly Batch[]>();

/** What stands in an item, as pieces in the order of its lines. Batches of the version before are kept by the item's row. */
function piecesIn(item: Item, frame: () => Frame, layout: Layout, notes: Notes): readonly Piece[] {
  const { children } = item;
  const { row } = item.node;
  const kind = kinds(row, children, kindOf);
  const before = batches.get(row);
  const made: Batch[] = [];
  const pieces: Piece[] = [];
  let from = 0;
  const upTo = (end: number): void => {
    if (end === from) return;
    const batch = batchOf(children.slice(from, end), kind.slice(from, end), before?.[made.length], frame, layout);
    tell(batch.facts, notes);
    made.push(batch);
    pieces.push(batch);
    from = end;
  };
  children.forEach((child, i) => {
    if (kind[i] !== 2) return i + 1 - from < mostInBatch ? undefined : upTo(i + 1);
    upTo(i);
    from = i + 1;
    const [thing] = isBody(child) && child.names.length ? layout.plan.names.of(child) : [];
    if (thing) pieces.push(sumUp(thing, layout, notes));
    else pieces.push(...piecesIn(child, frame, layout, notes));
  });
  upTo(children.length);
  batches.set(row, made);
  return pieces;
}

/** Notes what was found in a batch. The rows of a list have one line: that they stand nowhere it says once. */
function tell(facts: readonly ResultProblem[], { problems }: Notes): void {
  for (const fact of facts) {
    const said = problems.at(-1);
    if (fact.slug !== 'part-unplaced' || said?.slug !== fact.slug || said.at !== fact.at) problems.push(fact);
  }
}

/** The parts among some lines: the batch of the version before while these lines, what they are in and the plan's materials are the same. */
function batchOf(
  items: readonly Item[],
  kind: readonly Kind[],
  before: Batch | undefined,
  frame: () => Frame,
  layout: Layout,
): Batch {
  const { materials } = layout;
  if (before?.rests && same(before.items, items) && same(before.rests.materials, materials)) {
    if (sameFrame(before.rests, frame())) return before;
  }
  const notes = new Notes();
  const parts = items.filter((_, i) => kind[i] === 1);
  const solids = parts.map((item) => partIn(item, frame, layout, notes));
  const rests = parts.every(restsOnItself) ? { ...frame(), materials } : null;
  return new Batch(items, solids, notes.problems, rests);
}

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

/** Neither where others stand nor what a drawing holds changes anything about it. */
const restsOnItself = (item: Item): boolean => standsAlone(item) && !isLiquid(item) && !item.clauses.has('mesh');

function partIn(item: Item, frame: () => Frame, layout: Layout, notes: Notes): Solid {
  const part = partOf(item, layout.plan);
  notes.problems.push(...part.problems);
  const around = frame();
  const many = around.many ?? layout.tooMany(item, around.frames.length, notes);
  if (part.kind === 'liquid') return liquidOf(item, part, () => ({ ...around, many }), layout, notes);
  const rests: Rests = { part, placed: layout.place(item), ...around, many };
  unspread(item, rests.placed, notes);
  return solidOf(item, rests);
}

/** The body of an item in a load or assembly, or that itself; undefined where it is none. */
export function bodyOf(body: Summed, item: Item, plan: BoundPlan): Summed | undefined {
  if (body.thing.item === item) return body;
  for (const piece of body.pieces) {
    if (!(piece instanceof Batch)) {
      const found = bodyOf(piece, item, plan);
      if (found) return found;
    } else if (piece.items.includes(item)) {
      const solid = piece.solids.find((one) => one.item === item);
      const [thing] = plan.names.of(item);
      return solid && thing && leafOf(thing, solid);
    }
  }
  return undefined;
}

/** Everything that stands right in a thing, as bodies. */
function bodiesOf(thing: Thing, pieces: readonly Piece[], plan: BoundPlan): readonly Summed[] {
  const things = plan.names.inside(thing).filter(({ item }) => isBody(item));
  const next = things.values();
  return pieces.flatMap((piece): readonly Summed[] => {
    if (piece instanceof Batch) return piece.solids.map((solid) => leafOf(next.next().value as Thing, solid));
    next.next();
    return [piece];
  });
}

const leaves = new WeakMap<Thing, Leaf>();

/** A part as a body: one object for each thing. */
function leafOf(thing: Thing, solid: Solid): Leaf {
  const known = leaves.get(thing) ?? leaf(thing, solid);
  leaves.set(thing, known);
  return known;
}

function leaf(thing: Thing, solid: Solid): Leaf {
  const { weight, volume, box, unplaced } = solid.figures;
  return {
    thing,
    weight,
    volume,
    get cog() {
      return solid.cog;
    },
    box,
    bodies: none,
    get working() {
      return solid.working;
    },
    pieces: none,
    solid,
    unplaced,
  };
}

const none: readonly never[] = [];
