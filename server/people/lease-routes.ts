import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import { ErrorSchema } from '../review/visits.ts';
import type { EventStore } from '../store/event-store.ts';
import { callerOf } from './guard.ts';
import { givenLeases, type Leases } from './leases.ts';
import { guardVisits } from './may-read.ts';
import type { People } from './people.ts';

export interface LeaseOptions {
  readonly people: People;
  readonly store: Pick<EventStore, 'events' | 'streams'>;
  readonly leases: Leases;
}

/** A thousand leases of a visit fit. Bytes. */
const LARGEST_GRANT = 1_000_000;

const GrantSchema = Type.Object(
  { text: Type.String(), signature: Type.String({ maxLength: 100 }) },
  { additionalProperties: false, description: 'what the server signed of it, to be handed back' },
);

const LeasesSchema = Type.Object({
  device: NameSchema,
  opener: Type.Unsafe<string>({ ...NameSchema, description: 'the device whose first event came first' }),
  older: Type.Optional(
    Type.Unsafe<string>({
      ...NameSchema,
      description:
        'who held it before leases had numbers: take-overs without one are believed as far as they lead there',
    }),
  ),
  steps: Type.Array(
    Type.Object({
      number: Type.Integer({ description: 'from 1 on' }),
      device: NameSchema,
      behind: Type.Array(Type.Object({ device: NameSchema, epoch: Type.Integer(), seq: Type.Integer() }), {
        description:
          'where the streams ended then: a take-over that goes by this lease names these entries or later ones',
      }),
    }),
  ),
});

/** A visit is carried on by another device: one holds the technician's lease at a time. */
export const leaseRoutes: FastifyPluginAsyncTypebox<LeaseOptions> = async (app, { people, store, leases }) => {
  guardVisits(app, people.store, store);

  app.get(
    '/api/visits/:visit/lease',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        tags: ['live'],
        summary: 'which device holds the technician’s lease of the visit, and to whom it was given before',
        params: Type.Object({ visit: NameSchema }),
        response: { 200: LeasesSchema, 400: ErrorSchema, 404: ErrorSchema },
      },
    },
    async (request) => {
      const { opener, steps, older } = await givenLeases(
        people.store,
        store,
        callerOf(request).company,
        request.params.visit,
      );
      return {
        device: steps.at(-1)?.device ?? older ?? opener,
        opener,
        steps: steps.map((step) => ({ ...step, behind: [...step.behind] })),
        ...(older === undefined ? {} : { older }),
      };
    },
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
          200: Type.Object({
            lease: Type.Integer({ description: 'the number of the lease' }),
            grant: GrantSchema,
          }),
          400: ErrorSchema,
          401: ErrorSchema,
          403: ErrorSchema,
          404: ErrorSchema,
          409: ErrorSchema,
        },
      },
    },
    async (request) => leases.takeOver(callerOf(request), request.params.visit, request.body),
  );
};

/** What the server signed of leases speaks for itself: whoever brings it needs no other word. */
export const handBackRoutes: FastifyPluginAsyncTypebox<Pick<LeaseOptions, 'leases'>> = async (app, { leases }) => {
  app.put(
    '/api/visits/:visit/lease',
    {
      config: { needs: 'anyone' },
      bodyLimit: LARGEST_GRANT,
      schema: {
        tags: ['live'],
        summary:
          'hands back what this server signed of the leases, where its record was put back to before they were given',
        params: Type.Object({ visit: NameSchema }),
        body: GrantSchema,
        response: { 204: Type.Null(), 400: ErrorSchema, 403: ErrorSchema, 413: ErrorSchema },
      },
    },
    async (request, reply) => {
      await leases.takeBack(request.params.visit, request.body);
      return reply.code(204).send(null);
    },
  );
};
