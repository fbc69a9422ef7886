// One part of a load where it stands: weight, volume, centre and box of all its copies. Kept while its shape, its place and that of what it is in are the same.
import {
  apply,
  type Box,
  boxOf,
  compose,
  identity,
  mean,
  type Placement,
  shifted,
  unionOf,
  type Vec3,
} from '../mechanics/index.ts';
import { given, type Item, textOf } from '../plan/index.ts';
import { type Cause, type Derived, known, open, unique } from '../quantities/derived.ts';
import { centreOf, gathered, type Mass } from './centre.ts';
import { lying } from './liquid.ts';
import { because, type Notes } from './notes.ts';
import type { Part } from './part.ts';
import type { FrameOpen, Layout, Placed } from './place.ts';
import { countOpen } from './placing.ts';
import type { Working } from './types.ts';

/** Where what a part is in stands, and what of that is not known. */
export interface Frame {
  readonly frames: readonly Placement[];
  readonly many: Cause | null; // why nobody knows how often it is there
  readonly outer: FrameOpen;
}

/** Whether two are the same for all that stands in them. */
export const sameFrame = (a: Frame, b: Frame): boolean =>
  a.frames === b.frames && a.many?.at === b.many?.at && a.outer === b.outer;

/** All that a part's figures rest on; the same objects while nothing of it changes. */
export interface Rests extends Frame {
  readonly part: Part;
  readonly placed: Placed;
}

export interface Contingency {
  readonly share: number | null; // null: stated, but not known
  readonly estimate: boolean;
  readonly because: readonly Cause[];
}

interface Figures {
  readonly weight: Derived;
  readonly volume: Derived;
  readonly box: Box | null;
  readonly mass: Mass; // where its weight sits, its copies as one
  readonly unplaced: boolean;
  readonly count: number;
}

/** A part without the thing it is declared as, which leads up to the whole of one version of its load. */
export class Solid {
  readonly name: string;
  readonly contingency: Contingency | null; // its own, where it states one
  #cog: readonly [Derived, Derived, Derived] | undefined;

  constructor(
    readonly item: Item,
    readonly part: Part,
    readonly figures: Figures,
    readonly rests: Rests | null, // null: a liquid, which lies where others stand
  ) {
    this.name = item.names[0] ?? '';
    this.contingency = contingencyOf(item);
  }

  get cog(): readonly [Derived, Derived, Derived] {
    const inputs = () => [{ label: this.name, value: this.figures.weight }];
    this.#cog ??= centreOf([gathered([this.figures.mass])], this.item.nameAt, [], inputs);
    return this.#cog;
  }

  get working(): Working {
    const { mass, volume, density, shapeName, kind } = this.part;
    const liquid = kind === 'liquid';
    return {
      shape: shapeName,
      each: liquid ? this.figures.weight : mass,
      volumeEach: liquid ? this.figures.volume : volume,
      density,
      count: this.figures.count,
    };
  }
}

const kept = new WeakMap<Item, Solid>();

/** The part of an item: the very one of the version before while all that it rests on is the same. */
export function solidOf(item: Item, rests: Rests): Solid {
  const known = kept.get(item);
  const before = known?.rests;
  if (known && before?.part === rests.part && before.placed === rests.placed && sameFrame(before, rests)) return known;
  const solid = new Solid(item, rests.part, figuresOf(item, rests), rests);
  kept.set(item, solid);
  return solid;
}

function figuresOf(item: Item, { part, placed, frames, many, outer }: Rests): Figures {
  const name = item.names[0] ?? '';
  const copies = many ? [] : frames.flatMap((frame) => placed.copies.map((copy) => compose(frame, copy)));
  const { count, unplaced } = placed;
  const number = count === null ? null : count * frames.length;
  const weight = times(part.mass, number, item, many);
  const causes = [0, 1, 2].map((axis) => [...(placed.open[axis] ?? []), ...(outer.open[axis] ?? [])]);
  const turned = copies.some((copy) => copy.R.some((r, i) => r !== identity[i]));
  const lost = (turned ? causes.map(() => unique(causes.flat())) : causes) as unknown as Mass['open'];
  const centre = part.centre && copies.length ? mean(copies.map((copy) => apply(copy, part.centre as Vec3))) : null;
  const own = turned ? [0, 1, 2].map(() => Math.hypot(...part.centreSlack)) : part.centreSlack;
  const mass: Mass = {
    weight,
    centre,
    slack: placed.slack.map((x, i) => x + (outer.slack[i] ?? 0) + (own[i] ?? 0)) as unknown as Vec3,
    open: lost,
    because: centre ? [] : [because(`The centre of ${name} is not known.`, item.at)],
  };
  const box = lost.some((one) => one.length) ? null : boxes(part, copies);
  return { weight, volume: volumeOf(item, part, number, many), box, mass, unplaced, count: count ?? 0 };
}

function volumeOf(item: Item, part: Part, number: number | null, many: Cause | null): Derived {
  if (part.volume) return times(part.volume, number, item, many);
  const { at } = item;
  if (part.kind === 'item') {
    const name = item.names[0] ?? '';
    return open('m3', [because(`${name} is given by its weight, not by its shape.`, at)], { at });
  }
  const none = [because('A weight by length or area shows no volume.', at)];
  return open('m3', part.mass.because.length ? part.mass.because : none, { at });
}

/** A liquid: worked out in each version, for it lies where other parts stand. */
export function liquidOf(item: Item, part: Part, frame: () => Frame, layout: Layout, notes: Notes): Solid {
  const lies = lying(item, part, frame, layout, notes);
  const mass: Mass = {
    weight: lies.mass,
    centre: lies.centre,
    slack: [0, 0, 0],
    open: [lies.because, lies.because, lies.because],
    because: [],
  };
  if (!item.clauses.has('inside') && !item.clauses.has('at') && lies.mass.value !== null)
    notes.add('part-unplaced', item.nameAt, { part: item.names[0] ?? '', copies: 1 }, '');
  const unplaced = lies.centre === null;
  return new Solid(item, part, { weight: lies.mass, volume: lies.volume, box: null, mass, unplaced, count: 1 }, null);
}

/** What `count` copies come to. */
function times(each: Derived, count: number | null, item: Item, many: Cause | null): Derived {
  if (count === null || many)
    return open(each.unit, [many ?? countOpen(item, item.names[0] ?? item.keyword), ...each.because], { at: item.at });
  if (count === 1 || each.value === null) return each;
  return known(
    each.value * count,
    each.unit,
    {
      formula: 'each * count',
      inputs: [
        { label: 'each', value: each },
        { label: 'count', value: known(count, '1') },
      ],
      source: each.source,
      assumptions: each.assumptions,
      at: each.at,
    },
    (each.low as number) * count,
    (each.high as number) * count,
  );
}

function boxes(part: Part, copies: readonly Placement[]): Box | null {
  const { shape } = part;
  if (shape) return unionOf(copies.map((copy) => shifted(boxOf(shape, copy.R), copy.t))) ?? null;
  return part.point ? (unionOf(copies.map((copy) => ({ min: copy.t, max: copy.t }))) ?? null) : null;
}

/** A part's own contingency, and whether its weight is an estimate. */
function contingencyOf(item: Item): Contingency | null {
  const own = given(item, 'contingency');
  const estimate = textOf(item, 'by') === 'estimate';
  if (own.state === 'absent' && !estimate) return null;
  return {
    share: own.state === 'known' ? own.quantity.high : null,
    estimate,
    because: own.state === 'open' ? own.because : [],
  };
}
