import { afterAll, beforeAll, expect, test } from 'vitest';
import { openMemoryLog } from '../../../client/record/memory-log.ts';
import { nodeLink } from '../../../client/record/node/link-edge.ts';
import { sha256 } from '../../../client/record/node/sha256.ts';
import { Outbox } from '../../../client/record/outbox.ts';
import { tries } from '../../how-much.ts';
import { tellFigure } from '../../promises/tell-figure.ts';
import { type RunningApp, runApp, streamOf } from '../../server/running-app.ts';

let server: RunningApp;
beforeAll(async () => {
  server = await runApp();
});
afterAll(() => server.stop());

test('a phone with very many unsent events sends them all, in order', async () => {
  const events = tries(5_000, 100_000);
  const log = await openMemoryLog(streamOf('many-unsent'), sha256);
  for (let at = 0; at < events; at += 1_000) {
    await log.append(Array.from({ length: Math.min(1_000, events - at) }, (_, index) => `{"n":${at + index}}`));
  }
  const outbox = new Outbox({ log, ...nodeLink(server.url) }).start();
  const began = performance.now();
  await outbox.settled();
  tellFigure('unsent events of one phone', events);
  tellFigure('events a second of that phone', Math.round(events / ((performance.now() - began) / 1_000)));
  outbox.stop();
  const answer = await fetch(`${server.url}/api/visits/many-unsent`);
  const { streams } = (await answer.json()) as { streams: { head: { seq: number; hash: string } }[] };
  expect(streams[0]?.head).toEqual(log.head());
}, 1_800_000);
