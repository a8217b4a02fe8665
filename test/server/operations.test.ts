import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { startProgram } from '../browser/started-program.ts';
import { buildServer, scratchFolder } from './built-server.ts';
import { chainFor, RawClient, runApp, streamOf } from './running-app.ts';

const scratch = scratchFolder();
let program: string;
beforeAll(() => {
  program = buildServer();
}, 120_000);
afterAll(() => scratch.remove());

describe('the log', () => {
  test('tells each answer, and holds no secret and nothing that was said', async () => {
    const DATA_DIR = join(scratch.path, 'logged');
    const { child, url, printed } = await startProgram(program, { DATA_DIR, LOG: 'yes' });
    const spoken = 'the lady at the counter is called Quillfeather';
    const writing = await RawClient.open(url);
    const stream = streamOf('spoken');
    await writing.hello(stream);
    const [entry] = await chainFor(stream, [JSON.stringify({ type: 'note', text: spoken })]);
    writing.say({ kind: 'append', ...entry });
    expect(await writing.hear()).toMatchObject({ kind: 'ack' });
    await fetch(`${url}/api/visits/spoken/events?after=0`);
    writing.socket.close();
    const keeper = spawnSync(process.execPath, [
      program.replace('main.js', 'tools/keeper.js'),
      '--data',
      DATA_DIR,
      'robin',
    ]);
    const code = /#(\w+)/.exec(String(keeper.stdout))?.[1] as string;
    const password = 'a password for the log';
    const post = (path: string, body: object, cookie = '') =>
      fetch(`${url}${path}`, {
        method: 'POST',
        headers: { origin: url, 'content-type': 'application/json', cookie },
        body: JSON.stringify(body),
      });
    const cameIn = await post('/api/set-up', { code });
    const cookie = cameIn.headers
      .getSetCookie()
      .map((one) => one.split(';')[0])
      .join('; ');
    await post('/api/me/password', { password }, cookie);
    await post('/api/sign-in', { login: 'robin', password: 'a wrong one of the log' });
    const { ticket } = (await (await post('/api/ticket', {}, cookie)).json()) as { ticket: string };
    child.kill('SIGTERM');
    await once(child, 'exit');
    const lines = printed.out.split('\n').filter((line) => line.startsWith('{"level"'));
    const told = lines.map((line) => JSON.parse(line) as { route?: string; status?: number; closed?: number });
    expect(told).toContainEqual(expect.objectContaining({ route: '/api/visits/:visit/events', status: 200 }));
    expect(told).toContainEqual(expect.objectContaining({ route: '/api/sign-in', status: 401 }));
    expect(told.some(({ closed }) => closed !== undefined)).toBe(true);
    const tokens = cookie.split('; ').map((one) => one.slice(one.indexOf('=') + 1));
    expect(tokens.length).toBe(2);
    for (const secret of [code, password, 'a wrong one', ticket, ...tokens, 'Quillfeather', 'robin', '127.0.0.1:5']) {
      expect(lines.join('\n'), secret).not.toContain(secret);
    }
  });

  test('is not written where nobody asked for it', async () => {
    const { child, url, printed } = await startProgram(program, { DATA_DIR: join(scratch.path, 'unlogged') });
    await fetch(`${url}/api/visits`);
    child.kill('SIGTERM');
    await once(child, 'exit');
    expect(printed.out).not.toContain('"level"');
  });
});

describe('metrics', () => {
  /** The text format of Prometheus, version 0.0.4 (from memory): comments, or a name with labels and a number. */
  const LINE = /^(# (HELP|TYPE) [a-z_]+ .+|[a-z_]+(\{[a-z_]+="[^"\\\n]*"(,[a-z_]+="[^"\\\n]*")*\})? -?[0-9.e+-]+)$/;

  test('count what was written, answered and opened, and name nobody', async () => {
    const server = await runApp();
    const writing = await RawClient.open(server.url);
    const stream = streamOf('counted');
    await writing.hello(stream);
    for (const entry of await chainFor(stream, ['1', '2', '3'])) writing.say({ kind: 'append', ...entry });
    let last = await writing.hear();
    while (last.kind === 'ack' && last.seq < 3) last = await writing.hear();
    await fetch(`${server.url}/api/visits/nowhere`);
    const answer = await fetch(`${server.url}/api/metrics`);
    expect(answer.headers.get('content-type')).toBe('text/plain; version=0.0.4; charset=utf-8');
    const text = await answer.text();
    expect(text.endsWith('\n')).toBe(true);
    expect(
      text
        .trimEnd()
        .split('\n')
        .filter((line) => !LINE.test(line)),
    ).toEqual([]);
    for (const line of [
      'readback_events_stored_total 3',
      'readback_connections{doing="writing"} 1',
      'readback_http_answers_total{status="404"} 1',
    ]) {
      expect(text.split('\n')).toContain(line);
    }
    expect(text).toMatch(/^process_resident_memory_bytes [1-9]\d{6,}$/m);
    expect(text).not.toMatch(/counted|phone|local/);
    await server.stop();
  });
});
