import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { type LocalServer, startLocalServer } from '../../client/record/node/local-server.ts';
import { loadInProcess, saturateFromProcess } from '../load/load-process.ts';
import { runReconnectStorm } from '../load/reconnect-storm.ts';
import { type OwnPostgres, postgresPrograms, startOwnPostgres } from '../server/own-postgres.ts';
import { type Figure, median } from './figures.ts';
import { processorSeconds, processorSecondsOfAll } from './record-figures.ts';

export interface StoresLoad {
  readonly visits: number;
  /** Events a second of each visit. */
  readonly rate: number;
  readonly seconds: number;
  /** Events of the storm. */
  readonly storm: number;
  /** Events sent as fast as they are taken. */
  readonly full: number;
}

interface Place {
  readonly name: string;
  /** Seconds of processor that the database used so far, where it is a program of its own. */
  readonly ofDatabase?: () => number;
  /** Servers on one record of their own. */
  start(): Promise<readonly LocalServer[]>;
}

/** The same load on each store, one after the other in one run: SQLite, PostgreSQL, two servers on one PostgreSQL. */
export async function storesFigures(
  program: string,
  folder: string,
  load: StoresLoad,
  progress: (text: string) => void,
): Promise<readonly Figure[]> {
  const programs = await postgresPrograms();
  const postgres = 'missing' in programs ? undefined : await startOwnPostgres(programs, { onDisk: true });
  try {
    const places = placesOf(program, folder, postgres);
    const figures: Figure[] = [];
    for (const place of places) {
      progress(`${place.name}: ${load.visits} visits at ${load.rate} events/s for ${load.seconds} s, then the storm`);
      figures.push(...(await steadyAndStorm(place, load)));
    }
    progress(`${load.full} events as fast as they are taken, ${ROUNDS} times by turns`);
    figures.push(...(await byTurns(places, load.full)));
    if ('missing' in programs) progress(`without PostgreSQL: ${programs.missing}`);
    return figures;
  } finally {
    await postgres?.remove();
  }
}

function placesOf(program: string, folder: string, postgres: OwnPostgres | undefined): readonly Place[] {
  const dataDir = () => mkdtempSync(join(folder, 'server-'));
  const sqlite: Place = {
    name: 'SQLite',
    start: async () => [await startLocalServer({ program, dataDir: dataDir() })],
  };
  if (postgres === undefined) return [sqlite];
  const on = async (count: number) => {
    const environment = { DATABASE_URL: await postgres.database() };
    const servers: LocalServer[] = [];
    for (let at = 0; at < count; at += 1) {
      servers.push(await startLocalServer({ program, dataDir: dataDir(), environment }));
    }
    return servers;
  };
  const name = `PostgreSQL ${postgres.version}`;
  const ofDatabase = () => processorSecondsOfAll(postgres.pid);
  return [
    sqlite,
    { name, ofDatabase, start: () => on(1) },
    { name: `two servers on ${name}`, ofDatabase, start: () => on(2) },
  ];
}

async function steadyAndStorm(place: Place, { visits, rate, seconds, storm }: StoresLoad): Promise<readonly Figure[]> {
  const servers = await place.start();
  const used = () => servers.reduce((sum, { pid }) => sum + processorSeconds(pid), 0);
  try {
    const [before, databaseBefore] = [used(), place.ofDatabase?.() ?? 0];
    const each = visits / servers.length;
    const results = await Promise.all(
      servers.map(({ url }, at) => loadInProcess({ url, visits: each, rate, seconds, named: `at-${at}` })),
    );
    const sent = results.reduce((sum, one) => sum + one.sent, 0);
    const acknowledged = results.reduce((sum, one) => sum + one.acknowledged, 0);
    const cost = used() - before;
    const ofDatabase = place.ofDatabase === undefined ? undefined : place.ofDatabase() - databaseBefore;
    const [first] = servers;
    const stormSeconds = await runReconnectStorm((first as LocalServer).url, 500, storm / 500);
    const load = `${place.name}, ${visits} visits × ${rate}/s`;
    return [
      { name: `${load}: sent to acknowledged, median`, value: median(results.map((one) => one.median)), unit: 'ms' },
      {
        name: `${load}: sent to acknowledged, p99`,
        value: Math.max(...results.map((one) => one.p99)),
        unit: 'ms',
        against: 'aim ≤ 250',
      },
      { name: `${load}: acknowledged of sent`, value: acknowledged / sent, unit: '', against: 'must be 1' },
      { name: `${load}: servers, processor time an event`, value: (cost / sent) * 1e6, unit: 'µs' },
      ...(ofDatabase === undefined
        ? []
        : [{ name: `${load}: database, processor time an event`, value: (ofDatabase / sent) * 1e6, unit: 'µs' }]),
      {
        name: `${load}: load generator’s own share of a processor`,
        value: Math.max(...results.map((one) => one.share)),
        unit: '',
      },
      {
        name: `${place.name}, ${storm} events of 500 devices coming back`,
        value: stormSeconds,
        unit: 's',
        against: 'aim ≤ 15',
      },
    ];
  } finally {
    for (const server of servers) await server.stop();
  }
}

const ROUNDS = 3;
const DEVICES = 64;
const BODY = 'x'.repeat(250);

/** One server on each store at saturation, by turns, so that what else the machine does meets all: medians. */
async function byTurns(places: readonly Place[], events: number): Promise<readonly Figure[]> {
  const single = places.slice(0, 2);
  const rates = single.map((): number[] => []);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [at, place] of single.entries()) {
      const servers = await place.start();
      const [server] = servers as [LocalServer];
      const load = { url: server.url, devices: DEVICES, events: Math.ceil(events / DEVICES), body: BODY };
      const { seconds } = await saturateFromProcess(load);
      rates[at]?.push((load.events * DEVICES) / seconds);
      await server.stop();
    }
  }
  return single.map(({ name }, at) => ({
    name: `${name}: events a second at saturation`,
    value: median(rates[at] ?? []),
    unit: 'events/s',
  }));
}
