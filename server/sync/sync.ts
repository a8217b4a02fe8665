import websocket from '@fastify/websocket';
import type { FastifyInstance } from 'fastify';
import { MAX_FRAME_BYTES } from '../../grammar/visit/messages.ts';
import { ServerError } from '../errors.ts';
import type { Metrics } from '../metrics.ts';
import { allowedOrigin, type OriginRule, ownAddress } from '../origins.ts';
import type { Gate } from '../people/gate.ts';
import type { Leases } from '../people/leases.ts';
import { reportFault } from '../report-fault.ts';
import type { EventStore } from '../store/event-store.ts';
import { Conversation } from './conversation.ts';
import type { GroupCommit } from './group-commit.ts';
import { Holders, LIMITS } from './limits.ts';
import type { LiveVisits } from './live-visits.ts';
import type { ReceiptSigner } from './receipt-signer.ts';
import { closeReason } from './refusals.ts';
import { SaidHeads } from './said-heads.ts';
import type { VisitHub } from './visit-hub.ts';

export interface SyncOptions {
  readonly store: EventStore;
  readonly origins: OriginRule;
  readonly signer: ReceiptSigner;
  /** Milliseconds since 1970. */
  readonly clock: () => number;
  readonly gate: Gate;
  /** Calls back when somebody may have lost what they were let in by; returns what ends that. */
  readonly onChange: (listener: () => void) => () => void;
  readonly helloWithinMs: number;
  readonly lookEveryMs?: number | undefined;
  readonly hub: VisitHub;
  readonly commits: GroupCommit;
  readonly live: LiveVisits;
  readonly leases: Pick<Leases, 'elsewhere'>;
  readonly metrics: Metrics;
}

/** How long a device may take to answer our close before its connection is cut. */
const CLOSE_WITHIN_MS = 1_000;
/** Every connection is asked for a sign of life so often; one that gave none since the last time is cut. */
export const LOOK_EVERY_MS = 30_000;

/** The WebSocket at /sync: devices write their streams, reviewers watch visits. */
export async function syncRoutes(app: FastifyInstance, options: SyncOptions): Promise<void> {
  const { commits } = options;
  const saidHeads = new SaidHeads(options.store);
  const conversations = new Set<Conversation>();
  const writers = new Holders();
  const watchers = new Holders();
  const silent = new Set<Conversation>();
  options.metrics.gauge('readback_connections', 'Open connections of the WebSocket, by what they do.', () => ({
    'doing="writing"': writers.all,
    'doing="reading"': watchers.all,
    'doing="silent"': silent.size,
  }));
  const closed = options.metrics.counter('readback_connections_closed_total', 'Closed connections, by close code.');
  const shared = { ...options, saidHeads, silent, writers, watchers };
  const lookAgain = () => {
    for (const conversation of conversations) conversation.lookAgain().catch(reportFault);
  };
  const looking = setInterval(() => {
    for (const conversation of conversations) conversation.look();
    // Another process may have changed who may be here.
    lookAgain();
  }, options.lookEveryMs ?? LOOK_EVERY_MS);
  looking.unref();
  const forget = options.onChange(lookAgain);

  /** What was taken in is written and acknowledged before the connections are closed. */
  async function closeAll(): Promise<void> {
    clearInterval(looking);
    forget();
    await commits.drained();
    await saidHeads.keep();
    const open = [...conversations];
    for (const conversation of open) conversation.refuse(closeReason('server-closing'));
    await Promise.all(open.map((conversation) => conversation.gone(CLOSE_WITHIN_MS)));
  }

  await app.register(websocket, {
    options: { maxPayload: MAX_FRAME_BYTES, perMessageDeflate: false },
    preClose: (done) => {
      closeAll().then(() => done(), done);
    },
  });

  app.get(
    '/sync',
    {
      websocket: true,
      // Who may connect shows in the first message.
      config: { needs: 'anyone' },
      preValidation: async (request) => {
        if (!allowedOrigin(options.origins, request.headers.origin, request.headers.host)) {
          throw new ServerError('origin-foreign', ownAddress(options.origins, request.headers.host));
        }
      },
    },
    (socket, request) => {
      const [longestSilent] = silent.size >= LIMITS.silent ? silent : [];
      longestSilent?.refuse(closeReason('hello-late'));
      const conversation = new Conversation(socket, shared);
      if (conversations.size >= LIMITS.connections) return conversation.refuse(closeReason('too-many-connections'));
      conversations.add(conversation);
      socket.on('close', (code) => {
        closed(`code="${code}"`);
        request.log.info({ route: '/sync', closed: code });
        conversations.delete(conversation);
      });
    },
  );
}
