import { fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SQLite from 'better-sqlite3';
import { openFileLog } from '../../client/record/node/file-log.ts';
import { startLocalServer } from '../../client/record/node/local-server.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { killServer } from '../load/kill-server.ts';
import { loadInProcess, saturateFromProcess } from '../load/load-process.ts';
import { runReconnectStorm } from '../load/reconnect-storm.ts';
import { type Bench, type Figure, median } from './figures.ts';
import { checking, listing, processorSeconds } from './record-figures.ts';

const program = fileURLToPath(new URL('../../server/main.js', import.meta.url));
const BODY = 'x'.repeat(250);
const DEVICES_AT_FULL = 64;

/** The record on its way: options visits=2000 rate=2 seconds=10 storm=50000 full=60000 listed=20000 long=100000 kills=20. */
export const bench: Bench = async (options, progress) => {
  const number = (name: string, standard: number) => Number(options.get(name) ?? standard);
  const folder = mkdtempSync(join(tmpdir(), 'readback-bench-'));
  try {
    const figures: Figure[] = [];
    progress('raw limits of this disk');
    figures.push(...(await fileLogFigures(folder)));
    figures.push(await receiptFigure(folder));

    const server = await startLocalServer({ program, dataDir: join(folder, 'data') });
    const [visits, rate, seconds] = [number('visits', 2_000), number('rate', 2), number('seconds', 10)];
    progress(`${visits} visits at ${rate} events/s for ${seconds} s`);
    const before = processorSeconds(server.pid);
    const steady = await loadInProcess({ url: server.url, visits, rate, seconds });
    const cost = processorSeconds(server.pid) - before;
    const load = `${visits} visits × ${rate}/s`;
    figures.push(
      { name: `${load}: sent to acknowledged, median`, value: steady.median, unit: 'ms' },
      {
        name: `${load}: sent to acknowledged, p99`,
        value: steady.p99,
        unit: 'ms',
        against: 'aim ≤ 250',
      },
      {
        name: `${load}: acknowledged of sent`,
        value: steady.acknowledged / steady.sent,
        unit: '',
        against: 'must be 1',
      },
      { name: `${load}: server, processor time an event`, value: (cost / steady.sent) * 1e6, unit: 'µs' },
      { name: `${load}: load generator’s own share of a processor`, value: steady.share, unit: '' },
    );
    const storm = number('storm', 50_000);
    progress(`${storm} events come back at once`);
    const stormSeconds = await runReconnectStorm(server.url, 500, storm / 500);
    figures.push({
      name: `${storm} events of 500 devices coming back`,
      value: stormSeconds,
      unit: 's',
      against: 'aim ≤ 15',
    });
    await server.stop();
    const full = number('full', 60_000);
    progress(`${full} events of 64 devices, as fast as they are taken`);
    figures.push(...(await saturation(folder, full)));

    progress('a list of 20,000 visits');
    figures.push(...(await listing(program, join(folder, 'listed'), number('listed', 20_000))));

    const long = number('long', 100_000);
    progress(`a check of a visit of ${long} events`);
    figures.push(...(await checking(program, join(folder, 'long'), long)));

    const kills = number('kills', 20);
    progress(`${kills} kills of the server`);
    const killed = await killServer(program, join(folder, 'killed'), kills);
    figures.push({
      name: `acknowledged events lost over ${kills} kills (SIGKILL)`,
      value: killed.lost,
      unit: 'events',
      against: `must be 0, of ${killed.acknowledged} acknowledged`,
    });
    return figures;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** SQLite alone and the whole server by turns, so that what else the machine does meets both: medians of three. */
async function saturation(folder: string, events: number): Promise<Figure[]> {
  const [raw, whole, shares]: [number[], number[], number[]] = [[], [], []];
  for (let round = 0; round < 3; round += 1) {
    raw.push(rawSqlite(join(folder, `raw-${round}.sqlite`), events));
    const server = await startLocalServer({ program, dataDir: join(folder, `full-${round}`) });
    const load = { url: server.url, devices: DEVICES_AT_FULL, events: Math.ceil(events / DEVICES_AT_FULL), body: BODY };
    const { seconds, share } = await saturateFromProcess(load);
    whole.push((load.events * DEVICES_AT_FULL) / seconds);
    shares.push(share);
    await server.stop();
  }
  const ratio = median(whole.map((rate, round) => rate / (raw[round] as number)));
  return [
    { name: 'SQLite alone, WAL and FULL, 100 events a commit', value: median(raw), unit: 'events/s' },
    { name: 'the server at saturation', value: median(whole), unit: 'events/s' },
    { name: 'that, of SQLite alone by turns', value: ratio, unit: '', against: 'aim ≥ 0.5' },
    { name: 'load generator’s own share of a processor then', value: median(shares), unit: '' },
  ];
}

/** The same rows without a server, into a table without keys or guards. */
function rawSqlite(path: string, events: number): number {
  const database = new SQLite(path);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.exec('CREATE TABLE event (id INTEGER PRIMARY KEY, stream INTEGER, seq INTEGER, hash TEXT, body BLOB)');
  const insert = database.prepare('INSERT INTO event (stream, seq, hash, body) VALUES (1, ?, ?, ?)');
  const body = Buffer.from(BODY);
  const commit = database.transaction((from: number) => {
    for (let at = 0; at < 100; at += 1) insert.run(from + at, 'a'.repeat(64), body);
  });
  const started = performance.now();
  for (let from = 0; from < events; from += 100) commit.immediate(from);
  const seconds = (performance.now() - started) / 1_000;
  database.close();
  return events / seconds;
}

async function fileLogFigures(folder: string): Promise<Figure[]> {
  const file = openSync(join(folder, 'raw.jsonl'), 'w');
  const raw = timesOf(200, () => {
    writeSync(file, `${BODY}\n`);
    fdatasyncSync(file);
  });
  const stream = { company: 'local', visit: 'v', device: 'd', epoch: 1 };
  const { log } = await openFileLog(join(folder, 'log.jsonl'), stream);
  const ours: number[] = [];
  for (let at = 0; at < 200; at += 1) {
    const started = performance.now();
    await log.append([BODY]);
    ours.push(performance.now() - started);
  }
  await log.close();
  return [
    { name: 'one line written and synced by hand, median', value: median(raw), unit: 'ms' },
    {
      name: 'one event appended to a file log, median',
      value: median(ours),
      unit: 'ms',
      against: `${(median(ours) / median(raw)).toFixed(2)} of by hand`,
    },
  ];
}

async function receiptFigure(folder: string): Promise<Figure> {
  const signer = openReceiptSigner(join(folder, 'key.pem'));
  const stream = { company: 'local', visit: 'v', device: 'd', epoch: 1 };
  const times: number[] = [];
  for (let at = 0; at < 500; at += 1) {
    const started = performance.now();
    await signer.sign({ stream, seq: 1, hash: 'a'.repeat(64), time: 0 });
    times.push(performance.now() - started);
  }
  return { name: 'one receipt signed, median', value: median(times) * 1_000, unit: 'µs' };
}

function timesOf(count: number, work: () => void): number[] {
  return Array.from({ length: count }, () => {
    const started = performance.now();
    work();
    return performance.now() - started;
  });
}
