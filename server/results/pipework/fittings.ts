// Butt-weld elbows, tees, reducers and caps by size and schedule.
import { type FittingSize, fittingSize, nearestFittings, type Pipe } from '../../catalog/index.ts';
import { steelOf, welded } from './looked-up.ts';
import { type BoughtIn, type Due, type NotListed, sizeOf, type Written } from './types.ts';

const fittingTable = 'butt-weld fittings';

export function fittingOf(
  name: 'pipe elbow' | 'pipe tee' | 'pipe reducer' | 'pipe cap',
  written: Written,
): BoughtIn | NotListed | Due {
  const [large = '', small = ''] = ends(written.designation ?? 'a size alone');
  const size = fittingSize(large);
  if (!size) return { clause: name, designation: large, table: fittingTable, nearest: nearestFittings(large) };
  const stub = welded(size.designation, written.words.schedule);
  if (!('wall' in stub)) return stub;
  const listed = {
    source: `${size.designation} schedule ${stub.schedule}: ${size.source}; ${stub.source}`,
    material: steelOf(written.words.schedule),
    assumptions: [
      'weight as the heaviest of makers’ lists has it over the nominal body',
      ...(name === 'pipe tee' && small ? ['a reducing tee counts as the equal tee of its run'] : []),
    ],
  };
  const made = bodyOfFitting(name, written, size, stub, small);
  return 'make' in made
    ? { ...listed, make: made.make, allowance: { factor: made.allowance, source: size.allowanceSource } }
    : made;
}

/** `NPS 8 x 6` is NPS 8 at the one end and NPS 6 at the other. */
function ends(designation: string): readonly [string, string?] {
  const [, system, large, small] =
    /^\s*([A-Za-z]+)\s*(.+?)\s*[x×X]\s*(?:[A-Za-z]+\s*)?(.+?)\s*$/.exec(designation) ?? [];
  return system ? [`${system} ${large}`, `${system} ${small}`] : [designation];
}

function bodyOfFitting(
  name: 'pipe elbow' | 'pipe tee' | 'pipe reducer' | 'pipe cap',
  { words, designation }: Written,
  size: FittingSize,
  stub: Pipe,
  small: string,
): { readonly make: BoughtIn['make']; readonly allowance: number } | NotListed | Due {
  const { outside, wall } = stub;
  const none = (clause: string, what: string, nearest: readonly string[] = []): NotListed => ({
    clause,
    designation: what,
    table: fittingTable,
    nearest,
  });
  if (name === 'pipe elbow') {
    const bendRadius = size.bendRadius[words.form as keyof FittingSize['bendRadius']];
    if (!bendRadius) return none('form', `${size.designation} ${words.form}`, ['long radius']);
    return {
      make: (s) => ({ kind: 'elbow', outside, wall, bendRadius, angle: sizeOf(s, 'angle') ?? 0 }),
      allowance: size.elbow.allowance,
    };
  }
  if (name === 'pipe tee') {
    const { tee } = size;
    const branch = small ? fittingSize(small) : size;
    if (!tee || !branch || branch.nominal > size.nominal) return none(name, `a tee of ${designation}`);
    return {
      make: () => ({ kind: 'tee', outside, wall, run: tee.toEnd, branch: tee.toEnd }),
      allowance: tee.allowance,
    };
  }
  if (name === 'pipe cap') {
    const length = wall > size.cap.greatestWall + 1e-9 ? size.cap.thickLength : size.cap.length;
    if (length === null) return none('schedule', `a cap of ${size.designation} with that wall`);
    const straightFlange = Math.max(0, length - wall - (outside - 2 * wall) / 4);
    return {
      make: () => ({ kind: 'dished head', form: 'ellipsoidal', outside, wall, straightFlange }),
      allowance: size.cap.allowance,
    };
  }
  const { reducer } = size;
  const end = fittingSize(small);
  const fits = reducer && end && end.nominal < size.nominal && end.nominal >= reducer.least;
  if (!fits) return none(name, designation ?? 'a size alone');
  const other = welded(end.designation, words.schedule);
  if (!('wall' in other)) return other;
  const offset = words.form === 'eccentric' ? (outside - other.outside) / 2 : 0;
  return {
    make: () => ({
      ...{ kind: 'reducer', large: outside, largeWall: wall, small: other.outside, smallWall: other.wall },
      ...{ length: reducer.length, offset },
    }),
    allowance: reducer.allowance,
  };
}
