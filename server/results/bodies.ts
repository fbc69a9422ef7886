// Sums parts up to assemblies and the load: weight, volume, centre and box, each with its reasons where it is not known.
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
import { given, type Item, lostCauses, lostLists, openLines, type Thing, textOf } from '../plan/index.ts';
import { type Cause, type Derived, known, open, sum, unique } from '../quantities/derived.ts';
import { centreOf, type Mass } from './centre.ts';
import { lying } from './liquid.ts';
import { because, type Notes } from './notes.ts';
import { type Part, partOf } from './part.ts';
import type { Layout, Placed } from './place.ts';
import { countOpen } from './placing.ts';
import type { Body, Working } from './types.ts';

/** A body with what its load needs to sum it up. */
export interface Summed extends Body {
  readonly bodies: readonly Summed[];
  readonly part: Part | null;
  readonly unplaced: boolean;
  readonly masses: readonly Mass[]; // where its weight sits, copy by copy as one each part
  readonly contingency: Contingency | null; // its own, where it states one
}
export interface Contingency {
  readonly share: number | null; // null: stated, but not known
  readonly estimate: boolean;
  readonly because: readonly Cause[];
}

/** Everything directly and indirectly in a load or assembly. */
export function sumUp(thing: Thing, layout: Layout, notes: Notes): Summed {
  return thing.kind === 'part' ? partBody(thing, layout, notes) : group(thing, layout, notes);
}

function group(thing: Thing, layout: Layout, notes: Notes): Summed {
  const inside = layout.plan.names.inside(thing).filter((one) => one.kind === 'part' || one.kind === 'assembly');
  const bodies = inside.map((one) => sumUp(one, layout, notes));
  const lines = [...openLines(thing.item), ...lostCauses(thing.item)];
  const clashes = inside
    .filter((one) => one.clash)
    .map((one) => because(`${one.name} is stated twice.`, one.item.nameAt));
  const causes = [
    ...lines,
    ...clashes,
    ...unnamed(thing.item),
    ...lostLists(thing.item, layout.plan),
    ...(bodies.length ? [] : [because(`${thing.name} has no parts.`, thing.item.nameAt)]),
  ];
  const guard = (value: Derived): Derived =>
    causes.length ? open(value.unit, unique([...causes, ...value.because]), { at: thing.item.nameAt }) : value;
  const origin = (what: (body: Summed) => Derived) => ({
    formula: 'sum of parts',
    inputs: bodies.map((body) => ({ label: body.thing.name, value: what(body) })),
    at: thing.item.nameAt,
  });
  const weight = guard(
    sum(
      bodies.map((body) => body.weight),
      'kg',
      origin((body) => body.weight),
    ),
  );
  const volumes = bodies.filter((body) => body.part?.kind !== 'item');
  const volume = guard(
    sum(
      volumes.map((body) => body.volume),
      'm3',
      { formula: 'sum of parts', at: thing.item.nameAt },
    ),
  );
  const masses = bodies.flatMap((body) => body.masses);
  const boxes = bodies.filter((body) => body.part?.kind !== 'liquid').map((body) => body.box);
  return {
    thing,
    weight,
    volume,
    cog: centreOf(masses, thing.item.nameAt, causes),
    box: boxes.includes(null) || causes.length ? null : (unionOf(boxes as Box[]) ?? null),
    bodies,
    working: null,
    part: null,
    unplaced: bodies.some((body) => body.unplaced),
    masses,
    contingency: null,
  };
}

/** Part and assembly lines that declare no name are in no table: their parent must not be lighter for it. */
function unnamed(item: Item): readonly Cause[] {
  return item.children
    .filter((child) => (child.keyword === 'part' || child.keyword === 'assembly') && !child.names.length)
    .map((child) => because(`A ${child.keyword} here has no name that can be read.`, child.at));
}

function partBody(thing: Thing, layout: Layout, notes: Notes): Summed {
  const part = partOf(thing.item, layout.plan);
  notes.problems.push(...part.problems);
  return part.kind === 'liquid' ? liquidBody(thing, part, layout, notes) : solidBody(thing, part, layout, notes);
}

