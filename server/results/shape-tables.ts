// Sections, pipes and bars: what the tables of the trade say of a designation.
import { bar, nearestBars, nearestPipes, nearestSections, pipe, pipeSchedules, section } from '../catalog/index.ts';
import type { Shape } from '../mechanics/index.ts';
import { type BoundClause, type Item, textOf } from '../plan/index.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { Notes } from './notes.ts';
import { type Done, missing, type Refuse, type ShapeGiven } from './shape.ts';

type Listed = readonly { readonly designation: string; readonly massPerLength: number }[];

const unlisted = (clause: BoundClause, designation: string, table: string, nearest: Listed, notes: Notes) =>
  notes.add(
    'size-unknown',
    clause.valueAt,
    {
      designation,
      table,
      nearest: nearest.map((near) => ({ name: near.designation, massPerLength: near.massPerLength })),
    },
    `${designation} is not in the table.`,
  );

export function member(
  item: Item,
  name: 'section' | 'pipe' | 'bar',
  clause: BoundClause,
  sizes: Record<string, Quantity>,
  done: Done,
  refuse: Refuse,
  notes: Notes,
): ShapeGiven {
  const unit = sizes['unit weight'];
  const steel = !item.clauses.has('of') && !item.clauses.has('density');
  const value = clause.value as NonNullable<BoundClause['value']>;
  if (value.kind === 'quantity') {
    sizes.diameter = value.quantity;
    if (name !== 'bar') {
      const { row, from, to } = clause.valueAt;
      const written = row.text.slice(from, to);
      const nearest = name === 'pipe' ? nearestPipes(written) : [];
      return refuse(unlisted(clause, written, `${name}s`, nearest, notes));
    }
    return done(
      (s) =>
        ({
          kind: 'bar',
          length: s.length,
          diameter: s.diameter,
          ...(s['unit weight'] && { massPerLength: s['unit weight'] }),
        }) as Shape,
      unit ? (textOf(item, 'from') ?? 'typed here') : '',
    );
  }
  const designation = value.kind === 'text' ? value.text : '';
  const unknown = (table: string, nearest: Listed) => refuse(unlisted(clause, designation, table, nearest, notes));
  const weight = (s: Readonly<Record<string, number>>, listed: number, always: boolean) =>
    s['unit weight'] ? { massPerLength: s['unit weight'] } : steel || always ? { massPerLength: listed } : {};
  if (name === 'section') {
    const found = section(designation);
    if (!found)
      return unit
        ? refuse(
            notes.add(
              'size-unknown',
              clause.valueAt,
              {
                designation,
                table: 'sections',
                nearest: nearestSections(designation).map((near) => ({
                  name: near.designation,
                  massPerLength: near.massPerLength,
                })),
              },
              `${designation} is not in the table.`,
            ),
          )
        : unknown('sections', nearestSections(designation));
    return done(
      (s) =>
        ({
          kind: 'section',
          length: s.length,
          depth: found.depth,
          width: found.width,
          ...weight(s, found.massPerLength, true),
        }) as Shape,
      unit ? (textOf(item, 'from') ?? 'typed here') : `${found.designation}: ${found.source}`,
      ['centre at the middle of its box'],
    );
  }
  if (name === 'bar') {
    const found = bar(designation);
    if (!found) return unknown('bars', nearestBars(designation));
    return done(
      (s) =>
        ({
          kind: 'bar',
          length: s.length,
          diameter: found.diameter,
          ...weight(s, found.massPerLength, false),
        }) as Shape,
      `${found.designation}: ${found.source}`,
    );
  }
  const schedules = pipeSchedules(designation);
  if (!schedules.length) return unknown('pipes', nearestPipes(designation));
  const schedule = textOf(item, 'schedule');
  if (!schedule) return refuse(missing(item, 'pipe', 'schedule', `one of ${schedules.join(', ')}`, notes));
  const found = pipe(designation, schedule);
  if (!found)
    return refuse(
      notes.add(
        'size-unknown',
        item.clauses.get('schedule')?.[0]?.valueAt ?? clause.valueAt,
        {
          designation: `${designation} schedule ${schedule}`,
          table: 'pipes',
          nearest: schedules.slice(0, 3).flatMap((near) => {
            const one = pipe(designation, near);
            return one ? [{ name: `schedule ${near}`, massPerLength: one.massPerLength }] : [];
          }),
        },
        `Schedule ${schedule} is not in the table.`,
      ),
    );
  return done(
    (s) =>
      ({
        kind: 'pipe',
        length: s.length,
        outside: found.outside,
        wall: found.wall,
        ...weight(s, found.massPerLength, false),
      }) as Shape,
    `${found.designation} schedule ${found.schedule}: ${found.source}`,
  );
}
