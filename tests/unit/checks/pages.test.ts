// Every page that explains a finding is a test: its plans raise the finding where they say, or not, and its ways out lead where they say.
import { describe, expect, test } from 'vitest';
import { checks } from '../../../server/checks/index.ts';
import type { Finding, Fix } from '../../../server/checks/types.ts';
import type { Snapshot } from '../../../server/workspace/types.ts';
import type { Fixture } from '../../support/fixture.ts';
import { withMarks } from '../../support/fixture.ts';
import { applied, type Fence, figureOf, marksOf, type Page, readPages, run } from '../../support/pages.ts';

/** Findings that no stage raises yet: their pages are written and wait here. Raised, a slug must leave this list. */
const notRaisedYet: readonly string[] = [];

const pages = readPages();
const slugs = Object.keys(checks).sort();

test('each finding has its page, each page its finding', () => {
  expect(pages.map((page) => page.slug).sort()).toEqual(slugs);
  expect(slugs).toEqual(expect.arrayContaining([...notRaisedYet]));
});

test('the pages that ship have no marks and no words for tests', async () => {
  const { readPages: shipped } = await import(new URL('../../../.build/pages.mjs', import.meta.url).href);
  const made: Readonly<Record<string, { readonly title: string; readonly markdown: string }>> = await shipped();
  expect(Object.keys(made).sort()).toEqual(slugs);
  for (const page of pages) {
    const { title, markdown } = made[page.slug] ?? { title: '', markdown: '' };
    expect(title).not.toBe(page.slug);
    const plans = [...markdown.matchAll(/^```([^\n]*)\n(.*?)^```$/gms)];
    expect(plans.map(([, info]) => info).filter((info) => info !== 'liftplan')).toEqual([]);
    const texts = page.raises.flatMap(({ fixture }) => Object.values(fixture.files));
    for (const text of texts) expect(markdown).toContain(text);
  }
});

test('no sentence and no page says that a lift may go ahead, or speaks of the program\u2019s inside', () => {
  const never = /\b(safe|ok|okay|invalid|illegal|token|parse[ds]?|syntax|passe[sd]|[a-z]+ error)\b|\u2713|\u2714/i;
  for (const page of pages) {
    expect(never.exec(page.markdown.replace(/^```.*?^```$/gms, ''))?.[0], page.slug).toBeUndefined();
    const said = page.raises.flatMap(({ fixture }) =>
      of(run(fixture), page.slug).flatMap(({ message, fixes }) => [message, ...fixes.map((fix) => fix.title)]),
    );
    for (const text of said) expect(never.exec(text)?.[0], text).toBeUndefined();
  }
});

describe.each(pages.map((page) => [page.slug, page] as const))('%s', (slug, page) => {
  test('is explained in a few plain words', () => {
    expect(page.words).toBeGreaterThanOrEqual(60);
    expect(page.words).toBeLessThanOrEqual(160);
    expect(page.raises.length).toBeGreaterThan(0);
    expect(page.nearMisses.length).toBeGreaterThan(0);
    expect(page.raises.flatMap(({ fixture }) => fixture.marks.map((mark) => mark.slug))).toContain(slug);
  });

  if (notRaisedYet.includes(slug)) {
    test('cannot be raised yet', () =>
      expect(page.raises.flatMap((fence) => slugsOf(run(fence.fixture)))).not.toContain(slug));
    return;
  }

  test('is raised exactly where marked', () => {
    for (const { fixture } of page.raises) expect(drawn(fixture, slug)).toEqual(textsWithMarks(fixture, slug));
  });

  test('nothing else is wrong in its plans', () => {
    for (const { fixture } of [...page.raises, ...page.nearMisses]) {
      const marked = fixture.marks.map((mark) => mark.slug);
      const others = run(fixture).findings.filter(
        (finding) => finding.severity === 'error' && finding.slug !== slug && !marked.includes(finding.slug),
      );
      expect(others.map((finding) => `${finding.slug}: ${finding.message}`)).toEqual([]);
    }
  });

  test('is not raised by the near miss', () => {
    for (const { fixture } of page.nearMisses) expect(slugsOf(run(fixture))).not.toContain(slug);
  });

  test('has the effect it declares', () => {
    for (const fence of page.raises) judgeEffect(page, fence);
  });

  test('leads out as shown', () => {
    for (const fence of page.raises) {
      const snapshot = run(fence.fixture);
      const [finding] = of(snapshot, slug);
      const shown = finding?.fixes.length ? 1 : 0;
      expect(page.fixed.length >= shown, 'a way out is offered, so the page shows the text after it').toBe(true);
    }
    const [first] = page.raises;
    for (const fixed of page.fixed) if (first) tryFix(slug, first.fixture, fixed);
  });

  test('each way out removes it, or puts the cursor where something is missing', () => {
    for (const { fixture } of page.raises) {
      const snapshot = run(fixture);
      const before = of(snapshot, slug);
      for (const fix of before[0]?.fixes ?? []) {
        const left = of(run({ files: applied(snapshot, fixture.files, fix).files, file: fixture.file }), slug);
        expect(fix.cursor !== null || left.length < before.length, fix.title).toBe(true);
      }
    }
  });

  test('prefers no way out that lightens the load or takes a line away', () => {
    for (const { fixture } of page.raises) {
      const snapshot = run(fixture);
      for (const fix of of(snapshot, slug).flatMap((finding) => finding.fixes))
        if (fix.preferred) harmless(snapshot, fixture, fix);
    }
  });
});

