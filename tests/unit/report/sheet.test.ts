// The sheet of a complete plan, of open ones, of a library and of a hostile one, in every output.
import MarkdownIt from 'markdown-it';
import { describe, expect, test } from 'vitest';
import { cautions } from '../../../server/checks/index.ts';
import type { Sheet } from '../../../server/report/index.ts';
import {
  contentMark,
  json,
  lines,
  markdown,
  page,
  relativePath,
  report,
  sectionsHtml,
  sheetOf,
  standing,
  standingWords,
} from '../../../server/report/index.ts';
import type { Table } from '../../../server/report/sheet/types.ts';
import type { Snapshot } from '../../../server/workspace/index.ts';
import { check } from '../../../server/workspace/memory.ts';
import { hostile } from './hostile.ts';
import { changed, files, library, plan, snapshot } from './plans.ts';

const sheet = (of: Snapshot): Sheet => sheetOf(of, { pathOf: (file) => relativePath('quarry', file) });
const outputs = (of: Snapshot): Readonly<Record<string, string>> => ({
  markdown: markdown(sheet(of), 'filter.liftplan'),
  html: page(sheet(of), 'A4', 'plan.liftplan'),
  sections: sectionsHtml(sheet(of), () => null)
    .map(({ html }) => html)
    .join('\n'),
  json: json(report(of, (file) => file) ?? []),
  lines: lines(of),
});
const tables = (of: Sheet, id: string): readonly Table[] =>
  (of.sections.find((section) => section.id === id)?.blocks ?? []).filter((block) => block.kind === 'table');
