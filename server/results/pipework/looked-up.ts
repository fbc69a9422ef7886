// What several parts look up alike: the flange of a size and class, and the pipe that a part is welded to.
import {
  type FlangeSize,
  flangeClasses,
  flangeSize,
  material,
  nearestFlanges,
  type Pipe,
  pipe,
  pipeSchedules,
} from '../../catalog/index.ts';
import { type Shape, solid } from '../../mechanics/index.ts';
import type { BoughtIn, Due, NotListed, Written } from './types.ts';

export const flangeTable = 'flanges';

/** The flange of a size and class as written; `word` is the part's own keyword. */
export function sized({ designation, words }: Written, word: string): FlangeSize | NotListed {
  const size = designation ?? 'a size alone';
  const classes = flangeClasses(size);
  if (!classes.length) return { clause: word, designation: size, table: flangeTable, nearest: nearestFlanges(size) };
  const pressureClass = words.class ?? '';
  const found = flangeSize(size, pressureClass);
  return (
    found ?? { clause: 'class', designation: `${size} class ${pressureClass}`, table: flangeTable, nearest: classes }
  );
}

export const flangeSource = ({ designation, pressureClass, source }: FlangeSize): string =>
  `${designation} class ${pressureClass}: ${source}`;

/** The pipe behind a weld: its outside and wall. */
export function welded(designation: string, schedule: string | null | undefined): Pipe | NotListed | Due {
  const schedules = pipeSchedules(designation);
  if (!schedule) return { due: 'schedule', why: `one of ${schedules.join(', ')}` };
  return (
    pipe(designation, schedule) ?? {
      clause: 'schedule',
      designation: `${designation} schedule ${schedule}`,
      table: 'pipes',
      nearest: schedules.slice(0, 3),
    }
  );
}

/** Schedules with S are of stainless pipe. */
export const steelOf = (schedule: string | null | undefined): BoughtIn['material'] =>
  /\dS$/i.test(schedule ?? '') ? 'stainless steel' : 'carbon steel';

/** The weight of a body in a steel, kg, less what is drilled out of it (m3); null where it cannot be made. */
export function massOf(shape: Shape, steel: BoughtIn['material'], drilled = 0): number | null {
  const body = solid(shape);
  if ('impossible' in body || body.volume === undefined) return null;
  return (body.volume - drilled) * (material(steel)?.density ?? Number.NaN);
}
