// The sheet's patching in a real page: whatever was shown before, what is shown after equals the new sheet drawn from nothing,
// and what the reader did (opened details, a chosen row) is still there. A row that stayed behind would show an old number.
import { build } from 'esbuild';
import fc from 'fast-check';

const text = fc.constantFrom('157 kg', '? kg', '2 of 4', 'a < b & c', '');
const id = fc.constantFrom('s1', 's2', 's3', 's4');
const row = fc
  .record({ id, text, repeat: fc.boolean(), look: fc.constantFrom('', 'total', 'deep1') })
  .map(({ id, text, repeat, look }) => {
    const attributes = `data-id="${id}"${repeat ? ' data-repeat=""' : ''}${look ? ` class="${look}"` : ''}`;
    return `<tr ${attributes} tabindex="-1"><th>${escape(text)}</th><td>${escape(text)}</td></tr>`;
  });
const block = fc.oneof(
  text.map((words) => `<p class="plain">${plain(words)}</p>`),
  fc.array(row, { maxLength: 5 }).map((rows) => `<table><tbody>${rows.join('')}</tbody></table>`),
  text.map((words) => `<details><summary>More</summary><p>${plain(words)}</p></details>`),
  id.map((one) => `<figure><svg viewBox="0 0 9 9"><g data-id="${one}"><rect width="3" height="2"/></g></svg></figure>`),
);
const section = fc.array(block, { maxLength: 4 }).map((blocks) => `<section>${blocks.join('')}</section>`);
const sheet = fc.uniqueArray(fc.record({ id: fc.constantFrom('head', 'legs', 'gear', 'crane'), html: section }), {
  selector: (one) => one.id,
  maxLength: 4,
});

/** Runs the property on a page of `browser`; throws with the smallest sheets that go wrong. */
export async function checkPatching(browser, source) {
  const script = await build({
    entryPoints: [source],
    bundle: true,
    format: 'iife',
    globalName: 'patch',
    write: false,
  });
  const page = await browser.newPage();
  try {
    await page.setContent('<main id="sheet"></main>');
    await page.addScriptTag({ content: script.outputFiles[0].text });
    const property = fc.asyncProperty(sheet, sheet, async (before, after) => {
      const { same, patched, drawn } = await page.evaluate(patchAndDraw, [before, after]);
      if (!same) throw new Error(`shown:   ${patched}\nshould be ${drawn}`);
    });
    await fc.assert(property, { seed: 20, numRuns: 1500 });
    const kept = await page.evaluate(keepsWhatTheReaderDid);
    if (kept !== 'open, chosen, same row') throw new Error(`Not kept: ${kept}`);
  } finally {
    await page.close();
  }
}

const plain = (words) => words.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** In the page: `after` patched over `before`, and `after` alone. */
function patchAndDraw([before, after]) {
  const order = (sections) => sections.map(({ id }) => id);
  const shown = document.createElement('main');
  globalThis.patch.putSections(shown, order(before), before);
  globalThis.patch.putSections(shown, order(after), after);
  const fresh = document.createElement('main');
  globalThis.patch.putSections(fresh, order(after), after);
  return { same: shown.isEqualNode(fresh), patched: shown.innerHTML, drawn: fresh.innerHTML };
}

/** In the page: a row that gets a new number, and one before it, leave the open details and the focus alone. */
function keepsWhatTheReaderDid() {
  const html = (rows, words) =>
    `<section><table><tbody>${rows}</tbody></table><details><summary>More</summary><p>${words}</p></details></section>`;
  const tr = (id, words) => `<tr data-id="${id}" tabindex="-1"><td>${words}</td></tr>`;
  const main = document.getElementById('sheet');
  globalThis.patch.putSections(main, ['legs'], [{ id: 'legs', hash: '1', html: html(tr('s2', 'old'), 'old') }]);
  const chosen = main.querySelector('[data-id=s2]');
  main.querySelector('details').open = true;
  chosen.focus();
  const next = html(tr('s1', 'new') + tr('s2', 'new'), 'new');
  globalThis.patch.putSections(main, ['legs'], [{ id: 'legs', hash: '2', html: next }]);
  return [
    main.querySelector('details').open ? 'open' : 'closed',
    document.activeElement === chosen ? 'chosen' : 'not chosen',
    main.querySelector('[data-id=s2]') === chosen && chosen.textContent === 'new' ? 'same row' : 'another row',
  ].join(', ');
}
