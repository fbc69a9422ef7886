// `becket explain SLUG`: the page about one kind of finding, as text.
import { readFileSync } from 'node:fs';
import { nearest } from '../quantities/index.ts';
import { exit } from './exit.ts';
import type { Terminal } from './terminal.ts';
import { CannotRun, readArgs } from './usage.ts';

interface Pages {
  readonly [slug: string]: { readonly title: string; readonly markdown: string };
}

export async function explain(terminal: Terminal, args: readonly string[]): Promise<number> {
  const { positionals } = readArgs(args, {});
  const pages = readPages(terminal.pages);
  const [slug] = positionals;
  if (!slug || positionals.length > 1) throw new CannotRun(`Name one finding: ${Object.keys(pages).join(', ')}.`);
  const page = Object.hasOwn(pages, slug) ? pages[slug] : undefined;
  if (!page) {
    const near = nearest(slug, Object.keys(pages));
    throw new CannotRun(`No finding is called ${slug}.${near.length ? ` Nearest: ${near.join(', ')}.` : ''}`);
  }
  terminal.out(`${pageText(page.markdown).trimEnd()}\n`);
  return exit.clean;
}

function readPages(file: string): Pages {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Pages;
  } catch (error) {
    throw new CannotRun(`The pages that explain findings cannot be read: ${(error as Error).message}`);
  }
}

/** A page for people: without the marks that its examples carry for the tests. */
export const pageText = (markdown: string): string =>
  markdown.replace(
    /^```liftplan[^\n]*\n([^]*?)^```$/gm,
    (_, plan: string) =>
      `\`\`\`liftplan\n${plan
        .split('\n')
        .filter((line) => !mark.test(line))
        .join('\n')}\`\`\``,
  );

const mark = /^ *# *=+(?: +[a-z][a-z-]*)+ *$/;
