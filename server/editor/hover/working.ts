// How a figure came about, line by line: its formula with the values put in, what it rests on, and the cautions that belong to it.
import { cautions } from '../../checks/index.ts';
import { type Cause, type Derived, pretty, type System, unique, writeIn } from '../../quantities/index.ts';
import type { Place } from '../../syntax/types.ts';
import { figure } from '../figures.ts';
import type { Line } from './page.ts';

const mostSteps = 6;
/** A formula with it turns SI force into mass: in other units its printed values would not work out. */
const standardGravity = '9.80665';

/** `weight = volume × density = 0.02 m³ × 7,850 kg/m³`, then the same for what goes into it; nothing for a figure taken as it stands. */
export function workingLines(label: string, derived: Derived, system: System): readonly Line[] {
  const lines: Line[] = [];
  const seen = new Set<Derived>();
  const follow = (name: string, of: Derived): void => {
    if (seen.has(of) || lines.length >= mostSteps) return;
    seen.add(of);
    const filled = of.value === null ? '' : filledIn(of, system);
    if (filled) lines.push({ says: `${name} = ${filled}` });
    for (const input of of.inputs) follow(input.label, input.value);
  };
  follow(label, derived);
  return lines;
}

/** The formula in words and with the values put in; '' where it has none, or its values stand nowhere in it. */
function filledIn({ formula, inputs }: Derived, system: System): string {
  const values = new Map(inputs.map(({ label, value }) => [label, putIn(formula, label, value, system)]));
  if (!formula || !values.size || formula.includes(standardGravity)) return '';
  const labels = [...values.keys()]
    .sort((a, b) => b.length - a.length)
    .map((label) => label.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const shown = pretty(formula);
  const filled = shown.replace(
    new RegExp(`(?<![\\w])(?:${labels.join('|')})(?![\\w])`, 'g'),
    (label) => values.get(label) ?? label,
  );
  return filled === shown ? '' : `${shown} = ${filled}`;
}

function putIn(formula: string, label: string, derived: Derived, system: System): string {
  const { value, unit } = derived;
  return value === null
    ? figure(derived, system, 'either')
    : writeIn(formula, label, value, unit, {
        system,
        round: 'near',
        plain: false,
        ...(unit === 'm3' && { digits: 4 }),
      });
}

const mostCauses = 4;

/** Why a figure is not known, with the places to put it right; nothing for one that is known. */
export function unknownLines(causes: readonly Cause[]): readonly Line[] {
  const all = unique(causes);
  return all.slice(0, mostCauses).map(({ what, at }, i): Line => {
    const place = placeIn(at);
    const says = i === 0 ? cautions.notKnown(what) : `Also not known: ${what}`;
    const more = i === mostCauses - 1 && all.length > mostCauses ? ` And ${all.length - mostCauses} more.` : '';
    return { says: says + more, at: place };
  });
}

/** The assumptions a figure rests on, those of what goes into it among them. */
export function assumptionsOf(derived: Derived): readonly string[] {
  const found = new Set<string>();
  const seen = new Set<Derived>();
  const follow = (of: Derived): void => {
    if (seen.has(of)) return;
    seen.add(of);
    for (const text of of.assumptions) found.add(text);
    for (const { value } of of.inputs) follow(value);
  };
  follow(derived);
  return [...found];
}

const mostAssumed = 4;

/** A caution for each assumption; beyond a few they are counted, and stand on the sheet. */
export function assumedLines(texts: readonly string[]): readonly Line[] {
  const all = [...new Set(texts)];
  const more =
    all.length > mostAssumed ? [{ says: `${all.length - mostAssumed} more assumptions stand on the sheet.` }] : [];
  return [...all.slice(0, mostAssumed).map((text) => ({ says: cautions.assumed(text) })), ...more];
}

/** The place a cause or figure carries without looking at it. */
export const placeIn = (at: unknown): Place | null =>
  typeof at === 'object' && at !== null && 'row' in at && 'from' in at ? (at as Place) : null;
