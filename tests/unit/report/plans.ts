// A plan that says something of everything, its library, and one with an open point: all invented.

import type { Snapshot } from '../../../server/workspace/index.ts';
import { check } from '../../../server/workspace/memory.ts';

export const library = `gear
  sling "Sling 9": wire rope, diameter 20 mm, length 3 m, weight 12 kg, capacity 4 t, from "register page 2", serial "Q-9"
chart "Short boom": setup "full counterweight", from "maker's chart 12", compared by "second rigger, 3 March"
  columns 18 m
  radius 6 m: 12,000 kg
  radius 8 m: 9,000 kg
rules "Quarry rules"
  limit crane capacity used <= 80 %, from "quarry rule 2"
`;

export const plan = `plan "Set the filter vessel": date 2026-09-02, revision B, site "Upper quarry", prepared by "lift office", category "ordinary", reference "job 7"
  note "Road closed from six to eight."
use "library/yard.liftplan"
let side = 1.2 m
load "Filter"
  datum "middle of the base"
  contingency 5 %
  stated 1,240 kg, by drawing, from "drawing F-3"
  assembly "Body": at (0, 0, 0)
    part "Base": plate side x side x 20 mm, of carbon steel, at (0, 0, 10 mm)
      less hole, diameter 100 mm
    part "Shell": tube, outside 1 m, wall 10 mm, length 2 m, of carbon steel, at (0, 0, 1,020 mm), empty "lid off, seen 1 September"
  part "Sand": item 500 kg ± 20 kg, by estimate, at (0, 0, 600 mm)
  pick E: at (500 mm, 0, 2 m), capacity 3 t
  pick W: at (-500 mm, 0, 2 m), capacity 3 t
gear
  hook "Hook": weight 90 kg, capacity 10 t
  sling A: like "Sling 9"
  sling B: like "Sling 9"
  shackle K1..K2: weight 2 kg, capacity 4.75 t
  shackle K3: weight 2 kg, capacity 4.75 t, spare
rig: crane "Quarry crane"
  leg "Hook" > A > K1 > E
  leg "Hook" > B > K2 > W
crane "Quarry crane": kind mobile, chart "Short boom", setup "full counterweight"
  deduct "Jib": 200 kg
  deduct "Rope": none, from "maker's chart 12, note 4"
ground "Rock": bearing 400 kPa, from "survey 1"
surroundings: exclusion 10 m
  power line "Field line": distance 40 m, voltage 11 kV
people: signals "radio, channel 2"
  role "Person in charge": named "to be named on the day"
steps
  step "Raise 100 mm, check level and reading", hold
  step "Set down on the plinth", who "crew"
hazard "Sand shifts": control "lid on", remaining "some tilt"
approval "Person in charge": named "to be named", mark "0000-0000-0000"
assumption "The plinth is level."
expect gross load <= 2,500 kg
expect load "Filter" weight < 1,500 kg
waive holding-unstated, on "Filter", reason "new vessel on timber", approved by "the works engineer"
`;

export const files = { 'quarry/filter.liftplan': plan, 'quarry/library/yard.liftplan': library };

/** The plan with some words changed. Throws where they do not stand there. */
export function changed(from: string, to: string, library_ = library): Snapshot {
  if (!plan.includes(from)) throw new Error(`The plan does not say ${from}.`);
  return check(
    { 'quarry/filter.liftplan': plan.replace(from, to), 'quarry/library/yard.liftplan': library_ },
    'quarry/filter.liftplan',
  );
}

export const snapshot = (): Snapshot => check(files, 'quarry/filter.liftplan');
