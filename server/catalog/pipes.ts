// Steel pipe by nominal size and schedule. A nominal size alone is no diameter: NPS 8 is 8.625 in outside.
import { designationKey, nameKey } from './names.ts';
import data from './pipes.json';
import { inch, nearestRows, onFirstUse, poundPerFoot, printed, steelDensity, words } from './tables.ts';

export interface Pipe {
  readonly designation: string; // in the system asked for: NPS 8 or DN 200
  readonly schedule: string;
  readonly outside: number; // m
  readonly wall: number; // m
  readonly massPerLength: number; // kg/m
  readonly low: number;
  readonly high: number;
  readonly density: number; // kg/m3 that the mass is for: of another material it scales with this
  readonly source: string;
}

/** `NPS 8`, `NPS 1-1/2` or `DN 200`, and a schedule: `40`, `STD`, `XS`, `XXS`, `80`, or `10S` of stainless pipe. */
export function pipe(designation: string, schedule: string): Pipe | undefined {
  return sizes().get(designationKey(designation))?.walls.get(scheduleKey(schedule));
}

/** All pipes, each once, under its NPS. */
export function pipes(): readonly Pipe[] {
  return [...sizes().values()]
    .filter((size) => size.designation.startsWith('NPS'))
    .flatMap((size) => [...size.walls.values()]);
}

/** The schedules that a size is made in, thinnest and commonest first; empty for a size not known. */
export function pipeSchedules(designation: string): readonly string[] {
  return [...(sizes().get(designationKey(designation))?.walls.keys() ?? [])];
}

/** Standard-weight pipes of the sizes nearest to one that is not made; of `8 in`, as people call NPS 8, that one alone. */
export function nearestPipes(designation: string, count = 3): Pipe[] {
  const [, inches, millimetres] =
    /^(?:nps\s*)?([\d\s./-]+?)\s*(?:in|inch|inches|")$|^(?:dn\s*)?(\d+)\s*mm$/i.exec(designation.trim()) ?? [];
  const meant = sizes()
    .get(designationKey(inches === undefined ? `DN ${millimetres}` : `NPS ${inches}`))
    ?.walls.get('STD');
  if (meant) return [meant];
  return nearestRows(designation, sizes(), count).flatMap((size) => size.walls.get('STD') ?? []);
}

interface Size {
  readonly designation: string;
  readonly walls: ReadonlyMap<string, Pipe>;
}

/** Density of austenitic stainless steel, which the schedules with S are of, kg/m3 (mill data, from memory). */
const stainlessDensity = 8000;

const sizes = onFirstUse((): ReadonlyMap<string, Size> => {
  const read = data.rows.flatMap((row) => {
    const [nps = '', dn = '', inches, millimetres, ...walls] = words(row);
    return [`NPS ${nps}`, `DN ${dn}`].map((designation) => ({
      designation,
      walls: new Map(
        walls.flatMap((text) => {
          const [schedules = '', wall = ''] = text.split('=');
          return schedules
            .split('/')
            .map(
              (schedule) =>
                [schedule, made(designation, schedule, Number(inches), Number(millimetres), printed(wall))] as const,
            );
        }),
      ),
    }));
  });
  return new Map(read.map((size) => [designationKey(size.designation), size]));
});

// The standard prints inch and millimetre sizes, each rounded, and a formula for the weight; they differ by up to 0.4 %.
function made(designation: string, schedule: string, outside: number, outsideMm: number, wall: number): Pipe {
  const density = schedule.endsWith('S') && /\d/.test(schedule) ? stainlessDensity : steelDensity;
  const wallMm = Math.round(wall * 2540) / 100;
  const shares = density / steelDensity;
  const masses = [
    ring(outside * inch, wall * inch) * density,
    ring(outsideMm / 1000, wallMm / 1000) * density,
    10.69 * wall * (outside - wall) * poundPerFoot * shares,
  ];
  return {
    designation,
    schedule,
    outside: outside * inch,
    wall: wall * inch,
    massPerLength: Math.max(...masses),
    low: Math.min(...masses),
    high: Math.max(...masses),
    density,
    source: data.source,
  };
}

function ring(outside: number, wall: number): number {
  return Math.PI * (outside - wall) * wall;
}

const otherNames: Readonly<Record<string, string>> = { STANDARD: 'STD', XH: 'XS', XXH: 'XXS', EXTRASTRONG: 'XS' };

function scheduleKey(schedule: string): string {
  const key = nameKey(schedule)
    .toUpperCase()
    .replace(/^SCH(EDULE|\.)?/, '');
  return otherNames[key] ?? key;
}
