// Small words shared by the sentences: lists, names in quotes, nearest readings.
import type { LegEnd } from '../results/types.ts';
import type { Place } from '../syntax/types.ts';

/** `a`, `a and b`, `a, b and c`; with another last word `a, b or c`. */
export const list = (items: readonly string[], last = 'and'): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;

/** A name as a reader finds it in the text: in quotes where it has several words. */
export const named = (name: string): string => (/^[^\s"]+$/.test(name) || name.includes('"') ? name : `"${name}"`);

/** `" Nearest: a, b."` with its space before; nothing where nothing is near. */
export const nearestOf = (items: readonly string[], label = 'Nearest'): string =>
  items.length ? ` ${label}: ${items.join(', ')}.` : '';

/** The first letter as a capital; for sentences that begin with a word of the language, never with a name. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `weight` for `a weight`. */
export const bare = (noun: string): string => noun.replace(/^an? /, '');

/** Without a closing full stop and a capital that only begins a sentence, so that it can stand within one. */
export const unstopped = (text: string): string =>
  text
    .trim()
    .replace(/\.$/, '')
    .replace(/^(The|A|An|No|Nothing|What|Its|There|This|One|How|It|Both)\b/, (word) => word.toLowerCase());

/** `the leg to A`, `the legs to A, B on S2 and B on S3`, by what they end at. */
export const legsTo = (legs: readonly LegEnd[]): string =>
  `the ${legs.length === 1 ? 'leg' : 'legs'} to ${list(legs.map(({ to, sling }) => named(to) + (sling === null ? '' : ` on ${named(sling)}`)))}`;

/** `a load` for `load`; what has an article keeps it. */
export const withArticle = (noun: string): string =>
  /^(an?|the) /.test(noun) ? noun : `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;

/** What stands at a place. */
export const written = ({ row, from, to }: Place): string => row.text.slice(from, to);

/** The same number, which no longer looks like thousands: without closing zeros, or with one digit more. */
export function undoubted(text: string): string {
  const shorter = text.replace(/(\.\d*[1-9])0+(?!\d)/, '$1').replace(/\.0+(?!\d)/, '');
  return shorter === text ? text.replace(/(\.\d{3})(?!\d)/, '$10') : shorter;
}
