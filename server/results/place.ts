// Where the parts and assemblies of a load stand: copies in their parent's axes, and the boxes that `on`, `against` and `inside` speak of.
import {
  type Box,
  boxOf,
  compose,
  identity,
  inverse,
  type Placement,
  shifted,
  still,
  unionOf,
  type Vec3,
} from '../mechanics/index.ts';
import { type BoundPlan, fold, type Item, namesOf, type Thing } from '../plan/index.ts';
import type { Cause } from '../quantities/derived.ts';
import { nearest } from '../quantities/nearest.ts';
import type { NameUse, Place, Row } from '../syntax/types.ts';
import { type EndsGiven, endsOf } from './ends.ts';
import { because, type Notes } from './notes.ts';
import { partOf } from './part.ts';
import { copiesOf, countOf, countOpen, rotationOf } from './placing.ts';

/** Where an item stands in its parent's axes. Unknown axes hold zero and say why in `open`. */
export interface Placed {
  readonly copies: readonly Placement[];
  readonly open: readonly [readonly Cause[], readonly Cause[], readonly Cause[]];
  readonly slack: Vec3; // half the tolerance of its place, along the parent's axes
  readonly unplaced: boolean; // nothing says where it stands
  readonly spread: boolean; // copies are said to stand somewhere, or there is one
  readonly count: number | null; // null: could not be read
}

const placeWords = ['at', 'on', 'against', 'inside'] as const;
const none: Placed['open'] = [[], [], []];
const all = (causes: readonly Cause[]): Placed['open'] => [causes, causes, causes];

/** What keeps the frames of a thing open, axis by axis, and how loose they are. */
export interface FrameOpen {
  readonly open: Placed['open'];
  readonly slack: Vec3;
}

// What rests on an item alone, or on the very same places around it, is the same object from version to version.
const alone = new WeakMap<Item, Placed>();
const frames = new WeakMap<Placed, { readonly outer: readonly Placement[]; readonly frames: readonly Placement[] }>();
const framesOpen = new WeakMap<Placed, { readonly outer: FrameOpen; readonly made: FrameOpen }>();
const atLoad: readonly Placement[] = [still];
/** So many copies are placed at most, over all that stand in one another: more would take minutes, and mean a slip. Chosen here; no source. */
const mostCopies = 100_000;
const fixed: FrameOpen = { open: none, slack: [0, 0, 0] };

/** Places everything in one load; asks each thing once, and notes circles. */
export class Layout {
  private readonly placed = new Map<Item, Placed>();
  private readonly running: Item[] = [];
  private readonly crowded = new Map<Item, Cause | null>();
  /** What the plan itself declares as materials. */
  readonly materials: readonly Item[];

  constructor(
    readonly plan: BoundPlan,
    readonly load: Thing,
    private readonly notes: Notes,
  ) {
    this.materials = plan.names.kind('material').map(({ item }) => item);
  }

  /** Where an assembly or part stands in the axes of what it is in. */
  place(item: Item): Placed {
    const known = alone.get(item) ?? this.placed.get(item);
    if (known) return known;
    if (this.running.includes(item)) {
      const names = [...this.running.slice(this.running.indexOf(item)), item];
      const cause = this.notes.add(
        'definition-circle',
        item.nameAt,
        { names: names.map((one) => one.names[0] ?? one.keyword) },
        `${item.names[0]} stands on itself.`,
        names.slice(1, -1).map((one) => ({ at: one.nameAt, says: 'in the same circle' })),
      );
      return { copies: [still], open: all([cause]), slack: [0, 0, 0], unplaced: false, spread: true, count: 1 };
    }
    this.running.push(item);
    const placed = asBefore(item, this.work(item));
    this.running.pop();
    (standsAlone(item) ? alone : this.placed).set(item, placed);
    return placed;
  }

  /** Copies of what an item is in, in the load's axes: as many as there are, on one spot where nothing says how they stand. */
  frames(owner: Thing | null): readonly Placement[] {
    if (owner?.kind !== 'assembly') return atLoad;
    const outer = this.frames(owner.owner);
    const placed = this.place(owner.item);
    const known = frames.get(placed);
    if (known?.outer === outer) return known.frames;
    const { copies, spread, count } = placed;
    if ((count ?? 1) * outer.length > mostCopies) return outer; // `copiesOpen` says so
    const each = spread ? copies : Array.from({ length: count ?? 1 }, () => copies[0] ?? still);
    const made = outer.flatMap((frame) => each.map((copy) => compose(frame, copy)));
    frames.set(placed, { outer, frames: made });
    return made;
  }

