// Plans of the editor's tests: invented, small enough to be worked out by hand.

/** A tank with an assembly, a liquid, a library and everything that has a result. */
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
    part "Shell": tube, outside 1 m, wall 8 mm, length 1.5 m, of stainless steel, at (0, 0, 0.75 m)
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

/** The same text with a cursor before the n-th of some words. */
export function withCursor(text: string, words: string, ahead = 1, n = 1): string {
  let at = -1;
  for (let i = 0; i < n; i++) at = text.indexOf(words, at + 1);
  if (at < 0) throw new Error(`There is no ${words}.`);
  return `${text.slice(0, at + ahead)}|${text.slice(at + ahead)}`;
}
