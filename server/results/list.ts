// Lays every result of the table of subjects out, known or open, so that JSON, hover, hints, `expect` and the sheet read one list.

import type { Box } from '../mechanics/index.ts';
import type { BoundPlan, Item, Thing } from '../plan/index.ts';
import { type Cause, type Derived, known, open, type ResultUnit } from '../quantities/derived.ts';
import { type ResultRow, resultsOf } from '../vocabulary/index.ts';
import type { Summed } from './bodies.ts';
import type { Hanging } from './hang/hang.ts';
import type { LiftOff } from './lift-off.ts';
import type { Rigging } from './rigging.ts';
import type { Body, GearUse, LoadResult, Result, Results, Subject } from './types.ts';

type Figures = Readonly<Record<string, Derived | undefined>>;

/** Results of one subject in the order of the table; those not given are open: this version does not work them out. */
function rows(subject: Subject, figures: Figures, at: Result['at'], stage: string | null = null): readonly Result[] {
  const table = resultsOf[subject.kind] ?? {};
  return Object.entries(table).map(([result, row]) => ({
    subject,
    result,
    stage,
    value: figures[result] ?? notWorkedOut(row, result),
    at,
  }));
}

const unworked = new Map<string, Derived>();

function notWorkedOut(row: ResultRow, result: string): Derived {
  const key = `${result} ${row.unit}`;
  const value =
    unworked.get(key) ??
    open(row.unit as ResultUnit, [{ what: `This version does not work out the ${result}.`, at: null }]);
  unworked.set(key, value);
  return value;
}

export interface Worked {
  readonly plan: BoundPlan;
  readonly totals: Results['totals'];
  readonly loads: readonly (LoadResult & { readonly body: Summed })[];
  readonly rigging: Rigging;
  readonly hanging: Hanging;
  readonly headroom: ReadonlyMap<Item, Derived>; // by the item of a position
  readonly lifting: LiftOff;
}

/** All results in the order of the table and the plan; those of parts and assemblies are laid out when somebody reads them. */
export interface Listing {
  readonly all: readonly Result[];
  /** Those of some kinds of subjects. */
  ofKinds(kinds: readonly string[]): readonly Result[];
}

const isBody = (kind: string): boolean => kind === 'part' || kind === 'assembly';

/** Every subject of the plan with every result it can have. */
export function listResults(worked: Worked): Listing {
  const sections = sectionsOf(worked);
  const others = sections.flatMap((section) => (typeof section === 'function' ? [] : section));
  let all: readonly Result[] | undefined;
  return {
    get all() {
      all ??= sections.flatMap((section) => (typeof section === 'function' ? section() : section));
      return all;
    },
    ofKinds(kinds) {
      return (kinds.some(isBody) ? this.all : others).filter(({ subject }) => kinds.includes(subject.kind));
    },
  };
}

/** Results as they stand, and what gives those of the bodies of a load. */
function sectionsOf(worked: Worked): readonly (readonly Result[] | (() => readonly Result[]))[] {
  const { plan, totals, loads, rigging, hanging, headroom, lifting } = worked;
  const start = plan.head?.at ?? plan.items[0]?.at;
  if (!start) return [];
  const figures = {
    'load weight': totals.loadWeight,
    'rigging weight': totals.rigging,
    deductions: totals.deductions,
    'gross load': totals.gross,
    ...readingOf(lifting, null),
  };
  return [
    plan.head ? rows({ kind: 'plan', name: null, path: [] }, figures, start) : [],
    ...loads.flatMap((load) => [loadRows(load, hanging), () => bodiesRows(load.body.bodies)]),
    ...plan.names
      .kind('pick')
      .filter((thing) => !thing.fromLibrary)
      .map((thing) => rows(named('pick', thing), hangFigures(hanging, thing, rigging), thing.item.at)),
    ...rigging.gear
      .filter((gear) => gear.hangs || !gear.thing.fromLibrary)
      .map((gear) => {
        const hung = hangFigures(hanging, gear.thing, rigging);
        const figures = { ...hung, ...gearFigures(gear), ...readingOf(lifting, gear.thing) };
        return rows(named(gear.kind, gear.thing), figures, gear.thing.item.at);
      }),
    ...hanging.stages.map((stage) => stageRows(stage, plan, loads, rigging)),
    ...plan.items.filter((item) => item.file === plan.file).map((item) => siteRows(item, plan, totals, headroom)),
  ];
}

