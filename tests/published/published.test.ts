// Published figures against the program's own code: rows as data, each with its source and tolerance; none may be dropped.
import { readdirSync, readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import {
  bar,
  type Construction,
  chokeAngleFactor,
  chokerFactor,
  construction,
  designFactor,
  eyeboltFactor,
  greatestRating,
  material,
  pipe,
  ropeBendOnCurve,
  section,
  shackleFactor,
  sheet,
  temperatureRange,
} from '../../server/catalog/index.ts';
import {
  axisRotation,
  below,
  bendEfficiency,
  centreOf,
  fill,
  interior,
  laid,
  levels,
  type Member,
  multiply,
  rotate,
  type Shape,
  solid,
  turn,
  type Vec3,
} from '../../server/mechanics/index.ts';
import { add, type Quantity, quantity } from '../../server/quantities/quantity.ts';
import { asDensity, joined } from '../../server/quantities/units.ts';
import { loadOf, value } from '../support/lift.ts';

interface Row {
  readonly what: string;
  readonly kind: string;
  readonly expect: string; // number and unit, as printed
  readonly within: string; // percent of it
  readonly source: string;
  readonly why: string; // why this tolerance
  readonly of?: string;
  readonly schedule?: string;
  readonly made?: string; // what a plastic pipe is made of
  readonly shape?: Sizes;
  readonly parts?: readonly Part[];
  readonly depth?: string; // of liquid in a shape that lies on its side
  readonly heads?: Sizes; // one at each end of a lying shape
  readonly tilt?: string; // of its axis from level
  readonly level?: string; // of what is in it, over its lowest point
  readonly terms?: readonly string[];
  readonly form?: string; // a construction of sling or a kind of gear
  readonly mass?: string; // the rating it is of, or its diameter
  readonly part?: string; // the line of a part
}

/** A shape with its sizes as text; `pipe` and `schedule`, `section` or `bar` are looked up. */
type Sizes = Readonly<Record<string, string>>;

interface Part {
  readonly shape?: Sizes;
  readonly mass?: string; // instead of a shape
  readonly of?: string;
  readonly density?: string;
  readonly count?: number;
  readonly less?: boolean;
  readonly at?: readonly [string, string, string];
}

/** The fewest rows each file may have: a row lost on the way must be noticed. */
const rowsDue: Readonly<Record<string, number>> = {
  'bars-and-sheets.json': 90,
  'densities.json': 167,
  'hitches.json': 69,
  'pipes.json': 144,
  'pipework.json': 115,
  'ropes-and-chains.json': 29,
  'sections.json': 193,
  'shop.json': 58,
  'solids.json': 65,
  'worked-weights.json': 56,
};

const worst = new Map<string, { error: number; what: string; rows: number }>();

for (const [file, due] of Object.entries(rowsDue)) {
  const rows: readonly Row[] = JSON.parse(readFileSync(new URL(file, import.meta.url), 'utf8'));
  describe(file, () => {
    test(`has at least ${due} rows, each told apart and with its source`, () => {
      expect(rows.length).toBeGreaterThanOrEqual(due);
      expect(new Set(rows.map((row) => row.what)).size).toBe(rows.length);
      expect(rows.filter((row) => !row.source || !row.why)).toEqual([]);
    });
    test.each(rows)('$what: $expect ($source)', (row) => {
      const due = measure(row.expect).value;
      const error = errors[row.kind]?.(row, due) ?? Number.NaN;
      note(row, error);
      expect(error, `${row.what} is off by ${(error * 100).toFixed(3)} %`).toBeLessThanOrEqual(percent(row.within));
    });
  });
}

test('every file of rows is read', () => {
  const files = readdirSync(new URL('.', import.meta.url)).filter((name) => name.endsWith('.json'));
  expect(files.sort()).toEqual(Object.keys(rowsDue).sort());
});

afterAll(() => {
  const lines = [...worst].map(
    ([kind, { error, what, rows }]) => `${kind}: ${rows} rows, worst ${(error * 100).toFixed(3)} % (${what})`,
  );
  const total = [...worst.values()].reduce((sum, { rows }) => sum + rows, 0);
  process.stdout.write(`${[...lines, `${total} published rows`].join('\n')}\n`);
});

type Reckon = (row: Row) => number | undefined;
const near = (reckon: Reckon) => (row: Row, due: number) => Math.abs((reckon(row) ?? Number.NaN) / due - 1);

const atMost = (reckon: Reckon) => (row: Row, due: number) => Math.max(0, (reckon(row) ?? Number.NaN) / due - 1);
const atLeast = (reckon: Reckon) => (row: Row, due: number) => Math.max(0, 1 - (reckon(row) ?? Number.NaN) / due);
const at = (row: Row): number => measure(row.of ?? '').value;
const rating = (row: Row): number => measure(row.mass ?? '').value;
const choked = (row: Row): number => chokerFactor(row.form as Construction).share;
const bent = (row: Row): number | undefined => {
  const [formula, curve] = [bendEfficiency(at(row)), ropeBendOnCurve(at(row))];
  return formula === null || curve === null ? undefined : Math.min(formula, curve);
};
const natural = (3 / 4) * Math.PI;
const piped = (row: Row) => pipe(row.of ?? '', row.schedule ?? '', row.made)?.massPerLength;
const lineMass = (line: 'rope' | 'chain', row: Row): number =>
  (construction(line, row.form ?? '')?.factor ?? Number.NaN) * rating(row) ** 2;

/** What hitches, bends, angles and heat leave of gear. */
const gear: Readonly<Record<string, (row: Row, due: number) => number>> = {
  'choke angle': near((row) => chokeAngleFactor(at(row), null).share),
  'choked tag': near((row) => rating(row) * chokeAngleFactor(at(row), null).share),
  'choked, at most': atMost((row) => choked(row) * chokeAngleFactor(at(row), choked(row)).share),
  choker: near(choked),
  'choked tag, natural': near((row) => rating(row) * choked(row) * chokeAngleFactor(natural, choked(row)).share),
  'choked tag, at most': atMost((row) => rating(row) * choked(row) * chokeAngleFactor(natural, choked(row)).share),
  'bending factor': near((row) => 1 / (bendEfficiency(at(row)) ?? Number.NaN)),
  'bend, at most': atMost(bent),
  'basket, at most': atMost((row) => 2 * rating(row) * (bent(row) ?? Number.NaN)),
  'side load': near((row) => shackleFactor(at(row))?.share),
  'side loaded': near((row) => rating(row) * (shackleFactor(at(row))?.share ?? Number.NaN)),
  eyebolt: near((row) => eyeboltFactor(at(row))?.share),
  'eyebolt, at most': atMost((row) => eyeboltFactor(at(row))?.share),
  hottest: near((row) => (temperatureRange(row.form ?? '')?.to ?? Number.NaN) + 273.15),
  'usual leg, at least': atLeast((row) => greatestRating(row.form ?? '', rating(row)) ?? undefined),
  'usual leg, at most': atMost((row) => greatestRating(row.form ?? '', rating(row)) ?? undefined),
  'design factor': near((row) => designFactor(row.form ?? '')?.factor),
};

/** What each kind of row asks the program for, and how far that is from the printed figure (as a share of it). */
const errors: Readonly<Record<string, (row: Row, due: number) => number>> = {
  density: near((row) => material(row.of ?? '')?.density),
  'density covers': (row, due) => {
    const found = material(row.of ?? '');
    if (!found) return Number.NaN;
    return Math.max(0, 1 - found.density / due, 1 - found.high / due, found.low / due - 1);
  },
  pipe: near((row) => piped(row)),
  'pipe, at least': atLeast((row) => piped(row)),
  rope: near((row) => lineMass('rope', row)),
  'rope, at least': atLeast((row) => lineMass('rope', row)),
  chain: near((row) => lineMass('chain', row)),
  'chain, at least': atLeast((row) => lineMass('chain', row)),
  'pipe outside': near((row) => pipe(row.of ?? '', row.schedule ?? '')?.outside),
  'pipe wall': near((row) => pipe(row.of ?? '', row.schedule ?? '', row.made)?.wall),
  section: near((row) => section(row.of ?? '')?.massPerLength),
  'section depth': near((row) => section(row.of ?? '')?.depth),
  'section width': near((row) => section(row.of ?? '')?.width),
  bar: near((row) => bar(row.of ?? '')?.massPerLength),
  'bar diameter': near((row) => bar(row.of ?? '')?.diameter),
  sheet: near((row) => sheet(row.of ?? '')?.massPerArea),
  'sheet covers': (row, due) => {
    const found = sheet(row.of ?? '');
    return found ? Math.max(0, 1 - found.massPerArea / due, found.low / due - 1) : Number.NaN;
  },
  volume: near((row) => body(row.shape ?? {}).volume),
  weight: near((row) => together(row).mass),
  'centre x': near((row) => together(row).centre?.[0]),
  'centre y': near((row) => together(row).centre?.[1]),
  'centre z': near((row) => together(row).centre?.[2]),
  tank: near(tank),
  'liquid weight': near((row) => liquid(row).mass),
  'liquid centre': near((row) => liquid(row).height),
  /** What a list of weights says is never more than what the program counts, nor much less. */
  'listed, covered': (row, due) => {
    const weight = weightOf(row.part ?? '');
    return weight >= due ? weight / due - 1 : Number.NaN;
  },
  bolt: near((row) => boltWeight(row)),
  ...gear,
  sum: near((row) => (row.terms ?? []).map(measure).reduce(plus).value),
};

function note(row: Row, error: number): void {
  const so = worst.get(row.kind) ?? { error: -1, what: '', rows: 0 };
  const worse = error > so.error;
  worst.set(row.kind, { error: worse ? error : so.error, what: worse ? row.what : so.what, rows: so.rows + 1 });
}

function percent(text: string): number {
  const [, number = ''] = /^([\d.]+) %$/.exec(text) ?? [];
  return Number(number || Number.NaN) / 100;
}

function measure(text: string): Quantity {
  const [, number = '', unitText = ''] = /^(-?[\d./]+) (.+)$/.exec(text) ?? [];
  const unit = joined(unitText);
  if (!unit) throw new Error(`"${text}" has no unit that is known`);
  const [over = 0, under = 1] = number.split('/').map(Number);
  const read = quantity((over / under) * unit.factor + unit.offset, unit.dimension);
  return asDensity(read) ?? read;
}

function plus(a: Quantity, b: Quantity): Quantity {
  const sum = add(a, b);
  if ('clash' in sum) throw new Error('unlike terms');
  return sum;
}

/** A shape of the program's own from sizes written as text, with the catalog's figures for what is named. */
function shapeOf(sizes: Sizes): Shape {
  const { along, bendRadius, ...own } = sizes;
  if (along === undefined) return straightOf(sizes);
  const one = straightOf(own);
  const bent = bendRadius === undefined ? {} : { bendRadius: measure(bendRadius).value };
  return { kind: 'swept', of: one as Member, corners: sizeOf(along) as readonly Vec3[], ...bent };
}

function straightOf({ kind, form, pipe: size, schedule, section: rolled, ...texts }: Sizes): Shape {
  const lengths = Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, sizeOf(text)]));
  const looked = size ? pipe(size, schedule ?? '') : rolled ? section(rolled) : {};
  if (!looked) throw new Error(`${size ?? rolled} is not in the catalog`);
  return {
    kind,
    ...(kind === 'prism' && { holes: [] }),
    ...(form && { form }),
    ...looked,
    ...lengths,
  } as unknown as Shape;
}