  /** Why nobody knows how often what stands in `owner` is there; null where it is known. */
  copiesOpen(owner: Thing | null): Cause | null {
    if (owner?.kind !== 'assembly') return null;
    if (countOf(owner.item) === null) return countOpen(owner.item, owner.name);
    const around = this.copiesOpen(owner.owner);
    if (around) return around;
    const known = this.crowded.get(owner.item);
    if (known !== undefined) return known;
    const found = this.tooMany(owner.item, this.frames(owner.owner).length, this.notes);
    this.crowded.set(owner.item, found);
    return found;
  }

  /** Why an item is not counted: with the copies of what it stands in there are more of it than can be placed. */
  tooMany(item: Item, around: number, notes: Notes): Cause | null {
    const clause = item.clauses.get('count')?.[0];
    if (!clause || (countOf(item) ?? 1) * around <= mostCopies) return null;
    const { row, from, to } = clause.valueAt;
    const reason = 'with the copies of what it stands in, that is more than 100,000';
    const facts = { clause: 'count', value: row.text.slice(from, to), reason };
    return notes.add('value-outside', clause.valueAt, facts, `There are too many copies of ${item.names[0]}.`);
  }

  /** What keeps the frames of an item open, from the load down, and the slack they add. */
  frameOpen(owner: Thing | null): FrameOpen {
    if (owner?.kind !== 'assembly') return fixed;
    const outer = this.frameOpen(owner.owner);
    const own = this.place(owner.item);
    const known = framesOpen.get(own);
    if (known?.outer === outer) return known.made;
    const made = this.frameOpenOf(owner, outer, own);
    framesOpen.set(own, { outer, made });
    return made;
  }

  private frameOpenOf(owner: Thing, outer: FrameOpen, own: Placed): FrameOpen {
    const turned =
      own.copies.some((copy) => copy.R.some((r, i) => r !== identity[i])) ||
      this.frames(owner.owner).some((frame) => frame.R.some((r, i) => r !== identity[i]));
    const mixed = turned ? all([...own.open.flat()]) : own.open;
    const slack = turned ? Math.hypot(...own.slack) : null;
    return {
      open: [0, 1, 2].map((i) => [...(outer.open[i] ?? []), ...(mixed[i] ?? [])]) as unknown as Placed['open'],
      slack: [0, 1, 2].map((i) => (outer.slack[i] ?? 0) + (slack ?? own.slack[i] ?? 0)) as unknown as Vec3,
    };
  }

  /** The box of one copy of an item that stands as `placement` says; null where something of it has no known box. */
  boxIn(item: Item, placement: Placement): Box | null {
    if (item.keyword === 'assembly') {
      const boxes = item.children
        .filter((child) => child.keyword === 'part' || child.keyword === 'assembly')
        .flatMap((child) => {
          if (isLiquid(child)) return [];
          const placed = this.place(child);
          if (placed.open.some((causes) => causes.length)) return [null];
          return placed.copies.map((copy) => this.boxIn(child, compose(placement, copy)));
        });
      return boxes.includes(null) ? null : (unionOf(boxes as Box[]) ?? null);
    }
    const part = partOf(item, this.plan);
    if (part.shape) return shifted(boxOf(part.shape, placement.R), placement.t);
    return part.kind === 'item' && part.point ? { min: placement.t, max: placement.t } : null;
  }

  private work(item: Item): Placed {
    const ends = endsOf(item);
    const R = ends && 'R' in ends ? ends.R : rotationOf(item);
    const count = countOf(item);
    const words = placeWords.filter((word) => item.clauses.has(word) && !(word === 'inside' && isLiquid(item)));
    const bad = [
      ...['axis', 'circle', 'every', 'count'].filter((word) => item.clauses.get(word)?.some((clause) => !clause.value)),
      ...(item.clauses.get('turn')?.some((clause) => !clause.value) ? ['turn'] : []),
    ];
    const lines: Cause[] = bad.map((word) => because(`${word} of ${item.names[0]} is not known.`, item.at));
    if (words.length > 1) {
      const [first, second] = words.map((word) => item.clauses.get(word)?.[0]?.at as Place);
      lines.push(
        this.notes.add(
          'stated-twice',
          second as Place,
          { name: `the place of ${item.names[0]}`, place: `"${words[0]}"` },
          `${item.names[0]} has two places.`,
          [{ at: first as Place, says: 'stated here' }],
        ),
      );
    }
    const relative = copiesOf(item, { R, t: [0, 0, 0] });
    const spread = relative !== null;
    if (!spread && count !== null && count > 1 && !bad.length)
      lines.push(because(`Nothing says how the ${count} copies of ${item.names[0]} stand.`, item.at));
    const start = ends ? between(ends) : this.start(item, words[0], relative ?? [{ R, t: [0, 0, 0] }]);
    const shift = cellsOf(item, 'shift');
    const t = start.t.map((x, i) => x + (shift?.t[i] ?? 0)) as unknown as Vec3;
    return {
      copies: (relative ?? [{ R, t: [0, 0, 0] as Vec3 }]).map((copy) => ({
        R: copy.R,
        t: copy.t.map((x, i) => x + (t[i] as number)) as unknown as Vec3,
      })),
      open: [0, 1, 2].map((i) => [
        ...(start.open[i] ?? []),
        ...(shift?.open[i] ?? []),
        ...lines,
      ]) as unknown as Placed['open'],
      slack: [0, 1, 2].map((i) => (start.slack[i] ?? 0) + (shift?.slack[i] ?? 0)) as unknown as Vec3,
      unplaced: (!words.length && !ends && item.keyword === 'part') || (!spread && count !== null && count > 1),
      spread: spread || count === 1,
      count,
    };
  }

