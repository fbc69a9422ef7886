// Completion, renaming, ways out and moved files, asked over the protocol.
import { afterEach, expect, test } from 'vitest';
import { Client, type Position, type TextEdit } from '../support/client.ts';
import { cold } from '../support/cold.ts';
import { folder } from '../support/folder.ts';
import { bench, gear, hung, stretch, whereIs } from '../support/plans.ts';

const uri = 'untitled:Bench';
let client: Client;
afterEach(() => client.stop());

const able = {
  workspace: { workspaceEdit: { documentChanges: true }, fileOperations: { willRename: true } },
  textDocument: {
    rename: { prepareSupport: true },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: [] } },
      isPreferredSupport: true,
      dataSupport: true,
      resolveSupport: { properties: ['edit'] },
    },
    completion: { completionItem: { snippetSupport: true } },
  },
};

/** A text after edits that do not overlap. */
function applied(text: string, edits: readonly TextEdit[]): string {
  const lines = text.split('\n');
  const offset = ({ line, character }: Position) =>
    lines.slice(0, line).reduce((sum, { length }) => sum + length + 1, 0) + character;
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (now, { range, newText }) => now.slice(0, offset(range.start)) + newText + now.slice(offset(range.end)),
      text,
    );
}

const completions = async (text: string, position: Position, triggerCharacter?: string) => {
  client.open(uri, text);
  const list = await client.request('textDocument/completion', {
    textDocument: { uri },
    position,
    ...(triggerCharacter && { context: { triggerKind: 2, triggerCharacter } }),
  });
  return {
    ...list,
    items: [...list.items].sort((a: { sortText: string }, b: { sortText: string }) =>
      a.sortText < b.sortText ? -1 : 1,
    ),
  };
};

test('completion offers what may stand there, in its own order, with the exact stretch it replaces', async () => {
  client = await Client.start({ capabilities: able });
  const text = bench.replace('of carbon steel', 'of carb');
  const { line, character } = whereIs(text, 'of carb');
  const { items } = await completions(text, { line, character: character + 'of carb'.length });
  const steel = items.find(({ label }: { label: string }) => label === 'carbon steel');
  expect(applied(text, [steel.textEdit])).toBe(bench);
  expect(steel.detail).toMatch(/kg\/m/);
});

test('units that fit stand behind a number, behind an emoji too', async () => {
  client = await Client.start({ capabilities: able });
  const text = bench.replace('"Frame": box 2 m x', '"Frame 🔩": box 2 x');
  const { line, character } = whereIs(text, 'box 2 x');
  const put = text.replace('box 2 x', 'box 2  x');
  const { items } = await completions(put, { line, character: character + 'box 2 '.length }, ' ');
  const metres = items.find(({ label }: { label: string }) => label === 'm');
  expect(applied(put, [metres.textEdit])).toContain('"Frame 🔩": box 2 m x');
  expect(items.map(({ label }: { label: string }) => label)).not.toContain('kg');
});

test('a client without snippets is offered none', async () => {
  client = await Client.start();
  const { items } = await completions(`${bench}\n`, { line: bench.split('\n').length, character: 0 });
  expect(items.length).toBeGreaterThan(0);
  expect(items.every((item: { insertTextFormat?: number }) => item.insertTextFormat !== 2)).toBe(true);
});

test('definition and references over files', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ folders: [place.uri] });
  const [plan, library] = [place.of('cover.liftplan'), place.of('library/gear.liftplan')];
  client.open(plan, hung);
  await client.idle();
  const position = whereIs(hung, 'Block 5');
  const definition = await client.request('textDocument/definition', { textDocument: { uri: plan }, position });
  expect(definition).toEqual([{ uri: library, range: stretch(gear, '"Block 5"') }]);
  // Asked in the library, which no editor has open, the plans that take it in answer too.
  const references = await client.request('textDocument/references', {
    textDocument: { uri: library },
    position: whereIs(gear, 'Block 5'),
    context: { includeDeclaration: false },
  });
  expect(references.map(({ uri: at }: { uri: string }) => at)).toEqual([plan, plan]);
  const highlights = await client.request('textDocument/documentHighlight', { textDocument: { uri: plan }, position });
  expect(highlights).toHaveLength(2);
  const symbols = await client.request('workspace/symbol', { query: 'block' });
  expect(symbols).toMatchObject([{ location: { uri: library } }]);
});

