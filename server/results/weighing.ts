// A weighing on supports: the sum of its readings, and where the weight sits in plan. Moments about the zero of the load: Σ r R / Σ R.
import { childrenOf, fold, given, type Item, openLines } from '../plan/index.ts';
import { asWritten, type Cause, type Derived, known, open, sum, unique } from '../quantities/derived.ts';
import { because } from './notes.ts';

/** The sum of the readings of a weighing, tare still in it, kg. */
export function weighedSum(item: Item, source: string): Derived {
  const supports = childrenOf(item, 'support');
  const lines = [...openLines(item), ...supports.flatMap(openLines), ...statedTwice(supports)];
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

/** Supports of one name: nobody knows which of them was read. */
const statedTwice = (supports: readonly Item[]): readonly Cause[] =>
  supports.flatMap((support, i) => {
    const [name = ''] = support.names;
    const before = supports.slice(0, i).some(({ names: [other] }) => other !== undefined && fold(other) === fold(name));
    return before ? [because(`${name} is stated twice.`, support.nameAt)] : [];
  });

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
 * m = Σ R (x cos φ − z sin φ) / Σ R of the supports, so z = (x cos φ − m) / sin φ. Elementary statics. The ends are those of
 * every reading at the worse end of its accuracy by itself, and of what else is stated with a tolerance.
 */
export function weighedCentre(weighings: readonly Item[]): readonly Derived[] {
  const level = weighings.filter((item) => !item.clauses.has('incline'));
  const [first] = level;
  if (!first) return [];
  const all = level.map((item) => [moment(item, [1, 0, 0]), moment(item, [0, 1, 0])]);
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
  const way = tilt.axis.startsWith('-') ? -1 : 1;
  const angle = way * tilt.from.value;
  if (
    tilt.axis.endsWith('z') ||
    Math.min(...[tilt.from.low, tilt.from.high].map((one) => Math.abs(Math.sin(one)))) < 1e-3
  )
    return open('m', [because('The second weighing is not inclined enough to show the height.', inclined.at)], {
      at: inclined.at,
    });
  const across = (at: number) =>
    moment(inclined, axis ? [0, Math.cos(at), -Math.sin(at)] : [Math.cos(at), 0, -Math.sin(at)]);
  const middle = across(angle);
  const flat = plan[axis] as Derived;
  if (middle.value === null || flat.value === null)
    return open('m', unique([...middle.because, ...flat.because]), { at: inclined.at });
  const up = (x: number, m: number, at: number) => (x * Math.cos(at) - m) / Math.sin(at);
  const ends = [tilt.from.low, angle * way, tilt.from.high].flatMap((one) => {
    const at = way * one;
    const { low, high } = across(at);
    return [flat.low, flat.high].flatMap((x) => [low, high].map((m) => up(x as number, m as number, at)));
  });
  return known(
    up(flat.value, middle.value, angle),
    'm',
    {
      formula: '(level * cos(incline) - across) / sin(incline)',
      inputs: [
        { label: 'level', value: flat },
        { label: 'incline', value: known(angle, 'rad') },
        { label: 'across', value: middle },
      ],
      source: 'two weighings',
      at: inclined.at,
    },
    Math.min(...ends),
    Math.max(...ends),
  );
}

/** A figure with its ends. */
type Span = readonly [low: number, value: number, high: number];

/** Σ R p / Σ R over the supports, p a measure of their places (so much of x, y and z), tare off evenly. */
function moment(item: Item, along: readonly [number, number, number]): Derived {
  const supports = childrenOf(item, 'support');
  const total = weighedSum(item, '');
  const [tare, accuracy] = [given(item, 'tare'), given(item, 'accuracy')];
  const causes = [
    ...total.because,
    ...(tare.state === 'open' ? tare.because : []),
    ...(accuracy.state === 'open' ? accuracy.because : []),
    ...(item.clauses.has('without') ? [because('Parts that were not weighed move the centre.', item.at)] : []),
    ...(supports.length === 1 ? [because('One support does not show where the centre is.', item.at)] : []),
  ];
  const places = supports.map((support) => placeOf(support, along));
  if (causes.length || places.includes(null) || !supports.length)
    return open('m', unique(causes.length ? causes : [because('A support has no known place.', item.at)]), {
      at: item.at,
    });
  const loose = accuracy.state === 'known' ? accuracy.quantity.high : 0;
  const off = tare.state === 'known' ? tare.quantity : { low: 0, value: 0, high: 0 };
  const n = supports.length;
  const readings = supports.map((support): Span => {
    const { low, value, high } = reading(support);
    return [
      (low as number) * (1 - loose) - off.high / n,
      (value as number) - off.value / n,
      (high as number) * (1 + loose) - off.low / n,
    ];
  });
  const spans = places as readonly Span[];
  return known(
    mean(
      readings.map(([, value]) => value),
      spans.map(([, value]) => value),
    ),
    'm',
    {
      formula:
        off.value === 0 ? 'sum of reading * place / sum of reading' : 'sum of net reading * place / sum of net reading',
      inputs: supports.flatMap((support, i) => [
        { label: support.names[0] ?? '', value: known((readings[i] as Span)[1], 'kg', { source: 'reading' }) },
        { label: `place of ${support.names[0] ?? ''}`, value: known((spans[i] as Span)[1], 'm') },
      ]),
      source: 'weighing on supports',
      at: item.at,
    },
    -furthest(
      readings,
      spans.map(([low]) => -low),
    ),
    furthest(
      readings,
      spans.map(([, , high]) => high),
    ),
  );
}

/** How far a support stands along a direction; null where that is not known. */
function placeOf(support: Item, along: readonly [number, number, number]): Span | null {
  const at = support.clauses.get('at')?.[0]?.value;
  if (at?.kind !== 'point') return null;
  let span: Span = [0, 0, 0];
  for (const [i, share] of along.entries()) {
    if (share === 0) continue;
    const cell = at.at[i];
    if (!cell || typeof cell === 'string') return null;
    const ends = [cell.low * share, cell.high * share];
    span = [span[0] + Math.min(...ends), span[1] + cell.value * share, span[2] + Math.max(...ends)];
  }
  return span;
}

const mean = (weights: readonly number[], places: readonly number[]): number =>
  weights.reduce((sum_, weight, i) => sum_ + weight * (places[i] as number), 0) /
  weights.reduce((sum_, weight) => sum_ + weight, 0);

/** The largest mean place over all readings within their ends: those beyond some place read most, the others least. */
function furthest(readings: readonly Span[], places: readonly number[]): number {
  const order = places.map((_, i) => i).sort((a, b) => (places[b] as number) - (places[a] as number));
  const means = order.map((_, k) => {
    const most = new Set(order.slice(0, k + 1));
    return mean(
      readings.map(([low, , high], i) => (most.has(i) ? high : low)),
      places,
    );
  });
  return Math.max(...means);
}
