// Something the author wants to hold does not, or cannot be judged.
import type { ResultUnit } from '../../quantities/index.ts';
import type { ResultFacts } from '../../results/types.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import type { Asked } from '../types.ts';
import { capital, unstopped } from '../wording.ts';

export const expectFailed = check({
  slug: 'expect-failed',
  severity: 'error',
  effect: 'stands',
  says: ({ facts }, { system }) =>
    facts.value === null
      ? `${subject(facts)} should be ${facts.condition}; that cannot be judged, because ${unstopped(facts.cause ?? 'it is not known')}.`
      : `${subject(facts)} should be ${facts.condition}; at its worst it is ${worst(facts, facts.value, system)}.`,
});

const subject = ({ result, subject: of }: ResultFacts['expect-failed']): string =>
  capital(of === 'plan' ? result : `${result} of ${of}`);

/** Rounded away from the bound, so that the printed figure misses it as the real one does. */
const worst = ({ unit, limit }: ResultFacts['expect-failed'], value: number, system: Asked['system']): string =>
  figures(system).any(unit as ResultUnit, value, value < limit ? 'down' : 'up');
