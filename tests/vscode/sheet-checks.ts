// The sheet beside the text: what it shows, that rows and lines find each other, that it stays put, and that all can use it.
import { commands, Selection, Uri, window, workspace } from 'vscode';
import { ask, check, equal, holds, until } from './checks.ts';
import { Plan } from './plan.ts';

/** As tests/vscode/page.mjs reads it off the page. */
interface Seen {
  title: string;
  language: string;
  theme: string;
  text: string;
  version: string;
  state: string;
  marked: string[];
  rows: string[];
  openDetails: number;
  scroll: number;
  focused: string | null;
  hasFocus: boolean;
  policy: string;
  scripts: number;
}

const themes = {
  dark: ['Default Dark Modern', 'vscode-dark'],
  light: ['Default Light Modern', 'vscode-light'],
  'high-contrast-dark': ['Default High Contrast', 'vscode-high-contrast'],
  'high-contrast-light': ['Default High Contrast Light', 'vscode-high-contrast-light'],
} as const;

const seen = () => ask<Seen | null>('sheet');

const sheetWhere = (what: string, fits: (sheet: Seen) => boolean) =>
  until(what, seen, (sheet) => sheet !== null && fits(sheet)) as Promise<Seen>;

export async function checkSheet(): Promise<void> {
  await check('no sheet opens by itself', async () => equal(await seen(), null));
  await checkContent();
  await checkExport();
  await checkCompare();
  await checkTies();
  await checkStaying();
  await checkLooks();
}

async function checkContent(): Promise<void> {
  await check('the sheet beside the text holds the plan', async () => {
    const plan = await openSheet('bench.liftplan');
    const sheet = await sheetWhere('the sheet', ({ text }) => text.includes('Move a workbench'));
    equal([sheet.language, sheet.title.includes('Move a workbench')], ['en', true]);
    // The standing caution that heads every sheet.
    holds(sheet.text.includes('Planning aid, not an approval.'), 'The standing caution is missing.');
    holds(sheet.text.includes('157 kg'), 'The sheet does not show the weight of the frame.');
    equal(sheet.version, `Text version ${plan.document.version}`);
    equal(sheet.state, '');
  });
  await check('a sample shows its sheet too', async () => {
    await Plan.open('skid.liftplan');
    const sheet = await sheetWhere('its sheet', ({ text }) => !text.includes('Move a workbench') && text.length > 500);
    holds(sheet.rows.length > 10, `Only ${sheet.rows.length} rows lead to lines.`);
  });
  await check('texts of a plan stay texts', async () => {
    await Plan.open('hostile.liftplan');
    const sheet = await sheetWhere('its sheet', ({ text }) => text.includes('onerror=alert(1)'));
    equal(sheet.scripts, 0, 'scripts and handlers in the sheet');
    const [source, script, style, ...rest] = sheet.policy.split('; ');
    equal([source, ...rest], ["default-src 'none'", "form-action 'none'", "base-uri 'none'"]);
    holds(/^script-src 'nonce-[0-9a-f-]{36}'$/.test(script ?? ''), `${script}`);
    holds(!/unsafe|\*(?!\.)/.test(style ?? ''), `${style}`);
  });
}

async function checkCompare(): Promise<void> {
  await check('the open text is compared with the saved file, in meaning', async () => {
    const plan = await Plan.open('bench.liftplan');
    await plan.restoring(async () => {
      await plan.replace(plan.at('10 mm'), '12 mm');
      await plan.settled();
      await commands.executeCommand('becket.compareEarlier', 'saved');
      const page = await until(
        'the comparison',
        () => workspace.textDocuments.find(({ uri }) => uri.scheme === 'becket-comparison')?.getText() ?? '',
        (text) => text.includes('10 mm'),
      );
      holds(page.includes('Before: the saved file.'), 'It does not say what was compared.');
      holds(page.includes('Merging is not an approval to lift.'), 'The caution is missing.');
      await commands.executeCommand('workbench.action.closeActiveEditor');
    });
  });
}

/** A page cannot be opened from a browser tab or a remote host: there "Print" offers to save it. */
async function checkExport(): Promise<void> {
  for (const [command, format, file] of [
    ['becket.exportSheet', 'markdown', 'bench.md'],
    ['becket.printSheet', undefined, 'bench.html'],
  ] as const) {
    await check(`the sheet is saved where the person says: ${file}`, async () => {
      await openSheet('bench.liftplan');
      const done = commands.executeCommand(command, format);
      await until(
        'the dialog',
        () => ask<string | null>('dialog'),
        (path) => path?.endsWith(`/${file}`) === true,
      );
      await ask('press', { keys: ['Enter'] });
      await until(
        'the file',
        async () => (await textOf(file)) ?? '',
        (text) => text.includes('Planning aid, not an approval.'),
      );
      await done;
    });
  }
}

/** The text of a file in the opened folder, if it is there. */
async function textOf(name: string): Promise<string | undefined> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  if (!folder) return undefined;
  const bytes = await workspace.fs.readFile(Uri.joinPath(folder, name)).then(
    (found) => found,
    () => undefined,
  );
  return bytes && new TextDecoder().decode(bytes);
}