const texts = (table: Table | undefined) => table?.rows.map(({ cells }) => cells.map(({ text }) => text)) ?? [];
/** As a reader sees it: entities and the backslashes of Markdown taken back. */
const plain = (text: string) =>
  text
    .replace(/&#39;|&#x27;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&')
    .replace(/\\([^\w\s])/g, '$1');

describe('standing cautions', () => {
  const open = changed('item 500 kg ± 20 kg', 'item ?');

  test.each(['markdown', 'html', 'sections', 'json', 'lines'])('the head stands in %s', (name) =>
    expect(plain(outputs(snapshot())[name] ?? '')).toContain(cautions.sheetHead),
  );

  test.each(['markdown', 'html', 'sections'])('the foot with revision and mark stands in %s', (name) =>
    expect(plain(outputs(snapshot())[name] ?? '')).toContain(cautions.pageFoot('B', contentMark(snapshot().plan))),
  );

  test.each(['markdown', 'html', 'sections'])(
    'open figures, rules set aside and what is not judged stand in %s',
    (name) => {
      const text = plain(outputs(open)[name] ?? '');
      expect(text).toMatch(/\b\d+ figures are not known\. This plan cannot be used as it stands\./);
      expect(text).toContain(cautions.rulesSetAside(['holding-unstated (approved by the works engineer)']));
      expect(text).toContain(cautions.notJudged(open.results.notJudged));
    },
  );

  test('a plan without open figures does not cry', () =>
    expect(outputs(snapshot()).markdown).not.toContain('cannot be used as it stands'));
});

describe('sections', () => {
  test('stand in reading order, open points right after the head', () =>
    expect(sheet(snapshot()).sections.map(({ id }) => id)).toEqual([
      'head',
      'standing',
      'weight',
      'centre',
      'legs',
      'gear',
      'gross',
      'expects',
      'cranes',
      'site',
      'people',
      'lift-off',
      'steps',
      'hazards',
      'approvals',
      'rules',
      'notes',
      'quiet',
      'sources',
      'working',
      'foot',
    ]));

  test('every row has a cell for every column', () => {
    for (const of of [snapshot(), changed('item 500 kg ± 20 kg', 'item ?')]) {
      for (const { blocks } of sheet(of).sections) {
        for (const block of blocks)
          if (block.kind === 'table')
            for (const { cells } of block.rows) expect(cells.length, block.caption).toBe(block.columns.length || 2);
      }
    }
  });

  test('the same snapshot gives the same sheet', () =>
    expect(JSON.stringify(outputs(snapshot()))).toBe(JSON.stringify(outputs(snapshot()))));

  test('layout, comments and order of lines change no sheet but the places of open points', () => {
    const moved = changed('load "Filter"', '# the vessel\n\nload "Filter"');
    const without = (text: string) => text.replace(/\[line \d+\]\(filter\.liftplan#L\d+\)/g, '');
    expect(without(markdown(sheet(moved), 'filter.liftplan'))).toBe(
      without(markdown(sheet(snapshot()), 'filter.liftplan')),
    );
  });
});

describe('figures', () => {
  test('evidence with what is added, and which one governs', () => {
    const [evidence] = tables(sheet(snapshot()), 'weight');
    expect(texts(evidence).map((row) => [row[0], row[1], row.at(-1)])).toEqual([
      ['Calculated', 'by calculation', 'governs'],
      ['Stated', 'by drawing', ''],
      ['Weight of the load', 'calculated weight, the heaviest after what is added', ''],
    ]);
  });

  test('a pick shows what it may carry beside what it takes, in the unit of its tag', () => {
    const picks = tables(sheet(snapshot()), 'legs').find(({ caption }) => caption === 'What each pick takes');
    const column = picks?.columns.findIndex(({ title }) => title === 'Capacity') ?? -1;
    expect(texts(picks).map((row) => [row[0], row[column]])).toEqual([
      ['Pick E', '3 t'],
      ['Pick W', '3 t'],
    ]);
  });

  test('a reading that governs though it is lighter says why, and each weighing goes by its name', () => {
    const weighing = (name: string, kg: number) =>
      `  weighed ${name}: by jack reading, dated 2026-01-04, state "as lifted", tare 0 kg, accuracy 1 %, contingency 3 %\n    support J1: at (-1, 0, 0) m, reads ${kg} kg\n    support J2: at (1, 0, 0) m, reads ${kg} kg\n`;
    const text = `plan "x": date 2026-02-02\nload "L"\n${weighing('"Dry"', 490)}${weighing('"Again"', 500)}  stated 1,000 kg, by calculation, contingency 10 %\n`;
    const [evidence] = tables(sheet(check({ 'plan.liftplan': text }, 'plan.liftplan')), 'weight');
    expect(texts(evidence).map(([what, why, , , , counts]) => [what, why, counts])).toEqual([
      ['Stated', 'by calculation', ''],
      ['Measured, Dry', 'by jack reading', ''],
      ['Measured, Again', 'by jack reading', 'governs'],
      ['Weight of the load', expect.stringMatching(/^measured weight: lighter than another, but/), ''],
    ]);
  });

  test('the build-up has every part with count, each, weight, share and what it comes from', () => {
    const [, parts] = tables(sheet(snapshot()), 'weight');
    expect(texts(parts)[1]).toEqual([
      'Base',
      '1',
      '224.9 kg',
      '224.9 kg',
      '18.5 %',
      'plate side x side x 20 mm; carbon steel 7,850 kg/m³',
    ]);
    expect(parts?.rows.map(({ depth }) => depth ?? 0)).toEqual([0, 1, 1, 0, 0]);
    expect(parts?.rows.at(-1)?.total).toBe(true);
  });

  test('the picture has a bar a part and one for what is added, up to the mark of the weight that governs', () => {
    const bars = sheet(snapshot())
      .sections.find(({ id }) => id === 'weight')
      ?.blocks.find((block) => block.kind === 'bars');
    expect(bars?.bars.map(({ label, look }) => [label, look])).toEqual([
      ['Base', 'part'],
      ['Shell', 'part'],
      ['Sand', 'part'],
      ['Added for doubt', 'added'],
    ]);
    expect(bars?.bars.at(-1)?.to).toBeCloseTo(1, 12);
    expect(bars?.mark?.at).toBe(1);
  });

  test('there is no picture of an unknown', () => {
    const { sections } = sheet(changed('item 500 kg ± 20 kg', 'item ?'));
    expect(sections.find(({ id }) => id === 'weight')?.blocks.map(({ kind }) => kind)).toEqual(['table', 'table']);
  });

  test('gear: what hangs with its legs, what lies ready by name, capacities in the unit of the tag', () => {
    const [hanging, idle] = tables(sheet(snapshot()), 'gear');
    expect(texts(hanging).find(([name]) => name === 'K1, K2')).toEqual([
      'K1, K2',
      'shackle',
      '2',
      '2 kg',
      '4 kg',
      '4.75 t',
      'in 2 legs, on “Quarry crane”',
    ]);
    expect(texts(idle)).toEqual([['K3', 'shackle']]);
  });

  test('deductions: each one, and `none` with what it rests on', () =>
    expect(texts(tables(sheet(snapshot()), 'gross')[0]).slice(2, 4)).toEqual([
      ['Jib', '200 kg', 'deduction of “Quarry crane”'],
      ['Rope', 'none', "deduction of “Quarry crane”, from “maker's chart 12, note 4”"],
    ]));

  test('a load beside a bound is shown with the digits that tell them apart', () => {
    const [gross] = tables(sheet(changed('gross load <= 2,500 kg', 'gross load < 1,691.5 kg')), 'expects');
    const [, state, worst] = texts(gross)[0] ?? [];
    expect(state === 'met').toBe(Number((worst ?? '').replace(/[^\d.]/g, '')) < 1691.5);
  });

  test('the chart is the table that was typed', () => {
    const chart = tables(sheet(snapshot()), 'cranes').at(-1);
    expect([chart?.columns.map(({ title }) => title), ...texts(chart)]).toEqual([
      ['Radius', '18 m'],
      ['6 m', '12,000 kg'],
      ['8 m', '9,000 kg'],
    ]);
    expect(chart?.caption).toContain('compared by second rigger, 3 March');
  });

  test('what the text does quietly is said aloud', () => {
    const rows = texts(
      tables(sheet(changed('sling B: like "Sling 9"', 'sling B: like "Sling 9", capacity ?')), 'quiet')[0],
    ).map((row) => row.join(': '));
    expect(rows).toEqual(
      [
        'Taken over from another item (like): Sling A: wire rope, diameter, length, weight, capacity, source as for “Sling 9”',
        'Not known yet (?): Sling B: capacity ?',
        'Taken over from another item (like): Sling B: wire rope, diameter, length, weight, source as for “Sling 9”',
        'Not counted: lies ready (spare): Shackle K3',
        'Deliberately nothing (none): Deduct Rope: none',
        'Set aside (waive): Waive holding-unstated: holding-unstated, on "Filter", reason new vessel on timber, approved by the works engineer',
        'Figure taken from a name (let): side = 1.2 m, used on one line',
      ].map((row) => row.replace('Waive holding-unstated: ', '')),
    );
  });

  test('working shows formula, values and source; long sources by a short name that is told once', () => {
    const rows = texts(tables(sheet(snapshot()), 'working')[0]);
    expect(rows.find(([figure]) => figure === 'part Shell: weight')).toEqual([
      'part Shell: weight',
      '488.3 kg',
      'volume × density = 0.0622036 m³ × 7,850 kg/m³',
      'carbon steel',
    ]);
    expect(texts(tables(sheet(snapshot()), 'sources').at(-1)).find(([name]) => name === 'carbon steel')?.[1]).toMatch(
      /^carbon steel: .*7850/,
    );
  });
});

describe('what is not known', () => {
  const of = changed('item 500 kg ± 20 kg', 'item 500');

  test('stands first, with its line and what it leaves open', () => {
    const [row] = tables(sheet(of), 'standing')[0]?.rows ?? [];
    expect(row?.cells[0]).toEqual({ text: 'not known', is: 'not known' });
    expect(row?.cells[2]?.link).toEqual({
      path: '',
      line: plan.split('\n').findIndex((line) => line.includes('part "Sand"')) + 1,
    });
    expect(row?.cells[3]?.text).toContain('gross load');
    expect(standingWords(standing(of))).toMatch(/^\d+ not known, 1 not judged, 1 set aside, 3 not stated$/);
  });

  test('is never a number: neither 0 nor the sum of the rest', () => {
    const weight = tables(sheet(of), 'weight').flatMap(texts);
    expect(weight.find(([name]) => name === 'Sand')?.slice(1, 5)).toEqual(['1', 'not known', 'not known', 'not known']);
    expect(weight.find(([name]) => name === 'All parts')?.[3]).toBe('not known');
    expect(texts(tables(sheet(of), 'gross')[0]).at(-1)?.[1]).toBe('not known');
  });
});

describe('a limit that is passed', () => {
  test('is first of all, and marked in its own place, with the word', () => {
    const of = changed('gross load <= 2,500 kg', 'gross load <= 1,000 kg');
    expect(tables(sheet(of), 'standing')[0]?.rows[0]?.cells[0]).toEqual({ text: 'over', is: 'over' });
    expect(tables(sheet(of), 'expects')[0]?.rows[0]?.cells[1]).toEqual({ text: 'not met', is: 'over' });
    expect(standingWords(standing(of))).toMatch(/^1 over, /);
  });

  test('more than all of a capacity is over', () => {
    const of = changed('shackle K1..K2: weight 2 kg, capacity 4.75 t', 'shackle K1..K2: weight 2 kg, capacity 0.4 t');
    const used = tables(sheet(of), 'legs')
      .flatMap(({ rows }) => rows)
      .find(({ cells }) => cells[0]?.text === 'Shackle K1')
      ?.cells.find(({ is }) => is === 'over');
    expect(used?.text).toMatch(/^\d{3}(\.\d)? %, over$/);
  });
});

describe('words', () => {
  test('no output approves anything', () => {
    for (const [name, text] of Object.entries(outputs(snapshot())))
      expect(text.replace(/Planning aid, not an approval|if the measured radius passes/g, ''), name).not.toMatch(
        /\b(safe|OK|pass(es|ed)?)\b|[✓✔☑✅🟢]/iu,
      );
  });
});

describe('a library', () => {
  const of = check({ 'yard.liftplan': library }, 'yard.liftplan');
  const made = sheetOf(of, { pathOf: (file) => file, usedBy: ['filter.liftplan'] });

  test('shows what it states and who takes it in, and is no plan', () => {
    expect(made.ofLibrary).toBe(true);
    expect(made.sections.map(({ id }) => id)).toEqual(['head', 'standing', 'gear', 'cranes', 'rules', 'foot']);
    expect(texts(tables(made, 'head')[0])[0]).toEqual(['Used by', 'filter.liftplan']);
    expect(texts(tables(made, 'gear')[0])[0]?.[2]).toBe(
      'wire rope, diameter 20 mm, length 3 m, weight 12 kg, capacity 4 t, from “register page 2”, serial “Q-9”',
    );
  });
});

describe('hostile text in every field', () => {
  const wild = (text: string) => text.replace(/[\n\r"]/g, '');
  const quoted = /"([^"\n]*)"/g;
  const kept = /library\/yard|Sling 9|Quarry|Filter|Hook|Short boom|full counter/;

  test.each(hostile.map(wild))('%j', (text) => {
    const texts_ = Object.fromEntries(
      Object.entries(files).map(([name, content]) => [
        name,
        content.replace(quoted, (whole, words: string) => (kept.test(words) ? whole : `"${words} ${text}"`)),
      ]),
    );
    const of = check(texts_, 'quarry/filter.liftplan');
    const { html = '', sections = '', markdown: md = '', lines: listed = '' } = outputs(of);
    for (const made of [html, sections]) {
      expect(
        [...new Set([...made.matchAll(/<\/?([a-zA-Z!][\w-]*)/g)].map(([, tag]) => tag))].filter(
          (tag) => !ours.has(tag ?? ''),
        ),
      ).toEqual([]);
      expect(made).not.toMatch(/<[^>]*\son\w+=|[\u202e\u200b]/);
    }
    const tags = [
      ...new Set([...new MarkdownIt({ html: true }).render(md).matchAll(/<([a-z][a-z0-9]*)/g)].map(([, tag]) => tag)),
    ];
    expect(tags.filter((tag) => !marked.has(tag ?? ''))).toEqual([]);
    for (const line of listed.split('\n')) expect(line).not.toMatch(/[\u0000-\u001f\u202e\u200b]/);
  });
});

const ours = new Set([
  '!DOCTYPE',
  'html',
  'head',
  'meta',
  'title',
  'style',
  'body',
  'div',
  'main',
  'section',
  'h1',
  'h2',
  'p',
  'table',
  'caption',
  'thead',
  'tbody',
  'tr',
  'th',
  'td',
  'strong',
  'span',
  'figure',
  'figcaption',
  'svg',
  'desc',
  'defs',
  'pattern',
  'rect',
  'line',
  'path',
  'circle',
  'g',
  'text',
  'tspan',
]);
const marked = new Set([
  'h1',
  'h2',
  'p',
  'strong',
  'em',
  'table',
  'thead',
  'tbody',
  'tr',
  'th',
  'td',
  'ul',
  'li',
  'a',
  'blockquote',
  'details',
  'summary',
]);
