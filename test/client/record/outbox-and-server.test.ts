import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openFileLog } from '../../../client/record/node/file-log.ts';
import { nodeLink } from '../../../client/record/node/link-edge.ts';
import { startLocalServer } from '../../../client/record/node/local-server.ts';
import { sha256 } from '../../../client/record/node/sha256.ts';
import { Outbox } from '../../../client/record/outbox.ts';
import { watchVisit } from '../../../client/record/watch-visit.ts';
import { type Entry, LOCAL_COMPANY } from '../../../grammar/visit/envelope.ts';
import { verifyChain } from '../../../grammar/visit/verify-chain.ts';
import { buildServer, scratchFolder } from '../../server/built-server.ts';
import { getJson } from '../../server/get-json.ts';

const scratch = scratchFolder();
let program: string;
beforeAll(() => {
  program = buildServer();
}, 120_000);
afterAll(() => scratch.remove());

const streamOf = (visit: string) => ({ company: LOCAL_COMPANY, visit, device: 'terminal', epoch: 1 });
const heldEvents = async (url: string, visit: string) =>
  (await getJson<{ events: Entry[] }>(`${url}/api/visits/${visit}/events`)).events;

describe('a record on its way to a server in a process of its own', () => {
  test('every event written here is read back there, byte for byte, with the same chain', async () => {
    const server = await startLocalServer({ program, dataDir: join(scratch.path, 'plain') });
    const { log } = await openFileLog(join(scratch.path, 'plain.jsonl'), streamOf('v-plain'));
    const outbox = new Outbox({ log, clock: Date.now, ...nodeLink(server.url) }).start();
    const bodies = Array.from({ length: 200 }, (_, at) => `{ "n" : ${at},  "note":"½ µF ${'x'.repeat(at)}" }`);
    await outbox.append(bodies.slice(0, 50));
    for (const body of bodies.slice(50)) await outbox.append([body]);
    await outbox.settled();
    const held = await heldEvents(server.url, 'v-plain');
    expect(held.map((event) => event.body)).toEqual(bodies);
    expect(await verifyChain(log.stream, held, sha256, log.head())).toEqual({ intact: true, head: log.head() });
    outbox.stop();
    await log.close();
    await server.stop();
  });

  test('killed in the middle again and again, the server loses nothing it acknowledged, and catches up', async () => {
    const dataDir = join(scratch.path, 'killed');
    let server = await startLocalServer({ program, dataDir });
    const { log } = await openFileLog(join(scratch.path, 'killed.jsonl'), streamOf('v-killed'));
    const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
    for (let round = 1; round <= 4; round += 1) {
      for (let at = 0; at < 60; at += 1) await outbox.append([`{"round":${round},"at":${at}}`]);
      const acknowledged = outbox.state().acknowledged;
      await server.kill();
      server = await startLocalServer({ program, dataDir, port: server.port });
      const held = await heldEvents(server.url, 'v-killed').catch(() => []);
      expect((held ?? []).length).toBeGreaterThanOrEqual(acknowledged);
      outbox.retryNow();
    }
    await outbox.settled();
    const held = await heldEvents(server.url, 'v-killed');
    expect(held).toHaveLength(240);
    expect(await verifyChain(log.stream, held, sha256, log.head())).toMatchObject({ intact: true });
    outbox.stop();
    await log.close();
    await server.stop();
  });

  test('a watcher is brought level, then follows live, and goes on after the server was away', async () => {
    const dataDir = join(scratch.path, 'watched');
    let server = await startLocalServer({ program, dataDir });
    const { log } = await openFileLog(join(scratch.path, 'watched.jsonl'), streamOf('v-watched'));
    const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
    await outbox.append(Array.from({ length: 300 }, (_, at) => `{"n":${at}}`));
    await outbox.settled();
    const seen: number[] = [];
    let arrived: () => void = () => undefined;
    const until = (count: number) =>
      new Promise<void>((resolve) => {
        arrived = () => seen.length >= count && resolve();
        arrived();
      });
    const watch = watchVisit({
      company: LOCAL_COMPANY,
      visit: 'v-watched',
      events: (events) => {
        seen.push(...events.map((event) => event.seq));
        arrived();
      },
      ...nodeLink(server.url),
    });
    await until(300);
    await outbox.append(['{"live":1}', '{"live":2}']);
    await until(302);
    await server.kill();
    await outbox.append(['{"offline":1}']);
    server = await startLocalServer({ program, dataDir, port: server.port });
    outbox.retryNow();
    watch.retryNow();
    await until(303);
    expect(seen).toEqual(Array.from({ length: 303 }, (_, at) => at + 1));
    watch.stop();
    outbox.stop();
    await log.close();
    await server.stop();
  });
});
