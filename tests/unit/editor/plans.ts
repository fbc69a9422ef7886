// Plans of the editor's tests: invented, small enough to be worked out by hand.

/** A tank with an assembly, an estimate and a library. */
export const tank = `
plan "Set tank 4": date 2026-04-14, revision B, site "Dairy, cold store"
  units metric
use "gear.liftplan"
let wide = 1.2 m
# Drained last week.
# Manhole shut.
load "Tank"
  datum "middle of the base plate, underside"
  contingency 5 %
  free "stands on rollers, seen by the foreman"
  part "Base": plate 2 m x wide x 10 mm, of carbon steel, at (0, 0, 5 mm)
  assembly "Body": at (0, 0, 10 mm)
    part "Shell": tube, outside 1 m, wall 8 mm, length 1.5 m, of stainless steel, at (0, 0, 0.75 m), empty "drained"
    part "Cover": cylinder, diameter 1 m, length 8 mm, of stainless steel, on "Shell"
    part "Pump": item 85 kg, by maker data, from "data sheet 7", size 0.4 x 0.4 x 0.3 m, on "Cover"
  part "Feet": item 6 kg, by estimate, size 0.1 x 0.1 x 0.1 m, count 4, at (-0.9 m, -0.5 m, -50 mm), every (0.6 m, 0, 0)
  pick W: at (-0.6 m, 0, 1.6 m), capacity 1 t, kind lug
  pick E: at (0.6 m, 0, 1.6 m), capacity 1 t, kind lug
rig: crane "Yard"
  leg "Main hook" > S1 > K1 > W
  leg "Main hook" > S2 > K2 > E
crane "Yard": kind mobile, setup "outriggers out"
  position "lift-off": radius 6 m, boom 18 m
expect load weight < 1 t
expect sling capacity used <= 60 %
--- gear.liftplan
# Tested every spring.
gear
  hook "Main hook": weight 20 kg, capacity 5 t
  sling S1..S4: wire rope, diameter 12 mm, length 2 m, weight 3 kg, capacity 1.3 t
  shackle K1..K4: weight 0.5 kg, capacity 2 t
`;

/** One straight leg: each item carries what hangs below it and nothing else. */
export const column = `
plan "Lift a counterweight": date 2026-04-14
  units metric
load "Block"
  free "stands loose"
  contingency 0 %
  stated 1 t, by weighbridge, from "ticket 12"
  part "Block": item 1 t, by weighbridge, size 1 x 1 x 1 m, at (0, 0, 0.5 m)
  pick TOP: at (0, 0, 1 m), capacity 2 t
gear
  hook "Hook": weight 30 kg, capacity 5 t
  sling S1: wire rope, diameter 12 mm, length 2 m, weight 4 kg, capacity 1,600 kg
  shackle K1: weight 1 kg, capacity 2 t, length 60 mm
rig
  leg "Hook" > S1 > K1 > TOP
`;

/** The same text with a cursor in the n-th of some words, behind their first character. */
export function withCursor(text: string, words: string, { into = 1, n = 1 } = {}): string {
  let at = -1;
  for (let i = 0; i < n; i++) at = text.indexOf(words, at + 1);
  if (at < 0) throw new Error(`There is no ${words}.`);
  return `${text.slice(0, at + into)}|${text.slice(at + into)}`;
}

/** The same text with one line in the place of another. */
export function instead(text: string, line: string, other: string): string {
  if (!text.includes(line)) throw new Error(`There is no line ${line}.`);
  return text.replace(line, other);
}