async function checkTies(): Promise<void> {
  await check('the cursor marks its row', async () => {
    const plan = await openSheet('bench.liftplan');
    await sheetWhere('the sheet', ({ text }) => text.includes('Move a workbench'));
    plan.editor.selection = new Selection(plan.inside('Frame'), plan.inside('Frame'));
    const { marked } = await sheetWhere('a mark', ({ marked }) => marked.length > 0);
    equal(new Set(marked.map((ids) => ids.split(' ')[0])).size, 1, 'statements marked');
  });
  await check('a click shows the line and leaves the focus in the sheet; a second goes there', async () => {
    const plan = await openSheet('bench.liftplan');
    const [row] = (await sheetWhere('a mark', ({ marked }) => marked.length > 0)).marked;
    plan.editor.selection = new Selection(0, 0, 0, 0);
    const selector = `tr[data-id="${row}"]`;
    await ask('click', { selector });
    await until(
      'the cursor',
      () => plan.editor.selection.active.line,
      (line) => line === plan.at('"Frame"').start.line,
    );
    equal((await seen())?.hasFocus, true, 'focus in the sheet');
    await ask('click', { selector });
    await sheetWhere('the focus to leave', ({ hasFocus }) => !hasFocus);
    equal(window.activeTextEditor?.document.uri.path, plan.document.uri.path);
  });
  await check('the keyboard walks the rows and Enter shows a line', async () => {
    const plan = await openSheet('bench.liftplan');
    await ask('focus', { selector: '#sheet [data-id][tabindex="0"]' });
    const { focused: first } = await sheetWhere('a focused row', ({ focused }) => focused !== null);
    await ask('press', { keys: ['End'] });
    const { focused: last } = await sheetWhere('another row', ({ focused }) => focused !== null && focused !== first);
    holds(last !== first, 'The focus did not move.');
    plan.editor.selection = new Selection(0, 0, 0, 0);
    await ask('press', { keys: ['Home', 'ArrowDown', 'Enter'] });
    await until(
      'the cursor',
      () => plan.editor.selection.active.line,
      (line) => line > 0,
    );
  });
}

async function checkStaying(): Promise<void> {
  await check('an edit changes the sheet and moves nothing', async () => {
    const plan = await openSheet('bench.liftplan');
    await sheetWhere('the sheet', ({ text }) => text.includes('Move a workbench'));
    await ask('scrollTo', { top: 120 });
    const before = await sheetWhere('the scroll', ({ scroll }) => scroll === 120);
    const line = plan.editor.visibleRanges[0]?.start.line;
    await plan.restoring(async () => {
      await plan.replace(plan.at('10 mm', 'box'), '5 mm');
      const after = await sheetWhere('the new weight', ({ text }) => text.includes('78.5 kg'));
      equal([after.scroll, after.rows], [before.scroll, before.rows]);
      equal(plan.editor.visibleRanges[0]?.start.line, line, 'first line in sight');
    });
    await sheetWhere('the old weight', ({ text }) => !text.includes('78.5 kg'));
  });
  await check('another kind of file leaves the sheet as it is, so does "Stay with this plan"', async () => {
    await openSheet('bench.liftplan');
    await window.showTextDocument(await workspace.openTextDocument({ content: 'Notes' }), { viewColumn: 1 });
    holds((await seen())?.text.includes('Move a workbench') === true, 'The sheet went away.');
    await ask('click', { selector: '#stay' });
    await Plan.open('wrong.liftplan');
    holds((await seen())?.text.includes('wrongly') === false, 'The sheet followed.');
    await ask('click', { selector: '#stay' });
    await Plan.open('bench.liftplan');
    await Plan.open('wrong.liftplan');
    await sheetWhere('the other sheet', ({ text }) => text.includes('wrongly'));
  });
}

async function checkLooks(): Promise<void> {
  await openSheet('skid.liftplan');
  for (const [name, [theme, kind]] of Object.entries(themes)) {
    await check(`the sheet can be read by all: ${name}`, async () => {
      await workspace.getConfiguration('workbench').update('colorTheme', theme, true);
      await sheetWhere(`the theme ${theme}`, (sheet) => sheet.theme === kind);
      await ask('screen', { name });
      equal(await ask('axe'), [], 'serious findings of axe');
    });
  }
  await check('the sheet can be read by all: forced colours', async () => {
    await ask('forcedColors', { on: true });
    await ask('screen', { name: 'forced-colours' });
    equal(await ask('axe'), [], 'serious findings of axe');
    await ask('forcedColors', { on: false });
  });
  await check('the sheet can be read by all: paper look', async () => {
    await ask('click', { selector: '#paper' });
    await ask('screen', { name: 'paper' });
    equal(await ask('axe'), [], 'serious findings of axe');
    await ask('click', { selector: '#paper' });
  });
}

async function openSheet(name: string): Promise<Plan> {
  const plan = await Plan.open(name);
  await commands.executeCommand('becket.showSheet');
  return plan;
}
