// Legs as a network: which places they meet at, and what lies between two of them. Items shared by several legs are one thing.
import type { Thing } from '../../plan/index.ts';
import { isHook } from '../path.ts';
import type { LegUse } from '../types.ts';
import { type Chain, type FreeRun, lie, wordOf } from './baskets.ts';

/** A place where legs begin, end or part: a hook, a ring or other shared gear, a beam point, a pick. */
export interface Node {
  readonly thing: Thing;
  readonly kind: 'hook' | 'gear' | 'point' | 'pick';
}

/** A run of gear between two nodes: straight, or running free over others with one pull in all parts. */
export interface Edge {
  readonly key: string;
  readonly top: Node;
  readonly bottom: Node;
  readonly over: readonly Node[]; // what it runs over between its ends, in order
  readonly items: readonly Thing[]; // between the nodes, from the top down
  readonly legs: readonly LegUse[];
  readonly hitch: string; // vertical, choker, basket, doubled
  /** One half of a sling that is held in its middle; `under`: the picks it lies beneath there. */
  readonly halved: boolean;
  readonly under: readonly Thing[];
  /** Largest pull in a part, of the pull without friction; 1 where it runs over nothing. */
  readonly friction: number;
}

export interface Network {
  readonly nodes: readonly Node[];
  readonly edges: readonly Edge[];
  /** Legs whose run this version does not build, with why. */
  readonly unbuilt: readonly { readonly leg: LegUse; readonly why: string }[];
  /** Baskets that do not say whether they run free or are held. */
  readonly undecided: readonly LegUse[];
}

export const kindOf = (thing: Thing): Node['kind'] =>
  thing.kind === 'pick' ? 'pick' : thing.kind === 'point' ? 'point' : isHook(thing) ? 'hook' : 'gear';

/** The network of sound legs, with baskets that do not say gripped or free. */
export function network(legs: readonly LegUse[], gripped: boolean): Network {
  const usedBy = new Map<Thing, Set<LegUse>>();
  for (const leg of legs)
    for (const { thing } of leg.steps) usedBy.set(thing, (usedBy.get(thing) ?? new Set()).add(leg));
  const ends = new Set(legs.flatMap((leg) => [leg.steps[0]?.thing, leg.steps.at(-1)?.thing]));
  const meets = (thing: Thing): boolean =>
    kindOf(thing) !== 'gear' || ends.has(thing) || (usedBy.get(thing)?.size ?? 0) > 1;
  const parts = (thing: Thing, next: Thing): boolean =>
    kindOf(thing) !== 'gear' || ends.has(thing) || !sameLegs(usedBy.get(thing), usedBy.get(next));
  const net = new Builder(parts);
  for (const leg of legs) {
    const laid = lie(leg, meets, gripped);
    if ('why' in laid) {
      net.unbuilt.push({ leg, why: laid.why });
      continue;
    }
    if (laid.undecided) net.undecided.push(leg);
    for (const { thing } of leg.steps) if (thing.kind === 'pick') net.node(thing);
    for (const chain of laid.chains) net.chain(leg, chain);
    if (laid.run) net.run(leg, laid.run);
  }
  return {
    nodes: [...net.nodes.values()],
    edges: [...net.edges.values()].map((one) => one.edge),
    unbuilt: net.unbuilt,
    undecided: net.undecided,
  };
}

class Builder {
  readonly nodes = new Map<Thing, Node>();
  readonly edges = new Map<string, { edge: Edge; legs: LegUse[] }>();
  readonly unbuilt: { leg: LegUse; why: string }[] = [];
  readonly undecided: LegUse[] = [];

  /** `parts`: do legs part between a thing and the next one down? */
  constructor(private readonly parts: (thing: Thing, next: Thing) => boolean) {}

  node(thing: Thing): Node {
    const node = this.nodes.get(thing) ?? { thing, kind: kindOf(thing) };
    this.nodes.set(thing, node);
    return node;
  }

  /** Straight runs from node to node down a chain. */
  chain(leg: LegUse, { things, halved, under }: Chain): void {
    const hitch = wordOf(leg.item, 'hitch') || (under.length ? 'basket' : 'vertical');
    let top: Node | null = null;
    let items: Thing[] = [];
    things.forEach((thing, i) => {
      const next = things[i + 1];
      if (top && next && !this.parts(thing, next)) {
        items.push(thing);
        return;
      }
      const node = this.node(thing);
      if (top)
        this.put(leg, {
          top,
          bottom: node,
          over: [],
          items,
          hitch: next ? 'vertical' : hitch,
          halved: halved && items.some((item) => item.item.keyword === 'sling'),
          under,
          friction: 1,
        });
      top = node;
      items = [];
    });
  }

  /** One run with one pull. */
  run(leg: LegUse, { top, over, bottom, items, friction }: FreeRun): void {
    const hitch = wordOf(leg.item, 'hitch') || (over.some((thing) => thing.kind === 'pick') ? 'basket' : 'vertical');
    this.put(leg, {
      top: this.node(top),
      bottom: this.node(bottom),
      over: over.map((thing) => this.node(thing)),
      items,
      hitch,
      halved: false,
      under: [],
      friction,
    });
  }

  private put(leg: LegUse, made: Omit<Edge, 'key' | 'legs'>): void {
    const key = [made.top.thing, ...made.items, ...made.over.map((node) => node.thing), made.bottom.thing]
      .map(idOf)
      .join('>');
    const known = this.edges.get(key);
    if (known) {
      known.legs.push(leg);
      return;
    }
    const legs: LegUse[] = [leg];
    this.edges.set(key, { edge: { ...made, key, legs }, legs });
  }
}

const sameLegs = (a?: ReadonlySet<LegUse>, b?: ReadonlySet<LegUse>): boolean =>
  a?.size === 1 || (a !== undefined && b !== undefined && a.size === b.size && [...a].every((leg) => b.has(leg)));
const idOf = (thing: Thing): string => `${thing.kind}:${thing.path.join('/')}`;
