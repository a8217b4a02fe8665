import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { LOCAL_COMPANY } from '../grammar/visit/envelope.ts';
import { PROTOCOL } from '../grammar/visit/messages.ts';
import { describeRoutes } from './describe-routes.ts';
import { ServerError } from './errors.ts';
import type { HeadKeeper } from './heads/keep-heads.ts';
import { allowedHost, type OriginRule, ownAddress } from './origins.ts';
import { pageRoutes } from './pages.ts';
import { reportFault } from './report-fault.ts';
import { exportRoutes } from './review/exports.ts';
import { headRoutes } from './review/heads.ts';
import { reviewRoutes } from './review/visits.ts';
import { addSecurityHeaders } from './security-headers.ts';
import type { EventStore } from './store/event-store.ts';
import type { ReceiptSigner } from './sync/receipt-signer.ts';
import { syncRoutes } from './sync/sync.ts';

export interface AppOptions {
  readonly store: EventStore;
  readonly origins: OriginRule;
  readonly signer: ReceiptSigner;
  /** The server's memory of what it held; none where nothing is kept beside the record. */
  readonly keeper?: HeadKeeper;
  /** The folder of the built web client; the server runs without it. */
  readonly webDir: string;
  readonly version: string;
  /** Milliseconds since 1970. */
  readonly clock?: () => number;
  readonly helloWithinMs?: number;
  /** How often connections are asked for a sign of life; half a minute where nothing is given. */
  readonly lookEveryMs?: number;
}

const HealthSchema = Type.Object({
  status: Type.Literal('ok'),
  version: Type.String(),
  protocol: Type.Integer(),
  receiptKey: Type.String({ description: 'Ed25519 public key that signs receipts: 32 bytes in base64url' }),
  clock: Type.Union([Type.Literal('ok'), Type.Literal('behind')], {
    description: 'behind: this machine’s clock stands before the latest event it took',
  }),
});

/** The whole server as one plugin: `main.ts` gives it a port, tests inject into it. */
export async function app(fastify: FastifyInstance, options: AppOptions): Promise<void> {
  const clock = options.clock ?? Date.now;
  answerErrorsInSentences(fastify);
  fastify.addHook('onRequest', async (request) => {
    const { host } = request.headers;
    if (!allowedHost(options.origins, host)) throw new ServerError('origin-foreign', ownAddress(options.origins, host));
  });
  // A refused upgrade has left the HTTP server's own list of connections: nobody else would ever close it.
  fastify.addHook('onResponse', async (request, reply) => {
    if (request.headers.upgrade !== undefined && reply.statusCode >= 400) request.raw.socket.destroySoon();
  });
  await describeRoutes(fastify, options.version);
  await addSecurityHeaders(fastify, options.origins.kind !== 'loopback');
  fastify
    .withTypeProvider<TypeBoxTypeProvider>()
    .get(
      '/api/health',
      { schema: { summary: 'version, protocol, public key, clock', response: { 200: HealthSchema } } },
      async () => ({
        status: 'ok' as const,
        version: options.version,
        protocol: PROTOCOL,
        receiptKey: options.signer.publicKey,
        clock: ((await options.store.lastReceivedAt()) ?? 0) > clock() ? ('behind' as const) : ('ok' as const),
      }),
    );
  const heads = options.keeper?.heads ?? (() => []);
  await fastify.register(reviewRoutes, { store: options.store, company: LOCAL_COMPANY, heads });
  await fastify.register(exportRoutes, { store: options.store, company: LOCAL_COMPANY, heads });
  await fastify.register(headRoutes, { heads });
  await fastify.register(syncRoutes, {
    store: options.store,
    origins: options.origins,
    signer: options.signer,
    company: LOCAL_COMPANY,
    clock,
    helloWithinMs: options.helloWithinMs ?? 5_000,
    lookEveryMs: options.lookEveryMs,
    kept: options.keeper?.stored ?? (async () => undefined),
  });
  await fastify.register(pageRoutes, { webDir: options.webDir });
  fastify.addHook('onClose', async () => {
    await options.keeper?.close();
    await options.store.close();
  });
}

/** Every error is answered as its code and one sentence; what is ours to mend is also printed. */
function answerErrorsInSentences(fastify: FastifyInstance): void {
  fastify.setNotFoundHandler((request, reply) => {
    const error = new ServerError('page-unknown', request.url);
    return reply.code(404).send({ error: error.code, sentence: error.message });
  });
  fastify.setErrorHandler<Error & { statusCode?: number }>((thrown, _request, reply) => {
    const error = asServerError(thrown);
    if (error.statusCode >= 500) reportFault(error);
    return reply.code(error.statusCode).send({ error: error.code, sentence: error.message });
  });
}

function asServerError(thrown: Error & { statusCode?: number }): ServerError {
  if (thrown instanceof ServerError) return thrown;
  const status = thrown.statusCode ?? 500;
  return status < 500 ? new ServerError('request-wrong', thrown.message) : new ServerError('server-failed', '', thrown);
}
