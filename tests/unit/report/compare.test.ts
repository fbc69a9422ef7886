// Two versions of a plan: what is said to differ, in which words, and what is said to be the same.
import { describe, expect, test } from 'vitest';
import { cautions } from '../../../server/checks/index.ts';
import {
  type Comparison,
  compare,
  comparedDocument,
  comparedJson,
  comparedMarkdown,
  comparedPlan,
  comparedText,
} from '../../../server/report/index.ts';
import { check } from '../../../server/workspace/memory.ts';
import { files, library, plan } from './plans.ts';

const file = 'quarry/filter.liftplan';
const of = (text: string, yard = library) =>
  check({ ...files, [file]: text, 'quarry/library/yard.liftplan': yard }, file);
const changed = (...edits: readonly (readonly [from: string, to: string])[]): Comparison => {
  const text = edits.reduce((made, [from, to]) => {
    if (!made.includes(from)) throw new Error(`The plan does not say ${from}.`);
    return made.replaceAll(from, to);
  }, plan);
  return compare(of(plan), of(text));
};
const told = ({ statements }: Comparison) => statements.map(({ kind, heading }) => `${kind} ${heading}`);
const markdown = (old: string, now: string) =>
  comparedMarkdown([
    comparedPlan({ path: 'filter.liftplan', old: of(old), now: of(now) }, (_, name) => name, new Set()),
  ]);

describe('means the same', () => {
  test.each<readonly [string, readonly (readonly [string, string])[]]>([
    ['in other units', [['outside 1 m, wall 10 mm', 'outside 1,000 mm, wall 1 cm']]],
    ['a designation spelled otherwise', [['of carbon steel', 'of "Carbon Steel"']]],
    [
      'with lines in another order',
      [
        [
          '  sling A: like "Sling 9"\n  sling B: like "Sling 9"\n',
          '  sling B: like "Sling 9"\n  sling A: like "Sling 9"\n',
        ],
      ],
    ],
    ['with gear in a block of its own', [['  shackle K3', 'gear\n  shackle K3']]],
    [
      'with a range told one by one',
      [
        [
          '  shackle K1..K2: weight 2 kg, capacity 4.75 t\n',
          '  shackle K2: weight 2 kg, capacity 4.75 t\n  shackle K1: weight 2 kg, capacity 4.75 t\n',
        ],
      ],
    ],
  ])('%s', (_, edits) => {
    const { old: _old, now: _now, same, ...lists } = changed(...edits);
    expect(lists).toEqual(Object.fromEntries(Object.keys(lists).map((name) => [name, []])));
    expect(same).toBe(true);
  });
});

