import { fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SQLite from 'better-sqlite3';
import { openFileLog } from '../../client/record/node/file-log.ts';
import { startLocalServer } from '../../client/record/node/local-server.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { killServer } from '../load/kill-server.ts';
import { loadInProcess } from '../load/load-process.ts';
import { runReconnectStorm } from '../load/reconnect-storm.ts';
import { type Bench, type Figure, median } from './figures.ts';
import { listing, processorSeconds } from './record-figures.ts';

const program = fileURLToPath(new URL('../../server/main.js', import.meta.url));
const BODY = 'x'.repeat(250);

/** The record on its way: options visits=2000 rate=2 seconds=10 storm=50000 listed=20000 kills=20. */
export const bench: Bench = async (options, progress) => {
  const number = (name: string, standard: number) => Number(options.get(name) ?? standard);
  const folder = mkdtempSync(join(tmpdir(), 'readback-bench-'));
  try {
    const figures: Figure[] = [];
    progress('raw limits of this disk');
    const raw = rawSqlite(join(folder, 'raw.sqlite'));
    figures.push({ name: 'SQLite alone, WAL and FULL, 100 events a commit', value: raw, unit: 'events/s' });
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
    figures.push(
      { name: `${storm} events of 500 devices coming back`, value: stormSeconds, unit: 's', against: 'aim ≤ 15' },
      {
        name: 'that storm',
        value: storm / stormSeconds,
        unit: 'events/s',
        against: `${(storm / stormSeconds / raw).toFixed(2)} of SQLite alone`,
      },
    );
    await server.stop();

    progress('a list of 20,000 visits');
    figures.push(...(await listing(program, join(folder, 'listed'), number('listed', 20_000))));

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

/** The same rows in the same batches, without a server. */
function rawSqlite(path: string): number {
  const database = new SQLite(path);
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.exec('CREATE TABLE event (id INTEGER PRIMARY KEY, stream INTEGER, seq INTEGER, hash TEXT, body BLOB)');
  const insert = database.prepare('INSERT INTO event (stream, seq, hash, body) VALUES (1, ?, ?, ?)');
  const body = Buffer.from(BODY);
  const commit = database.transaction((from: number) => {
    for (let at = 0; at < 100; at += 1) insert.run(from + at, 'a'.repeat(64), body);
  });
  const rates = Array.from({ length: 5 }, (_, round) => {
    const started = performance.now();
    for (let batch = 0; batch < 40; batch += 1) commit.immediate(round * 4_000 + batch * 100);
    return 4_000 / ((performance.now() - started) / 1_000);
  });
  database.close();
  return median(rates);
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
