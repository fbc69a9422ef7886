// Random edits through the protocol: whatever was typed before, the server says what a run from nothing says.
// `npm run fuzz` makes 100,000 of them; FUZZ_EDITS and FUZZ_SEED choose others.
import { expect, test } from 'vitest';
import { Client } from '../support/client.ts';
import { cold, order, plain } from '../support/cold.ts';
import { edits } from '../support/edits.ts';
import { folder } from '../support/folder.ts';
import { gear, hung } from '../support/plans.ts';

const total = Number(process.env.FUZZ_EDITS ?? 3_000);
const seed = Number(process.env.FUZZ_SEED ?? 1);
/** Edits between two looks: most of them only have to be outlived. */
const round = 25;
const files = ['plan.liftplan', 'library/gear.liftplan'] as const;

test(`${total} random edits of a plan and its library, seed ${seed}`, { timeout: 60_000 + total * 40 }, async () => {
  const texts: Record<string, string> = { 'plan.liftplan': hung, 'library/gear.liftplan': gear };
  const place = folder(texts);
  const client = await Client.start({
    folders: [place.uri],
    capabilities: {
      textDocument: { publishDiagnostics: { relatedInformation: true }, inlayHint: {}, semanticTokens: {} },
    },
  });
  const sources = files.map((file, n) => ({ file, made: edits(texts[file] as string, seed * 2 + n), version: 1 }));
  for (const { file } of sources) client.open(place.of(file), texts[file] as string);
  for (let done = 0; done < total; ) {
    for (let n = 0; n < round; n++, done++) {
      const source = sources[done % 5 === 0 ? 1 : 0] as (typeof sources)[number];
      const { edit, text } = source.made.next().value as { edit: { range: never; text: string }; text: string };
      source.version += 1;
      client.change(place.of(source.file), source.version, edit);
      texts[source.file] = text;
    }
    // Saving ends the wait for a pause. The library comes first: the plan says what it finds in it.
    for (const { file } of [...sources].reverse()) client.save(place.of(file));
    await ask(client, place.of('plan.liftplan'));
    if (done % (round * 20) === 0)
      expect(await client.idle()).toEqual(
        Object.fromEntries(sources.map(({ file, version }) => [place.of(file), version])),
      );
    for (const { file } of sources) {
      expect(
        plain(client.findings(place.of(file))),
        `${file} after ${done} edits, seed ${seed}:\n${texts[file]}`,
      ).toEqual(inFile(texts, file));
    }
  }
  expect(await client.stop()).toBe(0);
  expect(client.told).toEqual([]); // nothing failed, or the log would say so
});

/** What an editor asks all the while. */
async function ask(client: Client, uri: string): Promise<void> {
  const textDocument = { uri };
  const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  await Promise.all([
    client.request('textDocument/hover', { textDocument, position: { line: 6, character: 9 } }),
    client.request('textDocument/completion', { textDocument, position: { line: 6, character: 20 } }),
    client.request('textDocument/inlayHint', { textDocument, range }),
    client.request('textDocument/documentSymbol', { textDocument }),
    client.request('textDocument/semanticTokens/full', { textDocument }),
    client.request('textDocument/formatting', { textDocument, options: {} }),
    client.request('becket/sheet', { uri, known: {} }),
  ]);
}

/** A file's own findings, and what the plan finds in its library. */
function inFile(texts: Readonly<Record<string, string>>, file: string) {
  const own = cold(texts, file);
  if (file === 'plan.liftplan') return own;
  const key = ({ line, from, to, code, message }: (typeof own)[number]) => `${line}:${from}-${to} ${code} ${message}`;
  const known = new Set(own.map(key));
  return [...own, ...cold(texts, 'plan.liftplan', file).filter((finding) => !known.has(key(finding)))].sort(order);
}
