// Small plans for the tests of the server; scenes of our own invention.

/** A workbench whose only finding is asked for: everything a small plan needs is stated. */
export const bench = `plan "Move a workbench": date 2026-05-18, revision A, site "Hall 2", units metric
load "Bench"
  datum "middle of the frame, underside of the feet"
  contingency 5 %
  held by "nothing", released "stands free, seen on site"
  part "Frame": box 2 m x 1 m x 10 mm, of carbon steel, at (0, 0, 5 mm)
`;

/** A plan that takes its gear from a library. */
export const hung = `plan "Lift a cover": date 2026-06-02, revision B, site "Yard", units metric
use "library/gear.liftplan"
load "Cover"
  datum "middle of the cover, underside"
  contingency 5 %
  held by "nothing", released "bolts out, seen on site"
  part "Disc": cylinder, diameter 1 m, length 20 mm, of carbon steel, at (0, 0, 10 mm)
  pick P1: at (-0.4, 0, 0.02) m, capacity 1 t, kind lug, from "drawing C-1"
  pick P2: at (0.4, 0, 0.02) m, capacity 1 t, kind lug, from "drawing C-1"
rig
  leg "Block 5" > R1 > K1 > P1
  leg "Block 5" > R2 > K2 > P2
`;

export const gear = `gear
  block "Block 5": weight 60 kg, capacity 5 t, from "register"
  sling R1..R2: wire rope, diameter 12 mm, length 1.5 m, weight 1.1 kg, capacity 1 t, from "register"
  shackle K1..K2: weight 0.4 kg, capacity 2 t, from "register"
`;

/** The row of a text that holds some words, and where in it they begin. */
export function whereIs(text: string, words: string): { readonly line: number; readonly character: number } {
  const lines = text.split('\n');
  const line = lines.findIndex((one) => one.includes(words));
  if (line < 0) throw new Error(`There is no "${words}" in the text.`);
  return { line, character: (lines[line] as string).indexOf(words) };
}

/** The stretch that some words take up. */
export function stretch(text: string, words: string) {
  const start = whereIs(text, words);
  return { start, end: { line: start.line, character: start.character + words.length } };
}
