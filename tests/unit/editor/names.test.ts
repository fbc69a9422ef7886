// Finding one's way by names: definition, references, highlights, the outline, symbols, the load path and the chain of `like`.
import { expect, test } from 'vitest';
import { definition, highlights, references } from '../../../server/editor/definition.ts';
import { carriedBy, carrierAt, carries, likeOf, takenBy } from '../../../server/editor/hierarchy.ts';
import { outline, symbols } from '../../../server/editor/outline.ts';
import type { Symbol } from '../../../server/editor/types.ts';
import { usesIn } from '../../../server/editor/uses.ts';
import type { Place } from '../../../server/syntax/types.ts';
import { check } from '../../../server/workspace/memory.ts';
import { goodSamples, opened, sample, underlined } from '../../support/draw.ts';
import { fixture } from '../../support/fixture.ts';
import { column, instead, tank, withCursor } from './plans.ts';

const words = ({ row, from, to }: Place) => row.text.slice(from, to);
const found = (text: string) => {
  const { s, row, offset } = opened(text);
  return {
    s,
    row,
    offset,
    definition: definition(s, row, offset),
    references: references(s, row, offset),
    highlights: highlights(s, row, offset),
  };
};

test('a name leads to where it is declared, in this file or another', () => {
  expect(found(withCursor(tank, '"Shell"', { n: 2 })).definition.map(underlined)).toEqual([
    `part "Shell": tube, outside 1 m, wall 8 mm, length 1.5 m, of stainless steel, at (0, 0, 0.75 m), empty "drained"\n     ~~~~~~~`,
  ]);
  const [sling] = found(withCursor(tank, 'S2 > K2')).definition;
  expect(sling && words(sling)).toBe('S1..S4');
  expect(sling?.row.file).toBe('gear.liftplan');
  expect(found(withCursor(tank, 'wide x')).definition.map(words)).toEqual(['wide']);
  expect(found(withCursor(tank, '"Yard"')).definition.map(underlined)).toEqual([
    'crane "Yard": kind mobile, setup "outriggers out"\n      ~~~~~~',
  ]);
});

test('the path of a use line leads to the file', () => {
  const [place] = found(withCursor(tank, 'gear.liftplan')).definition;
  expect(place?.row.file).toBe('gear.liftplan');
  expect(place?.row.text).toBe('# Tested every spring.');
});

test('a dotted name leads to the thing and to what it stands in', () => {
  const text =
    '\nload "A"\n  pick N: at (0, 0, 0)\nload "B"\n  pick N: at (0, 0, 0)\ngear\n  hook H: weight 1 kg\nrig\n  leg H > "B".N';
  expect(found(withCursor(text, '"B".N', { into: 1 })).definition.map(underlined)).toEqual(['load "B"\n     ~~~']);
  const { s, definition: places } = found(withCursor(text, '"B".N', { into: 4 }));
  expect(places.map(({ row }) => s.tree.rowNumber(row))).toEqual([3]);
});

test('references count every use in every file of the plan, and of the plans that use it', () => {
  const here = found(withCursor(tank, 'S1 > K1'));
  expect(here.references.map(({ at, declares }) => `${at.row.file} ${words(at)} ${declares}`).sort()).toEqual([
    'gear.liftplan S1..S4 true',
    'plan.liftplan S1 false',
  ]);
  const { files } = fixture(tank);
  const library = check({ ...files }, 'gear.liftplan');
  const from = references(library, 3, 9, [check({ ...files }, 'plan.liftplan')]);
  expect(from.map(({ at }) => `${at.row.file} ${words(at)}`).sort()).toEqual([
    'gear.liftplan S1..S4',
    'plan.liftplan S1',
    'plan.liftplan S2',
  ]);
});

test('a name counts in bounds, in rules, in papers and in expressions', () => {
  const text = `${column}expect sling S1 angle >= 60 deg
waive hang-tilted, on S1, reason "r", approved by "p"
let deck = 2 m
let twice = 2 * deck
`;
  expect(found(withCursor(text, 'S1 angle')).references.map(({ at }) => underlined(at).split('\n')[0])).toEqual([
    'sling S1: wire rope, diameter 12 mm, length 2 m, weight 4 kg, capacity 1,600 kg',
    'leg "Hook" > S1 > K1 > TOP',
    'expect sling S1 angle >= 60 deg',
    'waive hang-tilted, on S1, reason "r", approved by "p"',
  ]);
  expect(found(withCursor(text, 'deck\n')).references).toHaveLength(2);
});

test('the same name in another load is another thing', () => {
  const text =
    '\nload "A"\n  part "P": item 1 kg\n  part "Q": item 1 kg, on "P"\nload "B"\n  part "P": item 2 kg\n  part "R": item 1 kg, on "P"';
  expect(found(withCursor(text, '"P"', { n: 2 })).references.map(({ at }) => at.row.text.trim().slice(0, 8))).toEqual([
    'part "P"',
    'part "Q"',
  ]);
});

