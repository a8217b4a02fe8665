import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { Outbox } from '../../client/record/outbox.ts';
import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';

/** Devices that were offline, each with its events written, all coming back at once: seconds until all are held. */
export async function runReconnectStorm(url: string, devices: number, eventsEach: number): Promise<number> {
  const body = JSON.stringify({ kind: 'reading.logged', value: 118, unit: 'V', pad: 'x'.repeat(200) });
  const logs = await Promise.all(
    Array.from({ length: devices }, async (_, at) => {
      const stream = { company: LOCAL_COMPANY, visit: `storm-${at}`, device: `load-${at}`, epoch: 1 };
      const log = await openMemoryLog(stream, sha256);
      await log.append(Array.from({ length: eventsEach }, () => body));
      return log;
    }),
  );
  const started = performance.now();
  const outboxes = logs.map((log) => new Outbox({ log, ...nodeLink(url) }).start());
  await Promise.all(outboxes.map((outbox) => outbox.settled()));
  const seconds = (performance.now() - started) / 1_000;
  for (const outbox of outboxes) outbox.stop();
  return seconds;
}