test('renaming reaches every file, with the version each edit is made for, and back gives the same bytes', async () => {
  const place = folder({ 'cover.liftplan': hung, 'library/gear.liftplan': gear });
  client = await Client.start({ capabilities: able, folders: [place.uri] });
  const [plan, library] = [place.of('cover.liftplan'), place.of('library/gear.liftplan')];
  client.open(plan, hung, 4);
  await client.idle();
  const position = whereIs(hung, 'Block 5');
  expect(await client.request('textDocument/prepareRename', { textDocument: { uri: plan }, position })).toEqual({
    range: stretch(hung, '"Block 5"'),
    placeholder: 'Block 5',
  });
  const rename = async (texts: Readonly<Record<string, string>>, newName: string) => {
    const { documentChanges } = await client.request('textDocument/rename', {
      textDocument: { uri: plan },
      position,
      newName,
    });
    expect(documentChanges.map(({ textDocument }: { textDocument: unknown }) => textDocument)).toEqual(
      expect.arrayContaining([{ uri: plan, version: expect.any(Number) }]),
    );
    return Object.fromEntries(
      Object.entries(texts).map(([at, text]) => [
        at,
        applied(
          text,
          documentChanges.find(({ textDocument }: { textDocument: { uri: string } }) => textDocument.uri === at)
            ?.edits ?? [],
        ),
      ]),
    );
  };
  const there = await rename({ [plan]: hung, [library]: gear }, 'Hook block 🪝');
  expect(there[library]).toContain('block "Hook block 🪝": weight 60 kg');
  expect(there[plan]?.match(/Hook block/g)).toHaveLength(2);
  client.change(plan, 5, { text: there[plan] as string });
  client.open(library, there[library] as string, 9);
  expect(await rename(there, 'Block 5')).toEqual({ [plan]: hung, [library]: gear });
});

test('a name that is taken is refused with a sentence', async () => {
  client = await Client.start({ capabilities: able });
  const two = `${bench}  part "Shelf": box 2 m x 1 m x 10 mm, of carbon steel, at (0, 0, 1 m)\n`;
  client.open(uri, two);
  const asked = client.request('textDocument/rename', {
    textDocument: { uri },
    position: whereIs(two, 'Shelf'),
    newName: 'Frame',
  });
  await expect(asked).rejects.toThrow(/Frame.* is taken/);
});

const actions = (text: string, words: string, only?: readonly string[], diagnostics: readonly unknown[] = []) =>
  client.request('textDocument/codeAction', {
    textDocument: { uri },
    range: stretch(text, words),
    context: { diagnostics, ...(only && { only }) },
  });

test('quick fixes belong to their finding, and at most one of a finding is preferred', async () => {
  client = await Client.start({ capabilities: able });
  const text = bench.replace('1 m x 10 mm', '1 x 10 mm').replace('2 m x', '2 m x');
  client.open(uri, text);
  await client.idle();
  const [finding] = client.findings(uri);
  const found = await actions(text, 'box', ['quickfix'], [finding]);
  expect(found.length).toBeGreaterThan(0);
  expect(found[0].diagnostics).toEqual([finding]);
  expect(found.filter(({ isPreferred }: { isPreferred?: boolean }) => isPreferred).length).toBeLessThanOrEqual(1);
  const [{ edits, textDocument }] = found[0].edit.documentChanges;
  expect(textDocument).toEqual({ uri, version: 1 });
  expect(cold({ plan: applied(text, edits) }, 'plan').map(({ code }) => code)).not.toContain('unit-missing');
});

