// Pipe by nominal size and schedule, type, class or ratio; steel unless those say otherwise. A nominal size alone is no diameter: NPS 8 is 8.625 in outside.
import { editDistance } from '../quantities/nearest.ts';
import { material } from './materials.ts';
import { designationKey, nameKey } from './names.ts';
import data from './pipes.json';
import { ductileIron, isPlastic, metricPlastic, otherPipes, plasticSizes, ratios, usPlastic } from './pipes-other.ts';
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
  readonly made?: string; // what it is of, by its name among the materials; steel where nothing is said
  readonly source: string;
  readonly says?: string; // what the mass counts beside the plain barrel
}

/**
 * `NPS 8`, `NPS 1-1/2` or `DN 200`, and a schedule: `40`, `STD`, `XS`, `XXS`, `80`, or `10S` of stainless pipe. `K`, `L` and
 * `M` are copper tube (also `copper 2 in`; `copper 28 mm` goes by its wall), `K9`, `C40`, `PC350` and `CL52` ductile iron,
 * `SDR11` plastic; `of` a plastic, `40` and `80` are plastic too.
 */
export function pipe(designation: string, schedule: string, of = ''): Pipe | undefined {
  const key = scheduleKey(schedule);
  const size = sizes().get(designationKey(designation));
  const [, ratio] = /^SDR([\d.]+)$/.exec(key) ?? [];
  const [, dn] = /^DN([\d.]+)$/.exec(designationKey(designation)) ?? [];
  if (ratio && dn) return metricPlastic(Number(dn), ratio, of);
  const steel = ratio ? [...(size?.walls.values() ?? [])].find((each) => !each.made) : size?.walls.get(key);
  if (steel && !steel.made && (ratio || isPlastic(of))) return usPlastic(steel, key, of) ?? (ratio ? undefined : steel);
  return credible(steel?.made, of) ? steel : undefined;
}

/**
 * Whether what a schedule makes of one metal can be of what is said: copper tube is not of a plastic, nor of aluminium. Pipe of
 * ductile iron holds a lining and a socket that no other pipe has, so that it is of no other metal than iron.
 */
function credible(made: string | undefined, of: string): boolean {
  const said = material(of);
  if (made === undefined || said === undefined) return true;
  return made === ductileIron ? / iron$/.test(said.name) : said.density > (material(made)?.density ?? 0) / 2;
}

/** All steel pipes, each once, under its NPS. */
export function pipes(): readonly Pipe[] {
  return [...sizes().values()]
    .filter((size) => size.designation.startsWith('NPS'))
    .flatMap((size) => [...size.walls.values()].filter((each) => !each.made));
}

/** Every size that is in a table, as `NPS 8`, `DN 200` or `copper 2 in`. */
export function pipeSizes(): readonly string[] {
  return [...new Set([...[...sizes().values()].map(({ designation }) => designation), ...plasticSizes()])];
}

/** The schedules, types, classes and ratios that a size is made in, steel's first; empty for a size not known. */
export function pipeSchedules(designation: string): readonly string[] {
  const key = designationKey(designation);
  const walls = [...(sizes().get(key)?.walls.keys() ?? [])];
  return walls.length || key.startsWith('DN') ? [...walls, ...ratios(designation)] : [];
}

/** Pipes of a size whose schedule is spelt most like one that it is not made in, of what is said. */
export function nearestSchedules(designation: string, schedule: string, of: string, count = 3): readonly Pipe[] {
  const key = scheduleKey(schedule);
  const distance = (one: Pipe): number => editDistance(key, one.schedule);
  return pipeSchedules(designation)
    .flatMap((each) => pipe(designation, each, of) ?? [])
    .filter(({ made }) => !isPlastic(of) || isPlastic(made ?? ''))
    .sort((one, other) => distance(one) - distance(other))
    .slice(0, count);
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
  const all = new Map<string, { designation: string; walls: Map<string, Pipe> }>(
    read.map((size) => [designationKey(size.designation), size]),
  );
  for (const each of otherPipes()) {
    const key = designationKey(each.designation);
    const size = all.get(key) ?? { designation: each.designation, walls: new Map() };
    size.walls.set(each.schedule, each);
    all.set(key, size);
  }
  return all;
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

/** `schedule 40` is 40, `type L` is L, `DR 11` is SDR11, `class 350` is PC350 and `class 52` CL52. */
function scheduleKey(schedule: string): string {
  const key = nameKey(schedule)
    .toUpperCase()
    .replace(/^(?:SCH(?:EDULE|\.)?|TYPE)/, '')
    .replace(/^DR(?=\d)/, 'SDR')
    .replace(/^(?:CLASS|CL|TC)(?=\d\d$)/, 'CL')
    .replace(/^(?:CLASS|CL)(?=\d{3}$)/, 'PC')
    .replace(/\d+\.\d+$/, (number) => `${Number(number)}`);
  return otherNames[key] ?? key;
}
