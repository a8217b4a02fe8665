import { type ChildProcess, fork } from 'node:child_process';
import { access } from 'node:fs/promises';
import { RecordError } from '../errors.ts';

export interface LocalServerOptions {
  /** The built server program, .build/server/main.js. */
  readonly program: string;
  readonly dataDir: string;
  /** 0, the default, takes a free port. */
  readonly port?: number;
  readonly environment?: Readonly<Record<string, string>>;
}

export interface LocalServer {
  /** Such as http://127.0.0.1:40123. */
  readonly url: string;
  readonly port: number;
  readonly pid: number;
  /** Ends it in good order and waits for that. */
  stop(): Promise<void>;
  /** Ends it as a crash would (SIGKILL) and waits for that. */
  kill(): Promise<void>;
}

/**
 * Starts the server as a child process and waits until it listens. The child ends with this process.
 * @throws {RecordError} server-missing, with the server's own sentence where it gave one.
 */
export async function startLocalServer(options: LocalServerOptions): Promise<LocalServer> {
  await access(options.program).catch((error) => {
    throw new RecordError('server-missing', options.program, error);
  });
  const child = fork(options.program, [], {
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    execArgv: [],
    env: {
      ...process.env,
      // What is tried here is never put into a database that somebody uses.
      DATABASE_URL: '',
      ...options.environment,
      DATA_DIR: options.dataDir,
      HOST: '127.0.0.1',
      PORT: String(options.port ?? 0),
    },
  });
  const { url, port } = await readyMessage(child);
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const end = async (signal: NodeJS.Signals) => {
    if (child.exitCode === null && child.signalCode === null) {
      child.kill(signal);
      await gone;
    }
  };
  return { url, port, pid: child.pid ?? 0, stop: () => end('SIGTERM'), kill: () => end('SIGKILL') };
}

function readyMessage(child: ChildProcess): Promise<{ readonly url: string; readonly port: number }> {
  return new Promise((resolve, reject) => {
    let complaint = '';
    child.stderr?.on('data', (text) => {
      complaint += text;
    });
    child.once('error', (error) => reject(new RecordError('server-missing', error.message, error)));
    // 'close' comes after the last of stderr, 'exit' may come before it.
    child.once('close', (code) => reject(new RecordError('server-missing', complaint.trim() || `exit code ${code}`)));
    child.once('message', (message) => resolve(message as { url: string; port: number }));
  });
}