describe('what the text says', () => {
  test('a figure, in its own words, with the figures that follow from it', () => {
    const { statements, figures } = changed(['item 500 kg ± 20 kg', 'item 550 kg ± 20 kg']);
    expect(statements).toMatchObject([
      {
        kind: 'changed',
        heading: 'part Sand',
        clauses: [{ keyword: 'item', old: '500 kg ± 20 kg', now: '550 kg ± 20 kg' }],
      },
    ]);
    const weight = figures.find(({ subject, result }) => subject.name === 'Sand' && result === 'weight');
    expect([weight?.old?.value, weight?.now?.value]).toEqual([500, 550]);
  });

  test('the same words that stand for another figure show the figure', () => {
    const { statements } = changed(['let side = 1.2 m', 'let side = 1.3 m']);
    const base = statements.find(({ heading }) => heading === 'part Base');
    expect(base?.clauses).toEqual([
      {
        keyword: 'plate',
        old: 'side x side x 20 mm = 1.2 m × 1.2 m × 20 mm',
        now: 'side x side x 20 mm = 1.3 m × 1.3 m × 20 mm',
      },
    ]);
  });

  test('a renamed thing shows as renamed and nothing else, wherever it is named', () => {
    const { statements, figures, findings, quiet } = changed(['"Hook"', '"Big hook-2 (new)."']);
    expect(statements.map(({ kind, heading, was }) => [kind, heading, was])).toEqual([
      ['renamed', 'hook “Big hook-2 (new).”', 'hook Hook'],
    ]);
    expect([figures, findings, quiet]).toEqual([[], [], []]);
  });

  test('and back, from a name with signs in it', () => {
    const odd = plan.replaceAll('"Hook"', '"Big hook-2 (new)."');
    expect(compare(of(odd), of(plan)).statements.map(({ kind, was }) => [kind, was])).toEqual([
      ['renamed', 'hook “Big hook-2 (new).”'],
    ]);
  });

  test('a name that stands for something else is told, though the words are the same', () => {
    const dangling = changed(['hook "Hook"', 'hook "Big hook"']).statements.find(({ keyword }) => keyword === 'leg');
    expect(dangling?.clauses[0]?.now).toBe('"Hook" > A > K1 > E, where a name stands for something else now');
  });

  test('of two things alike, of which one has another name, nobody can tell which it was', () => {
    const { statements } = changed(
      ['sling A: like', 'sling C: like'],
      ['> A >', '> C >'],
      ['sling B: like', 'sling D: like'],
      ['> B >', '> D >'],
    );
    expect(told({ statements } as Comparison)).toEqual(
      expect.arrayContaining(['new sling C', 'new sling D', 'gone sling A', 'gone sling B']),
    );
  });

  test('a part under another thing is moved, and its figures are compared as its own', () => {
    const sand = '  part "Sand": item 500 kg ± 20 kg, by estimate, at (0, 0, 600 mm)\n';
    const { statements, figures } = changed(
      [sand, ''],
      ['  assembly "Body": at (0, 0, 0)\n', `  assembly "Body": at (0, 0, 0)\n  ${sand}`],
    );
    expect(statements.map(({ kind, heading, under }) => [kind, heading, under])).toEqual([
      ['moved', 'part Sand', { old: 'load Filter', now: 'assembly Body' }],
    ]);
    expect(figures.some(({ subject }) => subject.name === 'Sand')).toBe(false);
    expect(figures.some(({ subject }) => subject.name === 'Body')).toBe(true);
  });

  test('a part that moved and lost what stood under it: both are told', () => {
    const base = '    part "Base": plate side x side x 20 mm, of carbon steel, at (0, 0, 10 mm)\n';
    const hole = '      less hole, diameter 100 mm\n';
    const moved = changed([base + hole, ''], ['  part "Sand"', `${base.slice(2)}  part "Sand"`]);
    expect(moved.statements.map(({ kind, heading, under }) => [kind, heading, under?.now])).toEqual([
      ['moved', 'part Base', 'load Filter'],
      ['gone', 'less under part Base', undefined],
    ]);
    const dissolved = changed(
      ['  assembly "Body": at (0, 0, 0)\n', ''],
      [base + hole, base.slice(2)],
      ['    part "Shell"', '  part "Shell"'],
    );
    expect(dissolved.statements.map(({ kind, heading, below }) => [kind, heading, below])).toEqual([
      ['moved', 'part Base', 0],
      ['moved', 'part Shell', 0],
      ['gone', 'assembly Body', 0],
      ['gone', 'less under part Base', 0],
    ]);
  });

  test('a leg that runs otherwise', () =>
    expect(changed(['leg "Hook" > A > K1 > E', 'leg "Hook" > A > K3 > E']).statements).toMatchObject([
      {
        kind: 'changed',
        keyword: 'leg',
        clauses: [{ keyword: '', old: '"Hook" > A > K1 > E', now: '"Hook" > A > K3 > E' }],
      },
    ]));

  test('steps in another order, notes, and lines of a file it uses', () => {
    const [a, b] = [
      '  step "Raise 100 mm, check level and reading", hold\n',
      '  step "Set down on the plinth", who "crew"\n',
    ];
    expect(told(changed([a + b, b + a]))).toEqual(['order steps']);
    expect(told(changed(['Road closed', 'Road open']))).toEqual(['changed plan “Set the filter vessel”']);
    const yard = compare(of(plan), of(plan, library.replace('weight 12 kg', 'weight 13 kg')));
    expect(told(yard)).toEqual(['changed sling “Sling 9”']);
    expect(
      compare(
        of(plan),
        of(plan, library.replace('weight 12 kg', 'weight 13 kg')),
        new Set(['quarry/library/yard.liftplan']),
      ).statements,
    ).toEqual([]);
  });

  test('what stands under a line that went is counted with it', () =>
    expect(
      changed(['surroundings: exclusion 10 m\n  power line "Field line": distance 40 m, voltage 11 kV\n', ''])
        .statements,
    ).toMatchObject([{ kind: 'gone', heading: 'surroundings', below: 1, nowAt: null }]));

  test('an attached drawing with other content is told, though its name and the figures are the same', () => {
    const facet = (x: number) =>
      `facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex ${x} 0 0\nvertex 0 1 0\nendloop\nendfacet\n`;
    const part = (x: number) =>
      check(
        {
          'a.liftplan':
            'plan "P": date 2026-01-02\nload "L"\n  part "B": mesh "b.stl", unit mm, of carbon steel, at (0, 0, 0)\n',
          'b.stl': `solid b\n${facet(x)}endsolid b\n`,
        },
        'a.liftplan',
      );
    expect(compare(part(1), part(1)).same).toBe(true);
    expect(compare(part(1), part(2)).statements).toMatchObject([{ clauses: [{ keyword: 'content of b.stl' }] }]);
  });
});

