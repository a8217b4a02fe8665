import { join } from 'node:path';
import Fastify, { type FastifyInstance, type RouteOptions } from 'fastify';
import { WebSocket } from 'ws';
import { chainBodies, type Entry, LOCAL_COMPANY, type StreamId } from '../../grammar/visit/envelope.ts';
import type { ServerMessage } from '../../grammar/visit/messages.ts';
import { type AppOptions, app } from '../../server/app.ts';
import { SizeLimit } from '../../server/database/size-limit.ts';
import { startHead } from '../../server/store/judge-event.ts';
import { openReceiptSigner, type ReceiptSigner } from '../../server/sync/receipt-signer.ts';
import { scratchFolder } from './built-server.ts';
import { freshPeople, freshPersonal, freshStore } from './stores-of-run.ts';

export interface RunningApp {
  readonly fastify: FastifyInstance;
  /** Such as http://127.0.0.1:40123. */
  readonly url: string;
  /** The folder of its record. */
  readonly folder: string;
  /** Every route that was added, as fastify itself tells. */
  readonly routes: readonly RouteOptions[];
  readonly signer: ReceiptSigner;
  stop(): Promise<void>;
}

/** The server's app in this process, on a free port, with a record of its own. */
export async function runApp(
  options: Partial<AppOptions> & { readonly http?: Record<string, number>; readonly maxBytes?: number } = {},
): Promise<RunningApp> {
  const scratch = scratchFolder();
  const { http, maxBytes, ...appOptions } = options;
  const limit = maxBytes === undefined ? undefined : new SizeLimit(maxBytes);
  const fastify = Fastify({ forceCloseConnections: true, ...(http === undefined ? {} : { http }) });
  const routes: RouteOptions[] = [];
  const signer = appOptions.signer ?? openReceiptSigner(join(scratch.path, 'receipt-key.pem'));
  fastify.addHook('onRoute', (route) => void routes.push(route));
  await fastify.register(app, {
    store: appOptions.store ?? (await freshStore(scratch.path, limit)),
    peopleStore: appOptions.peopleStore ?? (await freshPeople()),
    personalStore: appOptions.personalStore ?? (await freshPersonal(':memory:', limit)),
    origins: { kind: 'loopback' },
    loopback: true,
    webDir: join(scratch.path, 'web'),
    version: 'test',
    ...appOptions,
    signer,
  });
  const url = await fastify.listen({ host: '127.0.0.1', port: 0 });
  return {
    fastify,
    url,
    folder: scratch.path,
    routes,
    signer,
    stop: async () => {
      await fastify.close();
      scratch.remove();
    },
  };
}

/** A WebSocket by hand: says anything, and hears messages and the close one after another. */
export class RawClient {
  readonly socket: WebSocket;
  readonly #heard: ServerMessage[] = [];
  readonly closed: Promise<{ code: number; reason: string }>;
  #wake: () => void = () => undefined;
  #gone = false;

  constructor(url: string, origin: string | undefined = url) {
    this.socket = new WebSocket(`${url.replace('http', 'ws')}/sync`, origin === '' ? {} : { origin });
    this.socket.on('message', (data) => {
      this.#heard.push(JSON.parse(data.toString()));
      this.#wake();
    });
    this.closed = new Promise((resolve) => {
      this.socket.on('close', (code, reason) => {
        this.#gone = true;
        this.#wake();
        resolve({ code, reason: reason.toString() });
      });
    });
    this.socket.on('error', () => undefined);
  }

  static async open(url: string): Promise<RawClient> {
    const client = new RawClient(url);
    await new Promise((resolve, reject) => client.socket.once('open', resolve).once('error', reject));
    return client;
  }

  say(message: unknown): void {
    this.socket.send(typeof message === 'string' ? message : JSON.stringify(message));
  }

  /** The next message; fails when the connection closes first. */
  async hear(): Promise<ServerMessage> {
    for (;;) {
      const message = this.#heard.shift();
      if (message !== undefined) return message;
      if (this.#gone) throw new Error('the connection closed without a message');
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
  }

  async hello(stream: StreamId): Promise<ServerMessage> {
    this.say({ kind: 'hello', protocol: 1, stream });
    return this.hear();
  }
}

export const streamOf = (visit: string, device = 'phone'): StreamId => ({
  company: LOCAL_COMPANY,
  visit,
  device,
  epoch: 1,
});

/** A chain made for the stream, one event for each body. */
export const chainFor = (stream: StreamId, bodies: readonly string[]): Promise<readonly Entry[]> =>
  chainBodies(startHead(stream), bodies, async (bytes) => new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)));