test('fix-all is asked for by its kind only, reaches its end in one change, and a second time finds nothing', async () => {
  client = await Client.start({ capabilities: able });
  const text = bench
    .replace('2 m x 1 m', '2\u200b m x 1 m')
    .replace('at (0, 0, 5 mm)', 'at (0, 0,\u200b 5 mm)')
    .replace('load "Bench"', 'load\u00ad "Bench"');
  client.open(uri, text);
  const kinds = (await actions(text, 'box')).map(({ kind }: { kind: string }) => kind);
  expect(kinds).not.toContain('source.fixAll.liftplan');
  expect(await actions(text, 'box', ['source.organizeImports'])).toEqual([]);
  const [all, ...more] = await actions(text, 'box', ['source.fixAll']);
  expect(more).toEqual([]);
  expect(all.kind).toBe('source.fixAll.liftplan');
  const fixed = applied(text, all.edit.documentChanges[0].edits);
  expect(fixed).toBe(bench);
  client.change(uri, 2, { text: fixed });
  expect(await actions(fixed, 'box', ['source.fixAll.liftplan'])).toEqual([]);
});

test('all findings of one kind are put right by a choice that is worked out once it is made', async () => {
  client = await Client.start({ capabilities: able });
  const text = bench.replace('2 m x 1 m', '2\u200b m x 1 m').replace('load "Bench"', 'load\u200b "Bench"');
  client.open(uri, text);
  const found = await actions(text, 'box', ['quickfix']);
  const chosen = found.find(({ data }: { data?: unknown }) => data);
  expect(chosen).not.toHaveProperty('edit');
  const { edit } = await client.request('codeAction/resolve', chosen);
  expect(applied(text, edit.documentChanges[0].edits)).toBe(bench);
});

test('"Hold this result" writes an expect line that holds', async () => {
  client = await Client.start({ capabilities: able });
  client.open(uri, bench);
  const [held] = await actions(bench, 'part "Frame"', ['refactor']);
  const after = applied(bench, held.edit.documentChanges[0].edits);
  expect(after).toMatch(/^expect part Frame weight/m);
  expect(cold({ plan: after }, 'plan')).toEqual([]);
});

test('`use` follows a file that is moved, and a folder', async () => {
  const place = folder({
    'cover.liftplan': hung,
    'library/gear.liftplan': gear,
    'old/wall.liftplan': hung.replace('library/', '../library/'),
  });
  client = await Client.start({ capabilities: able, folders: [place.uri] });
  client.open(place.of('cover.liftplan'), hung);
  await client.idle();
  const moved = async (from: string, to: string) => {
    const answer = await client.request('workspace/willRenameFiles', {
      files: [{ oldUri: place.of(from), newUri: place.of(to) }],
    });
    return Object.fromEntries(
      (answer?.documentChanges ?? []).map(
        ({ textDocument, edits }: { textDocument: { uri: string }; edits: TextEdit[] }) => [
          textDocument.uri.slice(place.uri.length + 1),
          edits.map(({ newText }) => newText),
        ],
      ),
    );
  };
  expect(await moved('library/gear.liftplan', 'register.liftplan')).toEqual({
    'cover.liftplan': ['"register.liftplan"'],
    'old/wall.liftplan': ['"../register.liftplan"'],
  });
  expect(await moved('library', 'shared things')).toEqual({
    'cover.liftplan': ['"shared things/gear.liftplan"'],
    'old/wall.liftplan': ['"../shared things/gear.liftplan"'],
  });
  expect(await moved('old/wall.liftplan', 'wall.liftplan')).toEqual({
    'old/wall.liftplan': ['"library/gear.liftplan"'],
  });
  expect(await moved('cover.liftplan', 'lid.liftplan')).toEqual({});
});
