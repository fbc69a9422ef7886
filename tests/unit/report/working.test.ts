// The working, worked out again: every line that a sheet, a hover or the JSON report prints with figures is read by the language's own
// reader of amounts, and comes to the figure printed before it. Truth is the arithmetic; the tolerance is that of the digits printed.
import { describe, expect, test } from 'vitest';
import { hover } from '../../../server/editor/hover.ts';
import { type Derived, evaluateFormula, filledIn } from '../../../server/quantities/index.ts';
import { relativePath, sheetOf } from '../../../server/report/index.ts';
import { allFigures } from '../../../server/report/working.ts';
import { shapes } from '../../../server/vocabulary/shapes.ts';
import type { Snapshot } from '../../../server/workspace/index.ts';
import { goodSamples, sample } from '../../support/draw.ts';
import { head, lift } from '../../support/lift.ts';
import { type Rated, rated, rope } from '../../support/rated.ts';

/** As a person types it: the language has no sign for π and √ and no m/s², and a calculator no radians beside metres. */
const typed = (text: string): string =>
  text
    .replaceAll('π', `${Math.PI}`)
    .replaceAll('√(', 'sqrt(')
    .replaceAll('×', '*')
    .replaceAll('÷', '/')
    .replace(/([\d.]+) m\/s²/g, '($1 m/s / 1 s)')
    .replaceAll('−', '-')
    .replace(/(?<!(?:sin|cos|tan)\([^)]*) rad\b/g, '');

interface Line {
  readonly name: string;
  readonly result: string; // as printed
  readonly figures: string; // as printed
}

/** What each amount comes to in SI; a sentence where the language cannot read it. */
function amounts(texts: readonly string[]): readonly (number | string)[] {
  const s = lift(`${head}${texts.map((text, i) => `let r${i} = ${typed(text)}`).join('\n')}\n`);
  const found = new Map(s.plan.names.things.map(({ name, item }) => [name, item.value?.value]));
  return texts.map((text, i) => {
    const value = found.get(`r${i}`);
    if (value?.kind === 'quantity') return value.quantity.value;
    const rows = s.findings.filter(({ at }) => at.row.text.startsWith(`let r${i} =`));
    return `${text}: ${rows.map(({ message }) => message).join(' ')}`;
  });
}

/** One in the last place printed, in SI. */
function lastPlace(printed: string, si: number): number {
  const [number = ''] = /[\d,]+(?:\.\d+)?/.exec(printed) ?? [];
  const decimals = number.split('.')[1]?.length ?? 0;
  const shown = Number(number.replaceAll(',', ''));
  return shown === 0 ? 10 ** -decimals : Math.abs(si / shown) * 10 ** -decimals;
}

/** Lines that do not come to what stands before them. */
function wrong(lines: readonly Line[]): readonly string[] {
  const results = amounts(lines.map(({ result }) => result));
  const worked = amounts(lines.map(({ figures }) => figures));
  return lines.flatMap(({ name, result, figures }, i) => {
    const [is, comes] = [results[i], worked[i]];
    if (typeof is !== 'number' || typeof comes !== 'number') return [`${name}: ${typeof is === 'string' ? is : comes}`];
    const within = lastPlace(result, is) * 1.01 + 2e-6 * Math.abs(is);
    return Math.abs(is - comes) <= within ? [] : [`${name}: ${result} is not ${figures}, which comes to ${comes} (SI)`];
  });
}

/** Rows of the working that show figures, and those whose formula stays in words. */
function printed(s: Snapshot): { readonly lines: readonly Line[]; readonly words: readonly string[] } {
  const sheet = sheetOf(s, { pathOf: (file) => relativePath('', file) });
  const blocks = sheet.sections.find(({ id }) => id === 'working')?.blocks ?? [];
  const rows = blocks.flatMap((block) => (block.kind === 'table' ? block.rows : []));
  const lines: Line[] = [];
  const words: string[] = [];
  for (const { cells } of rows) {
    const [name = '', result = '', formula = ''] = cells.map(({ text }) => text);
    const [, figures] = / = (?!.* = )(.*)$/.exec(formula) ?? [];
    if (figures) lines.push({ name, result: result.replace(/ \(.*\)$/, ''), figures });
    else if (formula) words.push(formula.replace(/; .*$/, ''));
  }
  return { lines, words };
}

/** Parts by the twenty in assemblies of their own: a sum of more than forty is not written out. */
const inTwenties = (parts: readonly string[]): readonly string[] =>
  parts.flatMap((part, i) => (i % 20 === 0 ? [`  assembly "Shapes ${i / 20}"`, part] : [part]));

