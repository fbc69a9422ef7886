// Completion: what may stand here and nothing else, each with its figure, what is due first; on lines that do not read as well.
import { expect, test } from 'vitest';
import { complete } from '../../../server/editor/complete.ts';
import { check } from '../../../server/workspace/memory.ts';
import { goodSamples, offered, offers, sample, taken } from '../../support/draw.ts';
import { fixture } from '../../support/fixture.ts';
import { column, instead, tank } from './plans.ts';

const labels = (text: string, trigger: Parameters<typeof offers>[1] = null) =>
  offers(text, trigger).map(({ label }) => label);
const load = (line: string) =>
  `plan "x": date 2026-01-05\n  units metric\nload "L"\n  datum "d"\n  contingency 5 %\n${line}`;

test('after "of" stand materials with their densities, those used in this file first', () => {
  const first = offered(
    load('  part "A": box 1 x 1 x 1 m, of oak, at (0, 0, 0)\n  part "B": box 1 x 1 x 1 m, of |'),
    1,
  );
  expect(first[0]).toMatch(/^oak · [\d,]+ kg\/m3$/);
  expect(labels(load('  part "B": box 1 x 1 x 1 m, of |'))).toEqual(
    expect.arrayContaining(['carbon steel', 'aluminium', 'water']),
  );
  expect(offered(load('  part "B": box 1 x 1 x 1 m, of carbon st|'), 200)).toContain('carbon steel · 7,850 kg/m3');
});

test('where the moisture is stated woods stand by species, with what their dry wood weighs', () => {
  // Wood Handbook: 0.46 green, 0.48 at 12 % (0.45 and 0.48 printed; the heavier of both ways).
  const timber = (typed: string) => load(`  part "B": box 1 x 1 x 1 m, moisture 20 %, of ${typed}|`);
  expect(offered(timber('Dougl'), 200).find((one) => one.startsWith('Douglas fir'))).toMatch(
    /^Douglas fir · 4\d\d\.?\d* kg\/m3$/,
  );
  expect(labels(timber(''))).not.toContain('carbon steel');
});

test('shapes stand with their words; behind a weld its kinds', () => {
  expect(labels(load('  part "B": |'))).toEqual(expect.arrayContaining(['weld', 'coil', 'heap', 'hollow core']));
  expect(labels(load('  part "B": weld |'))).toEqual(expect.arrayContaining(['fillet', 'single V butt']));
});

test("a material of the plan's own comes with its density", () => {
  expect(offered('material "lagging": density 140 kg/m3\nload "L"\n  part "B": box 1 x 1 x 1 m, of |', 1)).toEqual([
    'lagging · 140 kg/m3',
  ]);
});

test('sections stand with their weight per length, and take the capitals of the table', () => {
  // C8X11.5: 11.5 lb/ft by its designation.
  expect(offered('plan "x": date 2026-01-05\n  units US\nload "L"\n  part "R": section C8x1|', 3)).toContain(
    'C8x11.5 · 11.5 lb/ft',
  );
  expect(taken(load('  part "R": section c8x11|, length 2 m'), 'C8x11.5')).toBe(
    load('  part "R": section C8x11.5|, length 2 m'),
  );
});

test('a leg is offered what hangs next, free items first and numbered alike', () => {
  const rig = (leg: string) => instead(tank, '  leg "Main hook" > S2 > K2 > E\n', `  leg ${leg}\n`);
  expect(offered(rig('|'), 1)).toEqual(['Main hook · hook, weight 20 kg, capacity 5,000 kg']);
  expect(offered(rig('"Main hook" > |'), 1)).toEqual(['S2 · sling, weight 3 kg, capacity 1,300 kg']);
  expect(labels(rig('"Main hook" > S3 > |')).slice(0, 2)).toEqual(['K3', 'K2']);
  expect(labels(rig('"Main hook" > S3 > K3 > |'))[0]).toBe('E');
});

test('a name is written as it is declared, and a closing quote right of the caret stays', () => {
  expect(taken('load "L"\n  part "Deck": box 1 x 1 x 1 m\n  part "B": box 1 x 1 x 1 m, on |', 'Deck')).toBe(
    'load "L"\n  part "Deck": box 1 x 1 x 1 m\n  part "B": box 1 x 1 x 1 m, on "Deck"|',
  );
  expect(taken('load "L"\n  part "Deck": box 1 x 1 x 1 m\n  part "B": box 1 x 1 x 1 m, on "De|"', 'Deck')).toBe(
    'load "L"\n  part "Deck": box 1 x 1 x 1 m\n  part "B": box 1 x 1 x 1 m, on "Deck|"',
  );
});

