import { connect, createServer, type Server, type Socket } from 'node:net';
import { afterEach, describe, expect, test } from 'vitest';
import { openMemoryLog } from '../../client/record/memory-log.ts';
import { nodeLink } from '../../client/record/node/link-edge.ts';
import { sha256 } from '../../client/record/node/sha256.ts';
import { Outbox } from '../../client/record/outbox.ts';
import type { Entry } from '../../grammar/visit/envelope.ts';
import { LOOK_EVERY_MS } from '../../server/sync/sync.ts';
import { scratchFolder } from './built-server.ts';
import { getJson } from './get-json.ts';
import { chainFor, RawClient, type RunningApp, runApp, streamOf } from './running-app.ts';
import { freshStore } from './stores-of-run.ts';

interface Proxy {
  readonly url: string;
  /** How many connections were cut. */
  readonly cut: () => number;
}

const open: { close(): unknown }[] = [];
afterEach(async () => {
  for (const one of open.splice(0).reverse()) await one.close();
});

/** A proxy that passes bytes on; `watch` is called for each connection and cuts it when it will. */
async function proxyTo(server: RunningApp, watch: (client: Socket, cut: () => void) => void): Promise<Proxy> {
  let cuts = 0;
  const sockets = new Set<Socket>();
  const proxy: Server = createServer((client) => {
    const upstream = connect(Number(new URL(server.url).port), '127.0.0.1');
    for (const socket of [client, upstream]) {
      sockets.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => {
        client.destroy();
        upstream.destroy();
      });
    }
    // The server sees its own address, as behind a proxy that passes the host on.
    client.on('data', (bytes) => upstream.write(bytes));
    upstream.on('data', (bytes) => client.write(bytes));
    watch(client, () => {
      cuts += client.destroyed ? 0 : 1;
      client.destroy();
    });
  });
  await new Promise<void>((resolve) => proxy.listen(0, '127.0.0.1', resolve));
  open.push({
    close: () => {
      for (const socket of sockets) socket.destroy();
      proxy.close();
    },
  });
  const { port } = proxy.address() as { readonly port: number };
  return { url: `http://127.0.0.1:${port}`, cut: () => cuts };
}

async function running(options: Parameters<typeof runApp>[0] = {}): Promise<RunningApp> {
  const server = await runApp(options);
  open.push({ close: () => server.stop() });
  return server;
}

/** A minute, a hundred times as fast. */
const MINUTE = 600;
const FASTER = 60_000 / MINUTE;

describe('a proxy that cuts at sixty seconds', () => {
  test('connections that were silent: a device with nothing to say keeps its own, since it is asked for a sign of life', async () => {
    const server = await running({ lookEveryMs: LOOK_EVERY_MS / FASTER });
    const proxy = await proxyTo(server, (client, cut) => client.setTimeout(MINUTE, cut));
    const client = await RawClient.open(proxy.url);
    const stream = streamOf('quiet');
    expect((await client.hello(stream)).kind).toBe('welcome');
    await new Promise((resolve) => setTimeout(resolve, 4 * MINUTE));
    const [entry] = await chainFor(stream, ['{"n":1}']);
    client.say({ kind: 'append', ...entry });
    expect(await client.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    expect(proxy.cut()).toBe(0);
    client.socket.terminate();
  });

  test('every connection, whatever passes: the device comes back each time, and nothing is lost or kept twice', async () => {
    const server = await running();
    const proxy = await proxyTo(server, (_client, cut) => void setTimeout(cut, MINUTE));
    const log = await openMemoryLog(streamOf('cut-each-minute'), sha256);
    const outbox = new Outbox({ log, ...nodeLink(proxy.url) }).start();
    while (proxy.cut() < 4) {
      await outbox.append(['{"n":1}', '{"n":2}']);
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
    await outbox.settled();
    outbox.stop();
    const { events } = await getJson<{ events: Entry[] }>(`${server.url}/api/visits/cut-each-minute/events`);
    expect(events.map(({ hash }) => hash)).toEqual((await log.read(1)).map(({ hash }) => hash));
    expect(events.length).toBeGreaterThan(50);
  });
});

describe('a socket that never reads', () => {
  test('of a reader: no more is read for it than fits its buffers, others are served, and it is cut', async () => {
    const scratch = scratchFolder();
    const store = await freshStore(scratch.path);
    let read = 0;
    const counted = {
      ...store,
      beyond: async (...asked: Parameters<typeof store.beyond>) => {
        const events = await store.beyond(...asked);
        read += events.length;
        return events;
      },
    };
    const server = await running({ store: counted, lookEveryMs: 1_500 });
    const stream = streamOf('large');
    const entries = await chainFor(
      stream,
      Array.from({ length: 2_000 }, (_, at) => `${at}${'x'.repeat(20_000)}`),
    );
    for (let from = 0; from < entries.length; from += 200) {
      await store.commit(entries.slice(from, from + 200).map((entry) => ({ ...entry, stream, receivedAt: 1 })));
    }
    const reader = await RawClient.open(server.url);
    reader.socket.pause();
    const gone = reader.closed;
    reader.say({ kind: 'watch', protocol: 1, company: 'local', visit: 'large', from: [] });
    await expect.poll(() => read, { timeout: 20_000 }).toBeGreaterThan(0);
    await new Promise((resolve) => setTimeout(resolve, 500));
    // Of 40 MB, a few messages of 2.5 MB each lie in the buffers of both ends.
    expect(read).toBeLessThan(1_200);
    const writer = await RawClient.open(server.url);
    const other = streamOf('beside');
    await writer.hello(other);
    const [entry] = await chainFor(other, ['{"n":1}']);
    writer.say({ kind: 'append', ...entry });
    expect(await writer.hear()).toMatchObject({ kind: 'ack', seq: 1 });
    writer.socket.terminate();
    const reading = async () =>
      /readback_connections\{doing="reading"\} (\d+)/.exec(
        await (await fetch(`${server.url}/api/metrics`)).text(),
      )?.[1];
    await expect.poll(reading, { timeout: 20_000 }).toBe('0');
    reader.socket.resume();
    await gone;
    scratch.remove();
  });

  test('of a device that goes on writing: what it wrote is kept, and it is cut', async () => {
    const server = await running({ lookEveryMs: 500 });
    const stream = streamOf('deaf');
    const entries = await chainFor(
      stream,
      Array.from({ length: 200 }, (_, at) => `${at}`),
    );
    const writer = await RawClient.open(server.url);
    await writer.hello(stream);
    writer.socket.pause();
    for (const entry of entries) writer.say({ kind: 'append', ...entry });
    const held = async () =>
      (await getJson<{ events?: Entry[] }>(`${server.url}/api/visits/deaf/events`)).events?.length ?? 0;
    await expect.poll(held, { timeout: 20_000 }).toBe(200);
    const writing = async () =>
      /readback_connections\{doing="writing"\} (\d+)/.exec(
        await (await fetch(`${server.url}/api/metrics`)).text(),
      )?.[1];
    await expect.poll(writing, { timeout: 20_000 }).toBe('0');
    writer.socket.resume();
    await writer.closed;
  });
});
