// Below the build-up of a load: what its parts rest on, and which of them can move the weight most.
import { isListed, textOf } from '../../plan/index.ts';
import { known, share } from '../../quantities/index.ts';
import { type Body, type LoadResult, type Share, shares, spread } from '../../results/index.ts';
import { basisText } from './basis.ts';
import type { Context } from './context.ts';
import { figure, figureText, row } from './figures.ts';
import type { Block, Cell, Row, StackPiece, Table } from './types.ts';
import { quoted } from './written.ts';

/** Parts that move the weight most, as many as a checker can go after. */
const most = 5;

/** Nothing where a part is not known; the second table only where a part has a tolerance. */
export const doubt = (context: Context, load: LoadResult): readonly Block[] => [
  ...restsOn(context, load),
  ...movers(context, load),
];

/** The weight of all parts by what they rest on, as a bar and as a table; neither where all of it is worked out, or stated alike. */
function restsOn({ system, snapshot }: Context, { thing, body, governing }: LoadResult): readonly Block[] {
  const all = shares(body) ?? [];
  const whole = all.reduce((sum, { kg }) => sum + kg, 0);
  if (all.length < 2 && all.every(({ basis }) => basis === 'stated' || basis === 'calculated')) return [];
  const title = `${quoted(thing.name)}: what the weight of its parts rests on`;
  const weight = (kg: number) => figureText(known(kg, 'kg'), system, 'up');
  const other = governing && governing.kind !== 'calculated' ? ` The ${governing.kind} weight governs.` : '';
  const pieces = stacked(all, whole, weight);
  return [
    {
      kind: 'stack',
      id: `rests-${snapshot.results.loads.findIndex((load) => load.thing === thing) + 1}`,
      title,
      description: pieces.map(({ label, figure, share }) => `${label} ${figure}, ${share}`).join('; '),
      pieces,
      note: `What the weight of all parts, ${weight(whole)}, rests on.${other}`,
    },
    {
      kind: 'table',
      caption: title,
      columns: [
        { title: 'Rests on' },
        { title: 'Weight', figures: true },
        { title: 'Share of all parts', figures: true },
      ],
      rows: all.flatMap((one) => [
        restRow(one.parts, basisText[one.basis].long, 0, weight, whole),
        ...(one.basis === 'stated'
          ? byEvidence(one.parts).map(([words, parts]) => restRow(parts, words, 1, weight, whole))
          : []),
      ]),
    },
  ];
}

function stacked(all: readonly Share[], whole: number, weight: (kg: number) => string): readonly StackPiece[] {
  let from = 0;
  return all.map(({ basis, kg, parts }) => {
    const start = from;
    from += kg;
    return {
      look: basis,
      label: basisText[basis].long,
      figure: weight(kg),
      share: share(kg / whole, 'near', false),
      from: start / whole,
      to: from / whole,
      at: parts.map((part) => part.thing.item.at),
    };
  });
}

function restRow(
  parts: readonly Body[],
  words: string,
  depth: number,
  weight: (kg: number) => string,
  whole: number,
): Row {
  const kg = parts.reduce((sum, part) => sum + (part.weight.value as number), 0);
  const at = parts.map(({ thing }) => thing.item.at);
  return { ...row(at, words, weight(kg), share(kg / whole, 'near', false)), depth, repeat: true };
}

/** Stated parts by what is named for them, the heaviest first. */
function byEvidence(parts: readonly Body[]): readonly (readonly [words: string, parts: readonly Body[]])[] {
  const groups = new Map<string, Body[]>();
  for (const part of parts) {
    const by = textOf(part.thing.item, 'by');
    const words = by ? `by ${by}` : isListed(part.thing.item) ? 'from a list' : 'from a document';
    groups.set(words, [...(groups.get(words) ?? []), part]);
  }
  const kg = (list: readonly Body[]) => list.reduce((sum, { weight }) => sum + (weight.value ?? 0), 0);
  return [...groups].sort(([, a], [, b]) => kg(b) - kg(a));
}

/** What each tolerance adds or takes, with both sums named for what they are. */
function movers({ system }: Context, { thing, body }: LoadResult): readonly Table[] {
  const found = spread(body);
  if (!found) return [];
  const kg = (value: number): Cell => figure(known(value, 'kg'), system);
  const others = found.parts.slice(most);
  const sum = (side: 'up' | 'down') => others.reduce((total, part) => total + part[side], 0);
  const total = (words: string, { up, down }: { readonly up: number; readonly down: number }): Row => ({
    ...row([thing.item.at], words, '', kg(up), kg(down)),
    total: true,
    repeat: true,
  });
  return [
    {
      kind: 'table',
      caption: `${quoted(thing.name)}: parts whose tolerance moves the weight most`,
      columns: [
        { title: 'Part' },
        { title: 'Weight', figures: true },
        { title: 'Heavier by up to', figures: true },
        { title: 'Lighter by up to', figures: true },
      ],
      rows: [
        ...found.parts.slice(0, most).map((part) => ({
          ...row(
            [part.body.thing.item.at],
            part.body.thing.name,
            kg(part.body.weight.value as number),
            kg(part.up),
            kg(part.down),
          ),
          repeat: true as const,
        })),
        ...(others.length ? [row([], `${others.length} more`, '', kg(sum('up')), kg(sum('down')))] : []),
        total('All at the same end at once (worst case)', found.worst),
        total('Root-sum-square (if they err independently; nothing is judged by it)', found.likely),
      ],
    },
  ];
}
