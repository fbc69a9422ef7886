// The commands as a person or a build calls them: what is printed where, which exit code, which files.
import { existsSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cautions } from '../../../server/checks/index.ts';
import { becket, folder } from '../../support/terminal.ts';

const plan = (name: string, more = '') => `plan "${name}": date 2026-05-18, revision A
use "library/yard.liftplan"
load "Tank": datum "floor"
  stated 2,000 kg, by drawing, from "D-7", contingency 5 %
  free "stands loose"
  cog (0, 0, 1 m), by drawing
  pick P: at (0, 0, 2 m), capacity 5 t
gear
  hook "Hook": weight 100 kg, capacity 10 t
  sling S: like "Sling 1"
rig
  leg "Hook" > S > P
${more}`;
const library = 'gear\n  sling "Sling 1": length 2 m, weight 10 kg, capacity 5 t, lower end hook\n';
const yard = { 'library/yard.liftplan': library };
const wrong = 'plan "Wrong": date 2026-05-18\nload "Tank"\n  stated 2 ton, by drawing\n';

describe('check', () => {
  test('prints findings and the closing caution to the output, and ends in 1', async () => {
    const { code, out, said } = await becket(folder({ 'wrong.liftplan': wrong }), ['check', 'wrong.liftplan']);
    expect([code, said]).toEqual([1, '']);
    expect(out).toContain(
      '[unit-ambiguous]\n  wrong.liftplan:3:12\n    stated 2 ton, by drawing\n             ===\n  Could be: ',
    );
    expect(out.trimEnd().split('\n').at(-1)).toMatch(
      /^\d+ findings in 1 plan\. Only what is written was checked; this approves no lift\.$/,
    );
  });

  test('with nothing to stop for ends in 0, and says what nobody stated', async () => {
    const { code, out } = await becket(folder({ 'tank.liftplan': plan('Tank'), ...yard }), ['check', 'tank.liftplan']);
    expect(out).toBe(
      'No findings in 1 plan. Not stated, so not checked: the crane, the crane’s chart, where the crane lifts and sets down, deductions (hoist rope, jib, idle hook), the ground, wind and weather, surroundings, power lines, where the load is set down, people and their duties, steps, hazards, approvals. This approves no lift.\n',
    );
    expect(code).toBe(0);
  });

  test('a severity asked for decides the exit code, not what is printed', async () => {
    const path = folder({
      'a.liftplan':
        'plan "A": date 2026-05-18\nload "Tank"\n  stated 2 t, by drawing, contingency 5 %\n  cog (0, 0, 1 m), by drawing\n',
    });
    const all = await Promise.all(
      ['error', 'warning', 'note'].map((severity) => becket(path, ['check', 'a.liftplan', '--severity', severity])),
    );
    expect(all.map(({ code }) => code)).toEqual([0, 1, 1]);
    expect(new Set(all.map(({ out }) => out)).size).toBe(1);
  });

  test('a folder is read in the order of its paths; a library is checked but is no plan', async () => {
    const path = folder({
      'b/two.liftplan': wrong,
      'a/one.liftplan': wrong,
      'lib.liftplan': library,
      '.hidden/x.liftplan': wrong,
      'node_modules/x.liftplan': wrong,
      'a/other.txt': '',
    });
    const { out } = await becket(path, ['check', '.']);
    const places = [...out.matchAll(/^ {2}(\S+?):\d+:\d+$/gm)].map(([, file]) => file);
    expect([...new Set(places)]).toEqual(['a/one.liftplan', 'b/two.liftplan']);
    expect(out).toMatch(/findings in 2 plans\./);
  });

  test('a finding in a library counts once, however many plans take it in', async () => {
    const bad = library.replace('10 kg', '10 lbs');
    const path = folder({ 'library/yard.liftplan': bad, 'one.liftplan': plan('One'), 'two.liftplan': plan('Two') });
    const { out } = await becket(path, ['check', '.']);
    expect(out.match(/\[unit-unknown\]/g)).toHaveLength(1);
    expect(out).toContain('  library/yard.liftplan:2:');
  });

  test('standard input is named, so that it finds its library', async () => {
    const path = folder({ 'plans/library/yard.liftplan': library });
    const { out } = await becket(path, ['check', '-', '--named', 'plans/new.liftplan'], {
      input: async () => plan('New', 'expect gross load < 1 kg'),
    });
    expect(out).toContain('  plans/new.liftplan:13:8\n');
    expect(out).not.toContain('file-missing');
  });

  test.each([
    ['nothing named', [], 'Name a plan, a folder, or - for standard input.'],
    ['no such file', ['none.liftplan'], 'There is no file or folder none.liftplan.'],
    ['an empty folder', ['.'], 'No file below . ends in .liftplan.'],
    ['an option it does not have', ['.', '--loud'], 'There is no option --loud here.'],
    [
      'a word it does not know',
      ['.', '--severity', 'bad'],
      '--severity takes one of: error, warning, note. "bad" is none of them.',
    ],
    ['an option without its value', ['.', '--severity'], '--severity needs a value behind it.'],
  ])('cannot run: %s', async (_, args, sentence) => {
    const { code, out, said } = await becket(folder({}), ['check', ...args]);
    expect([code, out]).toEqual([2, '']);
    expect(said.split('\n')[0]).toBe(sentence);
  });

  test('colour follows the screen, the choice made, and NO_COLOR', async () => {
    const path = folder({ 'wrong.liftplan': wrong });
    const coloured = async (args: readonly string[], screen: boolean, env = {}) =>
      (await becket(path, ['check', 'wrong.liftplan', ...args], { screen, env })).out.includes('\u001b');
    expect(await coloured([], true)).toBe(true);
    expect(await coloured([], false)).toBe(false);
    expect(await coloured([], true, { NO_COLOR: '1' })).toBe(false);
    expect(await coloured(['--color', 'always'], false, { NO_COLOR: '1' })).toBe(true);
    expect(await coloured(['--color', 'never'], true)).toBe(false);
  });

  test('nothing outside the folder is read, neither by a path nor by a link', async () => {
    const outside = folder({ 'yard.liftplan': library });
    const path = folder({ 'up.liftplan': plan('Up').replace('library/', '../'), 'in.liftplan': plan('In') });
    symlinkSync(outside, join(path, 'library'));
    const { out } = await becket(path, ['check', '.']);
    expect(out.match(/\[file-missing\]/g)).toHaveLength(2);
    expect(out).toContain('it lies outside');
  });
});

