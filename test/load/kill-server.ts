import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { type LocalServer, startLocalServer } from '../../client/record/node/local-server.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { Outbox } from '../../client/record/outbox.ts';
import { type Entry, LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';

export interface KillResult {
  readonly kills: number;
  /** Events that were acknowledged and are not held as they were written: must be none. */
  readonly lost: number;
  readonly acknowledged: number;
}

/** Kills the server again and again (SIGKILL) while devices write, and looks each time for what it had acknowledged. */
export async function killServer(program: string, dataDir: string, kills: number): Promise<KillResult> {
  let server = await startLocalServer({ program, dataDir });
  const logs = await Promise.all(
    Array.from({ length: 4 }, (_, at) =>
      openMemoryLog({ company: LOCAL_COMPANY, visit: `killed-${at}`, device: 'load', epoch: 1 }, sha256),
    ),
  );
  let lost = 0;
  for (let round = 0; round < kills; round += 1) {
    const outboxes = logs.map((log) => new Outbox({ log, ...nodeLink(server.url) }).start());
    const until = performance.now() + 30 + Math.random() * 120;
    while (performance.now() < until) {
      await Promise.all(outboxes.map((outbox) => outbox.append(['{"n":1}', '{"n":2}'])));
      // A turn of the event loop, so that what was written is sent and acknowledged in between.
      await new Promise((resolve) => setImmediate(resolve));
    }
    const acknowledged = outboxes.map((outbox) => outbox.state().acknowledged);
    await server.kill();
    for (const outbox of outboxes) outbox.stop();
    server = await startLocalServer({ program, dataDir, port: server.port });
    for (const [at, log] of logs.entries()) lost += await countLost(server, log, acknowledged[at] ?? 0);
  }
  await server.stop();
  return { kills, lost, acknowledged: logs.reduce((sum, log) => sum + (log.acknowledged()?.seq ?? 0), 0) };
}

async function countLost(server: LocalServer, log: Awaited<ReturnType<typeof openMemoryLog>>, acknowledged: number) {
  const from = Math.max(1, acknowledged - 2_000);
  const answer = await fetch(`${server.url}/api/visits/${log.stream.visit}/events?limit=10000&after=0`);
  if (answer.status === 404) return acknowledged;
  const held = new Map<number, string>();
  let page = (await answer.json()) as { events: Entry[]; next?: number };
  for (;;) {
    for (const { seq, hash } of page.events) held.set(seq, hash);
    if (page.next === undefined) break;
    const next = await fetch(`${server.url}/api/visits/${log.stream.visit}/events?limit=10000&after=${page.next}`);
    page = (await next.json()) as typeof page;
  }
  const written = await log.read(from, acknowledged - from + 1);
  return written.filter(({ seq, hash }) => held.get(seq) !== hash).length;
}
