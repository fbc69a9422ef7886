// Hover: the result first, then its working, then what it rests on and the cautions; never over 25 lines.
import { expect, test } from 'vitest';
import { hover } from '../../../server/editor/hover.ts';
import { goodSamples, hoverAt, opened, sample } from '../../support/draw.ts';
import { column, instead, tank, withCursor } from './plans.ts';

const at = (words: string, text = tank, n = 1) => hoverAt(withCursor(text, words, { n }));

test('a part shows its weight, its formula with the values put in, its share, its centre and its source', () => {
  expect(at('"Shell": tube')).toBe(`\
part "Shell": tube, outside 1 m, wall 8 mm, length 1.5 m, of stainless steel, at (0, 0, 0.75 m), empty "drained"
     ~~~~~~~
part "Shell": 299.2 kg
weight = volume × density = 0.0373975 m³ × 8,000 kg/m³
volume = π × (outside − wall) × wall × length = π × (1 m − 0.008 m) × 0.008 m × 1.5 m
46.3 % of all parts of the load
centre of gravity (0 m, 0 m, 0.76 m) in the load's axes
its box: 1 m × 1 m × 1.5 m
A default of this program (EN 12524:2000 7900; 304 and 316 mill data 7900 to 8000 (from memory)), not a rule of your site or country.`);
});

test('a part that is weighed says what it rests on, with the place', () => {
  expect(at('"Pump": item').split('\n').slice(2)).toEqual([
    'part "Pump": 85 kg',
    '13.1 % of all parts of the load',
    "centre of gravity (0 m, 0 m, 1.67 m) in the load's axes",
    'its box: 0.4 m × 0.4 m × 0.3 m',
    'Rests on: by maker data, data sheet 7 (line 15)',
  ]);
});

test('an estimate carries its caution, and so does the load that it is in', () => {
  const caution =
    'Rests on an estimate (Feet, no document is named); 25 % is added under the built-in contingency of an estimate. Weigh before the lift where you can.';
  expect(at('"Feet": item')).toContain(`weight = each × count = 6 kg × 4\n`);
  expect(at('"Feet": item')).toContain(caution);
  expect(at('"Tank"')).toContain(caution);
});

test('a load shows its candidates, its heaviest parts and the comment above it', () => {
  expect(at('"Tank"').split('\n').slice(2, 8)).toEqual([
    'load "Tank": 684 kg, 5.8 % added for doubt to the calculated weight',
    'calculated 646.9 kg + 5.8 % = 684 kg, governs (line 7)',
    '"Body" 434.5 kg, 67.2 % (line 12)',
    '"Base" 188.4 kg, 29.1 % (line 11)',
    '"Feet" 24 kg, 3.7 % (line 16)',
    "centre of gravity (0 m, −18.6 mm, 0.688 m) in the load's axes, calculated",
  ]);
  expect(at('"Tank"').split('\n').slice(-2)).toEqual(['Drained last week.', 'Manhole shut.']);
});

test('a wood of a stated moisture shows its dry wood, not the wet density of its name', () => {
  const text = instead(
    tank,
    '  part "Feet"',
    '  part "Sleepers": box 2 x 0.2 x 0.2 m, of oak, moisture 30 %, at (0, 0, 0)\n  part "Feet"',
  );
  const said = at('oak, moisture', text);
  expect(said).toMatch(/white oak: 6\d\d\.?\d* kg\/m³ of dry wood by its green volume/);
  expect(said).toContain('A default of this program (USDA Wood Handbook');
});

test('a member along a line shows the length of its line in the working', () => {
  const text = instead(
    tank,
    '  part "Feet"',
    '  part "Rail": bar 20 mm, along (0, 0, 0) (0, 0, 1) (2, 0, 1) m\n  part "Feet"',
  );
  expect(at('"Rail"', text)).toContain('volume = π ÷ 4 × diameter × diameter × length = π ÷ 4 × 0.02 m × 0.02 m × 3 m');
});

test('a built-in contingency is called a default of this program', () => {
  const text = instead(column, '  contingency 0 %\n', '');
  expect(at('stated', text)).toContain(
    'A default of this program (3 %, built in for weighbridge, common practice), not a rule of your site or country.',
  );
});

