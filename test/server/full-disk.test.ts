import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Entry } from '../../grammar/visit/envelope.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, streamOf } from './running-app.ts';

const scratch = scratchFolder();
let program: string;
beforeAll(() => {
  program = buildServer();
}, 120_000);
afterAll(() => scratch.remove());

/** The server as a child; with a limit, no file it writes may grow beyond that many kibibytes (setrlimit). */
function start(dataDir: string, fileLimit?: number): { child: ChildProcess; url: Promise<string> } {
  const limit = fileLimit === undefined ? '' : `ulimit -f ${fileLimit}; `;
  const child = spawn('bash', ['-c', `${limit}exec "$0" "$1"`, process.execPath, program], {
    env: { ...process.env, DATA_DIR: dataDir, PORT: '0' },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const url = new Promise<string>((resolve, reject) => {
    let out = '';
    child.stdout?.on('data', (text) => {
      out += text;
      const ready = out.split('\n').find((line) => line.startsWith('{"ready"'));
      if (ready !== undefined) resolve(JSON.parse(ready).ready.url);
    });
    child.on('exit', (code, signal) => reject(new Error(`ended: ${code ?? signal}`)));
  });
  return { child, url };
}

describe('a disk that takes no more', () => {
  test('is told with 1011; what was acknowledged stays, what was not is sent again once there is room', async () => {
    const dataDir = join(scratch.path, 'limited');
    const limited = start(dataDir, 1_500);
    const stream = streamOf('v-limited');
    const entries = await chainFor(
      stream,
      Array.from({ length: 80 }, (_, at) => `${at}${'x'.repeat(40_000)}`),
    );
    const client = await RawClient.open(await limited.url);
    await client.hello(stream);
    let acknowledged = 0;
    for (const entry of entries) {
      client.say({ kind: 'append', ...entry });
      const answer = await client.hear();
      if (answer.kind !== 'ack') break;
      acknowledged = answer.seq;
    }
    expect((await client.closed).code).toBe(1011);
    expect(acknowledged).toBeGreaterThan(5);
    expect(acknowledged).toBeLessThan(80);
    const held = async (url: string) =>
      (await getJson<{ events: Entry[] }>(`${url}/api/visits/v-limited/events`)).events.map(({ hash }) => hash);
    const expected = entries.slice(0, acknowledged).map(({ hash }) => hash);
    expect(await held(await limited.url)).toEqual(expected);
    limited.child.kill('SIGKILL');
    await new Promise((resolve) => limited.child.once('close', resolve));

    const roomy = start(dataDir);
    const url = await roomy.url;
    expect(await held(url)).toEqual(expected);
    const again = await RawClient.open(url);
    expect(await again.hello(stream)).toMatchObject({ kind: 'welcome', head: { seq: acknowledged } });
    again.say({ kind: 'append', ...(entries[acknowledged] as Entry) });
    expect(await again.hear()).toMatchObject({ kind: 'ack', seq: acknowledged + 1 });
    roomy.child.kill('SIGTERM');
    await new Promise((resolve) => roomy.child.once('close', resolve));
  });
});
