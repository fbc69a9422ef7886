// Parts that stand one behind the other in a load, some dozens of them, with what they come to together. A key that is pressed
// changes a part of one batch; the figures of all others are still the ones of the version before.
import { type Box, unionOf } from '../mechanics/index.ts';
import type { Item } from '../plan/index.ts';
import { type Cause, type Derived, sum } from '../quantities/derived.ts';
import { type Gathered, gathered } from './centre.ts';
import type { Frame, Solid } from './solid.ts';
import type { ResultProblem } from './types.ts';

/** So many parts are summed up at once: of some thousands, about as many as there are batches then. */
export const mostInBatch = 64;

/** What the parts of a batch rest on beside their lines. */
interface BatchRests extends Frame {
  readonly materials: readonly Item[];
}

export class Batch {
  readonly weight: Derived;
  readonly volume: Derived; // of what is given by its shape
  readonly masses: Gathered;
  readonly box: Box | null | undefined; // null: one of them is not known; undefined: nothing in it has a box
  readonly around: Box | undefined; // what is known of it
  readonly unplaced: boolean;
  readonly sized: readonly Solid[]; // whose size is a bound, a maker's, or that of a drawing
  #allowed: { readonly by: Allowance; readonly total: Allowed } | undefined;

  constructor(
    readonly items: readonly Item[],
    readonly solids: readonly Solid[],
    readonly facts: readonly ResultProblem[], // found while they were worked out
    readonly rests: BatchRests | null, // beside its items; null: where others stand, or a drawing: that is looked at anew
  ) {
    this.weight = sum(
      solids.map(({ figures }) => figures.weight),
      'kg',
    );
    this.volume = sum(
      solids.filter(({ part }) => part.kind !== 'item').map(({ figures }) => figures.volume),
      'm3',
    );
    this.masses = gathered(solids.map(({ figures }) => figures.mass));
    const boxes = solids.filter(({ part }) => part.kind !== 'liquid').map(({ figures }) => figures.box);
    this.around = unionOf(boxes.filter((box) => box !== null));
    this.box = boxes.includes(null) ? null : this.around;
    this.sized = solids.filter(
      ({ part }) =>
        (part.kind === 'item' && !part.point) || part.shapeName === 'envelope' || part.shape?.kind === 'mesh',
    );
    this.unplaced = solids.some(({ figures }) => figures.unplaced);
  }

  /** Its parts, each with its own contingency; worked out once for as long as the same is asked for. */
  allowed(by: Allowance): Allowed {
    const before = this.#allowed;
    if (before && sameAllowance(before.by, by)) return before.total;
    const total = allowedSum(this.solids, by);
    this.#allowed = { by, total };
    return total;
  }
}

/** What a load's parts take for what nobody can know. */
export interface Allowance {
  readonly usual: { readonly share: number; readonly from: string }; // for a part that states none
  readonly least: number; // that rules ask for on a part's own
  readonly leastEstimate: number;
  readonly ruled: readonly Cause[]; // why nobody knows what rules ask for
}

/** Parts that take the same contingency. */
export interface Group {
  readonly share: number;
  readonly from: string;
  readonly weight: number; // kg, of the parts whose weight is known, bare
}

/** The parts by their contingency, and why that of some, or their weight, is not known. */
export interface Allowed {
  readonly groups: readonly Group[];
  readonly because: readonly Cause[];
}

const sameAllowance = (a: Allowance, b: Allowance): boolean =>
  a.usual.share === b.usual.share &&
  a.usual.from === b.usual.from &&
  a.least === b.least &&
  a.leastEstimate === b.leastEstimate &&
  a.ruled.length + b.ruled.length === 0;

function allowedSum(solids: readonly Solid[], by: Allowance): Allowed {
  const because: Cause[] = [];
  const groups: Group[] = [];
  for (const { contingency: own, figures } of solids) {
    const { weight } = figures;
    if (own?.because.length) because.push(...own.because);
    else if (own && by.ruled.length) because.push(...by.ruled);
    else if (weight.value === null) because.push(...weight.because);
    else groups.push({ ...taken(own, by), weight: weight.value });
  }
  return { groups: together(groups), because };
}

/** The share that a part takes, and from where. */
function taken(own: Solid['contingency'], { usual, least, leastEstimate }: Allowance): Omit<Group, 'weight'> {
  const stated = own?.share ?? null;
  const { share, from } = stated === null ? usual : { share: Math.max(stated, least), from: 'their own contingency' };
  return own?.estimate && leastEstimate > share
    ? { share: leastEstimate, from: 'least for an estimate' }
    : { share, from };
}

/** Groups of the same contingency as one, in the order in which they come first. */
export function together(groups: readonly Group[]): readonly Group[] {
  const found = new Map<string, Group>();
  for (const one of groups) {
    const key = `${one.share} ${one.from}`;
    found.set(key, { ...one, weight: one.weight + (found.get(key)?.weight ?? 0) });
  }
  return [...found.values()];
}