describe('report', () => {
  test('one plan is one object; a folder an array in the order of paths; a library has no report', async () => {
    const path = folder({
      'plans/b.liftplan': plan('B'),
      'plans/a/a.liftplan': plan('A').replace('library/', '../library/'),
      'plans/library/yard.liftplan': library,
    });
    const one = JSON.parse((await becket(path, ['report', '--format', 'json', 'plans/b.liftplan'])).out);
    expect([one.plan.name, one.files]).toEqual(['B', ['b.liftplan', 'library/yard.liftplan']]);
    const all = JSON.parse((await becket(path, ['report', '--format', 'json', 'plans'])).out);
    expect(all.map((report: { files: string[] }) => report.files)).toEqual([
      ['a/a.liftplan', 'library/yard.liftplan'],
      ['b.liftplan', 'library/yard.liftplan'],
    ]);
    const none = await becket(path, ['report', '--format', 'json', 'plans/library']);
    expect([none.code, JSON.parse(none.out)]).toEqual([0, []]);
    expect(none.said).toContain('There is no plan here');
  });

  test('the name of the output says the format; sheets of a folder lie as their plans do', async () => {
    const path = folder({
      'plans/a/one.liftplan': plan('One').replace('library/', '../../library/'),
      'plans/two.liftplan': plan('Two').replace('library/', '../library/'),
      ...yard,
    });
    expect((await becket(path, ['report', 'plans', '--output', 'sheets'])).code).toBe(0);
    expect(readFileSync(join(path, 'sheets/a/one.sheet.md'), 'utf8')).toMatch(
      /^<!-- Do not edit: written by `becket report` from \.\.\/\.\.\/plans\/a\/one\.liftplan\./,
    );
    expect(existsSync(join(path, 'sheets/two.sheet.md'))).toBe(true);
    await becket(path, ['report', 'plans/two.liftplan', '--output', 'two.html']);
    expect(readFileSync(join(path, 'two.html'), 'utf8')).toMatch(/^<!DOCTYPE html>/);
    await becket(path, ['report', 'plans', '--output', 'all.json']);
    expect(JSON.parse(readFileSync(join(path, 'all.json'), 'utf8'))).toHaveLength(2);
    const several = await becket(path, ['report', 'plans']);
    expect([several.code, several.said.split('\n')[0]]).toEqual([
      2,
      'There are 2 plans: say with --output into which folder their sheets go.',
    ]);
  });

  test('lines of several plans say whose they are, and carry the caution', async () => {
    const path = folder({ 'one.liftplan': plan('One'), 'two.liftplan': plan('Two'), ...yard });
    const { out } = await becket(path, ['report', '--format', 'lines', '.']);
    expect(out.split('\n').filter((line) => line.startsWith('#'))).toEqual([
      '# one.liftplan',
      `# ${cautions.sheetHead}`,
      '# two.liftplan',
      `# ${cautions.sheetHead}`,
    ]);
    expect(out).toContain('\nload Tank, weight: 2,100 kg\n');
  });

  test('the same files give the same bytes', async () => {
    const path = folder({ 'one.liftplan': plan('One'), ...yard });
    for (const format of ['markdown', 'html', 'json', 'lines']) {
      const [first, second] = await Promise.all(
        [1, 2].map(() => becket(path, ['report', '--format', format, 'one.liftplan'])),
      );
      expect(first?.out).toBe(second?.out);
      expect(first?.out.length).toBeGreaterThan(500);
    }
  });
});

