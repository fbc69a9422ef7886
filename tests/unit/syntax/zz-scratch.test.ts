import { test } from 'vitest';
import { readTree } from '/work/main/server/syntax/tree.ts';
import { language } from '/work/main/server/plan/language.ts';
import { statements, shapes } from '/work/main/server/vocabulary/index.ts';
import { readdirSync, readFileSync } from 'node:fs';
test('x', () => {
  const dir = '/work/shared/acceptance/plans/';
  let n = 0;
  const all = (t: any, name: string) => {
    const walk = (nodes: any[]) => { for (const x of nodes) { n++; for (const p of [...x.line.problems, ...x.problems]) console.log(name, x.row.text, JSON.stringify(p)); walk(x.children); } };
    walk(t.nodes);
  };
  for (const f of readdirSync(dir)) all(readTree(f, readFileSync(dir + f, 'utf8'), language), f);
  const md = readFileSync('/work/shared/design/language.md', 'utf8');
  all(readTree('md', md.split('```')[1]!, language), 'md');
  const ctx: Record<string, string> = { };
  for (const [k, s] of Object.entries(statements)) {
    const under = (u: string): string[] => u === 'file' ? [] : [...under(statements[u]!.under[0]!), statements[u]!.example.split(':')[0]!];
    const chain = under(s.under[0]!);
    all(readTree(k, [...chain, s.example].map((t, i) => '  '.repeat(i) + t).join('\n'), language), 'ex ' + k);
  }
  for (const [k, s] of Object.entries(shapes)) all(readTree(k, s.under[0] === 'part' ? `load "L"\n  part "P": ${s.example}` : `load "L"\n  part "P"\n    less ${s.example}`, language), 'shape ' + k);
  console.log(n, 'nodes');
});
