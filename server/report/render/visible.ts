// Makes every character of the plan's text visible, so that what a reader sees on paper or screen is all there is.

/** The text on one line; control, zero-width and direction-changing characters are spelled out as `[U+202E]`. */
export const visible = (text: string): string =>
  text.replace(breaks, ' ').replace(hidden, (character) => `[U+${code(character)}]`);

const breaks = /[\t\n\r\u2028\u2029\u0085]+/g;

// Other, control and format characters, lone surrogates, and fillers that print as nothing (Unicode general categories
// Cc, Cf, Cs, and the Hangul fillers).
const hidden = /[\p{Cc}\p{Cf}\p{Cs}\u115f\u1160\u3164\uffa0]/gu;

const code = (character: string) => (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