function solidBody(thing: Thing, part: Part, layout: Layout, notes: Notes): Summed {
  const { item } = thing;
  const rests: Rests = {
    part,
    placed: layout.place(item),
    frames: layout.frames(thing.owner),
    many: layout.copiesOpen(thing.owner),
    outer: layout.frameOpen(thing.owner),
  };
  const { placed } = rests;
  const said = notes.problems.at(-1); // the rows of a list have one line: it says so once
  if (
    placed.unplaced &&
    placed.count !== null &&
    !item.opens.length &&
    !(said?.slug === 'part-unplaced' && said.at === item.nameAt)
  )
    notes.add('part-unplaced', item.nameAt, { part: thing.name, copies: placed.spread ? 1 : placed.count }, '');
  const known = item.names.length === 1 ? solids.get(item) : undefined;
  if (
    known &&
    known.rests.part === part &&
    known.rests.placed === placed &&
    known.rests.frames === rests.frames &&
    known.rests.many?.at === rests.many?.at &&
    known.rests.outer === rests.outer
  )
    return { ...known.body, thing, masses: known.body.masses.map((mass) => ({ ...mass, thing })) };
  const body = workedBody(thing, rests);
  solids.set(item, { rests, body });
  return body;
}

/** All that a solid part's body rests on; the same objects while nothing of it changes. */
interface Rests {
  readonly part: Part;
  readonly placed: Placed;
  readonly frames: readonly Placement[];
  readonly many: Cause | null; // why nobody knows how often its assembly is there
  readonly outer: ReturnType<Layout['frameOpen']>;
}

const solids = new WeakMap<Item, { readonly rests: Rests; readonly body: Summed }>();

function workedBody(thing: Thing, { part, placed, frames, many, outer }: Rests): Summed {
  const { item } = thing;
  const copies = frames.flatMap((frame) => placed.copies.map((copy) => compose(frame, copy)));
  const count = placed.count;
  const number = count === null ? null : count * frames.length;
  const weight = times(part.mass, number, item, many);
  const volume = part.volume
    ? times(part.volume, number, item, many)
    : open(
        'm3',
        part.kind === 'item'
          ? [because(`${thing.name} is given by its weight, not by its shape.`, item.at)]
          : part.mass.because.length
            ? part.mass.because
            : [because('A weight by length or area shows no volume.', item.at)],
        { at: item.at },
      );
  const causes = (axis: number): readonly Cause[] => [...(placed.open[axis] ?? []), ...(outer.open[axis] ?? [])];
  const open3 = rotated(copies)
    ? ([0, 1, 2].map(() => unique([...causes(0), ...causes(1), ...causes(2)])) as readonly (readonly Cause[])[])
    : [causes(0), causes(1), causes(2)];
  const centre = part.centre && copies.length ? mean(copies.map((copy) => apply(copy, part.centre as Vec3))) : null;
  const own = rotated(copies) ? [0, 1, 2].map(() => Math.hypot(...part.centreSlack)) : part.centreSlack;
  const slack = placed.slack.map((x, i) => x + (outer.slack[i] ?? 0) + (own[i] ?? 0)) as unknown as Vec3;
  const mass: Mass = {
    thing,
    weight,
    centre,
    slack,
    open: open3 as Mass['open'],
    because: centre ? [] : [because(`The centre of ${thing.name} is not known.`, item.at)],
  };
  return {
    thing,
    weight,
    volume,
    cog: centreOf([mass], item.nameAt, []),
    box: open3.some((one) => one.length) ? null : boxes(part, copies),
    bodies: [],
    working: working(part, count ?? 0),
    part,
    unplaced: placed.unplaced,
    masses: [mass],
    contingency: contingencyOf(item),
  };
}

const rotated = (copies: readonly Placement[]): boolean =>
  copies.some((copy) => copy.R.some((r, i) => r !== identity[i]));

function liquidBody(thing: Thing, part: Part, layout: Layout, notes: Notes): Summed {
  const lies = lying(thing.item, thing, part, layout, notes);
  const open3: Mass['open'] = [lies.because, lies.because, lies.because];
  const mass: Mass = { thing, weight: lies.mass, centre: lies.centre, slack: [0, 0, 0], open: open3, because: [] };
  if (!thing.item.clauses.has('inside') && !thing.item.clauses.has('at') && lies.mass.value !== null)
    notes.add('part-unplaced', thing.item.nameAt, { part: thing.name, copies: 1 }, '');
  return {
    thing,
    weight: lies.mass,
    volume: lies.volume,
    cog: centreOf([mass], thing.item.nameAt, []),
    box: null,
    bodies: [],
    working: { shape: 'liquid', each: lies.mass, volumeEach: lies.volume, density: part.density, count: 1 },
    part,
    unplaced: lies.centre === null,
    masses: [mass],
    contingency: contingencyOf(thing.item),
  };
}

const working = (part: Part, count: number): Working => ({
  shape: part.shapeName,
  each: part.mass,
  volumeEach: part.volume,
  density: part.density,
  count,
});

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
  if (part.shape)
    return (
      unionOf(copies.map((copy) => shifted(boxOf(part.shape as NonNullable<Part['shape']>, copy.R), copy.t))) ?? null
    );
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
