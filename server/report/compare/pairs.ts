// Which statement of the old plan is which of the new one: by kind and name; then what was reworded, renamed or moved.
import { fold, namesOf } from '../../plan/index.ts';
import type { BoundPlan } from '../../plan/types.ts';
import type { Spell } from '../meaning.ts';
import { type Left, strike, takeEqual } from './equal.ts';
import { type Line, linesOf, printOfLine, saysOf, withUnder } from './lines.ts';

export interface Pair {
  readonly old: Line;
  readonly now: Line;
}

export interface Pairing {
  readonly pairs: readonly Pair[];
  /** Lines without another half; what stands under one is not listed by itself. */
  readonly gone: readonly Line[];
  readonly come: readonly Line[];
  /** What a name of the old plan is in the new one, in the form that equal names share. */
  readonly spell: Spell;
  /** The other half of each line that has one, both ways. */
  readonly partner: ReadonlyMap<Line, Line>;
}

/** In two rounds: names that the first one finds changed count as the same in the second. */
export function pairUp(old: BoundPlan, now: BoundPlan): Pairing {
  const [before, after] = [linesOf(old), linesOf(now)];
  const spell = spelling(before, round(before, after, fold).pairs);
  return { ...round(before, after, spell), spell };
}

/** A name that changed for all that bore it; one that still stands for something else is left as it is. */
function spelling(before: readonly Line[], pairs: readonly Pair[]): Spell {
  const found = new Map<string, Set<string>>();
  const add = (from: string, to: string) =>
    found.set(fold(from), (found.get(fold(from)) ?? new Set<string>()).add(fold(to)));
  const paired = new Set(pairs.map((pair) => pair.old));
  for (const { old, now } of pairs) if (old.name) add(old.name, now.name);
  for (const line of before.flatMap(withUnder)) if (line.name && !paired.has(line)) add(line.name, line.name);
  return (name) => {
    const names = [...(found.get(fold(name)) ?? [])];
    return names.length === 1 && names[0] !== undefined ? names[0] : fold(name);
  };
}

function round(before: readonly Line[], after: readonly Line[], spell: Spell): Omit<Pairing, 'spell'> {
  const stayed = match(before, after, spell);
  const moved = movedAmong(stayed.gone, stayed.come, spell);
  const pairs = [...stayed.pairs, ...moved.pairs];
  const partner = new Map(pairs.flatMap(({ old, now }) => [[old, now] as const, [now, old] as const]));
  const alone = (line: Line) => !partner.has(line);
  return {
    pairs,
    gone: [...stayed.gone, ...moved.gone].filter(alone),
    come: [...stayed.come, ...moved.come].filter(alone),
    partner,
  };
}

type Matched = Pick<Pairing, 'pairs' | 'gone' | 'come'>;

/** Lines that stand under one and the same thing, and all below them; the surest ways first. */
function match(before: readonly Line[], after: readonly Line[], spell: Spell): Matched {
  const left: Left<Line> = { old: before, now: after };
  const found = [
    ...take(left, spell, ({ name, item }, of) => (name ? [item.keyword, of(name)] : null)),
    ...take(left, spell, ({ name, item }) => (item.row.once && !name ? [item.keyword] : null)),
    ...take(left, spell, (line, of) => (line.name ? null : [printOfLine(line, of)])),
    ...alike(left, spell),
    ...take(left, spell, ({ name }, of) => (name ? [of(name)] : null), 'only one'), // an item of another kind now
    ...take(left, spell, (line, of) => (line.name ? [printOfLine(line, of)] : null), 'only one'), // of another name
  ];
  const below = found.map(({ old, now }) => match(old.under, now.under, spell));
  return joined([{ pairs: found, gone: left.old, come: left.now }, ...below]);
}

const joined = (all: readonly Matched[]): Matched => ({
  pairs: all.flatMap(({ pairs }) => pairs),
  gone: all.flatMap(({ gone }) => gone),
  come: all.flatMap(({ come }) => come),
});

/** Lines of equal keys; the names of old ones are spelled as they are now. */
const take = (
  left: Left<Line>,
  spell: Spell,
  keyOf: (line: Line, spell: Spell) => readonly string[] | null,
  which: 'all' | 'only one' = 'all',
): readonly Pair[] =>
  takeEqual(
    left,
    (line, side) => {
      const key = keyOf(line, side === 'old' ? spell : fold);
      return key && JSON.stringify(key);
    },
    which,
  ).map(([old, now]) => ({ old, now }));

/** Lines without a name that say in part the same, most alike first; the last one of its kind on each side is the same one. */
function alike(left: Left<Line>, spell: Spell): readonly Pair[] {
  const nameless = (lines: readonly Line[], of: Spell) =>
    lines.filter(({ name }) => !name).map((line) => ({ line, keyword: line.item.keyword, says: traits(line, of) }));
  const [old, now] = [nameless(left.old, spell), nameless(left.now, fold)];
  const scored = old.flatMap((a) =>
    now
      .filter(({ keyword }) => keyword === a.keyword)
      .map((b) => ({ old: a.line, now: b.line, score: [...a.says].filter((trait) => b.says.has(trait)).length })),
  );
  const pairs: Pair[] = [];
  const used = new Set<Line>();
  const pick = (list: readonly Pair[]) => {
    for (const pair of list) {
      if (used.has(pair.old) || used.has(pair.now)) continue;
      used.add(pair.old).add(pair.now);
      pairs.push({ old: pair.old, now: pair.now });
    }
  };
  pick(scored.filter(({ score }) => score > 0).sort((a, b) => b.score - a.score));
  const free = scored.filter((pair) => !used.has(pair.old) && !used.has(pair.now));
  pick(free.filter((pair) => free.every((one) => one === pair || one.old.item.keyword !== pair.old.item.keyword)));
  strike(
    left,
    pairs.map((pair) => [pair.old, pair.now]),
  );
  return pairs;
}

/** What a line has in common with another one: each clause as it means, each name of a path. */
const traits = ({ item }: Line, spell: Spell): ReadonlySet<string> =>
  new Set([
    ...[...saysOf(item, spell)].map(([keyword, meaning]) => `${keyword} ${meaning}`),
    ...namesOf(item, '').map(({ parts }) => `> ${parts.map(({ text }) => spell(text)).join('.')}`),
  ]);

/** The same thing, or the very same words, under something else: only where just one went and just one came. */
function movedAmong(gone: readonly Line[], come: readonly Line[], spell: Spell): Matched {
  const keyOf = (line: Line, of: Spell) => [line.item.keyword, line.name ? of(line.name) : printOfLine(line, of)];
  const left: Left<Line> = { old: gone.flatMap(withUnder), now: come.flatMap(withUnder) };
  const found = take(left, spell, keyOf, 'only one');
  const halves = new Map(found.map(({ old, now }) => [old, now]));
  // What stands in something that moved went with it, and is paired below.
  const went = ({ old, now }: Pair): boolean => {
    for (let [a, b] = [old.parent, now.parent]; a && b; [a, b] = [a.parent, b.parent])
      if (halves.get(a) === b) return true;
    return false;
  };
  const moved = found.filter((pair) => !went(pair));
  const taken = new Set(moved.flatMap(({ old, now }) => [old, now]));
  const free = ({ under }: Line) => under.filter((line) => !taken.has(line));
  return joined([
    { pairs: moved, gone: [], come: [] },
    ...moved.map(({ old, now }) => match(free(old), free(now), spell)),
  ]);
}
