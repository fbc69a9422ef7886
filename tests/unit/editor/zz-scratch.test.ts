import { test } from 'vitest';
import { complete } from '../../../server/editor/complete.ts';
import { goodSamples, sample } from '../../support/draw.ts';
function placesOf(s: ReturnType<typeof sample>) {
  return s.tree.rows.flatMap((row, number) => {
    const line = s.tree.lines[number];
    if (line?.kind !== 'statement' && line?.kind !== 'clauses') return [];
    const values = [line.statement?.value, ...line.clauses.map(({ value }) => value)];
    const named = (from: number, to: number) => values.some((value) => value && ['names', 'path', 'side', 'compare', 'subject'].includes(value.kind) && from >= value.span.from && to <= value.span.to);
    const free = [line.statement?.name?.span, ...values.flatMap((value) => (value?.kind === 'label' ? [value.span] : []))];
    return line.colours
      .filter((one) => ['keyword', 'clause', 'unit', 'name', 'word'].includes(one.class) || (one.class === 'text' && named(one.from, one.to)))
      .filter(({ from, to }) => !free.some((span) => span && from >= span.from && to <= span.to))
      .flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => ({ row, number, offset: from + i })));
  });
}
test('x', () => {
  let [places, there, early] = [0, 0, 0];
  for (const path of goodSamples()) {
    const s = sample(path);
    for (const { row, number, offset } of placesOf(s)) {
      const typed = complete(s, number, offset).items.filter(({ at, text }) => text.startsWith(row.text.slice(at.from, offset)));
      const place = typed.findIndex(({ at, text }) => row.text.startsWith(text, at.from) && at.from + text.length > offset);
      places++;
      if (place >= 0) there++; else console.log(path, row.text.slice(0, offset) + '|' + row.text.slice(offset));
      if (place >= 0 && place < 3) early++;
    }
  }
  console.log(places, there / places, early / places);
});
