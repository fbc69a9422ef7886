// No position in which the load hangs at rest was found.
import { check } from '../check.ts';
import { named, unstopped } from '../wording.ts';

export const hangUnsolved = check({
  slug: 'hang-unsolved',
  severity: 'error',
  effect: 'open',
  says: ({ facts }) => `No position was found in which ${named(facts.load)} hangs at rest: ${unstopped(facts.reason)}.`,
});