describe('what is judged', () => {
  test('a dropped expectation, and a bound that lets more through', () => {
    const { expects } = changed(['expect gross load <= 2,500 kg\n', ''], ['< 1,500 kg', '< 1,600 kg']);
    expect(expects.map(({ kind, bound, old, now }) => [kind, bound, old?.text, now?.text])).toEqual([
      ['changed', 'looser', 'load "Filter" weight < 1,500 kg', 'load "Filter" weight < 1,600 kg'],
      ['gone', null, 'gross load <= 2,500 kg', undefined],
    ]);
    expect(changed(['< 1,500 kg', '< 1,450 kg']).expects.map(({ bound }) => bound)).toEqual(['tighter']);
  });

  test('findings gained and lost, and one whose figures are other ones', () => {
    const { findings } = changed(['expect gross load <= 2,500 kg', 'expect gross load <= 1,000 kg']);
    expect(findings.map(({ kind, now }) => [kind, now?.slug])).toEqual([['new', 'expect-failed']]);
    const failing = plan.replace('<= 2,500 kg', '<= 1,000 kg');
    const again = compare(of(failing), of(failing.replace('<= 1,000 kg', '<= 1,100 kg')));
    expect(again.findings.map(({ kind, old, now }) => [kind, old?.slug, now?.slug])).toEqual([
      ['changed', 'expect-failed', 'expect-failed'],
    ]);
    expect(compare(of(failing), of(plan)).findings.map(({ kind, old }) => [kind, old?.slug])).toEqual([
      ['gone', 'expect-failed'],
    ]);
  });
});

describe('what is said quietly', () => {
  test.each([
    [', spare', '', 'gone', 'Not counted: lies ready (spare)'],
    ['item 500 kg ± 20 kg', 'item ?', 'new', 'Not known yet (?)'],
    ['deduct "Jib": 200 kg', 'deduct "Jib": none, from "chart"', 'new', 'Deliberately nothing (none)'],
    ['stated 1,240 kg', 'stated 1,240 kg, without "Sand"', 'new', 'Left out (without)'],
    ['> A > K1 > E', '> A > E, direct "soft eye"', 'new', 'Joined without a shackle or link (direct)'],
    [
      'sling B: like "Sling 9"',
      'sling B: wire rope, diameter 20 mm, length 3 m, weight 12 kg, capacity 4 t',
      'gone',
      'Taken over from another item (like)',
    ],
    ['reason "new vessel on timber"', 'reason "seen"', 'changed', 'Set aside (waive)'],
    ['let side = 1.2 m', 'let side = 1.3 m', 'changed', 'Figure taken from a name (let)'],
  ])('%s to %s', (from, to, kind, what) =>
    expect(changed([from, to]).quiet.map((one) => [one.kind, one.what])).toContainEqual([kind, what]),
  );
});