describe('report --verify', () => {
  const written = async () => {
    const path = folder({ 'plans/tank.liftplan': plan('Tank').replace('library/', '../library/'), ...yard });
    await becket(path, ['report', 'plans/tank.liftplan', '--output', 'plans/tank.sheet.md']);
    return path;
  };
  const change = (path: string, from: string, to: string) =>
    writeFileSync(
      join(path, 'plans/tank.liftplan'),
      readFileSync(join(path, 'plans/tank.liftplan'), 'utf8').replace(from, to),
    );

  test('a sheet that agrees, in whichever line endings, ends in 0', async () => {
    const path = await written();
    const sheet = join(path, 'plans/tank.sheet.md');
    writeFileSync(sheet, readFileSync(sheet, 'utf8').replace(/\n/g, '\r\n'));
    expect(await becket(path, ['report', '--verify', 'plans'])).toEqual({
      code: 0,
      out: 'The sheet shows what its plan says.\n',
      said: '',
    });
  });

  test('a changed figure ends in 1 and shows what differs and how to mend it; then it agrees', async () => {
    const path = await written();
    change(path, '2,000 kg', '2,500 kg');
    const { code, out } = await becket(path, ['report', '--verify', 'plans']);
    expect(code).toBe(1);
    expect(out).toMatch(/^plans\/tank\.sheet\.md no longer shows what plans\/tank\.liftplan says:\n {2}- /);
    expect(out).toContain('2,625 kg');
    expect(out.split('\n').filter((line) => /^ {2}[-+]/.test(line)).length).toBeLessThanOrEqual(20);
    const [, command = ''] = /Write it again with: becket (.*)/.exec(out) ?? [];
    expect((await becket(path, command.split(' '))).code).toBe(0);
    expect((await becket(path, ['report', '--verify', 'plans'])).code).toBe(0);
  });

  test('a comment or a blank line changes no sheet', async () => {
    const path = await written();
    change(path, 'load "Tank"', '# the tank\n\nload "Tank"');
    const { out } = await becket(path, ['report', '--verify', 'plans']);
    expect(out.split('\n').filter((line) => /^ {2}[-+]/.test(line) && !/line \d+/.test(line))).toEqual([]);
  });

  test('a plan named needs its sheet; in a folder without any there is nothing to verify', async () => {
    const path = folder({ 'tank.liftplan': plan('Tank'), ...yard });
    const named = await becket(path, ['report', '--verify', 'tank.liftplan']);
    expect([named.code, named.out.split('\n')[0]]).toEqual([
      1,
      'tank.sheet.md is missing: tank.liftplan has no sheet there.',
    ]);
    expect((await becket(path, ['report', '--verify', '.'])).code).toBe(2);
  });
});

