// A capacity that one straight leg of this size hardly has: it may be for a basket, or for several legs.
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { figures } from '../figures.ts';
import { named } from '../wording.ts';

export const capacityBasisMissing = check({
  slug: 'capacity-basis-missing',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) => {
    const [usual, capacity] = figures(system).atMost('kg', facts.usual, facts.capacity, facts.unit);
    return `${capacity} of ${named(facts.item)}: is it for one straight vertical leg, as read here, or choked, in a basket, or the whole bridle? One leg of ${facts.size} has at most about ${usual}; read the tag.`;
  },
  fixes: ({ at }) => {
    const value = at.row.text.slice(at.from, at.to).replace(/^capacity\s+/, '');
    return ['basket capacity', 'choker capacity'].map((clause) => rewrite(at, `${clause} ${value}`));
  },
});
