import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openMemoryLog } from '../../../client/record/memory-log.ts';
import { nodeLink } from '../../../client/record/node/link-edge.ts';
import { startLocalServer } from '../../../client/record/node/local-server.ts';
import { sha256 } from '../../../client/record/node/sha256.ts';
import { Outbox } from '../../../client/record/outbox.ts';
import type { VisitLog } from '../../../client/record/visit-log.ts';
import type { Entry } from '../../../grammar/visit/envelope.ts';
import { verifyChain } from '../../../grammar/visit/verify-chain.ts';
import { buildServer, scratchFolder } from '../../server/built-server.ts';
import { getJson } from '../../server/get-json.ts';
import { type RunningApp, runApp, streamOf } from '../../server/running-app.ts';
import { badNetwork, type Fate } from './bad-network.ts';

let server: RunningApp;
const scratch = scratchFolder();
beforeAll(async () => {
  server = await runApp();
});
afterAll(async () => {
  await server.stop();
  scratch.remove();
});

const heldAt = async (url: string, log: VisitLog) =>
  (await getJson<{ events?: Entry[] }>(`${url}/api/visits/${log.stream.visit}/events`)).events ?? [];

let count = 0;
const freshLog = () => {
  count += 1;
  return openMemoryLog(streamOf(`v-network-${count}`), sha256);
};

describe('a record over a network that doubles, swaps, loses and cuts', () => {
  const fate = fc.constantFrom<Fate>('pass', 'pass', 'pass', 'double', 'swap', 'lose', 'cut');

  test('arrives whole: what is acknowledged is held, what is held is a beginning of what was written', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fate, { maxLength: 60 }),
        fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 8 }),
        async (fates, batches) => {
          const log = await freshLog();
          const outbox = new Outbox({ log, ...badNetwork(nodeLink(server.url), fates) }).start();
          let acknowledged = 0;
          const unsubscribe = outbox.subscribe((state) => {
            acknowledged = Math.max(acknowledged, state.acknowledged);
          });
          for (const [at, size] of batches.entries()) {
            await outbox.append(Array.from({ length: size }, (_, n) => `{"batch":${at},"n":${n}}`));
            const before = acknowledged;
            const held = await heldAt(server.url, log);
            expect(held.length).toBeGreaterThanOrEqual(before);
            expect(held.map(({ hash }) => hash)).toEqual((await log.read(1, held.length)).map(({ hash }) => hash));
          }
          await outbox.settled();
          unsubscribe();
          outbox.stop();
          const held = await heldAt(server.url, log);
          expect(held.map(({ body }) => body)).toEqual((await log.read(1)).map(({ body }) => body));
          expect((await verifyChain(log.stream, held, sha256, log.head())).intact).toBe(true);
          expect(log.acknowledged()).toMatchObject(log.head());
        },
      ),
      { numRuns: 60 },
    );
  });

  test('a thousand events recorded offline arrive, never more than 64 ahead of their acknowledgements', async () => {
    const log = await freshLog();
    await log.append(Array.from({ length: 1_000 }, (_, at) => `{"n":${at}}`));
    const real = nodeLink(server.url);
    let [sent, acknowledged, furthest] = [0, 0, 0];
    const outbox = new Outbox({
      log,
      ...real,
      openSocket: (callbacks) => {
        const socket = real.openSocket(callbacks);
        return {
          ...socket,
          send: (text) => {
            if (text.includes('"append"')) sent += 1;
            furthest = Math.max(furthest, sent - acknowledged);
            socket.send(text);
          },
        };
      },
    });
    outbox.subscribe((state) => {
      acknowledged = state.acknowledged;
    });
    outbox.start();
    await outbox.settled();
    expect(sent).toBe(1_000);
    expect(furthest).toBeLessThanOrEqual(64);
    expect(furthest).toBeGreaterThan(1);
    outbox.stop();
  });
});

/** The same message with the first digit of its hash changed. */
const withAnotherHash = (text: string): string =>
  text.replace(/("hash":")(.)/, (_, before: string, digit: string) => before + (digit === '0' ? '1' : '0'));

describe('an acknowledgement of another event than was sent', () => {
  test('is believed by nobody: the link stops as a fork, and nothing counts as held', async () => {
    const log = await freshLog();
    await log.append(['{"n":1}']);
    const real = nodeLink(server.url);
    const outbox = new Outbox({
      log,
      ...real,
      openSocket: (callbacks) =>
        real.openSocket({
          ...callbacks,
          received: (text) => callbacks.received(text.includes('"ack"') ? withAnotherHash(text) : text),
        }),
    });
    outbox.start();
    await expect(outbox.settled()).rejects.toThrow(/another event/);
    expect(outbox.state()).toMatchObject({ acknowledged: 0, link: { link: 'stopped', code: 'fork' } });
    outbox.stop();
  });
});

describe('a record that was set back', () => {
  test('on the server, to a backup: what it lost is sent again', async () => {
    const program = buildServer();
    const dataDir = join(scratch.path, 'restored');
    const file = join(dataDir, 'readback.sqlite');
    const log = await freshLog();
    let running = await startLocalServer({ program, dataDir });
    const first = new Outbox({ log, ...nodeLink(running.url) }).start();
    await first.append(['1', '2', '3']);
    await first.settled();
    first.stop();
    await running.stop();
    copyFileSync(file, `${file}.backup`);
    running = await startLocalServer({ program, dataDir });
    const second = new Outbox({ log, ...nodeLink(running.url) }).start();
    await second.append(['4', '5']);
    await second.settled();
    second.stop();
    await running.stop();
    copyFileSync(`${file}.backup`, file);
    await expect(startLocalServer({ program, dataDir })).rejects.toThrow(/it ends at event 3, 5 were signed for/);
    running = await startLocalServer({ program, dataDir, environment: { ACCEPT_LOSS: 'yes' } });
    expect(await heldAt(running.url, log)).toHaveLength(3);
    const third = new Outbox({ log, ...nodeLink(running.url) }).start();
    await third.append(['6']);
    await third.settled();
    expect((await heldAt(running.url, log)).map(({ body }) => body)).toEqual(['1', '2', '3', '4', '5', '6']);
    third.stop();
    await running.stop();
  });

  test('on the device: the outbox stops and says how far the server is ahead', async () => {
    const log = await freshLog();
    const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
    await outbox.append(['1', '2', '3']);
    await outbox.settled();
    outbox.stop();
    const earlier = await openMemoryLog(log.stream, sha256);
    await earlier.append(['1']);
    const behind = new Outbox({ log: earlier, ...nodeLink(server.url) }).start();
    await expect(behind.settled()).rejects.toThrow(/The server holds 3 events .* only 1: go on in a new epoch/);
    expect(behind.state()).toMatchObject({ ahead: log.head(), link: { link: 'stopped', code: 'server-ahead' } });
  });

  test('on the device, and written on otherwise: a fork, which stops the outbox and loses nothing', async () => {
    const log = await freshLog();
    const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
    await outbox.append(['1', '2']);
    await outbox.settled();
    outbox.stop();
    const other = await openMemoryLog(log.stream, sha256);
    await other.append(['1', 'two', 'three']);
    const forked = new Outbox({ log: other, ...nodeLink(server.url) }).start();
    await expect(forked.settled()).rejects.toThrow(/Event 2 differs between this device and the server/);
    expect((await heldAt(server.url, log)).map(({ body }) => body)).toEqual(['1', '2']);
    expect((await other.read(1)).map(({ body }) => body)).toEqual(['1', 'two', 'three']);
  });
});
