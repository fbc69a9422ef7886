// Sizes, classes, forms and schedules of bought-in pipework and bolting, each with what one weighs as far as the rest is written.
import {
  boltSizes,
  fittingDesignations,
  flangeClasses,
  flangeDesignations,
  pipeSchedules,
  reducerDesignations,
} from '../../catalog/index.ts';
import { write } from '../../quantities/index.ts';
import { type PipeworkName, pipeworkOf, sizesWritten, weigh, writtenOf } from '../../results/index.ts';
import { type ShapeRow, shapes } from '../../vocabulary/index.ts';
import { itemHere } from './names.ts';
import type { Asked } from './types.ts';

/** Something to write, and what the part then weighs; no weight where more must be known. */
export interface Choice {
  readonly text: string;
  readonly detail: string;
}

const lists: Readonly<Record<PipeworkName, () => readonly string[]>> = {
  flange: flangeDesignations,
  nozzle: flangeDesignations,
  manway: flangeDesignations,
  'bolt set': flangeDesignations,
  'pipe elbow': fittingDesignations,
  'pipe tee': fittingDesignations,
  'pipe cap': fittingDesignations,
  'pipe reducer': reducerDesignations,
  bolt: () => boltSizes().map(({ designation }) => designation),
  nut: () => boltSizes().map(({ designation }) => designation),
  washer: () => boltSizes().map(({ designation }) => designation),
};

/** The sizes of the part whose keyword the place is behind; none where that is no part of pipework. */
export function pipeworkSizes(asked: Asked): readonly Choice[] {
  const { clause } = asked.slot;
  const list = clause !== null && clause in lists ? lists[clause as PipeworkName] : null;
  return list ? choices(asked, clause as PipeworkName, list(), 'designation') : [];
}

/** Classes and schedules of the part on this line; null where they are not those of pipework. */
export function pipeworkLabels(asked: Asked): readonly Choice[] | null {
  const { clause } = asked.slot;
  const item = itemHere(asked);
  const name = item && pipeworkOf(item);
  if (!item || !name || (clause !== 'class' && clause !== 'schedule')) return null;
  const size = writtenOf(item, name).designation ?? '';
  const base = size.replace(/\s*[x×].*$/i, '');
  return choices(asked, name, clause === 'class' ? flangeClasses(base) : pipeSchedules(base), clause);
}

/** The forms that the shape on this line may have; null where it is not known, or has no such clause. */
export function formsHere(asked: Asked): readonly Choice[] | null {
  const { clause } = asked.slot;
  const item = itemHere(asked);
  const shape = item && Object.keys(shapes).find((name) => item.clauses.has(name));
  const words =
    shape && clause !== null && (shapes as Readonly<Record<string, ShapeRow>>)[shape]?.clauses[clause]?.words;
  if (!item || !words) return null;
  const name = pipeworkOf(item);
  return name && clause === 'form' ? choices(asked, name, words, 'form') : words.map((text) => ({ text, detail: '' }));
}

function choices(
  asked: Asked,
  name: PipeworkName,
  texts: readonly string[],
  word: 'designation' | 'class' | 'schedule' | 'form',
): readonly Choice[] {
  const item = itemHere(asked);
  const { units: system } = asked.s.plan;
  if (!item) return texts.map((text) => ({ text, detail: '' }));
  const written = writtenOf(item, name);
  const sizes = sizesWritten(item);
  return texts.map((text) => {
    const other =
      word === 'designation'
        ? { ...written, designation: text, diameter: null }
        : { ...written, words: { ...written.words, [word]: text } };
    const mass = weigh(name, other, sizes)?.mass;
    return { text, detail: mass === undefined ? '' : write(mass, 'kg', { system, round: 'up' }) };
  });
}
