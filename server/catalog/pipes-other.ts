// Copper tube, ductile iron pipe and plastic pipe: what their standards say of a size and a schedule, type, class or ratio.
import { material } from './materials.ts';
import type { Pipe } from './pipes.ts';
import data from './pipes-other.json';
import { inch, onFirstUse, printed, words } from './tables.ts';

/** Copper tube and ductile iron pipe, each under every name of its size. */
export const otherPipes = onFirstUse((): readonly Pipe[] => [
  ...data.copper.us.rows.flatMap(copperUs),
  ...data.copper.metric.rows.flatMap(copperMetric),
  ...data.ductile.us.rows.flatMap((row) => ductile(row, 'NPS', data.ductile.us, inch)),
  ...data.ductile.metric.rows.flatMap((row) => ductile(row, 'DN', data.ductile.metric, 1e-3)),
]);

function copperUs(row: string): Pipe[] {
  const [size = '', outside, ...types] = words(row);
  return types.flatMap((text) => {
    const [type = '', wall] = text.split('=');
    const made = copper(type, Number(outside) * inch, Number(wall) * inch, data.copper.us.source);
    return [`NPS ${size}`, `copper ${size} in`].map((designation) => ({ ...made, designation }));
  });
}

function copperMetric(row: string): Pipe[] {
  const [outside = '', ...walls] = words(row);
  return walls.map((wall) => ({
    ...copper(wall, Number(outside) / 1000, Number(wall) / 1000, data.copper.metric.source),
    designation: `copper ${outside} mm`,
  }));
}

function copper(schedule: string, outside: number, wall: number, source: string): Omit<Pipe, 'designation'> {
  const { made, density, lightest } = data.copper;
  const area = ring(outside, wall);
  const high = area * density;
  return { schedule, outside, wall, massPerLength: high, low: area * lightest, high, density, made, source };
}

/** What pipe by class is of, by its name among the materials. */
export const ductileIron = data.ductile.made;

/** A row of iron pipe by class: the barrel, its share of the socket over the length of a pipe, and the lining. */
function ductile(
  row: string,
  system: string,
  { length, source }: { readonly length: number; readonly source: string },
  unit: number,
): Pipe[] {
  const [size = '', across = '', socket, thick = '', ...classes] = words(row);
  const { made, density, lining } = data.ductile;
  const outside = Number(across) * unit;
  return classes.map((text) => {
    const [schedule = '', printedWall = ''] = text.split('=');
    const wall = Number(printedWall) * unit;
    const barrel = ring(outside, wall) * density;
    const mortar = ring(outside - 2 * wall, printed(thick) * unit) * lining;
    const high = barrel + Number(socket) / length + mortar;
    const says = 'with its share of a socket and cement mortar lining';
    const designation = `${system} ${size}`;
    return {
      designation,
      schedule,
      outside,
      wall,
      massPerLength: high,
      low: barrel,
      high,
      density,
      made,
      source,
      says,
    };
  });
}

// ---------------------------------------------------------------- plastic

/** Plastics by the names their pipe goes by, and what pipe of them is weighed at where no other is said, kg/m3. */
const plastics: readonly string[] = data.plastic.made;

/** Whether a material is a plastic that pipe is made of. */
export const isPlastic = (of: string): boolean => plastics.includes(material(of)?.name ?? '');

/** Outside diameters that plastic pipe in metric sizes is made in, as `DN 110`. */
export const plasticSizes = (): readonly string[] => data.plastic.metric.outside.split(' ').map((size) => `DN ${size}`);

/** Dimension ratios that plastic pipe of a size is made in, as `SDR11`; empty for a size it is not made in. */
export function ratios(designation: string): readonly string[] {
  const [, system, size = ''] = /^(DN|NPS)\s*(.+)$/i.exec(designation.trim()) ?? [];
  if (system?.toUpperCase() === 'NPS') return data.plastic.us.ratios.split(' ').map((ratio) => `SDR${ratio}`);
  return data.plastic.metric.outside.split(' ').includes(size)
    ? [...series().keys()].map((ratio) => `SDR${ratio}`)
    : [];
}

/** Pipe of an outside diameter in mm (its DN) by its ratio, of one of the plastics. */
export function metricPlastic(dn: number, ratio: string, of: string): Pipe | undefined {
  const s = series().get(ratio);
  if (s === undefined || !data.plastic.metric.outside.split(' ').includes(`${dn}`)) return undefined;
  const least = tenthsUp(dn / (2 * s + 1) - 0.004);
  return plastic(`DN ${dn}`, `SDR${ratio}`, of, {
    outside: dn / 1000,
    wall: least / 1000,
    thickest: (least + tenthsUp(0.1 * least + 0.1 - 1e-9)) / 1000,
    source: data.plastic.metric.source,
    says: 'DN is its outside diameter (ISO 4427)',
  });
}

/** Pipe of the outside diameter of steel pipe, by its ratio, or with the wall of steel pipe of that schedule. */
export function usPlastic(steel: Pipe, schedule: string, of: string): Pipe | undefined {
  const [, ratio] = /^SDR([\d.]+)$/.exec(schedule) ?? [];
  const { ratios: made, schedules, source } = data.plastic.us;
  if (!(ratio ? made : schedules).split(' ').includes(ratio ?? schedule)) return undefined;
  const wall = ratio ? steel.outside / Number(ratio) : steel.wall;
  const thickest = wall + Math.max(0.12 * wall, 0.02 * inch);
  return plastic(steel.designation, schedule, of, { outside: steel.outside, wall, thickest, source });
}

function plastic(
  designation: string,
  schedule: string,
  of: string,
  { outside, wall, thickest, source, says }: Pick<Pipe, 'outside' | 'wall' | 'source' | 'says'> & { thickest: number },
): Pipe {
  const found = material(of) ?? material(plastics[0] as string);
  const { name = '', density = Number.NaN, low = Number.NaN, source: weighed = '' } = found ?? {};
  const high = ring(outside, thickest) * density;
  return {
    designation,
    schedule,
    outside,
    wall,
    massPerLength: high,
    low: ring(outside, wall) * low,
    high,
    density,
    made: name,
    source: `${source}; ${name}: ${weighed}`,
    says: ['by its thickest wall', ...(says ? [says] : [])].join('; '),
  };
}

/** Pipe series S by their SDR (ISO 4065: SDR = 2 S + 1, S from the Renard numbers). */
const series = onFirstUse(
  () =>
    new Map(
      data.plastic.metric.series.split(' ').map((text) => {
        const [ratio = '', s] = text.split('=');
        return [ratio, Number(s)] as const;
      }),
    ),
);

const tenthsUp = (millimetres: number): number => Math.ceil(millimetres * 10) / 10;

function ring(outside: number, wall: number): number {
  return Math.PI * (outside - wall) * wall;
}
