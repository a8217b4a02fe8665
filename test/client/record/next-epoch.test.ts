import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fetchStream } from '../../../client/record/fetch-stream.ts';
import { openMemoryLog } from '../../../client/record/memory-log.ts';
import { beginNextEpoch, carryOver, readEpochs } from '../../../client/record/next-epoch.ts';
import { openFileLog } from '../../../client/record/node/file-log.ts';
import { nodeLink } from '../../../client/record/node/link-edge.ts';
import { sha256 } from '../../../client/record/node/sha256.ts';
import { Outbox } from '../../../client/record/outbox.ts';
import type { VisitLog } from '../../../client/record/visit-log.ts';
import type { StreamId } from '../../../grammar/visit/envelope.ts';
import { scratchFolder } from '../../server/built-server.ts';
import { getJson } from '../../server/get-json.ts';
import { type RunningApp, runApp, streamOf } from '../../server/running-app.ts';

let server: RunningApp;
const scratch = scratchFolder();
beforeAll(async () => {
  server = await runApp();
});
afterAll(async () => {
  await server.stop();
  scratch.remove();
});

const logOf = async (stream: StreamId, bodies: readonly string[]): Promise<VisitLog> => {
  const log = await openMemoryLog(stream, sha256);
  await log.append(bodies);
  return log;
};
async function sync(log: VisitLog): Promise<Outbox> {
  const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
  await outbox.settled().finally(() => outbox.stop());
  return outbox;
}
const bodiesOf = (entries: readonly { body: string }[]) => entries.map(({ body }) => body);
const open = (stream: StreamId, follows: VisitLog['follows']) => openMemoryLog(stream, sha256, follows);

describe('a device that was set back to a backup', () => {
  test('goes on in a new epoch; the server keeps what it had, and what came since', async () => {
    const stream = streamOf('v-epoch');
    await sync(await logOf(stream, ['1', '2', '3', '4']));
    const restored = await logOf(stream, ['1', '2']);
    await expect(sync(restored)).rejects.toThrow(/go on in a new epoch/);

    const next = await beginNextEpoch(restored, await fetchStream(nodeLink(server.url), stream), open);
    expect(next.stream.epoch).toBe(2);
    await next.append(['5']);
    await sync(next);
    expect(bodiesOf(await readEpochs([restored, next]))).toEqual(['1', '2', '5']);
    const { events } = await getJson<{ events: { epoch: number; body: string }[] }>(
      `${server.url}/api/visits/v-epoch/events`,
    );
    expect(events.map(({ epoch, body }) => `${epoch}:${body}`)).toEqual(['1:1', '1:2', '1:3', '1:4', '2:5']);
    await expect(sync(await logOf(stream, ['1', '2', '3', '4']))).rejects.toThrow(/carried on in a later epoch/);
  });

  test('and had written on since: what only it has is carried over, once, even where it ended in between', async () => {
    const stream = streamOf('v-carried');
    await sync(await logOf(stream, ['1', '2', '3']));
    const restored = await logOf(stream, ['1', 'two', 'three']);
    await expect(sync(restored)).rejects.toThrow(/Event 3 differs/);

    const held = await fetchStream(nodeLink(server.url), stream);
    const path = join(scratch.path, 'next.jsonl');
    const next = await beginNextEpoch(
      restored,
      held,
      async (id, follows) => (await openFileLog(path, id, follows)).log,
    );
    await next.close();
    const again = (await openFileLog(path, { ...stream, epoch: 2 })).log;
    await carryOver(restored, again);
    expect(bodiesOf(await again.read(1))).toEqual(['two', 'three']);
    expect(bodiesOf(await readEpochs([restored, again]))).toEqual(['1', 'two', 'three']);
    await sync(again);
    await again.close();

    const unfinished = await openMemoryLog({ ...stream, epoch: 3 }, sha256, {
      epoch: 1,
      head: restored.head(),
      keeps: 1,
    });
    await carryOver(restored, unfinished);
    expect(bodiesOf(await unfinished.read(1))).toEqual(['two', 'three']);
  });

  test('a stream the server does not hold is not followed', async () => {
    const log = await logOf(streamOf('v-none'), ['1']);
    const held = await fetchStream(nodeLink(server.url), log.stream);
    await expect(beginNextEpoch(log, held, open)).rejects.toThrow(RangeError);
  });
});
