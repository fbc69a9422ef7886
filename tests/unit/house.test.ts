// The rules of the house: who may import whom, what each room must not touch, how long files and functions get, and what ships.
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const filesIn = (folder: string, ending: RegExp): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .filter((path) => ending.test(path))
    .sort();

const server = filesIn('server', /(?<!\.d)\.ts$/);
const client = filesIn('client', /(?<!\.d)\.ts$/);
const tests = filesIn('tests', /(?<!\.d)\.(?:ts|mjs)$/);
const tools = filesIn('.build', /\.mjs$/);
const sources = [...server, ...client];
const roomOf = (path: string): string => path.split('/')[1] ?? '';

/** What a file imports: paths within the project, and packages. */
function importsOf(
  path: string,
): readonly { readonly from: string; readonly file: string | null; readonly onlyTypes: boolean }[] {
  const found = read(path).matchAll(/^(import|export)\s+(type\s)?(?:[^'"]*?\sfrom\s+)?'([^']+)'/gm);
  return [...found].map(([, , types, from = '']) => ({
    from,
    file: from.startsWith('.') ? join(path, '..', from).replaceAll('\\', '/') : null,
    onlyTypes: types !== undefined,
  }));
}

// ---------------------------------------------------------------- who may import whom

/** What the two rooms that meet the world may import. */
const outermost = [
  'report',
  'editor',
  'workspace',
  'checks',
  'results',
  'plan',
  'vocabulary',
  'catalog',
  'quantities',
  'syntax',
];

/** The graph of DEVELOPERS.md: each room with the rooms below it that it may name. */
const below: Readonly<Record<string, readonly string[]>> = {
  quantities: [],
  syntax: [],
  vocabulary: ['quantities'],
  catalog: ['quantities'],
  mechanics: ['quantities'],
  plan: ['syntax', 'vocabulary', 'catalog', 'quantities'],
  results: ['plan', 'mechanics', 'catalog', 'vocabulary', 'quantities', 'syntax'],
  checks: ['results', 'plan', 'vocabulary', 'quantities', 'syntax'],
  workspace: ['checks', 'results', 'plan', 'vocabulary', 'catalog', 'mechanics', 'quantities', 'syntax'],
  report: ['workspace', 'checks', 'results', 'plan', 'vocabulary', 'catalog', 'mechanics', 'quantities', 'syntax'],
  editor: ['workspace', 'checks', 'results', 'plan', 'vocabulary', 'catalog', 'mechanics', 'quantities', 'syntax'],
  protocol: outermost,
  command: outermost,
};

/** Rooms of which some others may name types only. */
const typesOnly: readonly (readonly [room: string, of: string])[] = [
  ['results', 'syntax'],
  ['checks', 'syntax'],
];

/** The command `server` starts the server of the protocol room: the one way across. */
const across = new Set(['server/command/server.ts -> server/protocol/node.ts']);

describe('who may import whom', () => {
  test('every room is in the graph', () =>
    expect([...new Set(server.map(roomOf))].sort()).toEqual(Object.keys(below).sort()));

  test('the graph has no circle', () => {
    const order = Object.keys(below);
    for (const [room, rooms] of Object.entries(below))
      for (const other of rooms) expect(order.indexOf(other), `${room} -> ${other}`).toBeLessThan(order.indexOf(room));
  });

  test.each(Object.keys(below))('%s', (room) => {
    const wrong = server
      .filter((path) => roomOf(path) === room)
      .flatMap((path) =>
        importsOf(path).flatMap(({ file, onlyTypes }) => {
          if (file === null || !file.startsWith('server/') || roomOf(file) === room || across.has(`${path} -> ${file}`))
            return [];
          const other = roomOf(file);
          if (!below[room]?.includes(other)) return [`${path} -> ${file}`];
          return typesOnly.some(([a, b]) => a === room && b === other) && !onlyTypes
            ? [`${path} -> ${file}: types only`]
            : [];
        }),
      );
    expect(wrong).toEqual([]);
  });

  test('the client knows of the server nothing but its messages', () => {
    const crossing = client.flatMap((path) =>
      importsOf(path)
        .filter(({ file }) => file?.startsWith('server/'))
        .map(({ file }) => file),
    );
    expect(new Set(crossing)).toEqual(new Set(['server/protocol/messages.ts']));
    expect(importsOf('server/protocol/messages.ts').filter(({ onlyTypes }) => !onlyTypes)).toEqual([]);
  });

  test('nothing outside the tests imports a test', () => {
    for (const path of [...sources, ...tools])
      expect(
        importsOf(path).filter(({ file }) => file?.startsWith('tests/')),
        path,
      ).toEqual([]);
  });
});

// ---------------------------------------------------------------- packages and the outside world

const packagesOf = (path: string): readonly string[] =>
  importsOf(path)
    .filter(({ file }) => file === null)
    .map(({ from }) => from);
const allowed: readonly (readonly [what: RegExp, where: RegExp])[] = [
  [/^ohm-js/, /^server\/syntax\/line\.ts$/],
  [/^d3-dsv$/, /^server\/plan\/csv\.ts$/],
  [/^vscode-(?:languageserver|jsonrpc|uri)/, /^server\/protocol\//],
  [/^(?:vscode$|vscode-languageclient)/, /^client\//],
];

describe('packages', () => {
  test('each is used in its room alone', () => {
    const wrong = sources.flatMap((path) =>
      packagesOf(path)
        .filter((from) => !isNode(from) && !allowed.some(([what, where]) => what.test(from) && where.test(path)))
        .map((from) => `${path}: ${from}`),
    );
    expect(wrong).toEqual([]);
  });

  test('Node is touched only by the process of the server and by the command line', () => {
    const wrong = sources.filter(
      (path) =>
        packagesOf(path).some(isNode) &&
        !/^server\/(?:protocol\/node\.ts$|command\/)/.test(path) &&
        path !== 'client/node.ts',
    );
    expect(wrong).toEqual([]);
  });
});

const isNode = (from: string): boolean => from.startsWith('node:') || builtinModules.includes(from);

/** The text without comments and without what stands in quotes. */
const codeOf = (path: string): string =>
  read(path)
    .replace(/\/\*.*?\*\//gs, '')
    .replace(/'(?:[^'\\\n]|\\.)*'/g, "''")
    .replace(/^\s*\/\/.*$|\s\/\/ .*$/gm, '');

test('no clock, no locale, no chance outside the rooms that meet the world', () => {
  // A calendar is no clock: dates are reckoned with Date.UTC and read back in UTC.
  const outside =
    /\bDate\.now\b|\bnew Date\(\s*\)|\.get(?:FullYear|Month|Date|Day|Hours|Minutes|TimezoneOffset)\(|\bperformance\.now\b|\bMath\.random\b|\bcrypto\b|\bIntl\b|\.toLocale\w+\(|\blocaleCompare\b|\bprocess\.|\bglobalThis\b|\bfetch\(|\bsetTimeout\b/;
  const pure = server.filter((path) => !['protocol', 'command'].includes(roomOf(path)));
  expect(pure.flatMap((path) => (outside.exec(codeOf(path)) ?? []).map((found) => `${path}: ${found}`))).toEqual([]);
});

test('only quantities turn a number into text for people', () => {
  const turning = /\.to(?:Fixed|Precision|Exponential|LocaleString)\(/;
  // None of these is a figure on screen: rounding of a table, digits of a digest, coordinates of drawings, keys.
  const others =
    /^server\/(?:catalog\/bars|report\/meaning|report\/render\/(?:bars|sketch[\w-]*)|results\/hang\/levelling)\.ts$/;
  expect(
    server.filter((path) => roomOf(path) !== 'quantities' && !others.test(path) && turning.test(codeOf(path))),
  ).toEqual([]);
});

test('one room has a memory: elsewhere no variable of a file changes', () => {
  const changing = server.filter(
    (path) =>
      !['workspace', 'protocol', 'command'].includes(roomOf(path)) && /^(?:export )?(?:let|var) /m.test(read(path)),
  );
  expect(changing).toEqual([]);
});

// ---------------------------------------------------------------- looks

describe('looks', () => {
  test('the first line of every file says what it is', () => {
    const generated = /^(?:#!.*\n)?\/\/ \S.{15,}/;
    expect([...sources, ...tests, ...tools].filter((path) => !generated.test(read(path)))).toEqual([]);
    for (const path of filesIn('samples', /\.liftplan$/)) expect(read(path), path).toMatch(/^# \S.{15,}/);
  });

  test('a room\u2019s door says what it holds, what it must never know and where to begin', () => {
    const doors = server.filter((path) => /^server\/\w+\/index\.ts$/.test(path));
    expect(doors.length).toBeGreaterThanOrEqual(9);
    for (const path of doors) expect(read(path).split('\n').slice(0, 4).join('\n'), path).toMatch(/never|must not/i);
  });

  test('files are called by what they hold, in kebab-case, and do not repeat their room', () => {
    expect(
      [...sources, ...tests].filter((path) => !/\/[a-z0-9]+(?:-[a-z0-9]+)*(?:\.test)?\.(?:ts|mjs)$/.test(path)),
    ).toEqual([]);
    expect(
      server.filter((path) =>
        path
          .split('/')
          .at(-1)
          ?.startsWith(`${roomOf(path)}-`),
      ),
    ).toEqual([]);
  });

  // 60 to 250 lines are normal here; what is longer has to be asked about. Tables may be as long as what they list.
  test('no file is longer than 400 lines', () => {
    const tables = new Set(['server/syntax/grammar.ts', 'server/vocabulary/shapes.ts']);
    const longer = (paths: readonly string[], most: number) =>
      paths
        .filter((path) => !tables.has(path))
        .map((path) => [path, read(path).trimEnd().split('\n').length] as const)
        .filter(([, lines]) => lines > most);
    expect(longer([...sources, ...tools], 400)).toEqual([]);
    expect(longer(tests, 500)).toEqual([]);
  });

  // About 10 to 40 lines are normal; a longer one has a name here.
  test('no function is longer than 60 lines', () => {
    const long = [...sources, ...tools].flatMap((path) =>
      functionsOf(path)
        .filter(({ lines }) => lines > 60)
        .map(({ name, lines }) => `${path}: ${name} has ${lines} lines`),
    );
    expect(long).toEqual([]);
  });

  test('nothing is left to be done, skipped or switched off', () => {
    const left = new RegExp(
      [
        'TO' + 'DO',
        'FIX' + 'ME',
        'X' + 'XX',
        '@ts-ig' + 'nore',
        '\\b(?:test|it|describe)\\.(?:sk' + 'ip|on' + 'ly|to' + 'do)\\b',
      ].join('|'),
    );
    expect([...sources, ...tests, ...tools].filter((path) => left.test(read(path)))).toEqual([]);
    expect(sources.filter((path) => /biome-ignore/.test(read(path)))).toEqual([]);
  });
});

/** Top-level functions and methods of a formatted file, by their indentation. */
function functionsOf(path: string): readonly { readonly name: string; readonly lines: number }[] {
  const lines = read(path).split('\n');
  return lines.flatMap((line, at) => {
    const [, indent = '', name = ''] =
      /^( {0,2})(?:export )?(?:default )?(?:async )?(?:function\*? |private |static |(?=\w+\(.*\).*\{$))(?:async )?(\w+)/.exec(
        line,
      ) ?? [];
    if (!name || /^(?:if|for|while|switch|catch|return)$/.test(name) || !line.endsWith('{')) return [];
    const end = lines.findIndex((later, i) => i > at && later === `${indent}}`);
    return end < 0 ? [] : [{ name, lines: end - at + 1 }];
  });
}

// ---------------------------------------------------------------- what ships and what people read first

const manifest = JSON.parse(read('package.json')) as {
  main: string;
  browser: string;
  bin: Record<string, string>;
  contributes: {
    commands: { command: string; title: string }[];
    configuration: { properties: Record<string, unknown> };
    languages: { configuration: string }[];
    grammars: { path: string }[];
  };
};
const listed = (path: string): readonly string[] =>
  read(path)
    .split('\n')
    .filter((line) => line.startsWith('!'))
    .map((line) => line.slice(1).replace(/^\//, ''));
const holds = (list: readonly string[], path: string): boolean =>
  list.some((one) => new RegExp(`^${one.replace(/[.]/g, '\\.').replace(/\*/g, '[^/]*')}$`).test(path));

describe('what ships', () => {
  const extension = listed('.vscodeignore');
  const command = listed('.npmignore');

  test('the extension holds all that its manifest names', () => {
    const named = [
      manifest.main,
      manifest.browser,
      ...manifest.contributes.languages.map((one) => one.configuration),
      ...manifest.contributes.grammars.map((one) => one.path),
    ];
    for (const path of named) expect(holds(extension, path.replace(/^\.\//, '')), path).toBe(true);
    for (const path of [
      'README.md',
      'CHANGELOG.md',
      'LICENSE',
      'dist/server.js',
      'dist/pages.json',
      'dist/sheet.js',
      'dist/sheet.css',
    ])
      expect(holds(extension, path), path).toBe(true);
  });

  test('the package holds the command and what it reads beside it', () => {
    for (const path of [...Object.values(manifest.bin), 'dist/server.js', 'dist/pages.json', 'README.md', 'LICENSE'])
      expect(holds(command, path.replace(/^\.\//, '')), path).toBe(true);
  });

  test('neither holds sources, tests, samples or anything else', () => {
    const out = [
      ...sources,
      ...tests,
      'samples/skid.liftplan',
      'tsconfig.json',
      'package-lock.json',
      '.cache/x',
      'DEVELOPERS.md',
    ];
    for (const path of out) expect([holds(extension, path), holds(command, path)], path).toEqual([false, false]);
  });
});

describe('what people read first', () => {
  test('the README names every command and every setting', () => {
    const text = read('README.md');
    for (const { title } of manifest.contributes.commands) expect(text).toContain(`| Becket: ${title} |`);
    for (const setting of Object.keys(manifest.contributes.configuration.properties))
      expect(text).toContain(`| \`${setting}\` |`);
  });

  test('the first screen carries the caution, word for word', async () => {
    const { cautions } = await import('../../server/checks/cautions.ts');
    const first = read('README.md').split('\n').slice(0, 12).join('\n');
    expect(first).toContain(`**${cautions.readme.title}** ${cautions.readme.text}`);
  });

  test('files that the documents link to are there', () => {
    for (const document of ['README.md', 'DEVELOPERS.md', 'grammar/README.md']) {
      const links = [...read(document).matchAll(/\]\(([^)#:]+)(?:#[^)]*)?\)/g)].map(([, path = '']) => path);
      const folder = document.includes('/') ? document.slice(0, document.lastIndexOf('/') + 1) : '';
      for (const path of links)
        expect(
          () => readdirSync(join(root, folder, path, path.endsWith('/') ? '' : '..')),
          `${document}: ${path}`,
        ).not.toThrow();
    }
  });
});