describe('what weights rest on', () => {
  const casing = (part: string) => `plan "Set a casing": date 2026-05-18
load "Set"
  contingency 5 %
  free "seen"
  part "Base": item 500 kg, by drawing, at (0, 0, 0)
${part}`;
  const bound = '  part "Casing": envelope 1 x 1 x 1 m, density 5,000 kg/m3, at (0, 0, 0.5 m)\n';
  const on = (old: string, now: string) =>
    compare(check({ 'a.liftplan': casing(old) }, 'a.liftplan'), check({ 'a.liftplan': casing(now) }, 'a.liftplan'));

  test('a bound that became a calculation is named, with both weights', () => {
    const box = '  part "Casing": box 1 x 1 x 0.5 m, density 5,000 kg/m3, at (0, 0, 0.25 m)\n';
    const { refined, rests } = on(bound, box);
    expect(refined).toMatchObject([
      {
        name: 'Casing',
        old: { basis: 'bound', weight: { value: 5000 } },
        now: { basis: 'calculated', weight: { value: 2500 } },
      },
    ]);
    expect(rests).toMatchObject([
      {
        load: 'Set',
        old: [
          { basis: 'bound', kg: 5000 },
          { basis: 'stated', kg: 500 },
        ],
        now: [
          { basis: 'stated', kg: 500 },
          { basis: 'calculated', kg: 2500 },
        ],
      },
    ]);
    const plans = [
      comparedPlan(
        {
          path: 'a',
          old: check({ 'a.liftplan': casing(bound) }, 'a.liftplan'),
          now: check({ 'a.liftplan': casing(box) }, 'a.liftplan'),
        },
        (_, name) => name,
        new Set(),
      ),
    ];
    expect(comparedText(plans)).toContain('Casing: bound 5,000 kg became calculated 2,500 kg');
  });

  test('a part that weighs more than its bound says so', () => {
    const heavy = '  part "Casing": box 1 x 1 x 1.1 m, density 5,000 kg/m3, at (0, 0, 0.55 m)\n';
    const [old, now] = [bound, heavy].map((part) => check({ 'a.liftplan': casing(part) }, 'a.liftplan'));
    const text = comparedText([
      comparedPlan({ path: 'a', old: old ?? null, now: now ?? null }, (_, name) => name, new Set()),
    ]);
    expect(text).toContain('Casing: bound 5,000 kg became calculated 5,500 kg, more than its bound');
  });

  test('or an assembly of parts', () => {
    const parts =
      '  assembly "Casing": at (0, 0, 0)\n    part "Half": box 1 x 1 x 0.2 m, density 5,000 kg/m3, at (0, 0, 0.1 m)\n    part "Lid": box 1 x 1 x 0.1 m, density 5,000 kg/m3, at (0, 0, 0.3 m)\n';
    const { refined, figures } = on(bound, parts);
    expect(refined).toMatchObject([
      { name: 'Casing', old: { basis: 'bound' }, now: { basis: 'assembly', parts: 2, weight: { value: 1500 } } },
    ]);
    const weight = figures.find(({ subject, result }) => subject.name === 'Casing' && result === 'weight');
    expect([weight?.old?.value, weight?.now?.value]).toEqual([5000, 1500]);
  });

  test('an estimate that became a reading of a drawing; one that stayed is not named', () => {
    const item = (by: string) => `  part "Valve": item 300 kg, by ${by}, from "V-1", at (0, 0, 1 m)\n`;
    expect(on(item('estimate'), item('drawing')).refined).toMatchObject([
      { old: { basis: 'estimate' }, now: { basis: 'stated', evidence: 'drawing' } },
    ]);
    expect(on(item('estimate'), item('estimate').replace('300', '310')).refined).toEqual([]);
  });

  test('what is not known is no share', () =>
    expect(on(bound, '  part "Casing": item ?, by estimate, at (0, 0, 0.5 m)\n').rests).toMatchObject([{ now: null }]));
});

