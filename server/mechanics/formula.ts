// A closed form beside the text that people read for it, so that a test can compare the two.

/** A formula: called with its inputs by name (SI), it gives the figure; `text` is what is shown, `names` are its inputs. */
export interface Formula<Name extends string = string> {
  (inputs: Readonly<Record<Name, number>>): number;
  readonly text: string;
  readonly names: readonly string[];
}

const made: Formula[] = [];

/** Every formula made so far, in the order in which the files that make them were read. */
export const formulas: readonly Formula[] = made;

/**
 * Ties a printed formula to the code that works it out. The text has numbers, names, `pi`, brackets, + - * / with spaces
 * around them and sqrt min max sin cos tan.
 */
export function formula<Name extends string>(
  text: string,
  compute: (inputs: Readonly<Record<Name, number>>) => number,
): Formula<Name> {
  const whole: Formula<Name> = Object.assign((inputs: Readonly<Record<Name, number>>) => compute(inputs), {
    text,
    names: namesIn(text),
  });
  made.push(whole as Formula);
  return whole;
}

const own = new Set(['pi', 'sqrt', 'min', 'max', 'sin', 'cos', 'tan']);

const namesIn = (text: string): readonly string[] =>
  [...new Set(text.match(/[A-Za-z][A-Za-z0-9]*/g) ?? [])].filter((word) => !own.has(word));
