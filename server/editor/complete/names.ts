// Names that may stand here: in a leg what hangs next and is still free, elsewhere what the clause names; library items bring their `use`.
import { fold, given } from '../../plan/index.ts';
import type { Item, Thing } from '../../plan/types.ts';
import { write } from '../../quantities/index.ts';
import { resultOf, resultsFor, worst } from '../figures.ts';
import { itemAt, ownFile } from '../items.ts';
import { asDeclared } from '../spelling.ts';
import type { Completion, Edit } from '../types.ts';
import { hookKeywords, kindsOf, loadOf } from '../uses.ts';
import { type Asked, begun, completion } from './types.ts';

export function names(asked: Asked): readonly Completion[] {
  const { slot, s, clause } = asked;
  if (slot.type === null || !clause) return [];
  const keyword = slot.statement ?? slot.block;
  const kinds = kindsOf(keyword, slot.clause ?? '', clause.names);
  const path = slot.type === 'path' ? pathBefore(asked) : null;
  const own = itemHere(asked);
  const near = own && loadOf(own, s.plan);
  const wanted = (thing: Thing) =>
    kinds.includes(thing.kind) && thing.item !== own && fits(thing, clause.names, slot.clause, own, near);
  const known = s.plan.names.things.filter(wanted);
  const taken = new Set(known.map(({ key }) => key));
  const others = asked.libraries.flatMap(({ path: file, plan }) =>
    plan.names.things
      .filter((thing) => thing.item.file === plan.file && wanted(thing) && !taken.has(thing.key))
      .map((thing) => ({ thing, edits: [useLine(asked, file)], detail: file })),
  );
  const all = [...known.map((thing) => ({ thing, edits: [] as readonly Edit[], detail: '' })), ...others];
  const score = path ? pathScore(path, asked) : nearScore(asked);
  return all
    .map((one, i) => ({ ...one, i, score: score(one.thing) + (one.edits.length ? 100 : 0) }))
    .sort((a, b) => a.score - b.score || a.i - b.i)
    .map(({ thing, edits, detail }) =>
      completion(asked, 'name', labelOf(thing), {
        text: written(thing),
        ...(path && { from: segment(asked) }),
        detail: [figures(thing, asked), detail].filter(Boolean).join(' · '),
        help: `${thing.item.keyword} ${thing.name}`,
        edits,
      }),
    );
}

/** A point of a beam is named with its beam. */
const labelOf = ({ kind, name, owner }: Thing): string => (kind === 'point' && owner ? `${owner.name}.${name}` : name);
const written = (thing: Thing): string =>
  thing.kind === 'point' && thing.owner
    ? `${asDeclared(thing.owner, 'named')}.${asDeclared(thing, 'named')}`
    : asDeclared(thing, 'named');

/** Where the name begins that the place is in, the beam it is dotted with counted. */
function segment(asked: Asked): number {
  const { from, text } = begun(asked);
  const inner = text.slice(text.lastIndexOf('>') + 1);
  return from + text.length - inner.trimStart().length;
}

/** The item on this row, or the one its clause line belongs to; null where the row cannot be read. */
export function itemHere({ s, number }: Asked): Item | null {
  const file = ownFile(s);
  return file ? itemAt(file, number) : null;
}

/** `like` names gear of the same kind; parts stand on others of their own load; a liquid lies in what is hollow. */
function fits(
  thing: Thing,
  names: string | undefined,
  clause: string | null,
  own: Item | null,
  load: Thing | null,
): boolean {
  if (clause === 'like') return !own || thing.item.keyword === own.keyword;
  if (names === 'sling') return thing.item.keyword === 'sling';
  const scoped = names === 'part' || names === 'box' || names === 'contents';
  return !scoped || !load || thing.load === load;
}

/** The names of a path that stand left of the place. */
function pathBefore(asked: Asked): readonly string[] {
  const { from, text } = begun(asked);
  return text
    .slice(0, Math.max(0, segment(asked) - from))
    .split('>')
    .map((name) => (/(?:"((?:[^"]|"")*)"|([\w-]+))\s*$/.exec(name) ?? []).slice(1).join('').replaceAll('""', '"'))
    .filter(Boolean);
}

/** What stands above this line before what stands below it, the nearest first. */
function nearScore({ s: { tree }, number }: Asked): (thing: Thing) => number {
  return ({ item, fromLibrary }) => {
    const distance = fromLibrary ? tree.rows.length : number - tree.rowNumber(item.node.row);
    return distance >= 0 ? distance : tree.rows.length - distance;
  };
}

