// Values that can be listed: words of the vocabulary, axes, materials and sizes with their figures, texts used nearby, and names of values.
import { bars, materials, nearestSections, pipeSchedules, pipes, sections } from '../../catalog/index.ts';
import { textOf } from '../../plan/index.ts';
import { type Dimension, dimensions, named, type System, same, unitsFor, write } from '../../quantities/index.ts';
import { type ClauseRow, type Evidence, evidenceHelp } from '../../vocabulary/index.ts';
import { allItems, ownFile } from '../items.ts';
import { inQuotes } from '../spelling.ts';
import type { Completion } from '../types.ts';
import { itemHere } from './names.ts';
import { formsHere, pipeworkLabels, pipeworkSizes } from './pipework.ts';
import { type Asked, begun, completion, phrase } from './types.ts';

/** At most so many sizes of a table at once: more come with more of the designation. */
export const mostListed = 200;

export function values(asked: Asked): readonly Completion[] {
  const { slot, clause } = asked;
  switch (slot.type) {
    case 'word':
    case 'word and amount':
      return words(asked);
    case 'axis':
      return axes(asked);
    case 'turn':
    case 'circle':
      return turned(asked);
    case 'tilt':
      return tilted(asked);
    case 'side':
      return axes(asked);
    case 'designation':
    case 'designation or amount':
      return designations(asked);
    case 'label':
      return labels(asked);
    case 'date':
      return nearby(asked, (text) => text, 'date');
    case 'amount':
    case 'size':
    case 'size or amount':
    case 'point':
    case 'points':
    case 'row':
    case 'amount or nothing':
      return clause ? [...lets(asked, clause), ...special(asked)] : [];
    default:
      return [];
  }
}

function words(asked: Asked): readonly Completion[] {
  const value = begun(asked);
  const before = value.text.trim();
  const used = usedTexts(asked, asked.slot.clause ?? '');
  const all = formsHere(asked) ?? asked.slot.words.map((text) => ({ text, detail: '' }));
  const listed = [...all].sort((a, b) => Number(used.includes(b.text)) - Number(used.includes(a.text)));
  return listed
    .filter(({ text: word }) => word !== before)
    .map(({ text: word, detail }) =>
      phrase(asked, 'word', word, value, { detail, help: word in evidenceHelp ? evidenceHelp[word as Evidence] : '' }),
    );
}

const axisNames = ['x', 'y', 'z', '-x', '-y', '-z'];
const axes = (asked: Asked): readonly Completion[] => axisNames.map((axis) => completion(asked, 'word', axis));

/** `30 deg about z`: the angle is written, then `about`, then the axis. */
function turned(asked: Asked): readonly Completion[] {
  const { text } = begun(asked);
  if (/\babout\s+\S*$/.test(text)) return axes(asked);
  return /[\w)%°]\s+\w*$/.test(text) ? [completion(asked, 'word', 'about')] : [];
}

/** `x 30 deg to 90 deg`. */
function tilted(asked: Asked): readonly Completion[] {
  const { text } = begun(asked);
  if (/^\S*$/.test(text)) return axes(asked);
  return /(?:deg|rad|°)\s+\w*$/.test(text) && !/\bto\b/.test(text) ? [completion(asked, 'word', 'to')] : [];
}

// ---------------------------------------------------------------- tables

function designations(asked: Asked): readonly Completion[] {
  const { slot, clause } = asked;
  if (clause?.names === 'material') return materialNames(asked);
  if (slot.clause === 'section') return sized(asked, sections(), nearestSections);
  if (slot.clause === 'bar')
    return sized(
      asked,
      bars().map((bar) => ({
        ...bar,
        designation: bar.designation.startsWith('#') ? inQuotes(bar.designation) : bar.designation,
      })),
    );
  const pipework = pipeworkSizes(asked);
  if (pipework)
    return fitting(
      asked,
      pipework.map(({ text: designation, detail }) => ({ designation, detail })),
    );
  if (slot.clause !== 'pipe') return [];
  const each = new Map(pipes().map((pipe) => [pipe.designation, pipe]));
  return sized(
    asked,
    [...each.values()].map(({ designation }) => ({ designation, massPerLength: null })),
  );
}

/** The plan's own materials first, then those used in this file, then the catalog's. */
function materialNames(asked: Asked): readonly Completion[] {
  const { s } = asked;
  const { from } = begun(asked);
  const own = s.plan.names.things
    .filter(({ kind }) => kind === 'material')
    .map(({ name, item }) => {
      const density = item.clauses.get('density')?.[0]?.value;
      return { name, density: density?.kind === 'quantity' ? density.quantity.value : null };
    });
  const used = new Set(usedTexts(asked, 'of'));
  const listed = materials().map(({ name, density }) => ({ name, density }));
  const all = [...own, ...listed.filter(({ name }) => used.has(name)), ...listed.filter(({ name }) => !used.has(name))];
  return all.map(({ name, density }) =>
    completion(asked, 'material', name, { from, detail: density === null ? '' : text(density, 'kg/m3', s.plan.units) }),
  );
}

interface Sized {
  readonly designation: string;
  readonly massPerLength: number | null;
}

/** Sizes that begin as typed, with their weight per length. */
function sized(
  asked: Asked,
  rows: readonly Sized[],
  nearest: (typed: string, count: number) => readonly Sized[] = () => [],
): readonly Completion[] {
  const shown = ({ designation, massPerLength }: Sized): Shown => ({
    designation,
    detail: massPerLength === null ? '' : text(massPerLength, 'kg/m', asked.s.plan.units),
  });
  return fitting(asked, rows.map(shown), (typed, count) => nearest(typed, count).map(shown));
}

