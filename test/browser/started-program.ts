import { type ChildProcess, spawn } from 'node:child_process';

export interface StartedProgram {
  readonly child: ChildProcess;
  /** Such as http://127.0.0.1:40123. */
  readonly url: string;
  /** What it has printed so far. */
  readonly printed: { readonly out: string; readonly err: string };
}

/** Starts the built server as users do, on a free port, and gathers what it prints. */
export async function startProgram(program: string, environment: Record<string, string>): Promise<StartedProgram> {
  const { PATH } = process.env;
  const child = spawn(process.execPath, [program], { env: { PATH, PORT: '0', ...environment } });
  const printed = { out: '', err: '' };
  child.stderr.on('data', (text) => {
    printed.err += text;
  });
  const url = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (text) => {
      printed.out += text;
      const ready = /^\{"ready".*\}$/m.exec(printed.out)?.[0];
      if (ready !== undefined) resolve(JSON.parse(ready).ready.url);
    });
    child.once('close', () => reject(new Error(printed.err)));
  });
  return { child, url, printed };
}
