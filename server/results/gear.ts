// Gear as the plan and its libraries give it: figures of one piece, taken over by `like`, and what is spare.
import {
  type BoundClause,
  type BoundPlan,
  fold,
  type Given,
  givenBy,
  type Item,
  namesOf,
  openLines,
  type Thing,
} from '../plan/index.ts';
import { asWritten, type Derived, known, open, unique } from '../quantities/derived.ts';
import { nearest } from '../quantities/nearest.ts';
import { because, type Notes } from './notes.ts';

/** Clauses that `like` never copies. */
const ownOnly = new Set(['serial', 'inspected', 'at', 'spare', 'like', 'hangs from', 'count']);

/** Looks gear clauses up through `like`. */
export class GearTable {
  private readonly parents = new Map<Item, Item | null>();

  constructor(
    readonly plan: BoundPlan,
    private readonly notes: Notes,
  ) {}

  /** The item a piece is like, null where it is like none; circles and wrong names are noted once. */
  like(item: Item): Item | null {
    const before = this.parents.get(item);
    if (before !== undefined) return before;
    this.parents.set(item, null);
    const parent = this.parent(item);
    this.parents.set(item, parent);
    return parent;
  }

  private parent(item: Item): Item | null {
    const [name] = namesOf(item, 'like');
    if (!name) return null;
    const key = fold(name.parts.at(-1)?.text ?? '');
    const at = { row: item.clauses.get('like')?.[0]?.at.row ?? item.at.row, from: name.span.from, to: name.span.to };
    const [found] = this.plan.names.find('gear', key);
    if (!found) {
      const others = this.plan.names.kind('gear').map((thing) => thing.name);
      this.notes.add(
        'name-unknown',
        at,
        {
          name: name.parts.at(-1)?.text ?? '',
          nearest: nearest(name.parts.at(-1)?.text ?? '', others),
          wanted: 'gear',
          is: null,
          declare: null,
        },
        '',
      );
      return null;
    }
    if (found.item.keyword !== item.keyword) {
      this.notes.add(
        'name-unknown',
        at,
        { name: found.name, nearest: [], wanted: `a ${item.keyword}`, is: `a ${found.item.keyword}`, declare: null },
        '',
        [{ at: found.item.nameAt, says: 'declared here' }],
      );
      return null;
    }
    const trail = [item];
    for (let next: Item | null = found.item; next; next = namesOf(next, 'like').length ? this.ahead(next) : null) {
      if (trail.includes(next)) {
        this.notes.add(
          'definition-circle',
          at,
          { names: [...trail, next].map((one) => one.names[0] ?? '') },
          '',
          trail.slice(1).map((one) => ({ at: one.nameAt, says: 'in the same circle' })),
        );
        return null;
      }
      trail.push(next);
    }
    return found.clash ? null : found.item;
  }

  private ahead(item: Item): Item | null {
    const key = fold(namesOf(item, 'like')[0]?.parts.at(-1)?.text ?? '');
    return this.plan.names.find('gear', key)[0]?.item ?? null;
  }

  /** A clause of the piece itself, or of what it is like. */
  clause(item: Item, word: string): BoundClause | undefined {
    const own = item.clauses.get(word)?.[0];
    if (own || ownOnly.has(word)) return own;
    const parent = this.like(item);
    return parent ? this.clause(parent, word) : undefined;
  }

  given(item: Item, word: string): Given {
    const clause = this.clause(item, word);
    return clause ? givenBy(clause, word) : { state: 'absent' };
  }

  /** Why figures taken over by `like` cannot be trusted: its target is missing, in a circle or stated twice; or a line of it cannot be read. */
  causes(item: Item) {
    const broken =
      item.clauses.has('like') && !this.like(item)
        ? [because(`What ${item.names[0]} is like is not known.`, item.at)]
        : [];
    const parent = this.like(item);
    return [...openLines(item), ...item.children.flatMap(openLines), ...broken, ...(parent ? openLines(parent) : [])];
  }

  /** Points of a beam, its own or those of what it is like. */
  points(item: Item): readonly Item[] {
    const own = item.children.filter((child) => child.keyword === 'point');
    const parent = own.length ? null : this.like(item);
    return parent ? this.points(parent) : own;
  }
}

/** Weight of one piece; open where it is not stated. `none` with `from` is a weight already in a rating: nothing more hangs. */
export function weightOf(thing: Thing, table: GearTable): Derived {
  const { item } = thing;
  const causes = table.causes(item);
  const weight = table.given(item, 'weight');
  const at = weight.state === 'absent' ? item.nameAt : weight.at;
  if (causes.length) return open('kg', causes, { at });
  if (weight.state === 'known')
    return known(
      weight.quantity.value,
      'kg',
      { source: sourceOf(item, table), at },
      weight.quantity.low,
      weight.quantity.high,
    );
  if (weight.state === 'open') return open('kg', weight.because, { at });
  if (weight.state === 'none')
    return item.clauses.has('from') || table.clause(item, 'from')
      ? known(0, 'kg', { source: `none: ${sourceOf(item, table)}`, at })
      : open('kg', [because(`${thing.name} has no weight, and nothing says where it is counted.`, at)], { at });
  return open('kg', [because(`${thing.name} has no weight.`, item.nameAt)], { at: item.nameAt });
}

/** What one piece may carry on one straight vertical leg, kg. */
export function capacityOf(thing: Thing, table: GearTable): Derived {
  const { item } = thing;
  const capacity = table.given(item, 'capacity');
  const causes = table.causes(item);
  if (capacity.state === 'known' && !causes.length) return asWritten(capacity, 'kg', sourceOf(item, table));
  return open(
    'kg',
    unique([
      ...causes,
      ...(capacity.state === 'open'
        ? capacity.because
        : causes.length
          ? []
          : [because(`${thing.name} has no capacity.`, item.nameAt)]),
    ]),
    { at: item.nameAt },
  );
}

export function lengthOf(thing: Thing, table: GearTable): Derived {
  const { item } = thing;
  const length = table.given(item, 'length');
  const causes = table.causes(item);
  if (length.state === 'known' && !causes.length) return asWritten(length, 'm', 'typed here');
  return open(
    'm',
    unique([
      ...causes,
      ...(length.state === 'open'
        ? length.because
        : causes.length
          ? []
          : [because(`${thing.name} has no length.`, item.nameAt)]),
    ]),
    { at: item.nameAt },
  );
}

const sourceOf = (item: Item, table: GearTable): string => {
  const from = table.clause(item, 'from')?.value;
  const library = item.file !== table.plan.file ? item.file.slice(item.file.lastIndexOf('/') + 1) : null;
  return [from?.kind === 'text' ? from.text : null, library].filter(Boolean).join(', ') || 'typed here';
};