/** Every shape by its own example, one with cut-outs, one of another metal by the table of steel, and everything that adds and takes off. */
const everyShape = (): string => {
  const parts = Object.entries(shapes)
    .filter(([name]) => !['liquid', 'mesh'].includes(name))
    .filter(([, row]) => (row.under as readonly string[]).includes('part'))
    .map(
      ([name, row], i) =>
        `    part "${name}": ${row.example}, at (${i * 10} m, 1 m, -0.5 m), empty "seen", count 2, every (0, 7 m, 0)`,
    );
  return `${head}load "L"
  contingency 7 %
  free "stands loose"
${inTwenties(parts).join('\n')}
  part "Aluminium channel": section C8x11.5, length 3 m, of aluminium, at (0, 0, 3 m)
    less: hole, diameter 20 mm, depth 5 mm, at (0.2 m, 0, 0)
  part "Slab": box 3 x 2 x 0.2 m, of plain concrete, reinforcement 1.5 %, at (0, 0, -4 m)
    less: opening 0.5 x 0.4 m, at (1 m, 0, 0)
    less: hole, diameter 100 mm, at (-1 m, 0, 0)
  part "Drum": tube, outside 1.2 m, wall 8 mm, length 2 m, axis x, of carbon steel, at (0, 5 m, 0)
  part "Slops": liquid, level 0.3 m, of water, inside "Drum"
  part "Drum 2": tube, outside 1.2 m, wall 8 mm, length 2 m, of carbon steel, at (0, 9 m, 0)
  part "Brine": liquid, fill 40 %, of water, inside "Drum 2"
  part "Guess": item 500 kg ± 20 %, by estimate, at (3 m, 3 m, 1 m), contingency 30 %
  stated 900 t, by shipping paper, from "paper 3", tare 120 kg, without "Guess" and "Slops", contingency 2 %
  weighed "Pads": by jack reading, dated 2026-02-02, state "as it stands", tare 90 kg, accuracy 4 %
    support N: at (0, 0, 0), reads 4,000 kN
    support E: at (9, -1, 0) m, reads 2,000 kN
    support W: at (4, 8, 0) m, reads 3,000 kN
  weighed "Tipped": by jack reading, dated 2026-02-02, state "as it stands", tare 90 kg, accuracy 4 %, incline x 8 deg
    support N: at (0, 0, 0), reads 4,300 kN
    support E: at (9, -1, 0) m, reads 1,700 kN
    support W: at (4, 8, 0) m, reads 3,000 kN
`;
};

/** Sides, hitches, doubled slings, bends, a beam, two hooks' worth of factors: everything a capacity is multiplied with. */
const hung = `${head}load "L"
  contingency 4 %
  dynamic factor 1.1
  free "stands loose"
  part "Block": box 3 x 1 x 1 m, of carbon steel, at (0, 0, 0.5 m)
  part "Lid": plate 1 x 1 x 0.02 m, of carbon steel, at (1, 0, 1.02) m
  part "Bath": tube, outside 1 m, wall 10 mm, length 1 m, axis x, of carbon steel, at (0, 0, 1.6 m)
  part "Oil": liquid, fill 50 %, of water, inside "Bath"
  part "Hoses": item 60 kg, by estimate, at (0, 0, 1.1) m
  part "Valve": item 40 kg, by maker data, contingency 8 %, at (0, 0, 1.1) m
  pick A: at (-1.2, 0, 1) m, capacity 40 t ± 2 %, kind eye
  pick B: at (1.2, 0, 1) m, capacity 40 t
gear
  hook "Hook": weight 400 kg, capacity 60 t
  spreader "Bar": length 2.4 m, weight 300 kg, capacity 40 t, least angle 50 deg
    point TW: at (-1.2, 0, 0) m
    point TE: at (1.2, 0, 0) m
    point BW: at (-1.2, 0, -0.1) m
    point BE: at (1.2, 0, -0.1) m
  sling T1..T2: wire rope, diameter 44 mm, length 2.2 m, weight 30 kg, capacity 20 t ± 5 %
  sling D1..D2: wire rope, diameter 44 mm, length 2 m, weight 25 kg, capacity 20 t
  shackle K1..K6: weight 9 kg, capacity 25 t, length 120 mm
rig
  leg "Hook" > T1 > K1 > "Bar".TW
  leg "Hook" > T2 > K2 > "Bar".TE
  leg "Bar".BW > K3 > D1 > K5 > A
  leg "Bar".BE > K4 > D2 > K6 > B
stage "Lid off": without "Lid"
stage "Tilted": incline y 10 deg
crane "Crane"
  deduct "Jib" 350 kg
  deduct "Rope" 40 kg
`;

/** Everything that a capacity is multiplied with or divided by: hitches, bends, side loads, tags of whole sets, tolerances. */
const judged: Readonly<Record<string, Rated>> = {
  'a choker': { leg: 'hitch choker, around 200 mm, choke angle 100 deg ± 12 deg' },
  'a basket over a bend': { leg: 'hitch basket, around 100 mm, bend diameter 100 mm' },
  'a doubled sling': { leg: 'hitch doubled' },
  'a tag with a tolerance': { sling: `${rope} ± 3 %` },
  'shackles pulled from the side': {
    gear: ['shackle K1..K2: weight 2 kg, capacity 6 t, length 80 mm'],
    joined: 'K# > ',
    pick: 'capacity 500 t, kind lug',
  },
  'a flat eyebolt': { pick: 'capacity 4 t, kind eye', out: 2, length: 3 },
};