describe('report --watch', () => {
  test('writes again when the plan or its library changes, until it is stopped', async () => {
    const path = folder({ 'tank.liftplan': plan('Tank'), ...yard });
    const stop = new AbortController();
    const sheet = join(path, 'tank.md');
    const done = becket(path, ['report', '--watch', 'tank.liftplan', '--output', 'tank.md'], { stop: stop.signal });
    const shows = async (words: string) => {
      const end = Date.now() + 5000;
      while (Date.now() < end && !(existsSync(sheet) && readFileSync(sheet, 'utf8').includes(words)))
        await new Promise((next) => setTimeout(next, 20));
      return readFileSync(sheet, 'utf8').includes(words);
    };
    expect(await shows('2,100 kg')).toBe(true);
    writeFileSync(join(path, 'tank.liftplan'), plan('Tank').replace('2,000 kg', '3,000 kg'));
    expect(await shows('3,150 kg')).toBe(true);
    writeFileSync(join(path, 'library/yard.liftplan'), library.replace('10 kg', '17 kg'));
    expect(await shows('17 kg')).toBe(true);
    stop.abort();
    expect((await done).code).toBe(0);
  });

  test('needs an output, and looks at files only', async () => {
    const path = folder({ 'tank.liftplan': plan('Tank') });
    expect((await becket(path, ['report', '--watch', 'tank.liftplan'])).code).toBe(2);
    expect((await becket(path, ['report', '--watch', '-', '--output', 'x.md'])).code).toBe(2);
  });
});

describe('format', () => {
  const loose = 'plan   "A":date 2026-05-18\nload "B"\n     stated 2 t,   by drawing  # as read\n';

  test('writes what it changes and keeps every comment; then there is nothing to change', async () => {
    const path = folder({ 'a.liftplan': loose });
    const before = await becket(path, ['format', '--verify', '.']);
    expect([before.code, before.out]).toEqual([1, 'a.liftplan\n']);
    expect(readFileSync(join(path, 'a.liftplan'), 'utf8')).toBe(loose);
    expect((await becket(path, ['format', '.'])).code).toBe(0);
    const text = readFileSync(join(path, 'a.liftplan'), 'utf8');
    expect(text).not.toBe(loose);
    expect(text).toContain('# as read');
    expect((await becket(path, ['format', '--verify', '.'])).code).toBe(0);
  });

  test('standard input comes back formatted', async () => {
    const { code, out } = await becket(folder({}), ['format', '-'], { input: async () => loose });
    expect(code).toBe(0);
    expect(out).toMatch(/^plan "A": date 2026-05-18\nload "B"\n {2}stated 2 t, by drawing/);
  });

  test('a file that is not UTF-8 is left alone', async () => {
    const path = folder({ 'a.liftplan': '' });
    writeFileSync(join(path, 'a.liftplan'), Buffer.from([0x70, 0xff, 0x0a]));
    expect((await becket(path, ['format', 'a.liftplan'])).code).toBe(2);
    expect([...readFileSync(join(path, 'a.liftplan'))]).toEqual([0x70, 0xff, 0x0a]);
  });
});

describe('explain, help, version', () => {
  const pages = JSON.stringify({
    'unit-missing': {
      title: 'A unit is missing',
      markdown:
        '# A unit is missing\n\n```liftplan raises\npart "D": box 4 x 2\n#             === unit-missing\n```\nWhy.\n',
    },
  });

  test('a page is shown without the marks its examples carry', async () => {
    const { code, out } = await becket(folder({ 'pages.json': pages }), ['explain', 'unit-missing']);
    expect([code, out]).toEqual([0, '# A unit is missing\n\n```liftplan\npart "D": box 4 x 2\n```\nWhy.\n']);
  });

  test('a finding not known names the nearest', async () => {
    const { code, said } = await becket(folder({ 'pages.json': pages }), ['explain', 'unit-mising']);
    expect([code, said.split('\n')[0]]).toEqual([2, 'No finding is called unit-mising. Nearest: unit-missing.']);
    expect((await becket(folder({ 'pages.json': pages }), ['explain', 'constructor'])).code).toBe(2);
  });

  test('help carries the caution and the exit codes; a version is a version', async () => {
    const { code, out } = await becket(folder({}), ['help']);
    expect(code).toBe(0);
    expect(out).toContain(cautions.help);
    expect(out).toMatch(/Exit codes: 0 .* 1 .*\n2 .* 3 /);
    expect((await becket(folder({}), ['check', '--help'])).out).toBe(out);
    expect((await becket(folder({}), ['version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  test.each([
    [[], 'Say what to do.'],
    [['lift'], 'There is no command lift.'],
    [['toString'], 'There is no command toString.'],
    [['server'], 'The server speaks over standard input and output: add --stdio.'],
  ])('cannot run: %j', async (args, sentence) => {
    const { code, said } = await becket(folder({}), args);
    expect([code, said.split('\n')[0]]).toEqual([2, sentence]);
  });
});
