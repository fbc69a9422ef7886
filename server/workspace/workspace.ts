// The only room with memory: open texts, files read, and the snapshot of each file for as long as all it rests on stays the same.
import { language, type Paper, paperOf, type Source } from '../plan/index.ts';
import { readTree, type Tree } from '../syntax/index.ts';
import { aside } from './aside.ts';
import { digest } from './digest.ts';
import { changed, type Document, openDocument, type Replaced } from './document.ts';
import { snapshotOf } from './snapshot.ts';
import { missesFile } from './survey.ts';
import type { Files, Snapshot, TextChange } from './types.ts';
import { treeOf, UnreadTree } from './unread.ts';

/** A snapshot with what it read: it holds while every file still has the same tree. */
interface Kept {
  readonly snapshot: Snapshot;
  readonly read: ReadonlyMap<string, Tree | null>;
  /** Drawings and lists, as they were. */
  readonly attached: ReadonlyMap<string, Uint8Array | null>;
  /** Papers, as they were. */
  readonly cited: ReadonlyMap<string, Paper | null>;
}

/** The same while it is being read. */
interface Noted {
  readonly read: Map<string, Tree | null>;
  readonly attached: Map<string, Uint8Array | null>;
  readonly cited: Map<string, Paper | null>;
}
const nothingNoted = (): Noted => ({ read: new Map(), attached: new Map(), cited: new Map() });

/** So many closed files keep their trees beside those that open ones take in. */
const mostClosed = 64;

export class Workspace {
  private readonly files: Files;
  private readonly failed: (file: string, error: unknown) => void;
  private readonly open = new Map<string, Document>();
  private readonly closed = new Map<string, Tree | null>(); // null: cannot be read
  private readonly digests = new Map<string, number | null>(); // of every closed file that was read, though its tree is let go
  private readonly attached = new Map<string, Uint8Array | null>();
  private readonly cited = new Map<string, Paper | null>();
  private readonly kept = new Map<string, Kept>();
  private readonly quarantined = new Set<string>();
  private readonly fetching = new Set<string>();

  /** `failed` hears of each file that made the program fail, once for each of its texts. */
  constructor(files: Files, failed: (file: string, error: unknown) => void = () => {}) {
    this.files = files;
    this.failed = failed;
  }

  /** Takes a text from an editor in the place of the file's own. */
  openText(file: string, version: number, text: string): void {
    this.open.set(file, openDocument(file, version, text));
    this.closed.delete(file);
  }

  /** Changes an open text, in the order given; says which rows came new. Nothing for a file that is not open. */
  changeText(file: string, version: number, changes: readonly TextChange[]): readonly Replaced[] {
    this.quarantined.delete(file);
    return changes.flatMap((change) => {
      const document = this.open.get(file);
      if (!document) return [];
      const made = changed(document, version, change);
      this.open.set(file, made.document);
      return [made.replaced];
    });
  }

  /** From now on the file on disk counts again. */
  closeText(file: string): void {
    this.open.delete(file);
    this.quarantined.delete(file);
    this.kept.delete(file);
    this.dropUnused();
  }

  isOpen(file: string): boolean {
    return this.open.has(file);
  }

  /** Version of an open text; 0 for any other file. */
  versionOf(file: string): number {
    return this.open.get(file)?.version ?? 0;
  }

  /** An open text as it stands now; null for a file that is not open. */
  live(file: string): { readonly version: number; readonly tree: Tree } | null {
    return this.open.get(file) ?? null;
  }

  get openFiles(): readonly string[] {
    return [...this.open.keys()];
  }

  /** The next snapshot of that file looks at its spelling only, until its text changes: an earlier run ended over it. */
  setAside(file: string): void {
    this.quarantined.add(file);
  }

  /** Looks at a closed file again; true if it is not what it was, as a text that is used, or as a drawing, list or paper. */
  reread(file: string): boolean {
    const attached = this.attached.has(file) || this.cited.has(file);
    const other = attached && this.rereadContent(file);
    return ((this.closed.has(file) || !attached) && this.rereadText(file)) || other;
  }

  private rereadText(file: string): boolean {
    if (this.open.has(file)) return false;
    const before = this.digests.get(file);
    const text = before === undefined ? undefined : this.files.read(file);
    if (text !== undefined && before === digestOf(text)) return false;
    this.closed.delete(file);
    return true;
  }

  /** Forgets how paths were resolved: folders were opened or closed. */
  forgetPaths(): void {
    this.kept.clear();
  }

  /** Files came or went: whoever misses one is looked at again. */
  forgetMissing(): void {
    for (const [file, { snapshot }] of this.kept) if (missesFile(snapshot.plan)) this.kept.delete(file);
  }

  tree(file: string): Tree | null {
    return this.open.get(file)?.tree ?? this.closedTree(file);
  }

  /** The picture of a file as it stands now; null where it has no text. Never throws. */
  snapshot(file: string): Snapshot | null {
    const known = this.kept.get(file);
    if (known && this.holds(file, known)) return known.snapshot;
    const noted = nothingNoted();
    const snapshot = this.make(file, noted);
    if (snapshot && (this.open.has(file) || this.kept.size < mostClosed)) this.kept.set(file, { snapshot, ...noted });
    else this.kept.delete(file);
    return snapshot;
  }

