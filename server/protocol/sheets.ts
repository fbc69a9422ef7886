// The sheet of a document over our own messages: whole, by sections that changed, as a file, tied to lines of the text; and what differs from an earlier text.

import { idOf, marksAt as idsAt, placeOf as placeOfId } from '../editor/marks.ts';
import { grossLoad } from '../editor/status.ts';
import {
  comparedDocument,
  comparedPlan,
  folderOf,
  json,
  lines,
  markdown,
  type PathOf,
  page,
  report,
  type Sheet,
  sectionsHtml,
  sheetOf,
  standing,
  standingWords,
} from '../report/index.ts';
import type { Counts, Snapshot } from '../workspace/index.ts';
import type { Addresses } from './addresses.ts';
import { locationOf } from './convert.ts';
import type { ExportSheetAnswer, Location, Position, SheetAnswer, SheetFormat, StatusParams } from './messages.ts';

/** What sheets need beside the snapshot: how files are called, and who takes a library in. */
export interface SheetDesk {
  readonly addresses: Addresses;
  readonly plansWith: (file: string) => readonly string[];
}

/** The sheet, less the sections the asker has already. */
export function sheetAnswer(snapshot: Snapshot, known: Readonly<Record<string, string>>, desk: SheetDesk): SheetAnswer {
  const sheet = sheetFor(snapshot, desk);
  const sections = sectionsHtml(sheet, (place) => idOf(snapshot, place));
  return {
    uri: desk.addresses.spelled(snapshot.file),
    version: snapshot.version,
    title: sheet.title,
    order: sections.map(({ id }) => id),
    sections: sections.filter(({ id, hash }) => known[id] !== hash).map(({ id, hash, html }) => ({ id, hash, html })),
    ofLibrary: sheet.ofLibrary,
  };
}

function sheetFor(snapshot: Snapshot, { addresses, plansWith }: SheetDesk): Sheet {
  const pathOf = (file: string): string => addresses.path(folderOf(snapshot.file), file);
  return sheetOf(snapshot, { pathOf, usedBy: snapshot.plan.head ? [] : plansWith(snapshot.file).map(pathOf) });
}

/** The whole sheet as one file. A library has no figures of its own: as JSON it is an empty list. */
export function exported(snapshot: Snapshot, format: SheetFormat, desk: SheetDesk): ExportSheetAnswer {
  const from = desk.addresses.path(folderOf(snapshot.file), snapshot.file);
  const name = from.replace(/^.*\//, '').replace(/\.liftplan$/, '') || 'sheet';
  const paper = snapshot.plan.units === 'US' ? 'Letter' : 'A4';
  switch (format) {
    case 'html':
      return { name: `${name}.html`, text: page(sheetFor(snapshot, desk), paper, from) };
    case 'markdown':
      return { name: `${name}.md`, text: markdown(sheetFor(snapshot, desk), from) };
    case 'json':
      return {
        name: `${name}.json`,
        text: json(report(snapshot, (file) => desk.addresses.path(folderOf(snapshot.file), file)) ?? []),
      };
    case 'lines':
      return { name: `${name}.txt`, text: lines(snapshot) };
  }
}

/** What differs between an earlier text and the open one, under what they are. No comment on a forge: nothing is left out. */
export function compared(now: Snapshot, old: Snapshot, name: string, { addresses }: SheetDesk): string {
  const pathOf: PathOf = (plan, file) => addresses.path(folderOf(plan.file), file);
  const path = `Before: ${name}. Now: the open text. Files that it uses count as they are now, for both.`;
  const plan = comparedPlan({ path, old, now }, pathOf, new Set());
  const text = comparedDocument([plan]);
  return plan.same ? `${text}\n${path}\n` : text;
}

/** The names of the statements at a position, innermost first. */
export const marksAt = (snapshot: Snapshot, { line }: Position): readonly string[] => idsAt(snapshot, line);

/** Where the statement of that name stands, in the plan or in what it takes in. */
export function placeOf(snapshot: Snapshot, id: string, { addresses }: SheetDesk): Location | null {
  const place = placeOfId(snapshot, id);
  return place && locationOf(snapshot, place, (file) => addresses.spelled(file));
}

/** What the status item shows of a document. */
export function statusOf(snapshot: Snapshot, { checked, total }: Counts, addresses: Addresses): StatusParams {
  return {
    uri: addresses.spelled(snapshot.file),
    version: snapshot.version,
    standing: snapshot.setAside ? 'set aside' : standingWords(standing(snapshot)),
    grossLoad: grossLoad(snapshot),
    plansChecked: checked,
    plansTotal: total,
  };
}
