// The sheet's panel without VS Code: what it takes from its page, and what it keeps of the server's answers.
import { expect, test } from 'vitest';
import { readFromPage, readKept } from '../../../client/sheet/messages.ts';
import { ShownSheet } from '../../../client/sheet/shown.ts';

const answer = (version: number, order: string[], sections: [string, string][]) => ({
  uri: 'file:///a.liftplan',
  version,
  title: 'A',
  order,
  ofLibrary: false,
  sections: sections.map(([id, hash]) => ({ id, hash, html: `<p>${hash}</p>` })),
});

test('takes the messages it knows, exactly as they are meant', () => {
  expect(readFromPage({ type: 'ready', more: 1 })).toEqual({ type: 'ready' });
  expect(readFromPage({ type: 'reveal', id: 'x', go: true })).toEqual({ type: 'reveal', id: 'x', go: true });
  expect(readFromPage({ type: 'stay', on: false })).toEqual({ type: 'stay', on: false });
});

test.each([
  [null],
  ['ready'],
  [{}],
  [{ type: 'open' }],
  [{ type: 'reveal', id: 1, go: true }],
  [{ type: 'reveal', id: 'x' }],
  [{ type: 'stay', on: 'yes' }],
])('drops %j', (message) => {
  expect(readFromPage(message)).toBeNull();
});

test('a kept state without a plan is none', () => {
  expect(readKept({ uri: 'file:///a', stay: 1, paper: true })).toEqual({ uri: 'file:///a', stay: false, paper: true });
  expect(readKept({ stay: true })).toBeNull();
});

test('lays changed sections over what is held, in the order last told', () => {
  const sheet = new ShownSheet('file:///a.liftplan');
  expect([sheet.version, sheet.answer, sheet.known()]).toEqual([undefined, undefined, {}]);
  sheet.take(
    answer(
      1,
      ['head', 'legs'],
      [
        ['head', 'h1'],
        ['legs', 'l1'],
      ],
    ),
  );
  sheet.take(
    answer(
      2,
      ['legs', 'head', 'gear'],
      [
        ['legs', 'l2'],
        ['gear', 'g2'],
      ],
    ),
  );
  expect(sheet.known()).toEqual({ legs: 'l2', head: 'h1', gear: 'g2' });
  expect(sheet.answer?.sections.map(({ hash }) => hash)).toEqual(['l2', 'h1', 'g2']);
  sheet.take(answer(3, ['head'], []));
  expect([sheet.version, sheet.known()]).toEqual([3, { head: 'h1' }]);
});
