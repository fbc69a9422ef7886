// Bought-in parts of pipework with their sizes: flanges, nozzles, manways, tees, reducers, bolts and nuts.
//
// Lengths in m. Flange, nozzle and manway have own z from the weld to the gasket face and their datum point in the middle of
// that face; bolts and nuts have own z along the bolt, datum point the box centre.

/** A plate with a raised face and a hub, bored, its bolt holes not taken off. Blind: no hub (`hubLength` 0), no bore. */
export interface Flange {
  readonly kind: 'flange';
  readonly outside: number;
  readonly thickness: number; // without the raised face
  readonly raisedFace: number; // diameter
  readonly faceHeight: number; // 0: flat
  readonly hub: number; // diameter at its base
  readonly neck: number; // diameter at its end
  readonly hubLength: number; // beyond the plate
  readonly bore: number; // 0: closed
}

/** A flange on a pipe stub, with a reinforcing pad where the stub begins; `projection` from there to the gasket face. */
export interface Nozzle {
  readonly kind: 'nozzle';
  readonly flange: Flange;
  readonly outside: number;
  readonly wall: number;
  readonly pipeLength: number;
  readonly projection: number;
  readonly pad?: { readonly outside: number; readonly thickness: number };
}

/** A nozzle with a blind cover on its gasket face and the studs that hold it. */
export interface Manway {
  readonly kind: 'manway';
  readonly nozzle: Nozzle;
  readonly cover: Flange;
  readonly studs: BoltSet;
}

/** An equal tee: the run along own x, the branch towards own y. Datum point: where the centre lines cross. */
export interface Tee {
  readonly kind: 'tee';
  readonly outside: number;
  readonly wall: number;
  readonly run: number; // from the datum point to each end
  readonly branch: number; // from the datum point to its end
}

/**
 * Own z from the large end (low z) to the small one. With an `offset` the small end's centre lies that far towards -y, so
 * that half the difference of the outsides makes the -y side flat. Datum point: on the large end's axis at mid-length.
 */
export interface Reducer {
  readonly kind: 'reducer';
  readonly large: number;
  readonly largeWall: number;
  readonly small: number;
  readonly smallWall: number;
  readonly length: number;
  readonly offset: number;
}

/** A six-sided head or nut. */
export interface Hexagon {
  readonly flats: number; // across flats
  readonly height: number;
}

export interface Washer {
  readonly outside: number;
  readonly bore: number;
  readonly thickness: number;
}

/**
 * A rod with or without a head (low z), nuts and washers. With a head they all sit at the far end, the nuts flush with it;
 * without one they are shared between both ends. Thread is not taken off.
 */
export interface Bolt {
  readonly kind: 'bolt';
  readonly diameter: number;
  readonly length: number; // without the head
  readonly head?: Hexagon;
  readonly nuts: number;
  readonly nut?: Hexagon;
  readonly washers: number;
  readonly washer?: Washer;
}

/** Bolts on a circle square to own z, all alike; datum point: the middle of the circle at mid-length. */
export interface BoltSet {
  readonly kind: 'bolt set';
  readonly bolts: number;
  readonly circle: number; // diameter
  readonly each: Bolt;
}

/** A nut by itself, its thread bored out to the bolt's diameter. */
export interface Nut {
  readonly kind: 'nut';
  readonly diameter: number;
  readonly flats: number;
  readonly height: number;
}

/** A washer by itself. */
export interface LooseWasher extends Washer {
  readonly kind: 'washer';
}

export type PipeworkShape = Flange | Nozzle | Manway | Tee | Reducer | Bolt | BoltSet | Nut | LooseWasher;
