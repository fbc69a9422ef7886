// The sheet as the page last got it, whole: what the server need not send again, and what a page that was reloaded gets.
import type { SheetAnswer, SheetSection } from '../../server/protocol/messages.ts';

export class ShownSheet {
  readonly uri: string;
  private last: SheetAnswer | undefined;
  private sections = new Map<string, SheetSection>();

  constructor(uri: string) {
    this.uri = uri;
  }

  /** The version of the text that the sheet is of; undefined before the first answer. */
  get version(): number | undefined {
    return this.last?.version;
  }

  /** The whole sheet as one answer; undefined before the first. */
  get answer(): SheetAnswer | undefined {
    return this.last && { ...this.last, sections: [...this.sections.values()] };
  }

  /** The hash of each section held. */
  known(): Record<string, string> {
    return Object.fromEntries([...this.sections.values()].map(({ id, hash }) => [id, hash]));
  }

  /** Lays a new answer over what is held; sections no longer in its order are dropped. */
  take(answer: SheetAnswer): void {
    for (const section of answer.sections) this.sections.set(section.id, section);
    const held = answer.order.map((id) => this.sections.get(id)).filter((section) => section !== undefined);
    this.sections = new Map(held.map((section) => [section.id, section]));
    this.last = answer;
  }
}
