import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type, { type Static } from 'typebox';
import { HashSchema, HeadSchema, NameSchema } from '../../grammar/visit/message-schemas.ts';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import { callerOf } from '../people/guard.ts';
import { guardVisits, isOwnVisit } from '../people/may-read.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { may } from '../people/permissions.ts';
import type { EventStore, StreamSummary, VisitSummary } from '../store/event-store.ts';
import { checkVisit } from './check-visit.ts';

export interface ReviewOptions {
  readonly store: EventStore;
  readonly people: Pick<PeopleStore, 'devices' | 'leases'>;
  /** All heads that the server signed. */
  readonly heads: () => readonly SignedHead[];
}

/** Of so many visits those of somebody's own devices are looked for. */
const LOOKED_THROUGH = 500;

const Milliseconds = Type.Integer({ description: 'milliseconds since 1970, by the server’s clock' });
const Count = Type.Integer({ minimum: 0 });
const VisitParameters = Type.Object({ visit: NameSchema });
export const ErrorSchema = Type.Object({ error: Type.String(), sentence: Type.String() });

const Said = Type.Optional(
  Type.Integer({ description: 'events that devices said they have, where that is more than are held: not complete' }),
);

const VisitSchema = Type.Object({
  visit: NameSchema,
  streams: Count,
  events: Count,
  firstReceivedAt: Milliseconds,
  lastReceivedAt: Milliseconds,
  forks: Count,
  said: Said,
});

/** What a reader should know of a stream before relying on it. */
const FlagSchema = Type.Union([
  Type.Literal('forked'),
  Type.Literal('sealed'),
  Type.Literal('clock-differs'),
  Type.Literal('received-backwards'),
  Type.Literal('not-complete'),
]);

const StreamSchema = Type.Object({
  device: NameSchema,
  epoch: Type.Integer(),
  head: HeadSchema,
  firstReceivedAt: Milliseconds,
  lastReceivedAt: Milliseconds,
  forks: Count,
  flags: Type.Array(FlagSchema),
  said: Said,
  clockOffsetMs: Type.Optional(Type.Integer({ description: 'the device’s clock minus the server’s: a claim' })),
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

const FindingSchema = Type.Object({
  stream: Type.String({ description: 'company/visit/device/epoch' }),
  seq: Type.Optional(Type.Integer({ description: 'of the first event that is not as it was' })),
  sentence: Type.String(),
});

const CheckSchema = Type.Object({
  visit: NameSchema,
  streams: Count,
  events: Count,
  findings: Type.Array(FindingSchema, { description: 'what is not as it was written' }),
  notes: Type.Array(Type.String({ description: 'worth knowing, and no proof of a change' })),
  unknown: Type.Array(Type.String({ description: 'what this check cannot tell' })),
});

/** Visits listed and read back. Bodies are passed on as they are: what they mean is the reader's business. */
export const reviewRoutes: FastifyPluginAsyncTypebox<ReviewOptions> = async (app, { store, people, heads }) => {
  guardVisits(app, people, store);
  app.get(
    '/api/visits',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        summary: 'the visits, newest activity first; to a trainee those of their own devices, of the latest 500',
        querystring: Type.Object({
          limit: Type.Integer({ minimum: 1, maximum: 1000, default: 100 }),
          offset: Type.Integer({ minimum: 0, maximum: Number.MAX_SAFE_INTEGER, default: 0 }),
        }),
        response: { 200: Type.Object({ visits: Type.Array(VisitSchema) }), 400: ErrorSchema },
      },
    },
    async (request) => {
      const caller = callerOf(request);
      const { limit, offset } = request.query;
      if (may(caller.role, 'read-visits')) return { visits: [...(await store.visits(caller.company, request.query))] };
      const own: VisitSummary[] = [];
      for (const visit of await store.visits(caller.company, { limit: LOOKED_THROUGH, offset: 0 })) {
        if (await isOwnVisit(caller, visit.visit, people, store)) own.push(visit);
      }
      return { visits: own.slice(offset, offset + limit) };
    },
  );

  app.get(
    '/api/visits/:visit',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        summary: 'its streams, one for each device and epoch',
        params: VisitParameters,
        response: {
          200: Type.Object({ visit: NameSchema, streams: Type.Array(StreamSchema) }),
          400: ErrorSchema,
          404: ErrorSchema,
        },
      },
    },
    async (request) => {
      const { company } = callerOf(request);
      const { visit } = request.params;
      const streams = await store.streams(company, visit);
      if (streams.length === 0) throw new ServerError('visit-unknown', visit);
      return { visit, streams: streams.map((stream) => ({ ...stream, flags: flagsOf(stream) })) };
    },
  );

  app.get(
    '/api/visits/:visit/check',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        summary: 'every chain read from the disk and checked',
        params: VisitParameters,
        response: {
          200: CheckSchema,
          400: ErrorSchema,
          404: ErrorSchema,
        },
      },
    },
    async (request) => {
      const { company } = callerOf(request);
      const { visit } = request.params;
      const { findings, notes, unknown, ...counts } = await checkVisit(store, company, visit, heads());
      if (counts.streams + findings.length === 0) throw new ServerError('visit-unknown', visit);
      return { visit, ...counts, findings: [...findings], notes: [...notes], unknown: [...unknown] };
    },
  );

  app.get(
    '/api/visits/:visit/events',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        summary: 'its events by arrival, byte for byte',
        params: VisitParameters,
        querystring: Type.Object({
          after: Type.Integer({
            minimum: 0,
            maximum: Number.MAX_SAFE_INTEGER,
            default: 0,
            description: 'the `next` of the page before',
          }),
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
      const { company } = callerOf(request);
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

/** Further apart than this, a device's clock and the server's do not agree. */
const CLOCK_TOLERANCE_MS = 120_000;

function flagsOf(stream: StreamSummary): Static<typeof FlagSchema>[] {
  const flags: [boolean, Static<typeof FlagSchema>][] = [
    [stream.forks > 0, 'forked'],
    [stream.sealed, 'sealed'],
    [Math.abs(stream.clockOffsetMs ?? 0) > CLOCK_TOLERANCE_MS, 'clock-differs'],
    [stream.receivedBackwards, 'received-backwards'],
    [stream.said !== undefined, 'not-complete'],
  ];
  return flags.filter(([raised]) => raised).map(([, flag]) => flag);
}
