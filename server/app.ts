import cookie from '@fastify/cookie';
import type { TypeBoxTypeProvider } from '@fastify/type-provider-typebox';
import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { PROTOCOL } from '../grammar/visit/messages.ts';
import { describeRoutes } from './describe-routes.ts';
import { ServerError } from './errors.ts';
import type { HeadKeeper } from './heads/keep-heads.ts';
import { Metrics, metricsRoutes } from './metrics.ts';
import { allowedHost, type OriginRule, ownAddress } from './origins.ts';
import { pageRoutes } from './pages.ts';
import { acknowledgeRoutes } from './people/acknowledge-routes.ts';
import { Devices } from './people/devices.ts';
import { Gate } from './people/gate.ts';
import { addGuard, cookieNames } from './people/guard.ts';
import { HandOver } from './people/hand-over.ts';
import { handBackRoutes, leaseRoutes } from './people/lease-routes.ts';
import { Leases } from './people/leases.ts';
import { passkeyRoutes } from './people/passkey-routes.ts';
import { Passkeys } from './people/passkeys.ts';
import { People } from './people/people.ts';
import { peopleRoutes } from './people/people-routes.ts';
import type { PeopleStore } from './people/people-store.ts';
import { SignIn } from './people/sign-in.ts';
import { cookieGiver, signInRoutes } from './people/sign-in-routes.ts';
import { handInRoutes } from './personal/hand-in-routes.ts';
import { openRoutes } from './personal/open-routes.ts';
import { Personal, type Retention } from './personal/personal.ts';
import type { PersonalStore } from './personal/personal-store.ts';
import { reportFault } from './report-fault.ts';
import { logAnswers } from './request-log.ts';
import { exportRoutes } from './review/exports.ts';
import { headRoutes } from './review/heads.ts';
import { IndexKeeper } from './review/index-keeper.ts';
import { indexedStore } from './review/indexed-store.ts';
import { listRoutes } from './review/list-routes.ts';
import { remarkRoutes } from './review/remarks.ts';
import { reviewRoutes } from './review/visits.ts';
import { addSecurityHeaders } from './security-headers.ts';
import type { EventStore } from './store/event-store.ts';
import { openSqliteVisitIndex } from './store/sqlite-visit-index.ts';
import type { VisitIndex } from './store/visit-index.ts';
import { GroupCommit } from './sync/group-commit.ts';
import { LiveVisits } from './sync/live-visits.ts';
import { ALONE, type Peers } from './sync/peers.ts';
import type { ReceiptSigner } from './sync/receipt-signer.ts';
import { syncRoutes } from './sync/sync.ts';
import { VisitHub } from './sync/visit-hub.ts';

