// Hints at the ends of lines: what a line comes to, complete in 40 characters or fewer, worst first, `?` where it is not known.
import type { Item, Thing } from '../plan/types.ts';
import { type Cause, type Derived, type System, share, unique, write } from '../quantities/index.ts';
import type { Body, Candidate, LegUse, LoadResult, Result, Results } from '../results/index.ts';
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { kindOf, resultOf, worseEnd, worst } from './figures.ts';
import { itemsIn, ownFile } from './items.ts';
import { asDeclared } from './spelling.ts';
import type { Hint, HintSettings } from './types.ts';
import { hookKeywords } from './uses.ts';

/** An editor cuts all that is longer, and a cut number is a hazard. */
export const longest = 40;

/** The hints of those rows, at most one a line. */
export function hints(s: Snapshot, firstRow: number, lastRow: number, wanted: HintSettings): readonly Hint[] {
  const file = ownFile(s);
  if (!file) return [];
  return itemsIn(file, firstRow, lastRow).flatMap((item): readonly Hint[] => {
    const said = hintOf(item, s.results);
    return said && wanted[said.setting] ? [drawn(said, item)] : [];
  });
}

/** What a hint says, from the fullest label to the shortest: the first that fits stands, each is complete in itself. */
interface Said {
  readonly setting: keyof HintSettings;
  readonly labels: readonly string[];
  readonly tooltip: string;
  readonly leadsTo: Place | null;
}

const signs = /^[=→?] /;

function drawn({ setting, labels, tooltip, leadsTo }: Said, { node: { row } }: Item): Hint {
  const at = { row, from: row.text.length, to: row.text.length };
  return {
    at,
    label: fitted(labels),
    tooltip: `${tooltip}\nThe setting becket.hints.${setting} shows or hides this.`,
    leadsTo,
  };
}

/** The fullest label that fits whole; where none does, its sign alone, and the tooltip says it. */
export function fitted(labels: readonly string[]): string {
  const found = labels.find((label) => [...label].length <= longest);
  return found ?? `${signs.exec(labels[0] ?? '')?.[0] ?? '→ '}see hover`;
}

/** Labels with ever fewer of the pieces, the last ones first to go. */
const shorter = (...pieces: readonly string[]): readonly string[] =>
  pieces.map((_, i) => pieces.slice(0, pieces.length - i).join(' · '));

function hintOf(item: Item, results: Results): Said | null {
  switch (item.keyword) {
    case 'plan':
      return item === results.plan.head ? grossHint(results) : null;
    case 'load':
      return loadHint(
        results.loads.find(({ thing }) => thing.item === item),
        results,
      );
    case 'assembly':
    case 'part':
      return bodyHint(results.bodies.get(item), results);
    case 'leg':
      return legHint(
        results.legs.find((leg) => leg.item === item),
        results,
      );
    case 'crane':
      return item.children.some(({ keyword }) => keyword === 'position') ? null : craneHint(item, results);
    case 'position':
      return craneHint(item, results);
    default:
      return null;
  }
}

/** `? weight not known`, with the reasons in the tooltip. */
const unknown = (setting: keyof HintSettings, what: string, because: readonly Cause[]): Said => {
  const reasons = [...new Set(unique(because).map((cause) => cause.what))];
  return {
    setting,
    labels: [`? ${what} not known`],
    tooltip: [`${what} not known.`, ...reasons.slice(0, 5)].join('\n'),
    leadsTo: null,
  };
};

// ---------------------------------------------------------------- weights

function grossHint({ totals: { gross, loadWeight, rigging, deductions }, plan: { units } }: Results): Said {
  if (gross.value === null) return unknown('totals', 'gross load', gross.because);
  const text = (value: Derived) => worst(value, units);
  return {
    setting: 'totals',
    labels: [`= ${text(gross)} gross load`, `= ${text(gross)}`],
    tooltip: `Gross load ${text(gross)}: load weight ${text(loadWeight)}, rigging weight ${text(rigging)}, deductions ${text(deductions)}.`,
    leadsTo: null,
  };
}

function loadHint(load: LoadResult | undefined, { plan: { units } }: Results): Said | null {
  if (!load) return null;
  const { weight, governing } = load;
  if (weight.value === null || !governing) return unknown('totals', 'weight', weight.because);
  const added = `${governing.kind} + ${share(governing.allowance)}`;
  return {
    setting: 'totals',
    labels: shorter(`= ${worst(weight, units)}`, added),
    tooltip: `Weight of the load ${worst(weight, units)}: ${whereFrom(governing, units)}.`,
    leadsTo: governing.at,
  };
}

const whereFrom = ({ kind, weight, allowance, allowanceFrom }: Candidate, units: System): string =>
  `${kind} ${worst(weight, units)} + ${share(allowance)} (${allowanceFrom})`;

