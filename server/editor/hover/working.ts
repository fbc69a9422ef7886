// How a figure came about, line by line: its formula with the values put in, what it rests on, and the cautions that belong to it.
import { cautions } from '../../checks/index.ts';
import { type Cause, type Derived, filledIn, type System, spaced, unique } from '../../quantities/index.ts';
import type { Place } from '../../syntax/types.ts';
import type { Line } from './page.ts';

const mostSteps = 6;
/** A formula with it turns force into mass: the figure itself stands beside it in either. */
const standardGravity = '9.80665';

/** `weight = volume × density = 0.02 m³ × 7,850 kg/m³`, then the same for what goes into it; nothing for a figure taken as it stands. */
export function workingLines(label: string, derived: Derived, system: System): readonly Line[] {
  const lines: Line[] = [];
  const seen = new Set<Derived>();
  const follow = (name: string, of: Derived): void => {
    if (seen.has(of) || lines.length >= mostSteps) return;
    seen.add(of);
    const says = of.value === null ? '' : filled(of, system);
    if (says) lines.push({ says: `${spaced(name)} = ${says}` });
    for (const input of of.inputs) follow(input.label, input.value);
  };
  follow(label, derived);
  return lines;
}

/** The formula in words and with its figures; '' where it has none. */
function filled(derived: Derived, system: System): string {
  const { formula, inputs } = derived;
  if (!formula || !inputs.length || formula.includes(standardGravity)) return '';
  return filledIn(derived, () => ({ system, round: 'near' }));
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
