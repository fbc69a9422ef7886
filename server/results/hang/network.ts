// Legs as a network: which places they meet at, and what lies between two of them. Items shared by several legs are one thing.
import type { Item, Thing } from '../../plan/index.ts';
import { isHook } from '../path.ts';
import type { LegUse } from '../types.ts';

/** A place where legs begin, end or part: a hook, a ring or other shared gear, a beam point, a pick. */
export interface Node {
  readonly thing: Thing;
  readonly kind: 'hook' | 'gear' | 'point' | 'pick';
}

/** A straight run of gear between two nodes; `passes` are nodes it runs over without being held (sheaves, picks of a basket). */
export interface Edge {
  readonly key: string;
  readonly top: Node;
  readonly bottom: Node;
  readonly items: readonly Thing[]; // between the nodes, from the top down
  readonly legs: readonly LegUse[];
  readonly hitch: string; // vertical, choker, basket, doubled
}

export interface Network {
  readonly nodes: readonly Node[];
  readonly edges: readonly Edge[];
  /** Legs whose run this version does not build, with why. */
  readonly unbuilt: readonly { readonly leg: LegUse; readonly why: string }[];
}

const kindOf = (thing: Thing): Node['kind'] => (thing.kind === 'pick' ? 'pick' : thing.kind === 'point' ? 'point' : isHook(thing) ? 'hook' : 'gear');

/** The network of sound legs. */
export function network(legs: readonly LegUse[]): Network {
  const usedBy = new Map<Thing, Set<LegUse>>();
  for (const leg of legs) for (const { thing } of leg.steps) usedBy.set(thing, (usedBy.get(thing) ?? new Set()).add(leg));
  const nodes = new Map<Thing, Node>();
  const edges = new Map<string, { edge: Edge; legs: LegUse[] }>();
  const unbuilt: { leg: LegUse; why: string }[] = [];
  const ends = new Set(legs.flatMap((leg) => [leg.steps[0]?.thing, leg.steps.at(-1)?.thing]));
  for (const leg of legs) {
    const hitch = hitchOf(leg.item);
    const why = cannot(leg, hitch);
    if (why) {
      unbuilt.push({ leg, why });
      continue;
    }
    let top: Node | null = null;
    let items: Thing[] = [];
    leg.steps.forEach(({ thing }, i) => {
      const next = leg.steps[i + 1]?.thing;
      const isNode = i === 0 || !next || kindOf(thing) !== 'gear' || ends.has(thing) || !sameLegs(usedBy.get(thing), usedBy.get(next));
      if (!isNode) {
        items.push(thing);
        return;
      }
      const node = nodes.get(thing) ?? { thing, kind: kindOf(thing) };
      nodes.set(thing, node);
      if (top) {
        const key = [top.thing, ...items, thing].map(idOf).join('>');
        const known = edges.get(key);
        if (known) known.legs.push(leg);
        else {
          const shared: LegUse[] = [leg];
          edges.set(key, { edge: { key, top, bottom: node, items, legs: shared, hitch: next ? 'vertical' : hitch }, legs: shared });
        }
      }
      top = node;
      items = [];
    });
  }
  return { nodes: [...nodes.values()], edges: [...edges.values()].map((one) => one.edge), unbuilt };
}

const sameLegs = (a?: ReadonlySet<LegUse>, b?: ReadonlySet<LegUse>): boolean => a?.size === 1 || (a !== undefined && b !== undefined && a.size === b.size && [...a].every((leg) => b.has(leg)));
const idOf = (thing: Thing): string => `${thing.kind}:${thing.path.join('/')}`;

export function hitchOf(leg: Item): string {
  const value = leg.clauses.get('hitch')?.[0]?.value;
  return value?.kind === 'word' ? value.word : 'vertical';
}

/** Runs that are not built: ropes from pick to pick, and baskets that come back up. */
function cannot(leg: LegUse, hitch: string): string | null {
  if (leg.item.clauses.get('hitch')?.[0] && !leg.item.clauses.get('hitch')?.[0]?.value) return 'its hitch could not be read';
  if (leg.steps[0]?.thing.kind === 'pick') return 'a sling from pick to pick';
  if (leg.steps.slice(0, -1).some((step) => step.thing.kind === 'pick')) return 'a sling over several picks';
  if (hitch === 'basket') return 'a basket';
  if (leg.steps.some((step) => step.thing.item.keyword === 'sheave')) return 'a sling over a sheave';
  return null;
}
