// Figures of the built-in tables: materials, sections, pipes and bars, with their source, their range, and why this end is used.
import { bar, type Material, material, pipe, section } from '../../catalog/index.ts';
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
  if (!name || item.clauses.has('density') || plan.names.find('material', fold(name)).length) return null;
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

/** The row of a table that an item's section, pipe or bar stands for. */
export function sizedBy(item: Item): Sized | null {
  const [word] = (['section', 'pipe', 'bar'] as const).filter(
    (one) => item.clauses.get(one)?.[0]?.value?.kind === 'text',
  );
  const designation = word && textOf(item, word);
  if (!word || !designation) return null;
  if (word === 'section') return section(designation) ?? null;
  return (word === 'bar' ? bar(designation) : pipe(designation, textOf(item, 'schedule') ?? '')) ?? null;
}

interface Sized {
  readonly designation: string;
  readonly massPerLength: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly depth?: number;
  readonly width?: number;
  readonly outside?: number;
  readonly wall?: number;
  readonly diameter?: number;
}

/** A row of a table: its weight per length, its sizes and its source. */
export function sizedNote(found: Sized, system: System): Note {
  const weight = figures(system, 'kg/m');
  const length = figures(system, 'm');
  const sizes = (['depth', 'width', 'outside', 'wall', 'diameter'] as const).flatMap((size) =>
    found[size] === undefined ? [] : [`${size} ${length(found[size], 'near')}`],
  );
  const spread =
    found.low === found.high
      ? []
      : [
          {
            says: `Its sources and its area give ${weight(found.low, 'down')} to ${weight(found.high, 'up')}; the heavier is used.`,
          },
        ];
  return note(`${found.designation}: ${weight(found.massPerLength, 'up')}`, {
    working: [...(sizes.length ? [{ says: sizes.join(', ') }] : []), ...spread],
    rests: [{ says: cautions.builtIn(found.source) }],
  });
}

const figures = (system: System, unit: ResultUnit) => (value: number, round: 'up' | 'down' | 'near') =>
  write(value, unit, { system, round, plain: false });
