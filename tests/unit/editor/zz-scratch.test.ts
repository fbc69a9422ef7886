import { test } from 'vitest';
import { readFileSync } from 'node:fs';
import { check } from '../../../server/workspace/memory.ts';
import { hover } from '../../../server/editor/hover.ts';
import { hints } from '../../../server/editor/hints.ts';
import { outline } from '../../../server/editor/outline.ts';
import { fixture } from '../../support/fixture.ts';

const all = { totals: true, parts: true, legs: true, crane: true };
test('look', () => {
  const dir = 'tests/vscode/plans/';
  const s = check({ 'bench.liftplan': readFileSync(dir + 'bench.liftplan', 'utf8'), 'bench-gear.liftplan': readFileSync(dir + 'bench-gear.liftplan', 'utf8') }, 'bench.liftplan');
  console.log(s.findings.map((f) => f.slug + ' ' + f.message + ' ' + f.at.row.text));
  console.log(hints(s, 0, 100, all).map((h) => s.tree.rowNumber(h.at.row) + ' ' + h.label + ' | ' + h.tooltip));
  console.log(JSON.stringify(outline(s).map((o) => [o.name, o.detail, o.children.map((c) => [c.name, c.detail])])));
  for (let row = 0; row < s.tree.rows.length; row++) {
    const text = s.tree.rows[row]!.text;
    let last = '';
    for (let o = 0; o < text.length; o++) {
      const h = hover(s, row, o);
      if (h && h.plain !== last) console.log(`${row}:${o} [${h.at.row.text.slice(h.at.from, h.at.to)}]\n` + h.plain);
      last = h?.plain ?? '';
    }
  }
});
