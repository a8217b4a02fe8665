import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { startLocalServer } from '../../client/record/node/local-server.ts';
import { linkBytes } from '../../grammar/visit/envelope.ts';
import { sha256 } from '../../server/heads/verify-stream.ts';
import { startHead } from '../../server/store/judge-event.ts';
import { openSqliteStore, RECORD_FILE } from '../../server/store/sqlite-store.ts';
import { loadInProcess } from '../load/load-process.ts';
import { type Figure, median } from './figures.ts';

/** A tick of the clock by which Linux counts processor time: USER_HZ, 100 a second (proc(5)). */
const TICKS_A_SECOND = 100;

/** What a process has used of the processors so far, in seconds, user and system (proc(5), fields 14 and 15). */
export function processorSeconds(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  return (Number(fields[11]) + Number(fields[12])) / TICKS_A_SECOND;
}

/** The same of a process and of those that it started and that are there. */
export function processorSecondsOfAll(pid: number): number {
  const children = readdirSync('/proc').filter((name) => /^\d+$/.test(name) && parentOf(name) === pid);
  return [pid, ...children.map(Number)].reduce((sum, one) => sum + ofOneThatMayEnd(one), 0);
}

function ofOneThatMayEnd(pid: number): number {
  try {
    return processorSeconds(pid);
  } catch {
    return 0;
  }
}

function parentOf(process: string): number {
  try {
    return Number(/^PPid:\t(\d+)$/m.exec(readFileSync(`/proc/${process}/status`, 'utf8'))?.[1]);
  } catch {
    // It ended meanwhile.
    return 0;
  }
}

/** What lists do to a device: its longest wait for an acknowledgement, while pages are asked for without a pause. */
export async function listing(program: string, dataDir: string, visits: number): Promise<readonly Figure[]> {
  mkdirSync(dataDir, { recursive: true });
  const store = openSqliteStore(join(dataDir, RECORD_FILE));
  for (let from = 0; from < visits; from += 500) {
    const count = Math.min(500, visits - from);
    await store.commit(Array.from({ length: count }, (_, at) => firstEvent(`listed-${from + at}`)));
  }
  await store.close();
  // The record was written here and not by a server: no key signed it yet.
  const server = await startLocalServer({ program, dataDir, environment: { ACCEPT_LOSS: 'yes' } });
  try {
    const times: number[] = [];
    let page = 0;
    const health = await delayBeside(server.url, async () => {
      await (await fetch(`${server.url}/api/health`)).arrayBuffer();
    });
    const { alone, later } = await delayBeside(server.url, async () => {
      const began = performance.now();
      const answer = await fetch(`${server.url}/api/visits?limit=1000&offset=${(page * 1_000) % visits}`);
      await answer.arrayBuffer();
      times.push(performance.now() - began);
      page += 1;
    });
    return [
      { name: `a page of 1,000 of ${visits} visits, asked to answered, median`, value: median(times), unit: 'ms' },
      { name: 'an acknowledgement without lists, p99', value: alone, unit: 'ms' },
      { name: 'later beside questions after its health without a pause, p99', value: health.later, unit: 'ms' },
      {
        name: `later beside lists of ${visits} visits without a pause, p99`,
        value: later,
        unit: 'ms',
        against: 'aim ≤ 50',
      },
    ];
  } finally {
    await server.stop();
  }
}

const ROUNDS = 5;

/** How much later the latest hundredth of acknowledgements comes beside what is asked without a pause: by turns, medians. */
async function delayBeside(
  url: string,
  ask: () => Promise<void>,
): Promise<{ readonly alone: number; readonly later: number }> {
  const load = { url, visits: 2, rate: 25, seconds: 3 };
  const [alone, later]: [number[], number[]] = [[], []];
  for (let round = 0; round < ROUNDS; round += 1) {
    const quiet = await loadInProcess(load);
    let going = true;
    const asking = (async () => {
      while (going) await ask();
    })();
    const beside = await loadInProcess(load);
    going = false;
    await asking;
    alone.push(quiet.p99);
    later.push(beside.p99 - quiet.p99);
  }
  return { alone: median(alone), later: median(later) };
}

/** What a check of a very long visit does to a device: its longest waits for an acknowledgement meanwhile. */
export async function checking(program: string, dataDir: string, events: number): Promise<readonly Figure[]> {
  mkdirSync(dataDir, { recursive: true });
  const store = openSqliteStore(join(dataDir, RECORD_FILE));
  let event = firstEvent('long');
  for (let batch: (typeof event)[] = []; event.seq <= events; event = eventAfter(event)) {
    batch.push(event);
    if (batch.length < 500 && event.seq < events) continue;
    await store.commit(batch);
    batch = [];
  }
  await store.close();
  // The record was written here and not by a server: no key signed it yet.
  const server = await startLocalServer({ program, dataDir, environment: { ACCEPT_LOSS: 'yes' } });
  try {
    const { later } = await delayBeside(server.url, async () => {
      await (await fetch(`${server.url}/api/visits/long/check`)).arrayBuffer();
    });
    return [
      {
        name: `later beside checks of a visit of ${events} events, p99`,
        value: later,
        unit: 'ms',
        against: 'aim ≤ 50',
      },
    ];
  } finally {
    await server.stop();
  }
}

function eventAfter({ stream, seq, hash: before, body, receivedAt }: ReturnType<typeof firstEvent>) {
  const hash = Buffer.from(sha256(linkBytes(seq + 1, before, body))).toString('hex');
  return { stream, seq: seq + 1, hash, body, receivedAt };
}

function firstEvent(visit: string) {
  const stream = { company: 'local', visit, device: 'phone', epoch: 1 };
  const body = JSON.stringify({ type: 'visit.opened', visit });
  const hash = Buffer.from(sha256(linkBytes(1, startHead(stream).hash, body))).toString('hex');
  return { stream, seq: 1, hash, body, receivedAt: 1_795_000_000_000 };
}