function loadRows(load: Worked['loads'][number], hanging: Hanging): readonly Result[] {
  const { thing, body } = load;
  const figures = {
    ...unhung(hanging, ['tilt']),
    ...hanging.drawn.get(thing),
    ...loadFigures(load),
    ...boxFigures(body.box, body.weight.because, thing.item),
  };
  return rows(named('load', thing), figures, thing.item.at);
}

/** What an instrument shows; of a cell in no leg, and of one indicator for several hooks, nothing is known. */
function readingOf({ readings }: LiftOff, on: Thing | null): Figures {
  const found = readings.find((reading) => reading.on === on);
  if (found) return { 'expected reading': found.expected, 'stop reading': found.stop };
  const what = on ? `${on.name} is in no leg.` : 'Several hooks share what hangs: each shows its own part of it.';
  const idle = open('kg', [{ what, at: on?.item.nameAt ?? null }]);
  return { 'expected reading': idle, 'stop reading': idle };
}

const named = (kind: string, thing: Thing): Subject => ({ kind, name: thing.name, path: thing.path });

function loadFigures(load: LoadResult & { readonly body: Summed }): Figures {
  const of = (kind: string) => load.candidates.filter((one) => one.kind === kind).map((one) => one.weight);
  const heaviest = (list: readonly Derived[], what: string): Derived =>
    list.find((one) => one.value === null) ??
    list.reduce<Derived | undefined>(
      (best, one) => (best && (best.value as number) >= (one.value as number) ? best : one),
      undefined,
    ) ??
    open('kg', [{ what, at: load.thing.item.at }]);
  return {
    weight: load.weight,
    'calculated weight': load.body.weight,
    'stated weight': heaviest(of('stated'), 'No weight is stated.'),
    'measured weight': heaviest(of('measured'), 'It was not weighed on supports.'),
    volume: load.body.volume,
    'cog x': load.cog[0],
    'cog y': load.cog[1],
    'cog z': load.cog[2],
  };
}

function boxFigures(box: Box | null, because: readonly Cause[], item: Item): Figures {
  const side = (axis: number): Derived =>
    box
      ? known((box.max[axis] as number) - (box.min[axis] as number), 'm', { at: item.at })
      : open('m', because.length ? because : [{ what: 'The box around it is not known.', at: item.at }], {
          at: item.at,
        });
  return { length: side(0), width: side(1), height: side(2) };
}

/** Results of bodies and of all in them, each before what is in it. */
const bodiesRows = (bodies: readonly Body[]): readonly Result[] =>
  bodies.flatMap((body) => [...bodyRows(body), ...bodiesRows(body.bodies)]);

const kept = new WeakMap<Body, readonly Result[]>();

/** Results of one part or assembly alone; the same objects each time. */
export function bodyRows(body: Body): readonly Result[] {
  const known = kept.get(body) ?? rowsOfBody(body);
  kept.set(body, known);
  return known;
}

function rowsOfBody({ thing, weight, volume, cog, box }: Body): readonly Result[] {
  const figures = {
    weight,
    volume,
    'cog x': cog[0],
    'cog y': cog[1],
    'cog z': cog[2],
    ...boxFigures(box, [], thing.item),
  };
  return rows(named(thing.kind, thing), figures, thing.item.at);
}

