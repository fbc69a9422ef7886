// Hover on what has a result of its own: by its name wherever it stands, or by the keyword of a statement that has no name.
import { cautions } from '../../checks/index.ts';
import type { Item, Thing } from '../../plan/types.ts';
import { type Expectation, type Results, subjectText } from '../../results/index.ts';
import type { Snapshot } from '../../workspace/types.ts';
import { figure, worseEnd } from '../figures.ts';
import { commentAbove, itemAt, ownFile, spotOf } from '../items.ts';
import { asDeclared } from '../spelling.ts';
import type { Hover } from '../types.ts';
import { type Use, useAt } from '../uses.ts';
import { bodyNote, candidateNote, loadNote } from './bodies.ts';
import { gearNote, legNote, subjectNote } from './gear.ts';
import { hoverOf, type Line, type Note, note } from './page.ts';
import { assumedLines, assumptionsOf, unknownLines, workingLines } from './working.ts';

export function hoverResult(s: Snapshot, row: number, offset: number): Hover | null {
  const use = useAt(s, row, offset);
  if (use) return named(s, use);
  const file = ownFile(s);
  const item = file && itemAt(file, row);
  if (!item || item.node.row !== s.tree.rows[row]) return null;
  const within = offset >= item.at.from && offset <= item.at.to;
  const said = statementNote(item, s.results, within, offset);
  return said && hoverOf(s.plan, said.at ?? item.at, said.note);
}

function named(s: Snapshot, use: Use): Hover | null {
  const [thing, second] = use.things;
  if (!thing) return null;
  const found = second ? rangeNote(use, s.results) : thingNote(thing, s.results);
  return found && hoverOf(s.plan, use.at, { ...found, about: second ? [] : aboutThing(s, thing, use) });
}

/** Everything worked out of one thing; null where nothing is. */
export function thingNote(thing: Thing, results: Results): Note | null {
  const load = results.loads.find((one) => one.thing === thing);
  if (load) return loadNote(load, results);
  const body = thing.kind === 'part' || thing.kind === 'assembly' ? results.bodies.get(thing.item) : undefined;
  if (body?.thing === thing) return bodyNote(body, results);
  const gear = thing.kind === 'gear' ? results.gear.find((one) => one.thing === thing) : undefined;
  if (gear) return gearNote(gear, results);
  const weighing = thing.kind === 'weighing' ? candidateOf(thing.item, results) : null;
  return weighing ?? (thing.kind === 'gear' ? null : subjectNote(thing, results));
}

/** The first line of each thing of a range. */
function rangeNote({ things, name, until }: Use, results: Results): Note | null {
  const notes = things.flatMap((thing): readonly Line[] => {
    const found = thingNote(thing, results);
    return found ? [{ says: found.head, at: thing.item.nameAt }] : [];
  });
  return notes.length
    ? note(until ? `${name}..${until}: ${things.length} items` : `${name} stands for ${things.length} things here`, {
        working: notes,
      })
    : null;
}

/** The comment above its declaration, and where that stands if it is elsewhere. */
export function aboutThing(s: Snapshot, { item }: Thing, use: Use): readonly Line[] {
  const spot = spotOf(s.plan, item.nameAt);
  const comment = spot ? commentAbove(spot.tree, spot.row) : [];
  return [...comment.map((says) => ({ says })), ...(use.declares ? [] : [{ says: 'declared', at: item.nameAt }])];
}

function statementNote(
  item: Item,
  results: Results,
  within: boolean,
  offset: number,
): { readonly note: Note; readonly at?: Hover['at'] } | null {
  if (item.keyword === 'expect') {
    const found = results.expects.find((one) => one.item === item);
    const words = item.value && offset >= item.value.at.from && offset <= item.value.at.to;
    return found && (within || words) && !inFigure(item, offset)
      ? { note: expectNote(found, results), at: words ? found.at : item.at }
      : null;
  }
  if (!within) return null;
  const made = keywordNote(item, results);
  return made && { note: made };
}

function keywordNote(item: Item, results: Results): Note | null {
  switch (item.keyword) {
    case 'leg': {
      const leg = results.legs.find((one) => one.item === item);
      return leg ? legNote(leg, results) : null;
    }
    case 'stated':
    case 'weighed':
      return candidateOf(item, results);
    case 'plan':
      return item === results.plan.head ? grossNote(results) : null;
    case 'gear':
    case 'rig':
      return results.plan.head && item.file === results.plan.file ? riggingNote(results) : null;
    default:
      return null;
  }
}

function candidateOf(item: Item, results: Results): Note | null {
  for (const load of results.loads) {
    const found = load.candidates.find(({ kind, at }) => kind !== 'calculated' && at === item.at);
    if (found) return candidateNote(found, load, results);
  }
  return null;
}

/** Numbers of an `expect` line are read back by themselves. */
const inFigure = ({ value, node }: Item, offset: number): boolean => {
  const compare = value?.value?.kind === 'compare' ? value.value.text : null;
  const at = compare?.subjectSpan.to ?? node.row.text.length;
  return offset > at && /[\d.,%]/.test(node.row.text.charAt(offset) || node.row.text.charAt(offset - 1));
};

function expectNote({ text, state, worst }: Expectation, results: Results): Note {
  const system = results.plan.units;
  const value = worst && figure(worst.value, system, worseEnd(worst.subject.kind, worst.result));
  return note(`${state}: ${text}`, {
    working: worst
      ? [
          {
            says: `${worst.subject.kind === 'plan' ? '' : `${subjectText(worst)} `}${worst.result}: ${value}`,
            at: worst.at,
          },
          ...(worst.stage ? [{ says: `worst in stage ${worst.stage}` }] : []),
        ]
      : [],
    rests: [
      ...unknownLines(
        worst?.value.because ?? (state === 'open' ? [{ what: 'What it speaks of is not found.', at: null }] : []),
      ),
      ...assumedLines(worst ? assumptionsOf(worst.value) : []),
    ],
  });
}

function grossNote({ totals, plan, notJudged }: Results): Note {
  const text = (value: typeof totals.gross) => figure(value, plan.units);
  return note(`gross load: ${text(totals.gross)}`, {
    working: [
      { says: `load weight ${text(totals.loadWeight)}, with what is added for doubt` },
      { says: `rigging weight ${text(totals.rigging)}` },
      { says: `deductions ${text(totals.deductions)}` },
    ],
    rests: [
      ...unknownLines(totals.gross.because),
      ...(notJudged.length ? [{ says: cautions.notJudged(notJudged) }] : []),
      ...assumedLines(assumptionsOf(totals.gross)),
    ],
  });
}

function riggingNote({ totals: { rigging }, gear, plan }: Results): Note {
  const heaviest = gear
    .filter(({ hangs }) => hangs)
    .sort((a, b) => (b.weight.value ?? Number.POSITIVE_INFINITY) - (a.weight.value ?? Number.POSITIVE_INFINITY));
  return note(`rigging weight: ${figure(rigging, plan.units)}`, {
    working: [
      ...heaviest.map(
        (use): Line => ({
          says: `${use.kind} ${asDeclared(use.thing, 'declared')} ${figure(use.weight, plan.units)}`,
          at: use.thing.item.nameAt,
        }),
      ),
      ...workingLines('rigging weight', rigging, plan.units),
    ],
    rests: unknownLines(rigging.because),
  });
}
