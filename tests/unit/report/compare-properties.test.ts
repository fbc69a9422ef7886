// Properties of comparing over every sample: nothing differs from itself however it is laid out, and no line that means something goes unseen.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { language } from '../../../server/plan/index.ts';
import { compare } from '../../../server/report/compare/index.ts';
import type { FindingChange } from '../../../server/report/compare/types.ts';
import { contentMark } from '../../../server/report/mark.ts';
import { formatText } from '../../../server/syntax/index.ts';
import { check } from '../../../server/workspace/memory.ts';

const folder = join(import.meta.dirname, '../../../samples');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => /\.(?:liftplan|csv|stl|obj)$/.test(path))
  .sort();
const texts = Object.fromEntries(files.map((path) => [path, readFileSync(join(folder, path), 'utf8')]));
const samples = files.filter((path) => path.endsWith('.liftplan'));

/** As they stand on disk, each worked out once. */
const wholes = new Map(samples.map((path) => [path, check(texts, path)]));

const differences = (path: string, text: string) => {
  const whole = wholes.get(path);
  if (!whole) throw new Error(`There is no ${path}.`);
  const { figures, expects, findings, statements, quiet, refined, rests } = compare(
    whole,
    check({ ...texts, [path]: text }, path),
  );
  return [figures, expects, findings, statements, quiet, refined, rests].flat();
};

/** Twice the indentation, wide gaps behind commas, a comment behind every line: nothing that means anything. */
const loosened = (text: string): string =>
  text
    .split('\n')
    .map((line) =>
      line ? `${line.replace(/^ +/, '$&$&').replace(/, (?=(?:[^"]*"[^"]*")*[^"]*$)/g, ',    ')}   # seen` : line,
    )
    .join('\n');

test.each(samples.filter((path) => !path.startsWith('wrong/')))(
  '%s does not differ from itself, loosely written',
  (path) => {
    const loose = loosened(texts[path] ?? '');
    expect(loose).not.toBe(texts[path]);
    expect(differences(path, loose)).toEqual([]);
    expect(differences(path, formatText(loose, language))).toEqual([]);
  },
);

/** Statements in the opposite order at every level; steps stay as they are, since there the order says something. */
function reversed(lines: readonly string[]): readonly string[] {
  const deep = Math.min(...lines.map((line) => line.search(/\S/)).filter((at) => at >= 0));
  const blocks: string[][] = [];
  for (const line of lines) {
    if (line.search(/\S/) === deep || !blocks.length) blocks.push([line]);
    else blocks.at(-1)?.push(line);
  }
  return blocks.reverse().flatMap(([head = '', ...under]) => {
    const inner = under.some((line) => /\S/.test(line)) && head !== 'steps' ? reversed(under) : under;
    return [head, ...inner];
  });
}

test.each(samples.filter((path) => !path.startsWith('wrong/')))(
  '%s does not differ from itself with its lines in another order',
  (path) => {
    const text = texts[path] ?? '';
    const other = reversed(text.split('\n').filter((line) => !/^\s*(?:#|$)/.test(line))).join('\n');
    expect(other.split('\n').length).toBeGreaterThan(5);
    // Of legs that are pulled equally hard, this note names the one that comes first.
    const tie = (one: object) => 'now' in one && (one as FindingChange).now?.slug === 'leg-share-uncertain';
    expect(differences(path, other).filter((one) => !tie(one))).toEqual([]);
  },
);

/** Each line with one digit raised by one, where it has any. */
const raised = (text: string): readonly string[] => {
  const lines = text.split('\n');
  return lines.flatMap((line, i) => {
    const other = line.replace(/^([^#\d]*)(\d)/, (_, before, digit) => `${before}${(Number(digit) + 1) % 10}`);
    return other === line ? [] : [lines.with(i, other).join('\n')];
  });
};

test.each(samples.filter((path) => !path.startsWith('wrong/')))(
  '%s: whatever changes the content mark is told, from both sides',
  (path) => {
    const text = texts[path] ?? '';
    const [whole, ...others] = [text, ...raised(text)].map((words) => check({ ...texts, [path]: words }, path));
    if (!whole) throw new Error('There is no text.');
    const marked = others.filter(({ plan }) => contentMark(plan) !== contentMark(whole.plan));
    expect(marked.length).toBeGreaterThan(5);
    for (const other of marked) {
      const [there, back] = [compare(whole, other), compare(other, whole)];
      expect([there.same, back.same]).toEqual([false, false]);
      expect(back.figures.length).toBe(there.figures.length);
    }
  },
);

describe.each(samples)('%s', (path) => {
  const text = texts[path] ?? '';

  test('does not differ from itself, set in order, with blank lines, comments and other line ends', () => {
    expect(differences(path, text)).toEqual([]);
    expect(differences(path, formatText(text, language))).toEqual([]);
    const loose = text.replace(/\n(?!$)/g, '\n\n# a comment\n').replaceAll('\n', '\r\n');
    expect(differences(path, loose)).toEqual([]);
  });

  test('differs without any one of its lines that says something', () => {
    const lines = text.split('\n');
    const unseen = lines.flatMap((line, i) => {
      if (/^\s*(?:#|$)/.test(line)) return [];
      const without = lines.filter((_, n) => n !== i).join('\n');
      return differences(path, without).length ? [] : [`${i + 1}: ${line}`];
    });
    expect(unseen).toEqual([]);
  });
});

test('differs without any one row of a list', () => {
  const [path, list] = ['truss.liftplan', 'truss-bill.csv'];
  const rows = (texts[list] ?? '').trimEnd().split('\n');
  expect(rows.length).toBeGreaterThan(2);
  for (const [i, row] of rows.entries()) {
    if (i === 0) continue;
    const without = rows.filter((_, n) => n !== i).join('\n');
    const { statements, same } = compare(check(texts, path), check({ ...texts, [list]: without }, path));
    expect(same, row).toBe(false);
    expect(
      statements.map(({ kind, heading }) => `${kind} ${heading}`),
      row,
    ).toContainEqual(expect.stringMatching(/^gone part /));
  }
});
