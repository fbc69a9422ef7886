// Prints all words about findings in one go, for a reviewer: each sentence as its page's plan raises it, the ways out, and the page.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { readPages } from './pages.mjs';

/** The pages' own readers and the checks, bundled for this run. */
async function loadPages() {
  const folder = await mkdtemp(join(tmpdir(), 'words-'));
  try {
    const outfile = join(folder, 'pages.mjs');
    const define = { 'import.meta.dirname': JSON.stringify(join(process.cwd(), 'tests', 'support')) };
    await build({
      entryPoints: ['tests/support/words.ts'],
      bundle: true,
      platform: 'node',
      format: 'esm',
      outfile,
      define,
      loader: { '.ohm': 'text' },
      logLevel: 'warning',
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    await rm(folder, { recursive: true });
  }
}

const { sentences } = await loadPages();
const pages = await readPages();
for (const { slug, severity, effect, said } of sentences()) {
  process.stdout.write(`${'='.repeat(100)}\n${slug} (${severity}, ${effect})\n`);
  for (const { message, fixes } of said)
    process.stdout.write(`\n  ${message}\n${fixes.map((title) => `    · ${title}\n`).join('')}`);
  process.stdout.write(`\n${pages[slug]?.markdown.trimEnd() ?? 'No page.'}\n\n`);
}
