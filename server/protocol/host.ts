// What the server needs of the place it runs in: files, pages, and a way to come back to work a moment later.
import type { ExplainAnswer } from './messages.ts';

export interface Host {
  /** Text of a file; null where there is none, undefined while it is being fetched: then `arrived` is told. */
  read(uri: string): string | null | undefined;
  /** What stands in a file of any kind; answers and comes in later as `read` does. */
  bytes(uri: string): Uint8Array | null | undefined;
  /** Lets go of what was fetched of a file, because the file may have changed. */
  forget(uri: string): void;
  /** Hears of every file that has come in after `read` or `bytes` had to answer undefined. */
  arrived(listener: (uri: string) => void): void;
  /** The address behind links, so that a file reached in two ways is one file. */
  real(uri: string): string;
  /** Every file below a folder but in hidden folders and installed packages: at most `most` plans and libraries, and as many others. */
  list(folder: string, most: number): Promise<readonly string[]>;
  /** The pages that explain the findings, by slug; `from` is where the client says they lie. */
  pages(from: string | undefined): Promise<Readonly<Record<string, ExplainAnswer>>>;
  /** Puts a page where a browser can open it; its address, or null where there is no such place. */
  put(name: string, text: string): Promise<string | null>;
  /** Runs something after the messages that have come in already. */
  soon(deed: () => void): void;
}
