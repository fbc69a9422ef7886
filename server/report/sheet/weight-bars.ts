// The weight build-up as a picture: one bar a part, each beginning where the one above ends, up to the weight that governs.
import { type Derived, known } from '../../quantities/index.ts';
import { type Body, type LoadResult, leavesOf } from '../../results/index.ts';
import type { Context } from './context.ts';
import { figureText } from './figures.ts';
import type { Bar, Bars } from './types.ts';
import { quoted } from './written.ts';

/** More bars than this are hard to read: the lightest ones then share one. */
const most = 24;

/** The picture, or none while a part or the governing weight is not known: a bar never stands for an unknown. */
export function buildUpBars({ system, snapshot }: Context, load: LoadResult): readonly Bars[] {
  const parts = leavesOf(load.body).filter(({ working }) => working);
  const total = load.weight.value;
  const sum = load.body.weight.value;
  if (total === null || sum === null || sum <= 0 || total <= 0 || parts.length < 2) return [];
  const scale = Math.max(total, sum);
  const text = (weight: Derived) => figureText(weight, system, 'up');
  const pieces = [...gathered(parts, text), ...rest(load, total, sum, text)];
  const name = quoted(load.thing.name);
  return [
    {
      kind: 'bars',
      id: `bars-${snapshot.results.loads.indexOf(load) + 1}`,
      title: `${name}: share of each part in the weight`,
      description: pieces.map(({ label, figure }) => `${label} ${figure}`).join('; '),
      bars: stacked(pieces, scale),
      mark: { label: `governs: ${text(load.weight)}`, at: total / scale },
    },
  ];
}

interface Piece {
  readonly label: string;
  readonly figure: string;
  readonly weight: number;
  readonly look: Bar['look'];
  readonly at: Bar['at'];
}

function stacked(pieces: readonly Piece[], scale: number): readonly Bar[] {
  let from = 0;
  return pieces.map(({ label, figure, weight, look, at }) => {
    const bar: Bar = { label, text: figure, from: from / scale, to: (from + weight) / scale, look, at };
    from += weight;
    return bar;
  });
}

/** The parts in the order of the text; where there are too many, the lightest become one. */
function gathered(parts: readonly Body[], text: (weight: Derived) => string): readonly Piece[] {
  const piece = ({ thing, weight }: Body): Piece => ({
    label: thing.name,
    figure: text(weight),
    weight: weight.value ?? 0,
    look: 'part',
    at: [thing.item.at],
  });
  if (parts.length <= most) return parts.map(piece);
  const heavy = new Set([...parts].sort((a, b) => (b.weight.value ?? 0) - (a.weight.value ?? 0)).slice(0, most - 1));
  const light = parts.filter((part) => !heavy.has(part));
  const weight = light.reduce((sum, part) => sum + (part.weight.value ?? 0), 0);
  const others: Piece = {
    label: `${light.length} lighter parts`,
    figure: text(known(weight, 'kg')),
    weight,
    look: 'part',
    at: [],
  };
  return [...parts.filter((part) => heavy.has(part)).map(piece), others];
}

/** What lies between the parts' sum and the weight that governs: weight in no part, then what is added for doubt. */
function rest(
  { governing, thing }: LoadResult,
  total: number,
  sum: number,
  text: (weight: Derived) => string,
): readonly Piece[] {
  if (!governing || governing.weight.value === null) return [];
  const piece = (label: string, weight: number): readonly Piece[] =>
    weight > 0 ? [{ label, figure: text(known(weight, 'kg')), weight, look: 'added', at: [thing.item.at] }] : [];
  const bare = Math.max(governing.weight.value, sum);
  return [
    ...piece(`In the ${governing.kind} weight, in no part`, bare - sum),
    ...piece('Added for doubt', total - bare),
  ];
}