test('what is not known says why, where, and that unknown is not zero', () => {
  const broken = instead(tank, 'of stainless steel, at (0', 'of stainles stel, at (0');
  const said = at('"Body"', broken);
  expect(said).toContain('assembly "Body": not known');
  expect(said).toContain(
    'Not known: stainles stel is not among the materials known here. Everything built on it is not known either. Unknown is not zero. (line 13)',
  );
});

test('an assumption is said with the number that rests on it', () => {
  const text = instead(
    tank,
    'of carbon steel, at (0, 0, 5 mm)',
    'of carbon steel, at (0, 0, 5 mm), assumption "plate is as drawn"',
  );
  expect(at('"Base"', text)).toContain(
    'Assumed: plate is as drawn. Nobody has confirmed it for this lift. Find evidence or measure before relying on this number.',
  );
});

test('gear shows how much of its capacity is used, wherever its name stands', () => {
  // The block's 1 t, the shackle's 1 kg and its own 4 kg: 1,005 of 1,600 kg.
  const used = at('S1 > K1', column);
  expect(used.split('\n')[2]).toMatch(/^sling S1: 6[23](?:\.\d+)? % of capacity used$/);
  expect(used).toContain('capacity 1,600 kg on one straight vertical leg');
  expect(used).toContain('weight 4 kg, counted under the hook');
  expect(used.split('\n').at(-1)).toBe('declared (line 11)');
});

test('the keyword of a leg shows every item from the hook down', () => {
  const said = at('leg', column).split('\n');
  expect(said[2]).toMatch(/^leg: 6\d(?:\.\d+)? % of capacity used in S1, its weakest item$/);
  expect(said.slice(3, 7).map((line) => line.split(':')[0])).toEqual([
    'hook "Hook"',
    'sling S1',
    'shackle K1',
    'pick TOP',
  ]);
});

test('a range names the first line of each of its items', () => {
  const said = at('S1..S4').split('\n').slice(1);
  expect(said.slice(0, 2)).toEqual(['      ~~~~~~', 'S1..S4: 4 items']);
});

test('plan, rig and expect show their totals and states', () => {
  expect(at('plan "Set').split('\n').slice(2, 6)).toEqual([
    'gross load: 711 kg',
    'load weight 684 kg, with what is added for doubt',
    'rigging weight 27 kg',
    'deductions 0 kg',
  ]);
  expect(at('rig: crane').split('\n')[2]).toBe('rigging weight: 27 kg');
  expect(at('expect load').split('\n').slice(2, 4)).toEqual(['met: load weight < 1 t', 'load weight: 684 kg (line 1)']);
});

test('a quantity is read back in the other system', () => {
  // 1 ft = 0.3048 m and 1 lb = 0.45359237 kg exactly (international yard and pound, 1959).
  expect(at('1.5 m').split('\n').slice(0, 3)).toEqual([
    'part "Shell": tube, outside 1 m, wall 8 mm, length 1.5 m, of stainless steel, at (0, 0, 0.75 m), empty "drained"',
    '                                                   ~~~~~',
    '1.5 m = 4.92126 ft',
  ]);
  const us = '\nload "Skid"\n  stated 9,850 lb, by marking, from "plate"\n  pick A: at (12 ft 6 1/2 in, 0, 0)';
  expect(at('9,850', us).split('\n').slice(2)).toEqual([
    '9,850 lb = 4,467.89 kg',
    'nine thousand eight hundred fifty pounds',
    'stated: The figure as stated.',
  ]);
  expect(at('12 ft', us).split('\n')[2]).toBe('12 ft 6 1/2 in = 3.8227 m');
});

test('what may be carried is rounded down in the other system, a weight up', () => {
  // 2 t = 4409.245… lb; 85 kg = 187.39292… lb; three digits never stand behind a point alone, since they could be thousands.
  expect(at('2 t\n', tank).split('\n')[2]).toBe('2 t = 4,409.24 lb');
  expect(at('85 kg', tank).split('\n')[2]).toBe('85 kg = 187.3930 lb');
});

test('a force written for a weight shows the mass it counts as', () => {
  const text = '\nload "Skid"\n  stated 25 kN, by load cell, from "cell 4"';
  expect(at('25 kN', text)).toContain('as a weight 2,550 kg, 5,621 lb (by 9.80665 m/s²)');
});