/** A length or angle; two sides joined by x, or corners in brackets, with one unit behind them all. */
function sizeOf(text: string): unknown {
  if (/^[\d.]+$/.test(text)) return Number(text); // a plain number: a share, a count
  const [, unit = ''] = /([a-z]+)$/.exec(text) ?? [];
  const numbers = (part: string, sign: string): number[] =>
    part.split(sign).map((one) => measure(`${one.trim()} ${unit}`).value);
  const corners = [...text.matchAll(/\(([^)]*)\)/g)].map(([, inner = '']) => numbers(inner, ','));
  if (corners.length) return corners;
  return text.includes(' x ') ? numbers(text.replace(/ [a-z]+$/, ''), ' x ') : measure(text).value;
}

function body(sizes: Sizes) {
  const made = solid(shapeOf(sizes));
  if ('impossible' in made) throw new Error(`${sizes.kind}: ${made.reason}`);
  return made;
}

/** What a part comes to in a plan, kg. */
function weightOf(part: string): number {
  const found = loadOf(`  part "P": ${part}, at (0, 0, 0)\n    empty "seen"`);
  return value(found, 'load', 'L', 'calculated weight') ?? Number.NaN;
}

/** A bolt with a head and one nut, both of one width across flats. */
function boltWeight({ shape = {}, of }: Row): number {
  const size = (word: string): number => measure(shape[word] ?? '').value;
  const hexagon = (height: number) => ({ flats: size('flats'), height });
  const made = solid({
    ...{ kind: 'bolt', diameter: size('diameter'), length: size('length'), nuts: 1, washers: 0 },
    ...{ head: hexagon(size('head')), nut: hexagon(size('nut')) },
  });
  if ('impossible' in made) throw new Error(made.reason);
  return (made.volume ?? Number.NaN) * (material(of ?? '')?.density ?? Number.NaN);
}

