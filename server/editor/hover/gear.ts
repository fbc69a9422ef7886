// Hover on gear, picks, legs, cranes and their positions: what each takes, what it may carry, and how much of that is used.
import { constructions, designFactor } from '../../catalog/index.ts';
import { textOf } from '../../plan/index.ts';
import type { BoundPlan, Thing } from '../../plan/types.ts';
import { type Derived, write } from '../../quantities/index.ts';
import type { GearUse, LegUse, Result, Results } from '../../results/index.ts';
import { figure, kindOf, resultOf, resultsFor, worseEnd } from '../figures.ts';
import { asDeclared, spelled } from '../spelling.ts';
import { type Line, type Note, note } from './page.ts';
import { assumedLines, assumptionsOf, unknownLines, workingLines } from './working.ts';

/** Hover on a piece of gear, in use or lying ready. */
export function gearNote(use: GearUse, results: Results): Note {
  const { plan } = results;
  const system = plan.units;
  const name = `${use.kind} ${asDeclared(use.thing, 'declared')}`;
  const used = use.legs.length ? resultOf(results, use.thing, 'capacity used') : undefined;
  const head = used
    ? `${name}: ${usedText(used, plan)}`
    : `${name}: ${figure(use.weight, system)}${use.hangs ? '' : ', hangs nowhere, not counted'}`;
  const many = use.count > 1 ? ` (${use.count} of ${figure(use.each, system)})` : '';
  return note(head, {
    working: [
      ...listed(results, use.thing, ['tension', 'load', 'elastic tension', 'angle', 'compression', 'tilt']),
      { says: `capacity ${figure(use.capacity, system, 'down')} on one straight vertical leg` },
      { says: `weight ${figure(use.weight, system)}${many}${use.hangs ? ', counted under the hook' : ''}` },
      ...(used ? workingLines('capacity used', used.value, system) : []),
      ...use.legs
        .slice(0, 3)
        .map(({ item }): Line => ({ says: `in leg ${item.node.row.text.trim().replace(/^leg /, '')}`, at: item.at })),
    ],
    rests: [
      { says: `Capacity and weight: ${use.capacity.value === null ? use.each.source : use.capacity.source}` },
      ...(used ? factorLines(used.value) : []),
      ...designLines(use, plan),
      ...unknownLines([...(used?.value.because ?? []), ...use.weight.because]),
      ...assumedLines([
        ...assumptionsOf(use.weight),
        ...assumptionsOf(use.capacity),
        ...(used ? assumptionsOf(used.value) : []),
      ]),
    ],
  });
}

/** Where each factor on a capacity comes from. */
function factorLines({ inputs }: Derived): readonly Line[] {
  const capacity = inputs.find(({ label }) => label === 'capacity')?.value;
  const factors = (capacity?.inputs ?? []).filter(({ value }) => value.unit === '1' && value.source);
  return factors.map(({ label, value }) => ({ says: `${label}: ${value.source}` }));
}

/** What its tag's rating keeps in hand by the standards of its kind: for information, nothing is reckoned with it. */
function designLines(use: GearUse, plan: BoundPlan): readonly Line[] {
  const of = use.kind === 'sling' ? constructions.find((word) => use.thing.item.clauses.has(word)) : use.kind;
  const design = of ? designFactor(of) : null;
  const text = design && write(design.factor, 'number', { system: plan.units, round: 'near' });
  return design ? [{ says: `Usual design factor ${text}, for information only (${design.source})` }] : [];
}

/** Hover on a pick, a crane or a position: its results one by one, the share of the capacity first. */
export function subjectNote(thing: Thing, results: Results): Note | null {
  const all = resultsFor(results, thing);
  if (!all.length) return null;
  const { plan } = results;
  const name = `${kindOf(thing)} ${asDeclared(thing, 'declared')}`;
  const used = resultOf(results, thing, 'capacity used');
  const others = [...new Set(all.map(({ result }) => result))].filter((result) => result !== 'capacity used');
  return note(used ? `${name}: ${usedText(used, plan)}` : name, {
    working: [
      ...listed(results, thing, others),
      ...(used ? workingLines('capacity used', used.value, plan.units) : []),
    ],
    rests: [
      ...unknownLines((used ?? (all[0] as Result)).value.because),
      ...assumedLines(used ? assumptionsOf(used.value) : []),
    ],
  });
}

/** Hover on a leg: its worst item first, then every item from the hook down. */
export function legNote(leg: LegUse, results: Results): Note {
  const { plan } = results;
  const items = [
    ...new Set(leg.steps.map(({ thing }) => (thing.kind === 'point' && thing.owner ? thing.owner : thing))),
  ].filter((thing) => resultOf(results, thing, 'capacity used'));
  const used = items.map((thing) => ({ thing, result: resultOf(results, thing, 'capacity used') as Result }));
  const open = used.find(({ result }) => result.value.value === null);
  const weakest =
    open ??
    used.reduce<(typeof used)[number] | undefined>(
      (bad, one) => (bad && (bad.result.value.high ?? 0) >= (one.result.value.high ?? 0) ? bad : one),
      undefined,
    );
  const hitch = textOf(leg.item, 'hitch');
  const head =
    leg.broken || !weakest
      ? 'leg: not known'
      : `leg: ${usedText(weakest.result, plan)}${open ? '' : ` in ${asDeclared(weakest.thing, 'declared')}, its weakest item`}`;
  return note(head, {
    working: [
      ...(hitch ? [{ says: `hitch ${hitch}` }] : []),
      ...items.map((thing): Line => ({ says: itemLine(thing, results), at: thing.item.nameAt })),
    ],
    rests: unknownLines(weakest?.result.value.because ?? [{ what: 'This leg is broken.', at: leg.item.at }]),
  });
}

function itemLine(thing: Thing, results: Results): string {
  const { plan } = results;
  const text = (result: string, words: (figure: string) => string): readonly string[] => {
    const found = resultOf(results, thing, result);
    return found && found.value.value !== null
      ? [words(figure(found.value, plan.units, worseEnd(kindOf(thing), result)))]
      : [];
  };
  const pull = thing.kind === 'pick' ? 'pull' : 'tension';
  const said = [
    ...text(pull, (figure) => figure),
    ...text('load', (figure) => `as load ${figure}`),
    ...text('angle', (figure) => `${figure} from horizontal`),
    ...text('capacity used', (figure) => `${figure} of capacity`),
  ];
  return `${kindOf(thing)} ${asDeclared(thing, 'declared')}: ${said.length ? said.join(', ') : 'not known'}`;
}

/** Known results one a line; those that are open are left to the caution below. */
export function listed(results: Results, thing: Thing, names: readonly string[]): readonly Line[] {
  return names.flatMap((name): readonly Line[] => {
    const found = resultOf(results, thing, name);
    if (!found || found.value.value === null) return [];
    return [
      {
        says: `${name} ${figure(found.value, results.plan.units, worseEnd(kindOf(thing), name))}${found.stage ? `, worst in stage ${spelled(found.stage, 'declared')}` : ''}`,
      },
    ];
  });
}

function usedText({ value }: Result, { units }: BoundPlan): string {
  if (value.value === null) return 'capacity used not known';
  return `${figure(value, units)} of capacity used${(value.high ?? value.value) > 1 ? ', over' : ''}`;
}
