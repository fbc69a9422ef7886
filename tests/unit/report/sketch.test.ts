// The sketches of a rig: true to scale, tied to the text, words that stay words and apart, and one size whatever is typed.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { markdown, page, sectionsHtml, sheetOf } from '../../../server/report/index.ts';
import { overlap, placeLabels, type Rect, textWidth } from '../../../server/report/render/sketch-labels.ts';
import type { Table } from '../../../server/report/sheet/types.ts';
import type { Place } from '../../../server/syntax/types.ts';
import { check } from '../../../server/workspace/memory.ts';
import { hostile } from './hostile.ts';

/** A beam on two legs, its centre in the middle; the figures are the tests' own. */
const twoLegs = `plan "Lift the girder": date 2026-10-02, revision A, site "Yard"
  units metric
load "Girder"
  datum "middle of its underside"
  contingency 5 %
  free "stands on timber, seen"
  part "Steel": item 4 t, by drawing, from "drawing G-1", size 8 x 0.4 x 0.6 m, centre (0, 0, 0), at (0, 0, 0.3) m
  pick W: at (-3, 0, 0.6) m, capacity 5 t, kind lug, from "lug sheet"
  pick E: at (3, 0, 0.6) m, capacity 5 t, kind lug, from "lug sheet"
gear
  hook "Hook": weight 90 kg, capacity 10 t
  sling S1..S2: wire rope, diameter 26 mm, length 5 m, weight 15 kg, capacity 6 t
rig
  leg "Hook" > S1 > W
  leg "Hook" > S2 > E
`;

const sheet = (text: string) => sheetOf(check({ 'a.liftplan': text }, 'a.liftplan'), { pathOf: (file) => file });
const idOf = ({ row: { text } }: Place) => text.trim().replace(/\W+/g, '-');
const legs = (text: string, ids: typeof idOf | null = null) =>
  sectionsHtml(sheet(text), ids).find(({ id }) => id === 'legs')?.html ?? '';
const tables = (text: string): readonly Table[] =>
  (sheet(text).sections.find(({ id }) => id === 'legs')?.blocks ?? []).filter((block) => block.kind === 'table');
const figures = (html: string) => html.match(/<figure class="sketch[\s\S]*?<\/figure>/g) ?? [];
const view = (html: string, id: string) => figures(html).find((figure) => figure.includes(`id="${id}-title"`)) ?? '';
const numbers = (text: string) => [...text.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number);
const attribute = (element: string, name: string) => Number(new RegExp(`\\s${name}="([^"]*)"`).exec(element)?.[1]);

/** Middles of the signs of one kind, in units of the picture. */
const signs = (figure: string, is: string): readonly (readonly [number, number])[] =>
  [...figure.matchAll(new RegExp(`<(?:rect|circle) class="${is}"[^>]*`, 'g'))].map(([element]) =>
    element.startsWith('<rect')
      ? [
          attribute(element, 'x') + attribute(element, 'width') / 2,
          attribute(element, 'y') + attribute(element, 'height') / 2,
        ]
      : [attribute(element, 'cx'), attribute(element, 'cy')],
  );

/** Units of the picture for a metre, as the scale bar says. */
function perMetre(figure: string): number {
  const [, bar = '', words = ''] =
    /<g class="scale"><path class="axis" d="([^"]*)"\/>\s*<text[^>]*>([^<]*)/.exec(figure) ?? [];
  const across = numbers(bar).filter((_, i) => i % 2 === 0);
  const [length = Number.NaN] = numbers(words);
  const unit = { m: 1, mm: 0.001, ft: 0.3048, in: 0.0254 }[words.replace(/[\d.\s]/g, '')] ?? Number.NaN;
  return (Math.max(...across) - Math.min(...across)) / (length * unit);
}

/** Where each label stands, by the same widths that placed it. */
const labels = (figure: string): readonly (Rect & { readonly text: string })[] =>
  [...figure.matchAll(/<text class="label[^"]*"([^>]*)>([^<]*)/g)].map(([, attributes = '', escaped = '']) => {
    const text = plain(escaped);
    const width = textWidth(text);
    const side = /text-anchor="(\w+)"/.exec(attributes)?.[1];
    const x = attribute(attributes, 'x') - { start: 0, middle: width / 2, end: width }[side as 'start'];
    return { text, x, y: attribute(attributes, 'y') - 11, width, height: 14 };
  });
