// Prints every page that explains a finding, one after the other, so that a reviewer can read all the words in one go.
import { readPages } from './pages.mjs';

for (const [slug, page] of Object.entries(await readPages())) {
  process.stdout.write(`${'='.repeat(100)}\n${slug}\n\n${page.markdown.trimEnd()}\n\n`);
}
