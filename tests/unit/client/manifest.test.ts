// The extension's manifest: what it promises is there, and it takes no choice away from the person who installs it.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import manifest from '../../../package.json';

const { contributes } = manifest;
const sources = readdirSync('client', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(`client/${name}`, 'utf8'))
  .join('\n');

test('sets no default for inlay hints, which would make the own choice of a person dead', () => {
  const defaults = JSON.stringify(contributes.configurationDefaults);
  expect(defaults).not.toContain('inlayHints');
  expect(Object.keys(contributes.configuration.properties).filter((name) => !name.startsWith('becket.'))).toEqual([]);
});

test('a language with a configuration file, without which opening a plan starts nothing', () => {
  const [language] = contributes.languages;
  expect(language).toMatchObject({ id: 'liftplan', extensions: ['.liftplan'] });
  for (const path of [language?.configuration, language?.icon.light, language?.icon.dark, manifest.icon]) {
    expect(existsSync(path ?? '')).toBe(true);
  }
});

test('every command is named as a plain deed of Becket, and the client has it', () => {
  const commands = contributes.commands.map(({ command, category }) => ({ command, category }));
  expect(commands.length).toBeGreaterThan(4);
  for (const { command, category } of commands) {
    expect(category).toBe('Becket');
    expect(sources).toContain(`registerCommand('${command}'`);
  }
  const registered = [...sources.matchAll(/registerCommand\('([^']+)'/g)].map(([, command]) => command);
  expect(registered.sort()).toEqual(commands.map(({ command }) => command).sort());
});

test('every setting says what it does and stands in the message type', () => {
  const messages = readFileSync('server/protocol/messages.ts', 'utf8');
  for (const [name, setting] of Object.entries(contributes.configuration.properties)) {
    expect(setting.markdownDescription.length).toBeGreaterThan(20);
    expect(messages).toContain(name.split('.').at(-1));
  }
});

test('starts only for a plan or its sheet, and works in restricted, virtual and remote folders', () => {
  expect(manifest.activationEvents).toEqual(['onWebviewPanel:becket.sheet']);
  expect(manifest.extensionKind).toEqual(['workspace']);
  expect(manifest.capabilities).toEqual({ untrustedWorkspaces: { supported: true }, virtualWorkspaces: true });
});