const plain = (text: string) =>
  text
    .replace(/&#39;/g, "'")
    .replace(/&#96;/g, '`')
    .replace(/&quot;/g, '"')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');

/** What holds for any sketch, whatever is drawn. */
function sound(html: string): void {
  for (const figure of figures(html)) {
    expect(figure).not.toMatch(/NaN|Infinity|undefined|null|-0\.0"|style=/);
    const [, width = Number.NaN, height = Number.NaN] = numbers(/viewBox="0 ([^"]*)"/.exec(figure)?.[1] ?? '');
    const placed = labels(figure);
    for (const { text, x, y, ...size } of placed) {
      expect(x, text).toBeGreaterThanOrEqual(0);
      expect(y, text).toBeGreaterThanOrEqual(0);
      expect(x + size.width, text).toBeLessThanOrEqual(width);
      expect(y + size.height, text).toBeLessThanOrEqual(height);
    }
    placed.forEach((label, i) => {
      for (const other of placed.slice(i + 1))
        expect(overlap(label, other), `${label.text} / ${other.text}`).toBe(false);
    });
    for (const [, numbersOf = ''] of figure.matchAll(/ (?:d|x|y|x1|y1|x2|y2|cx|cy)="([^"]*)"/g))
      for (const number of numbersOf.match(/[-\d.]+/g) ?? []) expect(number).toMatch(/^(?:-?\d+\.\d|[01])$/);
  }
}

describe('an elevation', () => {
  const figure = view(legs(twoLegs), 'rig-elevation');

  // Two legs of 5 m on picks 6 m apart: the hook stands 4 m above them (Pythagoras, Euclid I.47), but for the ropes' stretch.
  test('is to the scale of its bar', () => {
    const [[hookX, hookY] = [Number.NaN, Number.NaN]] = signs(figure, 'hook');
    const picks = signs(figure, 'pick');
    expect(picks).toHaveLength(2);
    for (const [x, y] of picks) {
      expect((y - hookY) / perMetre(figure)).toBeCloseTo(4, 1);
      expect(Math.abs(x - hookX) / perMetre(figure)).toBeCloseTo(3, 1);
    }
    const [[, centreY] = [0, 0]] = signs(figure, 'centre');
    expect((centreY - hookY) / perMetre(figure)).toBeCloseTo(4.3, 1);
  });

  test('has the worst load and the angle of each leg as the tables have them', () => {
    const row = tables(twoLegs)
      .flatMap(({ rows }) => rows)
      .find(({ cells }) => cells[0]?.text === 'Sling S1');
    const texts = row?.cells.map(({ text }) => text) ?? [];
    const [label] = labels(figure).filter(({ text }) => text.startsWith('S1: '));
    const [load = '', angle = ''] = label?.text.slice(4).split(', ') ?? [];
    expect(load).toMatch(/^\d\.\d+ t$/);
    expect(angle).toBe('53.1°'); // arcsin 4/5
    expect(texts).toContain(load);
    expect(texts.some((text) => text.includes(angle))).toBe(true); // the sketch shows the flatter end, the table both
  });

  test('shows the low side low', () => {
    const heavyEast = view(legs(twoLegs.replace('centre (0, 0, 0)', 'centre (0.4 m, 0, 0)')), 'rig-elevation');
    const [west, east] = [...signs(heavyEast, 'pick')].sort(([a], [b]) => a - b);
    expect(east?.[1]).toBeGreaterThan((west?.[1] ?? Number.NaN) + 2);
    expect(labels(heavyEast).find(({ text }) => text.startsWith('Girder: '))?.text).toMatch(/° out of level$/);
  });
});

describe('plan and oblique view', () => {
  // Three picks 3 m round the centre: it hangs level.
  const threeLegs = twoLegs
    .replace(
      'pick W: at (-3, 0, 0.6) m',
      'pick S: at (0, -3, 0.6) m, capacity 5 t, kind lug, from "lug sheet"\n  pick W: at (-2.4, 1.8, 0.6) m',
    )
    .replace('pick E: at (3, 0, 0.6) m', 'pick E: at (2.4, 1.8, 0.6) m')
    .replace('S1..S2', 'S1..S3')
    .replace('leg "Hook" > S2 > E', 'leg "Hook" > S2 > E\n  leg "Hook" > S3 > S');
  const html = legs(threeLegs);

  test('the plan has x to the right and y up, to the scale of the elevation and in line with it', () => {
    const [plan, elevation] = [view(html, 'rig-plan'), view(html, 'rig-elevation')];
    expect(perMetre(plan)).toBeCloseTo(perMetre(elevation), 9);
    const picks = signs(plan, 'pick');
    const [south, , east] = [...picks].sort(([, a], [, b]) => b - a);
    expect(((south?.[1] ?? 0) - (east?.[1] ?? 0)) / perMetre(plan)).toBeCloseTo(4.8, 1);
    const across = (figure: string) =>
      signs(figure, 'pick')
        .map(([x]) => x)
        .sort();
    expect(across(plan)).toEqual(across(elevation));
  });

  // Cabinet axonometry, ISO 5456-3 (from memory): x and z as they are, y at 45° and half as long.
  test('the oblique view draws y aslant at half its length', () => {
    const figure = view(html, 'rig-oblique');
    const level = view(legs(threeLegs.replace('leg "Hook" > S1 > W', 'leg "Hook" > S1 > Nowhere')), 'rig-oblique');
    const [south, west] = [...signs(level, 'pick')].sort(([, a], [, b]) => b - a);
    const scale = perMetre(level);
    const aslant = 4.8 * 0.5 * Math.SQRT1_2;
    expect(((west?.[0] ?? 0) - (south?.[0] ?? 0)) / scale).toBeCloseTo(-2.4 + aslant, 1);
    expect(((south?.[1] ?? 0) - (west?.[1] ?? 0)) / scale).toBeCloseTo(aslant, 1);
    expect(figure).toContain('class="box hidden"');
    expect(view(html, 'rig-elevation')).not.toContain('class="box hidden"');
  });
});

describe('every sign', () => {
  const html = legs(twoLegs, idOf);

  test('carries the id of its statement, its own first, and labels do as well', () => {
    const elements =
      html.match(
        /<g class="(?:stroke|cog)"[^>]*>|<(?:rect|circle) class="(?:hook|pick|ring|point)"[^>]*>|<text class="label[^>]*>/g,
      ) ?? [];
    expect(elements.length).toBeGreaterThan(20);
    for (const element of elements) expect(element).toMatch(/ data-id="[^"]+" tabindex="-1"/);
    expect(html).toContain(
      `data-id="${idOf({ row: { file: '', text: 'leg "Hook" > S1 > W' }, from: 0, to: 0 })} sling-S1`,
    );
  });

  test('has ids that no other figure has, and a title and a description that its picture names', () => {
    const all = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(all).size).toBe(all.length);
    for (const [, names = ''] of html.matchAll(/aria-labelledby="(rig[^"]*)"/g))
      for (const name of names.split(' ')) expect(all).toContain(name);
    expect(view(html, 'rig-elevation')).toMatch(/<desc[^>]*>Girder: [^<]*S1: [^<]* t, 53\.1°/);
  });
});

describe('what is slack or over', () => {
  // A fourth leg that is much too long hangs slack; three of them then take it all.
  const text = twoLegs
    .replace(
      'pick W: at (-3, 0,',
      'pick N: at (0, 2, 0.6) m, capacity 5 t, kind lug, from "lug sheet"\n  pick W: at (-3, 0,',
    )
    .replace('capacity 6 t', 'capacity 2 t')
    .replace('rig\n', '  sling S3: wire rope, diameter 26 mm, length 9 m, weight 15 kg, capacity 6 t\nrig\n')
    .replace('leg "Hook" > S2 > E', 'leg "Hook" > S2 > E\n  leg "Hook" > S3 > N');
  const html = legs(text);

  test('is said by a dash and the word, not by colour', () => {
    const figure = view(html, 'rig-elevation');
    expect(figure.match(/<path class="slack"/g)).toHaveLength(1);
    expect(labels(figure).filter(({ text: words }) => /^S3 slack/.test(words))).toHaveLength(1);
    expect(figure).toMatch(/<text class="label over"[^>]*>S1: [^<]*, over</);
    expect(view(html, 'rig-plan')).not.toContain('label over');
  });
});

describe('a plan that is not worked out', () => {
  const sizes = (html: string) => figures(html).map((figure) => /viewBox="([^"]*)"/.exec(figure)?.[1]);
  const broken = [
    twoLegs.replace('leg "Hook" > S1 > W', 'leg "Hook" > S1 >'),
    twoLegs.replace('item 4 t', 'item ?'),
    twoLegs.replace('pick W: at (-3, 0, 0.6) m', 'pick W: at (-3'),
    twoLegs.replace('length 5 m', 'length 1 m'),
    twoLegs.replace(/load "Girder"[\s\S]*?gear/, 'gear'),
  ];

  test.each(broken.map((text, i) => [i, text] as const))(
    'keeps the size of its pictures and says why: %i',
    (_, text) => {
      const html = legs(text);
      expect(sizes(html)).toEqual(sizes(legs(twoLegs)));
      sound(html);
      for (const figure of figures(html)) {
        expect(figure).toContain('Not worked out how it hangs');
        expect(figure).not.toMatch(/class="(?:leg|slack|plumb|hook)"/);
        for (const { text: words } of labels(figure)) expect(words).toMatch(/^(?:Girder|centre|W|E)$/);
      }
    },
  );

  test('a place that is not known is not drawn', () => {
    const figure = view(
      legs(twoLegs.replace('pick W: at (-3, 0, 0.6) m', 'pick W: at (-3, ?, 0.6) m')),
      'rig-elevation',
    );
    expect(signs(figure, 'pick')).toHaveLength(1);
  });
});