const plans: Readonly<Record<string, () => Snapshot>> = {
  ...Object.fromEntries(goodSamples().map((path) => [path, () => sample(path)])),
  'every shape': () => lift(everyShape()),
  'a rig with everything': () => lift(hung),
  ...Object.fromEntries(Object.entries(judged).map(([name, how]) => [name, () => rated(how)])),
};

/** What stays in words: it says how, and cannot be one line. */
const inWords: ReadonlySet<string> = new Set(['share of the inside below the level', 'lower end of its tolerance']);

const bare = (text: string): string => text.replace(/^.* = (?!.* = )/, '');

describe.each(Object.entries(plans))('the working of %s', (name, made) => {
  const s = made();

  test('comes out as printed on the sheet', () => {
    const { lines, words } = printed(s);
    expect(wrong(lines)).toEqual([]);
    expect(words.filter((formula) => !inWords.has(formula))).toEqual([]);
    if (!name.startsWith('library/')) expect(lines.length).toBeGreaterThan(5);
  });

  test('comes out for every figure behind every result, on a sheet or not', () => {
    const figures = allFigures(s.results.list).filter(({ value, formula }) => value !== null && formula !== '');
    const texts = figures.map((figure) => filledIn(figure, () => ({ system: s.plan.units, round: 'near' })));
    const shown = figures.flatMap((figure, i) => (texts[i]?.includes(' = ') ? [{ figure, text: bare(texts[i]) }] : []));
    const worked = amounts(shown.map(({ text }) => text));
    const off = shown.flatMap(({ figure, text }, i) => {
      const [is, comes] = [figure.value as number, worked[i]];
      return typeof comes === 'number' && Math.abs(is - comes) <= 2e-5 * Math.max(Math.abs(is), 0.1)
        ? []
        : [`${figure.formula}: ${is} is not ${text}: ${comes}`];
    });
    expect(off).toEqual([]);
  });

  test('is printed by no hover in another way', () => {
    const figures = new Set(
      allFigures(s.results.list).map((figure) => filledIn(figure, () => ({ system: s.plan.units, round: 'near' }))),
    );
    const { things } = s.plan.names;
    const lines = things
      .filter(({ item }) => item.file === s.file)
      .flatMap(
        ({ item }) => hover(s, s.tree.rowNumber(item.nameAt.row), item.nameAt.from + 1)?.plain.split('\n') ?? [],
      );
    const working = lines.filter((line) => / = .*[×÷−+].* = /.test(line));
    for (const line of working) expect(figures).toContain(line.replace(/^[^=]* = /, ''));
    if (name === 'every shape') expect(working.length).toBeGreaterThan(50);
  });

  test('comes out exactly for the formulas and figures of the JSON report', () => {
    const figures = allFigures(s.results.list).filter(
      ({ value, formula, inputs }) =>
        value !== null &&
        formula !== '' &&
        inputs.length > 0 && // the volume of a load is a sum of results that stand beside it
        !inWords.has(formula) &&
        inputs.every((input) => input.value.value !== null),
    );
    for (const { value, formula, inputs } of figures) {
      const comes = exact(formula, inputs);
      if (comes === null) continue;
      expect(Math.abs(comes - (value as number)), `${formula}: ${comes}, not ${value}`).toBeLessThanOrEqual(
        1e-9 * Math.max(1, Math.abs(value as number)),
      );
    }
  });
});

/** A formula of the report by its inputs in SI: sums and means by their words, others by our own reader of formulas; null for a mean whose places are results. */
function exact(formula: string, inputs: Derived['inputs']): number | null {
  const by = new Map(inputs.map(({ label, value }) => [label, value.value as number]));
  if (/^sum of [a-z ]+$/.test(formula)) return inputs.reduce((sum, { value }) => sum + (value.value as number), 0);
  if (/^sum of .* place/.test(formula)) {
    const pairs = inputs.flatMap(({ label, value }) => {
      const place = by.get(`place of ${label}`);
      return place === undefined ? [] : [[value.value as number, place] as const];
    });
    const weight = pairs.reduce((sum, [one]) => sum + one, 0);
    return pairs.length ? pairs.reduce((sum, [one, place]) => sum + one * place, 0) / weight : null;
  }
  const names = [...by.keys()].sort((a, b) => b.length - a.length);
  const plain = names.reduce((text, label, i) => text.replaceAll(label, `§${i}§`), formula);
  return evaluateFormula(
    plain.replace(/§(\d+)§/g, 'input$1'),
    Object.fromEntries(names.map((label, i) => [`input${i}`, by.get(label) as number])),
  );
}