/** Names that legs use already, this one's not counted. */
const usedIn = ({ s, row }: Asked): ReadonlySet<string> =>
  new Set(
    s.results.legs
      .filter(({ item }) => item.node.row !== row)
      .flatMap(({ steps }) => steps.map(({ thing }) => thing.key)),
  );

const joiners = ['shackle', 'master link', 'link', 'swivel', 'turnbuckle', 'chain hoist', 'lever hoist', 'load cell'];
const shared: readonly string[] = [...hookKeywords, 'master link', 'load cell', 'swivel', 'point'];

/** Lower is likelier: what stands in that place of the leg above, or may hang below the item before; still free, and numbered as that is. */
function pathScore(before: readonly string[], asked: Asked): (thing: Thing) => number {
  const { s, number } = asked;
  const used = usedIn(asked);
  const last = before.at(-1);
  const above =
    last === undefined
      ? undefined
      : s.plan.names.things.find(({ key, kind }) => key === fold(last) && ['gear', 'pick', 'point'].includes(kind));
  const order = orderBelow(above, last !== undefined);
  const digits = before
    .map((name) => /\d+$/.exec(name)?.[0])
    .filter(Boolean)
    .at(-1);
  const model = s.results.legs
    .filter(({ item }) => item.file === s.file && s.tree.rowNumber(item.node.row) < number)
    .at(-1)?.steps[before.length]?.thing;
  return (thing) => {
    const word = wordOf(thing);
    const place = order.findIndex((group) => group.includes(word));
    const free = used.has(thing.key) && !shared.includes(word) ? 10 : 0;
    const repeated = before.some((name) => fold(name) === thing.key) ? 40 : 0;
    const alike = digits !== undefined && /\d+$/.exec(thing.name)?.[0] === digits ? 0 : 1;
    const modelled = model && wordOf(model) === word && (!shared.includes(word) || model === thing) ? -20 : 0;
    return (place < 0 ? order.length : place) * 3 + free + repeated + alike + modelled;
  };
}

const wordOf = (thing: Thing): string => (thing.kind === 'gear' ? thing.item.keyword : thing.kind);

/** Groups of what may hang below a thing, the likeliest first. */
function orderBelow(above: Thing | undefined, known: boolean): readonly (readonly string[])[] {
  if (!known) return [hookKeywords, ['point', 'master link'], ['pick']];
  const word = above?.kind === 'gear' ? above.item.keyword : (above?.kind ?? '');
  if (hookKeywords.includes(word) || word === 'point' || word === 'master link')
    return [['sling'], joiners, ['point', 'spreader', 'lifting beam'], ['pick']];
  if (word === 'sling') return [joiners, ['pick', 'point'], ['eyebolt', 'hoist ring', 'clamp']];
  return [['pick', 'point'], ['sling'], joiners];
}

/** What is known of a thing beside its name: weight and capacity of gear, capacity of a pick, weight of a part. */
function figures(thing: Thing, { s: { plan, results } }: Asked): string {
  if (thing.kind === 'gear') {
    const text = (word: string, round: 'up' | 'down') => {
      const value = given(thing.item, word);
      return value.state === 'known' ? write(value.quantity.value, 'kg', { system: plan.units, round }) : null;
    };
    const [weight, capacity] = [text('weight', 'up'), text('capacity', 'down')];
    return [thing.item.keyword, weight && `weight ${weight}`, capacity && `capacity ${capacity}`]
      .filter(Boolean)
      .join(', ');
  }
  if (!resultsFor(results, thing).length) return thing.item.keyword;
  const weight = resultOf(results, thing, 'weight');
  return weight && weight.value.value !== null ? worst(weight.value, plan.units) : thing.item.keyword;
}

/** The line that takes a library in: behind the last `use`, else behind the `plan` statement, else at the top. */
function useLine({ s: { tree } }: Asked, path: string): Edit {
  const lines = [`use "${path}"`];
  const uses = tree.nodes.filter(({ line }) => line.statement?.keyword.word === 'use');
  const plan = tree.nodes.find(({ line }) => line.statement?.keyword.word === 'plan');
  const last = uses.at(-1) ?? plan?.children.at(-1) ?? plan;
  const row = last?.row ?? tree.rows[0];
  return {
    kind: 'insert',
    after: { row: row as NonNullable<typeof row>, from: 0, to: row?.text.length ?? 0 },
    lines,
    ...(!last && { before: true }),
  };
}
