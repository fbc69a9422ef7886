// Bolts, bolt sets and nuts: rod, hexagons and washers, thread not taken off, so that they err to the heavy side.
import { formula } from '../formula.ts';
import type { Bolt, BoltSet, Hexagon, LooseWasher, Nut } from '../shapes-of-pipework.ts';
import { zero } from '../vector.ts';
import { boredVolume, cylinderVolume } from './round.ts';
import {
  belowZero,
  exceeds,
  figureOf,
  type Impossible,
  impossible,
  joined,
  notAboveZero,
  type Row,
  type Worked,
  worked,
} from './row.ts';

/** m3; by the width across flats. */
export const hexagonVolume = formula<'flats' | 'height'>(
  'sqrt(3) / 2 * flats * flats * height',
  ({ flats, height }) => (Math.sqrt(3) / 2) * flats * flats * height,
);

/** m3; bored out to the bolt's diameter. */
export const nutVolume = formula<'flats' | 'height' | 'diameter'>(
  '(sqrt(3) / 2 * flats * flats - pi / 4 * diameter * diameter) * height',
  ({ flats, height, diameter }) => ((Math.sqrt(3) / 2) * flats * flats - (Math.PI / 4) * diameter * diameter) * height,
);

/** m3; its pieces stand with it. */
export const boltVolume = formula<'rod' | 'head' | 'nuts' | 'nut' | 'washers' | 'washer'>(
  'rod + head + nuts * nut + washers * washer',
  ({ rod, head, nuts, nut: each, washers, washer }) => rod + head + nuts * each + washers * washer,
);

/** m3; a stud with its nuts. */
export const studVolume = formula<'rod' | 'nuts' | 'nut'>(
  'rod + nuts * nut',
  ({ rod, nuts, nut: each }) => rod + nuts * each,
);

/** m3. */
export const boltSetVolume = formula<'bolts' | 'each'>('bolts * each', ({ bolts, each }) => bolts * each);

const nothing = worked(cylinderVolume, { diameter: 0, length: 0 });

const nutWorked = ({ flats, height }: Hexagon, diameter: number): Worked =>
  worked(nutVolume, { flats, height, diameter });

/** Rod, head, one nut and one washer of a bolt, m3 each. */
function pieces({
  diameter,
  length,
  head,
  nut: hexagon,
  washer,
}: Bolt): Readonly<Record<'rod' | 'head' | 'nut' | 'washer', Worked>> {
  return {
    rod: worked(cylinderVolume, { diameter, length }),
    head: head ? worked(hexagonVolume, { flats: head.flats, height: head.height }) : nothing,
    nut: hexagon ? nutWorked(hexagon, diameter) : nothing,
    washer: washer
      ? worked(boredVolume, { outside: washer.outside, bore: washer.bore, length: washer.thickness })
      : nothing,
  };
}

function boltWorked(shape: Bolt): Worked {
  const { rod, head, nut: each, washer } = pieces(shape);
  const { nuts, washers } = shape;
  return shape.head || washers > 0
    ? joined(boltVolume, { rod, head, nut: each, washer }, { nuts, washers })
    : joined(studVolume, { rod, nut: each }, { nuts });
}

/** All bolts of a set, m3, with one of them worked out. */
export const boltSetWorked = ({ bolts, each }: BoltSet): Worked =>
  joined(boltSetVolume, { each: boltWorked(each) }, { bolts });

function boltFault({ diameter, length, head, nuts, nut: hexagon, washers, washer }: Bolt): Impossible | undefined {
  return (
    notAboveZero({ diameter, length, head: head?.flats, nut: hexagon?.flats, washer: washer?.thickness }) ??
    belowZero('nuts', nuts) ??
    belowZero('washers', washers) ??
    (hexagon && exceeds(nuts * hexagon.height + washers * (washer?.thickness ?? 0), length)
      ? impossible('bolt-too-short', [length, nuts * hexagon.height + washers * (washer?.thickness ?? 0)], ['length'])
      : undefined)
  );
}

const bolt: Row<Bolt> = {
  fault: boltFault,
  volume: boltWorked,
  centre: (shape) => {
    const { length, head, nuts, nut: hexagon, washers, washer } = shape;
    if (!head) return zero;
    const each = pieces(shape);
    const whole = head.height + length;
    const stack = nuts * (hexagon?.height ?? 0);
    const moment =
      (figureOf(each.head) * head.height) / 2 +
      figureOf(each.rod) * (head.height + length / 2) +
      nuts * figureOf(each.nut) * (whole - stack / 2) +
      washers * figureOf(each.washer) * (whole - stack - (washers * (washer?.thickness ?? 0)) / 2);
    return [0, 0, moment / figureOf(boltWorked(shape)) - whole / 2];
  },
};

const boltSet: Row<BoltSet> = {
  fault: ({ bolts, circle, each }) => notAboveZero({ bolts, circle }) ?? boltFault(each),
  volume: boltSetWorked,
  centre: () => zero,
};

const nut: Row<Nut> = {
  fault: ({ diameter, flats, height }) =>
    notAboveZero({ diameter, flats, height }) ??
    (diameter < flats ? undefined : impossible('bore-not-inside', [diameter, flats], ['bore', 'outside'])),
  volume: ({ diameter, flats, height }) => nutWorked({ flats, height }, diameter),
  centre: () => zero,
};

const washer: Row<LooseWasher> = {
  fault: ({ outside, bore, thickness }) =>
    notAboveZero({ outside, bore, thickness }) ??
    (bore < outside ? undefined : impossible('bore-not-inside', [bore, outside], ['bore', 'outside'])),
  volume: ({ outside, bore, thickness }) => worked(boredVolume, { outside, bore, length: thickness }),
  centre: () => zero,
};

export const bolting = { bolt, 'bolt set': boltSet, nut, washer };
