// Members led along a line: their own formulas, with the length of the line that the section's centre runs along.
import type { Member, Swept } from '../shapes.ts';
import { lineOf } from '../sweep.ts';
import { sweptPieces } from '../swept-body.ts';
import { flat } from './flat.ts';
import { members } from './members.ts';
import { round } from './round.ts';
import type { Row, Worked } from './row.ts';
import { shop } from './shop.ts';

const rows = {
  cylinder: round.cylinder,
  tube: round.tube,
  'rectangular tube': flat['rectangular tube'],
  prism: flat.prism,
  ...members,
  weld: shop.weld,
};
const rowOf = (member: Member): Row<Member> => rows[member.kind] as Row<Member>;

/** The member drawn straight, as long as the line its section's centre runs along. */
function straightened(shape: Swept): Member {
  const pieces = sweptPieces(shape);
  return 'impossible' in pieces ? shape.of : { ...shape.of, length: lineOf(pieces).length + (shape.longer ?? 0) };
}

const swept: Row<Swept> = {
  fault: (shape) => {
    const own = rowOf(shape.of).fault({ ...shape.of, length: 1 });
    if (own) return own;
    const pieces = sweptPieces(shape);
    return 'impossible' in pieces ? pieces : undefined;
  },
  volume: (shape) => rowOf(shape.of).volume?.(straightened(shape)) as Worked, // none of a rolled section
  mass: (shape) => rowOf(shape.of).mass?.(straightened(shape)),
  centre: (shape) => {
    const pieces = sweptPieces(shape);
    return 'impossible' in pieces
      ? [0, 0, 0]
      : lineOf(pieces, shape.of.kind !== 'section' && shape.of.kind !== 'weld').centre;
  },
};

export const led = { swept };
