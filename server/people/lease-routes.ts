import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import { ErrorSchema } from '../review/visits.ts';
import type { EventStore } from '../store/event-store.ts';
import { callerOf } from './guard.ts';
import type { Leases } from './leases.ts';
import { guardVisits } from './may-read.ts';
import type { People } from './people.ts';

export interface LeaseOptions {
  readonly people: People;
  readonly store: Pick<EventStore, 'streams'>;
  readonly leases: Leases;
}

/** A visit is carried on by another device: one holds the technician's lease at a time. */
export const leaseRoutes: FastifyPluginAsyncTypebox<LeaseOptions> = async (app, { people, store, leases }) => {
  guardVisits(app, people.store, store);

  app.get(
    '/api/visits/:visit/lease',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        tags: ['live'],
        summary: 'which device holds the technician’s lease of the visit',
        params: Type.Object({ visit: NameSchema }),
        response: { 200: Type.Object({ device: NameSchema }), 400: ErrorSchema, 404: ErrorSchema },
      },
    },
    async (request) => ({ device: await leases.holder(callerOf(request).company, request.params.visit) }),
  );

  app.post(
    '/api/visits/:visit/take-over',
    {
      config: { needs: 'write-visits' },
      schema: {
        tags: ['live'],
        summary: 'gives the technician’s lease of the visit to a device of the caller, and tells the one that held it',
        params: Type.Object({ visit: NameSchema }),
        body: Type.Object(
          {
            device: NameSchema,
            from: Type.Unsafe<string>({ ...NameSchema, description: 'which device holds it, as the caller knows' }),
          },
          { additionalProperties: false },
        ),
        response: {
          204: Type.Null(),
          400: ErrorSchema,
          401: ErrorSchema,
          403: ErrorSchema,
          404: ErrorSchema,
          409: ErrorSchema,
        },
      },
    },
    async (request, reply) => {
      await leases.takeOver(callerOf(request), request.params.visit, request.body);
      return reply.code(204).send(null);
    },
  );
};
