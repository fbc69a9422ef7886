// What is read beside the text: hovers, hints, the outline, folds, growing selections, colours and links.
import {
  type DocumentLink,
  type DocumentSymbol,
  type FoldingRange,
  FoldingRangeKind,
  type Hover,
  type InlayHint,
  type SelectionRange,
  type SymbolInformation,
  SymbolKind,
} from 'vscode-languageserver';
import { type Fold, folding } from '../../editor/folding.ts';
import { hints } from '../../editor/hints.ts';
import { hover } from '../../editor/hover.ts';
import { type Link, links } from '../../editor/links.ts';
import { outline } from '../../editor/outline.ts';
import { selection } from '../../editor/selection.ts';
import type { Symbol as Statement } from '../../editor/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { locationOf, rangeIn, rangeOfStretch, spotIn } from '../convert.ts';
import type { Session } from '../session.ts';

export function answerReading(session: Session): void {
  const { connection, announced } = session;
  connection.onHover(
    session.answerAt('hover', null, (snapshot, { position }) =>
      hoverAt(snapshot, spotIn(snapshot.tree, position), announced.markdown),
    ),
  );
  if (announced.hints)
    connection.languages.inlayHint.on(
      session.answerAt('hints', [], (snapshot, { range }) =>
        hintsIn(session, snapshot, range.start.line, range.end.line),
      ),
    );
  connection.onDocumentSymbol(
    session.answerAt<{ readonly textDocument: { readonly uri: string } }, DocumentSymbol[] | SymbolInformation[]>(
      'the outline',
      [],
      (snapshot, { textDocument: { uri } }) =>
        announced.symbolTree
          ? outline(snapshot).map((one) => symbolOf(one, snapshot))
          : flat(outline(snapshot), snapshot, uri, ''),
    ),
  );
  connection.onFoldingRanges(session.answerAt('folding', [], (snapshot) => folding(snapshot).map(foldOf)));
  connection.onSelectionRanges(
    session.answerAt('selections', [], (snapshot, { positions }) =>
      positions.map((position) => selectionAt(snapshot, spotIn(snapshot.tree, position))),
    ),
  );
  connection.onDocumentLinks(
    session.answerAt('links', [], (snapshot) => links(snapshot).flatMap((link) => linkOf(session, snapshot, link))),
  );
}

interface At {
  readonly row: number;
  readonly offset: number;
}

function hoverAt(snapshot: Snapshot, { row, offset }: At, markdown: boolean): Hover | null {
  const found = hover(snapshot, row, offset);
  return (
    found && {
      contents: markdown ? { kind: 'markdown', value: found.markdown } : { kind: 'plaintext', value: found.plain },
      range: rangeIn(snapshot.tree, found.at),
    }
  );
}

/** None on the line that is being written on: there they come after a pause. */
function hintsIn(session: Session, snapshot: Snapshot, first: number, last: number): InlayHint[] {
  const busy = session.lineWrittenOn(snapshot.file);
  return hints(snapshot, first, last, session.settingsOf(snapshot.file).hints)
    .filter(({ at }) => at.row !== busy)
    .map(({ at, label, tooltip, leadsTo }) => {
      const location = leadsTo && locationOf(snapshot, leadsTo, (file) => session.addresses.spelled(file));
      return {
        position: rangeIn(snapshot.tree, at).end,
        label: location ? [{ value: label, location }] : label,
        tooltip,
        paddingLeft: true,
      };
    });
}

const kinds: Readonly<Record<string, SymbolKind>> = {
  plan: SymbolKind.File,
  load: SymbolKind.Package,
  assembly: SymbolKind.Module,
  part: SymbolKind.Object,
  pick: SymbolKind.Event,
  rig: SymbolKind.Struct,
  leg: SymbolKind.Field,
  crane: SymbolKind.Class,
  position: SymbolKind.Method,
  let: SymbolKind.Constant,
  use: SymbolKind.Namespace,
  expect: SymbolKind.Boolean,
  rules: SymbolKind.Interface,
};

/** An editor may need a name for every line of its outline. */
const titled = ({ name, keyword }: Statement): string => name || keyword;

function symbolOf(one: Statement, snapshot: Snapshot): DocumentSymbol {
  return {
    name: titled(one),
    detail: one.detail,
    kind: kinds[one.keyword] ?? SymbolKind.Property,
    range: rangeOfStretch(one.whole),
    selectionRange: rangeIn(snapshot.tree, one.at),
    children: one.children.map((child) => symbolOf(child, snapshot)),
  };
}

const flat = (all: readonly Statement[], snapshot: Snapshot, uri: string, within: string): SymbolInformation[] =>
  all.flatMap((one) => [
    {
      name: titled(one),
      kind: kinds[one.keyword] ?? SymbolKind.Property,
      location: { uri, range: rangeOfStretch(one.whole) },
      ...(within && { containerName: within }),
    },
    ...flat(one.children, snapshot, uri, titled(one)),
  ]);

const foldKinds: Readonly<Record<Fold['kind'], FoldingRangeKind | undefined>> = {
  block: undefined,
  imports: FoldingRangeKind.Imports,
  comment: FoldingRangeKind.Comment,
  region: FoldingRangeKind.Region,
};

function foldOf({ first, last, kind }: Fold): FoldingRange {
  const named = foldKinds[kind];
  return { startLine: first, endLine: last, ...(named && { kind: named }) };
}

function selectionAt(snapshot: Snapshot, { row, offset }: At): SelectionRange {
  const around = selection(snapshot, row, offset).map(rangeOfStretch);
  const here = { range: { start: { line: row, character: offset }, end: { line: row, character: offset } } };
  return (
    around.reduceRight<SelectionRange | undefined>(
      (parent, range) => ({ range, ...(parent && { parent }) }),
      undefined,
    ) ?? here
  );
}

function linkOf(session: Session, snapshot: Snapshot, { at, to }: Link): DocumentLink[] {
  const range = rangeIn(snapshot.tree, at);
  if ('file' in to) return [{ range, target: session.addresses.spelled(to.file) }];
  if ('address' in to) return [{ range, target: to.address }];
  const found = session.addresses.resolve(snapshot.file, to.path);
  return 'file' in found ? [{ range, target: found.file }] : [];
}
