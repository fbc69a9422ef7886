// Below the build-up of a load: what its parts rest on, and which of them can move the weight most.
import { isListed, textOf } from '../../plan/index.ts';
import { known, share } from '../../quantities/index.ts';
import { spread } from '../../results/index.ts';
import type { Body, LoadResult } from '../../results/types.ts';
import type { Context } from './context.ts';
import { figure, row } from './figures.ts';
import type { Cell, Row, Table } from './types.ts';
import { quoted } from './written.ts';

/** Parts that move the weight most, as many as a checker can go after. */
const most = 5;

/** Neither table where a part is not known; the second only where a part has a tolerance. */
export const doubt = (context: Context, load: LoadResult): readonly Table[] => [
  ...restsOn(context, load),
  ...movers(context, load),
];

/** The weight of all parts by what they rest on: one word more and it is no longer worked out but said. */
function restsOn({ system }: Context, { thing, body }: LoadResult): readonly Table[] {
  const whole = body.weight.value;
  if (whole === null || whole <= 0) return [];
  const sums = new Map<string, { kg: number; at: Row['at'][number][] }>();
  for (const part of leaves(body)) {
    const words = evidenceOf(part);
    const { kg, at } = sums.get(words) ?? { kg: 0, at: [] };
    sums.set(words, { kg: kg + (part.weight.value as number), at: [...at, part.thing.item.at] });
  }
  if (sums.size < 2) return [];
  return [
    {
      kind: 'table',
      caption: `${quoted(thing.name)}: what its parts rest on`,
      columns: [
        { title: 'Rests on' },
        { title: 'Weight', figures: true },
        { title: 'Share of all parts', figures: true },
      ],
      rows: [...sums]
        .sort(([, a], [, b]) => b.kg - a.kg)
        .map(([words, { kg, at }]) => ({
          ...row(at, words, figure(known(kg, 'kg'), system), share(kg / whole)),
          repeat: true,
        })),
    },
  ];
}

function evidenceOf({ thing: { item }, working }: Body): string {
  const by = textOf(item, 'by');
  if (isListed(item)) return 'rows of a list';
  if (by) return `stated by ${by}`;
  return working?.shape === 'item' ? 'stated, by nothing named' : 'worked out from shape and material';
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

const leaves = (body: Body): readonly Body[] => (body.bodies.length ? body.bodies.flatMap(leaves) : [body]);