test('a name begun with a quotation mark stays in them', () => {
  const text = instead(column, '  leg "Hook" > S1 > K1 > TOP', '  leg "Hook" > "S|" > K1 > TOP');
  expect(taken(text, 'S1')).toContain('  leg "Hook" > "S1|" > K1 > TOP');
  expect(taken(text.replace('"S|"', '"S|'), 'S1')).toContain('"Hook" > "S1"| > K1');
});

test('units fit what is measured, those of the plan and of the file first', () => {
  expect(labels(load('  part "A": item 5 |'))[0]).toBe('kg');
  expect(labels(load('  part "A": item 5 |'))).not.toContain('m');
  expect(labels(load('  part "A": box 1 m x 2 |'))).toEqual(expect.arrayContaining(['m', 'mm', 'ft', 'x']));
  expect(labels(load('  contingency 5 |'))).toEqual(['%']);
  expect(labels(`${column}expect sling angle >= 60 |`)[0]).toBe('deg');
});

test('a clause that is needed comes first, one that is given does not come again', () => {
  expect(offered(load('  part "A": tube, |'), 4)).toEqual([
    'outside · needed',
    'wall · needed',
    'bore · needed',
    'length · needed',
  ]);
  const after = labels(load('  part "A": tube, outside 1 m, wall 5 mm, length 2 m, of carbon steel, at (0, 0, 0), |'));
  for (const word of ['tube', 'outside', 'wall', 'bore', 'length', 'of', 'density', 'at', 'on', 'box'])
    expect(after, word).not.toContain(word);
  expect(after).toEqual(expect.arrayContaining(['axis', 'turn', 'count', 'from', 'note']));
});

test('clauses that are written on lines of their own count as given', () => {
  expect(labels(load('  part "A": tube\n    outside 1 m, wall 5 mm\n    |'))).not.toContain('outside');
  expect(labels(load('  part "A": tube\n    outside 1 m, wall 5 mm\n    |'))[0]).toBe('length');
});

test('at the start of a line stand statements and clauses of its parent; a plan is offered what it lacks', () => {
  expect(labels('plan "x": date 2026-01-05\n|').slice(0, 2)).toEqual(['load', 'load …']);
  expect(labels(load('  |')).slice(0, 5)).toEqual(['free', 'held by', 'part', 'part …', 'pick']);
  expect(labels(load('  |'))).not.toContain('sling');
  expect(labels('plan "x": date 2026-01-05\n|')).not.toContain('plan');
});

test('evidence, kinds and other listed words come with their help', () => {
  const found = offers(load('  stated 5 t, by |'));
  expect(found.map(({ label }) => label)).toEqual(expect.arrayContaining(['marking', 'load cell', 'estimate']));
  expect(found.find(({ label }) => label === 'load cell')?.help).toBe('A reading of a load cell or crane indicator.');
  expect(taken(load('  stated 5 t, by load ce|'), 'load cell')).toBe(load('  stated 5 t, by load cell|'));
});

test('a bound is offered kinds, results, names, signs, and the figure as it stands', () => {
  expect(labels(`${column}expect |`)).toEqual(expect.arrayContaining(['gross load', 'load', 'sling', 'crane']));
  expect(labels(`${column}expect sling |`)).toEqual(expect.arrayContaining(['capacity used', 'angle', 'S1']));
  expect(labels(`${column}expect sling |`)).not.toContain('K1');
  expect(labels(`${column}expect sling S1 |`)).toContain('tension');
  expect(labels(`${column}expect gross load |`)).toEqual(['<=', '<', '>=', '>', 'between', '=']);
  // 1,000 kg, nothing added, and 35 kg of gear; below a strict bound there is a thousandth of room.
  expect(offered(`${column}expect gross load <= |`)).toEqual(['1,035 kg · as it stands now']);
  expect(offered(`${column}expect gross load < |`)).toEqual(['1,037 kg · as it stands now']);
  expect(offered(`${column}expect shackle K1 capacity >= |`)).toEqual(['2,000 kg · as it stands now']);
});