export interface AppOptions {
  readonly store: EventStore;
  readonly peopleStore: PeopleStore;
  /** What the list and the fleet are read from, made of the record; in memory where nothing is given. */
  readonly index?: VisitIndex;
  readonly personalStore: PersonalStore;
  /** Nothing is deleted by age where none is given. */
  readonly retention?: Retention;
  readonly origins: OriginRule;
  /** Only this machine reaches the server: nobody needs to sign in until somebody is added. */
  readonly loopback: boolean;
  readonly signer: ReceiptSigner;
  /** The server's memory of what it held; none where nothing is kept beside the record. */
  readonly keeper?: HeadKeeper;
  /** Other servers on the same record, where there are some. */
  readonly peers?: Peers;
  /** The folder of the built web client; the server runs without it. */
  readonly webDir: string;
  readonly version: string;
  /** By which a program may ask for the metrics that has no session. */
  readonly metricsToken?: string | undefined;
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
  const peers = options.peers ?? ALONE;
  answerErrorsInSentences(fastify);
  fastify.addHook('onRequest', async (request) => {
    const { host } = request.headers;
    if (!allowedHost(options.origins, host)) throw new ServerError('origin-foreign', ownAddress(options.origins, host));
  });
  // "1e999" is read as a number, and no bound of a schema is held against it.
  fastify.addHook('preHandler', async ({ query, params }) => {
    for (const [name, value] of Object.entries({ ...(query as object), ...(params as object) })) {
      if (typeof value === 'number' && !Number.isFinite(value))
        throw new ServerError('request-wrong', `${name} is too large`);
    }
  });
  // A refused upgrade has left the HTTP server's own list of connections: nobody else would ever close it.
  fastify.addHook('onResponse', async (request, reply) => {
    if (request.headers.upgrade !== undefined && reply.statusCode >= 400) request.raw.socket.destroySoon();
  });
  const people = new People({ store: options.peopleStore, clock, loopback: options.loopback });
  await fastify.register(cookie);
  addGuard(fastify, people, options.origins);
  const metrics = new Metrics();
  logAnswers(fastify, metrics);
  await describeRoutes(fastify, options.version);
  await addSecurityHeaders(fastify, options.origins.kind !== 'loopback');
  fastify.withTypeProvider<TypeBoxTypeProvider>().get(
    '/api/health',
    {
      config: { needs: 'anyone' },
      schema: { summary: 'version, protocol, public key, clock', response: { 200: HealthSchema } },
    },
    async () => ({
      status: 'ok' as const,
      version: options.version,
      protocol: PROTOCOL,
      receiptKey: options.signer.publicKey,
      clock: ((await options.store.lastReceivedAt()) ?? 0) > clock() ? ('behind' as const) : ('ok' as const),
    }),
  );
  const heads = options.keeper?.heads ?? (() => []);
  const index = options.index ?? (await openSqliteVisitIndex(':memory:'));
  const indexing = new IndexKeeper(options.store, index, {
    keys: options.personalStore,
    people: options.peopleStore,
    signer: options.signer,
  });
  const store = indexedStore(options.store, indexing);
  const gate = new Gate(people, store);
  const signIn = new SignIn(people, options.signer);
  const personal = new Personal({
    store: options.personalStore,
    events: store,
    auditor: people.auditor,
    signer: options.signer,
    clock,
  });
  // A visit reads otherwise: its key came, or was erased, and the words by which it is found with it.
  personal.onChange(async (company, visit, how) => {
    peers.grown([{ company, visit }]);
    if (how === 'erased') await indexing.forget({ company, visit });
    else indexing.touched([{ company, visit }]);
  });
  if (options.retention !== undefined) await personal.keepFor(options.retention);
  await fastify.register(handInRoutes, { personal, gate });
  await fastify.register(openRoutes, { personal, store, people: people.store });
  await fastify.register(reviewRoutes, { store, people: people.store, heads });
  await fastify.register(exportRoutes, { store, people: people.store, keys: personal.store, signer: options.signer });
  await fastify.register(listRoutes, { store, people: people.store, index, keeper: indexing });
  await fastify.register(headRoutes, { heads, people: people.store });
  const baking = { signIn, cookies: cookieNames(options.origins), secure: options.origins.kind !== 'loopback' };
  const giveCookies = cookieGiver(baking);
  await fastify.register(signInRoutes, { people, gate, giveCookies, ...baking });
  await fastify.register(passkeyRoutes, { passkeys: new Passkeys(people), origins: options.origins, giveCookies });
  const hub = new VisitHub();
  const live = new LiveVisits();
  const lookAgain = new Set<() => void>();
  people.onChange(() => peers.changed());
  await peers.listen({
    grown: (visits) => {
      if (visits === 'all') {
        hub.tellAll();
        indexing.catchUp().catch(reportFault);
      } else {
        hub.tell(visits);
        indexing.touched(visits);
      }
    },
    changed: () => {
      for (const look of lookAgain) look();
    },
    say: ({ company, visit }, message) => live.say(company, visit, message),
  });
  const leases = new Leases({
    ...{ people, store, live, peers, signer: options.signer },
    touched: (visit) => indexing.touched([visit]),
  });
  const kept = metrics.counter('readback_events_stored_total', 'Events that were written to the disk.');
  const commits = new GroupCommit(
    store,
    (events) => {
      kept('', events.length);
      const streams = events.map(({ stream }) => stream);
      hub.tell(streams);
      peers.grown(streams);
    },
    options.keeper?.stored ?? (async () => undefined),
  );
  metrics.gauge(
    'readback_write_seconds',
    'How long the latest write to the disk took.',
    () => commits.latestWriteMs / 1_000,
  );
  await fastify.register(remarkRoutes, { people, store, commits, keys: personal });
  await fastify.register(acknowledgeRoutes, { people, store, live, peers, signer: options.signer });
  await fastify.register(leaseRoutes, { people, store, leases });
  await fastify.register(handBackRoutes, { leases });
  await fastify.register(metricsRoutes, { metrics, people, origins: options.origins, token: options.metricsToken });
  await fastify.register(peopleRoutes, {
    people,
    devices: new Devices(people),
    handOver: new HandOver(people, store, commits),
  });
  await fastify.register(syncRoutes, {
    store,
    origins: options.origins,
    signer: options.signer,
    gate,
    onChange: (listener) => {
      lookAgain.add(listener);
      const forget = people.onChange(listener);
      return () => {
        lookAgain.delete(listener);
        forget();
      };
    },
    clock,
    helloWithinMs: options.helloWithinMs ?? 5_000,
    lookEveryMs: options.lookEveryMs,
    hub,
    commits,
    live,
    leases,
    metrics,
  });
  await fastify.register(pageRoutes, { webDir: options.webDir });
  fastify.addHook('onReady', () => indexing.catchUp());
  fastify.addHook('onClose', async () => {
    await peers.close();
    await options.keeper?.close();
    await indexing.close();
    await people.close();
    await personal.close();
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

/** RFC 9110, 15.5.14. */
const TOO_LARGE = 413;

function asServerError(thrown: Error & { statusCode?: number }): ServerError {
  if (thrown instanceof ServerError) return thrown;
  const status = thrown.statusCode ?? 500;
  if (status === TOO_LARGE) return new ServerError('request-large', '', thrown);
  return status < 500 ? new ServerError('request-wrong', thrown.message) : new ServerError('server-failed', '', thrown);
}
