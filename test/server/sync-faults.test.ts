import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import type { Entry } from '../../grammar/visit/envelope.ts';
import type { Ack } from '../../grammar/visit/messages.ts';
import type { StreamSummary } from '../../server/store/event-store.ts';
import { scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';
import { freshStore, ON_POSTGRES } from './stores-of-run.ts';

let server: RunningApp;
beforeAll(async () => {
  server = await runApp({ helloWithinMs: 300, http: { headersTimeout: 300, connectionsCheckingInterval: 50 } });
});
afterAll(() => server.stop());

let count = 0;
/** A connection that has been welcomed to a stream of its own, and five events made for it. */
async function welcomed(): Promise<{ client: RawClient; entries: readonly Entry[]; visit: string }> {
  count += 1;
  const visit = `v-${count}`;
  const client = await RawClient.open(server.url);
  await client.hello(streamOf(visit));
  return { client, visit, entries: await chainFor(streamOf(visit), ['one', 'two', 'three', 'four', 'five']) };
}
const append = (entry: Entry | undefined) => ({ kind: 'append', ...(entry as Entry) });
const held = async (visit: string) =>
  (await getJson<{ events?: Entry[] }>(`${server.url}/api/visits/${visit}/events`)).events ?? [];
const streams = async (visit: string) =>
  (await getJson<{ streams: StreamSummary[] }>(`${server.url}/api/visits/${visit}`)).streams;

describe('what a connection must say', () => {
  test('without a hello it is cut, and told why', async () => {
    const client = await RawClient.open(server.url);
    expect(await client.hear()).toMatchObject({ kind: 'error', code: 'hello-late' });
    // Try again later (the IANA registry of close codes): a slow device or server is no reason to give up.
    expect((await client.closed).code).toBe(1013);
  });

  test.each([
    ['text that is not JSON', 'not json', 1007, 'not-json'],
    ['an empty message', '', 1007, 'not-json'],
    ['JSON that is no message', '[]', 1008, 'message-wrong'],
    ['an unknown kind', '{"kind":"shout"}', 1008, 'message-wrong'],
    ['a hello without a stream', '{"kind":"hello","protocol":1}', 1008, 'message-wrong'],
    [
      'an unknown property',
      '{"kind":"hello","protocol":1,"extra":1,"stream":{"company":"local","visit":"v","device":"d","epoch":1}}',
      1008,
      'message-wrong',
    ],
    [
      'a name that would not be canonical',
      '{"kind":"hello","protocol":1,"stream":{"company":"local","visit":"V/1","device":"d","epoch":1}}',
      1008,
      'message-wrong',
    ],
    [
      'another protocol',
      '{"kind":"hello","protocol":2,"stream":{"company":"local","visit":"v","device":"d","epoch":1}}',
      1008,
      'protocol-other',
    ],
    [
      'another company',
      '{"kind":"hello","protocol":1,"stream":{"company":"other","visit":"v","device":"d","epoch":1}}',
      1008,
      'company-foreign',
    ],
    [
      'a watch on another company',
      '{"kind":"watch","protocol":1,"company":"other","visit":"v","from":[]}',
      1008,
      'company-foreign',
    ],
    [
      'an event before the hello',
      `{"kind":"append","seq":1,"hash":"${'0'.repeat(64)}","body":""}`,
      1008,
      'out-of-turn',
    ],
  ])('%s closes it', async (_what, text, closeCode, code) => {
    const client = await RawClient.open(server.url);
    client.say(text);
    expect(await client.hear()).toMatchObject({ kind: 'error', code });
    expect((await client.closed).code).toBe(closeCode);
  });

  test('a binary message closes it with 1003', async () => {
    const client = await RawClient.open(server.url);
    client.socket.send(Buffer.from('{}'), { binary: true });
    expect((await client.closed).code).toBe(1003);
  });

  test('a frame of 70 kB closes it with 1009, one of 60 kB does not', async () => {
    const { client, visit } = await welcomed();
    const [entry] = await chainFor(streamOf(visit), ['x'.repeat(60_000)]);
    client.say(append(entry));
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    client.say(append({ seq: 2, hash: '0'.repeat(64), body: 'x'.repeat(70_000) }));
    expect((await client.closed).code).toBe(1009);
  });

  test('text that is not UTF-8 closes it with 1007', async () => {
    const client = await RawClient.open(server.url);
    client.socket.send(Buffer.from([0x22, 0xff, 0xfe, 0x22]), { binary: false });
    expect((await client.closed).code).toBe(1007);
  });

  test('a second hello is out of turn', async () => {
    const { client } = await welcomed();
    expect(await client.hello(streamOf('v-other'))).toMatchObject({ kind: 'error', code: 'out-of-turn' });
    expect((await client.closed).code).toBe(1008);
  });

  test.each([1.5, 0, -1, 2 ** 53, '1', null])('seq %s closes it with 1008', async (seq) => {
    const { client, entries } = await welcomed();
    client.say({ ...append(entries[0]), seq });
    expect(await client.hear()).toMatchObject({ kind: 'error', code: 'message-wrong' });
    expect((await client.closed).code).toBe(1008);
  });
});

describe('what a stream must be', () => {
  test('events in order are acknowledged once they are held', async () => {
    const { client, entries, visit } = await welcomed();
    client.say(append(entries[0]));
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1, hash: entries[0]?.hash });
    expect((await held(visit)).map((entry) => entry.body)).toEqual(['one']);
  });

  test('many events at once share one acknowledgement, of the last', async () => {
    const { client, entries } = await welcomed();
    for (const entry of entries) client.say(append(entry));
    let last = await client.hear();
    while (last.kind === 'ack' && last.seq < 5) last = await client.hear();
    expect(last).toMatchObject({ kind: 'ack', seq: 5, hash: entries[4]?.hash });
  });

  test('a duplicate gets the same acknowledgement, and is kept once', async () => {
    const { client, entries, visit } = await welcomed();
    client.say(append(entries[0]));
    const first = await client.hear();
    client.say(append(entries[0]));
    const { seq, hash } = first as Ack;
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq, hash });
    expect(await held(visit)).toHaveLength(1);
  });

  test('a skip is answered by what is needed, once', async () => {
    const { client, entries, visit } = await welcomed();
    client.say(append(entries[0]));
    await client.hear();
    client.say(append(entries[3]));
    client.say(append(entries[4]));
    expect(await client.hear()).toEqual({ kind: 'gap', need: 2 });
    for (const entry of entries.slice(1)) client.say(append(entry));
    let last = await client.hear();
    while (last.kind === 'ack' && last.seq < 5) last = await client.hear();
    expect(last).toMatchObject({ kind: 'ack', seq: 5 });
    expect(await held(visit)).toHaveLength(5);
  });

  test('another event at a number that is taken is a fork: refused, kept beside the first, and flagged', async () => {
    const { client, entries, visit } = await welcomed();
    client.say(append(entries[0]));
    await client.hear();
    const [other] = await chainFor(streamOf(visit), ['ONE']);
    client.say(append(other));
    expect(await client.hear()).toMatchObject({ kind: 'fork', seq: 1, held: entries[0]?.hash });
    expect((await client.closed).code).toBe(1008);
    expect((await held(visit)).map((entry) => entry.body)).toEqual(['one']);
    expect(await streams(visit)).toMatchObject([{ device: 'phone', epoch: 1, forks: 1, flags: ['forked'] }]);
  });

  test.each([
    ['a wrong previous hash', async (visit: string) => (await chainFor(streamOf(`${visit}-other`), ['a', 'two']))[1]],
    [
      'a body that was changed on the way',
      async (visit: string) => ({ ...((await chainFor(streamOf(visit), ['one', 'two']))[1] as Entry), body: 'tw0' }),
    ],
    ['a lone surrogate, which has no bytes', async () => ({ seq: 2, hash: '0'.repeat(64), body: '\ud800' })],
  ])('%s is refused with 1008', async (_what, make) => {
    const { client, entries, visit } = await welcomed();
    client.say(append(entries[0]));
    await client.hear();
    client.say(append(await make(visit)));
    expect(await client.hear()).toMatchObject({ kind: 'error', code: 'chain-broken' });
    expect((await client.closed).code).toBe(1008);
    expect(await held(visit)).toHaveLength(1);
  });

  test('who sends without waiting for acknowledgements is told to slow down with 1013', async () => {
    const { client, visit } = await welcomed();
    const flood = await chainFor(
      streamOf(visit),
      Array.from({ length: 2_000 }, (_, at) => `${at}`),
    );
    for (const entry of flood) client.say(append(entry));
    expect((await client.closed).code).toBe(1013);
    // What was taken in before is a beginning of the flood, without a hole.
    const kept = await held(visit);
    expect(kept.map(({ hash }) => hash)).toEqual(flood.slice(0, kept.length).map(({ hash }) => hash));
  });

  test('a new epoch is linked to where the older one ends, and seals it there', async () => {
    const { client, entries, visit } = await welcomed();
    for (const entry of entries.slice(0, 2)) client.say(append(entry));
    while (((await client.hear()) as { seq?: number }).seq !== 2);
    const head = { seq: 2, hash: (entries[1] as Entry).hash };
    const next = { ...streamOf(visit), epoch: 2 };

    const wrong = await RawClient.open(server.url);
    wrong.say({ kind: 'hello', protocol: 1, stream: next, follows: { epoch: 1, head: { ...head, seq: 1 } } });
    expect(await wrong.hear()).toMatchObject({ kind: 'error', code: 'link-wrong' });

    const right = await RawClient.open(server.url);
    right.say({ kind: 'hello', protocol: 1, stream: next, follows: { epoch: 1, head } });
    expect(await right.hear()).toMatchObject({ kind: 'welcome', head: { seq: 0 } });
    const [first] = await chainFor(next, ['after']);
    right.say(append(first));
    expect(await right.hear()).toMatchObject({ kind: 'ack', seq: 1 });

    client.say(append(entries[2]));
    expect(await client.hear()).toMatchObject({ kind: 'error', code: 'stream-sealed' });
    const late = await RawClient.open(server.url);
    expect(await late.hello(streamOf(visit))).toMatchObject({ kind: 'error', code: 'stream-sealed' });
    expect(await streams(visit)).toMatchObject([
      { epoch: 1, flags: ['sealed'], head },
      { epoch: 2, flags: [], follows: { epoch: 1, head } },
    ]);
  });
});

