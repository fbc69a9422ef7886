// A feature that fails answers empty and tells the log once; the work that waits is done once, or said to be pending.

import { expect, test, vi } from 'vitest';
import type { Connection } from 'vscode-languageserver';
import { announcedBy } from '../../server/protocol/announced.ts';
import type { Host } from '../../server/protocol/host.ts';
import { Session } from '../../server/protocol/session.ts';
import { Tasks } from '../../server/protocol/tasks.ts';
import { bench } from '../support/plans.ts';

const host: Host = {
  read: () => null,
  bytes: () => null,
  forget: () => {},
  arrived: () => {},
  real: (uri) => uri,
  list: async () => [],
  pages: async () => ({}),
  put: async () => null,
  soon: (deed) => void setImmediate(deed),
};

function session() {
  const error = vi.fn();
  const connection = {
    console: { error },
    sendDiagnostics: async () => {},
    sendNotification: async () => {},
  } as unknown as Connection;
  return {
    made: new Session(connection, host, announcedBy({ processId: null, rootUri: null, capabilities: {} })),
    error,
  };
}

test('a handler that throws answers empty, and the log hears of it once', () => {
  const { made, error } = session();
  const fault = new Error('a fault');
  const answer = made.answer('hover', null, () => {
    throw fault;
  });
  expect([answer({}), answer({}), answer({})]).toEqual([null, null, null]);
  expect(error).toHaveBeenCalledTimes(1);
  expect(error.mock.calls[0]?.[0]).toContain('hover: Error: a fault');
});

test('a handler about a document answers empty for one that is not known, without being asked', () => {
  const { made } = session();
  const feature = vi.fn(() => ['something']);
  const answer = made.answerAt('hints', [] as string[], feature);
  expect(answer({ textDocument: { uri: 'untitled:a' } })).toEqual([]);
  made.open('untitled:a', 1, bench);
  expect(answer({ textDocument: { uri: 'untitled:a' } })).toEqual(['something']);
  expect(feature).toHaveBeenCalledTimes(1);
});

test('what is asked for again before it is done is done once', async () => {
  const tasks = new Tasks(host);
  const deed = vi.fn();
  for (let n = 0; n < 20; n++) tasks.soon('check', deed);
  tasks.later('pause', 5, deed);
  tasks.later('pause', 5, deed);
  await tasks.idle();
  expect(deed).toHaveBeenCalledTimes(2);
});

test('a stream of messages puts work off, but not for ever', async () => {
  const tasks = new Tasks(host);
  const deed = vi.fn();
  for (let n = 0; n < 200 && !deed.mock.calls.length; n++) {
    tasks.soon('check', deed);
    await new Promise(setImmediate);
  }
  expect(deed).toHaveBeenCalled();
});

test('nothing is pending only once what was begun has ended, well or badly', async () => {
  const tasks = new Tasks(host);
  let ended = false;
  const work = tasks.during(
    new Promise<void>((_, reject) =>
      setTimeout(() => {
        ended = true;
        reject(new Error('no answer'));
      }, 20),
    ),
  );
  const [result] = await Promise.allSettled([work, tasks.idle()]);
  expect(ended).toBe(true);
  expect(result.status).toBe('rejected');
});
