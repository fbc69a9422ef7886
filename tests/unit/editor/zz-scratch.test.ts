import { test } from 'vitest';
import { hoverAt, opened, withHints, withTokens } from '../../support/draw.ts';
import { outline } from '../../../server/editor/outline.ts';
import { tank, withCursor } from './plans.ts';
test('x', () => {
  const { s } = opened(tank);
  console.log(s.findings.map((f) => `${f.slug}: ${f.message}`).join('\n'));
  console.log(withHints(tank));
  console.log(withTokens(tank));
  for (const w of ['Base', 'Body', 'Shell', 'Feet', 'Pump', 'Tank', 'W:', 'Main hook', 'S1 >', 'leg', 'expect', 'lift-off', '1.2 m', 'wide x', 'gear.lift', 'stainless', 'maker', 'capacity used', 'weight <', 'Yard', 'Yard": kind']) console.log('--- ' + w + '\n' + hoverAt(withCursor(tank, w)));
  console.log(JSON.stringify(outline(s), (k, v) => (k === 'at' || k === 'whole' ? undefined : v), 1));
});
