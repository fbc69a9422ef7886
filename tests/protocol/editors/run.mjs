// Drives the server from two real editors, Neovim and Emacs, and says how many checks held: `node tests/protocol/editors/run.mjs`.
// Neither announces all that VS Code does, so what they see must not rest on it. NVIM and EMACS name other programs than those
// on the path; one that is missing is a failure.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const here = import.meta.dirname;
/** One cause, `450` without a unit; the last line is to be laid out (two spaces after the comma). */
const plan = `plan "Move a workbench": date 2026-05-18, revision A, site "Hall 2"
load "Bench": datum "middle of the frame, underside of the feet"
  stated 450, by marking
  part "Frame": box 2 m x 1 m x 10 mm, of carbon steel,  at (0, 0, 5 mm)
`;
const cause = { line: 2, from: 9, to: 12, code: 'unit-missing', source: 'becket' };
const edit = { line: 2, from: 12, to: 12, text: ' kg' };
const hover = { line: 3, character: 9 };
const laidOut = plan.replace('450,', '450 kg,').replace(',  at', ', at');

/** An error in the script would leave Neovim waiting for a key. */
const lua = `lua local good, why = pcall(dofile, [[${join(here, 'neovim.lua')}]]); if not good then io.stderr:write(why); vim.cmd('cquit 1') end`;
const editors = {
  Neovim: [process.env.NVIM ?? 'nvim', '--clean', '--headless', '-n', '-c', lua],
  Emacs: [process.env.EMACS ?? 'emacs', '-Q', '--batch', '-l', join(here, 'emacs.el')],
};

let held = 0;
let failed = 0;
for (const [name, command] of Object.entries(editors)) {
  const folder = mkdtempSync(join(tmpdir(), 'becket-editor-'));
  try {
    checkSeen(name, drive(command, folder));
  } catch (error) {
    note(name, 'runs to its end', false, String(error));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
console.log(`Editors: ${held} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

/** Runs one editor with a home of its own; what it saw. */
function drive([program, ...options], folder) {
  const file = join(folder, 'bench.liftplan');
  writeFileSync(file, plan);
  const seen = join(folder, 'seen.json');
  const own = Object.fromEntries(
    ['HOME', 'XDG_STATE_HOME', 'XDG_DATA_HOME', 'XDG_CACHE_HOME', 'XDG_CONFIG_HOME'].map((v) => [v, folder]),
  );
  const done = spawnSync(program, options, {
    encoding: 'utf8',
    timeout: 90_000,
    env: {
      ...process.env,
      ...own,
      PLAN: file,
      SEEN: seen,
      SERVER: resolve(here, '../../../dist/server.js'),
      EDIT: JSON.stringify(edit),
      HOVER: JSON.stringify(hover),
    },
  });
  if (done.error) throw done.error;
  if (done.status !== 0) throw new Error(`ended with ${done.status}\n${done.stdout}${done.stderr}`);
  return JSON.parse(readFileSync(seen, 'utf8'));
}

function checkSeen(name, seen) {
  const ofCause = (findings) => findings.filter(({ code }) => code === cause.code);
  note(name, 'knows the kind of file', seen.filetype.startsWith('liftplan'), seen.filetype);
  note(name, 'shows the finding at its place', same(ofCause(seen.before), [cause]), JSON.stringify(seen.before));
  note(name, 'lets it go once it is put right', same(ofCause(seen.after), []), JSON.stringify(seen.after));
  note(name, 'shows a hover with the weight', /\b157 kg\b/.test(seen.hover), seen.hover);
  note(name, 'lays the text out', seen.text === laidOut, seen.text);
}

function same(actual, expected) {
  const plain = (findings) =>
    JSON.stringify(findings.map(({ line, from, to, code, source }) => [line, from, to, code, source]));
  return plain(actual) === plain(expected);
}

function note(name, what, holds, seen) {
  if (holds) held += 1;
  else failed += 1;
  console.log(`${holds ? 'held  ' : 'FAILED'} ${name} ${what}${holds ? '' : `; seen:\n${seen}`}`);
}
