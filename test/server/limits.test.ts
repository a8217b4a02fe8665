import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { readConfiguration } from '../../server/configuration.ts';
import type { CommitOutcome, EventStore, ReceivedEvent } from '../../server/store/event-store.ts';
import { GroupCommit, type Submitter } from '../../server/sync/group-commit.ts';
import { LIMITS } from '../../server/sync/limits.ts';
import { TakeTurns } from '../../server/sync/take-turns.ts';
import { tries } from '../how-much.ts';
import { scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

let server: RunningApp;
const scratch = scratchFolder();
beforeAll(async () => {
  server = await runApp({ helloWithinMs: 60_000 });
});
afterAll(async () => {
  await server.stop();
  scratch.remove();
});

/** A device that sends one event and waits for its acknowledgement. Milliseconds until that came. */
async function acknowledged(visit: string): Promise<number> {
  const stream = streamOf(visit, `device-${visit}`);
  const [entry] = await chainFor(stream, ['{"one":1}']);
  const client = await RawClient.open(server.url);
  const began = performance.now();
  await client.hello(stream);
  client.say({ kind: 'append', ...entry });
  expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
  client.socket.close();
  return performance.now() - began;
}

describe('each harms only itself:', () => {
  test.each([1e300, -1e300, Number.MAX_SAFE_INTEGER, 0])(
    'a device whose clock says %d is taken, and so is another',
    async (clock) => {
      const visit = `wild-${String(clock).replaceAll(/[^0-9a-z]/g, '-')}`;
      const stream = streamOf(visit);
      const client = await RawClient.open(server.url);
      client.say({ kind: 'hello', protocol: 1, stream, clock });
      await client.hear();
      const [entry] = await chainFor(stream, ['{"n":1}']);
      client.say({ kind: 'append', ...entry });
      const [mine] = await Promise.all([client.hear(), acknowledged(`${visit}-beside`)]);
      expect(mine).toMatchObject({ kind: 'ack', seq: 1 });
      const { streams } = await getJson<{ streams: { flags: string[] }[] }>(`${server.url}/api/visits/${visit}`);
      expect(streams[0]?.flags).toContain('clock-differs');
      client.socket.close();
    },
  );

  test('sockets that say nothing: beyond the limit the longest silent goes, and a device is served', async () => {
    const silent = await Promise.all(Array.from({ length: LIMITS.silent + 10 }, () => RawClient.open(server.url)));
    expect(await acknowledged('beside-silence')).toBeLessThan(5_000);
    const first = await silent[0]?.closed;
    expect(first?.code).toBe(1013);
    for (const client of silent) client.socket.terminate();
  });

  test('a device that is gone without a word: its connection is cut, one that only has nothing to say stays', async () => {
    const looking = await runApp({ lookEveryMs: 100 });
    // Pings are answered by every WebSocket that lives (RFC 6455, 5.5.2); this one is as if its machine were off.
    const gone = new WebSocket(`${looking.url.replace('http', 'ws')}/sync`, { origin: looking.url, autoPong: false });
    const closed = once(gone, 'close');
    await once(gone, 'open');
    gone.send(JSON.stringify({ kind: 'hello', protocol: 1, stream: streamOf('gone') }));
    const quiet = await RawClient.open(looking.url);
    await quiet.hello(streamOf('quiet'));
    await closed;
    const [entry] = await chainFor(streamOf('quiet'), ['{"n":1}']);
    quiet.say({ kind: 'append', ...entry });
    expect(await quiet.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    await looking.stop();
  });

  test('readers: beyond the limit of a visit they are refused, and a device is served', async () => {
    await acknowledged('watched');
    const watch = { kind: 'watch', protocol: 1, company: 'local', visit: 'watched', from: [] };
    const readers: RawClient[] = [];
    for (let at = 0; at < LIMITS.watchersOfVisit + 5; at += 1) {
      const reader = await RawClient.open(server.url);
      reader.say(watch);
      readers.push(reader);
    }
    const answers = await Promise.all(readers.map((reader) => reader.hear()));
    expect(answers.filter((answer) => answer.kind === 'error')).toHaveLength(5);
    expect(answers.filter((answer) => answer.kind === 'events')).toHaveLength(LIMITS.watchersOfVisit);
    expect(await acknowledged('beside-readers')).toBeLessThan(5_000);
    for (const reader of readers) reader.socket.terminate();
  });

  test('connections of one device: beyond the limit they are told, and one that goes makes room', async () => {
    const open = async (at: number) => {
      const client = await RawClient.open(server.url);
      client.say({ kind: 'hello', protocol: 1, stream: streamOf(`many-${at}`, 'one-device') });
      return { client, answer: await client.hear() };
    };
    const held = [];
    for (let at = 0; at < LIMITS.writersOfDevice; at += 1) held.push(await open(at));
    expect(held.every(({ answer }) => answer.kind === 'welcome')).toBe(true);
    expect((await open(98)).answer).toMatchObject({ kind: 'error', code: 'too-many-of-device' });
    held[0]?.client.socket.close();
    await held[0]?.client.closed;
    await expect.poll(async () => (await open(99)).answer.kind, { timeout: 5_000 }).toBe('welcome');
    for (const { client } of held) client.socket.terminate();
  });

  test('one that floods: another device’s event is in the very next batch', () => {
    const turns = new TakeTurns<string>();
    for (let at = 0; at < 100_000; at += 1) turns.add('flood', `flood ${at}`);
    turns.add('quiet', 'quiet 0');
    const batch = turns.take(512);
    expect(batch).toContain('quiet 0');
    expect(batch).toHaveLength(512);
    expect(turns.size).toBe(100_001 - 512);
  });

  test('one that floods and those that come anew share each batch in halves', () => {
    const turns = new TakeTurns<string>();
    const flood = () => {
      for (let at = 0; at < 600; at += 1) turns.add('flood', 'flood');
    };
    flood();
    turns.take(512);
    for (let round = 0; round < 20; round += 1) {
      flood();
      // As many others as half a batch has room for, each of them new.
      for (let at = 0; at < 256; at += 1) turns.add(`new ${round} ${at}`, 'new');
      const batch = turns.take(512);
      expect(batch.filter((one) => one === 'flood')).toHaveLength(256);
      expect(batch.filter((one) => one === 'new')).toHaveLength(256);
    }
  });

  test('turns lose nothing, double nothing and keep the order of each name, whatever comes', () => {
    for (let round = 0; round < tries(200, 20_000); round += 1) {
      const turns = new TakeTurns<[string, number]>();
      const next = new Map<string, number>();
      const seen = new Map<string, number>();
      let at = round + 1;
      const random = (below: number) => {
        // Numbers of a linear congruence (Lehmer, 48271): the same in every run.
        at = (at * 48_271) % 2_147_483_647;
        return at % below;
      };
      const check = (batch: readonly [string, number][]) => {
        for (const [name, number] of batch) {
          expect(number).toBe(seen.get(name) ?? 0);
          seen.set(name, number + 1);
        }
      };
      for (let step = 0; step < 30; step += 1) {
        const name = `n${random(4)}`;
        for (let count = random(20); count > 0; count -= 1) {
          const number = next.get(name) ?? 0;
          next.set(name, number + 1);
          turns.add(name, [name, number]);
        }
        check(turns.take(1 + random(10)));
      }
      while (turns.size > 0) check(turns.take(7));
      expect(seen).toEqual(next);
    }
  });

  test('an event that the store cannot keep fails its own connection, and no other of the batch', async () => {
    const poison = 'poison';
    const store = {
      commit: async (batch: readonly ReceivedEvent[]): Promise<readonly CommitOutcome[]> => {
        if (batch.some(({ body }) => body === poison)) throw new Error('cannot be kept');
        return batch.map(() => ({ kind: 'stored' }));
      },
    } as unknown as EventStore;
    const commits = new GroupCommit(
      store,
      () => undefined,
      async () => undefined,
    );
    const told = new Map<string, string>();
    const submitter = (device: string): Submitter => ({
      device,
      committed: async () => {
        told.set(device, 'kept');
      },
      failed: () => told.set(device, 'failed'),
    });
    for (const device of ['a', 'b', 'c']) {
      const body = device === 'b' ? poison : '{}';
      commits.submit({ stream: streamOf('v', device), seq: 1, hash: '', body, receivedAt: 0 }, submitter(device));
    }
    await commits.drained();
    expect([...told].toSorted()).toEqual([
      ['a', 'kept'],
      ['b', 'failed'],
      ['c', 'kept'],
    ]);
  });
});

describe('a bad certificate', () => {
  test('is one sentence that names the files', () => {
    const [cert, key] = [join(scratch.path, 'cert.pem'), join(scratch.path, 'key.pem')];
    writeFileSync(cert, 'no certificate');
    writeFileSync(key, 'no key');
    expect(() => readConfiguration({ TLS_CERT: cert, TLS_KEY: key })).toThrow(
      /^TLS_CERT=\S+ and TLS_KEY=\S+ are no certificate and its key in PEM form \([^\n]+\): name the right files\.$/,
    );
  });
});
