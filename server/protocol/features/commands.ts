// The command for editors without a sheet of their own: the sheet is put down as a page, and shown or named.
import { openSheet } from '../capabilities.ts';
import type { Session } from '../session.ts';
import { exported } from '../sheets.ts';

/** Its argument is the address of a document; it answers with the address of the page, or null. */
export function answerCommands(session: Session): void {
  const { connection, announced } = session;
  connection.onExecuteCommand(async ({ command, arguments: [uri] = [] }): Promise<string | null> => {
    if (command !== openSheet || typeof uri !== 'string') return null;
    try {
      const snapshot = session.snapshot(uri);
      if (!snapshot) return null;
      const { name, text } = exported(snapshot, 'html', session.desk);
      const page = await session.host.put(name, text);
      if (page === null) return null;
      const shown =
        announced.showDocument && (await connection.window.showDocument({ uri: page, external: true })).success;
      if (!shown)
        void connection.sendNotification('window/showMessage', {
          type: 3,
          message: `The sheet is written to ${decodeURIComponent(page.replace('file://', ''))}`,
        });
      return page;
    } catch (error) {
      session.log('opening the sheet', error);
      return null;
    }
  });
}
