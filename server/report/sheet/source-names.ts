// Short names for long sources: the sheet says `carbon steel` in a table and tells in one place what stands behind it.
import type { Derived } from '../../quantities/index.ts';

export interface SourceNames {
  /** The short name of a source; the source itself where it is short. */
  readonly nameOf: (source: string) => string;
  /** Every source with a short name of its own, in the order of the names, with how many figures rest on it. */
  readonly list: readonly { readonly name: string; readonly source: string; readonly figures: number }[];
}

const long = 32; // letters; what is longer would fill a table

/** Names for the sources of these figures. The same figures give the same names, and a new source changes no other one's. */
export function sourceNames(figures: Iterable<Derived>): SourceNames {
  const counts = new Map<string, number>();
  for (const { source } of figures) if (source.length > long) counts.set(source, (counts.get(source) ?? 0) + 1);
  const names = new Map<string, string>();
  const taken = new Set<string>();
  for (const source of [...counts.keys()].sort()) {
    const name = unused(short(source), taken);
    taken.add(name);
    names.set(source, name);
  }
  const list = [...names].map(([source, name]) => ({ name, source, figures: counts.get(source) ?? 0 }));
  return { nameOf: (source) => names.get(source) ?? source, list: list.sort((a, b) => (a.name < b.name ? -1 : 1)) };
}

/** What stands before the first sign that parts a title from its details. */
const short = (source: string): string => (/^[^:;,(]{2,}/.exec(source)?.[0] ?? source).trim();

function unused(name: string, taken: ReadonlySet<string>): string {
  let n = 2;
  let found = name;
  while (taken.has(found)) found = `${name} (${n++})`;
  return found;
}
