// Classes of characters: which read alike, which may stand in a word, and which nobody can see.

/**
 * The line with all white space as plain spaces, and every character that cannot be seen as a space too. Same length in UTF-16
 * units, so places in it are places in the line.
 */
export function plain(text: string): string {
  if (!UNUSUAL.test(text)) return text;
  return text.replace(SPACES, ' ').replace(HIDDEN, (found) => ' '.repeat(found.length));
}

/** Whether it reads as a space: space, tab, and the no-break, thin, wide and other spaces of Unicode. */
export const isSpace = (code: number): boolean =>
  code === 32 ||
  code === 9 ||
  (code > 127 &&
    (code === 0xa0 ||
      code === 0x1680 ||
      (code >= 0x2000 && code <= 0x200a) ||
      code === 0x202f ||
      code === 0x205f ||
      code === 0x3000));

/** The white space a text begins with; characters that cannot be seen are none. */
export function leadingSpace(text: string): string {
  let at = 0;
  while (isSpace(text.charCodeAt(at))) at++;
  return text.slice(0, at);
}

/** The text without the white space at its end; characters that cannot be seen are none. */
export const withoutEndSpace = (text: string): string => text.replace(END_SPACE, '');

/** Where characters stand that cannot be seen in most editors: control, zero-width, direction-changing and filler ones. */
export function hiddenIn(text: string): readonly { from: number; to: number }[] {
  if (!UNUSUAL.test(text)) return NONE;
  return [...text.matchAll(HIDDEN)].map((found) => ({ from: found.index, to: found.index + found[0].length }));
}

/** Whether a word may begin with it: a Latin letter, with or without accents. */
export const isLetter = (code: number): boolean =>
  (code >= 97 && code <= 122) ||
  (code >= 65 && code <= 90) ||
  (code >= 0xc0 && code <= 0x24f && code !== 0xd7 && code !== 0xf7) ||
  (code >= 0x1e00 && code <= 0x1eff);

export const isDigit = (code: number): boolean => code >= 48 && code <= 57;

/** Whether a word may go on with it; a hyphen only between two of these. */
export const isWordPart = (code: number): boolean => isLetter(code) || isDigit(code) || code === 95;

/** Whether it opens or closes a text: the straight double quotation mark and the curly ones. */
export const isQuote = (code: number): boolean => code === 34 || code === 0x201c || code === 0x201d || code === 0x201e;

/** Values of the single characters that are fractions. */
export const fractionSigns: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

const NONE: readonly never[] = [];

// A first look that nearly every line passes: printable ASCII only.
const UNUSUAL = /[^\x20-\x7e]/;

// Tab, no-break, thin, wide and the other spaces of Unicode read as a space.
const SPACES = /[\t\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/g;

const END_SPACE = /[ \t\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]+$/;

// Control characters but the tab, format characters (zero-width, direction-changing, tags), line and paragraph separators,
// what Unicode says may be left out in display, and letters that print as blank (Hangul fillers, Braille blank).
const HIDDEN = /(?:(?!\t)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}\u115f\u1160\u2800\u3164\uffa0])+/gu;
