// Figures side by side, as a reader of a comparison sees them: as it was, as it is, and what lies between.
import { type Derived, type System, share, words, writeChange } from '../../quantities/index.ts';
import type { Result, Results, Subject } from '../../results/index.ts';
import { resultsOf } from '../../vocabulary/index.ts';
import { figure, notKnown, overCapacity, rounding, row, styled, worseEnd } from '../sheet/figures.ts';
import type { Block, Cell, Column, Row, Section } from '../sheet/types.ts';
import { quoted } from '../sheet/written.ts';
import { sameFigure } from './figures.ts';
import type { Comparison, FigureChange } from './types.ts';

export const beforeAndNow = (first: string): readonly Column[] => [
  { title: first },
  { title: 'Before', figures: true },
  { title: 'Now', figures: true },
  { title: 'Difference', figures: true },
];

/** Both figures in one unit with digits enough to tell them apart, and the difference; what is not known stays in words. */
export function sides(
  kind: string,
  result: string,
  old: Derived | null,
  now: Derived | null,
  system: System,
): readonly Cell[] {
  const worse = worseEnd(kind, result);
  const marked = (derived: Derived, cell: Cell) => (result === 'capacity used' ? overCapacity(derived, cell) : cell);
  if (!old || !now || old.value === null || now.value === null) {
    const one = (derived: Derived | null): Cell =>
      derived ? marked(derived, figure(derived, system, worse)) : { text: 'not there' };
    return [one(old), one(now), { text: '' }];
  }
  const ends = ({ value, low, high }: Derived) => ({
    value: value as number,
    low: low as number,
    high: high as number,
  });
  const made = writeChange(ends(old), ends(now), now.unit, styled(system, rounding[worse]));
  return [
    marked(old, { text: made.old }),
    marked(now, { text: made.now }),
    { text: [now.unit === '1' ? points(made.by) : made.by, ofOld(old, now)].filter(Boolean).join(', ') },
  ];
}

/** A share of a share would be misread: 41 % to 43 % is 2 points more. */
const points = (by: string): string => by.replace(/ %$/, by === '+1 %' || by === '−1 %' ? ' point' : ' points');

/** The difference as a share of what was there, where that says something: not of coordinates and angles. */
function ofOld(old: Derived, now: Derived): string {
  const [was, is] = [old.value ?? 0, now.value ?? 0];
  if (!proportional.has(now.unit) || was <= 0 || was === is) return '';
  const text = share((is - was) / was, 'near', false);
  return is > was ? `+${text}` : text;
}

const proportional = new Set(['kg', 'N', 'm3', 'Pa']);

/** What a reviewer asks first, whether it changed or not: what each load weighs, what hangs in all, how much of a capacity is used. */
export function glance({ old, now, figures }: Comparison): readonly Row[] {
  const system = now.plan.units;
  const loads = now.results.loads.map(({ thing, weight }) => {
    const change = figures.find(
      ({ subject, result }) => subject.kind === 'load' && subject.name === thing.name && result === 'weight',
    );
    return compared(`Load ${quoted(thing.name)}`, ['load', 'weight'], change ? change.old : weight, weight, system);
  });
  const gross = [old.results.totals.gross, now.results.totals.gross] as const;
  const used = [mostUsed(old.results), mostUsed(now.results)] as const;
  const most = compared('Most capacity used', ['pick', 'capacity used'], valueOf(used[0]), valueOf(used[1]), system);
  const named = most.cells.map((cell, i) => {
    const subject = used[i - 1]?.subject;
    return subject && (i === 1 || i === 2) ? { ...cell, text: `${cell.text} (${subjectText(subject)})` } : cell;
  });
  return [
    ...loads,
    compared('Gross load', ['plan', 'gross load'], ...gross, system),
    ...(used.some(Boolean) ? [{ ...most, cells: named }] : []),
  ];
}

const valueOf = (result: Result | undefined): Derived | null => result?.value ?? null;

function compared(
  name: string,
  [kind, result]: readonly [string, string],
  old: Derived | null,
  now: Derived | null,
  system: System,
): Row {
  if (old && now && now.value !== null && sameFigure(old, now)) {
    const [, both = notKnown] = sides(kind, result, null, now, system);
    return row([], name, both, both, 'as before');
  }
  return row([], name, ...sides(kind, result, old, now, system));
}

/** The worst of all that legs run through; one that is not known is worse than any figure. */
function mostUsed({ list, legs }: Results): Result | undefined {
  const inLegs = new Set(legs.flatMap(({ steps }) => steps.map(({ thing }) => JSON.stringify(thing.path))));
  const used = list.filter(
    ({ subject, result, stage }) =>
      result === 'capacity used' && stage === null && inLegs.has(JSON.stringify(subject.path)),
  );
  const size = ({ value: { value, high } }: Result) => (value === null ? Number.POSITIVE_INFINITY : (high ?? value));
  return [...used].sort((a, b) => size(b) - size(a))[0];
}

