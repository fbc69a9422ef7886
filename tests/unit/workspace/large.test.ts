// A plan of hundreds of parts, written on at random: what is kept from version to version never says anything but what a run from nothing says.
import { expect, test } from 'vitest';
import { report } from '../../../server/report/render/json.ts';
import { memoryFiles, type Snapshot, Workspace } from '../../../server/workspace/index.ts';
import { check } from '../../../server/workspace/memory.ts';
import { plan } from '../../bench/plans.ts';
import { edits } from '../../support/edits.ts';

const file = 'plan.liftplan';

/** Parts in a row longer than one batch, assemblies between them and in one another, a material, parts on others, liquids, tolerances. */
function nested(): string {
  const lines: string[] = [];
  let parts = 0;
  for (const line of plan(170, 3).replaceAll('of aluminium alloy', 'of "Odd"').split('\n')) {
    if (line.startsWith('load')) lines.push('material "Odd": density 4000 kg/m3');
    lines.push(line);
    if (!line.startsWith('  part') || ++parts % 29 !== 0) continue;
    lines.push(
      `  assembly "A${parts}": at (${parts}, 0, 0) mm, turn 30 deg about z`,
      `    part "T${parts}": tube, outside 800 mm, wall 10 mm, length 2 m, of carbon steel, on "L${parts}"`,
      `    part "W${parts}": liquid 0.1 m3, of water, inside "T${parts}"`,
      `    assembly "B${parts}": at (0, 0, 1 m)`,
      `      part "L${parts}": box 1 m x 1 m x 10 mm, of "Odd", at (0, 0, 0)`,
    );
    for (let n = 0; n < (parts === 29 ? 70 : 2); n++)
      lines.push(`    part "P${parts}-${n}": item ${n + 1} kg ± 5 %, by drawing, from "d", at (${n} ± 2, 0, 0) mm`);
  }
  return lines.join('\n');
}

/** All that a snapshot says, as text. */
function picture(snapshot: Snapshot): string {
  const { results, findings, plan: bound, tree } = snapshot;
  const said = findings.map(({ slug, message, at, related, fixes }) => [
    `${slug} ${tree.rowNumber(at.row)}:${at.from}-${at.to} ${message}`,
    ...related.map((one) => `${one.message} ${one.at.row.text}`),
    ...fixes.map(({ title }) => title),
  ]);
  const things = bound.names.things.map((thing) => [thing.kind, ...thing.path, thing.clash, thing.load?.name]);
  return JSON.stringify([report(snapshot, (path) => path), said, things, results.notJudged], null, 1);
}

test.each([1, 2, 3])('random edits, seed %i', { timeout: 120_000 }, (seed) => {
  const text = nested();
  const workspace = new Workspace(memoryFiles(new Map()));
  workspace.openText(file, 1, text);
  const made = edits(text, seed);
  for (let version = 2; version <= 121; version++) {
    const { edit, text: now } = made.next().value as { edit: { range: never; text: string }; text: string };
    workspace.changeText(file, version, [edit]);
    const warm = workspace.snapshot(file) as Snapshot;
    expect(warm.setAside).toBe(false);
    if (version % 10 !== 0) continue;
    const cold = check({ [file]: now }, file);
    expect(picture(warm), `after ${version - 1} edits, seed ${seed}`).toBe(picture(cold));
  }
});

/** Each changes what parts that are not written on rest on: a material, a place around them, a rule, a name, a line before them. */
const changes: readonly (readonly [string, string, string])[] = [
  ['a material', 'density 4000 kg/m3', 'density 4001 kg/m3'],
  ['the place of an assembly', 'assembly "A29": at (29, 0, 0) mm', 'assembly "A29": at (29, 7, 0) mm'],
  ['what a part stands on', 'box 1 m x 1 m x 10 mm', 'box 1 m x 1 m x 15 mm'],
  ['the contingency of the load', 'contingency 10 %', 'contingency 11 %'],
  ['a second part of a name', 'part "P29-7"', 'part "P29-8"'],
  [
    'a line more',
    '  contingency 10 %\n',
    '  contingency 10 %\n\n  note "seen"\n  part "New": item 3 kg, by estimate\n',
  ],
  ['a length that parts take', 'let long = 6 m', 'let long = 7 m'],
  ['a value that is gone', 'let long = 6 m', 'let longer = 6 m'],
  ['the units', 'units metric', 'units US'],
];

test.each(changes)('%s, changed and changed back', { timeout: 120_000 }, (_, from, to) => {
  const text = nested().replace('length 2 m, of carbon steel', 'length long / 3, of carbon steel');
  const workspace = new Workspace(memoryFiles(new Map()));
  workspace.openText(file, 1, text);
  expect(workspace.snapshot(file)?.results.totals.gross.value).toBeGreaterThan(1_000); // all of it is known
  expect(text).toContain(from);
  for (const [version, now] of [text.replace(from, to), text].entries()) {
    workspace.changeText(file, version + 2, [{ range: null, text: now }]);
    expect(picture(workspace.snapshot(file) as Snapshot)).toBe(picture(check({ [file]: now }, file)));
  }
});