  /** The datum point of the first copy before `shift`. */
  private start(
    item: Item,
    word: (typeof placeWords)[number] | undefined,
    relative: readonly Placement[],
  ): { readonly t: Vec3; readonly open: Placed['open']; readonly slack: Vec3 } {
    const zero: Vec3 = [0, 0, 0];
    if (!word) {
      const missing =
        item.keyword === 'part' && !isLiquid(item)
          ? [because(`Nothing says where ${item.names[0]} stands.`, item.at)]
          : [];
      return { t: zero, open: missing.length ? all(missing) : none, slack: zero };
    }
    if (word === 'at') return cellsOf(item, 'at') ?? { t: zero, open: none, slack: zero };
    const clause = item.clauses.get(word)?.[0];
    if (!clause?.value)
      return { t: zero, open: all([because(`${word} of ${item.names[0]} is not known.`, item.at)]), slack: zero };
    const boxes = relative.map((copy) => this.boxIn(item, copy));
    const own = boxes.includes(null) ? null : unionOf(boxes as Box[]);
    const names = clause.value.kind === 'side' ? [clause.value.name] : namesOf(item, word);
    const target = this.target(item, names);
    if ('what' in target) return { t: zero, open: all([target]), slack: zero };
    if (!own)
      return { t: zero, open: all([because(`The size of ${item.names[0]} is not known.`, item.at)]), slack: zero };
    return {
      t: fitTo(own, target.box, word, clause.value.kind === 'side' ? clause.value.axis : 'z'),
      open: none,
      slack: target.slack,
    };
  }

  /** The box of what is named, in the axes of what the item is in. */
  private target(item: Item, names: readonly NameUse[]): { readonly box: Box; readonly slack: Vec3 } | Cause {
    const boxes: Box[] = [];
    let slack: Vec3 = [0, 0, 0];
    const mine = this.plan.names.of(item)[0]?.owner ?? null;
    for (const name of names) {
      const thing = this.find(name, item);
      if ('what' in thing) return thing;
      const placed = this.place(thing.item);
      const cause =
        placed.open.flat()[0] ?? (thing.owner !== mine ? this.frameOpen(thing.owner).open.flat()[0] : undefined);
      if (cause) return cause;
      slack = slack.map((x, i) => Math.max(x, placed.slack[i] ?? 0)) as unknown as Vec3;
      for (const copy of placed.copies)
        for (const box of this.boxesFrom(thing, copy, mine)) {
          if (!box) return because(`The size of ${thing.name} is not known.`, thing.item.nameAt);
          boxes.push(box);
        }
    }
    const box = unionOf(boxes);
    return box ? { box, slack } : because('Nothing is named to stand on.', item.at);
  }

  /** A thing's box seen from the axes of another owner. */
  private boxesFrom(thing: Thing, copy: Placement, mine: Thing | null): readonly (Box | null)[] {
    if (thing.owner === mine) return [this.boxIn(thing.item, copy)];
    const back = inverse(this.frames(mine)[0] ?? still);
    return this.frames(thing.owner).map((frame) => this.boxIn(thing.item, compose(back, compose(frame, copy))));
  }

