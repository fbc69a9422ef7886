// Bolts, nuts, washers and the studs of a flanged joint.
import {
  type BoltSize,
  boltOf,
  boltSize,
  type FlangeSize,
  type HexagonSize,
  nearestBolts,
} from '../../catalog/index.ts';
import type { Bolt, BoltSet } from '../../mechanics/shapes-of-pipework.ts';
import { flangeSource, sized } from './looked-up.ts';
import { type BoughtIn, type NotListed, sizeOf, type Written } from './types.ts';

const hexagon = ({ flats, height }: HexagonSize) => ({ flats, height });

function studBody(size: BoltSize, length: number, nuts = 2, washers = 0): Bolt {
  return {
    kind: 'bolt',
    diameter: size.diameter,
    length,
    nuts,
    nut: hexagon(size.heavyNut),
    washers,
    ...(size.washer && { washer: size.washer }),
  };
}

export function boltSetBody(size: FlangeSize): BoltSet | null {
  const bolt = boltSize(size.bolt);
  return bolt
    ? { kind: 'bolt set', bolts: size.holes, circle: size.circle, each: studBody(bolt, studLength(size, bolt)) }
    : null;
}

/** As the standard gives it; else both flanges as thick as they may be, two nuts, and 12 mm for the gasket and the ends. */
const studLength = ({ stud, thickness, faceHeight, thicker }: FlangeSize, { heavyNut }: BoltSize): number =>
  stud ?? 2 * (thickness + faceHeight + thicker + heavyNut.height) + 0.012;

export const noStud = (size: FlangeSize): NotListed => ({
  clause: 'class',
  designation: `a stud of ${size.bolt}`,
  table: 'bolts',
  nearest: [],
});

export function boltSetOf(written: Written): BoughtIn | NotListed {
  const size = sized(written, 'bolt set');
  if ('table' in size) return size;
  const listed = boltSetBody(size);
  if (!listed) return noStud(size);
  return {
    make: (s) => ({ ...listed, each: { ...listed.each, length: sizeOf(s, 'length') ?? listed.each.length } }),
    source: flangeSource(size),
    assumptions: [
      'thread not taken off',
      ...(size.stud === null && !written.given.has('length')
        ? ['studs as long as two flanges, two nuts and 12 mm']
        : []),
    ],
    material: 'carbon steel',
  };
}

/** How many nuts and washers a bolt of a form has where the plan says nothing. */
const usual: Readonly<Record<string, { readonly nuts: number; readonly washers: number }>> = {
  hex: { nuts: 1, washers: 1 },
  structural: { nuts: 1, washers: 2 },
  stud: { nuts: 2, washers: 0 },
  anchor: { nuts: 2, washers: 1 },
};

export function boltingOf(name: 'bolt' | 'nut' | 'washer', written: Written): BoughtIn | NotListed {
  const { designation, diameter } = written;
  const size = designation !== null ? boltSize(designation) : boltOf(diameter ?? 0);
  const asked = designation ?? 'that diameter';
  const nearest = (found: readonly BoltSize[]): readonly string[] => found.map((one) => one.designation);
  if (!size) return { clause: name, designation: asked, table: 'bolts', nearest: nearest(nearestBolts(asked)) };
  const form = written.words.form ?? '';
  const listed = { source: `${size.designation}: ${size.source}`, material: 'carbon steel' as const };
  const missing = (what: string): NotListed => ({
    clause: name,
    designation: `${what} of ${size.designation}`,
    table: 'bolts',
    nearest: [],
  });
  if (name === 'washer') {
    const { washer } = size;
    if (!washer) return missing('a washer');
    return { ...listed, make: () => ({ kind: 'washer', ...washer }), assumptions: [] };
  }
  if (name === 'nut') {
    const nut = form === 'heavy' ? size.heavyNut : size.nut;
    if (!nut) return missing('a hexagon nut');
    return { ...listed, make: () => ({ kind: 'nut', diameter: size.diameter, ...hexagon(nut) }), assumptions: [] };
  }
  const head = form === 'hex' ? size.head : form === 'structural' ? size.structuralHead : null;
  if (!head && (form === 'hex' || form === 'structural')) return missing(`a ${form} head`);
  const each = usual[form] ?? { nuts: 0, washers: 0 };
  const washers = written.given.has('washers') ? null : each.washers;
  if (!size.washer && washers !== 0) return missing('a washer');
  const nut = form === 'hex' ? (size.nut ?? size.heavyNut) : size.heavyNut;
  return {
    ...listed,
    make: (s) => ({
      ...studBody(size, sizeOf(s, 'length') ?? 0, sizeOf(s, 'nuts') ?? each.nuts, sizeOf(s, 'washers') ?? each.washers),
      nut: hexagon(nut),
      ...(head && { head: hexagon(head) }),
    }),
    assumptions: ['thread not taken off'],
  };
}