describe('the table of places', () => {
  test('says how far below the hook things hang, never less', () => {
    const places = tables(twoLegs).find(({ caption }) => caption.startsWith('Where things hang'));
    const rows = places?.rows.map(({ cells }) => cells.map(({ text }) => text)) ?? [];
    expect(rows.map(([name]) => name)).toEqual([
      'Hook Hook',
      'Pick W',
      'Pick E',
      'Centre of gravity of Girder',
      'Highest point of Girder',
      'Lowest point of Girder',
    ]);
    const below = rows.map((row) => Number(row[3]?.replace(' m', '')));
    for (const [i, least] of [0, 4, 4, 4.3, 4, 4.6].entries()) {
      expect(below[i]).toBeGreaterThanOrEqual(least);
      expect(below[i]).toBeLessThan(least + 0.02);
    }
    expect(rows[1]?.slice(1, 3)).toEqual(['−3 m', '0 m']);
  });

  test('stands in Markdown, which has no drawing', () => {
    const text = markdown(sheet(twoLegs), 'a.liftplan');
    expect(text).toContain('**Where things hang: ');
    expect(text).not.toMatch(/<svg|Elevation/);
  });
});

describe('stages', () => {
  const upending = `${twoLegs
    .replace(
      '  hook "Hook": weight 90 kg, capacity 10 t',
      '  hook "Head hook": weight 90 kg, capacity 10 t\n  hook "Tail hook": weight 60 kg, capacity 6 t',
    )
    .replace('pick W: at (-3, 0, 0.6) m', 'pick W: at (-3, 0, 0.5) m')
    .replace('pick E: at (3, 0, 0.6) m', 'pick E: at (3, 0, 0.5) m')
    .replace(
      'rig\n  leg "Hook" > S1 > W\n  leg "Hook" > S2 > E',
      'rig "Head": crane "A"\n  leg "Head hook" > S1 > E\nrig "Tail": crane "B"\n  leg "Tail hook" > S2 > W',
    )}crane "A": kind mobile
crane "B": kind mobile
stage "Level": incline x 0 deg
stage "Turn up": incline x 0 deg to 60 deg
`;
  const html = legs(upending);

  test('each has an elevation in its own attitude, a sweep one at either end', () => {
    const found = figures(html).filter((figure) => figure.includes('class="sketch half"'));
    expect(found.map((figure) => plain(/<title[^>]*>([^<]*)/.exec(figure)?.[1] ?? ''))).toEqual([
      'Stage Level, x axis level',
      'Stage “Turn up”, x axis level',
      'Stage “Turn up”, x axis 60° above horizontal',
    ]);
    const [tail, head] = [...signs(found[2] ?? '', 'pick')].sort(([a], [b]) => a - b);
    const scale = perMetre(found[2] ?? '');
    // The picks lie 6 m apart along x: 6 m cos 60° across, 6 m sin 60° up.
    expect(((head?.[0] ?? 0) - (tail?.[0] ?? 0)) / scale).toBeCloseTo(3, 1);
    expect(((tail?.[1] ?? 0) - (head?.[1] ?? 0)) / scale).toBeCloseTo(5.196, 1);
    sound(html);
  });

  test('an upending has a line for each hook, named at its end, and the same figures in a table', () => {
    const curve = /<figure class="curve">[\s\S]*?<\/figure>/.exec(html)?.[0] ?? '';
    const lines = [...curve.matchAll(/<path class="curve-line line\d" d="([^"]*)"/g)].map(([, d = '']) => numbers(d));
    expect(lines.map(({ length }) => length)).toEqual([26, 26]); // 13 angles of 5°
    expect([...curve.matchAll(/class="label"[^>]*>([^<]*)/g)].map(([, name]) => name)).toEqual([
      'Head hook',
      'Tail hook',
    ]);
    const table = tables(upending).find(({ columns }) => columns[0]?.title === 'Incline');
    expect(table?.rows).toHaveLength(13);
    expect(table?.columns.map(({ title }) => title)).toEqual(['Incline', 'Head hook', 'Tail hook']);
    // The centre lies 0.2 m under the line of picks: raised, it swings towards the head, which takes more and more.
    expect(lines[0]?.at(-1)).toBeLessThan(lines[0]?.[1] ?? 0);
    expect(lines[1]?.at(-1)).toBeGreaterThan(lines[1]?.[1] ?? 0);
  });
});

