// A bought-in part of pipework: what one weighs, its sizes, its range and why the heavy end is used, and its source.
import { cautions } from '../../checks/index.ts';
import { type Shape, solid, working } from '../../mechanics/index.ts';
import type { Item } from '../../plan/types.ts';
import { type System, write } from '../../quantities/index.ts';
import { pipeworkOf, sizesWritten, type Weighed, weigh, writtenOf } from '../../results/index.ts';
import { type Line, type Note, note } from './page.ts';

/** The part that an item stands for, weighed; null where its shape is another one, or not all of it is known. */
function weighed(item: Item): { readonly title: string; readonly shape: Shape; readonly found: Weighed } | null {
  const name = pipeworkOf(item);
  if (!name) return null;
  const written = writtenOf(item, name);
  const sizes = sizesWritten(item);
  const found = weigh(name, written, sizes);
  const words = [written.words.class && `class ${written.words.class}`, written.words.form];
  const title = [name, written.designation, ...words, written.words.schedule && `schedule ${written.words.schedule}`];
  return found && { title: title.filter(Boolean).join(' '), shape: found.found.make(sizes), found };
}

/** What an item takes from the tables of pipework. */
export function pipeworkSources(item: Item): readonly string[] {
  const one = weighed(item)?.found.found;
  return one ? [one.source, ...(one.allowance ? [one.allowance.source] : [])] : [];
}

/** The part with its figures; null where there is none. */
export function pipeworkNote(item: Item, system: System): Note | null {
  const one = weighed(item);
  if (!one) return null;
  const { mass, low } = one.found;
  const text = (value: number, round: 'up' | 'down') => write(value, 'kg', { system, round });
  const spread =
    mass > low * (1 + 1e-9)
      ? [
          {
            says: `The standard and what makers list allow ${text(low, 'down')} to ${text(mass, 'up')}; the heaviest is used, so that a doubt never makes the load lighter.`,
          },
        ]
      : [];
  return note(`${one.title}: ${text(mass, 'up')} each`, {
    working: [...sizeLines(one.shape, system), ...spread],
    rests: pipeworkSources(item).map((source) => ({ says: cautions.builtIn(source) })),
  });
}

/** The lengths its volume is worked out from, and the box it fills. */
function sizeLines(shape: Shape, system: System): readonly Line[] {
  const body = solid(shape);
  if ('impossible' in body) return [];
  const length = (value: number) => write(value, 'm', { system, round: 'near', plain: false });
  const step = working(shape);
  const inputs = step?.from ? [] : Object.entries(step?.inputs ?? {}).filter(([label]) => !counts.has(label));
  const sizes = inputs.map(([label, value]) => `${spoken(label)} ${length(value)}`);
  const sides = ([0, 1, 2] as const).map((axis) => length(body.box.max[axis] - body.box.min[axis]));
  return [
    ...(sizes.length ? [{ says: sizes.join(', ') }] : []),
    { says: `fills ${sides.join(' × ')} along its own x, y, z` },
  ];
}

const counts = new Set(['nuts', 'washers', 'bolts', 'angle', 'areaFactor']);
const spoken = (label: string): string => label.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
