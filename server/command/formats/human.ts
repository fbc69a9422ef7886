// Findings for a person at a terminal: severity and sentence, the place, the line with the words marked, and what it could be.
import type { Finding } from '../../checks/index.ts';
import { visible } from '../../report/index.ts';
import type { Place } from '../../syntax/types.ts';

export interface Shown {
  readonly path: string; // as typed at this terminal
  readonly line: number;
  readonly column: number;
}

/** One finding as some lines, the last one ended. */
export function human(finding: Finding, where: (at: Place) => Shown, colour: boolean): string {
  const { slug, severity, message, at, related, fixes, waived } = finding;
  const place = where(at);
  const word = waived ? `${severity}, set aside` : severity;
  const lines = [
    `${paint('strong', word, colour)}: ${visible(message)} [${slug}]`,
    `  ${paint('place', `${visible(place.path)}:${place.line}:${place.column}`, colour)}`,
    ...marked(at).map((text, i) => `    ${i === 1 ? paint('strong', text, colour) : text}`),
    ...(fixes.length ? [`  Could be: ${fixes.map(({ title }) => visible(title)).join('; ')}`] : []),
    ...related.map((other) => beside(other.message, where(other.at), colour)),
    ...(waived ? [`  Set aside by ${visible(waived.approvedBy)}: ${visible(waived.reason)}`] : []),
  ];
  return `${lines.join('\n')}\n`;
}

const beside = (message: string, { path, line }: Shown, colour: boolean) =>
  `  ${paint('place', `${visible(path)}:${line}`, colour)}  ${visible(message)}`;

const context = 60; // characters before and behind the place, where the line is long

/** The line and, under it, a bar of = below the place; of a long line the piece around the place. */
function marked({ row: { text }, from, to }: Place): readonly string[] {
  const indent = text.length - text.trimStart().length;
  const begin = from - indent > context ? from - context : Math.min(indent, from);
  const end = text.length - to > context ? to + context : text.length;
  const before = `${begin > indent ? '… ' : ''}${visible(text.slice(begin, from))}`;
  const place = visible(text.slice(from, to));
  const behind = `${visible(text.slice(to, end))}${end < text.length ? ' …' : ''}`;
  const line = `${before}${place}${behind}`.trimEnd();
  return line ? [line, `${' '.repeat(columns(before))}${'='.repeat(Math.max(1, columns(place)))}`] : [];
}

/** Columns of a terminal that a text takes: wide letters take two, marks that sit on another letter none. */
const columns = (text: string): number =>
  [...text].reduce((sum, character) => sum + (/\p{M}/u.test(character) ? 0 : wide.test(character) ? 2 : 1), 0);

const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u;

/** Weight and one colour, never a lamp: the words say what matters. */
const paint = (look: 'strong' | 'place', text: string, colour: boolean): string =>
  colour ? `\x1b[${look === 'strong' ? 1 : 36}m${text}\x1b[0m` : text;
