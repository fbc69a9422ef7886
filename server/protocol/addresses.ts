// Addresses of files: one identity for every spelling of a document, and what a `use` line may reach from it.
import { URI, Utils } from 'vscode-uri';
import { folderOf, relativePath } from '../report/index.ts';
import { type Files, notRelative } from '../workspace/index.ts';
import type { Host } from './host.ts';

export class Addresses implements Files {
  private folders: readonly string[] = [];
  private plans: readonly string[] = [];
  private readonly others = new Map<string, readonly string[]>(); // by opened folder
  private readonly identities = new Map<string, string>();
  private readonly spellings = new Map<string, string>();
  private readonly host: Host;

  constructor(host: Host) {
    this.host = host;
  }

  /** The identity of a document, the same for each way to write its address. */
  of(uri: string): string {
    let identity = this.identities.get(uri);
    if (identity === undefined) {
      if (this.identities.size > 10_000) this.identities.clear();
      identity = this.host.real(URI.parse(uri).toString());
      this.identities.set(uri, identity);
    }
    return identity;
  }

  /** Remembers how the client writes the address of a document it has opened. */
  opened(uri: string): string {
    const identity = this.of(uri);
    this.spellings.set(identity, uri);
    return identity;
  }

  /** The address to write to the client: its own spelling where it has opened the document. */
  spelled(identity: string): string {
    return this.spellings.get(identity) ?? identity;
  }

  /** Opened folders, from now on. */
  setFolders(uris: readonly string[]): void {
    this.folders = uris.map((uri) => this.of(uri).replace(/\/+$/, ''));
    this.identities.clear();
  }

  get openedFolders(): readonly string[] {
    return this.folders;
  }

  /** Every plan and library known to lie in the opened folders, from now on. */
  setPlans(identities: readonly string[]): void {
    this.plans = identities;
  }

  /** Every other file that lies in one of the opened folders, from now on; whether it differs from before. */
  setOthers(folder: string, identities: readonly string[]): boolean {
    const before = this.others.get(folder);
    this.others.set(folder, identities);
    return before?.length !== identities.length || identities.some((file, i) => file !== before[i]);
  }

  /** Paths of all files known in the opened folders, as seen from a file. */
  around(from: string): readonly string[] {
    const folder = folderOf(from);
    return this.known().map((file) => this.path(folder, file));
  }

  private known(): readonly string[] {
    return [...this.plans, ...new Set(this.folders.flatMap((folder) => this.others.get(folder) ?? []))];
  }

  /** Links may lead elsewhere from now on. */
  forgetLinks(): void {
    this.identities.clear();
  }

  /** Whether a file lies in one of the opened folders. */
  inFolder(identity: string): boolean {
    return this.folders.some((folder) => identity.startsWith(`${folder}/`));
  }

  read(file: string): string | null | undefined {
    return this.host.read(file);
  }

  bytes(file: string): Uint8Array | null | undefined {
    return this.host.bytes(file);
  }

  resolve(from: string, path: string): { readonly file: string } | { readonly reason: string } {
    const reason = notRelative(path);
    if (reason !== null) return { reason };
    const base = URI.parse(from);
    if (!base.path.startsWith('/')) return { reason: 'this file has no folder yet: save it first' };
    const whole = path.replace(/\p{Surrogate}/gu, '\ufffd'); // half a character has no place in an address
    const file = this.of(Utils.resolvePath(Utils.dirname(base), whole).toString());
    if (this.inFolder(from) ? this.inFolder(file) : file.startsWith(`${folderOf(from)}/`)) return { file };
    return {
      reason: this.inFolder(from)
        ? 'it lies outside the opened folder'
        : 'it lies outside the folder of this file; open the folder that holds both',
    };
  }

  elsewhere(from: string, path: string): readonly string[] {
    const name = `/${path.slice(path.lastIndexOf('/') + 1)}`;
    return this.known()
      .filter((file) => URI.parse(file).path.endsWith(name))
      .map((file) => this.path(folderOf(from), file));
  }

  /** A file's path as seen from a folder, in readable letters. */
  path(folder: string, file: string): string {
    return relativePath(URI.parse(folder).path, URI.parse(file).path);
  }
}
