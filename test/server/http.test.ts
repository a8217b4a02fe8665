import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { scratchFolder } from './built-server.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';

const scratch = scratchFolder();
let server: RunningApp;
const ask = (url: string, method: 'GET' | 'POST' | 'DELETE' = 'GET') =>
  server.fastify.inject({ url, method, headers: { host: 'localhost:8470' } });

beforeAll(async () => {
  const web = scratch.path;
  mkdirSync(join(web, 'assets'));
  mkdirSync(join(web, 'model'));
  writeFileSync(join(web, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(web, 'assets/main-abc123.js'), 'export {};');
  writeFileSync(join(web, 'assets/ear-abc123.wasm'), Buffer.from([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]));
  writeFileSync(join(web, 'model/words.dict'), 'ONE W AH N\n');
  writeFileSync(join(web, 'manifest.webmanifest'), '{}');
  writeFileSync(join(web, '.hidden'), 'no');
  server = await runApp({ webDir: web });
  const stream = streamOf('v-http');
  const client = await RawClient.open(server.url);
  await client.hello(stream);
  for (const entry of await chainFor(stream, ['{"n":1}', '{"n":2}', '{"n":3}']))
    client.say({ kind: 'append', ...entry });
  let last = await client.hear();
  while (last.kind === 'ack' && last.seq < 3) last = await client.hear();
  client.socket.close();
});
afterAll(async () => {
  await server.stop();
  scratch.remove();
});

describe('visits over HTTP', () => {
  test('health tells the version and the protocol', async () => {
    expect((await ask('/api/health')).json()).toMatchObject({ status: 'ok', version: 'test', protocol: 1 });
  });

  test('a visit is listed, described and read back in pages', async () => {
    expect((await ask('/api/visits')).json().visits).toMatchObject([{ visit: 'v-http', streams: 1, events: 3 }]);
    expect((await ask('/api/visits/v-http')).json()).toMatchObject({
      visit: 'v-http',
      streams: [{ device: 'phone', epoch: 1, head: { seq: 3 } }],
    });
    const first = (await ask('/api/visits/v-http/events?limit=2')).json();
    expect(first.events.map((event: { body: string }) => event.body)).toEqual(['{"n":1}', '{"n":2}']);
    const rest = (await ask(`/api/visits/v-http/events?after=${first.next}`)).json();
    expect(rest.events).toMatchObject([{ seq: 3, body: '{"n":3}' }]);
    expect(rest.next).toBeUndefined();
  });

  test('a visit is checked against its own chain', async () => {
    expect((await ask('/api/visits/v-http/check')).json()).toMatchObject({
      visit: 'v-http',
      streams: 1,
      events: 3,
      findings: [],
      unknown: [expect.stringMatching(/^No head was kept/)],
    });
  });

  test.each([
    ['/api/visits/v-none', 404, 'visit-unknown'],
    ['/api/visits/v-none/events', 404, 'visit-unknown'],
    ['/api/visits/v-none/check', 404, 'visit-unknown'],
    ['/api/visits/V%2F..%2F', 400, 'request-wrong'],
    ['/api/visits?limit=0', 400, 'request-wrong'],
    ['/api/visits?limit=abc', 400, 'request-wrong'],
    ['/api/visits/v-http/events?after=-1', 400, 'request-wrong'],
    ['/api/nothing', 404, 'page-unknown'],
  ])('%s is answered %d in one sentence', async (url, status, error) => {
    const answer = await ask(url);
    expect(answer.statusCode).toBe(status);
    expect(answer.json()).toEqual({ error, sentence: expect.stringMatching(/^[A-Z].*\.$/) });
  });

  test('nothing is changed over HTTP', async () => {
    for (const method of ['POST', 'DELETE'] as const) {
      expect((await ask('/api/visits/v-http', method)).statusCode).toBe(404);
    }
  });
});

describe('pages and files', () => {
  test.each(['/', '/review', '/review/v-http', '/practice', '/record/v-http'])('%s is the page', async (url) => {
    const answer = await ask(url);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(answer.headers['cache-control']).toBe('no-cache');
    expect(answer.body).toContain('<title>page</title>');
  });

  test.each([
    ['/assets/main-abc123.js', /^(text|application)\/javascript/, /immutable/],
    ['/assets/ear-abc123.wasm', /^application\/wasm$/, /max-age=31536000/],
    ['/model/words.dict', /./, /^no-cache$/],
    ['/manifest.webmanifest', /^application\/manifest\+json/, /^no-cache$/],
  ])('%s has its type and its time to live', async (url, type, cache) => {
    const answer = await ask(url);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers['content-type']).toMatch(type);
    expect(answer.headers['cache-control']).toMatch(cache);
  });

  test.each(['/model/missing.bin', '/assets/missing.js', '/.hidden', '/nowhere', '/..%2f..%2fetc/passwd'])(
    '%s is a real 404, not the page',
    async (url) => {
      const answer = await ask(url);
      expect(answer.statusCode).toBe(404);
      expect(answer.headers['content-type']).toMatch(/^application\/json/);
    },
  );

  test('a file that did not change is answered 304', async () => {
    const first = await ask('/model/words.dict');
    const again = await server.fastify.inject({
      url: '/model/words.dict',
      headers: { host: 'localhost', 'if-none-match': String(first.headers['etag']) },
    });
    expect(again.statusCode).toBe(304);
  });

  test('a server without built pages says how to build them', async () => {
    const bare = await runApp();
    const answer = await bare.fastify.inject({ url: '/', headers: { host: 'localhost' } });
    expect(answer.statusCode).toBe(404);
    expect(answer.json().sentence).toContain('npm run build');
    await bare.stop();
  });
});

describe('security headers', () => {
  test.each(['/', '/api/visits', '/nowhere', '/assets/main-abc123.js'])('%s carries them', async (url) => {
    const { headers } = await ask(url);
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy).not.toMatch(/'unsafe-inline'|'unsafe-eval'|https?:|\*/);
    expect(policy).toContain("frame-ancestors 'none'");
    expect(headers['permissions-policy']).toContain('microphone=(self)');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['strict-transport-security']).toBeUndefined();
    expect(headers['access-control-allow-origin']).toBeUndefined();
  });
});
