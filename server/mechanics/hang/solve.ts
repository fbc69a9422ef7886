// From a model to how it hangs: start, hang without turning, descend, then judge what was found.
import { classify, eigenAt, type Kind, zeroBand } from './classify.ts';
import { descend, type Rest } from './descent.ts';
import { describe } from './describe.ts';
import type { HangError, HangModel, HangOptions, HangResult } from './model.ts';
import { type Pose, turnBetween, type Unknowns, unknowns } from './pose.ts';
import { layOut, type Rig } from './rig.ts';
import { startPose } from './start.ts';
import { fallFrom, nearestRest } from './topple.ts';

/** A pose of rest with its judgement; what `describe` puts into words of numbers. */
export interface Hung {
  readonly rig: Rig;
  readonly pose: Pose;
  readonly kind: Kind;
  readonly residual: number;
  readonly steps: number;
  readonly turned: number;
  readonly turnsOver: boolean;
  readonly after: Pose | null;
  /** The drawn pose, hung by translation only. */
  readonly drawn: Pose;
  readonly unknowns: Unknowns;
}

/** Enough for loads that swing far on stiff slings; sound rigs take 5 to 70. */
const mostSteps = 1500;
/** Above this a result is no result. */
const largestResidual = 1e-8;
/** Strain at which no geometry of the given lengths exists, whatever the stiffness says. */
const largestStrain = 0.1;
/** Turn of a body against the drawn pose from which a nearer pose of rest is looked for, and how near that must be. */
const farTurn = Math.PI / 6;
const nearTurn = Math.PI / 4;

/**
 * How a model of rigid bodies on tension-only elastic slings hangs under gravity; see model.ts for all units.
 * Cold and without memory: the same numbers give the same answer. An error instead of any number that does not
 * balance to 1e-8 of all weight. Method: minimum of the potential energy over places and rotations of all bodies.
 */
export function hang(model: HangModel, options: HangOptions = {}): HangResult | HangError {
  const hung = solve(model, options);
  return 'error' in hung ? hung : describe(hung);
}

/** The same with the pose and the arrays kept, for what goes on from there. */
export function solve(model: HangModel, options: HangOptions = {}): Hung | HangError {
  const rig = layOut(model);
  if ('error' in rig) return rig;
  const u = unknowns(rig, true);
  const drawn = descend(rig, startPose(rig), unknowns(rig, false), 1e-4, 300).pose;
  const end = descend(rig, drawn, u, 1e-12, mostSteps);
  // Where nothing comes to rest an overstretched sling is the reason, so it is asked about first.
  const strained = overstrained(rig, end.pose);
  if (strained) return strained;
  if (!(end.residual < largestResidual)) return { error: 'no-convergence', name: null };
  const turned = turnBetween(rig, drawn, end.pose);
  if (turned > farTurn && letsGo(rig, drawn, u)) {
    if (options.quick) return { error: 'does-not-hang-as-drawn', name: furthest(rig, drawn, end.pose), turned };
    const near = nearestRest(rig, precise(rig, drawn), u);
    const nearPose = near && acceptable(rig, near, drawn, turned, u) ? near : null;
    return judged(rig, nearPose ?? end, drawn, u, options, nearPose ? end.pose : null, true);
  }
  return judged(rig, end, drawn, u, options, null, false);
}

/** A sling stretched by more than a tenth: the legs cannot reach, or are far too soft for this weight. */
export function overstrained(rig: Rig, pose: Pose): HangError | null {
  for (let s = 0; s < rig.slings; s++) {
    if (pose.length[s]! <= (1 + largestStrain) * rig.rest[s]!) continue;
    const soft = rig.ea[s]! * largestStrain < rig.totalWeight;
    return { error: soft ? 'too-soft' : 'legs-too-short', name: rig.model.slings[s]!.name };
  }
  return null;
}

function judged(
  rig: Rig,
  rest: Rest,
  drawn: Pose,
  u: Unknowns,
  options: HangOptions,
  fallen: Pose | null,
  wentOver: boolean,
): Hung {
  const kind = classify(rig, rest.pose, u);
  const falls = kind.status === 'unstable' && kind.mode === 'topples';
  const looks = falls && !fallen && !options.quick;
  const after = falls ? (fallen ?? (looks ? (fallFrom(rig, rest.pose, u, kind.eigen)?.pose ?? null) : null)) : null;
  return {
    rig,
    pose: rest.pose,
    kind,
    residual: rest.residual,
    steps: rest.steps,
    turned: turnBetween(rig, drawn, rest.pose),
    // A nearer stable rest, found after all, is how it hangs; anything else lets go of the drawn pose.
    turnsOver: falls || (wentOver && !(fallen && kind.status !== 'unstable')),
    after,
    drawn,
    unknowns: u,
  };
}

/** The drawn pose hung by translation only, to rounding level. */
function precise(rig: Rig, drawn: Pose): Pose {
  return descend(rig, drawn, unknowns(rig, false), 1e-11, 300).pose;
}

/** Whether the drawn pose falls by itself: negative stiffness there. */
function letsGo(rig: Rig, drawn: Pose, u: Unknowns): boolean {
  return (eigenAt(rig, precise(rig, drawn), u).values[0] ?? 0) < -zeroBand(rig);
}

function acceptable(rig: Rig, near: Rest, drawn: Pose, turned: number, u: Unknowns): boolean {
  const away = turnBetween(rig, drawn, near.pose);
  if (away > nearTurn || overstrained(rig, near.pose)) return false;
  return away < turned || (eigenAt(rig, near.pose, u).values[0] ?? 0) < -zeroBand(rig);
}

function furthest(rig: Rig, drawn: Pose, pose: Pose): string {
  const turn = (i: number) => {
    const at = 9 * i + 6;
    return [0, 1, 2].reduce((dot, d) => dot + drawn.rotation[at + d]! * pose.rotation[at + d]!, 0);
  };
  const order = rig.model.bodies.map((body, i) => ({ name: body.name, cosine: turn(i) }));
  return order.reduce((far, one) => (one.cosine < far.cosine ? one : far)).name;
}
