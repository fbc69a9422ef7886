// Works out a printed formula such as `length * width * thickness * density`, so that what people read can be held against the code.

const functions: Readonly<Record<string, (...values: number[]) => number>> = {
  sqrt: Math.sqrt,
  min: Math.min,
  max: Math.max,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
};

/**
 * The value of a formula for its inputs by name (SI, angles in rad). It has numbers, names, `pi`, brackets, + - * / and sqrt min max
 * sin cos tan. Throws an Error for a formula that cannot be read or a name without input: formulas are the program's own, never typed by users.
 */
export function evaluateFormula(text: string, inputs: Readonly<Record<string, number>>): number {
  const marks = text.match(/\d+(?:\.\d+)?|[A-Za-z_]\w*|[-+*/(),]|\S/g) ?? [];
  const reader: Reader = { text, marks, at: 0, inputs };
  const value = sum(reader);
  if (reader.at < marks.length) fail(reader);
  return value;
}

/** The formula for people: `×`, `÷`, `−`, `√`, `π`. */
export const pretty = (formula: string): string =>
  formula
    .replace(/\*/g, '×')
    .replace(/\//g, '÷')
    .replace(/-/g, '−')
    .replace(/\bsqrt\(/g, '√(')
    .replace(/\bpi\b/g, 'π');

interface Reader {
  readonly text: string;
  readonly marks: readonly string[];
  readonly inputs: Readonly<Record<string, number>>;
  at: number;
}

function fail(reader: Reader): never {
  throw new Error(`The formula ${reader.text} cannot be worked out at ${reader.marks[reader.at] ?? 'its end'}.`);
}

/** Steps over the mark if it stands next. */
function next(reader: Reader, ...marks: readonly string[]): string | null {
  const mark = reader.marks[reader.at];
  if (mark === undefined || !marks.includes(mark)) return null;
  reader.at++;
  return mark;
}

function sum(reader: Reader): number {
  let value = product(reader);
  for (let sign = next(reader, '+', '-'); sign; sign = next(reader, '+', '-'))
    value += sign === '+' ? product(reader) : -product(reader);
  return value;
}

function product(reader: Reader): number {
  let value = factor(reader);
  for (let sign = next(reader, '*', '/'); sign; sign = next(reader, '*', '/')) {
    const right = factor(reader);
    value = sign === '*' ? value * right : value / right;
  }
  return value;
}

function factor(reader: Reader): number {
  if (next(reader, '-')) return -factor(reader);
  if (next(reader, '(')) return closed(reader, [sum(reader)])[0] as number;
  const mark = reader.marks[reader.at] ?? '';
  if (/^\d/.test(mark)) return Number(reader.marks[reader.at++]);
  if (!/^[A-Za-z_]/.test(mark)) fail(reader);
  reader.at++;
  if (Object.hasOwn(functions, mark) && next(reader, '('))
    return (functions[mark] as (...values: number[]) => number)(...list(reader));
  const value = mark === 'pi' ? Math.PI : Object.hasOwn(reader.inputs, mark) ? reader.inputs[mark] : undefined;
  if (value === undefined) {
    reader.at--;
    fail(reader);
  }
  return value;
}

function list(reader: Reader): readonly number[] {
  const values = [sum(reader)];
  while (next(reader, ',')) values.push(sum(reader));
  return closed(reader, values);
}

function closed(reader: Reader, values: readonly number[]): readonly number[] {
  if (!next(reader, ')')) fail(reader);
  return values;
}
