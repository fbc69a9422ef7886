// Values that can be listed: words of the vocabulary, axes, materials and sizes with their figures, texts used nearby, and names of values.
import { materials, woods } from '../../catalog/index.ts';
import { type Dimension, dimensions, named, same, unitsFor, write } from '../../quantities/index.ts';
import { type ClauseRow, type Evidence, evidenceHelp, type ShapeRow, shapes } from '../../vocabulary/index.ts';
import { allItems, ownFile } from '../items.ts';
import { inQuotes } from '../spelling.ts';
import type { Completion } from '../types.ts';
import { itemHere } from './names.ts';
import { formsHere, pipeworkLabels } from './pipework.ts';
import { fromTables, schedules } from './tables.ts';
import { type Asked, begun, completion, phrase } from './types.ts';

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
    case 'size or nothing':
    case 'point':
    case 'points':
    case 'line':
    case 'row':
    case 'amount or nothing':
      return clause ? [...lets(asked, clause), ...special(asked), ...template(asked, clause)] : [];
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
  if (asked.clause?.names === 'material') return materialNames(asked);
  return fromTables(asked, usedTexts(asked, asked.slot.clause ?? ''));
}

/** The plan's own materials first, then those used in this file, then the catalog's; woods by species where the moisture is stated. */
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
  const timber = itemHere(asked)?.clauses.has('moisture');
  const listed = timber
    ? woods().map(({ name, basic }) => ({ name, density: basic * 1000 }))
    : materials().map(({ name, density }) => ({ name, density }));
  const all = [...own, ...listed.filter(({ name }) => used.has(name)), ...listed.filter(({ name }) => !used.has(name))];
  return all.map(({ name, density }) =>
    completion(asked, 'material', name, {
      from,
      detail: density === null ? '' : write(density, 'kg/m3', { system: s.plan.units, round: 'up' }),
    }),
  );
}

/** Schedules of the pipe on this line; kinds of findings behind `waive`. */
function labels(asked: Asked): readonly Completion[] {
  const { slot, s } = asked;
  const pipework = pipeworkLabels(asked);
  if (pipework) return pipework.map((one) => completion(asked, 'word', one.text, { detail: one.detail }));
  if (slot.clause === 'schedule') return schedules(asked);
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

/** The form of a size or a place with a gap for each figure, where nothing is written yet. */
function template(asked: Asked, clause: ClauseRow): readonly Completion[] {
  const { slot, s } = asked;
  if (begun(asked).text.trim() !== '') return [];
  const unit = `\${4|${s.plan.units === 'US' ? 'ft,in,m,mm' : 'm,mm,ft,in'}|}`;
  if (slot.type === 'point')
    return [completion(asked, 'snippet', '(x, y, z)', { snippet: true, text: `(\${1:x}, \${2:y}, \${3:z}) ${unit}` })];
  const shape =
    slot.type === 'size' && slot.clause ? (shapes as Readonly<Record<string, ShapeRow>>)[slot.clause] : null;
  const sides = shape && /^[^.]+/.exec(shape.form.help)?.[0].toLowerCase().split(' × ');
  if (!sides || sides.length !== clause.sides) return [];
  const words = sides.map((side) => side.replace(/(?: of|,).*$/, ''));
  return [
    completion(asked, 'snippet', words.join(' x '), {
      snippet: true,
      text: `${words.map((word, i) => `\${${i + 1}:${word}}`).join(' x ')} ${unit}`,
    }),
  ];
}

/** `?` for a figure that is not known yet. */
function special(asked: Asked): readonly Completion[] {
  const { text: typed } = begun(asked);
  return typed.trim() === '' ? [completion(asked, 'word', '?', { detail: 'not known yet' })] : [];
}
