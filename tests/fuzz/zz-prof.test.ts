import { test } from 'vitest';
import { plan } from '../bench/plans.ts';
import { Workspace, memoryFiles } from '../../server/workspace/index.ts';
import { bindPlan } from '../../server/plan/index.ts';
import { workOut } from '../../server/results/index.ts';
import { findings } from '../../server/checks/index.ts';
test('prof', () => {
  for (const n of [500, 1000, 2000, 4000, 10000]) {
    const text = plan(n);
    const w = new Workspace(memoryFiles(new Map()), (f, e) => console.log(e));
    let t = performance.now();
    w.openText('a', 1, text);
    const t1 = performance.now();
    const s = w.snapshot('a')!;
    console.log(n, text.split('\n').length, text.length / n, 'read', (t1 - t).toFixed(1), 'snapshot', (performance.now() - t1).toFixed(1), s.findings.length, [...new Set(s.findings.map(f => f.slug))], s.results.totals.gross.value);
    const row = s.tree.rows.findIndex((r) => r.text.includes('Plate 2'));
    const col = s.tree.rows[row]!.text.indexOf(' mm');
    const times: number[][] = [];
    for (let i = 0; i < 60; i++) {
      const ins = i % 2 === 0;
      const a = performance.now();
      w.changeText('a', i + 2, [{ range: { start: { line: row, character: col - (ins ? 0 : 1) }, end: { line: row, character: col } }, text: ins ? '5' : '' }]);
      const b = performance.now();
      const tree = w.tree('a')!;
      const bound = bindPlan('a', { tree: () => tree, resolve: () => ({ reason: '' }), elsewhere: () => [] });
      const c = performance.now();
      const r = workOut(bound);
      const d = performance.now();
      const f = findings(r);
      const e = performance.now();
      const own = f.filter(({ at }) => at.row.file === 'a');
      times.push([b - a, c - b, d - c, e - d]);
    }
    const med = (k: number) => times.slice(10).map((x) => x[k]!).sort((x, y) => x - y)[25]!.toFixed(2);
    console.log('   edit', med(0), 'bind', med(1), 'workOut', med(2), 'findings', med(3));
  }
});
