// Hints at the ends of lines: what a line comes to, complete in 40 characters or fewer, worst first, `?` where it is not known.
import type { Item, Thing } from '../plan/types.ts';
import { type Cause, type Derived, share, unique, write } from '../quantities/index.ts';
import type { Body, Candidate, LegUse, LoadResult, Result, Results } from '../results/index.ts';
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { kindOf, resultOf, worseEnd, worst } from './figures.ts';
import { itemsIn, ownFile } from './items.ts';
import { asDeclared } from './spelling.ts';
import type { Hint, HintSettings } from './types.ts';

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

/** What a hint says: the pieces after the first are left out, last first, where there is no room for them. */
interface Said {
  readonly setting: keyof HintSettings;
  readonly pieces: readonly string[];
  readonly tooltip: string;
  readonly leadsTo: Place | null;
}

const signs = /^[=→?] /;

function drawn({ setting, pieces, tooltip, leadsTo }: Said, { node: { row } }: Item): Hint {
  const at = { row, from: row.text.length, to: row.text.length };
  return {
    at,
    label: fitted(pieces),
    tooltip: `${tooltip}\nThe setting becket.hints.${setting} shows or hides this.`,
    leadsTo,
  };
}

/** As many pieces as fit whole; the first always does, else the sign alone stands and the tooltip says it. */
export function fitted(pieces: readonly string[]): string {
  for (let n = pieces.length; n > 0; n--) {
    const label = pieces.slice(0, n).join(' · ');
    if ([...label].length <= longest) return label;
  }
  return `${signs.exec(pieces[0] ?? '')?.[0] ?? '→ '}see hover`;
}

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
    pieces: [`? ${what} not known`],
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
    pieces: [`= ${text(gross)} gross load`],
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
    pieces: [`= ${worst(weight, units)}`, added],
    tooltip: `Weight of the load ${worst(weight, units)}: ${whereFrom(governing, units)}.`,
    leadsTo: governing.at,
  };
}

const whereFrom = ({ kind, weight, allowance, allowanceFrom }: Candidate, units: 'US' | 'metric'): string =>
  `${kind} ${worst(weight, units)} + ${share(allowance)} (${allowanceFrom})`;

/** Assemblies always, parts where the text does not say the weight by itself. */
function bodyHint(body: Body | undefined, { plan: { units } }: Results): Said | null {
  if (!body) return null;
  const { weight, working, thing } = body;
  const setting = thing.kind === 'assembly' ? 'totals' : 'parts';
  if (working?.shape === 'item' && weight.value === working.each.value) return null;
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
    pieces: [`= ${worst(weight, units)}`, ...each],
    tooltip: `Weight of ${name}: ${worst(weight, units)}. Its working stands in the hover.`,
    leadsTo: null,
  };
}

// ---------------------------------------------------------------- legs and cranes

/** The greatest tension of the leg as a load, how much of its weakest item is used, and its flattest angle. */
function legHint(leg: LegUse | undefined, results: Results): Said | null {
  if (!leg) return null;
  const { units } = results.plan;
  if (leg.broken) return unknown('legs', 'tension', [{ what: 'This leg is broken.', at: leg.item.at }]);
  const things = leg.steps.map(({ thing }) => thing).filter((thing) => thing.kind === 'gear' || thing.kind === 'pick');
  const loads = found(ownOf(leg, things, results), results, 'load');
  const open = loads.find(({ value }) => value.value === null);
  const most = greatest(loads);
  if (open || !most)
    return unknown(
      'legs',
      'tension',
      open?.value.because ?? [{ what: 'Nothing in this leg takes load.', at: leg.item.at }],
    );
  const used = found(things, results, 'capacity used');
  const weakest = used.find(({ value }) => value.value === null) ?? greatest(used);
  const angles = found(things, results, 'angle').filter(({ value }) => value.low !== null);
  const flattest = angles.reduce<Result | undefined>(
    (flat, one) => (flat && (flat.value.low ?? 0) <= (one.value.low ?? 0) ? flat : one),
    undefined,
  );
  const name = weakest?.subject.name ?? '';
  const weakestText =
    weakest && (weakest.value.value === null ? `? % of ${name}` : `${worst(weakest.value, units)} of ${name}`);
  const tension = `${worst(most.value, units)}`;
  const angle = flattest ? [worst(flattest.value, units, 'down')] : [];
  return {
    setting: 'legs',
    pieces: [
      `${weakest?.value.value === null ? '?' : '='} ${tension}`,
      ...(weakestText ? [weakestText] : []),
      ...angle,
    ],
    tooltip: [
      `Greatest load ${tension} in ${most.subject.kind} ${most.subject.name}.`,
      ...(weakest ? [`Capacity used: ${weakestText}, the weakest item.`] : []),
      ...angle.map((text) => `Flattest part ${text} from horizontal.`),
    ].join('\n'),
    leadsTo: weakest?.at ?? null,
  };
}

/** The items that hang in this leg alone, below the hook; what several legs hang from carries them all. */
function ownOf(leg: LegUse, things: readonly Thing[], { gear }: Results): readonly Thing[] {
  const own = things.filter(
    (thing) =>
      !hooks.includes(thing.item.keyword) && gear.find((use) => use.thing === thing)?.legs.every((one) => one === leg),
  );
  return own.length ? own : things;
}

const hooks = ['block', 'hook', 'ball'];

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
    pieces: [`= ${worst(used.value, units)} used`, `${load} of ${capacity}`],
    tooltip: `Capacity used ${worst(used.value, units)}: gross load ${load} over gross capacity ${capacity}.`,
    leadsTo: null,
  };
}
