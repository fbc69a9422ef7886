// Texts nobody would write on purpose: random bytes, a line of megabytes, two hundred levels, circles, names without end.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { check } from '../../server/workspace/memory.ts';
import { random } from '../bench/plans.ts';
import { Client } from '../support/client.ts';
import { cold, plain } from '../support/cold.ts';
import { bench } from '../support/plans.ts';

let client: Client;
beforeAll(async () => {
  client = await Client.start({
    capabilities: { textDocument: { inlayHint: {}, semanticTokens: {}, codeAction: { codeActionLiteralSupport: {} } } },
  });
});
afterAll(async () => {
  expect(client.told).toEqual([]); // nothing failed, or the log would say so
  expect(await client.stop()).toBe(0);
});

let opened = 0;

/** Opens a text in the one server of these tests, asks everything of it, and compares what it finds with a run from nothing. */
async function outlived(text: string): Promise<void> {
  opened += 1;
  const uri = `untitled:${opened}`;
  const textDocument = { uri };
  const whole = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
  client.open(uri, text);
  await Promise.all([
    client.request('textDocument/hover', { textDocument, position: { line: 0, character: 3 } }),
    client.request('textDocument/completion', { textDocument, position: { line: 0, character: 3 } }),
    client.request('textDocument/inlayHint', { textDocument, range: whole }),
    client.request('textDocument/documentSymbol', { textDocument }),
    client.request('textDocument/foldingRange', { textDocument }),
    client.request('textDocument/selectionRange', { textDocument, positions: [{ line: 0, character: 3 }] }),
    client.request('textDocument/semanticTokens/full', { textDocument }),
    client.request('textDocument/formatting', { textDocument, options: {} }),
    client.request('textDocument/codeAction', {
      textDocument,
      range: whole,
      context: { diagnostics: [], only: ['source.fixAll'] },
    }),
    client.request('becket/sheet', { uri, known: {} }),
    client.request('becket/exportSheet', { uri, format: 'json' }),
  ]);
  await client.idle();
  const rows = text.split(/\r\n|\n|\r/).length;
  for (const { range } of client.findings(uri)) {
    expect(range.start.line).toBe(range.end.line);
    expect(range.end.line).toBeLessThan(rows);
  }
  expect(plain(client.findings(uri))).toEqual(cold({ 'plan.liftplan': text }, 'plan.liftplan'));
  client.close(uri);
}

test('random bytes, read as text', { timeout: 30_000 }, async () => {
  const next = random(11);
  for (let n = 0; n < 16; n++)
    await outlived(
      Buffer.from(Array.from({ length: Math.floor(next() * 600) }, () => Math.floor(next() * 256))).toString(
        n % 2 ? 'utf8' : 'latin1',
      ),
    );
});

test('random UTF-16 units, halves of pairs among them', { timeout: 30_000 }, async () => {
  const next = random(12);
  const hostile = [
    0x0d, 0x0a, 0x2028, 0x2029, 0x85, 0x0b, 0x0c, 0xfeff, 0x200b, 0x202e, 0xd83d, 0xdd29, 0x22, 0x23, 0x2e,
  ];
  for (let n = 0; n < 10; n++) {
    const units = Array.from({ length: 300 }, () =>
      next() < 0.4 ? (hostile[Math.floor(next() * hostile.length)] as number) : Math.floor(next() * 0x10000),
    );
    const text = String.fromCharCode(...units).replace(/\p{Surrogate}/gu, '?'); // JSON carries whole characters only
    await outlived(text.startsWith('\ufeff') ? text.slice(1) : text);
  }
});

test('one line of 5 MB, and a plan with such a line in it', { timeout: 30_000 }, async () => {
  await outlived(`load "${'x'.repeat(5 * 1024 * 1024)}"`);
  await outlived(
    bench.replace('note', 'note').concat(`  part "Long": box 1 m x 1 m x 1 m, note "${'a'.repeat(1024 * 1024)}"\n`),
  );
});

test('two hundred levels, and brackets as deep', async () => {
  await outlived(Array.from({ length: 200 }, (_, n) => `${'  '.repeat(n)}assembly "A${n}"`).join('\n'));
  await outlived(`let a = ${'('.repeat(900)}1 m${')'.repeat(900)}`);
  await outlived(`let a = ${'-'.repeat(1_900)}1 m`);
  await outlived(`let a = ${'sqrt('.repeat(380)}1 m2${')'.repeat(380)}`);
});

test('`use` of itself, and files that take in one another', () => {
  const texts = {
    'a.liftplan': `use "a.liftplan"\n${bench}`,
    'b.liftplan': 'use "c.liftplan"',
    'c.liftplan': 'use "b.liftplan"\nuse "a.liftplan"',
  };
  for (const file of Object.keys(texts))
    expect(check(texts, file).findings.map(({ slug }) => slug)).toContain('definition-circle');
});

test('a value that is defined by itself, a division by zero, figures beyond all size', async () => {
  const text = (length: string) =>
    `let a = b\nlet b = a\nlet zero = 1 m - 1 m\n${bench.replace('box 2 m', `box ${length}`)}`;
  for (const length of [
    'a',
    '1 m2 / zero',
    '1 m / 0',
    '1e308 m * 1e308',
    'tan(90 deg) * 1 m',
    'sqrt(-1 m2)',
    `${'9'.repeat(400)} m`,
  ]) {
    const { results, findings } = check({ plan: text(length) }, 'plan');
    expect(results.totals.loadWeight.value, length).toBeNull();
    expect(findings.filter(({ severity }) => severity === 'error').length, length).toBeGreaterThan(0);
    await outlived(text(length));
  }
});

test('no result is ever a number that is none', () => {
  for (const size of [
    '0 m x 0 m x 0 m',
    '-1 m x 1 m x 1 m',
    '1e-320 m x 1 m x 1 m',
    '1e200 m x 1e200 m x 1e200 m',
    '1 m ± 2 m x 1 m x 1 m',
  ]) {
    for (const { value, result } of check({ plan: bench.replace('2 m x 1 m x 10 mm', size) }, 'plan').results.list) {
      for (const number of [value.value, value.low, value.high])
        if (number !== null) expect(number, `${size}: ${result}`).toSatisfy(Number.isFinite);
    }
  }
});

test('names of ten thousand characters, and as many names', { timeout: 30_000 }, async () => {
  await outlived(bench.replaceAll('Frame', 'F'.repeat(10_000)));
  await outlived(bench.replaceAll('"Frame"', Array.from({ length: 1_000 }, (_, n) => `F${n}`).join(' and ')));
  await outlived('gear\n  sling S1..S999999: length 1 m');
});

test('marks of an unfinished merge', async () => {
  await outlived(`${bench}<<<<<<< ours\n  part "A": item 1 kg\n=======\n  part "A": item 2 kg\n>>>>>>> theirs\n`);
});