test('an expression shows what it comes to, a tolerance its ends, a closed bracket its unit', () => {
  const text =
    '\nlet rail = 4 * 55 ft\ncrane "Yard"\n  position "a": radius 26 ft ± 1 ft\nload "L"\n  part "P": box 4 x 2 x 1 ft, of concrete, at (5, 0, 1) ft';
  expect(at('55 ft', text)).toContain('together 220 ft');
  expect(at('26 ft', text)).toContain('from 25 ft to 27 ft');
  expect(at('4 x 2', text).split('\n')[2]).toBe('4 ft = 1.2192 m');
  expect(at('5, 0', text).split('\n')[2]).toBe('5 ft = 1.5240 m');
});

test('names without a result show their line, words of the language their help', () => {
  expect(at('wide x').split('\n').slice(2)).toEqual(['let wide = 1.2 m', 'declared (line 4)']);
  expect(at('"gear.liftplan"').split('\n').slice(2)).toEqual([
    'gear.liftplan',
    'names it gives: 1 × hook, 4 × sling, 4 × shackle',
  ]);
  expect(at('datum').split('\n')[2]).toBe('datum');
  expect(at('tube, outside').split('\n').slice(2, 5)).toEqual([
    'tube',
    'A round tube.',
    'own axis; datum point: z; box centre; wall or bore',
  ]);
  expect(at('maker data').split('\n').slice(2)).toEqual([
    'maker data',
    'A weight from the maker: data sheet, catalogue, manual.',
  ]);
});

test('a material and a section show figure, range, source, and why that end is used', () => {
  const said = at('stainless steel').split('\n').slice(2);
  expect(said[0]).toBe('stainless steel: 8,000 kg/m³');
  expect(said[1]).toBe(
    'Sources give 7,700 kg/m³ to 8,000 kg/m³; the heaviest is used, so that a doubt never makes the load lighter.',
  );
  // W12X50: 50 lb/ft by its designation.
  const text =
    '\nplan "x": date 2026-01-05\n  units US\nload "L"\n  part "Rail": section W12x50, length 20 ft, at (0, 0, 0)';
  expect(at('W12x50', text).split('\n').slice(2, 3)).toEqual(['W12X50: 50 lb/ft']);
});

test('nothing is said in a comment, on blank lines, or of what nothing is known of', () => {
  expect(at('Drained')).toBe('nothing');
  expect(hoverAt('load "A"\n|\n')).toBe('nothing');
  expect(hoverAt('load "A"\n  par|t "B": on "Nowhere"')).toContain('part');
  expect(hoverAt('load "A"\n  part "B": on "Now|here"')).toBe('nothing');
});

test('Markdown says the same words, with links, and no mark of its own gets through', () => {
  const { s, row, offset } = opened(withCursor(instead(tank, '"Shell": tube', '"*She_ll* <b>": tube'), '*She_ll*'));
  const found = hover(s, row, offset);
  expect(found?.markdown.split('\n')[0]).toBe('**part "\\*She\\_ll\\* \\<b\\>": 299.2 kg**');
  const { s: other } = opened(tank);
  const load = hover(other, 6, 6);
  expect(load?.markdown).toContain('([line 12](plan.liftplan#L12))');
  expect(load?.markdown.replaceAll('\\', '').split('\n')[0]).toBe(`**${load?.plain.split('\n')[0]}**`);
});

