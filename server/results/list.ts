// Lays every result of the table of subjects out, known or open, so that JSON, hover, hints, `expect` and the sheet read one list.

import type { Box } from '../mechanics/index.ts';
import type { BoundPlan, Item, Thing } from '../plan/index.ts';
import { type Cause, type Derived, known, open, type ResultUnit } from '../quantities/derived.ts';
import { type ResultRow, resultsOf } from '../vocabulary/index.ts';
import type { Summed } from './bodies.ts';
import type { Hanging } from './hang/hang.ts';
import type { LiftOff } from './lift-off.ts';
import type { Rigging } from './rigging.ts';
import type { GearUse, LoadResult, Result, Results, Subject } from './types.ts';

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

/** Every subject of the plan with every result it can have. */
export function listResults({ plan, totals, loads, rigging, hanging, headroom, lifting }: Worked): readonly Result[] {
  const start = plan.head?.at ?? plan.items[0]?.at;
  if (!start) return [];
  const all: Result[] = [];
  if (plan.head)
    all.push(
      ...rows(
        { kind: 'plan', name: null, path: [] },
        {
          'load weight': totals.loadWeight,
          'rigging weight': totals.rigging,
          deductions: totals.deductions,
          'gross load': totals.gross,
          ...readingOf(lifting, null),
        },
        start,
      ),
    );
  for (const load of loads) {
    all.push(
      ...rows(
        named('load', load.thing),
        {
          ...unhung(hanging, ['tilt']),
          ...hanging.drawn.get(load.thing),
          ...loadFigures(load),
          ...boxFigures(load.body.box, load.body.weight.because, load.thing.item),
        },
        load.thing.item.at,
      ),
    );
    for (const body of load.body.bodies) addBody(body, all);
  }
  for (const thing of plan.names.things)
    if (thing.kind === 'pick' && !thing.library)
      all.push(...rows(named('pick', thing), hangFigures(hanging, thing, rigging), thing.item.at));
  for (const gear of rigging.gear)
    if (gear.hangs || !gear.thing.library)
      all.push(
        ...rows(
          named(gear.kind, gear.thing),
          { ...hangFigures(hanging, gear.thing, rigging), ...gearFigures(gear), ...readingOf(lifting, gear.thing) },
          gear.thing.item.at,
        ),
      );
  for (const stage of hanging.stages) all.push(...stageRows(stage, plan, loads, rigging));
  for (const item of plan.items) if (item.file === plan.file) all.push(...siteRows(item, plan, totals, headroom));
  return all;
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

/** One after the other: a plan of many parts has more results than a call may have arguments. */
function addBody(body: Summed, all: Result[]): void {
  const known = kept.get(body.thing.item);
  const same =
    known &&
    known.weight === body.weight &&
    known.volume === body.volume &&
    known.cog === body.cog &&
    known.box === body.box &&
    samePath(known.path, body.thing.path);
  const own = same ? known.rows : bodyRows(body);
  if (!same)
    kept.set(body.thing.item, {
      weight: body.weight,
      volume: body.volume,
      cog: body.cog,
      box: body.box,
      path: body.thing.path,
      rows: own,
    });
  for (const row of own) all.push(row);
  for (const inner of body.bodies) addBody(inner, all);
}

/** Rows of a body whose figures are the very same; the part was not written on, nor anything it rests on. */
const kept = new WeakMap<
  Item,
  Pick<Summed, 'weight' | 'volume' | 'cog' | 'box'> & {
    readonly path: readonly string[];
    readonly rows: readonly Result[];
  }
>();

const samePath = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((name, i) => name === b[i]);

function bodyRows(body: Summed): readonly Result[] {
  return rows(
    named(body.thing.kind, body.thing),
    {
      weight: body.weight,
      volume: body.volume,
      'cog x': body.cog[0],
      'cog y': body.cog[1],
      'cog z': body.cog[2],
      ...boxFigures(body.box, [], body.thing.item),
    },
    body.thing.item.at,
  );
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
    ...plan.names.things
      .filter((thing) => thing.kind === 'pick' && !thing.library)
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