test('names of values are offered where they fit', () => {
  const text = 'let deck = 12 m\nlet mass = 5 t\nload "L"\n  part "A": box |';
  expect(offered(text, 2)).toEqual(['deck · 12 m', '? · not known yet']);
  expect(offered(text.replace('box |', 'item |'))).toEqual(['mass · 5,000 kg', '? · not known yet']);
});

test('what stood behind the same clause elsewhere is offered again', () => {
  expect(labels(load('  stated 5 t, by marking, from "plate 7"\n  stated 6 t, by drawing, from |'))).toEqual([
    'plate 7',
  ]);
});

test('a space asks only behind a mark, a figure or a word that something listed follows', () => {
  expect(labels(load('  part "A": box 1 x 1 x 1 m, |'), ' ').length).toBeGreaterThan(0);
  expect(labels(load('  part "A": box 1 x 1 x 1 m, of |'), ' ').length).toBeGreaterThan(0);
  expect(labels(load('  part "A": item 5 |'), ' ').length).toBeGreaterThan(0);
  expect(labels(load('  part |'), ' ')).toEqual([]);
  expect(labels(load('  part "A": item |'), ' ')).toEqual([]);
  expect(labels(load('  part "A": item 5 kg # about |'), ' ')).toEqual([]);
});

test('a word that stands whole is not offered again, and nothing in comments', () => {
  expect(labels(load('  part "A": box 1 x 1 x 1 m, of carbon steel|'))).not.toContain('carbon steel');
  expect(labels(load('  # part |'))).toEqual([]);
});

test('a name of a library that is not used yet brings its use line', () => {
  const { files } = fixture(tank);
  const library = check({ 'gear.liftplan': files['gear.liftplan'] ?? '' }, 'gear.liftplan');
  const text = 'plan "x": date 2026-01-05\n  units metric\nrig\n  leg |';
  const s = check({ 'plan.liftplan': text.replace('|', '') }, 'plan.liftplan');
  const [hook] = complete(s, 3, 6, null, {
    libraries: [{ path: 'gear.liftplan', plan: library.plan }],
    files: [],
  }).items;
  expect(hook?.text).toBe('"Main hook"');
  expect(hook?.edits).toMatchObject([{ kind: 'insert', lines: ['use "gear.liftplan"'] }]);
  expect(hook?.edits[0]?.kind === 'insert' && hook.edits[0].after.row.text).toBe('  units metric');
  expect(
    complete(check({ 'plan.liftplan': 'use ""' }, 'plan.liftplan'), 0, 5, '"', {
      libraries: [{ path: 'gear.liftplan', plan: library.plan }],
      files: [],
    }).items.map(({ text: put }) => put),
  ).toEqual(['"gear.liftplan']);
});

test('a shape says what its sides are and how it is written, and its size has a gap for each side', () => {
  const box = offers(load('  part "A": |')).find(({ label }) => label === 'box');
  expect(box?.help).toBe('A solid block. Length × width × height. Such as `box 2 x 1 x 0.5 m, of carbon steel`.');
  expect(offered(load('  part "A": box |'))).toEqual(['? · not known yet', 'length x width x height']);
  expect(offers(load('  part "A": box |')).at(-1)).toMatchObject({
    snippet: true,
    text: '${1:length} x ${2:width} x ${3:height} ${4|m,mm,ft,in|}',
  });
  expect(offers(load('  part "A": plate |')).at(-1)?.text).toContain('${3:thickness}');
  expect(offers(load('  part "A": rectangular tube |')).at(-1)?.text).toBe('${1:width} x ${2:height} ${4|m,mm,ft,in|}');
  expect(offers(load('  part "A": box 1 x 1 x 1 m, at |')).at(-1)?.text).toBe(
    '(${1:x}, ${2:y}, ${3:z}) ${4|m,mm,ft,in|}',
  );
  expect(labels(load('  part "A": box 2|'))).not.toContain('length x width x height');
});

test('what is no shape of a part is not offered as one', () => {
  expect(labels(load('  part "A": |'))).not.toContain('hole');
  expect(labels(load('  part "A": box 1 x 1 x 1 m, of oak, at (0, 0, 0)\n    less |'))).toContain('hole');
  expect(labels(load('  part "A": prism, length 1 m, |'))).toContain('hole');
});