  /** The picture that a file would give with another text; nothing of it is kept. Throws where the program fails on it. */
  imagined(file: string, text: string): Snapshot {
    const tree = readTree(file, text, language, this.tree(file) ?? undefined);
    return snapshotOf(file, this.versionOf(file), {
      ...this.source(nothingNoted(), file),
      tree: (name) => (name === file ? tree : this.tree(name)),
    });
  }

  /** Whether a snapshot is still what `snapshot` would give. */
  isCurrent(file: string, snapshot: Snapshot): boolean {
    const known = this.kept.get(file);
    return known?.snapshot === snapshot && this.holds(file, known);
  }

  /** Whether a file that is still being fetched could change that file's snapshot. */
  incomplete(file: string): boolean {
    return (
      this.fetching.size > 0 && (this.fetching.has(file) || this.filesOf(file).some((name) => this.fetching.has(name)))
    );
  }

  /** The files that a file takes in, itself among them, as of its last snapshot. */
  filesOf(file: string): readonly string[] {
    const known = this.kept.get(file);
    return known ? [...known.read.keys(), ...known.attached.keys(), ...known.cited.keys()] : [];
  }

  private holds(file: string, { snapshot, read, attached, cited }: Kept): boolean {
    if (snapshot.version !== this.versionOf(file)) return false;
    for (const [name, tree] of read) if (this.tree(name) !== tree) return false;
    for (const [name, bytes] of attached) if (this.bytes(name) !== bytes) return false;
    for (const [name, paper] of cited) if (this.paper(name) !== paper) return false;
    return true;
  }

  private make(file: string, noted: Noted): Snapshot | null {
    const version = this.versionOf(file);
    const source = this.source(noted, file);
    const tree = source.tree(file);
    if (!tree) return null;
    if (this.quarantined.has(file)) return aside(tree, version);
    try {
      if (tree instanceof UnreadTree) throw new Error('The text made the program fail while it was read.');
      return snapshotOf(file, version, source);
    } catch (error) {
      this.failed(file, error);
      return aside(tree, version);
    }
  }

  /** Files for the snapshot of one of them; notes which trees, attached files and papers there were. One that is set aside is taken in unread. */
  private source({ read, attached, cited }: Noted, asked: string): Source {
    return {
      tree: (name) => {
        const tree = this.tree(name);
        read.set(name, tree);
        return tree && name !== asked && this.quarantined.has(name) ? new UnreadTree(name, tree.rows) : tree;
      },
      bytes: (name) => {
        const bytes = this.bytes(name);
        attached.set(name, bytes);
        return bytes;
      },
      paper: (name) => {
        const paper = this.paper(name);
        cited.set(name, paper);
        return paper;
      },
      resolve: (from, path) => this.files.resolve(from, path),
      elsewhere: (from, path) => this.files.elsewhere(from, path),
    };
  }

  /** A drawing or list as it was when it was first read, so that a keystroke reads none. */
  private bytes(file: string): Uint8Array | null {
    return this.content(file, this.attached, (bytes) => bytes);
  }

  /** A paper likewise; of its content only the print is kept. */
  private paper(file: string): Paper | null {
    return this.content(file, this.cited, paperOf);
  }

  private content<T>(file: string, known: Map<string, T | null>, keep: (bytes: Uint8Array) => T): T | null {
    const before = known.get(file);
    if (before !== undefined) return before;
    const bytes = this.files.bytes(file);
    if (bytes === undefined) {
      this.fetching.add(file);
      return null;
    }
    this.fetching.delete(file);
    const made = bytes && keep(bytes);
    known.set(file, made);
    return made;
  }

  /** Looks at a drawing, list or paper again; true if there is another content, which then has an identity of its own. */
  private rereadContent(file: string): boolean {
    const now = this.files.bytes(file);
    const [bytes, paper] = [this.attached.get(file), this.cited.get(file)];
    const same =
      now !== undefined &&
      (bytes === undefined || alike(bytes, now)) &&
      (paper === undefined || paper?.print === (now ? paperOf(now).print : undefined));
    if (same) return false;
    this.attached.delete(file);
    this.cited.delete(file);
    return true;
  }

  private closedTree(file: string): Tree | null {
    const known = this.closed.get(file);
    if (known !== undefined) return known;
    const text = this.files.read(file);
    if (text === undefined) {
      this.fetching.add(file);
      return null;
    }
    this.fetching.delete(file);
    const tree = text === null ? null : treeOf(file, text);
    this.closed.set(file, tree);
    this.digests.set(file, digestOf(text));
    if (this.closed.size > mostClosed * 2) this.dropUnused();
    return tree;
  }

  /** Lets go of closed files that no open one takes in, the oldest first. */
  private dropUnused(): void {
    const used = new Set([...this.open.keys()].flatMap((file) => this.filesOf(file)));
    const loose = [...this.closed.keys()].filter((file) => !used.has(file));
    for (const file of loose.slice(0, Math.max(loose.length - mostClosed, 0))) this.closed.delete(file);
    for (const file of this.kept.keys()) if (!this.open.has(file)) this.kept.delete(file);
    for (const known of [this.attached, this.cited])
      for (const file of known.keys()) if (!used.has(file)) known.delete(file);
  }
}

const digestOf = (text: string | null): number | null => (text === null ? null : digest(text));

const alike = (a: Uint8Array | null, b: Uint8Array | null): boolean =>
  a === null || b === null ? a === b : a.length === b.length && a.every((byte, i) => byte === b[i]);
