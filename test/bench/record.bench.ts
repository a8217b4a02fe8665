import { fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SQLite, { type Database } from 'better-sqlite3';
import { openFileLog } from '../../client/record/node/file-log.ts';
import { startLocalServer } from '../../client/record/node/local-server.ts';
import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import { demandDurability } from '../../server/store/sqlite-schema.ts';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { openReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { killAgain, killableServer } from '../load/kill-server.ts';
import { saturateFromProcess } from '../load/load-process.ts';
import { type Bench, type Figure, median } from './figures.ts';
import { checking, listing, processorSeconds } from './record-figures.ts';
import { storesFigures } from './record-stores.ts';

const program = fileURLToPath(new URL('../../server/main.js', import.meta.url));
const BODY = 'x'.repeat(250);
const BODY_BYTES = Buffer.from(BODY);
const HASH = 'a'.repeat(64);
const DEVICES_AT_FULL = 64;

/** The record on its way: options visits=2000 rate=2 seconds=10 storm=50000 full=60000 listed=20000 long=100000 kills=20 only=all. */
export const bench: Bench = async (options, progress) => {
  const number = (name: string, standard: number) => Number(options.get(name) ?? standard);
  const folder = mkdtempSync(join(tmpdir(), 'readback-bench-'));
  try {
    const figures: Figure[] = [];
    progress('raw limits of this disk');
    figures.push(...(await fileLogFigures(folder)));
    figures.push(await receiptFigure(folder));

    const [visits, rate, seconds] = [number('visits', 2_000), number('rate', 2), number('seconds', 10)];
    const [storm, full] = [number('storm', 50_000), number('full', 60_000)];
    figures.push(...(await storesFigures(program, folder, { visits, rate, seconds, storm, full }, progress)));
    if (options.get('only') === 'stores') return figures;
    progress(`${full} events of 64 devices, as fast as they are taken`);
    figures.push(...(await saturation(folder, full)));

    progress('a list of 20,000 visits');
    figures.push(...(await listing(program, join(folder, 'listed'), number('listed', 20_000))));

    const long = number('long', 100_000);
    progress(`a check of a visit of ${long} events`);
    figures.push(...(await checking(program, join(folder, 'long'), long)));

    const kills = number('kills', 20);
    progress(`${kills} kills of the server`);
    const killed = await killAgain(await killableServer(program, join(folder, 'killed')), kills);
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

/** SQLite alone and the whole server by turns, so that what else the machine does meets both: medians of five. */
async function saturation(folder: string, events: number): Promise<Figure[]> {
  const [bare, raw, whole, shares, costs]: [number[], number[], number[], number[], number[]] = [[], [], [], [], []];
  for (let round = 0; round < ROUNDS; round += 1) {
    bare.push(inserted(bareTable(join(folder, `bare-${round}.sqlite`)), events));
    raw.push(inserted(await ownTables(join(folder, `raw-${round}.sqlite`)), events));
    const server = await startLocalServer({ program, dataDir: join(folder, `full-${round}`) });
    const before = processorSeconds(server.pid);
    const load = { url: server.url, devices: DEVICES_AT_FULL, events: Math.ceil(events / DEVICES_AT_FULL), body: BODY };
    const { seconds, share } = await saturateFromProcess(load);
    whole.push((load.events * DEVICES_AT_FULL) / seconds);
    costs.push(((processorSeconds(server.pid) - before) / (load.events * DEVICES_AT_FULL)) * 1e6);
    shares.push(share);
    await server.stop();
  }
  const of = (peer: readonly number[]) => median(whole.map((rate, round) => rate / (peer[round] as number)));
  return [
    { name: `SQLite alone, the record’s tables, ${A_COMMIT} events a commit`, value: median(raw), unit: 'events/s' },
    { name: 'SQLite alone, a table without keys or guards', value: median(bare), unit: 'events/s' },
    { name: 'the server at saturation', value: median(whole), unit: 'events/s' },
    {
      name: 'that, of SQLite alone with the record’s tables, by turns',
      value: of(raw),
      unit: '',
      against: 'aim ≥ 0.5',
    },
    { name: 'that, of SQLite alone without keys or guards, by turns', value: of(bare), unit: '' },
    { name: 'the server’s processor time an event then', value: median(costs), unit: 'µs' },
    { name: 'load generator’s own share of a processor then', value: median(shares), unit: '' },
  ];
}

const ROUNDS = 5;
/** What the raw peers write at once, so many share a flush as where many write. */
const A_COMMIT = 100;

interface Peer {
  readonly database: Database;
  /** Writes one row: its device, 0 to 63, and the number of its event. */
  readonly insert: (device: number, seq: number) => void;
}

/** As many bytes a row, and nothing to keep them by. */
function bareTable(path: string): Peer {
  const database = durable(path);
  database.exec('CREATE TABLE event (id INTEGER PRIMARY KEY, stream INTEGER, seq INTEGER, hash TEXT, body BLOB)');
  const insert = database.prepare('INSERT INTO event (stream, seq, hash, body) VALUES (?, ?, ?, ?)');
  return { database, insert: (device, seq) => insert.run(device, seq, HASH, BODY_BYTES) };
}

/** The rows that the server writes, into its own tables: keys, index and triggers. */
async function ownTables(path: string): Promise<Peer> {
  await openSqliteStore(path).close();
  const database = durable(path);
  database.pragma('foreign_keys = ON');
  const stream = database.prepare('INSERT INTO stream (id, company, visit, device, epoch) VALUES (?, ?, ?, ?, 1)');
  for (let at = 0; at < DEVICES_AT_FULL; at += 1) stream.run(at + 1, LOCAL_COMPANY, `raw-${at}`, `load-${at}`);
  const insert = database.prepare(
    'INSERT INTO event (stream, seq, hash, body, received_at, clock_offset) VALUES (?, ?, ?, ?, ?, NULL)',
  );
  return { database, insert: (device, seq) => insert.run(device + 1, seq, HASH, BODY_BYTES, Date.now()) };
}

/** Opened as the server opens its record. */
function durable(path: string): Database {
  const database = new SQLite(path);
  demandDurability(database, path);
  return database;
}

/** Events a second of one program without a server, the devices by turns. */
function inserted({ database, insert }: Peer, events: number): number {
  const commit = database.transaction((from: number) => {
    for (let at = from; at < from + A_COMMIT; at += 1) {
      insert(at % DEVICES_AT_FULL, Math.floor(at / DEVICES_AT_FULL) + 1);
    }
  });
  const started = performance.now();
  for (let from = 0; from < events; from += A_COMMIT) commit.immediate(from);
  const seconds = (performance.now() - started) / 1_000;
  database.close();
  return (Math.ceil(events / A_COMMIT) * A_COMMIT) / seconds;
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
