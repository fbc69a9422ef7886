// The load path as call hierarchy (what carries and what is carried), and `like` as type hierarchy.
import { type CallHierarchyItem, type Range, SymbolKind, type TypeHierarchyItem } from 'vscode-languageserver';
import { type Carrier, carriedBy, carrierAt, carries, type Link, likeOf, takenBy } from '../../editor/hierarchy.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { locationOf, spotIn } from '../convert.ts';
import type { Session } from '../session.ts';

/** Finds a thing again: the plan asked in, and what the plan calls it. */
interface Origin {
  readonly plan: string;
  readonly id: string;
}

export function answerHierarchy(session: Session): void {
  const { callHierarchy, typeHierarchy } = session.connection.languages;
  const item = (
    snapshot: Snapshot,
    { name, keyword, detail, at, id }: Carrier,
  ): (CallHierarchyItem & TypeHierarchyItem)[] => {
    const found = locationOf(snapshot, at, (file) => session.addresses.spelled(file));
    if (!found) return [];
    return [
      {
        name,
        kind: SymbolKind.Object,
        detail: [keyword, detail].filter(Boolean).join(' · '),
        uri: found.uri,
        range: found.range,
        selectionRange: found.range,
        data: { plan: session.addresses.spelled(snapshot.file), id } satisfies Origin,
      },
    ];
  };
  const at = session.answerAt<
    { textDocument: { uri: string }; position: { line: number; character: number } },
    (CallHierarchyItem & TypeHierarchyItem)[] | null
  >('the load path', null, (snapshot, { position }) => {
    const { row, offset } = spotIn(snapshot.tree, position);
    const found = carrierAt(snapshot, row, offset);
    return found && item(snapshot, found);
  });
  /** What stands next to an item, each with the places that say so. */
  const beside = <R>(
    look: (s: Snapshot, id: string) => readonly Link[],
    form: (to: CallHierarchyItem, places: Range[]) => R,
  ) =>
    session.answer<{ readonly item: CallHierarchyItem }, R[]>('the load path', [], ({ item: { data } }) => {
      const { plan, id } = data as Origin;
      const snapshot = session.snapshot(plan);
      if (!snapshot) return [];
      const ranges = ({ places }: Link) =>
        places.flatMap((place) => locationOf(snapshot, place, (file) => file)?.range ?? []);
      return look(snapshot, id).flatMap((link) => item(snapshot, link.carrier).map((to) => form(to, ranges(link))));
    });
  const along = (look: (s: Snapshot, id: string) => readonly Carrier[]) =>
    session.answer<{ readonly item: TypeHierarchyItem }, TypeHierarchyItem[]>('like', [], ({ item: { data } }) => {
      const { plan, id } = data as Origin;
      const snapshot = session.snapshot(plan);
      return snapshot ? look(snapshot, id).flatMap((one) => item(snapshot, one)) : [];
    });
  callHierarchy.onPrepare(at);
  callHierarchy.onOutgoingCalls(beside(carries, (to, fromRanges) => ({ to, fromRanges })));
  callHierarchy.onIncomingCalls(beside(carriedBy, (from, fromRanges) => ({ from, fromRanges })));
  typeHierarchy.onPrepare(at);
  typeHierarchy.onSupertypes(along(likeOf));
  typeHierarchy.onSubtypes(along(takenBy));
}
