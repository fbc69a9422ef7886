// What is not known or not judged is never passed over: each of these once ended in "No findings".
import { describe, expect, test } from 'vitest';
import { errors, head, lift, slugs } from '../../support/lift.ts';

const block =
  '  stated 4 t, by marking, from "plate"\n  cog (0, 0, -0.5) m, by drawing, from "D-1"\n  pick A: at (-1, 0, 0) m, capacity 5 t\n  pick B: at (1, 0, 0) m, capacity 5 t';
const gear =
  '  hook "Hook": weight 100 kg, capacity 20 t\n  sling S1..S2: length 2 m, weight 10 kg, capacity 6 t\n  shackle K1..K2: weight 2 kg, capacity 6 t';
const legs = '  leg "Hook" > S1 > K1 > A\n  leg "Hook" > S2 > K2 > B';
const rigged = (load: string, hung: string, paths: string, more = '') =>
  lift(`${head}load "L"\n  contingency 0 %\n  free "loose"\n${load}\ngear\n${hung}\nrig\n${paths}\n${more}`);

describe('is said', () => {
  test('the reference rig has no findings', () => expect(slugs(rigged(block, gear, legs))).toEqual([]));
  test('a sling without length', () =>
    expect(errors(rigged(block, gear.replace('length 2 m, ', ''), legs))).toContain('clause-missing'));
  test('a pick without capacity', () =>
    expect(errors(rigged(block.replace('-1, 0, 0) m, capacity 5 t', '-1, 0, 0) m'), gear, legs))).toContain(
      'gear-capacity-missing',
    ));
  test('a setting beyond the take-up', () =>
    expect(
      errors(
        rigged(
          block,
          `${gear}\n  turnbuckle T: weight 5 kg, capacity 6 t, length 500 mm, take-up 200 mm, set 300 mm`,
          legs.replace('> S1', '> T > S1'),
        ),
      ),
    ).toContain('value-outside'));
  test('a weight of none that nothing accounts for', () =>
    expect(errors(rigged(block, gear.replace('weight 2 kg', 'weight none'), legs))).toContain('clause-missing'));
  test('a load that hangs in no leg', () =>
    expect(
      errors(
        rigged(
          block,
          gear,
          legs,
          'load "M"\n  contingency 0 %\n  free "loose"\n  stated 1 t, by marking\n  cog (0, 0, 0), by drawing\n',
        ),
      ),
    ).toContain('hang-unsolved'));
  test('the capacity of a crane', () =>
    expect(errors(rigged(block, gear, legs, 'crane "C": kind bridge, capacity 1 t\n'))).toContain('not-judged'));
  test('rules that ask for something, set-downs and power lines, in the head of the sheet', () => {
    const s = rigged(
      block,
      gear,
      legs,
      'rules\n  require approval "Person in charge"\n  category "critical": when people lifted\nsurroundings\n  power line "North": distance 20 m\n  set-down "Bed": capacity 1 t\n',
    );
    expect(s.results.notJudged.join('; ')).toMatch(/require.*categories.*power lines.*set down/);
  });
  test('copies of which nothing says how they stand, in other words than a part without place', () => {
    const s = lift(
      `${head}load "L"\n  contingency 0 %\n  free "loose"\n  part "P": item 100 kg, by drawing, count 3, at (0, 0, 0)\n`,
    );
    expect(s.findings.find((one) => one.slug === 'part-unplaced')?.message).toMatch(/3 copies/);
  });
});