describe('who may connect', () => {
  const status = (socket: WebSocket) =>
    new Promise((resolve) => {
      socket.on('unexpected-response', (_request, response) => resolve(response.statusCode));
      socket.on('open', () => resolve('open'));
      socket.on('error', () => undefined);
    });
  const address = () => `${server.url.replace('http', 'ws')}/sync`;

  test.each(['https://elsewhere.example', 'null', 'http://127.0.0.1:1', 'http://localhost'])(
    'a page of %s gets 403',
    async (origin) => expect(await status(new WebSocket(address(), { origin }))).toBe(403),
  );

  test('without an origin there is no connection: 403', async () => {
    expect(await status(new WebSocket(address()))).toBe(403);
  });

  test('a name that only looks like this machine gets 403, over WebSocket and HTTP', async () => {
    const { port } = new URL(server.url);
    const host = `rebound.example:${port}`;
    expect(await status(new WebSocket(address(), { origin: `http://${host}`, headers: { host } }))).toBe(403);
    const answer = await server.fastify.inject({ url: '/api/visits', headers: { host } });
    expect(answer.statusCode).toBe(403);
  });

  test('headers that dribble in are cut off', async () => {
    const { port } = new URL(server.url);
    const socket = connect(Number(port), '127.0.0.1');
    socket.write('GET /api/health HTTP/1.1\r\nHost: 127.0.0.1\r\n');
    const dribble = setInterval(() => socket.write('X-More: x\r\n'), 20);
    const answer = await new Promise<string>((resolve) => {
      let text = '';
      socket.on('data', (data) => {
        text += data;
      });
      socket.on('error', () => undefined);
      socket.on('close', () => resolve(text));
    });
    clearInterval(dribble);
    expect(answer).toContain('408 Request Timeout');
  });
});

