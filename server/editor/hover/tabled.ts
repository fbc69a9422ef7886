// Figures of the built-in tables: materials, woods, sections, pipes, bars, ropes and sheets, with their source, their range, and why this end is used.
import {
  bar,
  construction,
  type Line as Kind,
  type Material,
  material,
  pipe,
  pipeSchedules,
  section,
  sheet,
  type Wood,
} from '../../catalog/index.ts';
import { cautions } from '../../checks/index.ts';
import { fold, textOf } from '../../plan/index.ts';
import type { BoundPlan, Item } from '../../plan/types.ts';
import { type ResultUnit, type System, write } from '../../quantities/index.ts';
import { type Line, type Note, note } from './page.ts';
import { pipeworkSources } from './pipework.ts';

/** What an item takes from a built-in table, as cautions that name the table. */
export function tableLines(item: Item, plan: BoundPlan): readonly Line[] {
  const made = builtInMaterial(item, plan);
  const sized = sizedBy(item);
  const tables = sized && !item.clauses.has('unit weight') ? [sized.source] : pipeworkSources(item);
  return [...(made ? [made.source] : []), ...tables].map((source) => ({ says: cautions.builtIn(source) }));
}

/** The catalog's material of an item; null where the plan has its own of that name, or a density is given. */
export function builtInMaterial(item: Item, plan: BoundPlan): Material | null {
  const name = textOf(item, 'of');
  if (
    !name ||
    item.clauses.has('density') ||
    item.clauses.has('moisture') ||
    plan.names.find('material', fold(name)).length
  )
    return null;
  return material(name) ?? null;
}

/** A material of the catalog by its name: the density used, the range of the sources, and why this end of it. */
export function materialNote(found: Material, system: System): Note {
  const text = figures(system, 'kg/m3');
  const spread =
    found.low === found.high
      ? []
      : [
          {
            says: `Sources give ${text(found.low, 'down')} to ${text(found.high, 'up')}; ${found.density === found.high ? 'the heaviest is used, so that a doubt never makes the load lighter' : 'the value used is named with its reason below'}.`,
          },
        ];
  const covers = found.choices.length
    ? [{ says: `The name covers ${found.choices.slice(0, 6).join(', ')}; name the one it is.` }]
    : [];
  return note(`${found.name}: ${text(found.density, 'up')}`, {
    working: [...spread, ...covers],
    rests: [{ says: cautions.builtIn(found.source) }],
  });
}

/** A wood by its species, where its moisture is stated: what its dry wood weighs. */
export function woodNote(found: Wood, system: System): Note {
  const dry = figures(system, 'kg/m3')(found.basic * 1000, 'up');
  return note(`${found.name}: ${dry} of dry wood by its green volume`, {
    working: [{ says: 'With the water in it, and the volume it has at its moisture: see the density of the part.' }],
    rests: [{ says: cautions.builtIn(found.source) }],
  });
}

/** Clauses that say which row of a table an item stands for. */
export const tabledBy: readonly string[] = ['section', 'pipe', 'bar', 'schedule', 'construction', 'kind'];

/** The row of a table that an item's section, pipe, bar, rope, chain or sheet stands for. */
export function sizedBy(item: Item): Sized | null {
  const line = (['rope', 'chain'] as const).find((one) => item.clauses.has(one));
  if (line) return lineBy(item, line);
  if (item.clauses.has('sheet')) return sheetBy(item);
  const word = (['section', 'pipe', 'bar'] as const).find((one) => item.clauses.get(one)?.[0]?.value?.kind === 'text');
  const designation = word && textOf(item, word);
  if (!word || !designation) return null;
  if (word === 'pipe') return pipeBy(item, designation);
  return perLength((word === 'section' ? section(designation) : bar(designation)) ?? null);
}

/** A row of a table: what a length or an area of it weighs, and its sizes. */
export interface Sized {
  readonly designation: string;
  readonly unit: 'kg/m' | 'kg/m2';
  readonly weighs: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly says?: string;
  readonly depth?: number;
  readonly width?: number;
  readonly outside?: number;
  readonly wall?: number;
  readonly diameter?: number;
  readonly thickness?: number;
}

type Row = Omit<Sized, 'unit' | 'weighs'> & { readonly massPerLength: number };

const perLength = (row: Row | null): Sized | null => row && { ...row, unit: 'kg/m', weighs: row.massPerLength };

function pipeBy(item: Item, designation: string): Sized | null {
  const found = pipe(designation, textOf(item, 'schedule') ?? '', textOf(item, 'of') ?? '');
  return perLength(found ? { ...found, designation: `${found.designation} schedule ${found.schedule}` } : null);
}

function lineBy(item: Item, line: Kind): Sized | null {
  const across = item.clauses.get(line)?.[0]?.value;
  const found = construction(line, textOf(item, 'construction') ?? '');
  if (!found || across?.kind !== 'quantity') return null;
  const diameter = across.quantity.value;
  const of = (factor: number) => factor * diameter ** 2;
  const row = { designation: `${line} ${found.construction}`, diameter, source: found.source };
  return perLength({ ...row, massPerLength: of(found.factor), low: of(found.low), high: of(found.high) });
}

function sheetBy(item: Item): Sized | null {
  const found = sheet(textOf(item, 'kind') ?? '');
  return found ? { ...found, unit: 'kg/m2', weighs: found.massPerArea } : null;
}

/** A row of a table: what it weighs, its sizes, its range and its source. */
export function sizedNote(found: Sized, system: System): Note {
  const weight = figures(system, found.unit);
  const length = figures(system, 'm');
  const sizes = (['depth', 'width', 'outside', 'wall', 'diameter', 'thickness'] as const).flatMap((size) =>
    found[size] === undefined ? [] : [`${size} ${length(found[size], 'near')}`],
  );
  const spread =
    found.low === found.high
      ? []
      : [
          {
            says: `Its sources and sizes give ${weight(found.low, 'down')} to ${weight(found.high, 'up')}; the heavier is used, so that a doubt never makes the load lighter.`,
          },
        ];
  const counted = found.says === undefined ? [] : [{ says: `Counted ${found.says}.` }];
  return note(`${found.designation}: ${weight(found.weighs, 'up')}`, {
    working: [...(sizes.length ? [{ says: sizes.join(', ') }] : []), ...spread, ...counted],
    rests: [{ says: cautions.builtIn(found.source) }],
  });
}

/** A size of pipe whose schedule is not said yet: what the schedules it is made in weigh. */
export function pipeNote(item: Item, system: System): Note | null {
  const designation = textOf(item, 'pipe') ?? '';
  const of = textOf(item, 'of') ?? '';
  const text = figures(system, 'kg/m');
  const rows = pipeSchedules(designation).flatMap((schedule) => {
    const found = pipe(designation, schedule, of);
    return found ? [`${schedule} ${text(found.massPerLength, 'up')}`] : [];
  });
  return rows.length ? note(`${designation} by its schedule`, { working: [{ says: rows.join(', ') }] }) : null;
}

const figures = (system: System, unit: ResultUnit) => (value: number, round: 'up' | 'down' | 'near') =>
  write(value, unit, { system, round, plain: false });
