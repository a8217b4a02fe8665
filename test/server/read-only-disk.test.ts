import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startLocalServer } from '../../client/record/node/local-server.ts';
import type { Entry } from '../../grammar/visit/envelope.ts';
import { buildRoom, buildServer, scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, streamOf } from './running-app.ts';

const scratch = scratchFolder();
let server: string;
let visit: string;
beforeAll(() => {
  server = buildServer();
  visit = buildRoom('client/terminal', 'visit.js');
}, 300_000);
afterAll(() => scratch.remove());

/** The folder mounted read only for one process and what it starts (mount_namespaces(7)): root is held to it too. */
const READ_ONLY = 'mount --bind "$0" "$0" && mount -o remount,bind,ro "$0" && exec "$@"';

function runWhereReadOnly(folder: string, program: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const { status, stdout, stderr } = spawnSync(
    'unshare',
    ['--map-root-user', '--mount', 'bash', '-c', READ_ONLY, folder, process.execPath, ...program],
    { env: { ...process.env, ...env }, input: '', encoding: 'utf8', timeout: 60_000 },
  );
  return { status, stdout, stderr: stderr.trim().split('\n') };
}

/** Every file of the folder by its hash. */
function filesOf(folder: string): Readonly<Record<string, string>> {
  const names = readdirSync(folder).sort();
  const hash = (name: string) =>
    createHash('sha256')
      .update(readFileSync(join(folder, name)))
      .digest('hex');
  return Object.fromEntries(names.map((name) => [name, hash(name)]));
}

/** Kills a server as it stands: its log is not folded into its file. */
async function killed(child: ChildProcess): Promise<void> {
  const gone = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGKILL');
  await gone;
}

describe('a disk that can only be read', { timeout: 120_000 }, () => {
  test('is one sentence; nothing in it is touched, and all that was acknowledged is there once it can be written', async () => {
    const dataDir = join(scratch.path, 'data');
    mkdirSync(dataDir);
    const child = spawn(process.execPath, [server], {
      env: { ...process.env, DATA_DIR: dataDir, PORT: '0' },
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    const url = await new Promise<string>((resolve) => {
      let out = '';
      child.stdout?.on('data', (text) => {
        out += text;
        const line = out.split('\n').find((one) => one.startsWith('{"ready"') && one.endsWith('}'));
        if (line !== undefined) resolve(JSON.parse(line).ready.url);
      });
    });
    const stream = streamOf('v-read-only');
    const entries = await chainFor(stream, ['1', '2', '3', '4', '5']);
    const client = await RawClient.open(url);
    await client.hello(stream);
    for (const entry of entries) client.say({ kind: 'append', ...entry });
    for (let seq = 0; seq < 5; ) {
      const answer = await client.hear();
      if (answer.kind === 'ack') seq = answer.seq;
    }
    await killed(child);
    const before = filesOf(dataDir);

    const { status, stderr } = runWhereReadOnly(dataDir, [server], { DATA_DIR: dataDir, PORT: '0' });
    expect(status).toBe(1);
    expect(stderr).toHaveLength(1);
    expect(stderr[0]).toMatch(/^The data folder \S+ cannot be written: permit writing there, or choose another/);
    expect(filesOf(dataDir)).toEqual(before);

    const again = await startLocalServer({ program: server, dataDir });
    const { events } = await getJson<{ events: Entry[] }>(`${again.url}/api/visits/v-read-only/events`);
    expect(events.map(({ hash }) => hash)).toEqual(entries.map(({ hash }) => hash));
    await again.stop();
  });

  test('under a device’s own record is one sentence, before anything is said to be kept', () => {
    const folder = join(scratch.path, 'device');
    mkdirSync(folder);
    const { status, stderr } = runWhereReadOnly(folder, [visit, '--record', join(folder, 'visit.jsonl')]);
    expect(status).toBe(2);
    expect(stderr).toHaveLength(1);
    expect(stderr[0]).toMatch(/^The record cannot be written \(\S+\): free space or permit writing, then go on\.$/);
    expect(filesOf(folder)).toEqual({});
  });
});
