// A stop value that ends every lift, or lets more pass than the plan knows of.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const stopDoubtful = check({
  slug: 'stop-doubtful',
  severity: ({ facts }) => (facts.kind === 'over' ? 'error' : 'warning'),
  effect: 'stands',
  says: ({ facts: { cell, kind, stop, low, most, item, used } }, { system }) => {
    const shown = cell === null ? "the crane's indicator" : named(cell);
    if (kind === 'low') {
      const [at, least] = figures(system).unlike('kg', stop, low);
      return `Stop at ${at} is less than the ${least} that ${shown} shows as soon as the load hangs free, so no lift as planned gets beyond it. Check what the reading includes.`;
    }
    const [at, heaviest] = figures(system).unlike('kg', stop, most);
    const lets = `Stop at ${at} is more than the heaviest that is credible on ${shown}, ${heaviest}`;
    return item === null
      ? `${lets}: a load heavier than the plan knows of would still be lifted. Lower it, or find what makes the reading larger.`
      : `${lets}, and ${named(item)} would be at ${figures(system).share(used)} of its capacity there. Lower it to what the plan has worked out.`;
  },
});
