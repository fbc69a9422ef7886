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
  readonly bought: readonly Solid[]; // known by their weight, with a size
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
    this.bought = solids.filter(({ part }) => part.kind === 'item' && !part.point);
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
  readonly usual: number; // share for a part that states none
  readonly least: number; // that rules ask for on a part's own
  readonly leastEstimate: number;
  readonly ruled: readonly Cause[]; // why nobody knows what rules ask for
}

/** A weight with contingencies, kg, of the parts where it is known; and why it is not of others. */
export interface Allowed {
  readonly value: number;
  readonly because: readonly Cause[];
}

const sameAllowance = (a: Allowance, b: Allowance): boolean =>
  a.usual === b.usual &&
  a.least === b.least &&
  a.leastEstimate === b.leastEstimate &&
  a.ruled.length + b.ruled.length === 0;

function allowedSum(solids: readonly Solid[], { usual, least, leastEstimate, ruled }: Allowance): Allowed {
  const because: Cause[] = [];
  let value = 0;
  for (const { contingency: own, figures } of solids) {
    const { weight } = figures;
    let share = own?.share ?? usual;
    if (own?.share !== null && own?.share !== undefined) share = Math.max(share, least);
    if (own?.estimate) share = Math.max(share, leastEstimate);
    if (own?.because.length) because.push(...own.because);
    else if (own && ruled.length) because.push(...ruled);
    else if (weight.value === null) because.push(...weight.because);
    else value += weight.value * (1 + share);
  }
  return { value, because };
}
