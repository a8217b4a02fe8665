import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Fastify, { type FastifyInstance, LogController } from 'fastify';
import { app } from './app.ts';
import { answerTo } from './arguments.ts';
import { type Configuration, readConfiguration } from './configuration.ts';
import { SizeLimit } from './database/size-limit.ts';
import { ServerError } from './errors.ts';
import { openDatabase } from './heads/open-database.ts';
import { openFolder } from './heads/open-folder.ts';
import { onlyThisMachine, originRule } from './origins.ts';
import { openSqlitePeopleStore, PEOPLE_FILE } from './people/sqlite-people-store.ts';
import { openSqlitePersonalStore, PERSONAL_FILE } from './personal/sqlite-personal-store.ts';
import { LOG_OPTIONS } from './request-log.ts';
import { INDEX_FILE, openSqliteVisitIndex } from './store/sqlite-visit-index.ts';

const WEB_DIR = fileURLToPath(new URL('../web', import.meta.url));

/** Boots the server: settings from the environment, one store, one port, and an orderly end. */
async function main(): Promise<void> {
  // What is kept is for whoever runs the server alone.
  process.umask(0o077);
  carryOnUnread();
  const version = await readVersion();
  const answer = answerTo(process.argv.slice(2), version);
  if (answer !== undefined) {
    process.stdout.write(answer);
    return;
  }
  const configuration = readConfiguration(process.env);
  const { told, ...kept } = await openKept(configuration);
  const loopback = onlyThisMachine(configuration);
  if (!loopback && !(await kept.peopleStore.hasKeeper())) throw new ServerError('keeper-missing', configuration.host);
  const fastify = Fastify({
    // A client that dawdles over its headers or its request is cut, so that it cannot hold connections.
    http: { headersTimeout: 10_000, requestTimeout: 30_000, connectionsCheckingInterval: 1_000 },
    forceCloseConnections: true,
    ...(configuration.log
      ? { logger: LOG_OPTIONS, logController: new LogController({ disableRequestLogging: true }) }
      : {}),
    ...(configuration.tls === undefined ? {} : { https: configuration.tls }),
  }) as unknown as FastifyInstance;
  await fastify.register(app, {
    ...kept,
    index: await openSqliteVisitIndex(join(configuration.dataDir, INDEX_FILE)),
    retention: { soundDays: configuration.soundDays, personalDays: configuration.personalDays },
    loopback,
    origins: originRule(configuration),
    webDir: WEB_DIR,
    metricsToken: configuration.metricsToken,
    version,
  });
  endInGoodOrder(fastify);
  await listen(fastify, configuration);
  tellReady(fastify, configuration, told);
}

/** What the server keeps all in: a folder of its own, or a database that several share. */
async function openKept({ databaseUrl, acceptLoss, dataDir, maxDataBytes }: Configuration) {
  if (databaseUrl !== undefined) return openDatabase(databaseUrl, { acceptLoss });
  const limit = maxDataBytes === undefined ? undefined : new SizeLimit(maxDataBytes);
  const { letGo, ...opened } = await openFolder(dataDir, { acceptLoss, limit });
  // Held while the process lives: what nothing refers to any more is closed, and the lock with it.
  process.once('exit', letGo);
  const kept = `Records are kept in ${dataDir}`;
  return {
    ...opened,
    peopleStore: await openSqlitePeopleStore(join(dataDir, PEOPLE_FILE)),
    personalStore: await openSqlitePersonalStore(join(dataDir, PERSONAL_FILE), limit),
    told: [kept, ...opened.told],
  };
}

async function readVersion(): Promise<string> {
  return JSON.parse(await readFile(new URL('../../package.json', import.meta.url), 'utf8')).version;
}

/** What it is called where this user, or this machine, cannot listen at an address. */
const NOT_HERE: ReadonlySet<string> = new Set([
  'EACCES',
  'EADDRNOTAVAIL',
  'EAFNOSUPPORT',
  'EAI_AGAIN',
  'EINVAL',
  'ENOTFOUND',
]);

async function listen(fastify: FastifyInstance, { host, port }: Configuration): Promise<void> {
  try {
    await fastify.listen({ host, port });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EADDRINUSE') throw new ServerError('port-taken', String(port), error);
    if (NOT_HERE.has(code ?? '')) {
      throw new ServerError('port-denied', `${host}:${port}`, error);
    }
    throw error;
  }
}

/** Tells a person on the terminal, and a parent process by a message and a line of JSON. */
function tellReady(
  fastify: FastifyInstance,
  { host, port: asked, tls, dataDir }: Configuration,
  told: readonly string[],
): void {
  const { port } = fastify.server.address() as AddressInfo;
  // At every address of the machine: one that surely works is shown.
  const everywhere = host === '0.0.0.0' || host === '::';
  const name = everywhere ? 'localhost' : host.includes(':') ? `[${host}]` : host;
  const url = `${tls === undefined ? 'http' : 'https'}://${name}:${port}`;
  const lines = [`Readback is at ${url}`, ...told, earWords()];
  process.stdout.write(`${lines.join('\n')}\n`);
  if (asked === 0) process.stdout.write(`${JSON.stringify({ ready: { url, port, dataDir } })}\n`);
  if (process.connected) process.send?.({ url, port, dataDir });
}

/** Which ear the pages will find: its models are built beside them. */
function earWords(): string {
  return existsSync(join(WEB_DIR, 'model/wideband/mdef.gz'))
    ? 'Ear: the offline recogniser with its 16 kHz and its 8 kHz model'
    : 'Ear: none, the pages are not built; run "npm start" to build them (typing works in the terminal tools)';
}

/** Takes nothing new, writes and acknowledges what is in hand, closes the store. A lost parent counts as a signal. */
function endInGoodOrder(fastify: FastifyInstance): void {
  let ending = false;
  const end = () => {
    if (ending) return;
    ending = true;
    fastify.close().then(
      () => process.exit(0),
      (error) => fail(error),
    );
  };
  process.on('SIGTERM', end);
  process.on('SIGINT', end);
  process.on('disconnect', end);
  // The parent may have gone before anybody listened for that.
  if (process.connected === false) end();
}

/** Nobody reads what the server prints any more ("| head -1"): that is no reason to stop keeping records. */
function carryOnUnread(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  }
}

function fail(error: unknown): void {
  const sentence = error instanceof ServerError ? error.message : String((error as Error).stack ?? error);
  process.stderr.write(`${sentence}\n`);
  process.exit(error instanceof ServerError && error.code === 'argument-unknown' ? 2 : 1);
}

main().catch(fail);
