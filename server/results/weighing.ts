// A weighing on supports: the sum of its readings, and where the weight sits in plan. Moments about the zero of the load: Σ r R / Σ R.
import { childrenOf, given, type Item, openLines } from '../plan/index.ts';
import { asWritten, type Derived, known, open, sum, unique } from '../quantities/derived.ts';
import { because } from './notes.ts';

/** The sum of the readings of a weighing, tare still in it, kg. */
export function weighedSum(item: Item, source: string): Derived {
  const supports = childrenOf(item, 'support');
  const lines = [...openLines(item), ...supports.flatMap(openLines)];
  if (lines.length) return open('kg', lines, { at: item.at });
  if (!supports.length)
    return open('kg', [because('The weighing has no supports with readings.', item.at)], { at: item.at });
  const readings = supports.map(reading);
  return sum(readings, 'kg', {
    formula: 'sum of readings',
    inputs: readings.map((value, i) => ({ label: supports[i]?.names[0] ?? `${i + 1}`, value })),
    source,
    at: item.at,
  });
}

function reading(support: Item): Derived {
  const reads = given(support, 'reads');
  if (reads.state === 'known') return asWritten(reads, 'kg', 'reading');
  return open(
    'kg',
    reads.state === 'open' ? reads.because : [because(`${support.names[0]} has no reading.`, support.at)],
    { at: support.at },
  );
}

/**
 * Centre by weighing: along x and y by the first level weighing that gives it, tare taken off evenly from the supports; its
 * height by a second one that is inclined, from how the readings move: with the x axis φ above horizontal the balance gives
 * m = Σ R (x cos φ − z sin φ) / Σ R of the supports, so z = (x cos φ − m) / sin φ. Elementary statics.
 */
export function weighedCentre(weighings: readonly Item[]): readonly Derived[] {
  const level = weighings.filter((item) => !item.clauses.has('incline'));
  const [first] = level;
  if (!first) return [];
  const all = level.map((item) => [0, 1].map((axis) => moment(item, (at) => at[axis] ?? null)));
  const found = (all.find((one) => one.every((axis) => axis.value !== null)) ?? all[0]) as unknown as readonly [
    Derived,
    Derived,
  ];
  return [
    ...found,
    height(
      weighings.find((item) => item.clauses.has('incline')),
      found,
      first,
    ),
  ];
}

function height(inclined: Item | undefined, plan: readonly [Derived, Derived], first: Item): Derived {
  if (!inclined)
    return open('m', [because('One weighing does not show the height of the centre.', first.at)], { at: first.at });
  const tilt = inclined.clauses.get('incline')?.[0]?.value;
  if (tilt?.kind !== 'tilt' || tilt.to)
    return open('m', [because('How the load was inclined could not be read.', inclined.at)], { at: inclined.at });
  const axis = tilt.axis.endsWith('y') ? 1 : 0;
  const angle = tilt.axis.startsWith('-') ? -tilt.from.value : tilt.from.value;
  const sin = Math.sin(angle);
  if (tilt.axis.endsWith('z') || Math.abs(sin) < 1e-3)
    return open('m', [because('The second weighing is not inclined enough to show the height.', inclined.at)], {
      at: inclined.at,
    });
  const across = moment(inclined, (at) => {
    const x = at[axis] ?? null;
    const z = at[2] ?? null;
    return x === null || z === null ? null : x * Math.cos(angle) - z * sin;
  });
  const flat = plan[axis] as Derived;
  if (across.value === null || flat.value === null)
    return open('m', unique([...across.because, ...flat.because]), { at: inclined.at });
  return known((flat.value * Math.cos(angle) - across.value) / sin, 'm', {
    formula: '(level * cos(incline) - across) / sin(incline)',
    inputs: [
      { label: 'level', value: flat },
      { label: 'incline', value: known(angle, 'rad') },
      { label: 'across', value: across },
    ],
    source: 'two weighings',
    at: inclined.at,
  });
}

/** Σ R p / Σ R over the supports, p a measure of their places, tare off evenly. */
function moment(item: Item, measure: (at: readonly (number | null)[]) => number | null): Derived {
  const supports = childrenOf(item, 'support');
  const total = weighedSum(item, '');
  const tare = given(item, 'tare');
  const causes = [
    ...total.because,
    ...(tare.state === 'open' ? tare.because : []),
    ...(item.clauses.has('without') ? [because('Parts that were not weighed move the centre.', item.at)] : []),
  ];
  const each = tare.state === 'known' ? tare.quantity.value / supports.length : 0;
  const places = supports.map((support) => {
    const at = support.clauses.get('at')?.[0]?.value;
    return at?.kind === 'point'
      ? measure(at.at.map((cell) => (cell && typeof cell !== 'string' ? cell.value : null)))
      : null;
  });
  const readings = supports.map((support) => reading(support).value);
  if (causes.length || places.includes(null) || readings.includes(null))
    return open('m', unique(causes.length ? causes : [because('A support has no known place.', item.at)]), {
      at: item.at,
    });
  const net = readings.map((one) => (one as number) - each);
  const weight = net.reduce((sum_, one) => sum_ + one, 0);
  return known(net.reduce((sum_, one, i) => sum_ + one * (places[i] as number), 0) / weight, 'm', {
    formula: each === 0 ? 'sum of reading * place / sum of reading' : 'sum of net reading * place / sum of net reading',
    inputs: supports.flatMap((support, i) => [
      { label: support.names[0] ?? '', value: known(net[i] as number, 'kg', { source: 'reading' }) },
      { label: `place of ${support.names[0] ?? ''}`, value: known(places[i] as number, 'm') },
    ]),
    source: 'weighing on supports',
    at: item.at,
  });
}