describe('any rig', () => {
  const name = fc
    .oneof(fc.constantFrom(...hostile), fc.string({ maxLength: 60 }))
    .map((text) => text.replace(/[\n\r"\u2028\u2029\u0085]/g, ''));
  const place = fc.record({ x: fc.integer({ min: -60, max: 60 }), y: fc.integer({ min: -60, max: 60 }) });
  const rig = fc.record({
    name,
    hook: name,
    picks: fc.array(place, { minLength: 1, maxLength: 5 }),
    length: fc.integer({ min: 20, max: 150 }),
  });
  const written = ({
    name: load,
    hook,
    picks,
    length,
  }: typeof rig extends fc.Arbitrary<infer T> ? T : never) => `plan "P"
  units metric
load "L ${load}"
  contingency 5 %
  part "Steel": item 4 t, by drawing, size 8 x 3 x 1 m, centre (0, 0, 0), at (0, 0, 0.5) m
${picks.map(({ x, y }, i) => `  pick P${i}: at (${x / 10}, ${y / 10}, 1) m, capacity 5 t`).join('\n')}
gear
  hook "H ${hook}": weight 90 kg, capacity 10 t
  sling S0..S${picks.length}: wire rope, diameter 26 mm, length ${length / 10} m, weight 15 kg, capacity 6 t
rig
${picks.map((_, i) => `  leg "H ${hook}" > S${i} > P${i}`).join('\n')}
`;

  test('has no number that is none, no label on another or outside, and the same bytes twice', () => {
    fc.assert(
      fc.property(rig, (one) => {
        const text = written(one);
        const html = legs(text, idOf);
        sound(html);
        expect(figures(html).length).toBe(3);
        expect(legs(text, idOf)).toBe(html);
        expect(page(sheet(text), 'A4', 'plan.liftplan')).not.toMatch(/<(?:img|script|a)\b|\son\w+=["']|[\u202e\u200b]/);
      }),
      { seed: 7, numRuns: 40 },
    );
  }, 60_000);

  test('labels find a place apart from one another, or none', () => {
    const area = { x: 0, y: 0, width: 300, height: 200 };
    const wanted = fc.record({
      rows: fc.array(fc.string({ minLength: 1, maxLength: 30 }), { minLength: 1, maxLength: 3 }),
      anchors: fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 200 })), {
        minLength: 1,
        maxLength: 3,
      }),
      clear: fc.constant(5),
    });
    fc.assert(
      fc.property(fc.array(wanted, { maxLength: 30 }), (all) => {
        const rects = placeLabels(all, area, [], [], []).flatMap((found) => (found ? [found.rect] : []));
        rects.forEach((rect, i) => {
          expect(rect.x).toBeGreaterThanOrEqual(0);
          expect(rect.x + rect.width).toBeLessThanOrEqual(300);
          for (const other of rects.slice(i + 1)) expect(overlap(rect, other)).toBe(false);
        });
        if (all.length && all[0] && Math.max(...all[0].rows.map(textWidth)) < 100)
          expect(rects.length).toBeGreaterThan(0);
      }),
      { seed: 8, numRuns: 100 },
    );
  });
});
