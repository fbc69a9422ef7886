// The outline as a weight table: every statement with its weight, capacity used or state; and a search over the symbols of many files.
import { isListed } from '../plan/index.ts';
import type { Item } from '../plan/types.ts';
import { type Derived, named as dimensionName, write } from '../quantities/index.ts';
import type { Results } from '../results/index.ts';
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { resultOf, rounding, worseEnd, worst } from './figures.ts';
import { ownFile, wholeOf } from './items.ts';
import type { Symbol } from './types.ts';

/** The statements of the file asked about, nested as they stand. */
export function outline(s: Snapshot): readonly Symbol[] {
  const file = ownFile(s);
  if (!file) return [];
  const symbol = (item: Item): Symbol => ({
    name: nameOf(item),
    keyword: item.keyword,
    detail: detailOf(item, s.results),
    whole: wholeOf(file.tree, item.node),
    at: item.nameAt,
    children: item.children.filter((child) => !isListed(child)).map(symbol),
  });
  return file.items.map(symbol);
}

/** The name; of a statement without one its keyword with what stands behind it. */
function nameOf(item: Item): string {
  const {
    node: { row },
    nameAt,
    at,
    value,
  } = item;
  if (item.node.line.statement?.name)
    return row.text.slice(nameAt.from, nameAt.to).replace(/^"(.*)"$/, (_, name: string) => name.replaceAll('""', '"'));
  if (value && value.valueAt.from > at.from) {
    const text = row.text.slice(value.valueAt.from, value.valueAt.to);
    return item.keyword === 'leg' ? text : `${item.keyword} ${text}`;
  }
  return item.keyword;
}

/** What a line of the outline says of the statement beside its name; '' where nothing is worked out of it. */
export function detailOf(item: Item, results: Results): string {
  const { units } = results.plan;
  const text = (value: Derived) => worst(value, units);
  switch (item.keyword) {
    case 'plan':
      return item === results.plan.head ? `gross load ${text(results.totals.gross)}` : '';
    case 'load': {
      const load = results.loads.find(({ thing }) => thing.item === item);
      return load ? text(load.weight) : '';
    }
    case 'part':
    case 'assembly': {
      const body = results.bodies.get(item);
      return body ? text(body.weight) : '';
    }
    case 'leg':
      return legDetail(item, results);
    case 'expect':
      return results.expects.find((one) => one.item === item)?.state ?? '';
    case 'gear':
    case 'rig':
      return item.file === results.plan.file && results.plan.head ? text(results.totals.rigging) : '';
    case 'let':
      return letDetail(item, results);
    case 'less':
      return [...item.clauses.keys()][0] ?? '';
    default:
      return thingDetail(item, results);
  }
}

/** How much of a capacity is used, else what it weighs. */
function thingDetail(item: Item, results: Results): string {
  const { units } = results.plan;
  const things = results.plan.names.of(item);
  const used = things.flatMap((thing) => resultOf(results, thing, 'capacity used') ?? []);
  const gear = results.gear.filter(({ thing }) => thing.item === item);
  const inLeg = gear.length === 0 || gear.some(({ legs }) => legs.length);
  if (used.length && inLeg) {
    const open = used.find(({ value }) => value.value === null);
    const most = open ?? used.reduce((a, b) => ((a.value.high ?? 0) >= (b.value.high ?? 0) ? a : b));
    const weight = gear[0] ? `${worst(gear[0].each, units)}${gear.length > 1 ? ' each' : ''}, ` : '';
    return `${weight}${worst(most.value, units, worseEnd(most.subject.kind, 'capacity used'))} used`.replace(
      'not known used',
      'use not known',
    );
  }
  const [first] = gear;
  return first ? `${worst(first.each, units)}${gear.length > 1 || first.count > 1 ? ' each' : ''}` : '';
}

function legDetail(item: Item, results: Results): string {
  const leg = results.legs.find((one) => one.item === item);
  if (!leg || leg.broken) return 'not known';
  const used = leg.steps.flatMap(({ thing }) => resultOf(results, thing, 'capacity used') ?? []);
  const open = used.find(({ value }) => value.value === null);
  const most =
    open ??
    used.reduce<(typeof used)[number] | undefined>(
      (a, b) => (a && (a.value.high ?? 0) >= (b.value.high ?? 0) ? a : b),
      undefined,
    );
  return !most || most.value.value === null ? 'use not known' : `${worst(most.value, results.plan.units)} used`;
}

function letDetail({ value }: Item, { plan: { units } }: Results): string {
  if (value?.value?.kind !== 'quantity') return '';
  const { quantity } = value.value;
  const measure = quantity.percent ? '1' : dimensionName(quantity.dimension);
  return measure ? write(quantity.value, measure, { system: units, round: rounding.either }) : '';
}

/** A symbol found in the search, with the file it is of. */
export interface Found {
  readonly name: string;
  readonly keyword: string;
  readonly detail: string;
  readonly within: string; // what it stands in; '' at file level
  readonly at: Place;
}

const mostFound = 200;

/** Named statements of all files whose keyword and name hold every word asked for: `sling s1`. */
export function symbols(snapshots: readonly Snapshot[], query: string): readonly Found[] {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const found: Found[] = [];
  for (const s of snapshots) {
    for (const thing of s.plan.names.things) {
      const { item } = thing;
      if (item.file !== s.file || found.length >= mostFound) continue;
      const text = `${item.keyword} ${thing.path.join(' ')}`.toLowerCase();
      if (words.every((word) => text.includes(word)))
        found.push({
          name: thing.name,
          keyword: item.keyword,
          detail: detailOf(item, s.results),
          within: thing.owner?.name ?? '',
          at: item.nameAt,
        });
    }
  }
  return found;
}