function together({ parts = [] }: Row) {
  return centreOf(
    parts.map((part) => {
      const made = part.mass ? { mass: measure(part.mass).value, centre: [0, 0, 0] as const } : body(part.shape ?? {});
      const mass = made.mass ?? (made as { volume?: number }).volume ?? Number.NaN;
      const each = made.mass === undefined ? mass * density(part) : mass;
      const [x = 0, y = 0, z = 0] = (part.at ?? []).map((text) => measure(text).value);
      const at = [made.centre[0] + x, made.centre[1] + y, made.centre[2] + z] as const;
      return { mass: each * (part.count ?? 1) * (part.less ? -1 : 1), at };
    }),
  );
}

function density(part: { readonly of?: string; readonly density?: string }): number {
  const stated = part.density ? measure(part.density).value : undefined;
  return stated ?? material(part.of ?? '')?.density ?? Number.NaN;
}

/** Liquid of a depth in a shape turned so that its own z lies along x. */
function liquid({ shape, depth, ...row }: Row): { readonly mass: number; readonly height: number } {
  const inside = interior(shapeOf(shape ?? {}));
  if (!inside) throw new Error(`${row.what} has no inside`);
  const lying = { R: axisRotation('x'), t: [0, 0, 0] } as const;
  const { lowest } = levels(inside, lying);
  const { volume, centre } = below(inside, lying, lowest + measure(depth ?? '').value);
  return { mass: volume * density(row), height: (centre?.[2] ?? Number.NaN) - lowest };
}

/** What lies below a level in a tank, with a head at each end if there are any, its axis tilted out of level. */
function tank({ shape, heads, tilt = '0 deg', level = '' }: Row): number {
  const shell = shapeOf(shape ?? {});
  const [tube, head] = [interior(shell), heads ? interior(shapeOf(heads)) : null];
  if (!tube || shell.kind !== 'tube') throw new Error('a tank is a tube');
  const R = turn(-measure(tilt).value, 'y');
  const at = (axis: 'x' | '-x', along: number) => ({
    R: multiply(R, laid('dished head', axis)),
    t: rotate(R, [along, 0, 0]),
  });
  const ends = head ? solid(shapeOf(heads ?? {})) : null;
  const out = ends && !('impossible' in ends) ? shell.length / 2 - ends.box.min[2] : 0;
  const spaces = [
    { interior: tube, place: at('x', 0) },
    ...(head
      ? (['x', '-x'] as const).map((axis) => ({ interior: head, place: at(axis, axis === 'x' ? out : -out) }))
      : []),
  ];
  const lowest = Math.min(...spaces.map((space) => levels(space.interior, space.place).lowest));
  return fill(spaces, lowest + measure(level).value).volume;
}
