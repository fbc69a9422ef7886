// Ways to hang a load level, as changes of the plan's text.
import type { Thing } from '../plan/types.ts';
import { write } from '../quantities/index.ts';
import { type Change, type Levelling, levellings } from '../results/hang/levelling.ts';
import { addClause } from './edits.ts';
import { figures } from './figures.ts';
import type { Asked, Edit, Fix } from './types.ts';
import { list, named } from './wording.ts';

/** One fix for each way; a way that one line for several items cannot say is left out. */
export function levelFixes(asked: Asked, load: Thing): readonly Fix[] {
  return levellings(asked.results, load).flatMap((way) => {
    const edits = editsOf(way, asked);
    return edits ? [{ title: titleOf(way, load, asked), preferred: false, edits, cursor: null }] : [];
  });
}

function titleOf({ changes, tilt }: Levelling, load: Thing, { system }: Asked): string {
  const what = list(
    changes.map((change) =>
      change.kind === 'exchange'
        ? `${named(change.by.name)} for ${named(change.thing.name)}`
        : `${named(change.thing.name)} ${change.kind} ${lengthText(change.to, system)}`,
    ),
  );
  return `Level ${named(load.name)}: ${what} (then ${figures(system).any('rad', tilt, 'up')} out of level)`;
}

function editsOf({ changes }: Levelling, asked: Asked): readonly Edit[] | null {
  const edits: Edit[] = [];
  for (const change of changes) {
    const made = change.kind === 'exchange' ? exchanged(change, asked) : amended(change, changes, asked);
    if (!made) return null;
    edits.push(...made);
  }
  return edits.filter((edit, i) => edits.findIndex((other) => same(edit, other)) === i);
}

const same = (a: Edit, b: Edit): boolean =>
  a === b ||
  (a.kind === 'replace' &&
    b.kind === 'replace' &&
    a.at.row === b.at.row &&
    a.at.from === b.at.from &&
    a.at.to === b.at.to &&
    a.text === b.text);

/** The other sling's name in every leg that has this one; what it replaces is kept as spare. */
function exchanged({ thing, by }: Extract<Change, { kind: 'exchange' }>, asked: Asked): readonly Edit[] {
  const name = /^[A-Za-z][A-Za-z0-9_-]*$/.test(by.name) ? by.name : `"${by.name.replace(/"/g, '""')}"`;
  const steps = asked.results.legs.flatMap((leg) =>
    leg.steps.filter((step) => step.thing === thing).map((step) => step.at),
  );
  const spare = by.item.clauses.get('spare')?.[0];
  const back =
    !thing.fromLibrary && thing.item.names.length === 1 && !thing.item.clauses.has('spare')
      ? addClause(asked, thing.item.nameAt, 'spare', '').edits
      : [];
  return [
    ...steps.map((at): Edit => ({ kind: 'replace', at, text: name })),
    ...back,
    ...(spare && by.item.names.length === 1 ? unspared(spare.at) : []),
  ];
}

/** Takes `spare` out of its line, with the comma before it. */
function unspared(at: Extract<Edit, { kind: 'replace' }>['at']): readonly Edit[] {
  const before = at.row.text.slice(0, at.from);
  const from = before.length - (/[,:]?\s*$/.exec(before)?.[0].length ?? 0);
  return from > 0 && before.trim() ? [{ kind: 'replace', at: { ...at, from }, text: '' }] : [];
}

/** The clause written anew; a line that stands for several items says one figure for all of them. */
function amended(
  { kind, thing, to }: Extract<Change, { kind: 'set' | 'length' }>,
  changes: readonly Change[],
  asked: Asked,
): readonly Edit[] | null {
  const { item } = thing;
  const alike = changes.filter((one) => one.kind === kind && one.thing.item === item && Math.abs(one.to - to) < 1e-9);
  if (alike.length < item.names.length) return null;
  const text = lengthText(to, asked.system);
  const own = item.clauses.get(kind)?.[0];
  return own
    ? [{ kind: 'replace', at: own.valueAt, text }]
    : addClause(asked, item.nameAt, `${kind} ${text}`, '').edits;
}

/** Whole millimetres, or quarters of an inch. */
const lengthText = (metres: number, system: Asked['system']): string =>
  write(metres, 'm', { system, unit: system === 'US' ? 'in' : 'mm', digits: 9, round: 'near' });
