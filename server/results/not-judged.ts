// What this version reads but does not work out: each leaves its result open, and the sheet's head says so.
import type { BoundPlan } from '../plan/index.ts';
import type { Notes } from './notes.ts';

/** Notes each thing whose result stays open because nothing here judges it; returns them in words. */
export function notJudged(plan: BoundPlan, notes: Notes): readonly string[] {
  const said = new Set<string>();
  const say = (at: Parameters<Notes['add']>[1], thing: string, result: string, words: string): void => {
    if (!said.has(words)) notes.add('not-judged', at, { thing, result }, '');
    said.add(words);
  };
  for (const item of plan.items) {
    if (item.file !== plan.file) continue;
    if (item.keyword === 'crane')
      for (const position of item.children)
        if (position.keyword === 'position')
          say(
            position.at,
            `The chart at ${position.names[0] ?? 'this position'}`,
            "the crane's capacity used",
            'crane capacity at each position',
          );
    if (item.keyword === 'ground') say(item.at, 'The ground', 'the pressure on it', 'ground pressure');
    if (item.keyword === 'weather' && (item.clauses.has('wind limit') || item.clauses.has('sail area')))
      say(item.at, 'Wind', 'the wind limit for this load', 'wind on the load');
  }
  return [...said];
}
