// The outputs of a sheet made by hand: shape of tables, ties to the text, words beside every emphasis, nothing from outside.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { sectionsHtml } from '../../../server/report/render/html.ts';
import { markdown } from '../../../server/report/render/markdown.ts';
import { page } from '../../../server/report/render/page.ts';
import { stackHtml } from '../../../server/report/render/stack.ts';
import type { Sheet } from '../../../server/report/sheet/types.ts';
import type { Place } from '../../../server/syntax/types.ts';

// The test runner empties style sheets; here they are read as the bundler reads them.
vi.mock('../../../server/report/render/sheet.css?raw', () => ({
  default: readFileSync(join(import.meta.dirname, '../../../server/report/render/sheet.css'), 'utf8'),
}));
vi.mock('../../../server/report/render/page.css?raw', () => ({
  default: readFileSync(join(import.meta.dirname, '../../../server/report/render/page.css'), 'utf8'),
}));

const line = (text: string): Place => ({ row: { file: 'plan.liftplan', text }, from: 0, to: text.length });
const [rails, deck] = [line('part "Rails"'), line('part "Deck"')];
const ids = new Map([
  [rails.row, 'p-1'],
  [deck.row, 'p-2'],
]);
const idOf = ({ row }: Place) => ids.get(row) ?? null;

const made = (revision: string, cell = 'Rails'): Sheet => ({
  title: 'Pump <out>',
  ofLibrary: false,
  revision,
  mark: '0000-1111-2222',
  foot: `Revision ${revision}, content mark 0000-1111-2222.`,
  sections: [
    {
      id: 'head',
      title: 'Pump <out>',
      blocks: [
        { kind: 'paragraph', look: 'caution', text: 'Planning aid.', at: [] },
        {
          kind: 'table',
          caption: 'The plan',
          columns: [],
          rows: [{ cells: [{ text: 'Site' }, { text: 'A | B' }], at: [] }],
        },
      ],
    },
    {
      id: 'weight',
      title: 'Weight',
      blocks: [
        {
          kind: 'table',
          caption: 'Parts',
          columns: [{ title: 'Part' }, { title: 'Weight', figures: true }],
          rows: [
            { cells: [{ text: cell }, { text: '276 lb' }], at: [rails, deck] },
            {
              cells: [{ text: 'Deck' }, { text: 'not known', is: 'not known', link: { path: '', line: 7 } }],
              at: [deck],
              depth: 1,
              repeat: true,
            },
            {
              cells: [
                { text: 'All' },
                { text: '112 %, over', is: 'over', link: { path: 'library/a b.liftplan', line: 9 } },
              ],
              at: [],
              total: true,
            },
          ],
        },
        {
          kind: 'bars',
          id: 'bars-1',
          title: 'Shares',
          description: 'Rails 276 lb',
          mark: { label: 'governs: 300 lb', at: 1 },
          bars: [
            {
              label: 'Rails that have a name much too long for one line of the picture',
              text: '276 lb',
              from: 0,
              to: 0.9,
              look: 'part',
              at: [rails],
            },
            { label: 'Added', text: '24 lb', from: 0.9, to: 1, look: 'added', at: [] },
          ],
        },
      ],
    },
  ],
});

describe('HTML of a section', () => {
  const sections = sectionsHtml(made('C'), idOf);
  const weight = sections[1]?.html ?? '';

  test('each row carries the ids of its statements, its own first, and can be reached', () => {
    expect(weight).toContain('<tr data-id="p-1 p-2" tabindex="-1">');
    expect(weight).toContain('<tr class="deep1" data-id="p-2" tabindex="-1" data-repeat="">');
    expect(weight).toContain('<tr class="total">');
    expect(weight).toContain('<g class="bar part" data-id="p-1" tabindex="-1">');
  });

  test('heads have their scope, tables their caption, and every emphasis its word', () => {
    expect(weight).toContain('<caption>Parts</caption>');
    expect(weight.match(/scope="col"/g)).toHaveLength(2);
    expect(weight.match(/scope="row"/g)).toHaveLength(3);
    expect(weight).toContain(
      '<strong class="over">112 %, over</strong> <span class="line">library/a b.liftplan, line 9</span>',
    );
    expect(weight).toContain('<span class="not-known">not known</span> <span class="line">line 7</span>');
  });

  test('the hash changes with the content, and only with it', () => {
    const hashes = (sheet: Sheet) => sectionsHtml(sheet, idOf).map(({ hash }) => hash);
    expect(hashes(made('D'))).toEqual(sections.map(({ hash }) => hash));
    expect(hashes(made('C', 'Beams'))[0]).toBe(sections[0]?.hash);
    expect(hashes(made('C', 'Beams'))[1]).not.toBe(sections[1]?.hash);
  });

  test('the picture is text and shapes with fixed decimals; a long label is broken, not cut', () => {
    const numbers =
      weight
        .slice(weight.indexOf('<svg'))
        .match(/\b(?:x|y|x1|y1|x2|y2|width|height)="[^"]*"/g)
        ?.filter((found) => !/"[06]"/.test(found)) ?? [];
    expect(numbers.length).toBeGreaterThan(10);
    for (const number of numbers) expect(number).toMatch(/="-?\d+\.\d"/);
    expect(
      weight
        .match(/<tspan[^>]*>([^<]*)/g)
        ?.slice(0, 2)
        .map((found) => found.replace(/.*>/, ''))
        .join(' '),
    ).toBe('Rails that have a name much too long for one line of the picture');
    expect(weight).toContain('role="img" aria-labelledby="bars-1-title bars-1-text"');
    expect(weight).not.toMatch(/style=|<script|href=/);
  });
});

