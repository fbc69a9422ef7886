// What every step of working out one load reads.
import type { BoundPlan, Given, Item, Thing } from '../plan/index.ts';
import type { Summed } from './bodies.ts';
import type { Notes } from './notes.ts';
import type { Layout } from './place.ts';

export interface Context {
  readonly thing: Thing;
  readonly plan: BoundPlan;
  readonly body: Summed;
  readonly layout: Layout;
  readonly notes: Notes;
  readonly item: Item;
  readonly own: Given;
}
