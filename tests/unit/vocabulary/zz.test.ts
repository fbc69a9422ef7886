// scratch
import { test } from 'vitest';
import { statements } from '../../../server/vocabulary/index.ts';
import { traceOf } from './plans.ts';
test('x', () => {
  for (const [n, w] of [['sling','weight'],['sling','stiffness'],['permit','until'],['assembly','at'],['part','axis'],['held by','released'],['stated','state']] as const) {
    const [a, b] = traceOf(n, w, statements[n]!.clauses[w]!);
    console.log('##', n, w); console.log(b.slice(0,1500));
  }
});
