// `becket compare` as a person or a build calls it: files, folders, revisions of a repository; exit codes and formats.
import { execFileSync } from 'node:child_process';
import { rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cautions } from '../../../server/checks/index.ts';
import { becket, folder } from '../../support/terminal.ts';

const plan = (name: string, kg = '2,000 kg') => `plan "${name}": date 2026-05-18, revision A
use "library/yard.liftplan"
load "Tank": datum "floor"
  stated ${kg}, by drawing, from "D-7", contingency 5 %
  free "stands loose"
  cog (0, 0, 1 m), by drawing
  pick P: at (0, 0, 2 m), capacity 5 t
gear
  hook "Hook": weight 100 kg, capacity 10 t
  sling S: like "Sling 1"
rig
  leg "Hook" > S > P
`;
const yard = (kg = '10 kg') => `gear\n  sling "Sling 1": length 2 m, weight ${kg}, capacity 5 t, lower end hook\n`;
const same = `${cautions.pullRequest}\n\nNo change in meaning.\n`;

describe('two files', () => {
  test('whatever they are called; each with what it uses from where it lies', async () => {
    const path = folder({
      'old/tank.liftplan': plan('Tank'),
      'old/library/yard.liftplan': yard(),
      'new.liftplan': plan('Tank'),
      'library/yard.liftplan': yard('11 kg'),
    });
    const { code, out, said } = await becket(path, ['compare', 'old/tank.liftplan', 'new.liftplan']);
    expect([code, said]).toEqual([1, '']);
    expect(out).toMatch(/^ {2}Gross load +2,210 kg +2,211 kg +\+1 kg, \+0\.05 %$/m); // 2,000 kg × 1.05 + 100 kg + 10 or 11 kg
    expect(out).toMatch(/^ {2}changed +sling “Sling 1” +weight 10 kg → 11 kg +library\/yard\.liftplan, line 2$/m);
  });

  test('that differ in layout alone end in 0 and one line', async () => {
    const path = folder({
      'a.liftplan': plan('Tank'),
      'b.liftplan': plan('Tank')
        .replace('2,000 kg', '2 t')
        .replace('free', '# as drawn\n  free')
        .replace('gear\n', '\n\ngear\n'),
      'library/yard.liftplan': yard(),
    });
    expect(await becket(path, ['compare', 'a.liftplan', 'b.liftplan'])).toEqual({ code: 0, out: same, said: '' });
  });
});

describe('two folders', () => {
  test('by the paths of their files; what is there once is told, what is alike is counted', async () => {
    const path = folder({
      'old/a/one.liftplan': plan('One'),
      'old/a/library/yard.liftplan': yard(),
      'old/gone.liftplan': plan('Gone'),
      'new/a/one.liftplan': plan('One', '2,100 kg'),
      'new/a/library/yard.liftplan': yard(),
      'new/fresh.liftplan': plan('Fresh'),
    });
    const { code, out } = await becket(path, ['compare', 'old', 'new']);
    expect(code).toBe(1);
    expect(out.match(/^\S+\.liftplan:$/gm)).toEqual(['a/one.liftplan:', 'fresh.liftplan:', 'gone.liftplan:']);
    expect(out).toMatch(/This plan is new\. Its standing is: .*not known/);
    expect(out).toMatch(/This plan is gone\. Its standing was: /);
    expect(out.trimEnd().split('\n').at(-1)).toBe('No change in meaning in 1 file besides.');
  });

  test('a line of a library is told once, where the library stands', async () => {
    const files = (kg: string, side: string) => ({
      [`${side}/one.liftplan`]: plan('One'),
      [`${side}/two.liftplan`]: plan('Two'),
      [`${side}/library/yard.liftplan`]: yard(kg),
    });
    const path = folder({ ...files('10 kg', 'old'), ...files('11 kg', 'new') });
    const { out } = await becket(path, ['compare', 'old', 'new']);
    expect(out.match(/weight 10 kg → 11 kg/g)).toHaveLength(1);
    expect(out.match(/^ {2}Gross load .*\+1 kg/gm)).toHaveLength(2);
  });
});

