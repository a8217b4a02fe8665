import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { type LocalServer, startLocalServer } from '../../client/record/node/local-server.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { Outbox } from '../../client/record/outbox.ts';
import type { VisitLog } from '../../client/record/visit-log.ts';
import { type Entry, LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import type { OwnPostgres } from '../server/own-postgres.ts';

export interface KillResult {
  readonly kills: number;
  readonly acknowledged: number;
  /** Events that were acknowledged and are not held as they were written: must be none. */
  readonly lost: number;
}

const DEVICES = 4;

/** What is killed, and what reads afterwards what was kept. */
export interface Killable {
  /** Where the devices of a round write, each at the next of these by turns. */
  readonly urls: () => readonly string[];
  kill(): Promise<void>;
  /** Starts it again; resolves to where what was kept is read. */
  restart(): Promise<string>;
  stop(): Promise<void>;
}

/** A server with its record in a folder. */
export async function killableServer(program: string, dataDir: string): Promise<Killable> {
  let server = await startLocalServer({ program, dataDir });
  return {
    urls: () => [server.url],
    kill: () => server.kill(),
    restart: async () => {
      server = await startLocalServer({ program, dataDir, port: server.port });
      return server.url;
    },
    stop: () => server.stop(),
  };
}

/** A PostgreSQL under a server, which stays. */
export async function killablePostgres(program: string, dataDir: string, postgres: OwnPostgres): Promise<Killable> {
  const environment = { DATABASE_URL: await postgres.database() };
  const server = await startLocalServer({ program, dataDir, environment });
  return {
    urls: () => [server.url],
    kill: () => postgres.kill(),
    restart: async () => {
      await postgres.start();
      return server.url;
    },
    stop: () => server.stop(),
  };
}

/** One of two servers on one PostgreSQL, by chance; what was kept is read at the other. */
export async function killableTwin(program: string, dataDir: string, postgres: OwnPostgres): Promise<Killable> {
  const environment = { DATABASE_URL: await postgres.database() };
  const start = (port = 0) => startLocalServer({ program, dataDir, environment, port });
  const servers = [await start(), await start()] as [LocalServer, LocalServer];
  let killed: 0 | 1 = 0;
  return {
    urls: () => servers.map(({ url }) => url),
    kill: () => {
      killed = Math.random() < 0.5 ? 0 : 1;
      return servers[killed].kill();
    },
    restart: async () => {
      servers[killed] = await start(servers[killed].port);
      return servers[killed === 0 ? 1 : 0].url;
    },
    stop: async () => {
      for (const server of servers) await server.stop();
    },
  };
}

/**
 * Kills again and again (SIGKILL) while devices write, and looks after each start for what was acknowledged; at the end
 * once more for all of it.
 */
export async function killAgain(target: Killable, kills: number): Promise<KillResult> {
  const written: { readonly log: VisitLog; readonly acknowledged: number }[] = [];
  let lost = 0;
  let url = '';
  for (let round = 0; round < kills; round += 1) {
    const logs = await Promise.all(
      Array.from({ length: DEVICES }, (_, at) =>
        openMemoryLog({ company: LOCAL_COMPANY, visit: `killed-${round}-${at}`, device: 'load', epoch: 1 }, sha256),
      ),
    );
    const acknowledged = await writeUntilKilled(logs, target.urls(), () => target.kill());
    url = await target.restart();
    const parts = logs.map((log, at) => ({ log, acknowledged: acknowledged[at] ?? 0 }));
    for (const part of parts) lost += await countLost(url, part.log, part.acknowledged);
    written.push(...parts);
  }
  for (const { log, acknowledged } of written) lost += await countLost(url, log, acknowledged);
  await target.stop();
  return { kills, lost, acknowledged: written.reduce((sum, part) => sum + part.acknowledged, 0) };
}

/** How many events of each log were acknowledged at the moment of the kill. */
async function writeUntilKilled(
  logs: readonly VisitLog[],
  urls: readonly string[],
  kill: () => Promise<void>,
): Promise<number[]> {
  const outboxes = logs.map((log, at) => new Outbox({ log, ...nodeLink(urls[at % urls.length] as string) }).start());
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
  const events = await eventsOf(url, log.stream.visit);
  const written = await log.read(1, acknowledged);
  return written.filter(({ hash }, at) => events[at]?.hash !== hash).length;
}

/** A database that was just started may still recover: the server answers that it failed, and is asked again. */
async function eventsOf(url: string, visit: string): Promise<readonly Entry[]> {
  for (let tried = 0; ; tried += 1) {
    const answer = await fetch(`${url}/api/visits/${visit}/events`);
    if (answer.status < 500 || tried === MOST_TRIES) {
      const { events = [] } = (await answer.json()) as { events?: Entry[] };
      return events;
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

const MOST_TRIES = 200;
