// A weighing on supports: the sum of its readings, and where the weight sits in plan. Moments about the zero of the load: Σ r R / Σ R.
import { childrenOf, given, type Item, openLines } from '../plan/index.ts';
import { type Cause, type Derived, known, open, sum, unique } from '../quantities/derived.ts';
import { because } from './notes.ts';

/** The sum of the readings of a weighing, tare still in it, kg. */
export function weighedSum(item: Item, source: string): Derived {
  const supports = childrenOf(item, 'support');
  const lines = [...openLines(item), ...supports.flatMap(openLines)];
  if (lines.length) return open('kg', lines, { at: item.at });
  if (!supports.length) return open('kg', [because('The weighing has no supports with readings.', item.at)], { at: item.at });
  const readings = supports.map(reading);
  return sum(readings, 'kg', { formula: 'sum of readings', inputs: readings.map((value, i) => ({ label: supports[i]?.names[0] ?? `${i + 1}`, value })), source, at: item.at });
}

function reading(support: Item): Derived {
  const reads = given(support, 'reads');
  if (reads.state === 'known') return known(reads.quantity.value, 'kg', { source: 'reading', at: reads.at }, reads.quantity.low, reads.quantity.high);
  return open('kg', reads.state === 'open' ? reads.because : [because(`${support.names[0]} has no reading.`, support.at)], { at: support.at });
}

/** Centre along x and y by the first level weighing that gives it; its tare is taken off evenly from the supports. Height: not known from one weighing. */
export function weighedCentre(weighings: readonly Item[]): readonly Derived[] {
  const level = weighings.filter((item) => !item.clauses.has('incline'));
  const open3 = (causes: readonly Cause[], at: unknown) => [0, 1, 2].map(() => open('m', causes, { at }));
  const [first] = level;
  if (!first) return [];
  const all = level.map((item) => centre(item));
  const found = all.find((one) => one.every((axis) => axis.value !== null)) ?? all[0];
  return found ? [...found, open('m', [because('One weighing does not show the height of the centre.', first.at)], { at: first.at })] : open3([], first.at);
}

function centre(item: Item): readonly [Derived, Derived] {
  const supports = childrenOf(item, 'support');
  const total = weighedSum(item, '');
  const tare = given(item, 'tare');
  const causes = [...total.because, ...(tare.state === 'open' ? tare.because : []), ...(item.clauses.has('without') ? [because('Parts that were not weighed move the centre.', item.at)] : [])];
  const each = tare.state === 'known' ? tare.quantity.value / supports.length : 0;
  return [0, 1].map((axis) => {
    const places = supports.map((support) => {
      const at = support.clauses.get('at')?.[0]?.value;
      const cell = at?.kind === 'point' ? at.at[axis] : null;
      return cell && typeof cell !== 'string' ? cell.value : null;
    });
    const readings = supports.map((support) => reading(support).value);
    if (causes.length || places.includes(null) || readings.includes(null)) return open('m', unique(causes.length ? causes : [because('A support has no known place.', item.at)]), { at: item.at });
    const net = readings.map((one) => (one as number) - each);
    const weight = net.reduce((sum_, one) => sum_ + one, 0);
    return known(net.reduce((moment, one, i) => moment + one * (places[i] as number), 0) / weight, 'm', { formula: 'sum of reading * place / sum of readings', inputs: supports.map((support) => ({ label: support.names[0] ?? '', value: reading(support) })), source: 'weighing on supports', at: item.at });
  }) as unknown as readonly [Derived, Derived];
}
