import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import { acknowledgementText } from '../../grammar/visit/messages.ts';
import { ServerError } from '../errors.ts';
import { ErrorSchema } from '../review/visits.ts';
import type { EventStore } from '../store/event-store.ts';
import type { LiveVisits } from '../sync/live-visits.ts';
import type { Peers } from '../sync/peers.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';
import { callerOf } from './guard.ts';
import { guardVisits } from './may-read.ts';
import type { People } from './people.ts';

export interface AcknowledgeOptions {
  readonly people: People;
  readonly store: Pick<EventStore, 'streams'>;
  readonly live: LiveVisits;
  readonly peers: Pick<Peers, 'say'>;
  readonly signer: Pick<ReceiptSigner, 'signText'>;
}

/** A supervisor's word for a trainee's live steps, from the supervisor's own device to the one that writes the visit. */
export const acknowledgeRoutes: FastifyPluginAsyncTypebox<AcknowledgeOptions> = async (app, options) => {
  const { people, store, live, peers, signer } = options;
  guardVisits(app, people.store, store);

  app.post(
    '/api/visits/:visit/acknowledge',
    {
      config: { needs: 'acknowledge-live-steps' },
      schema: {
        tags: ['live'],
        summary: 'tells the devices that write the visit that its live steps are acknowledged, and by whom',
        params: Type.Object({ visit: NameSchema }),
        response: {
          200: Type.Object({ devices: Type.Integer({ minimum: 1, description: 'how many devices were told' }) }),
          400: ErrorSchema,
          401: ErrorSchema,
          403: ErrorSchema,
          404: ErrorSchema,
          409: ErrorSchema,
        },
      },
    },
    async (request) => {
      const caller = callerOf(request);
      const { company, person } = caller;
      // A name of before names had to be one line: what is signed has a field a line.
      const supervisor = caller.name.replaceAll(/[\n\r]/g, ' ');
      const { visit } = request.params;
      // At a machine that knows nobody, nobody's word can be told from another's.
      if (person === '') throw new ServerError('sign-in-needed', 'add people before');
      if ((await store.streams(company, visit)).length === 0) throw new ServerError('visit-unknown', visit);
      const time = people.clock();
      const signed = signer.signText(acknowledgementText({ company, visit, person, supervisor, time }));
      await people.auditor.done('live steps acknowledged', caller, visit);
      const message = { kind: 'acknowledged', supervisor, vouched: { person, time, ...signed } } as const;
      const here = live.say(company, visit, message);
      const devices = here + (await peers.say({ company, visit }, message));
      if (devices === 0) throw new ServerError('visit-not-live', visit);
      return { devices };
    },
  );
};
