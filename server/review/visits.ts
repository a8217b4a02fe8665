import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { HashSchema, HeadSchema, NameSchema } from '../../grammar/visit/message-schemas.ts';
import { ServerError } from '../errors.ts';
import type { EventStore } from '../store/event-store.ts';

export interface ReviewOptions {
  readonly store: EventStore;
  /** The company a request speaks for. */
  readonly company: string;
}

const Milliseconds = Type.Integer({ description: 'milliseconds since 1970, by the server’s clock' });
const Count = Type.Integer({ minimum: 0 });
const VisitParameters = Type.Object({ visit: NameSchema });
const ErrorSchema = Type.Object({ error: Type.String(), sentence: Type.String() });

const VisitSchema = Type.Object({
  visit: NameSchema,
  streams: Count,
  events: Count,
  firstReceivedAt: Milliseconds,
  lastReceivedAt: Milliseconds,
  forks: Count,
});

const StreamSchema = Type.Object({
  device: NameSchema,
  epoch: Type.Integer(),
  head: HeadSchema,
  firstReceivedAt: Milliseconds,
  lastReceivedAt: Milliseconds,
  forks: Count,
  sealed: Type.Boolean(),
  follows: Type.Optional(Type.Object({ epoch: Type.Integer(), head: HeadSchema })),
});

const EventSchema = Type.Object({
  device: NameSchema,
  epoch: Type.Integer(),
  seq: Type.Integer(),
  hash: HashSchema,
  body: Type.String({ description: 'the event as the device wrote it, byte for byte' }),
  receivedAt: Milliseconds,
  arrival: Type.Integer(),
});

/** Visits listed and read back. Bodies are passed on as they are: what they mean is the reader's business. */
export const reviewRoutes: FastifyPluginAsyncTypebox<ReviewOptions> = async (app, { store, company }) => {
  app.get(
    '/api/visits',
    {
      schema: {
        querystring: Type.Object({
          limit: Type.Integer({ minimum: 1, maximum: 1000, default: 100 }),
          offset: Type.Integer({ minimum: 0, default: 0 }),
        }),
        response: { 200: Type.Object({ visits: Type.Array(VisitSchema) }), 400: ErrorSchema },
      },
    },
    async (request) => ({ visits: [...(await store.visits(company, request.query))] }),
  );

  app.get(
    '/api/visits/:visit',
    {
      schema: {
        params: VisitParameters,
        response: {
          200: Type.Object({ visit: NameSchema, streams: Type.Array(StreamSchema) }),
          400: ErrorSchema,
          404: ErrorSchema,
        },
      },
    },
    async (request) => {
      const { visit } = request.params;
      const streams = await store.streams(company, visit);
      if (streams.length === 0) throw new ServerError('visit-unknown', visit);
      return { visit, streams: [...streams] };
    },
  );

  app.get(
    '/api/visits/:visit/events',
    {
      schema: {
        params: VisitParameters,
        querystring: Type.Object({
          after: Type.Integer({ minimum: 0, default: 0, description: 'the `next` of the page before' }),
          limit: Type.Integer({ minimum: 1, maximum: 10_000, default: 10_000 }),
        }),
        response: {
          200: Type.Object({
            events: Type.Array(EventSchema),
            next: Type.Optional(Type.Integer({ description: 'there are more: ask again with after=next' })),
          }),
          400: ErrorSchema,
          404: ErrorSchema,
        },
      },
    },
    async (request) => {
      const { visit } = request.params;
      const { after, limit } = request.query;
      const events = await store.events(company, visit, { after, limit });
      if (events.length === 0 && (await store.streams(company, visit)).length === 0) {
        throw new ServerError('visit-unknown', visit);
      }
      const next = events.length === limit ? events.at(-1)?.arrival : undefined;
      return { events: [...events], ...(next === undefined ? {} : { next }) };
    },
  );
};
