// How much of what a thing may carry is used.
import { type Derived, known, open, unique } from '../../quantities/derived.ts';

/** Load over capacity, both kg, or N of what is pressed together; the lower end of the capacity counts. */
export function ratio(load: Derived, capacity: Derived, label = { load: 'load', capacity: 'capacity' }): Derived {
  if (load.value === null || capacity.value === null)
    return open('1', unique([...load.because, ...capacity.because]), { at: load.at });
  const inputs = [
    { label: label.load, value: load },
    { label: label.capacity, value: atLeast(capacity) },
  ];
  return known(load.value / (capacity.low as number), '1', {
    formula: `${label.load} / ${label.capacity}`,
    inputs,
    source: load.source,
    at: load.at,
  });
}

/** A capacity as it counts: at the lower end of its tolerance. */
const atLeast = (capacity: Derived): Derived =>
  capacity.low === null || capacity.low === capacity.value
    ? capacity
    : known(capacity.low, capacity.unit, {
        formula: 'lower end of its tolerance',
        inputs: [{ label: 'capacity', value: capacity }],
        source: capacity.source,
        assumptions: capacity.assumptions,
        at: capacity.at,
      });

/**
 * What a thing takes while the load is being broken free, kg: where it sticks is not said, so any leg may take all of it, along its own
 * line. `angle`: of the leg from horizontal, rad; null: it pulls straight up.
 */
export function whileHeld(load: Derived, held: Derived, angle: number | null): Derived {
  if (held.value === 0 || load.value === null) return load;
  if (held.value === null) return open('kg', held.because, { at: load.at });
  const steep = angle === null ? Math.PI / 2 : angle;
  const inputs = [
    ...load.inputs,
    { label: 'breakout', value: known(held.high as number, 'kg', held) },
    { label: 'angle', value: known(steep, 'rad') },
  ];
  return known(load.value + (held.high as number) / Math.sin(steep), 'kg', {
    formula: `${load.formula || 'load'} + breakout / sin(angle)`,
    inputs: load.formula ? inputs : [{ label: 'load', value: load }, ...inputs],
    source: load.source,
    at: load.at,
  });
}

/** The largest; open as soon as one is, for nobody knows that it is not the largest. */
export function worstOf(shares: readonly Derived[]): Derived {
  const causes = shares.flatMap((one) => one.because);
  if (causes.length) return open('1', unique(causes), { at: shares[0]?.at });
  return shares.reduce((worst, one) => ((one.value as number) > (worst.value as number) ? one : worst));
}
