// Completion of a bound, `sling S1 angle >= 60 deg`: results and kinds, the names of a kind, its results, then the sign.
import type { Compare, Thing } from '../../plan/types.ts';
import { type Derived, write } from '../../quantities/index.ts';
import { type Measure, resultsOf, statements, triggers } from '../../vocabulary/index.ts';
import { resultOf } from '../figures.ts';
import { allItems, ownFile } from '../items.ts';
import { asDeclared } from '../spelling.ts';
import type { Completion } from '../types.ts';
import { subjectKinds, thingsNamed } from '../uses.ts';
import { type Asked, begun, completion, phrase } from './types.ts';

export function compared(asked: Asked): readonly Completion[] {
  const { slot, row } = asked;
  const value = begun(asked);
  const before = row.text.slice(value.from, Math.max(value.from, slot.from));
  if (slot.type === 'subject') return keywords(asked);
  if (/[<>=≤≥]|\bbetween\b/.test(before)) return present(asked, before);
  const read = subjectOf(before);
  if (read.kind === null)
    return [
      ...start(asked, value),
      ...(slot.type === 'trigger' ? triggers.map((words) => phrase(asked, 'word', words, value)) : []),
    ];
  const longer = read.result
    ? results(asked, read.kind, value).filter(
        ({ at, text }) =>
          at.from < slot.from &&
          (at.from === value.from) === (read.kind === 'plan') &&
          text.startsWith(row.text.slice(at.from, asked.offset)),
      )
    : [];
  if (read.result) return [...longer, ...signs.map((sign) => completion(asked, 'word', sign))];
  return read.named
    ? results(asked, read.kind, value)
    : [...results(asked, read.kind, value), ...namesOf(asked, read.kind)];
}

const signs = ['<=', '<', '>=', '>', 'between', '='];

/** What the words left of the place say: a kind of subject, whether a name follows, and whether a whole result stands there. */
function subjectOf(before: string): {
  readonly kind: string | null;
  readonly named: boolean;
  readonly result: boolean;
} {
  const words = before.trim();
  if (words && resultsOf.plan && words in resultsOf.plan) return { kind: 'plan', named: true, result: true };
  const kind = Object.keys(resultsOf)
    .filter((one) => one !== 'plan' && (words === one || words.startsWith(`${one} `)))
    .sort((a, b) => b.length - a.length)[0];
  if (!kind) return { kind: null, named: false, result: false };
  const rest = words.slice(kind.length).trim();
  const table = resultsOf[kind] ?? {};
  const result = Object.keys(table).some((one) => rest === one || rest.endsWith(` ${one}`) || rest.endsWith(`"${one}`));
  const first = /^(?:"(?:[^"]|"")*"|[\w.-]+)/.exec(rest)?.[0] ?? '';
  const named = rest !== '' && !Object.keys(table).some((one) => one === first || one.startsWith(`${first} `));
  return { kind, named, result };
}

/** Results of the plan, and the kinds of subjects it has; those that other bounds of the file speak of first. */
function start(asked: Asked, value: ReturnType<typeof begun>): readonly Completion[] {
  const { plan } = asked.s;
  const there = new Set([
    'load',
    ...plan.names.things.map(({ kind, item }) => (kind === 'gear' ? item.keyword : kind)),
  ]);
  const kinds = Object.keys(resultsOf).filter((kind) => kind !== 'plan');
  const totals = Object.keys(resultsOf.plan ?? {}).reverse();
  const first = kinds.filter((kind) => there.has(kind));
  const words = [
    ...first.slice(0, 1),
    ...totals.slice(0, 1),
    ...first.slice(1),
    ...totals.slice(1),
    ...kinds.filter((kind) => !there.has(kind)),
  ];
  const said = bounds(asked).map(({ subject, result }) => (subject.kind === 'plan' ? result : subject.kind));
  return byUse(words, said).map((word) =>
    phrase(asked, 'word', word, value, { help: resultsOf.plan?.[word]?.help ?? statements[word]?.help ?? '' }),
  );
}

/** The bounds of other lines of this file. */
function bounds({ s, row }: Asked): readonly Compare[] {
  const items = allItems(ownFile(s)?.items ?? []).filter(({ node }) => node.row !== row);
  return items.flatMap(({ value }) =>
    value?.value?.kind === 'compare' && value.value.compare ? [value.value.compare] : [],
  );
}

