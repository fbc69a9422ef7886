// Bought-in parts of pipework and bolting: what the tables of the standards say of a size, a class and a form.
import { boltingOf, boltSetOf } from './bolting.ts';
import { fittingOf } from './fittings.ts';
import { flangeOf, nozzleOf } from './flanges.ts';
import type { BoughtIn, Due, NotListed, PipeworkName, Written } from './types.ts';

/** A part by what is written of it, or why it cannot be looked up. */
export function boughtIn(name: PipeworkName, written: Written): BoughtIn | NotListed | Due {
  switch (name) {
    case 'flange':
      return flangeOf(written);
    case 'nozzle':
    case 'manway':
      return nozzleOf(name, written);
    case 'bolt set':
      return boltSetOf(written);
    case 'bolt':
    case 'nut':
    case 'washer':
      return boltingOf(name, written);
    default:
      return fittingOf(name, written);
  }
}
