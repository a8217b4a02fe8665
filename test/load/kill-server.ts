import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { startLocalServer } from '../../client/record/node/local-server.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { Outbox } from '../../client/record/outbox.ts';
import type { VisitLog } from '../../client/record/visit-log.ts';
import { type Entry, LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';

export interface KillResult {
  readonly kills: number;
  readonly acknowledged: number;
  /** Events that were acknowledged and are not held as they were written: must be none. */
  readonly lost: number;
}

const DEVICES = 4;

/**
 * Kills the server again and again (SIGKILL) while devices write, and looks after each start for what it had
 * acknowledged; at the end once more for all of it.
 */
export async function killServer(program: string, dataDir: string, kills: number): Promise<KillResult> {
  let server = await startLocalServer({ program, dataDir });
  const written: { readonly log: VisitLog; readonly acknowledged: number }[] = [];
  let lost = 0;
  for (let round = 0; round < kills; round += 1) {
    const logs = await Promise.all(
      Array.from({ length: DEVICES }, (_, at) =>
        openMemoryLog({ company: LOCAL_COMPANY, visit: `killed-${round}-${at}`, device: 'load', epoch: 1 }, sha256),
      ),
    );
    const acknowledged = await writeUntilKilled(logs, server.url, () => server.kill());
    server = await startLocalServer({ program, dataDir, port: server.port });
    const parts = logs.map((log, at) => ({ log, acknowledged: acknowledged[at] ?? 0 }));
    for (const part of parts) lost += await countLost(server.url, part.log, part.acknowledged);
    written.push(...parts);
  }
  for (const { log, acknowledged } of written) lost += await countLost(server.url, log, acknowledged);
  await server.stop();
  return { kills, lost, acknowledged: written.reduce((sum, part) => sum + part.acknowledged, 0) };
}

/** How many events of each log were acknowledged at the moment of the kill. */
async function writeUntilKilled(logs: readonly VisitLog[], url: string, kill: () => Promise<void>): Promise<number[]> {
  const outboxes = logs.map((log) => new Outbox({ log, ...nodeLink(url) }).start());
  // Counted from the first acknowledgement on: a kill before it would show nothing.
  let until = Number.POSITIVE_INFINITY;
  while (performance.now() < until) {
    if (until === Number.POSITIVE_INFINITY && outboxes.some((outbox) => outbox.state().acknowledged > 0)) {
      until = performance.now() + Math.random() * 120;
    }
    await Promise.all(outboxes.map((outbox) => outbox.append(['{"n":1}', '{"n":2}'])));
    // A turn of the event loop, so that what was written is sent and acknowledged in between.
    await new Promise((resolve) => setImmediate(resolve));
  }
  await kill();
  const acknowledged = outboxes.map((outbox) => outbox.state().acknowledged);
  for (const outbox of outboxes) outbox.stop();
  return acknowledged;
}

async function countLost(url: string, log: VisitLog, acknowledged: number): Promise<number> {
  const answer = await fetch(`${url}/api/visits/${log.stream.visit}/events`);
  const { events = [] } = (await answer.json()) as { events?: Entry[] };
  const written = await log.read(1, acknowledged);
  return written.filter(({ hash }, at) => events[at]?.hash !== hash).length;
}
