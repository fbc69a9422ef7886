// Work that waits: each piece under a name, so that a newer one takes its place, and so that "nothing is pending" can be said.
import type { Host } from './host.ts';

/** A stream of messages may put work off so many times before it is done nevertheless. */
const mostPutOff = 40;

export class Tasks {
  private readonly timers = new Map<string, ReturnType<typeof setTimeout>>();
  private readonly turns = new Map<string, { readonly putOff: number }>();
  private running = 0;
  private waiting: (() => void)[] = [];
  private readonly host: Pick<Host, 'soon'>;

  constructor(host: Pick<Host, 'soon'>) {
    this.host = host;
  }

  /** Does it after a wait in milliseconds; asked again under the same name, the wait begins anew. */
  later(name: string, wait: number, deed: () => void): void {
    clearTimeout(this.timers.get(name));
    this.timers.set(
      name,
      setTimeout(() => {
        this.timers.delete(name);
        deed();
        this.settle();
      }, wait),
    );
  }

  /** Whether a wait of that name is running. */
  waits(name: string): boolean {
    return this.timers.has(name);
  }

  cancel(name: string): void {
    clearTimeout(this.timers.get(name));
    this.timers.delete(name);
    this.settle();
  }

  /** Does it as soon as no newer message asks for the same: twenty keys that arrive together cost one piece of work. */
  soon(name: string, deed: () => void): void {
    const putOff = (this.turns.get(name)?.putOff ?? -1) + 1;
    const turn = { putOff };
    this.turns.set(name, turn);
    const run = () => {
      if (this.turns.get(name) !== turn) return;
      this.turns.delete(name);
      deed();
      this.settle();
    };
    // The library takes up one message a turn: a second turn lets it hand over the next key first.
    this.host.soon(() => (putOff >= mostPutOff ? run() : this.host.soon(run)));
  }

  /** Counts as pending until the promise has ended, well or badly. */
  during<T>(work: Promise<T>): Promise<T> {
    this.running += 1;
    return work.finally(() => {
      this.running -= 1;
      this.settle();
    });
  }

  /** Resolves once nothing is pending. */
  idle(): Promise<void> {
    return new Promise((resolve) => {
      this.waiting.push(resolve);
      this.settle();
    });
  }

  private settle(): void {
    if (!this.waiting.length) return;
    this.host.soon(() => {
      if (this.timers.size || this.turns.size || this.running) return;
      for (const resolve of this.waiting.splice(0)) resolve();
    });
  }
}