const of = (snapshot: Snapshot, slug: string): readonly Finding[] =>
  snapshot.findings.filter((finding) => finding.slug === slug);
const slugsOf = (snapshot: Snapshot): readonly string[] => snapshot.findings.map((finding) => finding.slug);

/** The texts with marks under the findings of a slug: as found, and as the page has them. */
function drawn({ files, file }: Fixture, slug: string): Readonly<Record<string, string>> {
  const marks = marksOf(run({ files, file })).filter((mark) => mark.slug === slug);
  return Object.fromEntries(
    Object.entries(files).map(([name, text]) => [
      name,
      withMarks(text, unique(marks.filter((mark) => mark.file === name))),
    ]),
  );
}
function textsWithMarks({ files, marks }: Fixture, slug: string): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(files).map(([name, text]) => [
      name,
      withMarks(
        text,
        marks.filter((mark) => mark.file === name && mark.slug === slug),
      ),
    ]),
  );
}
const unique = <T>(items: readonly T[]): readonly T[] =>
  items.filter((item, i) => items.findIndex((other) => JSON.stringify(other) === JSON.stringify(item)) === i);

/** open: not known here and known in the near miss; heavier: never below the near miss; stands: the same figure in both. */
function judgeEffect({ slug, nearMisses }: Page, fence: Fence): void {
  const { effect } = checks[slug as keyof typeof checks];
  const words = fence.figure ?? 'gross load';
  const here = figureOf(run(fence.fixture), words).value;
  for (const near of nearMisses) {
    const there = figureOf(run(near.fixture), near.figure ?? words).value;
    expect(there, `${words} in the near miss`).not.toBeNull();
    if (effect === 'open' || effect === 'opens centre') expect(here, words).toBeNull();
    else if (effect === 'heavier')
      expect(here ?? Number.NaN, words).toBeGreaterThanOrEqual((there as number) * (1 - 1e-12));
    else expect(here, words).toBeCloseTo(there as number, 6);
  }
}

function tryFix(slug: string, fixture: Fixture, fixed: Fence): void {
  const snapshot = run(fixture);
  const [finding] = of(snapshot, slug);
  const fix =
    fixed.fix === null
      ? (finding?.fixes.find((one) => one.preferred) ?? finding?.fixes[0])
      : finding?.fixes[fixed.fix - 1];
  if (!fix) throw new Error(`${slug} offers no such way out.`);
  const after = applied(snapshot, fixture.files, fix);
  expect({ files: after.files, cursor: after.cursor }).toEqual({
    files: { ...fixture.files, ...fixed.fixture.files },
    cursor: fixed.fixture.cursor,
  });
  const before = of(snapshot, slug).length;
  const now = run({ files: after.files, file: fixture.file });
  if (of(now, slug).length < before) return;
  const { cursor } = after;
  expect(cursor, 'the finding goes, or the cursor stands where something is missing').not.toBeNull();
  expect(
    marksOf(now).filter((mark) => mark.file === cursor?.file && mark.line === cursor.line),
    'what is missing there is said',
  ).not.toEqual([]);
}

function harmless(snapshot: Snapshot, fixture: Fixture, fix: Fix): void {
  const after = run({ files: applied(snapshot, fixture.files, fix).files, file: fixture.file });
  for (const load of snapshot.results.loads) {
    const now = after.results.loads.find((one) => one.thing.name === load.thing.name);
    if (load.weight.value !== null) expect(now?.weight.value ?? Number.NaN).toBeGreaterThanOrEqual(load.weight.value);
  }
  for (const item of snapshot.results.gear) {
    const now = after.results.gear.find((one) => one.thing.name === item.thing.name);
    if (item.capacity.value !== null) expect(now?.capacity.value ?? 0).toBeLessThanOrEqual(item.capacity.value);
  }
  expect(
    fix.edits.every(
      (edit) =>
        edit.kind === 'insert' || edit.text !== '' || edit.at.to - edit.at.from < edit.at.row.text.trim().length,
    ),
  ).toBe(true);
}
