// How a name is written where it stands: bare where the language reads it so, else in quotes.
import { language } from '../plan/index.ts';
import type { Thing } from '../plan/types.ts';
import { gearKinds, resultsOf, statements } from '../vocabulary/index.ts';
import type { Use } from './uses.ts';

/** A name as the text needs it in that kind of place. */
export function spelled(name: string, where: Use['where']): string {
  if (where === 'text') return inQuotes(name);
  if (where === 'designation') return /[,#"“”?]/.test(name) || name !== name.trim() ? inQuotes(name) : name;
  return isBare(name, where) ? name : inQuotes(name);
}

/** A thing's name for a place, in quotes also where its author wrote it so. */
export function asDeclared({ name, item }: Thing, where: Use['where']): string {
  const at = item.node.line.statement?.name?.span;
  return at && /^["“”„]/.test(item.node.row.text.slice(at.from)) ? inQuotes(name) : spelled(name, where);
}

/** Whether a name may stand there without quotes. */
export function isBare(name: string, where: Use['where']): boolean {
  if (!/^[A-Za-z](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*$/.test(name)) return false;
  if (where === 'declared' || where === 'expression') return true;
  if (where === 'named') return name !== 'and';
  return !(joining.has(name) || keywords.has(name) || resultWords.has(name));
}

export const inQuotes = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** Words that hold values together: bare, they would be read as such. */
const joining: ReadonlySet<string> = new Set(['and', 'about', 'to', 'or', 'between', 'none', 'x']);
const keywords: ReadonlySet<string> = new Set(language.keywords);
const resultWords: ReadonlySet<string> = new Set(
  [...gearKinds, ...Object.values(resultsOf).flatMap((rows) => Object.keys(rows))].flatMap((words) => words.split(' ')),
);

/** Why a name cannot be given; null where it can. `what` is the kind of thing it names. */
export function unspellable(name: string, what: string): string | null {
  if (!name.trim()) return 'A name needs at least one character.';
  if (name !== name.trim()) return 'A name neither begins nor ends with a space.';
  if (/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u.test(name)) return 'A name stands on one line and holds no hidden character.';
  if (what !== 'let') return null;
  if (!/^[A-Za-z](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*$/.test(name))
    return `A name of a value is one word of letters, digits, _ and -, beginning with a letter; ${inQuotes(name)} is not.`;
  if (language.isUnit(name)) return `${name} is a unit; a name of a value must be another word.`;
  if (language.functions.includes(name)) return `${name} is a function; a name of a value must be another word.`;
  return joining.has(name) || name in statements
    ? `${name} is a word of the language; a name of a value must be another word.`
    : null;
}