/** Results of the hang of a thing; open for the hang's reasons where it hangs in no leg that was solved. */
function hangFigures(hanging: Hanging, thing: Thing, rigging: Rigging): Figures {
  const found = hanging.drawn.get(thing);
  if (found) return found;
  const use = rigging.gear.find((gear) => gear.thing === thing);
  const idle = use && !use.legs.length ? [{ what: `${thing.name} is in no leg.`, at: thing.item.nameAt }] : null;
  const because =
    idle ??
    (hanging.because.length
      ? hanging.because
      : [{ what: `${thing.name} is in no leg that was worked out.`, at: thing.item.nameAt }]);
  return openHang(because);
}

const openHang = (because: readonly Cause[]): Figures => ({
  tension: open('N', because),
  'elastic tension': open('N', because),
  load: open('kg', because),
  pull: open('N', because),
  angle: open('rad', because),
  tilt: open('rad', because),
  compression: open('N', because),
  'capacity used': open('1', because),
});
const unhung = (hanging: Hanging, words: readonly string[]): Figures =>
  Object.fromEntries(Object.entries(openHang(hanging.because)).filter(([word]) => words.includes(word)));

/** What changes with a stage: tilt of the loads, pulls of gear and picks. */
function stageRows(
  stage: Hanging['stages'][number],
  plan: BoundPlan,
  loads: Worked['loads'],
  rigging: Rigging,
): readonly Result[] {
  const of = (kind: string, thing: Thing): readonly Result[] => {
    if (!stage.because.length && !stage.figures.has(thing)) return []; // not there in this stage
    const figures = { ...openHang(stage.because), ...stage.figures.get(thing) };
    return rows(named(kind, thing), figures, thing.item.at, stage.name).filter((row) => row.result in figures);
  };
  return [
    ...loads.flatMap((load) => of('load', load.thing)),
    ...plan.names
      .kind('pick')
      .filter((thing) => !thing.fromLibrary)
      .flatMap((thing) => of('pick', thing)),
    ...rigging.gear.filter((gear) => gear.legs.length).flatMap((gear) => of(gear.kind, gear.thing)),
  ];
}

const gearFigures = (gear: GearUse): Figures => ({ capacity: gear.capacity });

/** Cranes with their positions, ground with its supports, and weather: their results are open until they are worked out. */
function siteRows(
  item: Item,
  plan: BoundPlan,
  totals: Results['totals'],
  headroom: Worked['headroom'],
): readonly Result[] {
  const things = (one: Item) => plan.names.of(one);
  const cranes = plan.items.filter((one) => one.keyword === 'crane' && one.file === plan.file).length;
  if (item.keyword === 'crane') {
    const positions = item.children.filter((child) => child.keyword === 'position');
    const gross: Figures = cranes === 1 ? { 'gross load': totals.gross } : {};
    return things(item).flatMap((crane) => [
      ...rows(
        named('crane', crane),
        { ...gross, headroom: leastOf(positions.map((one) => headroom.get(one))) },
        item.at,
      ),
      ...positions.flatMap((position) =>
        things(position).flatMap((thing) =>
          rows(named('position', thing), { ...gross, headroom: headroom.get(position) }, position.at),
        ),
      ),
    ]);
  }
  if (item.keyword === 'ground') {
    const ground = things(item)[0];
    return [
      ...rows(ground ? named('ground', ground) : { kind: 'ground', name: null, path: [] }, {}, item.at),
      ...item.children
        .filter((child) => child.keyword === 'support')
        .flatMap((child) => things(child).flatMap((thing) => rows(named('support', thing), {}, child.at))),
    ];
  }
  return item.keyword === 'weather' ? rows({ kind: 'weather', name: null, path: [] }, {}, item.at) : [];
}

/** The least of figures; open as soon as one is; nothing where none is worked out. */
function leastOf(figures: readonly (Derived | undefined)[]): Derived | undefined {
  const known = figures.filter((one) => one !== undefined);
  return known.find((one) => one.value === null) ?? known.sort((a, b) => (a.low as number) - (b.low as number))[0];
}
