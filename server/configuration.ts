import { readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { resolve } from 'node:path';
import { createSecureContext } from 'node:tls';
import { ServerError } from './errors.ts';

export interface Configuration {
  readonly host: string;
  /** 0 takes a free port. */
  readonly port: number;
  /** Absolute. */
  readonly dataDir: string;
  readonly tls?: { readonly cert: Buffer; readonly key: Buffer };
  /** The address of a proxy that speaks TLS in front of this server, such as https://readback.example. */
  readonly proxyOrigin?: string;
  /** The record stops growing at this size, as if the disk were full. */
  readonly maxDataBytes?: number;
  /** Starts although the record lacks what was signed for or acknowledged. */
  readonly acceptLoss: boolean;
  /** Writes a line of JSON for each answer to the standard output. */
  readonly log: boolean;
  /** By which a program may ask for the metrics that has no session. */
  readonly metricsToken?: string;
  /** The PostgreSQL database that all is kept in, in place of a folder. */
  readonly databaseUrl?: string;
  /** Sounds are deleted so many days after they came. */
  readonly soundDays: number;
  /** What is personal of a visit is erased so many days after it last grew; never, where nothing is given. */
  readonly personalDays?: number;
}

/** A season of calls, so that a repeat call can still be heard; our choice. */
const SOUND_DAYS = '90';
const MOST_DAYS = 36_500;

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * @throws {ServerError} setting-wrong, open-without-tls.
 */
export function readConfiguration(environment: Environment): Configuration {
  const host = readHost(environment['HOST'] || '127.0.0.1');
  const tls = readTls(environment);
  const proxyOrigin = readProxyOrigin(environment);
  if (!isLoopback(host) && tls === undefined && proxyOrigin === undefined)
    throw new ServerError('open-without-tls', host);
  const limit = environment['DATA_LIMIT_MB'];
  const personalDays = environment['RETAIN_PERSONAL_DAYS'];
  return {
    host,
    port: wholeNumber('PORT', environment['PORT'] || '8470', 0, 65_535),
    acceptLoss: yesOrNothing('ACCEPT_LOSS', environment['ACCEPT_LOSS']),
    log: yesOrNothing('LOG', environment['LOG']),
    soundDays: wholeNumber('RETAIN_SOUND_DAYS', environment['RETAIN_SOUND_DAYS'] || SOUND_DAYS, 1, MOST_DAYS),
    ...(personalDays ? { personalDays: wholeNumber('RETAIN_PERSONAL_DAYS', personalDays, 1, MOST_DAYS) } : {}),
    dataDir: resolve(environment['DATA_DIR'] || 'data'),
    ...(tls === undefined ? {} : { tls }),
    ...(proxyOrigin === undefined ? {} : { proxyOrigin }),
    ...readMetricsToken(environment['METRICS_TOKEN']),
    ...readDatabaseUrl(environment),
    ...(limit ? { maxDataBytes: wholeNumber('DATA_LIMIT_MB', limit, 1, 10_000_000) * 1_000_000 } : {}),
  };
}

/** A name or an address as they are written; whether this machine has it shows as it listens. */
function readHost(text: string): string {
  const isName = /^[a-z0-9]([a-z0-9.-]*[a-z0-9])?$/i.test(text);
  if (isName || isIP(text) !== 0 || text === '[::1]') return text;
  throw new ServerError(
    'setting-wrong',
    `HOST=${text} is no name and no address: give one of this machine, such as 127.0.0.1.`,
  );
}

/** True for a name or address that only this machine can reach. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || host === '[::1]' || /^127(\.\d{1,3}){3}$/.test(host);
}

function readTls(environment: Environment): Configuration['tls'] {
  const { TLS_CERT: cert, TLS_KEY: key } = environment;
  if (!cert && !key) return undefined;
  if (!cert || !key)
    throw new ServerError('setting-wrong', 'TLS_CERT and TLS_KEY belong together: give both, or neither.');
  const pair = { cert: readSetting('TLS_CERT', cert), key: readSetting('TLS_KEY', key) };
  try {
    createSecureContext(pair);
  } catch (error) {
    const why = (error as Error).message.split(':').at(-1)?.trim();
    throw new ServerError(
      'setting-wrong',
      `TLS_CERT=${cert} and TLS_KEY=${key} are no certificate and its key in PEM form (${why}): name the right files.`,
      error,
    );
  }
  return pair;
}

function readProxyOrigin(environment: Environment): string | undefined {
  const text = environment['PROXY_ORIGIN'];
  if (!text) return undefined;
  const url = URL.canParse(text) ? new URL(text) : undefined;
  if (url?.protocol !== 'https:' || url.pathname !== '/') {
    throw new ServerError('setting-wrong', `PROXY_ORIGIN=${text} must be an address such as https://readback.example.`);
  }
  return url.origin;
}

function wholeNumber(name: string, text: string, lowest: number, highest: number): number {
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= lowest && value <= highest) return value;
  throw new ServerError('setting-wrong', `${name}=${text} must be a whole number from ${lowest} to ${highest}.`);
}

/**
 * DATABASE_URL of an environment.
 * @throws {ServerError} setting-wrong. Its password is in no sentence.
 */
export function readDatabaseUrl(environment: Environment): Pick<Configuration, 'databaseUrl'> {
  const { DATABASE_URL: text, DATA_LIMIT_MB: limit } = environment;
  if (!text) return {};
  const url = URL.canParse(text) ? new URL(text) : undefined;
  const named = url !== undefined && /^postgres(ql)?:$/.test(url.protocol) && url.pathname.length > 1;
  if (!named) {
    throw new ServerError('setting-wrong', 'DATABASE_URL must be an address such as postgres://USER@HOST:5432/NAME.');
  }
  if (limit) throw new ServerError('setting-wrong', 'DATA_LIMIT_MB goes with a folder, not with DATABASE_URL.');
  return { databaseUrl: text };
}

const SHORTEST_TOKEN = 20;

function readMetricsToken(text: string | undefined): Pick<Configuration, 'metricsToken'> {
  if (!text) return {};
  if (text.length >= SHORTEST_TOKEN) return { metricsToken: text };
  throw new ServerError(
    'setting-wrong',
    `METRICS_TOKEN must have ${SHORTEST_TOKEN} characters or more, left to chance.`,
  );
}

function yesOrNothing(name: string, text: string | undefined): boolean {
  if (text === undefined || text === '') return false;
  if (text === 'yes') return true;
  throw new ServerError('setting-wrong', `${name}=${text} must be yes, or left out.`);
}

function readSetting(name: string, path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    throw new ServerError('setting-wrong', `${name}=${path} cannot be read: name a file in PEM form.`, error);
  }
}