/** Assemblies always, parts where the text does not say the weight by itself. */
function bodyHint(body: Body | undefined, { plan: { units } }: Results): Said | null {
  if (!body) return null;
  const { weight, working, thing } = body;
  const setting = thing.kind === 'assembly' ? 'totals' : 'parts';
  const own = working?.shape === 'item' ? working.each : null;
  const written =
    own && (own.value === null ? own.because.every(({ deliberate }) => deliberate) : own.value === weight.value);
  if (written) return null;
  if (weight.value === null) return unknown(setting, 'weight', weight.because);
  const several = working && working.each.value !== null && working.each.value !== weight.value;
  const each = several
    ? [
        `${write(weight.value / working.each.value, 'number', { system: units, round: 'near' })} x ${worst(working.each, units)}`,
      ]
    : [];
  const name = `${thing.kind} ${asDeclared(thing, 'declared')}`;
  return {
    setting,
    labels: shorter(`= ${worst(weight, units)}`, ...each),
    tooltip: `Weight of ${name}: ${worst(weight, units)}. Its working stands in the hover.`,
    leadsTo: null,
  };
}

// ---------------------------------------------------------------- legs and cranes

/** The greatest tension of the leg as a load, how much of its weakest item is used, and its flattest angle. */
function legHint(leg: LegUse | undefined, results: Results): Said | null {
  if (!leg) return null;
  if (leg.broken) return unknown('legs', 'tension', [{ what: 'This leg is broken.', at: leg.item.at }]);
  const things = carriersOf(leg);
  const loads = found(ownOf(leg, things, results), results, 'load');
  const open = loads.find(({ value }) => value.value === null);
  const most = greatest(loads);
  if (open || !most) {
    return unknown(
      'legs',
      'tension',
      open?.value.because ?? [{ what: 'Nothing in this leg takes load.', at: leg.item.at }],
    );
  }
  const used = found(things, results, 'capacity used');
  const weakest = used.find(({ value }) => value.value === null) ?? greatest(used);
  return knownLeg(most, weakest, flattestOf(things, results), results.plan.units);
}

function knownLeg(most: Result, weakest: Result | undefined, flattest: Result | undefined, units: System): Said {
  const open = weakest?.value.value === null;
  const tension = `${open ? '?' : '='} ${worst(most.value, units)}`;
  const angle = flattest ? worst(flattest.value, units, 'down') : null;
  const share = weakest && (open ? '? %' : usedText(weakest, units));
  const named = share && `${share} of ${weakest.subject.name}`;
  const rest = angle === null ? [] : [angle];
  return {
    setting: 'legs',
    labels:
      share && named
        ? [...shorter(tension, named, ...rest).slice(0, rest.length + 1), ...shorter(tension, share, ...rest)]
        : shorter(tension, ...rest),
    tooltip: [
      `Greatest load ${worst(most.value, units)} in ${most.subject.kind} ${most.subject.name}.`,
      ...(named ? [`Capacity used: ${named}, the weakest item.`] : []),
      ...rest.map((text) => `Flattest part ${text} from horizontal.`),
    ].join('\n'),
    leadsTo: weakest?.at ?? null,
  };
}

/** More than all of a capacity is over, whatever rule applies. */
const usedText = ({ value }: Result, units: System): string =>
  `${worst(value, units)}${(value.high ?? value.value ?? 0) > 1 ? ' over' : ''}`;

/** Gear and picks of a leg; of a beam's point the beam. */
function carriersOf({ steps }: LegUse): readonly Thing[] {
  return [...new Set(steps.map(({ thing }) => (thing.kind === 'point' && thing.owner ? thing.owner : thing)))];
}

function flattestOf(things: readonly Thing[], results: Results): Result | undefined {
  const angles = found(things, results, 'angle').filter(({ value }) => value.low !== null);
  return angles.reduce<Result | undefined>(
    (flat, one) => (flat && (flat.value.low ?? 0) <= (one.value.low ?? 0) ? flat : one),
    undefined,
  );
}

/** The items that hang in this leg alone, below the hook; what several legs hang from carries them all. */
function ownOf(leg: LegUse, things: readonly Thing[], { gear }: Results): readonly Thing[] {
  const own = things.filter(
    (thing) =>
      !hookKeywords.includes(thing.item.keyword) &&
      gear.find((use) => use.thing === thing)?.legs.every((one) => one === leg),
  );
  return own.length ? own : things;
}

const found = (things: readonly Thing[], results: Results, result: string): readonly Result[] =>
  things.flatMap((thing) => resultOf(results, thing, result) ?? []);

const greatest = (list: readonly Result[]): Result | undefined =>
  list.reduce<Result | undefined>(
    (most, one) => (most && (most.value.high ?? 0) >= (one.value.high ?? 0) ? most : one),
    undefined,
  );

function craneHint(item: Item, results: Results): Said | null {
  const [thing] = results.plan.names.of(item);
  const used = thing && resultOf(results, thing, 'capacity used');
  if (!thing || !used) return null;
  const { units } = results.plan;
  if (used.value.value === null) return unknown('crane', 'capacity used', used.value.because);
  const text = (result: string) => {
    const one = resultOf(results, thing, result);
    return one && one.value.value !== null ? worst(one.value, units, worseEnd(kindOf(thing), result)) : '?';
  };
  const [load, capacity] = [text('gross load'), text('gross capacity')];
  return {
    setting: 'crane',
    labels: shorter(`= ${usedText(used, units)} used`, `${load} of ${capacity}`),
    tooltip: `Capacity used ${usedText(used, units)}: gross load ${load} over gross capacity ${capacity}.`,
    leadsTo: null,
  };
}