const lying = [
  'bill.csv',
  'drawings/lug.stl',
  'drawings/Lug 2.OBJ',
  'drawings/D-12.pdf',
  '../yard.liftplan',
  '../shared/bolts.CSV',
];

test.each([
  ['  part "P": mesh "|', ['drawings/lug.stl', 'drawings/Lug 2.OBJ']],
  ['  part "P": mesh "dr|", unit mm', ['drawings/lug.stl', 'drawings/Lug 2.OBJ']],
  ['  list "|"', ['bill.csv', '../shared/bolts.CSV']],
  [
    '  cog (0, 0, ?), from "|',
    ['bill.csv', 'drawings/lug.stl', 'drawings/Lug 2.OBJ', 'drawings/D-12.pdf', '../shared/bolts.CSV'],
  ],
  ['  list "bill.csv", from "|', lying.filter((path) => !path.endsWith('.liftplan'))],
  ['  datum "|', []],
  ['  part "P|', []],
])('files of the fitting kind stand in the quotation marks of %s', (line, fitting) => {
  expect(offers(load(line).replace('datum "d"\n', ''), null, { files: lying }).map(({ label }) => label)).toEqual(
    fitting,
  );
});

test('a path is put in with its quotation marks, once; a slash asks again only where a path is due', () => {
  const [first] = offers(load('  list "|"'), '"', { files: lying });
  expect(first?.text).toBe('"bill.csv');
  expect(offers(load('  part "P": mesh "drawings/|'), '/', { files: lying }).map(({ text }) => text)).toEqual([
    '"drawings/lug.stl"',
    '"drawings/Lug 2.OBJ"',
  ]);
  expect(offers(load('  part "P": box 1 m/|'), '/', { files: lying })).toEqual([]);
});

test('what the plan already names as a source stands before the papers of the folder, and once', () => {
  const text = load('  stated 5 t, by marking, from "drawings/D-12.pdf"\n  cog (0, 0, 0), by drawing, from "|');
  expect(offers(text, null, { files: lying }).map(({ label }) => label)).toEqual([
    'drawings/D-12.pdf',
    'bill.csv',
    'drawings/lug.stl',
    'drawings/Lug 2.OBJ',
    '../shared/bolts.CSV',
  ]);
});

test('at most six snippets, each a plan whose only errors are what it leaves to fill in', () => {
  const texts = [
    ['plan …', '|'],
    ['load …', 'plan "x": date 2026-01-05\n|'],
    ['part …', load('  |')],
    ['crane …', 'plan "x": date 2026-01-05\n|'],
    ['chart …', 'plan "x": date 2026-01-05\n|'],
    ['leg …', instead(tank, '  leg "Main hook" > S2 > K2 > E\n', '  |\n')],
  ] as const;
  const all = new Set<string>();
  for (const [label, text] of texts) {
    const found = offers(text).filter(({ snippet }) => snippet);
    for (const item of found) all.add(item.label);
    const item = found.find((one) => one.label === label);
    expect(item, label).toBeDefined();
    const filled = (item?.text ?? '')
      .replace(/\$\{\d+\|([^,|]*).*?\|\}/g, '$1')
      .replace(/\$\{\d+:([^}]*)\}/g, '$1')
      .replace('$0', '');
    const { files, file, cursor } = fixture(text);
    const lines = (files[file] ?? '').split('\n');
    const indent = ' '.repeat(cursor?.column ?? 0);
    lines[cursor?.line ?? 0] = filled
      .split('\n')
      .map((line) => indent + line)
      .join('\n');
    const s = check({ ...files, [file]: lines.join('\n') }, file);
    expect(
      s.own
        .filter(({ slug }) =>
          [
            'line-unreadable',
            'word-unknown',
            'place-wrong',
            'name-unknown',
            'unit-missing',
            'clause-missing',
            'dimension-mismatch',
            'path-broken',
          ].includes(slug),
        )
        .map(({ message }) => message),
      `${label}\n${lines.join('\n')}`,
    ).toEqual([]);
  }
  expect([...all].sort()).toEqual(['chart …', 'crane …', 'leg …', 'load …', 'part …', 'plan …']);
});

