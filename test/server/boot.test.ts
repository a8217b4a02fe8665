import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startLocalServer } from '../../client/record/node/local-server.ts';
import { readConfiguration } from '../../server/configuration.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, streamOf } from './running-app.ts';

const scratch = scratchFolder();
let program: string;
beforeAll(() => {
  program = buildServer();
}, 120_000);
afterAll(() => scratch.remove());

/** Runs the program until it ends by itself. */
async function run(environment: Record<string, string>): Promise<{ code: number | null; out: string; err: string }> {
  const child = start({ DATA_DIR: join(scratch.path, 'data'), PORT: '0', ...environment });
  let [out, err] = ['', ''];
  child.stdout?.on('data', (text) => {
    out += text;
  });
  child.stderr?.on('data', (text) => {
    err += text;
  });
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  return { code, out, err };
}

function start(environment: Record<string, string>): ChildProcess {
  const { PATH } = process.env;
  return spawn(process.execPath, [program], { env: { PATH, ...environment }, stdio: ['ignore', 'pipe', 'pipe'] });
}

/** Runs the tool that adds a keeper. */
const keeper = (...args: string[]) =>
  spawnSync(process.execPath, [program.replace('main.js', 'tools/keeper.js'), ...args], { encoding: 'utf8' });

/** The first lines a started server prints, up to the one that says where it is. */
async function readyLines(child: ChildProcess): Promise<string[]> {
  let out = '';
  return new Promise((resolve, reject) => {
    child.stdout?.on('data', (text) => {
      out += text;
      if (out.includes('"ready"')) resolve(out.trim().split('\n'));
    });
    child.on('close', () => reject(new Error(`ended early: ${out}`)));
  });
}

describe('the server does not start, and says in one sentence why', () => {
  const oneSentence = (err: string) => expect(err.trim().split('\n')).toHaveLength(1);

  test('the port is taken', async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) =>
      other.listen(0, '127.0.0.1', () => resolve((other.address() as { port: number }).port)),
    );
    const { code, err } = await run({ PORT: String(port) });
    other.close();
    expect(code).toBe(1);
    expect(err).toContain(`Port ${port} is taken by another program: stop it, or choose another port with PORT=`);
    oneSentence(err);
  });

  test('the data folder cannot be made', async () => {
    writeFileSync(join(scratch.path, 'a-file'), '');
    const { code, err } = await run({ DATA_DIR: join(scratch.path, 'a-file', 'data') });
    expect(code).toBe(1);
    expect(err).toMatch(/The data folder .* cannot be written: permit writing there, or choose another with DATA_DIR/);
    oneSentence(err);
  });

  test('the record is not one, or is damaged', async () => {
    const dataDir = join(scratch.path, 'not-a-record');
    mkdirSync(dataDir);
    writeFileSync(join(dataDir, 'readback.sqlite'), 'something else altogether, and rather long at that '.repeat(20));
    const { code, err } = await run({ DATA_DIR: dataDir });
    expect(code).toBe(1);
    expect(err).toContain('is not a Readback record');
    oneSentence(err);
  });

  test('the address is none of this machine', async () => {
    // RFC 5737 keeps 192.0.2.0/24 for texts, RFC 6761 "invalid" for names that lead nowhere.
    const DATA_DIR = join(scratch.path, 'elsewhere');
    keeper('--data', DATA_DIR, 'robin');
    for (const HOST of ['192.0.2.1', 'nowhere.invalid']) {
      const { code, err } = await run({ HOST, DATA_DIR, PROXY_ORIGIN: 'https://readback.example' });
      expect(code).toBe(1);
      expect(err).toMatch(
        /This user may not listen at .*: choose a port above 1023 with PORT, or an address of this machine/,
      );
      oneSentence(err);
    }
  });

  test('others would reach it, and nobody is known yet, until a keeper was added', async () => {
    const beyond = { DATA_DIR: join(scratch.path, 'no-keeper'), PROXY_ORIGIN: 'https://readback.example' };
    for (const HOST of ['127.0.0.1', '0.0.0.0']) {
      const { code, err } = await run({ HOST, ...beyond });
      expect(code).toBe(1);
      expect(err).toContain('nobody is known here yet: run "npm run -s keeper" first');
      oneSentence(err);
    }
    const { stdout } = keeper('--data', beyond.DATA_DIR, '--url', 'https://readback.example', 'robin');
    expect(stdout).toMatch(/^robin is a keeper of local\. .*: https:\/\/readback\.example\/sign-in#[a-z0-9]{26}\n$/);
    const child = start({ ...beyond, PORT: '0' });
    expect((await readyLines(child))[0]).toMatch(/^Readback is at /);
    child.kill('SIGTERM');
    await once(child, 'exit');
  });

  test('it would be open to the network without TLS', async () => {
    const { code, err } = await run({ HOST: '0.0.0.0' });
    expect(code).toBe(1);
    expect(err).toContain('give TLS_CERT and TLS_KEY, or name the proxy');
    oneSentence(err);
  });
});