test('no hover of any sample is longer than 25 lines, and each begins with words', () => {
  let seen = 0;
  for (const path of goodSamples()) {
    const s = sample(path);
    s.tree.rows.forEach(({ text }, row) => {
      for (let offset = 0; offset <= text.length; offset += 3) {
        const found = hover(s, row, offset);
        if (!found) continue;
        seen++;
        const lines = found.plain.split('\n');
        expect(lines.length, `${path}:${row + 1}:${offset}`).toBeLessThanOrEqual(25);
        expect(lines[0]?.trim()).not.toBe('');
        expect(found.plain).not.toMatch(/NaN|undefined|Infinity|\[object/);
        expect(found.markdown).not.toMatch(/<[a-z/]/i);
        expect(offset >= found.at.from && offset <= found.at.to, `${path}:${row + 1}:${offset}`).toBe(true);
      }
    });
  }
  expect(seen).toBeGreaterThan(1000);
});

test('a paper says whether it is there, how large it is, and whether it is the one that was seen', () => {
  const text = (seen: string, paper = 'Gross 4,850 lb') =>
    `\nload "L"\n  stated 4,850 lb, by marking, fr|om "plate.txt, lower line"${seen}\n--- plate.txt\n${paper}`;
  const mark = '7a8a-080c-ca31'; // sha256sum of GNU coreutils over the same 14 bytes
  expect(hoverAt(text(''))).toBe(`stated 4,850 lb, by marking, from "plate.txt, lower line"
                             ~~~~~~~~~~~~~~~~~~~~~~~~~~~~
plate.txt
The file is there: 14 bytes, marked ${mark}.
Which version was looked at is not said: seen "${mark}" would say so.`);
  expect(hoverAt(text(`, seen "${mark}"`))).toContain('It is the one that was seen.');
  expect(hoverAt(text(`, seen "${mark}"`, 'Gross 4,950 lb'))).toContain('It is not the one that was seen. Look again.');
  expect(hoverAt(text('').replace('"plate.txt', '"plates.txt'))).toContain('There is no such file');
  expect(hoverAt(text('').replace('"plate.txt, lower line"', '"plate on the rail"'))).toContain('document or person');
});

const stopping = (holds: string) => `plan "x": date 2026-03-02, units metric
load "Load"
  st|op at 4,300 kg
  stated 4,000 kg, by drawing, from "D-1", contingency 5 %
  cog (0, 0, -1 m), by drawing, from "D-1"
  ${holds}
  pick W: at (-1, 0, 0) m, capacity 10 t
  pick E: at (1, 0, 0) m, capacity 10 t
gear
  block Block: weight 300 kg, capacity 20 t
  load cell Cell: weight 20 kg, capacity 10 t
  sling S1..S2: length 2 m, wire rope, diameter 20 mm, weight 15 kg, capacity 10 t
rig
  leg Block > Cell > S1 > W, direct "x"
  leg Block > Cell > S2 > E, direct "x"
`;

test('"stop at" says what each instrument is expected to show, and where the lift stops on it', () => {
  expect(hoverAt(stopping('free "loose"'))).toBe(`stop at 4,300 kg
~~~~~~~~~~~~~~~~
stop reading of Load
Cell, load hanging free: 4,030 kg to 4,230 kg (line 11)
of that gear: 30 kg
stop at: 4,300 kg
the crane's indicator, load hanging free: 4,350 kg to 4,550 kg
of that gear: 350 kg
stop at: 4,620 kg`);
});

test('"held by" says how much more is pulled, on what, and what is not known', () => {
  const text = (clauses: string) => stopping(`hel|d by "grout"${clauses}`).replace('st|op', 'stop');
  const found = hoverAt(text(', breakout 500 kg'));
  expect(found).toContain('up to 500 kg more than its weight');
  expect(found).toContain('while it is broken free: up to 4,730 kg');
  expect(hoverAt(text(', released "nuts off"'))).toContain('let go before the load is lifted');
  expect(hoverAt(text(''))).toContain('Nothing says how “grout” lets go of Load');
  expect(hoverAt(text(', breakout ?'))).toContain('breakout is not known yet (?).');
});

test('an envelope says that it is an upper bound, and how much of the load rests on bounds, on its name and on its word', () => {
  const text = `load "Set": contingency 5 %
  part "Casing": envelope 1 x 1 x 1 m, density 3,000 kg/m3, at (0, 0, 0)
  part "Base": item 1,000 kg, by drawing, at (0, 0, 0)
`;
  const said =
    'An upper bound: all that is in it weighs no more, as long as nothing in it is denser. 75 % of the weight of all parts rests on such bounds.';
  expect(at('"Casing"', text)).toContain(said); // 3,000 of 4,000 kg
  expect(at('envelope', text)).toContain(said);
  expect(at('"Base"', text)).not.toContain('bound');
  expect(at('envelope', text.replace('1,000 kg', '?'))).toContain(
    'Not known how much of the load rests on such bounds.',
  );
});