interface Shown {
  readonly designation: string;
  readonly detail: string;
}

/** Sizes that begin as typed; those used in this file first. */
function fitting(
  asked: Asked,
  rows: readonly Shown[],
  nearest: (typed: string, count: number) => readonly Shown[] = () => [],
): readonly Completion[] {
  const { from, text: typed } = begun(asked);
  const key = (designation: string) => designation.toUpperCase().replace(/[\s"]/g, '').replaceAll('×', 'X');
  const beginning = rows.filter(({ designation }) => key(designation).startsWith(key(typed)));
  const used = new Set(usedTexts(asked, asked.slot.clause ?? '').map(key));
  const found = beginning.length || !typed ? beginning : nearest(typed, 10);
  const ordered = [
    ...found.filter(({ designation }) => used.has(key(designation))),
    ...found.filter(({ designation }) => !used.has(key(designation))),
  ];
  return ordered
    .slice(0, mostListed)
    .map(({ designation, detail }) =>
      completion(asked, 'material', designation.replace(/(?<=[\d.])X(?=[\d.])/g, 'x'), { from, detail }),
    );
}

const text = (value: number, unit: 'kg/m' | 'kg/m3', system: System): string =>
  write(value, unit, { system, round: 'up' });

/** Schedules of the pipe on this line; kinds of findings behind `waive`. */
function labels(asked: Asked): readonly Completion[] {
  const { slot, s } = asked;
  const pipework = pipeworkLabels(asked);
  if (pipework) return pipework.map((one) => completion(asked, 'word', one.text, { detail: one.detail }));
  if (slot.clause === 'schedule') {
    const item = itemHere(asked);
    return pipeSchedules((item && textOf(item, 'pipe')) ?? '').map((schedule) => completion(asked, 'word', schedule));
  }
  if (slot.statement === 'waive' && slot.clause === null) {
    const found = new Map(s.own.map(({ slug, message }) => [slug, message]));
    return [...found].map(([slug, message]) => completion(asked, 'word', slug, { help: message }));
  }
  return nearby(asked, (label) => (/^[\w.-]+$/.test(label) ? label : inQuotes(label)), 'word');
}

// ---------------------------------------------------------------- what stands nearby

/** Texts, labels or dates that the same clause has elsewhere in this file, the last ones first. */
export function nearby(
  asked: Asked,
  write: (text: string) => string,
  kind: 'text' | 'word' | 'date',
): readonly Completion[] {
  const word = asked.slot.clause;
  if (word === null) return [];
  const own = itemHere(asked);
  return usedTexts(asked, word, own?.keyword ?? asked.slot.block).map((used) =>
    completion(asked, kind === 'date' ? 'word' : kind, used, { text: write(used) }),
  );
}

/** What a clause says elsewhere in this file, each once: in statements of the same kind first, then the last ones. */
function usedTexts(asked: Asked, word: string, keyword: string | null = null): readonly string[] {
  const file = ownFile(asked.s);
  const here = itemHere(asked);
  const found = allItems(file?.items ?? [])
    .filter((item) => item !== here)
    .reverse()
    .flatMap((item) =>
      (item.clauses.get(word) ?? []).flatMap(({ value }) => {
        const said =
          value?.kind === 'text'
            ? value.text
            : value?.kind === 'date'
              ? value.iso
              : value?.kind === 'word'
                ? value.word
                : null;
        return said === null ? [] : [{ text: said, near: item.keyword === keyword }];
      }),
    );
  return [
    ...new Set(
      [...found.filter(({ near }) => near), ...found.filter(({ near }) => !near)].map(({ text: used }) => used),
    ),
  ];
}

/** Names of values that fit what the clause measures. */
function lets(asked: Asked, clause: ClauseRow): readonly Completion[] {
  const { s } = asked;
  return s.plan.names.things
    .filter(({ kind }) => kind === 'let')
    .flatMap(({ name, item }) => {
      const value = item.value?.value;
      if (value?.kind !== 'quantity' || !measures(clause, value.quantity.dimension, value.quantity.percent)) return [];
      const measure = value.quantity.percent ? '1' : named(value.quantity.dimension);
      return [
        completion(asked, 'name', name, {
          detail: measure ? write(value.quantity.value, measure, { system: s.plan.units, round: 'near' }) : '',
        }),
      ];
    });
}

function measures({ measures: measure = 'any' }: ClauseRow, dimension: Dimension, percent: boolean): boolean {
  if (measure === 'any') return true;
  if (measure === 'percent') return percent;
  if (measure === 'whole' || measure === 'number') return !percent && same(dimension, dimensions.number);
  return !percent && (unitsFor(measure).length === 0 || usual(measure).some((one) => same(one, dimension)));
}

function usual(measure: string): readonly Dimension[] {
  if (measure === 'weight') return [dimensions.mass, dimensions.force];
  if (measure === 'density') return [dimensions['mass density'], dimensions['force density']];
  return measure in dimensions ? [dimensions[measure as keyof typeof dimensions]] : [];
}

/** `?` for a figure that is not known yet. */
function special(asked: Asked): readonly Completion[] {
  const { text: typed } = begun(asked);
  return typed.trim() === '' ? [completion(asked, 'word', '?', { detail: 'not known yet' })] : [];
}