test('the cursor on gear marks its declaration, the legs that use it and its bounds', () => {
  const { highlights: marked } = found(withCursor(`${column}expect sling S1 angle >= 60 deg\n`, 'S1: wire'));
  expect(marked.map(({ declares }) => declares)).toEqual([true, false, false]);
});

test('no name of a sample that has no finding is without a thing', () => {
  let uses = 0;
  for (const path of goodSamples()) {
    const s = sample(path);
    if (s.findings.some(({ slug }) => slug === 'name-unknown')) continue;
    for (const use of usesIn(s.plan.files[0] as NonNullable<(typeof s.plan.files)[0]>, s.plan)) {
      if (use.where === 'designation' || use.where === 'text') continue;
      uses++;
      expect(use.things.length, `${path}: ${use.name} in ${use.at.row.text}`).toBeGreaterThan(0);
      expect(words(use.at).replaceAll('"', '')).toContain(use.name.replaceAll('"', ''));
    }
  }
  expect(uses).toBeGreaterThan(200);
});

const drawn = (list: readonly Symbol[], indent = ''): string =>
  list
    .map((one) => `${indent}${one.name}${one.detail ? ` · ${one.detail}` : ''}\n${drawn(one.children, `${indent}  `)}`)
    .join('');

test('the outline is a table of weights, uses and states', () => {
  const { s } = opened(column);
  const uses = (text: string) => text.replace(/(?<!S1.*)[\d.]+ % used/g, 'some % used');
  expect(uses(drawn(outline(s)))).toBe(`\
plan "Lift a counterweight" · gross load 1,035 kg
Block · 1,000 kg
  free "stands loose"
  stated 1 t
  Block · 1,000 kg
  TOP · some % used
gear · 35 kg
  Hook · 30 kg, some % used
  S1 · 4 kg, 62.9 % used
  K1 · 1 kg, some % used
rig · 35 kg
  "Hook" > S1 > K1 > TOP · 62.9 % used
`);
});

test('what is not known stands as such in the outline', () => {
  const { s } = opened(instead(column, '  part "Block": item 1 t', '  part "Block": item ?'));
  expect(drawn(outline(s))).toContain('  Block · not known\n');
});

test('a symbol reaches to the end of what stands under it', () => {
  const { s } = opened(tank);
  const load = outline(s).find(({ keyword }) => keyword === 'load');
  expect([load?.whole.first, load?.whole.last]).toEqual([6, 17]);
  expect(load && words(load.at)).toBe('"Tank"');
});

test('symbols are found by keyword and name', () => {
  const { files } = fixture(tank);
  const all = Object.keys(files).map((file) => check({ ...files }, file));
  expect(symbols(all, 'sling s1').map(({ name, keyword }) => `${keyword} ${name}`)).toEqual(['sling S1']);
  expect(symbols(all, 'part sh').map(({ name, within, detail }) => `${within} > ${name} ${detail}`)).toEqual([
    'Body > Shell 299.2 kg',
  ]);
  expect(symbols(all, 'nowhere')).toEqual([]);
});

test('the load path runs from the hook down to the load and back', () => {
  const { s, row, offset } = opened(withCursor(tank, 'Main hook'));
  const hook = carrierAt(s, row, offset);
  const down = (id: string) => carries(s, id).map(({ carrier }) => carrier);
  const up = (id: string) => carriedBy(s, id).map(({ carrier }) => carrier);
  expect(hook?.name).toBe('Main hook');
  expect(down(hook?.id ?? '').map(({ name }) => name)).toEqual(['S1', 'S2']);
  const [sling] = down(hook?.id ?? '');
  expect(down(sling?.id ?? '').map(({ name }) => name)).toEqual(['K1']);
  const [pick] = down(down(sling?.id ?? '')[0]?.id ?? '');
  expect(pick?.name).toBe('W');
  expect(pick?.detail).toMatch(/ used$/);
  const [load] = down(pick?.id ?? '');
  expect([load?.name, load?.detail]).toEqual(['Tank', '684 kg']);
  expect(up(load?.id ?? '').map(({ name }) => name)).toEqual(['W', 'E']);
});

test('down and up agree over every leg of the samples', () => {
  let links = 0;
  for (const path of goodSamples()) {
    const s = sample(path);
    for (const leg of s.results.legs)
      for (const { thing } of leg.steps) {
        const id = JSON.stringify([thing.kind, ...thing.path]);
        for (const { carrier, places } of carries(s, id)) {
          links++;
          expect(places.length).toBeGreaterThan(0);
          expect(carriedBy(s, carrier.id).map((one) => one.carrier.id)).toContain(id);
        }
      }
  }
  expect(links).toBeGreaterThan(50);
});

test('the chain of like, both ways', () => {
  const text = 'gear\n  sling "Rope": weight 5 kg, capacity 4 t\n  sling S1..S2: like "Rope"';
  const { s, row, offset } = opened(withCursor(text, 'S1'));
  const sling = carrierAt(s, row, offset);
  expect(likeOf(s, sling?.id ?? '').map(({ name }) => name)).toEqual(['Rope']);
  expect(takenBy(s, likeOf(s, sling?.id ?? '')[0]?.id ?? '').map(({ name }) => name)).toEqual(['S1', 'S2']);
});
