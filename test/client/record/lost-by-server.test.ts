import { afterAll, expect, test } from 'vitest';
import { openMemoryLog } from '../../../client/record/memory-log.ts';
import { nodeLink } from '../../../client/record/node/link-edge.ts';
import { sha256 } from '../../../client/record/node/sha256.ts';
import { sendUnsent } from '../../../client/record/send-unsent.ts';
import type { VisitLog } from '../../../client/record/visit-log.ts';
import { type RunningApp, runApp, streamOf } from '../../server/running-app.ts';

const servers: RunningApp[] = [];
afterAll(async () => {
  for (const server of servers) await server.stop();
});

test('a visit that was acknowledged is sent again to a server that lost it', async () => {
  const kept = await openMemoryLog(streamOf('lost'), sha256);
  await kept.append(['{"n":1}', '{"n":2}', '{"n":3}']);
  // The sender closes a log when it is done with it; this one is opened again.
  const log: VisitLog = Object.assign(Object.create(kept), { close: async () => undefined });
  for (let at = 0; at < 2; at += 1) {
    const server = await runApp();
    servers.push(server);
    await sendUnsent([log.stream], {
      open: async () => log,
      link: nodeLink(server.url),
      clock: Date.now,
      onReachable: () => () => undefined,
      changed: () => undefined,
    });
    expect(log.acknowledged()?.seq).toBe(3);
    const answer = await fetch(`${server.url}/api/visits/lost`);
    expect(await answer.json()).toMatchObject({ streams: [{ head: { seq: 3, hash: kept.head().hash } }] });
  }
});
