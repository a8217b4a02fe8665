import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { readingsCsv } from '../../grammar/export/readings-csv.ts';
import { talkVtt } from '../../grammar/export/talk-vtt.ts';
import { toVisitRecord } from '../../grammar/export/visit-record.ts';
import { VisitRecordSchema } from '../../grammar/export/visit-record-schema.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { foldVisit } from '../../grammar/visit/fold-visit.ts';
import { joinBodies } from '../../grammar/visit/join-devices.ts';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import type { RecordLine } from '../../grammar/visit/record-lines.ts';
import { ServerError } from '../errors.ts';
import { callerOf } from '../people/guard.ts';
import { guardVisits } from '../people/may-read.ts';
import { openBodies } from '../personal/open-sealed.ts';
import type { PersonalStore } from '../personal/personal-store.ts';
import type { EventStore, StoredEvent } from '../store/event-store.ts';
import { ErrorSchema, type ReviewOptions } from './visits.ts';

/** Between so many events others are served. */
const EVENTS_A_PAGE = 500;
const params = Type.Object({ visit: NameSchema });
const refusals = { 400: ErrorSchema, 404: ErrorSchema };

function text(type: string, description: string) {
  return { 200: { description, content: { [type]: { schema: Type.String() } } }, ...refusals };
}

export interface ExportOptions extends Pick<ReviewOptions, 'store' | 'people'> {
  /** What is sealed is opened for who may read it. */
  readonly keys: Pick<PersonalStore, 'keys'>;
}

/**
 * A visit to take away. These addresses are readers like the pages: they fold what is stored by `grammar`, and neither
 * the store nor the protocol knows of it.
 */
export const exportRoutes: FastifyPluginAsyncTypebox<ExportOptions> = async (app, { store, people, keys }) => {
  guardVisits(app, people, store);
  const summary = (words: string) => ({ tags: ['take away'], summary: words, params });

  app.get(
    '/api/visits/:visit/record.json',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        ...summary('the whole visit as one document; its schema is at /api/visit-record.schema.json'),
        response: { 200: Type.Unsafe<object>({ type: 'object', additionalProperties: true }), ...refusals },
      },
    },
    async (request) => toVisitRecord(await eventsOf(store, keys, callerOf(request).company, request.params.visit)),
  );
  app.get(
    '/api/visits/:visit/readings.csv',
    {
      config: { needs: 'read-own-visits' },
      schema: { ...summary('its readings, RFC 4180'), response: text('text/csv', 'a reading a line') },
    },
    async (request, reply) => {
      const csv = readingsCsv(
        toVisitRecord(await eventsOf(store, keys, callerOf(request).company, request.params.visit)),
      );
      return reply
        .header('content-disposition', 'attachment')
        .type('text/csv; charset=utf-8; header=present')
        .send(csv);
    },
  );
  app.get(
    '/api/visits/:visit/talk.vtt',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        ...summary('its talk on the visit’s clock, WebVTT'),
        response: text('text/vtt', 'a cue for all that was heard and said'),
      },
    },
    async (request, reply) => {
      const talk = talkVtt(foldVisit(await eventsOf(store, keys, callerOf(request).company, request.params.visit)));
      return reply.header('content-disposition', 'attachment').type('text/vtt; charset=utf-8').send(talk);
    },
  );
  app.get(
    '/api/visits/:visit/streams/:device/:epoch/chain.jsonl',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        tags: ['take away'],
        summary: 'one stream as a device’s record file, which "npm run verify" takes',
        params: Type.Object({ visit: NameSchema, device: NameSchema, epoch: Type.Integer({ minimum: 1 }) }),
        response: text('application/jsonl', 'the stream, then its events in batches, as JSON lines'),
      },
    },
    async (request, reply) => {
      const { company } = callerOf(request);
      const { visit, device, epoch } = request.params;
      const held = (await storedOf(store, company, visit)).filter(
        (one) => one.device === device && one.epoch === epoch,
      );
      if (held.length === 0) throw new ServerError('visit-unknown', `${visit}, ${device}, ${epoch}`);
      const lines: RecordLine[] = [
        { kind: 'stream', version: 1, stream: { company, visit, device, epoch } },
        ...held.map(({ seq, hash, body }) => ({ kind: 'batch' as const, entries: [{ seq, hash, body }] })),
      ];
      return reply
        .header('content-disposition', 'attachment')
        .type('application/jsonl')
        .send(lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
    },
  );
  app.get(
    '/api/visit-record.schema.json',
    {
      config: { needs: 'anyone' },
      schema: {
        tags: ['take away'],
        summary: 'JSON Schema (2020-12) of record.json',
        response: { 200: Type.Unsafe<object>({ type: 'object', additionalProperties: true }) },
      },
    },
    async () => VisitRecordSchema,
  );
};

async function storedOf(
  store: Pick<EventStore, 'events'>,
  company: string,
  visit: string,
): Promise<readonly StoredEvent[]> {
  const all: StoredEvent[] = [];
  for (let after = 0; ; ) {
    const page = await store.events(company, visit, { after, limit: EVENTS_A_PAGE });
    all.push(...page);
    const last = page.at(-1);
    if (last === undefined || page.length < EVENTS_A_PAGE) break;
    after = last.arrival;
    await new Promise((resolve) => setImmediate(resolve));
  }
  if (all.length === 0) throw new ServerError('visit-unknown', visit);
  return all;
}

/**
 * The events of a visit, opened as far as its keys are there. As `joinBodies` counts.
 * @throws {ServerError} visit-unknown.
 */
export async function eventsOf(
  store: Pick<EventStore, 'events'>,
  keys: Pick<PersonalStore, 'keys'>,
  company: string,
  visit: string,
): Promise<readonly VisitEvent[]> {
  const stored = await storedOf(store, company, visit);
  const bodies = await openBodies(stored, await keys.keys(company, visit));
  return joinBodies(stored.map((entry, at) => ({ ...entry, body: bodies[at] ?? entry.body }))).events;
}