/** Places whose next word can be told: where a keyword, a unit, a listed word or a name in use stands. */
function placesOf(s: ReturnType<typeof sample>) {
  return s.tree.rows.flatMap((row, number) => {
    const line = s.tree.lines[number];
    if (line?.kind !== 'statement' && line?.kind !== 'clauses') return [];
    const values = [line.statement?.value, ...line.clauses.map(({ value }) => value)];
    const named = (from: number, to: number) =>
      values.some(
        (value) =>
          value &&
          ['names', 'path', 'side', 'compare', 'subject'].includes(value.kind) &&
          from >= value.span.from &&
          to <= value.span.to,
      );
    const free = [
      line.statement?.name?.span,
      ...values.flatMap((value) => (value?.kind === 'label' ? [value.span] : [])),
    ];
    return (
      line.colours
        .filter(
          (one) =>
            ['keyword', 'clause', 'unit', 'name', 'word'].includes(one.class) ||
            (one.class === 'text' && named(one.from, one.to)),
        )
        .filter(({ from, to }) => !free.some((span) => span && from >= span.from && to <= span.to))
        // Before a closing quotation mark the name stands whole already.
        .flatMap(({ from, to, class: kind }) =>
          Array.from({ length: to - from - (kind === 'text' ? 1 : 0) }, (_, i) => ({ row, number, offset: from + i })),
        )
    );
  });
}

test('at every caret position of the samples the true next word is offered, nine times in ten among the first three', () => {
  let [places, there, early] = [0, 0, 0];
  for (const path of goodSamples()) {
    const s = sample(path);
    for (const { row, number, offset } of placesOf(s)) {
      const typed = complete(s, number, offset).items.filter(({ at, text }) =>
        text.startsWith(row.text.slice(at.from, offset)),
      );
      const place = typed.findIndex(
        ({ at, text }) => row.text.startsWith(text, at.from) && at.from + text.length > offset,
      );
      places++;
      if (place >= 0) there++;
      if (place >= 0 && place < 3) early++;
    }
  }
  expect(places).toBeGreaterThan(3000);
  expect(there / places).toBeGreaterThan(0.995);
  expect(early / places).toBeGreaterThan(0.9);
}, 60_000);

test('cut anywhere, a line is read no worse once the first offer is taken', () => {
  let taken_ = 0;
  for (const path of goodSamples().slice(0, 4)) {
    const s = sample(path);
    const texts = s.tree.rows.map(({ text }) => text);
    s.tree.rows.forEach(({ text }, number) => {
      for (let offset = text.length - text.trimStart().length + 1; offset < text.length; offset += 7) {
        const cut = texts.map((line, n) => (n === number ? line.slice(0, offset) : line));
        const before = check({ 'a.liftplan': cut.join('\n') }, 'a.liftplan');
        const item = complete(before, number, offset).items.find(
          (one) => one.text.startsWith(cut[number]?.slice(one.at.from, offset) ?? '') && !one.snippet,
        );
        if (!item) continue;
        const put = cut.map((line, n) =>
          n === number ? line.slice(0, item.at.from) + item.text + line.slice(item.at.to) : line,
        );
        const after = check({ 'a.liftplan': put.join('\n') }, 'a.liftplan');
        const worse = (one: typeof before) =>
          (one.tree.lines[number]?.problems ?? []).filter(({ slug }) =>
            ['word-unknown', 'place-wrong', 'hidden-character'].includes(slug),
          ).length;
        expect(worse(after), `${cut[number]}|${item.text}`).toBeLessThanOrEqual(worse(before));
        expect(item.at.to).toBe(offset);
        taken_++;
      }
    });
  }
  expect(taken_).toBeGreaterThan(200);
}, 60_000);

test('after "seen" stands the mark of the paper on this line, and no mark of another paper', () => {
  const text = (from: string) =>
    `load "L"\n  stated 1 t, by marking, from "b.txt", seen "1111-2222-3333"\n  cog (0, 0, 0), by drawing, from "${from}", seen |\n--- a.txt\nGross 4,850 lb`;
  expect(labels(text('a.txt'))).toEqual(['7a8a-080c-ca31']); // sha256sum of GNU coreutils
  expect(labels(text('none.txt'))).toEqual([]);
  expect(labels(text('as told by the yard'))).toEqual([]);
});