test('a bar of pieces has a pattern for each, its words and figures beside it, and its share above where there is room', () => {
  const piece = (look: 'bound' | 'stated', from: number, to: number) =>
    ({
      look,
      label: `On <${look}>`,
      figure: '10 lb',
      share: look === 'bound' ? '3 %' : '97 %',
      from,
      to,
      at: [rails],
    }) as const;
  const { text } = stackHtml(
    {
      kind: 'stack',
      id: 'rests-1',
      title: 'Rests on',
      description: 'On bound 10 lb, 3 %',
      pieces: [piece('bound', 0, 0.03), piece('stated', 0.03, 1)],
      note: 'All parts.',
    },
    () => null,
  );
  expect(text.match(/<pattern id="[^"]*"/g)).toEqual(['<pattern id="rests-1-bound"', '<pattern id="rests-1-stated"']);
  expect(text.match(/url\(#rests-1-bound\)/g)).toHaveLength(2); // the piece, and the sign beside its words
  expect(text.match(/class="share"/g)).toHaveLength(1);
  expect(text).toContain('On &lt;bound&gt;</text><text class="figure" x="300.0" y="71.0">10 lb, 3 %</text>');
  expect(text).not.toMatch(/NaN|style=/);
});

describe('the page that stands alone', () => {
  const text = page(made('C"; } body { display: none } /*'), 'Letter', 'plan.liftplan');

  test('has a language, a title, its paper, and nothing from outside', () => {
    expect(text).toMatch(/^<!DOCTYPE html>\n<html lang="en">/);
    expect(text).toContain('<title>Pump &lt;out&gt;, revision C&quot;; } body { display: none } /*</title>');
    expect(text).toContain('@page { size: Letter; }');
    expect(text).not.toMatch(/<script|https?:|url\((?!#)|@import|data-id|tabindex/);
  });

  test('keeps the words of a plan out of its styles', () => {
    const style = text.slice(text.indexOf('<style>'), text.indexOf('</style>'));
    expect(style).toContain('.not-known');
    expect(style).not.toContain('Pump');
    expect(style).not.toContain('display: none } /*');
  });

  test('carries the foot for every printed page', () =>
    expect(text.match(/content mark 0000-1111-2222/g)?.length).toBe(1));
});

describe('Markdown', () => {
  const text = markdown(made('C'), '../plans/skid one.liftplan');

  test('says first that it is not to be edited, and from which plan it is', () =>
    expect(text.split('\n')[0]).toBe(
      '<!-- Do not edit: written by `becket report` from ../plans/skid one.liftplan. Sheet format 1. -->',
    ));

  test('a table of figures has its rule, and each row its cells', () => {
    const rows = text.split('\n').filter((row) => row.startsWith('|'));
    expect(rows).toEqual([
      '| Part | Weight |',
      '| :--- | ---: |',
      '| Rails | 276 lb |',
      '| – Deck | _not known_ [line 7](../plans/skid%20one.liftplan#L7) |',
      '| **All** | **112 %, over** [library/a b.liftplan, line 9](../plans/library/a%20b.liftplan#L9) |',
    ]);
  });

  test('what has no heads is a list, one value a line', () => expect(text).toContain('\n- **Site**: A \\| B\n'));

  test('no plan can end the comment at its head', () =>
    expect(markdown(made('C'), 'a-->b.liftplan').split('\n')[0]).toBe(
      '<!-- Do not edit: written by `becket report` from a-b.liftplan. Sheet format 1. -->',
    ));
});