describe('for readers', () => {
  test('Markdown begins with the caution and holds no change unsaid', () => {
    const text = markdown(plan, plan.replace('± 20 kg', '± 30 kg'));
    expect(text.split('\n')[0]).toBe(cautions.pullRequest);
    expect(text).toContain('| changed | part Sand | item 500 kg ± 20 kg → 500 kg ± 30 kg | line 13 |');
    expect(markdown(plan, plan)).toBe(`${cautions.pullRequest}\n\nNo change in meaning.\n`);
  });

  test('Markdown fits into a comment and counts what it leaves out; of every plan the head is there, and a document has it all', () => {
    const many = (kg: number) =>
      `plan "Many": date 2026-01-02\nload "L"\n${Array.from({ length: 400 }, (_, i) => `  part "P${i}": item ${kg + i} kg, by drawing, from "D", at (0, 0, 0)\n`).join('')}`;
    const one = comparedPlan(
      { path: 'many', old: check({ a: many(10) }, 'a'), now: check({ a: many(11) }, 'a') },
      (_, name) => name,
      new Set(),
    );
    const text = comparedMarkdown(Array.from({ length: 6 }, () => one));
    expect(text.length).toBeLessThan(65_000);
    expect(text.match(/^### Many$/gm)).toHaveLength(6);
    expect(text).toContain('_and 300 more rows: `becket compare` prints them all_');
    expect(text).toMatch(/_Too long for a comment: \d+ sections left out\./);
    const whole = comparedDocument([one]);
    expect(whole).toContain('| part P399: weight |');
    expect(whole).not.toMatch(/left out|more rows/);
  });

  test('every figure that changed is shown or counted', () => {
    const pair = comparedPlan(
      { path: 'f', old: of(plan), now: of(plan.replace('outside 1 m', 'outside 1.1 m')) },
      (_, name) => name,
      new Set(),
    );
    const text = comparedText([pair]);
    const figures = pair.comparison?.figures ?? [];
    const results = new Set(figures.map(({ result }) => result));
    const [, counted] = /(\d+) figures that changed are not shown/.exec(text) ?? [];
    const hidden = figures.filter(
      ({ subject, result }) =>
        ['volume', 'length', 'width', 'height', 'elastic tension'].includes(result) ||
        (result === 'load' && subject.kind !== 'load'),
    );
    expect(Number(counted)).toBe(hidden.length);
    expect(hidden.length).toBeGreaterThan(5);
    for (const result of ['weight', 'cog z', 'capacity used', 'tension', 'pull', 'gross load']) {
      expect(results).toContain(result);
      expect(text).toMatch(new RegExp(`(?:: |^ +)${result} `, 'm'));
    }
  });

  test('what is not known stays in words', () => {
    const pair = comparedPlan(
      { path: 'f', old: of(plan), now: of(plan.replace('item 500 kg ± 20 kg', 'item ?')) },
      (_, name) => name,
      new Set(),
    );
    expect(comparedText([pair])).toMatch(/part Sand: weight +500 kg \(480 kg to 520 kg\) +not known\n/);
  });

  test('JSON has its keys in their order, figures in SI, unrounded', () => {
    const pair = comparedPlan(
      { path: 'f.liftplan', old: of(plan), now: of(plan.replace('weight 90 kg', 'weight 90 lb')) },
      (_, name) => name,
      new Set(),
    );
    const made = JSON.parse(comparedJson([pair], (_, name) => name));
    expect(Object.keys(made)).toEqual(['format', 'version', 'caution', 'plans']);
    expect(made.caution).toBe(cautions.sheetHead);
    expect(Object.keys(made.plans[0])).toEqual([
      'path',
      'change',
      'old',
      'new',
      'figures',
      'expects',
      'findings',
      'refined',
      'rests',
      'quiet',
      'statements',
    ]);
    const rigging = made.plans[0].figures.find(({ result }: { result: string }) => result === 'rigging weight');
    expect(Object.keys(rigging)).toEqual(['subject', 'result', 'stage', 'unit', 'old', 'new']);
    expect(rigging.old.value - rigging.new.value).toBeCloseTo(90 - 90 * 0.45359237, 9); // NIST SP 811, appendix B.8: 1 lb
    expect(made.plans[0].statements[0].clauses).toEqual([{ keyword: 'weight', old: '90 kg', new: '90 lb' }]);
  });
});
