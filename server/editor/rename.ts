// Renaming over every file: the live text of all of them, quotes where the new name needs them, and a sentence where it cannot be done.
import { fold, isListed, rangeNames } from '../plan/index.ts';
import type { TableKind, Thing } from '../plan/types.ts';
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { sameThing, usesOfThings } from './definition.ts';
import { inQuotes, isBare, spelled, unspellable } from './spelling.ts';
import type { Renaming } from './types.ts';
import { type Use, useAt } from './uses.ts';

/** What would be renamed at an offset, with the name as the user edits it; a sentence where it cannot be; null where no name stands. */
export function prepareRename(
  s: Snapshot,
  row: number,
  offset: number,
): { readonly at: Place; readonly name: string } | { readonly refused: string } | null {
  const use = useAt(s, row, offset);
  if (!use) return null;
  const refused = refusal(use);
  return refused === null ? { at: use.at, name: shown(use) } : { refused };
}

const shown = ({ name, until }: Use): string => (until ? `${name}..${until}` : name);

/**
 * The edits that give what is named at an offset another name, in all files of the plan and of the plans given: those that use this
 * file. A range declared in one is renamed as a whole, to a range as long.
 */
export function rename(
  s: Snapshot,
  row: number,
  offset: number,
  name: string,
  users: readonly Snapshot[] = [],
): Renaming {
  const use = useAt(s, row, offset);
  if (!use) return { refused: 'There is no name here.' };
  const refused = refusal(use);
  if (refused !== null) return { refused };
  const names = newNames(use, name);
  if (typeof names === 'string') return { refused: names };
  const plans = [s, ...users];
  const barred = use.things
    .map((thing, i) => whyNot(thing, names[i] as string, use.things, plans))
    .find((why) => why !== null);
  if (barred) return { refused: barred };
  const renamed = new Map(use.things.map((thing, i) => [thing, names[i] as string]));
  const edits = usesOfThings(use.things, plans).map((one) => ({ at: one.at, text: written(one, renamed) }));
  return edits.some(({ text }) => text === null)
    ? {
        refused: `${use.name} stands in a range that another name would break; write the names of that range one by one first.`,
      }
    : { edits: edits as readonly { at: Place; text: string }[] };
}

/** Why what a use names cannot be renamed from here; null where it can. */
function refusal({ things, name, until, declares }: Use): string | null {
  const [thing] = things;
  if (!thing) return `Nothing is called ${name}, so there is nothing to rename.`;
  if (isListed(thing.item)) return `${thing.name} stands in a list; rename it in its file.`;
  if (things.some(({ clash }) => clash)) return `${name} is stated twice; which one is meant is not known.`;
  if (thing.item.names.length > 1 && !(declares && until))
    return `${thing.name} is declared in the range ${thing.item.names[0]}..${thing.item.names.at(-1)}; rename the range where it is declared, or write its items one by one first.`;
  if (until && !declares) return `${name}..${until} is a range; rename each of its names by itself.`;
  if (things.length > 1 && !until)
    return `${name} stands for ${things.length} things; which one is meant is not known.`;
  return null;
}

/** The new name of each thing: one, or those of a range as long; a sentence where it does not fit. */
function newNames({ things, until, name }: Use, wanted: string): readonly string[] | string {
  const given = wanted.trim().replace(/^"(.*)"$/, (_, text: string) => text.replaceAll('""', '"'));
  if (!until) return [given];
  const [, first, last] = /^(.+?)\.\.(.+)$/.exec(given) ?? [];
  const names =
    first && last
      ? rangeNames(first, last)
      : `${name}..${until} stands for ${things.length} items; the new name is a range as long, such as T1..T${things.length}`;
  if (typeof names === 'string') return `${names.charAt(0).toUpperCase()}${names.slice(1)}.`;
  return names.length === things.length
    ? names
    : `The range declares ${things.length} items, ${given} has ${names.length}.`;
}

/** Why a thing cannot have a name; null where it can. */
function whyNot(thing: Thing, name: string, renamed: readonly Thing[], plans: readonly Snapshot[]): string | null {
  const spelling = unspellable(name, thing.kind);
  if (spelling) return spelling;
  for (const { plan } of plans) {
    const here = plan.names.things.find((one) => sameThing(one, thing));
    const taken =
      here &&
      plan.names.things.find(
        (one) => one.key === fold(name) && meets(one, here) && !renamed.some((other) => sameThing(one, other)),
      );
    if (taken)
      return `${spelled(name, 'declared')} is taken: ${taken.kind === 'gear' ? taken.item.keyword : taken.kind} ${spelled(taken.name, 'declared')} has it${taken.item.file === thing.item.file ? '' : ` in ${taken.item.file.slice(taken.item.file.lastIndexOf('/') + 1)}`}.`;
  }
  return null;
}

/** Kinds that share one space of names in paths. */
const inPaths: readonly TableKind[] = ['gear', 'pick', 'point', 'bridle'];

/** Whether two things may not have one name. */
function meets(a: Thing, b: Thing): boolean {
  const inLoad = (thing: Thing) => ['part', 'assembly', 'pick'].includes(thing.kind);
  if (inPaths.includes(a.kind) && inPaths.includes(b.kind)) {
    if (a.kind === 'pick' && b.kind === 'pick') return a.load === b.load;
    return a.kind === 'point' && b.kind === 'point' ? a.owner === b.owner : true;
  }
  if (inLoad(a) && inLoad(b)) return a.kind !== 'pick' && b.kind !== 'pick' && a.load === b.load;
  return a.kind === b.kind && (ofOwner.includes(a.kind) ? a.owner === b.owner : true);
}
const ofOwner: readonly TableKind[] = ['position', 'deduction', 'support', 'weighing', 'category'];

/** A use with its new name; null where it is a range that would no longer hold the same things. */
function written(use: Use, renamed: ReadonlyMap<Thing, string>): string | null {
  const nameOf = (thing: Thing | undefined) => [...renamed].find(([one]) => thing && sameThing(one, thing))?.[1];
  if (!use.until) return quotedAlike(use, nameOf(use.things[0]) ?? use.name);
  const names = use.things.map((thing) => nameOf(thing) ?? thing.name);
  const [first, last] = [names[0] as string, names.at(-1) as string];
  const range = rangeNames(first, last);
  const same =
    typeof range !== 'string' && range.length === names.length && range.every((name, i) => name === names[i]);
  return same ? `${spelled(first, use.where)}..${spelled(last, use.where)}` : null;
}

/** Quotes where the name needs them; those the author wrote without need stay. Where a name may be missing, a keyword needs them. */
function quotedAlike({ at, name, where: written, things }: Use, to: string): string {
  const where = written === 'declared' && things[0]?.item.row.names === 'optional' ? 'compared' : written;
  const quotes = /^["“”„]/.test(at.row.text.slice(at.from, at.to));
  return quotes && isBare(name, where) && where !== 'text' ? inQuotes(to) : spelled(to, where);
}
