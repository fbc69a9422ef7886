// Writing a plan in VS Code: findings, hints, hover, completion, fixes, rename, layout, settings, restart.
import {
  type CodeAction,
  type CompletionList,
  commands,
  type DocumentLink,
  type DocumentSymbol,
  type Hover,
  type InlayHint,
  languages,
  type MarkdownString,
  type TextEdit,
  type WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import { check, equal, holds, until } from './checks.ts';
import { extension, Plan, slug } from './plan.ts';

const ours = [
  'becket.showSheet',
  'becket.printSheet',
  'becket.exportSheet',
  'becket.compareEarlier',
  'becket.explainFinding',
  'becket.restart',
];

export async function checkWriting(): Promise<void> {
  await check('a .liftplan file is a Becket plan and starts the extension', async () => {
    const plan = await Plan.open('bench.liftplan');
    equal(plan.document.languageId, 'liftplan');
    holds(extension().isActive, 'The extension is not active.');
  });
  await check('every command of the manifest is there', async () => {
    const declared = extension().packageJSON.contributes.commands.map(({ command }: { command: string }) => command);
    equal(declared, ours);
    const known = await commands.getCommands(true);
    equal(
      ours.filter((command) => !known.includes(command)),
      [],
    );
  });
  await checkFindings();
  await checkReading();
  await checkEditing();
  await checkLife();
}

async function checkFindings(): Promise<void> {
  await check('a plan without a cause has no finding', async () => {
    equal((await Plan.open('bench.liftplan')).findings(), []);
  });
  await check('each cause is one finding, at its words', async () => {
    const plan = await Plan.open('wrong.liftplan');
    equal(plan.findings(), ['error unit-missing at "450"', 'error material-unknown at "carbon stel"']);
  });
  await check('the slug of a finding leads to its page', async () => {
    const plan = await Plan.open('wrong.liftplan');
    const [first] = languages.getDiagnostics(plan.document.uri);
    const target = typeof first?.code === 'object' ? first.code.target : undefined;
    equal(target?.scheme, 'command');
    equal(target?.query, '["unit-missing"]');
    await commands.executeCommand('becket.explainFinding', 'unit-missing');
    const page = await until(
      'the page',
      () => workspace.textDocuments.find(({ uri }) => uri.scheme === 'becket-page'),
      (found) => (found?.getText().length ?? 0) > 0,
    );
    holds(page?.getText().includes('unit') === true, 'The page does not speak of units.');
    await commands.executeCommand('workbench.action.closeActiveEditor');
  });
}

async function checkReading(): Promise<void> {
  await check('hints stand at the ends of lines and are never long enough to be cut', async () => {
    const plan = await Plan.open('bench.liftplan');
    const hints = await hintsOf(plan);
    holds(
      hints.some(({ text }) => text.includes('157 kg')),
      `No hint shows the frame's weight: ${JSON.stringify(hints)}`,
    );
    for (const { text, line, character } of hints) {
      holds([...text].length <= 40, `Longer than 40 characters: ${text}`);
      equal(character, plan.document.lineAt(line).text.length, `place of "${text}"`);
    }
  });
  await check('a hover begins with the result', async () => {
    const plan = await Plan.open('bench.liftplan');
    const words = await hoverAt(plan, 'Frame');
    holds(words.split('\n')[0]?.includes('157 kg') === true, words);
    holds(words.includes('7850 kg/m³') || words.includes('7,850 kg/m³'), words);
  });
  await check('a drawing and a list are read from their files, and again when they change', async () => {
    const plan = await Plan.open('truss.liftplan');
    equal(plan.findings(), []);
    const gussets = await hoverAt(plan, 'Gussets');
    holds(gussets.includes('16.96 kg'), gussets);
    const [bill] = await workspace.findFiles('**/truss-bill.csv');
    if (!bill) throw new Error('There is no truss-bill.csv.');
    const rows = await workspace.fs.readFile(bill);
    await workspace.fs.writeFile(bill, new TextEncoder().encode('name,weight kg\nBolt sets,\n'));
    await until(
      'the finding',
      () => plan.findings(),
      (found) => found.some((one) => one.includes('list-row-unclear')),
    );
    await workspace.fs.writeFile(bill, rows);
    await until(
      'it to go',
      () => plan.findings(),
      (found) => found.length === 0,
    );
  });
  await check('a paper is a link, and tells when it is not the one that was seen', async () => {
    const plan = await Plan.open('gearbox.liftplan');
    const paper = await until(
      'the link',
      () => commands.executeCommand<DocumentLink[]>('vscode.executeLinkProvider', plan.document.uri),
      (links) => links.some(({ target }) => target?.path.endsWith('papers/jack-sheet-g2.txt') === true),
    );
    equal(
      paper.map(({ range }) => plan.document.getText(range)),
      ['papers/jack-sheet-g2.txt', 'papers/jack-sheet-g2.txt'],
    );
    await plan.restoring(async () => {
      await plan.replace(plan.at('b4f3-4876-3742'), '0000-0000-0000');
      const [found] = plan.findings().filter((one) => one.includes('evidence-changed'));
      equal(found, 'error evidence-changed at "papers/jack-sheet-g2.txt"');
      const actions = await commands.executeCommand<CodeAction[]>(
        'vscode.executeCodeActionProvider',
        plan.document.uri,
        plan.at('papers/jack-sheet-g2.txt'),
      );
      const confirm = actions.find(({ title }) => title.startsWith('Confirm as seen'));
      await workspace.applyEdit(confirm?.edit as WorkspaceEdit);
      await plan.settled();
      holds(!plan.findings().some((one) => one.includes('evidence-changed')), plan.findings().join('\n'));
    });
  });
  await check('completion after "of" offers materials', async () => {
    const plan = await Plan.open('bench.liftplan');
    const list = await commands.executeCommand<CompletionList>(
      'vscode.executeCompletionItemProvider',
      plan.document.uri,
      plan.at('carbon steel').start,
    );
    const labels = list.items.map(({ label }) => (typeof label === 'string' ? label : label.label));
    holds(labels.includes('carbon steel') && labels.includes('aluminium'), labels.join(', '));
  });
  await check('the outline shows the load and its parts', async () => {
    const plan = await Plan.open('bench.liftplan');
    const symbols = await commands.executeCommand<DocumentSymbol[]>(
      'vscode.executeDocumentSymbolProvider',
      plan.document.uri,
    );
    const load = symbols.find(({ name }) => name.includes('Bench'));
    const part = load?.children.find(({ name }) => name.includes('Frame'));
    holds(part?.detail.includes('157 kg') === true, JSON.stringify(symbols));
  });
}

async function checkEditing(): Promise<void> {
  await check('a fix puts the unit in and the finding goes', async () => {
    const plan = await Plan.open('wrong.liftplan');
    const actions = await commands.executeCommand<CodeAction[]>(
      'vscode.executeCodeActionProvider',
      plan.document.uri,
      plan.at('450'),
    );
    const fix = actions.find(({ title, edit }) => edit !== undefined && /\bkg\b/.test(title));
    holds(fix?.edit !== undefined, `No fix with kg among: ${actions.map(({ title }) => title).join(' | ')}`);
    await plan.restoring(async () => {
      await workspace.applyEdit(fix?.edit as WorkspaceEdit);
      await plan.settled();
      equal(plan.document.lineAt(plan.at('stated').start.line).text, '  stated 450 kg, by marking');
      holds(!plan.findings().some((finding) => finding.includes('unit-missing')), plan.findings().join('\n'));
    });
  });
  await check('a rename changes plan and library, and back again leaves every byte as it was', async () => {
    const library = await Plan.open('bench-gear.liftplan');
    const plan = await Plan.open('bench.liftplan');
    const before = [plan.text, library.text];
    await rename(plan, 'Main hook', 'Yard hook');
    equal([plan.text.includes('Main hook'), library.text.includes('Main hook')], [false, false]);
    equal(plan.text.split('"Yard hook"').length - 1, 2, 'uses in the plan');
    await rename(plan, 'Yard hook', 'Main hook');
    equal([plan.text, library.text], before);
  });
  await check('the layout is reached in one step', async () => {
    const plan = await Plan.open('bench.liftplan');
    const laidOut = plan.text;
    await plan.restoring(async () => {
      await plan.replace(plan.at(', of carbon steel'), ',   of   carbon steel');
      await applyLayout(plan);
      equal(plan.text, laidOut);
      equal((await layoutEdits(plan)).length, 0, 'edits of a second run');
    });
  });
}

async function checkLife(): Promise<void> {
  await check('a setting holds at once', async () => {
    const plan = await Plan.open('bench.liftplan');
    await workspace.getConfiguration('becket').update('hints.parts', false, true);
    await until(
      'the hint to go',
      () => hintsOf(plan),
      (hints) => !hints.some(({ text }) => text.includes('157 kg')),
    );
    await workspace.getConfiguration('becket').update('hints.parts', undefined, true);
    await until(
      'the hint to come',
      () => hintsOf(plan),
      (hints) => hints.some(({ text }) => text.includes('157 kg')),
    );
  });
  await check('an unsaved library moves the plan that uses it', async () => {
    const library = await Plan.open('bench-gear.liftplan');
    const plan = await Plan.open('bench.liftplan');
    await library.restoring(async () => {
      await library.replace(library.at('capacity 1.3 t'), 'capacity 1 kg');
      await until(
        'the finding',
        () => plan.findings(),
        (found) => found.some((one) => one.includes('leg-overloaded')),
      );
    });
    await until(
      'it to go',
      () => plan.findings(),
      (found) => found.length === 0,
    );
  });
  await check('old versions shown by source control get no findings and no hints', async () => {
    const plan = await Plan.open('wrong.liftplan');
    const shown = workspace.registerTextDocumentContentProvider('svn', {
      provideTextDocumentContent: () => plan.text,
    });
    const old = await workspace.openTextDocument(plan.document.uri.with({ scheme: 'svn' }));
    equal(old.languageId, 'liftplan');
    await plan.replace(plan.at('Two causes'), 'Two  causes');
    equal(languages.getDiagnostics(old.uri).map(slug), []);
    equal(await commands.executeCommand('vscode.executeInlayHintProvider', old.uri, plan.whole), []);
    shown.dispose();
  });
  await check('a restart brings the findings back', async () => {
    const plan = await Plan.open('wrong.liftplan');
    await commands.executeCommand('becket.restart');
    await plan.settled();
    await until(
      'the findings',
      () => plan.findings(),
      (found) => found.length === 2,
    );
  });
}

async function hintsOf(plan: Plan): Promise<{ text: string; line: number; character: number }[]> {
  const hints = await commands.executeCommand<InlayHint[]>(
    'vscode.executeInlayHintProvider',
    plan.document.uri,
    plan.whole,
  );
  return hints.map(({ label, position: { line, character } }) => ({
    text: typeof label === 'string' ? label : label.map(({ value }) => value).join(''),
    line,
    character,
  }));
}

async function hoverAt(plan: Plan, words: string): Promise<string> {
  const hovers = await commands.executeCommand<Hover[]>(
    'vscode.executeHoverProvider',
    plan.document.uri,
    plan.inside(words),
  );
  return hovers.flatMap(({ contents }) => contents.map((content) => (content as MarkdownString).value)).join('\n');
}

async function rename(plan: Plan, from: string, to: string): Promise<void> {
  const edit = await commands.executeCommand<WorkspaceEdit>(
    'vscode.executeDocumentRenameProvider',
    plan.document.uri,
    plan.inside(from),
    to,
  );
  await workspace.applyEdit(edit);
  await plan.settled();
}

const layoutEdits = async (plan: Plan) =>
  (await commands.executeCommand<TextEdit[] | undefined>('vscode.executeFormatDocumentProvider', plan.document.uri, {
    tabSize: 2,
    insertSpaces: true,
  })) ?? [];

async function applyLayout(plan: Plan): Promise<void> {
  const edits = await layoutEdits(plan);
  await window.showTextDocument(plan.document);
  await plan.editor.edit((builder) => {
    for (const { range, newText } of edits) builder.replace(range, newText);
  });
  await plan.settled();
}
