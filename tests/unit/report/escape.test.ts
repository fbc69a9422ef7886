// Text from a plan stays text in every output: nothing in it becomes markup, a link, a control code or an invisible character.
import fc from 'fast-check';
import MarkdownIt from 'markdown-it';
import { expect, test } from 'vitest';
import { html } from '../../../server/report/render/escape.ts';
import { escape } from '../../../server/report/render/markdown.ts';
import { visible } from '../../../server/report/render/visible.ts';
import { hostile } from './hostile.ts';

test.each(hostile)('HTML content and attributes: %j', (text) => {
  const made = html`<p title="${text}">${text}</p>`.text;
  expect(made.match(/[<>"]/g)).toEqual(['<', '"', '"', '>', '<', '>']);
  expect(made).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u200b\u202e\ud800-\udfff]/);
});

test('what is escaped once is not escaped twice, and lists of pieces are put one after the other', () => {
  expect(html`<i>${html`<b>${'a & b'}</b>`}${null}</i>`.text).toBe('<i><b>a &amp; b</b></i>');
  expect(html`${[html`<i>1</i>`, html`<i>2</i>`]}`.text).toBe('<i>1</i>\n<i>2</i>');
});

test.each([
  ['a\u202Eb', 'a[U+202E]b'],
  ['a\u200Bb', 'a[U+200B]b'],
  ['a\u001b[31mb', 'a[U+001B][31mb'],
  ['a\r\nb', 'a b'],
  ['ü × ½ 日本', 'ü × ½ 日本'],
])('characters that cannot be seen are spelled out: %j', (text, shown) => expect(visible(text)).toBe(shown));

// CommonMark, as an independent library reads it: what comes out of a paragraph or a cell is the text that went in.
// Forges link what begins with a scheme or `www.`, not every word with a point in it.
const commonMark = new MarkdownIt({ html: true, linkify: true });
commonMark.linkify.set({ fuzzyLink: false });
const plain = (text: string) => visible(text).trim().replace(/\s+/g, ' ').trim();
const read = (markdown: string) => {
  const rendered = commonMark.render(markdown);
  const text = rendered
    .replace(/<\/?[a-z][^>]*>/g, '')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&');
  return {
    text: text
      .replace(/\u200b/g, '')
      .replace(/\s+/g, ' ')
      .trim(),
    tags: [...rendered.matchAll(/<([a-z][a-z0-9]*)/g)].map(([, tag]) => tag),
  };
};

test.each(hostile)('Markdown in a paragraph: %j', (text) => {
  const { text: shown, tags } = read(escape(text));
  expect(shown).toBe(plain(text));
  expect(tags.filter((tag) => tag !== 'p')).toEqual([]);
});

test('forges make no link of www. and no mention of a name', () => {
  expect(escape('www.x.example @crew #12')).not.toMatch(/www\.|@\w|(?<!&)#\d/);
});

test('Markdown in a cell: any text keeps the shape of its table', () => {
  const texts = fc.oneof(
    fc.string({ maxLength: 40 }),
    fc.constantFrom(...hostile),
    fc.array(fc.constantFrom(...'|\\`*_[]<>&@#-:$~ a'), { maxLength: 12 }).map((signs) => signs.join('')),
  );
  fc.assert(
    fc.property(texts, texts, (a, b) => {
      const { text, tags } = read(`| one | two |\n| :--- | ---: |\n| x${escape(a)} | x${escape(b)} |`);
      expect(tags).toEqual(['table', 'thead', 'tr', 'th', 'th', 'tbody', 'tr', 'td', 'td']);
      expect(text).toBe(`one two x${plain(a)} x${plain(b)}`.replace(/\s+/g, ' ').trim());
    }),
    { numRuns: 500 },
  );
});