/** Words used elsewhere first, the most used of them before the others. */
function byUse(words: readonly string[], used: readonly string[]): readonly string[] {
  const count = (word: string) => used.filter((one) => one === word).length;
  return words
    .map((word, i) => ({ word, i, n: count(word) }))
    .sort((a, b) => b.n - a.n || a.i - b.i)
    .map(({ word }) => word);
}

function namesOf(asked: Asked, kind: string): readonly Completion[] {
  const kinds = subjectKinds(kind);
  const own = (thing: Thing) =>
    kinds.includes(thing.kind) && (thing.kind !== 'gear' || kind === 'gear' || thing.item.keyword === kind);
  return asked.s.plan.names.things.filter(own).map((thing) =>
    completion(asked, 'name', thing.name, {
      text: asDeclared(thing, 'compared'),
      help: `${thing.item.keyword} ${thing.name}`,
    }),
  );
}

/** Results of a kind: known ones that no bound of the file speaks of yet, shares of a capacity first, then the rest. */
function results(asked: Asked, kind: string, value: ReturnType<typeof begun>): readonly Completion[] {
  const rows = resultsOf[kind] ?? {};
  const bounded = bounds(asked)
    .filter(({ subject }) => subject.kind === kind)
    .map(({ result }) => result);
  const known = new Set(
    asked.s.results.list
      .filter((one) => one.value.value !== null && (one.subject.kind === kind || kind === 'gear'))
      .map(({ result }) => result),
  );
  const score = (word: string) =>
    (known.has(word) ? 0 : 4) + (bounded.includes(word) ? 2 : 0) + (rows[word]?.measures === 'percent' ? 0 : 1);
  const ordered = Object.keys(rows)
    .map((word, i) => ({ word, i }))
    .sort((a, b) => score(a.word) - score(b.word) || a.i - b.i);
  return ordered.map(({ word }) => phrase(asked, 'word', word, value, { help: rows[word]?.help ?? '' }));
}

/** Behind the sign: what the result comes to now, so rounded that the bound holds as things stand. */
function present(asked: Asked, before: string): readonly Completion[] {
  const [, words = '', sign = ''] = /^(.*?)\s*(<=|>=|<|>|≤|≥)\s*$/.exec(before) ?? [];
  const value = sign && valueNow(asked, words);
  if (!value || value.value === null) return [];
  const up = sign.startsWith('<') || sign === '≤';
  const end = (up ? value.high : value.low) ?? value.value;
  const room = sign === '<' || sign === '>' ? Math.abs(end) * strictRoom : 0;
  const style = { system: asked.s.plan.units, round: up ? 'up' : 'down' } as const;
  return [
    completion(asked, 'word', write(up ? end + room : end - room, value.unit, style), { detail: 'as it stands now' }),
  ];
}

/** A bound that its own figure would not keep stands a thousandth away from it. */
const strictRoom = 0.001;

function valueNow({ s: { plan, results: all } }: Asked, words: string): Derived | null {
  const { kind } = subjectOf(words);
  const result = kind === null ? null : resultIn(kind, words.trim());
  if (kind === null || result === null) return null;
  if (kind === 'plan') return all.find('plan', null, result)?.value ?? null;
  const name = words
    .trim()
    .slice(kind.length, -result.length)
    .trim()
    .replace(/^"(.*)"$/, '$1');
  const [thing] = name ? thingsNamed(name, subjectKinds(kind), null, plan) : [];
  return (thing && resultOf(all, thing, result)?.value) ?? null;
}

/** The result that the words about a kind end in. */
const resultIn = (kind: string, words: string): string | null =>
  Object.keys(resultsOf[kind] ?? {})
    .filter((one) => words === one || words.endsWith(` ${one}`))
    .sort((a, b) => b.length - a.length)[0] ?? null;

/** What the result before a figure measures; null where none can be told. */
export function compareMeasure(asked: Asked): Measure | null {
  const words =
    begun(asked)
      .text.split(/<=|>=|[<>=≤≥]|\bbetween\b/)[0]
      ?.trim() ?? '';
  const { kind } = subjectOf(words);
  const result = kind === null ? null : resultIn(kind, words);
  return kind !== null && result !== null ? (resultsOf[kind]?.[result]?.measures ?? null) : null;
}

/** `require`: a statement's keyword. */
const keywords = (asked: Asked): readonly Completion[] =>
  Object.entries(statements).map(([word, row]) => phrase(asked, 'statement', word, begun(asked), { help: row.help }));
