// Paths offered inside quotation marks, and paths offered for a file that is not there: what lies in the opened folder, now.
import { afterEach, describe, expect, test } from 'vitest';
import { Client } from '../support/client.ts';
import { folder } from '../support/folder.ts';
import { whereIs } from '../support/plans.ts';

let client: Client;
afterEach(() => client.stop());

const plan = `plan "Set a guard": date 2026-06-02, units metric
use ""
load "Guard"
  contingency 5 %
  free "stands loose, seen 2 June"
  list ""
  part "Bracket": mesh "", unit mm, of carbon steel, at (0, 0, 0)
  stated 120 kg, by drawing, from ""
`;

const lying = {
  'plans/guard.liftplan': plan,
  'plans/bills/guard.csv': 'name,weight kg\nGuard,80\n',
  'plans/bracket.stl': 'solid a\nendsolid a\n',
  'drawings/Träger 2.obj': 'v 0 0 0\n',
  'drawings/G-7.pdf': 'paper',
  'yard.liftplan': 'gear\n  hook "Hook": weight 5 kg, capacity 1 t\n',
  '.hidden/old.csv': 'name,weight kg\nOld,1\n',
  'node_modules/package/list.csv': 'name,weight kg\nOther,1\n',
};

const inside = async (uri: string, before: string, triggerCharacter?: string): Promise<readonly string[]> => {
  const { line, character } = whereIs(plan, before);
  const list = await client.request('textDocument/completion', {
    textDocument: { uri },
    position: { line, character: character + before.length },
    context: triggerCharacter ? { triggerKind: 2, triggerCharacter } : { triggerKind: 1 },
  });
  return list.items.map(({ textEdit }: { textEdit: { newText: string } }) => textEdit.newText);
};

describe('inside quotation marks', () => {
  test('of `list`, `mesh`, `from` and `use` stand files of the fitting kind, by their paths from the plan', async () => {
    const place = folder(lying);
    client = await Client.start({ folders: [place.uri] });
    const uri = place.of('plans/guard.liftplan');
    client.open(uri, plan);
    await client.idle();
    expect(await inside(uri, '  list "', '"')).toEqual(['"bills/guard.csv']);
    expect(await inside(uri, 'mesh "')).toEqual(['"../drawings/Träger 2.obj', '"bracket.stl']);
    expect(await inside(uri, 'from "')).toEqual([
      '"../drawings/G-7.pdf',
      '"../drawings/Träger 2.obj',
      '"bills/guard.csv',
      '"bracket.stl',
    ]);
    expect(await inside(uri, 'use "')).toEqual(['"../yard.liftplan']);
  });

  test('stands what came a moment ago, though nobody told', async () => {
    const place = folder(lying);
    client = await Client.start({ folders: [place.uri] });
    const uri = place.of('plans/guard.liftplan');
    client.open(uri, plan);
    await client.idle();
    place.write('plans/bills/bolts.csv', 'name,weight kg\nBolts,3\n');
    expect(await inside(uri, '  list "')).toEqual(['"bills/bolts.csv', '"bills/guard.csv']);
  });

  test('of a lone file without a folder stands nothing', async () => {
    const place = folder(lying);
    client = await Client.start();
    const uri = place.of('plans/guard.liftplan');
    client.open(uri, plan);
    expect(await inside(uri, '  list "')).toEqual([]);
  });
});

test('a drawing or list of that name that lies elsewhere is offered, and no longer once it is gone', async () => {
  const text = plan.replace('list ""', 'list "guard.csv"').replace('mesh ""', 'mesh "Träger 2.obj"');
  const place = folder({ ...lying, 'plans/guard.liftplan': text });
  client = await Client.start({
    capabilities: {
      workspace: { didChangeWatchedFiles: { dynamicRegistration: true } },
      textDocument: { codeAction: { codeActionLiteralSupport: {} } },
    },
    folders: [place.uri],
  });
  const uri = place.of('plans/guard.liftplan');
  client.open(uri, text);
  const offered = async (line: number) => {
    await client.idle();
    const actions = await client.request('textDocument/codeAction', {
      textDocument: { uri },
      range: { start: { line, character: 9 }, end: { line, character: 9 } },
      context: { diagnostics: [] },
    });
    return actions.flatMap(({ edit }: { edit?: { changes?: Record<string, { newText: string }[]> } }) =>
      (edit?.changes?.[uri] ?? []).map(({ newText }) => newText).filter((put) => /\.(csv|obj)"$/.test(put)),
    );
  };
  expect(await offered(5)).toEqual(['"bills/guard.csv"']);
  expect(await offered(6)).toEqual(['"../drawings/Träger 2.obj"']);
  place.remove('plans/bills');
  client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: place.of('plans/bills/guard.csv'), type: 3 }] });
  expect(await offered(5)).toEqual([]);
});
