// Texts with marks: a cursor, several files in one text, and comment lines of = under the words that a finding is about.

/** A comment line of = under the place of a finding, as the command line prints it, with the slugs found there. */
export interface Mark {
  readonly file: string;
  readonly line: number; // from 0, in the text without marks
  readonly from: number;
  readonly to: number;
  readonly slug: string;
}

export interface Fixture {
  /** Texts by file name, without cursor and mark lines; the first one is the file asked about. */
  readonly files: Readonly<Record<string, string>>;
  readonly file: string;
  readonly marks: readonly Mark[];
  readonly cursor: { readonly file: string; readonly line: number; readonly column: number } | null;
}

/** Stands where the cursor is. The language has no such sign, so that a text cannot mean anything else by it. */
export const CURSOR = '|';

const heading = /^--- (\S+)$/;
const markLine = /^ *#( *)(=+)((?: +[a-z][a-z-]*)+) *$/;

/** Reads a text with marks. A file begins at a line `--- name.liftplan`; what stands before the first one is `plan.liftplan`. */
export function fixture(text: string): Fixture {
  const files: Record<string, string[]> = {};
  const marks: Mark[] = [];
  let cursor: Fixture['cursor'] = null;
  let file = 'plan.liftplan';
  for (const written of text.replace(/^\n/, '').split('\n')) {
    const [, next] = heading.exec(written) ?? [];
    if (next) {
      file = next;
      continue;
    }
    const lines = files[file] ?? [];
    files[file] = lines;
    const marked = readMark(written);
    if (marked)
      marks.push(
        ...marked.slugs.map((slug) => ({ file, line: lines.length - 1, from: marked.from, to: marked.to, slug })),
      );
    else {
      const column = written.indexOf(CURSOR);
      if (column >= 0) cursor = { file, line: lines.length, column };
      lines.push(column < 0 ? written : written.slice(0, column) + written.slice(column + 1));
    }
  }
  const texts = Object.fromEntries(Object.entries(files).map(([name, lines]) => [name, lines.join('\n')]));
  return { files: texts, file: Object.keys(texts)[0] ?? file, marks, cursor };
}

/** A mark right behind # begins under the # itself: so the first column can be marked too. */
function readMark(
  line: string,
): { readonly from: number; readonly to: number; readonly slugs: readonly string[] } | null {
  const [, space, bar, slugs] = markLine.exec(line) ?? [];
  if (space === undefined || bar === undefined || slugs === undefined) return null;
  const start = line.indexOf('=');
  return { from: space === '' ? start - 1 : start, to: start + bar.length, slugs: slugs.trim().split(/ +/) };
}

/** The text with a mark line under each place, to paste into a test. */
export function withMarks(text: string, marks: readonly Omit<Mark, 'file'>[]): string {
  return text
    .split('\n')
    .flatMap((line, i) => [line, ...marks.filter((mark) => mark.line === i).map(drawn)])
    .join('\n');
}

const drawn = ({ from, to, slug }: Omit<Mark, 'file'>): string => {
  const width = Math.max(1, to - from);
  return from === 0
    ? `#${'='.repeat(Math.max(1, width - 1))} ${slug}`
    : `#${' '.repeat(from - 1)}${'='.repeat(width)} ${slug}`;
};