const subjectText = ({ kind, name }: Subject): string => (name === null ? kind : `${kind} ${quoted(name)}`);

interface Group {
  readonly id: string;
  readonly title: string;
  readonly kinds: (kind: string) => boolean;
  /** These first, in this order; then any others. */
  readonly first: readonly string[];
}

const inLoad = ['load', 'part', 'assembly'];
const onSite = ['plan', 'crane', 'position', 'support', 'ground', 'weather'];
const groups: readonly Group[] = [
  {
    id: 'legs',
    title: 'Gear and picks',
    kinds: (kind) => !inLoad.includes(kind) && !onSite.includes(kind),
    first: ['capacity used', 'tension', 'pull', 'angle', 'capacity'],
  },
  {
    id: 'totals',
    title: 'The whole lift',
    kinds: (kind) => onSite.includes(kind) || kind === 'load',
    first: ['gross load', 'load weight', 'rigging weight', 'deductions', 'weight'],
  },
  { id: 'parts', title: 'Parts', kinds: (kind) => kind === 'part' || kind === 'assembly', first: ['weight'] },
];

/** What follows from figures that are shown, or says the same in another unit: only counted. */
function follows({ subject: { kind }, result }: FigureChange): boolean {
  const size = inLoad.includes(kind) && resultsOf[kind]?.[result]?.measures === 'length' && !result.startsWith('cog');
  return size || result === 'volume' || result === 'elastic tension' || (result === 'load' && kind !== 'load');
}

/** Of a thing that came or went, these alone are shown. */
const telling = new Set([
  'weight',
  'gross load',
  'capacity used',
  'tension',
  'pull',
  'calculated weight',
  'stated weight',
  'measured weight',
]);

const isShown = (change: FigureChange): boolean =>
  !follows(change) && ((change.old !== null && change.now !== null) || telling.has(change.result));

/** The changed figures in tables; those that only follow from them are counted. */
export function figureSections({ figures, now }: Comparison): readonly Section[] {
  const shown = figures.filter(isShown);
  const sections = groups.flatMap(({ id, title, kinds, first }): readonly Section[] => {
    const order = ({ result }: FigureChange) => (first.includes(result) ? first.indexOf(result) : first.length);
    const own = shown
      .filter(({ subject }) => kinds(subject.kind))
      .sort((a, b) => order(a) - order(b) || (most(a) === most(b) ? 0 : most(b) - most(a)));
    const rows = merged(own, now.plan.units);
    const table = { kind: 'table', caption: 'Figures that changed', columns: beforeAndNow('Figure'), rows } as const;
    return rows.length ? [{ id, title, blocks: [table] }] : [];
  });
  const more = figures.length - shown.length;
  return more ? [...sections, { id: 'others', title: 'Other figures', blocks: [others(more)] }] : sections;
}

/** How much of a capacity is used now, so that the worst stands first; other figures keep the order of the text. */
const most = ({ result, now }: FigureChange): number =>
  result === 'capacity used' ? (now?.high ?? Number.POSITIVE_INFINITY) : 0;

const others = (more: number): Block => ({
  kind: 'paragraph',
  look: 'plain',
  text: `${words(more, 'figure')} that changed ${more === 1 ? 'is' : 'are'} not shown: sizes, volumes, elastic tensions, tensions as mass, and details of what came or went. The JSON form lists them all.`,
  at: [],
});

/** One row a figure; things of one kind whose figures are the same share one. */
function merged(figures: readonly FigureChange[], system: System): readonly Row[] {
  const groups = new Map<
    string,
    { readonly change: FigureChange; readonly cells: readonly Cell[]; readonly names: string[] }
  >();
  for (const change of figures) {
    const { subject, result, stage, old, now } = change;
    const cells = sides(subject.kind, result, old, now, system);
    const key = JSON.stringify([subject.kind, result, stage, cells]);
    const group = groups.get(key) ?? { change, cells, names: [] };
    group.names.push(pathText(subject));
    groups.set(key, group);
  }
  return [...groups.values()].map(({ change: { subject, result, stage }, cells, names }) => {
    const who = names[0] === '' ? (subject.kind === 'plan' ? '' : subject.kind) : `${subject.kind} ${listed(names)}`;
    return row([], [who && `${who}:`, result, stage && `(stage ${quoted(stage)})`].filter(Boolean).join(' '), ...cells);
  });
}

/** A part with the assemblies it is in; of anything else its name. */
const pathText = ({ kind, name, path }: Subject): string =>
  inLoad.includes(kind) && path.length > 2 ? path.slice(1).map(quoted).join(' > ') : name === null ? '' : quoted(name);

const mostNames = 8;
const listed = (names: readonly string[]): string =>
  names.length > mostNames
    ? `${names.slice(0, mostNames - 1).join(', ')} and ${names.length - mostNames + 1} more`
    : names.join(', ');
