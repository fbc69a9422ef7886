// What a status line says of a plan beside how it stands: its gross load, or that it is not known.
import { write } from '../quantities/index.ts';
import type { Snapshot } from '../workspace/types.ts';

/** The gross load with its unit, rounded up; null where the file is no plan or the gross load is not known. */
export function grossLoad({ plan, results, file }: Snapshot): string | null {
  const { value, high } = results.totals.gross;
  return plan.head && plan.file === file && value !== null
    ? write(high ?? value, 'kg', { system: plan.units, round: 'up' })
    : null;
}
