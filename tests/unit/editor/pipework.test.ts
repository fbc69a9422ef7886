// Completion and hover of bought-in pipework: sizes, classes and forms with what one weighs, and where the figure comes from.
import { expect, test } from 'vitest';
import { complete } from '../../../server/editor/complete.ts';
import { hoverAt } from '../../support/draw.ts';
import { lift } from '../../support/lift.ts';

const plan = (line: string) => `plan "x": date 2026-01-05\nload "L"\n  part "P": ${line}`;

function offered(line: string): readonly string[] {
  const text = plan(line);
  const row = 2;
  const offset = text.split('\n')[row]!.indexOf('|');
  const snapshot = lift(text.replace('|', ''));
  return complete(snapshot, row, offset).items.map(({ label, detail }) => [label, detail].filter(Boolean).join(' · '));
}

test('sizes of a flange come with what one weighs, once class and form are known', () => {
  const sizes = offered('flange |, class 150, form blind');
  expect(sizes).toHaveLength(21);
  // 345 mm x 30 mm and a face of 269.9 mm x 2 mm: 2.919 L at 7850 kg/m3.
  expect(sizes).toContain('NPS 8 · 22.92 kg');
  expect(offered('flange |')).toContain('NPS 8');
});

test('classes and schedules are those the size is made in', () => {
  expect(offered('flange NPS 8, form blind, class |').slice(0, 6)).toEqual([
    '150 · 22.92 kg',
    '300 · 38.92 kg',
    '600 · 66.88 kg',
    '900 · 93.72 kg',
    '1500 · 141.1 kg',
    '2500 · 245.6 kg',
  ]);
  expect(
    offered('flange DN 200, form blind, class |')
      .slice(6)
      .map((one) => one.replace(/ · .*/, '')),
  ).toEqual(['PN10', 'PN16', 'PN25', 'PN40']);
  expect(offered('pipe cap NPS 8, schedule |')).toContain('40 · 5.49 kg');
});

test('forms are those of the shape on the line, not of another one', () => {
  const forms = offered('flange NPS 8, class 150, form |').map((one) => one.replace(/ · .*/, ''));
  expect(forms).toEqual(['weld neck', 'slip on', 'threaded', 'socket weld', 'lap joint', 'blind']);
  expect(offered('dished head, outside 2 m, wall 12 mm, form |')).toEqual(['ellipsoidal', 'torispherical']);
});

test('reducers and bolts are listed by their own sizes', () => {
  expect(offered('pipe reducer NPS 8|, schedule 40, form concentric').map((one) => one.replace(/ · .*/, ''))).toEqual([
    'NPS 8 x 3-1/2',
    'NPS 8 x 4',
    'NPS 8 x 5',
    'NPS 8 x 6',
  ]);
  expect(offered('nut M2|, form hex').map((one) => one.replace(/ · .*/, ''))).toEqual(['M20', 'M22', 'M24', 'M27']);
});

test('hover shows the figure, its sizes, its range with the reason, and its source', () => {
  const said = hoverAt(plan('flange NP|S 8, class 150, form blind')).split('\n').join(' ');
  expect(said).toContain('flange NPS 8 class 150 blind: 22.92 kg each');
  expect(said).toContain('outside 0.345 m, thickness 30 mm');
  expect(said).toContain('20.05 kg to 22.92 kg; the heaviest is used, so that a doubt never makes the load lighter.');
  expect(said).toContain('ASME B16.5');
  expect(hoverAt(plan('flange NPS 8, class 1|50, form blind'))).toContain('22.92 kg each');
});

// 110 mm of 3/4 in and two nuts 1-1/4 in across flats, 0.758 in high: 0.0539 L.
test('an inch bolt is looked up by its diameter', () =>
  expect(hoverAt(plan('bolt 3/4 in, length 110 mm, form st|ud'))).toContain('0.43 kg each'));
