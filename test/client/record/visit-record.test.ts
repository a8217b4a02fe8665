import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { nodeLink } from '../../../client/record/node/link-edge.ts';
import { openVisitRecord, type VisitRecord } from '../../../client/record/visit-record.ts';
import { scratchFolder } from '../../server/built-server.ts';
import { getJson } from '../../server/get-json.ts';
import { type RunningApp, runApp, streamOf } from '../../server/running-app.ts';
import { fileLogStore } from './file-log-store.ts';

let server: RunningApp;
const scratch = scratchFolder();
beforeAll(async () => {
  server = await runApp();
});
afterAll(async () => {
  await server.stop();
  scratch.remove();
});

const openRecord = (visit: string, file: string): Promise<VisitRecord> =>
  openVisitRecord({
    stream: streamOf(visit),
    store: fileLogStore(join(scratch.path, file), () => undefined),
    link: nodeLink(server.url),
  });
const here = async (record: VisitRecord) => (await record.read()).map(({ body }) => body);
const there = async (visit: string) => {
  const { events } = await getJson<{ events: { epoch: number; body: string }[] }>(
    `${server.url}/api/visits/${visit}/events`,
  );
  return events.map(({ epoch, body }) => `${epoch}:${body}`);
};

describe('a visit’s record', () => {
  test('is written, sent, closed and taken up again', async () => {
    const first = await openRecord('v-plain', 'plain.jsonl');
    await first.append(['1', '2']);
    await first.settled();
    expect(first.state()).toMatchObject({ written: 2, acknowledged: 2 });
    await first.close();
    const second = await openRecord('v-plain', 'plain.jsonl');
    await second.append(['3']);
    await second.settled();
    expect(await here(second)).toEqual(['1', '2', '3']);
    expect(await there('v-plain')).toEqual(['1:1', '1:2', '1:3']);
    await second.close();
  });

  test('from a backup goes on by itself in a new epoch, again and again, and loses nothing on either side', async () => {
    const file = join(scratch.path, 'backup.jsonl');
    const first = await openRecord('v-backup', 'backup.jsonl');
    await first.append(['1', '2']);
    await first.settled();
    copyFileSync(file, `${file}-copy`);
    await first.append(['3', '4']);
    await first.settled();
    await first.close();

    copyFileSync(`${file}-copy`, file);
    const second = await openRecord('v-backup', 'backup.jsonl');
    await second.append(['three']);
    await second.settled();
    await second.append(['four']);
    await second.settled();
    expect(await here(second)).toEqual(['1', '2', 'three', 'four']);
    expect(second.state()).toMatchObject({ written: 4, acknowledged: 4 });
    expect(await there('v-backup')).toEqual(['1:1', '1:2', '1:3', '1:4', '2:three', '2:four']);
    await second.close();

    const third = await openRecord('v-backup', 'backup.jsonl');
    expect(await here(third)).toEqual(['1', '2', 'three', 'four']);
    await third.close();

    const other = await openRecord('v-backup', 'backup.jsonl-copy');
    await other.append(['from the copy']);
    await other.settled();
    expect(await here(other)).toEqual(['1', '2', 'from the copy']);
    expect((await there('v-backup')).slice(-2)).toEqual(['2:four', '3:from the copy']);
    await other.close();
  });

  test('never waits for the network, not even while it changes over', async () => {
    const file = join(scratch.path, 'offline.jsonl');
    const first = await openRecord('v-offline', 'offline.jsonl');
    await first.append(['1']);
    await first.settled();
    copyFileSync(file, `${file}-copy`);
    await first.append(['2']);
    await first.settled();
    await first.close();

    copyFileSync(`${file}-copy`, file);
    const real = nodeLink(server.url);
    let connections = 0;
    /** The first connection is answered; those that follow find no server until it is let back. */
    let reachable = false;
    const record = await openVisitRecord({
      stream: streamOf('v-offline'),
      store: fileLogStore(file, () => undefined),
      link: {
        ...real,
        timers: { set: (milliseconds, elapsed) => real.timers.set(milliseconds / 20, elapsed) },
        openSocket: (callbacks) => {
          connections += 1;
          if (connections === 1 || reachable) return real.openSocket(callbacks);
          throw new Error('no network');
        },
      },
    });
    while (connections < 3) await new Promise((resolve) => setTimeout(resolve, 5));
    await record.append(['two']);
    await record.append(['three']);
    expect(await here(record)).toEqual(['1', 'two', 'three']);
    reachable = true;
    await record.settled();
    expect(await there('v-offline')).toEqual(['1:1', '1:2', '2:two', '2:three']);
    await record.close();
  });
});
