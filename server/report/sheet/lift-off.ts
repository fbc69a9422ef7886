// The section "Lift-off": what each instrument reads while the load leaves the ground, what that includes, and where the lift stops.
import { cautions } from '../../checks/index.ts';
import { given } from '../../plan/index.ts';
import { type Derived, known, write } from '../../quantities/index.ts';
import { limitOn, type Reading } from '../../results/index.ts';
import { type Context, section, statementsOf } from './context.ts';
import { figure, figureText, row, styled } from './figures.ts';
import type { Block, Cell, Row, Section, Table } from './types.ts';
import { namesText, quoted } from './written.ts';

export function liftOffSection(context: Context): readonly Section[] {
  const { plan, results } = context.snapshot;
  const { readings } = results.liftOff;
  if (!plan.head || !results.loads.length || !results.legs.length) return [];
  return section('lift-off', 'Lift-off', [
    caution(context, readings),
    ...readings.map((reading) => table(context, reading)),
    ...deducted(context),
  ]);
}

/** When to stop: the reading of the first instrument that carries all, or of each hook, with what is in it. */
function caution(context: Context, readings: readonly Reading[]): Block {
  const whole = readings.find(({ below }) => below);
  const shown = whole ? [whole] : readings.filter(({ on }) => on?.item.keyword !== 'load cell'); // of several hooks each
  const stops = shown.map((reading) =>
    reading.stop.value === null
      ? null
      : `${figureText(reading.stop, context.system, 'down')} on ${called(reading)} (${inReading(reading)})`,
  );
  const text = cautions.liftDay({
    reading: stops.includes(null) ? null : stops.join(' or '),
    tilt: write(
      limitOn(context.snapshot.plan, ['load'], 'tilt', Math.PI / 36, 'most').value,
      'rad',
      styled(context.system, 'down'),
    ),
    radius: largest(context, 'position', 'radius', 'm'),
    wind: largest(context, 'weather', 'wind limit', 'm/s'),
  });
  return { kind: 'paragraph', look: 'caution', text, at: [] };
}

/** The largest figure of a clause that the plan states, as its text; null where one is not known, or none is stated. */
function largest(context: Context, keyword: 'position' | 'weather', clause: string, unit: 'm' | 'm/s'): string | null {
  const items =
    keyword === 'weather'
      ? statementsOf(context, keyword)
      : statementsOf(context, 'crane').flatMap(({ children }) => children.filter((one) => one.keyword === keyword));
  const values = items.map((item) => given(item, clause)).filter(({ state }) => state !== 'absent');
  const highs = values.map((value) => (value.state === 'known' ? value.quantity.high : null));
  return highs.length === 0 || highs.includes(null)
    ? null
    : write(Math.max(...(highs as number[])), unit, styled(context.system, 'down'));
}

const called = ({ on }: Reading): string =>
  !on
    ? 'the crane’s indicator'
    : on.item.keyword === 'load cell'
      ? quoted(on.name)
      : `the indicator at ${quoted(on.name)}`;

function table(context: Context, reading: Reading): Table {
  const { system } = context;
  const { on, slack, breaking, expected, stop } = reading;
  const at = on ? [on.item.at] : [];
  const what = inReading(reading);
  const gear = reading.below ? gearWords(reading.below) : '';
  const line = (stage: string, least: Cell | string, most: Cell | string, words: string, total?: true): Row => ({
    ...row(at, stage, least, most, words),
    repeat: true,
    ...(total && { total }),
  });
  return {
    kind: 'table',
    caption: `What ${called(reading)} reads`,
    columns: [
      { title: 'While' },
      { title: 'At least', figures: true },
      { title: 'At most', figures: true },
      { title: 'In the reading' },
    ],
    rows: [
      ...(slack
        ? [
            line(
              'the gear hangs, the load still lies',
              end(slack, 'low', context),
              end(slack, 'high', context),
              gear || 'nothing',
            ),
          ]
        : []),
      ...(breaking
        ? [line('the load is broken free', '', figure(breaking, system), `${what}, and what it takes to free it`)]
        : []),
      line('the load hangs free', end(expected, 'low', context), end(expected, 'high', context), what),
      line('stop the lift', '', figure(stop, system, 'down'), stopFrom(context, reading), true),
    ],
  };
}

/** One end of a figure: the low one rounded down, the high one up. */
function end(value: Derived, which: 'low' | 'high', { system }: Context): Cell {
  const number = value[which];
  return number === null ? figure(value, system) : figure(known(number, 'kg'), system, which === 'low' ? 'down' : 'up');
}

function inReading({ below }: Reading): string {
  if (!below) return 'its share of the load, at most the worst of every way the legs can share';
  const gear = gearWords(below);
  return gear ? `the load and ${gear}` : 'the load alone';
}

/** `Ring 17, S1..S4, K1..K4`: as declared, each line of the plan once. */
function gearWords(below: NonNullable<Reading['below']>): string {
  return [...new Set(below.map(({ thing }) => thing.item))].map(namesText).join(', ');
}

function stopFrom({ snapshot }: Context, { stop, breaking }: Reading): string {
  if (stop.value === null) return stop.because.map(({ what }) => what).join(' ');
  const stated = snapshot.results.loads.some(({ thing }) => given(thing.item, 'stop at').state === 'known');
  if (stated && stop.source === 'typed here')
    return stop.formula ? 'as the plan states, with the gear between' : 'as the plan states';
  return breaking ? 'the most that is expected, with what it takes to free the load' : 'the most that is expected';
}

/** The indicator may count what the chart counts. */
function deducted({ snapshot, system }: Context): readonly Block[] {
  const { deductions } = snapshot.results.totals;
  if (deductions.value === 0) return [];
  const more = deductions.value === null ? 'what they weigh, which is not known' : figureText(deductions, system, 'up');
  const text = `Deductions of the crane are in none of these readings. An indicator that counts them shows more, by up to ${more}; its manual says which it counts.`;
  return [{ kind: 'paragraph', look: 'plain', text, at: [] }];
}
