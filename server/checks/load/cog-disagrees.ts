// Two centres of gravity of one load lie further apart than agreed.
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import { capital } from '../wording.ts';

export const cogDisagrees = check({
  slug: 'cog-disagrees',
  severity: 'error',
  effect: 'heavier',
  says: ({ facts }, { system }) => {
    const { any, atMost } = figures(system);
    const place = (point: readonly (number | null)[]) =>
      `(${point.map((x) => (x === null ? '?' : any('m', x))).join(', ')})`;
    const [distance, limit] = atMost('m', facts.distance, facts.limit);
    return `${capital(facts.a)} puts the centre of gravity at ${place(facts.pointA)}, ${facts.b} at ${place(facts.pointB)}: ${distance} apart, limit ${limit}. Legs are judged at the worse.`;
  },
});
