// What the suite asks of the page that the editor is drawn on: it runs inside the extension host and cannot see that page.
import { mkdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const axeScript = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** What can be done with `page`, by name: details in, anything that JSON can carry out. */
export function pageDeeds(page, screens) {
  return {
    /** The sheet as it stands on the page, or null while there is none. */
    sheet: async () =>
      (await sheetFrame(page))?.evaluate(() => ({
        title: document.title,
        language: document.documentElement.lang,
        theme: document.body.dataset.vscodeThemeKind,
        // biome-ignore lint/performance/useDomNodeTextContent: what a reader sees is wanted, not what is hidden.
        text: document.getElementById('sheet').innerText,
        version: document.getElementById('version').textContent,
        state: document.getElementById('state').textContent,
        marked: [...document.querySelectorAll('.marked')].map((row) => row.dataset.id),
        rows: [...document.querySelectorAll('[data-id]')].map((row) => row.dataset.id),
        openDetails: document.querySelectorAll('#sheet details[open]').length,
        scroll: Math.round(document.scrollingElement.scrollTop),
        focused: document.activeElement?.dataset.id ?? null,
        hasFocus: document.hasFocus(),
        policy: document.querySelector('meta[http-equiv]').content,
        scripts: document.querySelectorAll('#sheet script, #sheet [onclick], #sheet [onerror]').length,
      })) ?? null,
    click: async ({ selector }) => (await sheetFrame(page)).locator(selector).first().click(),
    focus: async ({ selector }) => (await sheetFrame(page)).locator(selector).first().focus(),
    press: async ({ keys }) => {
      for (const key of keys) await page.keyboard.press(key);
    },
    scrollTo: async ({ top }) => (await sheetFrame(page)).evaluate((to) => window.scrollTo(0, to), top),
    /** Serious and critical findings of axe-core inside the sheet. */
    axe: async () => {
      const frame = await sheetFrame(page);
      await frame.evaluate(await readFile(axeScript, 'utf8'));
      const { violations } = await frame.evaluate(() => globalThis.axe.run());
      return violations
        .filter(({ impact }) => impact === 'serious' || impact === 'critical')
        .map(
          ({ id, nodes }) =>
            `${id}: ${nodes
              .map(({ html }) => html)
              .slice(0, 3)
              .join(' ')}`,
        );
    },
    screen: async ({ name }) => {
      await mkdir(screens, { recursive: true });
      await page.screenshot({ path: join(screens, `${name}.png`) });
    },
    /** What stands in the editor's own dialog for a file, or null while none is open. */
    dialog: async () => {
      const input = page.locator('.quick-input-widget input.input').first();
      return (await input.isVisible()) ? input.inputValue() : null;
    },
    /** Shows the page as a system with forced colours does, or as usual again. */
    forcedColors: async ({ on }) => page.emulateMedia({ forcedColors: on ? 'active' : 'none' }),
  };
}

async function sheetFrame(page) {
  for (const frame of page.frames()) {
    const holds = await frame.evaluate(() => document.getElementById('sheet') !== null).catch(() => false);
    if (holds) return frame;
  }
  return undefined;
}
