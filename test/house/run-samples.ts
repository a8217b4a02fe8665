import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openFileLog } from '../../client/record/node/file-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { Outbox } from '../../client/record/outbox.ts';
import { LOCAL_COMPANY } from '../../grammar/visit/envelope.ts';
import { PROJECT_ROOT } from '../browser/project-root.ts';

/** Where outputs say that the project lies. */
const SHOWN_TOP = '/home/tech/readback';
const SHOWN_SERVER = 'http://127.0.0.1:8470';

/**
 * Runs the commands that texts show, as built JavaScript: `npm run -s NAME [--]` is what the script of that name runs
 * after its build; `npm start` and `curl -s ADDRESS` go to one server, which holds the library visit.
 */
export class SampleRunner {
  readonly #scratch = mkdtempSync(join(tmpdir(), 'readback-samples-'));
  readonly #outputs = new Map<string, Promise<string>>();
  #server: Promise<StartedServer> | undefined;

  /** What a command prints; of a long one at least so many lines. A command is run once. */
  output(command: string, lines: number): Promise<string> {
    const key = `${lines} ${command}`;
    const known = this.#outputs.get(key) ?? this.#run(command, lines);
    this.#outputs.set(key, known);
    return known;
  }

  async stop(): Promise<void> {
    const child = (await this.#server)?.child;
    // It signs its heads and gives its folder back before it ends.
    const ended = child && once(child, 'exit');
    child?.kill('SIGTERM');
    await ended;
    rmSync(this.#scratch, { recursive: true, force: true });
  }

  async #run(command: string, lines: number): Promise<string> {
    const address = /^curl -s '?(http:\/\/127\.0\.0\.1:8470[^\s']*)'?$/.exec(command)?.[1];
    if (command !== 'npm start' && address === undefined)
      return this.#shown(await shell(built(command), lines, this.#environment()));
    this.#server ??= startServer(join(this.#scratch, 'server'));
    const { url, said } = await this.#server;
    if (address === undefined) return this.#shown(said);
    return `${await (await fetch(address.replace(SHOWN_SERVER, url))).text()}\n`;
  }

  #environment(): NodeJS.ProcessEnv {
    return { ...process.env, DATA_DIR: join(this.#scratch, 'data') };
  }

  #shown(text: string): string {
    return text
      .replaceAll(join(this.#scratch, 'server'), `${SHOWN_TOP}/data`)
      .replaceAll(this.#scratch, SHOWN_TOP)
      .replaceAll(PROJECT_ROOT, SHOWN_TOP);
  }
}

/** The command with each script's program in its place. */
function built(command: string): string {
  const { scripts } = JSON.parse(readFileSync(join(PROJECT_ROOT, 'package.json'), 'utf8')) as {
    readonly scripts: Readonly<Record<string, string>>;
  };
  return command.replace(/npm run -s ([\w:-]+)(?: --(?= ))?/g, (_, name: string) => {
    const program = scripts[name]?.split(' && ').at(-1);
    if (program === undefined || !program.startsWith('node ')) throw new Error(`no script ${name} runs a program`);
    return program;
  });
}

/** Runs a command line until it ends, or until it has printed so many lines. @throws Error where it fails */
function shell(line: string, lines: number, env: NodeJS.ProcessEnv): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn('bash', ['-c', `set -o pipefail; ${line}`], {
      cwd: PROJECT_ROOT,
      env,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let [out, complaint] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      // As "| head" does it: what goes on printing meets a closed pipe.
      if (out.split('\n').length > lines) child.stdout.destroy();
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      complaint += text;
    });
    child.once('error', reject);
    child.once('close', (code) =>
      code === 0 ? resolve(out) : reject(new Error(`${line} exits ${code}: ${complaint}`)),
    );
  });
}

interface StartedServer {
  readonly child: ChildProcess;
  readonly url: string;
  /** What it said to a person. */
  readonly said: string;
}

async function startServer(dataDir: string): Promise<StartedServer> {
  const child = spawn(process.execPath, [join(PROJECT_ROOT, '.build/server/main.js')], {
    env: { ...process.env, PORT: '0', DATA_DIR: dataDir, HOST: '127.0.0.1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let out = '';
  const { url } = await new Promise<{ readonly url: string }>((resolve, reject) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      const ready = /^\{"ready".*\}$/m.exec(out)?.[0];
      if (ready !== undefined) resolve((JSON.parse(ready) as { ready: { url: string } }).ready);
    });
    child.once('close', (code) => reject(new Error(`the server ended (${code}): ${out}`)));
  });
  await sendLibraryVisit(url, dataDir);
  return { child, url, said: out.replace(/^\{"ready".*\}\n/m, '').replace(url, SHOWN_SERVER) };
}

/** Sends the recorded library visit as a device does. */
async function sendLibraryVisit(url: string, folder: string): Promise<void> {
  const events = readFileSync(join(PROJECT_ROOT, 'fixtures/visits/library/events.jsonl'), 'utf8').trim().split('\n');
  const stream = { company: LOCAL_COMPANY, visit: 'library', device: 'terminal', epoch: 1 };
  const { log } = await openFileLog(join(folder, 'library.jsonl'), stream);
  const outbox = new Outbox({ log, clock: Date.now, ...nodeLink(url) }).start();
  await outbox.append(events);
  await outbox.settled();
  outbox.stop();
  await log.close();
}
