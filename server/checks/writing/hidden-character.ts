// A character that most editors do not show.
import { check } from '../check.ts';
import { remove } from '../edits.ts';
import { capital } from '../wording.ts';

export const hiddenCharacter = check({
  slug: 'hidden-character',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `${capital(nameOf(facts.character))} stands here and cannot be seen in most editors.`,
  fixes: ({ at, facts }) => [remove(at, `Remove ${nameOf(facts.character)}`, true)],
});

/** Names by code point, after the Unicode standard's names, in plainer words. */
const names: readonly (readonly [from: number, to: number, name: string])[] = [
  [0x00, 0x1f, 'a control character'],
  [0x7f, 0x9f, 'a control character'],
  [0xad, 0xad, 'a soft hyphen'],
  [0x61c, 0x61c, 'a direction mark'],
  [0x200b, 0x200b, 'a zero-width space'],
  [0x200c, 0x200d, 'a zero-width joiner'],
  [0x200e, 0x200f, 'a direction mark'],
  [0x202a, 0x202e, 'a character that changes the direction of writing'],
  [0x2060, 0x2060, 'a word joiner'],
  [0x2066, 0x2069, 'a character that changes the direction of writing'],
  [0xfeff, 0xfeff, 'a byte-order mark'],
];

/** With its number, so that it can be looked up: `a zero-width space (U+200B)`. */
function nameOf(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  const name = names.find(([from, to]) => code >= from && code <= to)?.[2] ?? 'a character without a shape';
  return `${name} (U+${code.toString(16).toUpperCase().padStart(4, '0')})`;
}