  /** The part or assembly a name means in this load; a fact where there is none. */
  find(name: NameUse, from: Item): Thing | Cause {
    const last = name.parts.at(-1)?.text ?? '';
    const key = fold(last);
    const inLoad = (thing: Thing) =>
      thing.load === this.load &&
      (name.parts.length === 1 ||
        endsWith(
          thing.path,
          name.parts.map((part) => part.text),
        ));
    const found = [...this.plan.names.find('part', key), ...this.plan.names.find('assembly', key)].filter(inLoad);
    const [thing] = found;
    const at: Place = { row: rowOf(from, name), from: name.span.from, to: name.span.to };
    if (thing && !thing.clash) return thing;
    if (thing) return because(`${last} is stated twice.`, thing.item.nameAt);
    const others = (['pick', 'gear', 'load', 'rig'] as const).flatMap((kind) =>
      this.plan.names.find(kind, key).map(() => kind),
    );
    const names = this.plan.names.things
      .filter((one) => one.load === this.load && (one.kind === 'part' || one.kind === 'assembly'))
      .map((one) => one.name);
    return this.notes.add(
      'name-unknown',
      at,
      {
        name: last,
        nearest: nearest(last, names),
        wanted: 'a part or assembly of this load',
        is: others[0] ?? null,
        declare: null,
      },
      `Nothing called ${last} is in this load.`,
    );
  }
}

const places = new WeakMap<Row, Placed>();

/** The place of an assembly as the object of the version before if it is the very same: what is in it may have changed, not where it stands. Kept by its row. */
function asBefore({ keyword, node: { row } }: Item, placed: Placed): Placed {
  if (keyword !== 'assembly' || placed.open.some((causes) => causes.length)) return placed;
  const before = places.get(row);
  if (before && JSON.stringify(before) === JSON.stringify(placed)) return before;
  places.set(row, placed);
  return placed;
}

/** What stands by its own words only is kept by item: it is the same in every version until its line changes. */
export const standsAlone = (item: Item): boolean =>
  placeWords.every((word) => word === 'at' || !item.clauses.has(word));

export const isLiquid = (item: Item): boolean => item.clauses.has('liquid');
const endsWith = (path: readonly string[], parts: readonly string[]): boolean =>
  parts.every((part, i) => fold(path[path.length - parts.length + i] ?? '') === fold(part));

/** The row a name of an item's clauses stands on. */
function rowOf(item: Item, name: NameUse): Place['row'] {
  for (const list of item.clauses.values())
    for (const clause of list) {
      const value = clause.value;
      if ((value?.kind === 'names' && value.names.includes(name)) || (value?.kind === 'side' && value.name === name))
        return clause.at.row;
    }
  return item.node.row;
}

/** A member stands where its ends put it. */
const between = (ends: EndsGiven): { readonly t: Vec3; readonly open: Placed['open']; readonly slack: Vec3 } =>
  'because' in ends
    ? { t: [0, 0, 0], open: all(ends.because), slack: [0, 0, 0] }
    : { t: ends.middle, open: none, slack: ends.slack };

/** Coordinates of a point clause with what is open and how loose they are. */
function cellsOf(
  item: Item,
  word: string,
): { readonly t: Vec3; readonly open: Placed['open']; readonly slack: Vec3 } | null {
  const clause = item.clauses.get(word)?.[0];
  if (!clause) return null;
  const name = item.names[0] ?? item.keyword;
  if (clause.value?.kind !== 'point')
    return { t: [0, 0, 0], open: all([because(`${word} of ${name} is not known.`, clause.at)]), slack: [0, 0, 0] };
  const cells = clause.value.at;
  return {
    t: cells.map((cell) => (cell && typeof cell !== 'string' ? cell.value : 0)) as unknown as Vec3,
    open: cells.map((cell, i) =>
      cell && typeof cell !== 'string'
        ? []
        : [{ ...because(`${word} of ${name} along ${'xyz'[i]} is not known yet (?).`, clause.at), deliberate: true }],
    ) as unknown as Placed['open'],
    slack: cells.map((cell) => (cell && typeof cell !== 'string' ? (cell.high - cell.low) / 2 : 0)) as unknown as Vec3,
  };
}

/** The shift that sets a box centred on top of another, against a side of it, or in its middle. */
function fitTo(own: Box, target: Box, word: 'on' | 'against' | 'inside', axis: string): Vec3 {
  const t = [0, 1, 2].map(
    (i) =>
      ((target.min[i] as number) + (target.max[i] as number)) / 2 -
      ((own.min[i] as number) + (own.max[i] as number)) / 2,
  );
  if (word === 'on') t[2] = target.max[2] - own.min[2];
  if (word === 'against') {
    const i = 'xyz'.indexOf(axis.slice(-1));
    t[i] = axis.startsWith('-')
      ? (target.min[i] as number) - (own.max[i] as number)
      : (target.max[i] as number) - (own.min[i] as number);
  }
  return t as unknown as Vec3;
}
