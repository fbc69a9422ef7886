// What can be opened from the text: files of `use` lines, documents that a text names by path, and web addresses. Nothing is fetched here.
import type { Place } from '../syntax/types.ts';
import type { Snapshot } from '../workspace/types.ts';
import { allItems, ownFile } from './items.ts';

export interface Link {
  /** The path or address, without its quotes. */
  readonly at: Place;
  /** A file as the workspace names it; a path as seen from this file; or an address on the web. */
  readonly to: { readonly file: string } | { readonly path: string } | { readonly address: string };
}

const address = /^https?:\/\/[^\s"<>]+$/;
const document =
  /^(?![A-Za-z]+:)[^\s":*?<>|]+\.(?:liftplan|md|html|pdf|txt|csv|json|svg|png|jpe?g|xlsx?|docx?|dwg|dxf|stl|obj)$/;

export function links(s: Snapshot): readonly Link[] {
  const file = ownFile(s);
  if (!file) return [];
  const uses = file.uses.flatMap(({ at, file: to }): readonly Link[] =>
    to ? [{ at: inner(at), to: { file: to } }] : [],
  );
  const texts = allItems(file.items)
    .filter(({ keyword }) => keyword !== 'use')
    .flatMap((item) => [...(item.value ? [item.value] : []), ...[...item.clauses.values()].flat()]);
  const papers = allItems(file.items).flatMap((item): readonly Link[] => {
    const cited = s.plan.cited.get(item);
    return cited?.at && cited.file !== null && cited.paper ? [{ at: cited.at, to: { file: cited.file } }] : [];
  });
  return [
    ...uses,
    ...papers,
    ...texts.flatMap(({ value, valueAt, keyword }): readonly Link[] => {
      if (value?.kind !== 'text' || keyword === 'from' || valueAt.to - valueAt.from < 3) return []; // papers cited stand above
      if (address.test(value.text)) return [{ at: inner(valueAt), to: { address: value.text } }];
      return document.test(value.text) ? [{ at: inner(valueAt), to: { path: value.text } }] : [];
    }),
  ];
}

/** A text without its quotes. */
function inner({ row, from, to }: Place): Place {
  const quoted = /^["“”„]/.test(row.text.slice(from, to));
  return quoted ? { row, from: from + 1, to: to - 1 } : { row, from, to };
}