// Of PostgreSQL: test/contract/postgres.test.ts.
if (!ON_POSTGRES)
  describe('a full disk', () => {
    test('closes with 1011, acknowledges nothing that is not kept, and keeps all that was acknowledged', async () => {
      const small = await runApp({ maxBytes: 400_000 });
      try {
        const stream = streamOf('v-full');
        const entries = await chainFor(
          stream,
          Array.from({ length: 60 }, (_, at) => `${at}${'x'.repeat(10_000)}`),
        );
        const client = await RawClient.open(small.url);
        await client.hello(stream);
        let acknowledged = 0;
        for (const entry of entries) {
          client.say(append(entry));
          const answer = await client.hear();
          if (answer.kind === 'error') {
            expect(answer).toMatchObject({ code: 'data-full' });
            break;
          }
          acknowledged = entry.seq;
        }
        expect((await client.closed).code).toBe(1011);
        expect(acknowledged).toBeGreaterThan(10);
        expect(acknowledged).toBeLessThan(60);
        const { events } = await getJson<{ events: Entry[] }>(`${small.url}/api/visits/v-full/events`);
        expect(events.map((event) => event.hash)).toEqual(entries.slice(0, acknowledged).map((entry) => entry.hash));
        const again = await RawClient.open(small.url);
        expect(await again.hello(stream)).toMatchObject({ kind: 'welcome', head: { seq: acknowledged } });
      } finally {
        await small.stop();
      }
    });
  });

describe('a closing server', () => {
  test('acknowledges what it has taken in, then says that it closes', async () => {
    const scratch = scratchFolder();
    const store = await freshStore(scratch.path);
    let letGo: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    let taken: () => void = () => undefined;
    const takenIn = new Promise<void>((resolve) => {
      taken = resolve;
    });
    /** The real store, holding its first commit back until the server is already closing. */
    const closing = await runApp({
      store: {
        ...store,
        commit: async (batch) => {
          taken();
          await held;
          return store.commit(batch);
        },
      },
    });
    const stream = streamOf('v-closing');
    const [entry] = await chainFor(stream, ['one']);
    const client = await RawClient.open(closing.url);
    await client.hello(stream);
    client.say(append(entry));
    await takenIn;
    const stopped = closing.stop();
    letGo();
    const heard = [];
    for (;;) {
      const message = await client.hear();
      heard.push(message);
      if (message.kind === 'error') break;
    }
    expect(heard.at(-2)).toMatchObject({ kind: 'ack', seq: 1 });
    expect(heard.at(-1)).toMatchObject({ kind: 'error', code: 'server-closing' });
    expect((await client.closed).code).toBe(1012);
    await stopped;
    scratch.remove();
  });
});
