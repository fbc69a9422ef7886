// The section "Lift-off" of the sheet: each instrument with each stage, what is in its reading, where the lift stops, and the caution with it.
import { expect, test } from 'vitest';
import { markdown, page, sheetOf } from '../../../server/report/index.ts';
import { check } from '../../../server/workspace/memory.ts';

const plan = (load: string, more = '') => `plan "Lift": date 2026-06-01, units metric
load "Pump"
  stated 3,000 kg, by marking, from "plate", contingency 5 %
  cog (0, 0, 0.4 m), by drawing, from "P-12"
${load}
  pick A: at (-0.6, 0, 0.8) m, capacity 4 t, kind lug
  pick B: at (0.6, 0, 0.8) m, capacity 4 t, kind lug
gear
  block "Block": weight 240 kg, capacity 16 t
  load cell "Cell 6": weight 18 kg, capacity 6 t, length 300 mm
  sling S1..S2: wire rope, diameter 18 mm, length 2 m, weight 4 kg, capacity 3.6 t
rig
  leg "Block" > "Cell 6" > S1 > A, direct "x"
  leg "Block" > "Cell 6" > S2 > B, direct "x"
${more}`;
const sheet = (load: string, more?: string) =>
  sheetOf(check({ 'p.liftplan': plan(load, more) }, 'p.liftplan'), { pathOf: (f) => f });
const section = (load: string, more?: string) => {
  const text = markdown(sheet(load, more), 'p.liftplan');
  return text.slice(text.indexOf('## Lift-off'), text.indexOf('## Sources'));
};

test('each stage has its ends and what is in the reading (by hand: sums)', () => {
  const text = section('  held by "grout", breakout 400 kg');
  expect(text).toContain('| the gear hangs, the load still lies | 8 kg | 8 kg | S1..S2 |');
  expect(text).toContain(
    '| the load is broken free |  | 3,558 kg | the load and S1..S2, and what it takes to free it |',
  );
  expect(text).toContain('| the load hangs free | 3,008 kg | 3,158 kg | the load and S1..S2 |');
  expect(text).toContain(
    '| **stop the lift** |  | **3,558 kg** | **the most that is expected, with what it takes to free the load** |',
  );
  expect(text).toContain('**What the crane’s indicator reads**');
  expect(text).toContain('| the load hangs free | 3,266 kg | 3,416 kg | the load and ');
});

test('the caution names the reading with what is in it, the tilt, the radius and the wind; what nobody states is said so', () => {
  expect(
    section(
      '  free "loose"\n  stop at 3,200 kg',
      'crane "C": kind mobile\n  position "P": radius 8 m ± 0.5 m\nweather: wind limit 9 m/s\n',
    ),
  ).toContain(
    'reads more than 3,200 kg on “Cell 6” (the load and S1..S2); if a leg named tight goes slack; if the load hangs more than 5° out of level; if the measured radius passes 8.5 m or the wind 9 m/s; if you are in doubt.',
  );
  expect(section('  held by "grout"')).toContain('reads more than a value this plan does not state; if a leg');
});

test('what is not known says why, and a stop that is stated says so', () => {
  expect(section('  held by "grout"')).toMatch(
    /\| \*\*stop the lift\*\* \|\s+\| _not known_ \| \*\*Nothing says how “grout” lets go/,
  );
  expect(section('  free "x"\n  stop at 3,200 kg')).toContain('| **3,200 kg** | **as the plan states** |');
  expect(section('  free "x"\n  stop at 3,200 kg')).toContain(
    '| **3,458 kg** | **as the plan states, with the gear between** |',
  );
});

test('deductions are named beside the readings, and the page that stands alone has the section too', () => {
  const crane = 'crane "C": kind mobile\n  deduct "Jib": 500 kg\n';
  expect(section('  free "x"', crane)).toContain('shows more, by up to 500 kg');
  expect(section('  free "x"')).not.toContain('Deductions of the crane are in none');
  expect(page(sheet('  free "x"'), 'A4', 'p.liftplan')).toContain('<h2 id="lift-off-title">Lift-off</h2>');
});

test('of several hooks each has its reading, and the caution names them all', () => {
  const text = markdown(
    sheetOf(
      check(
        {
          'p.liftplan': plan('  free "x"')
            .replace('  sling S1', '  hook "Hook 2": weight 50 kg, capacity 9 t\n  sling S1')
            .replace('"Block" > "Cell 6" > S2 > B', '"Hook 2" > S2 > B'),
        },
        'p.liftplan',
      ),
      { pathOf: (file) => file },
    ),
    'p.liftplan',
  );
  expect(text).toMatch(
    /reads more than 1,8\d\d kg on the indicator at Block \(its share [^)]*\) or 1,6\d\d kg on the indicator at “Hook 2” \(/,
  );
  expect(text).toContain('**What the indicator at Block reads**');
  expect(text).toContain('**What “Cell 6” reads**');
  expect(text).not.toContain('**What the crane’s indicator reads**');
});