describe('settings', () => {
  test('without any, the server is at 127.0.0.1:8470 with its record in ./data', () => {
    const configuration = readConfiguration({});
    const dataDir = join(process.cwd(), 'data');
    expect(configuration).toEqual({
      host: '127.0.0.1',
      port: 8470,
      dataDir,
      acceptLoss: false,
      log: false,
      soundDays: 90,
    });
  });

  test.each([
    [{ PORT: 'http' }, /PORT=http must be a whole number from 0 to 65535/],
    [{ PORT: '70000' }, /PORT=70000/],
    [{ DATA_LIMIT_MB: '-1' }, /DATA_LIMIT_MB=-1/],
    [{ ACCEPT_LOSS: '1' }, /ACCEPT_LOSS=1 must be yes/],
    [{ TLS_CERT: 'cert.pem' }, /belong together/],
    [{ TLS_CERT: '/nowhere/c.pem', TLS_KEY: '/nowhere/k.pem' }, /TLS_CERT=\/nowhere\/c.pem cannot be read/],
    [{ PROXY_ORIGIN: 'http://plain.example' }, /must be an address such as https:/],
    [{ PROXY_ORIGIN: 'https://a.example/path' }, /must be an address such as https:/],
    [{ HOST: 'not a host' }, /HOST=not a host is no name and no address/],
    [{ HOST: 'http://a.example' }, /HOST=http:\/\/a.example is no name and no address/],
    [{ HOST: '192.168.1.5' }, /opens the server to the network/],
  ])('%o is refused', (environment, sentence) => {
    expect(() => readConfiguration(environment)).toThrow(sentence);
  });

  test('behind a named proxy any address may be listened at', () => {
    const proxied = readConfiguration({ HOST: '0.0.0.0', PROXY_ORIGIN: 'https://readback.example' });
    expect(proxied).toMatchObject({ host: '0.0.0.0', proxyOrigin: 'https://readback.example' });
  });
});

describe('a started server', () => {
  test('tells a person where it is, and a program by a line of JSON; ends in good order on each signal', async () => {
    for (const signal of ['SIGTERM', 'SIGINT'] as const) {
      const dataDir = join(scratch.path, signal);
      const child = start({ DATA_DIR: dataDir, PORT: '0' });
      const [where, what, ear, json] = await readyLines(child);
      const { ready } = JSON.parse(json ?? '');
      expect(where).toBe(`Readback is at ${ready.url}`);
      expect(what).toBe(`Records are kept in ${dataDir}`);
      // For whoever runs the server alone, whatever the system's own habit is.
      for (const name of ['.', ...readdirSync(dataDir)]) expect(statSync(join(dataDir, name)).mode & 0o077).toBe(0);
      expect(ear).toMatch(/^Ear: (the offline recogniser|none)/);
      const stream = streamOf('v-boot');
      const client = await RawClient.open(ready.url);
      await client.hello(stream);
      const [entry] = await chainFor(stream, ['one']);
      client.say({ kind: 'append', ...entry });
      expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
      const ended = new Promise((resolve) => child.on('exit', resolve));
      child.kill(signal);
      expect((await client.closed).code).toBe(1012);
      expect(await ended).toBe(0);
    }
  });

  test('ends when the program that started it is gone', async () => {
    const parent = spawn(
      process.execPath,
      [
        '-e',
        `const { fork } = require('node:child_process');
         const child = fork(${JSON.stringify(program)}, { execArgv: [], stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
         child.on('message', ({ url }) => console.log(JSON.stringify({ url, pid: child.pid })));`,
      ],
      {
        env: { ...process.env, PORT: '0', DATA_DIR: join(scratch.path, 'orphan') },
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    );
    const { url, pid } = await new Promise<{ url: string; pid: number }>((resolve) =>
      parent.stdout.once('data', (text) => resolve(JSON.parse(String(text)))),
    );
    expect(await getJson(`${url}/api/health`)).toMatchObject({ status: 'ok' });
    parent.kill('SIGKILL');
    const alive = () => {
      try {
        return process.kill(pid, 0);
      } catch {
        return false;
      }
    };
    while (alive()) await new Promise((resolve) => setTimeout(resolve, 20));
  });

  test('ends when that program has gone before it could be told so', async () => {
    const child = spawn(process.execPath, [program], {
      env: { ...process.env, PORT: '0', DATA_DIR: join(scratch.path, 'left-early') },
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    });
    let complaint = '';
    child.stderr?.on('data', (text) => {
      complaint += text;
    });
    // Not 'close': that waits for a channel which is gone already.
    const ended = Promise.all([once(child, 'exit'), once(child.stderr as Readable, 'end')]);
    child.disconnect();
    expect((await ended)[0]).toEqual([0, null]);
    expect(complaint).toBe('');
  });

  test('carries on when nobody reads what it prints', async () => {
    const child = spawn(process.execPath, [program], {
      env: { ...process.env, PORT: '0', DATA_DIR: join(scratch.path, 'unread') },
      stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
    });
    child.stdout?.destroy();
    const [{ url }] = (await once(child, 'message')) as [{ url: string }];
    expect(await getJson(`${url}/api/health`)).toMatchObject({ status: 'ok' });
    child.kill('SIGTERM');
    expect(await once(child, 'exit')).toEqual([0, null]);
  });

  test('a program that cannot be started is told in its own words', async () => {
    const dataDir = join(scratch.path, 'child-data');
    await expect(startLocalServer({ program: join(scratch.path, 'missing.js'), dataDir })).rejects.toThrow(
      /did not start .*build the project first/,
    );
    await expect(startLocalServer({ program, dataDir, environment: { DATA_LIMIT_MB: 'much' } })).rejects.toThrow(
      /DATA_LIMIT_MB=much must be a whole number/,
    );
  });
});
