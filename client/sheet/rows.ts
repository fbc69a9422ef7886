// Rows that stand for statements of the plan (`data-id`, one or several ids): marked from the cursor, chosen by click or Enter.

export class Rows {
  private ids: string[] = [];
  private lastChosen: string | undefined;
  private pointerOver = false;
  private readonly root: HTMLElement;
  private readonly choose: (id: string, go: boolean) => void;

  constructor(root: HTMLElement, choose: (id: string, go: boolean) => void) {
    this.root = root;
    this.choose = choose;
    root.addEventListener('click', (event) => this.chosen(event.target as Element, event));
    root.addEventListener('keydown', (event) => this.key(event));
    root.addEventListener('focusin', (event) => this.takeTabStop(event.target as Element));
    document.documentElement.addEventListener('pointerenter', () => this.setPointer(true));
    document.documentElement.addEventListener('pointerleave', () => this.setPointer(false));
  }

  /** Marks every row of the innermost statement that has one; its first is brought into view unless someone is at work here. */
  mark(ids: string[]): void {
    this.ids = ids;
    const marked = this.showMarks();
    const busy = this.pointerOver || document.hasFocus();
    if (marked && !busy && !inView(marked)) marked.scrollIntoView({ block: 'center' });
  }

  /** After the sheet changed: marks again, and keeps exactly one row reachable by Tab. */
  refresh(): void {
    const rows = this.all();
    this.setTabStop(rows.find((row) => row.tabIndex === 0) ?? rows[0]);
    this.showMarks();
  }

  private showMarks(): Element | undefined {
    for (const row of this.root.querySelectorAll('.marked')) row.classList.remove('marked', 'home');
    for (const id of this.ids) {
      const found = [...this.root.querySelectorAll(`[data-id~="${CSS.escape(id)}"]`)];
      if (found.length === 0) continue;
      const home = found.find((row) => !row.matches('[data-repeat], svg *')) ?? found[0];
      for (const row of found) row.classList.add('marked');
      home?.classList.add('home');
      return home;
    }
    return undefined;
  }

  private chosen(target: Element, event: Event): void {
    const row = rowOf(target);
    const selecting = document.getSelection()?.isCollapsed === false;
    if (!row || selecting || target.closest('summary')) return;
    event.preventDefault();
    const id = firstId(row);
    this.choose(id, id === this.lastChosen);
    this.lastChosen = id;
  }

  private key(event: KeyboardEvent): void {
    const row = rowOf(event.target as Element);
    if (!row || row !== event.target) return;
    if (event.key === 'Enter') this.chosen(row, event);
    const rows = this.all();
    const at = rows.indexOf(row);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[event.key];
    const next = to === undefined ? undefined : rows[to];
    if (!next) return;
    event.preventDefault();
    next.focus();
  }

  private takeTabStop(target: Element): void {
    const row = rowOf(target);
    if (row && row === target) this.setTabStop(row);
  }

  private setTabStop(row: HTMLElement | undefined): void {
    for (const other of this.root.querySelectorAll<HTMLElement>('[data-id]')) other.tabIndex = other === row ? 0 : -1;
  }

  /** The rows a keyboard moves along: those in sight, without the bars of a picture, which repeat them. */
  private all(): HTMLElement[] {
    const rows = [...this.root.querySelectorAll<HTMLElement>('[data-id]')];
    return rows.filter((row) => row.closest('svg, details:not([open]) > :not(summary)') === null);
  }

  private setPointer(over: boolean): void {
    this.pointerOver = over;
  }
}

const rowOf = (target: Element) => target.closest<HTMLElement>('[data-id]');

const firstId = (row: HTMLElement) => (row.dataset.id ?? '').split(' ')[0] ?? '';

function inView(row: Element): boolean {
  const { top, bottom } = row.getBoundingClientRect();
  return top >= 0 && bottom <= window.innerHeight;
}
