// Collects the pages that explain the findings, server/checks/<group>/<slug>.md: `{ [slug]: { title, markdown } }`, without the
// marks that their examples carry for the tests.
import { readdir, readFile } from 'node:fs/promises';
import { basename } from 'node:path';

const folder = 'server/checks';

/** All pages in the order of their slugs; the title is the page's first heading, or the slug where there is none. */
export async function readPages() {
  const files = (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((file) => file.isFile() && file.name.endsWith('.md'))
    .map((file) => ({ slug: basename(file.name, '.md'), path: `${file.parentPath}/${file.name}` }))
    .sort((a, b) => (a.slug < b.slug ? -1 : 1));
  const pages = {};
  for (const { slug, path } of files) {
    const markdown = await readFile(path, 'utf8');
    pages[slug] = { title: /^#\s+(.+)$/m.exec(markdown)?.[1] ?? slug, markdown: readable(markdown) };
  }
  return pages;
}

const markLine = /^ *# *=+(?: +[a-z][a-z-]*)+ *\n/gm;

/**
 * A page as people read it. Its plans are tests too: out go the comment lines of = under the words that a finding is about
 * (tests/support/fixture.ts) and what the tests are told behind the first word of a fence; the cursor becomes a gap to fill.
 */
const readable = (markdown) =>
  markdown.replace(
    /^```liftplan[^\n]*\n(.*?)^```$/gms,
    (_, plan) => `\`\`\`liftplan\n${plan.replace(markLine, '').replaceAll('|', '…')}\`\`\``,
  );
