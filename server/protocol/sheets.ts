// The sheet of a document over our own messages: whole, by sections that changed, as a file, and tied to lines of the text.
import { sectionsHtml, sheetOf, standing, standingWords, json, lines, markdown, page, report, folderOf, type Sheet } from '../report/index.ts';
import { write } from '../quantities/index.ts';
import type { Counts, Snapshot } from '../workspace/index.ts';
import type { Addresses } from './addresses.ts';
import { nodesAt, locationOf } from './convert.ts';
import type { Identities } from './identities.ts';
import type { ExportSheetAnswer, Location, Position, SheetAnswer, SheetFormat, StatusParams } from './messages.ts';

/** Who asks for sheets: how files are called, and by which names lines go. */
export interface SheetDesk {
  readonly addresses: Addresses;
  readonly identities: Identities;
  readonly plansWith: (file: string) => readonly string[];
}

/** The sheet, less the sections the asker has already. */
export function sheetAnswer(snapshot: Snapshot, known: Readonly<Record<string, string>>, desk: SheetDesk): SheetAnswer {
  const sheet = sheetFor(snapshot, desk);
  const sections = sectionsHtml(sheet, desk.identities.at);
  return {
    uri: desk.addresses.spelled(snapshot.file),
    version: snapshot.version,
    title: sheet.title,
    order: sections.map(({ id }) => id),
    sections: sections.filter(({ id, hash }) => known[id] !== hash).map(({ id, hash, html }) => ({ id, hash, html })),
    library: sheet.library,
  };
}

function sheetFor(snapshot: Snapshot, { addresses, plansWith }: SheetDesk): Sheet {
  const pathOf = (file: string): string => addresses.path(folderOf(snapshot.file), file);
  return sheetOf(snapshot, { pathOf, usedBy: snapshot.plan.head ? [] : plansWith(snapshot.file).map(pathOf) });
}

/** The whole sheet as one file. A library has no figures of its own: as JSON it is an empty list. */
export function exported(snapshot: Snapshot, format: SheetFormat, desk: SheetDesk): ExportSheetAnswer {
  const name = desk.addresses.path(folderOf(snapshot.file), snapshot.file).replace(/^.*\//, '').replace(/\.liftplan$/, '') || 'sheet';
  const paper = snapshot.plan.units === 'US' ? 'Letter' : 'A4';
  switch (format) {
    case 'html': return { name: `${name}.html`, text: page(sheetFor(snapshot, desk), paper) };
    case 'markdown': return { name: `${name}.md`, text: markdown(sheetFor(snapshot, desk), desk.addresses.path(folderOf(snapshot.file), snapshot.file)) };
    case 'json': return { name: `${name}.json`, text: json(report(snapshot, (file) => desk.addresses.path(folderOf(snapshot.file), file)) ?? []) };
    case 'lines': return { name: `${name}.txt`, text: lines(snapshot) };
  }
}

/** The names of the lines at a position, innermost statement first. */
export function marksAt({ tree }: Snapshot, { line }: Position, { identities }: SheetDesk): readonly string[] {
  return nodesAt(tree, line).map(({ row }) => identities.of(row));
}

/** Where the line of that name stands, in the plan or in what it takes in. */
export function placeOf(snapshot: Snapshot, id: string, { identities, addresses }: SheetDesk): Location | null {
  for (const { tree } of snapshot.plan.files) {
    const row = tree.rows.find((one) => identities.of(one) === id);
    if (row) return locationOf(snapshot, { row, from: row.text.length - row.text.trimStart().length, to: row.text.trimEnd().length }, (file) => addresses.spelled(file));
  }
  return null;
}

/** What the status item shows of a document. */
export function statusOf(snapshot: Snapshot, { checked, total }: Counts, addresses: Addresses): StatusParams {
  const { plan, results, setAside } = snapshot;
  const gross = results.totals.gross.high ?? results.totals.gross.value;
  return {
    uri: addresses.spelled(snapshot.file),
    version: snapshot.version,
    standing: setAside ? 'set aside' : standingWords(standing(snapshot)),
    grossLoad: plan.head && gross !== null ? write(gross, 'kg', { system: plan.units, round: 'up', plain: false }) : null,
    plansChecked: checked,
    plansTotal: total,
  };
}