describe('a revision of a repository', () => {
  const git = (cwd: string, ...args: readonly string[]) =>
    execFileSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@example.org', '-C', cwd, ...args], { stdio: 'pipe' });
  const repository = (files: Readonly<Record<string, string>>) => {
    const path = folder(files);
    git(path, 'init', '-q');
    git(path, 'add', '-A');
    git(path, 'commit', '-q', '-m', 'As first drawn');
    return path;
  };
  const first = { 'plans/tank.liftplan': plan('Tank'), 'plans/library/yard.liftplan': yard() };

  test('with what the plan used then; on disk now, as well where a file came or went', async () => {
    const path = repository(first);
    expect(await becket(path, ['compare', '--since', 'HEAD', 'plans'])).toMatchObject({
      code: 0,
      out: `${cautions.pullRequest}\n\nNo change in meaning in 2 files.\n`,
    });
    writeFileSync(join(path, 'plans/library/yard.liftplan'), yard('12 kg'));
    const { code, out } = await becket(path, ['compare', '--since', 'HEAD', 'plans/tank.liftplan']);
    expect(code).toBe(1);
    expect(out).toMatch(/^plans\/tank\.liftplan:$/m);
    expect(out).toMatch(/^ {2}Gross load +2,210 kg +2,212 kg +\+2 kg/m);
    rmSync(join(path, 'plans/tank.liftplan'));
    writeFileSync(join(path, 'plans/other.liftplan'), plan('Other'));
    const all = await becket(path, ['compare', '--since', 'HEAD', 'plans']);
    expect(all.out).toContain('This plan is gone.');
    expect(all.out).toContain('This plan is new.');
    expect((await becket(path, ['compare', '--since', 'HEAD', 'plans/tank.liftplan'])).out).toContain(
      'This plan is gone.',
    );
  });

  test('against another revision, from a folder within the repository', async () => {
    const path = repository(first);
    writeFileSync(join(path, 'plans/tank.liftplan'), plan('Tank', '2,200 kg'));
    git(path, 'commit', '-q', '-a', '-m', 'Heavier by the drawing');
    writeFileSync(join(path, 'plans/tank.liftplan'), plan('Tank', '9,999 kg'));
    const { code, out } = await becket(join(path, 'plans'), [
      'compare',
      '--since',
      'HEAD~1',
      '--until',
      'HEAD',
      'tank.liftplan',
    ]);
    expect(code).toBe(1);
    expect(out).toMatch(/^ {2}Load Tank +2,100 kg +2,310 kg +\+210 kg, \+10 %$/m);
    expect(out).not.toContain('9,999');
  });

  test('reads lines as git would write them to disk, and follows no link', async () => {
    const path = repository(first);
    writeFileSync(join(path, '.gitattributes'), '*.liftplan text eol=crlf\n');
    expect((await becket(path, ['compare', '--since', 'HEAD', 'plans'])).code).toBe(0);
    const outside = folder({ 'yard.liftplan': yard() });
    rmSync(join(path, 'plans/library'), { recursive: true });
    symlinkSync(outside, join(path, 'plans/library'));
    git(path, 'add', '-A');
    git(path, 'commit', '-q', '-m', 'Library elsewhere');
    const { out } = await becket(path, ['compare', '--since', 'HEAD~1', '--until', 'HEAD', 'plans/tank.liftplan']);
    expect(out).toContain('file-missing');
  });

  test.each([
    ['no such revision', ['--since', 'nowhere', 'plans'], /^There is no revision nowhere in /],
    ['an option for a revision', ['--since=--output=x', 'plans'], /^"--output=x" is no name of a revision\./],
    ['no path', ['--since', 'HEAD'], /^Name a plan or a folder behind --since/],
    [
      'no such path',
      ['--since', 'HEAD', 'none.liftplan'],
      /^There is no plan at none\.liftplan, neither before nor now\./,
    ],
  ])('cannot run: %s', async (_, args, sentence) => {
    const { code, out, said } = await becket(repository(first), ['compare', ...args]);
    expect([code, out]).toEqual([2, '']);
    expect(said).toMatch(sentence);
  });

  test('cannot run outside a repository', async () => {
    const { code, said } = await becket(folder(first), ['compare', '--since', 'HEAD', 'plans']);
    expect([code, said.split('\n')[0]]).toEqual([2, 'plans is in no git repository.']);
  });
});

describe('formats', () => {
  const path = () =>
    folder({ 'a.liftplan': plan('Tank'), 'b.liftplan': plan('Tank', '2,100 kg'), 'library/yard.liftplan': yard() });

  test('Markdown begins with the caution for a comment', async () => {
    const { out } = await becket(path(), ['compare', 'a.liftplan', 'b.liftplan', '--format', 'markdown']);
    expect(out.split('\n')[0]).toBe(cautions.pullRequest);
    expect(out).toContain('| Load Tank | 2,100 kg | 2,205 kg | +105 kg, +5 % |');
  });

  test('JSON is one object with a version of its own', async () => {
    const { out } = await becket(path(), ['compare', 'a.liftplan', 'b.liftplan', '--format', 'json']);
    expect(JSON.parse(out)).toMatchObject({
      format: 'liftplan comparison',
      version: 1,
      plans: [{ path: 'b.liftplan', change: 'changed' }],
    });
  });

  test.each([
    [[], 'Name two files or two folders, the older one first; or a revision with --since, and a path.'],
    [['a.liftplan', '.'], 'a.liftplan and . are not both files, nor both folders.'],
    [['a.liftplan', 'c.liftplan'], 'There is no file or folder c.liftplan.'],
    [['a.liftplan', 'b.liftplan', '--until', 'HEAD'], '--until goes with --since.'],
    [
      ['a.liftplan', 'b.liftplan', '--format', 'xml'],
      '--format takes one of: text, markdown, json. "xml" is none of them.',
    ],
  ])('cannot run: %j', async (args, sentence) => {
    const { code, out, said } = await becket(path(), ['compare', ...args]);
    expect([code, out, said.split('\n')[0]]).toEqual([2, '', sentence]);
  });
});
