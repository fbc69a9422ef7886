// Answers to our own messages: the sheet, the pages that explain findings, what differs from an earlier text, and whether anything is pending.
import {
  COMPARE,
  type CompareAnswer,
  type CompareParams,
  EXPLAIN,
  EXPORT_SHEET,
  type ExplainAnswer,
  type ExplainParams,
  type ExportSheetAnswer,
  type ExportSheetParams,
  IDLE,
  type IdleAnswer,
  type Location,
  MARKS_AT,
  type MarksAtAnswer,
  type MarksAtParams,
  PLACE_OF,
  type PlaceOfParams,
  SHEET,
  type SheetAnswer,
  type SheetParams,
} from './messages.ts';
import type { Session } from './session.ts';
import { compared, exported, marksAt, placeOf, sheetAnswer } from './sheets.ts';

/** `pages` is where the client says the pages lie. */
export function answerOwnMessages(session: Session, pages: string | undefined): void {
  const { connection, desk } = session;
  connection.onRequest(
    SHEET,
    session.answer<SheetParams, SheetAnswer | null>('the sheet', null, ({ uri, known }) => {
      const snapshot = session.snapshot(uri);
      if (!snapshot) return null;
      session.sheetAsked(snapshot);
      return sheetAnswer(snapshot, known ?? {}, desk);
    }),
  );
  connection.onRequest(
    MARKS_AT,
    session.answer<MarksAtParams, MarksAtAnswer>('marks', { ids: [] }, ({ uri, position }) => {
      const snapshot = session.snapshot(uri);
      return { ids: snapshot ? [...marksAt(snapshot, position)] : [] };
    }),
  );
  connection.onRequest(
    PLACE_OF,
    session.answer<PlaceOfParams, Location | null>('a place', null, ({ uri, id }) => {
      const snapshot = session.snapshot(uri);
      return snapshot && placeOf(snapshot, id, desk);
    }),
  );
  connection.onRequest(
    EXPORT_SHEET,
    session.answer<ExportSheetParams, ExportSheetAnswer | null>('exporting', null, ({ uri, format }) => {
      const snapshot = session.snapshot(uri);
      return snapshot && exported(snapshot, format, desk);
    }),
  );
  connection.onRequest(
    COMPARE,
    session.answer<CompareParams, CompareAnswer | null>('comparing', null, ({ uri, text, name }) => {
      const snapshot = session.snapshot(uri);
      const old = snapshot && session.workspace.imagined(snapshot.file, text);
      return snapshot && old && { markdown: compared(snapshot, old, name, desk) };
    }),
  );
  connection.onRequest(EXPLAIN, async ({ slug }: ExplainParams): Promise<ExplainAnswer | null> => {
    try {
      const all = await session.host.pages(pages);
      return Object.hasOwn(all, slug) ? (all[slug] ?? null) : null;
    } catch (error) {
      session.log('the pages', error);
      return null;
    }
  });
  connection.onRequest(IDLE, async (): Promise<IdleAnswer> => {
    await session.tasks.idle();
    const { workspace, addresses } = session;
    return {
      versions: Object.fromEntries(
        workspace.openFiles.map((file) => [addresses.spelled(file), workspace.versionOf(file)]),
      ),
    };
  });
}
