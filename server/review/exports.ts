import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import type { FastifyRequest } from 'fastify';
import Type from 'typebox';
import { readingsCsv } from '../../grammar/export/readings-csv.ts';
import { talkVtt } from '../../grammar/export/talk-vtt.ts';
import { toVisitRecord } from '../../grammar/export/visit-record.ts';
import { VisitRecordSchema } from '../../grammar/export/visit-record-schema.ts';
import { foldVisit } from '../../grammar/visit/fold-visit.ts';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import type { RecordLine } from '../../grammar/visit/record-lines.ts';
import { ServerError } from '../errors.ts';
import { callerOf } from '../people/guard.ts';
import { guardVisits } from '../people/may-read.ts';
import { readVisit, storedOf, type VisitSources } from './read-visit.ts';
import { ErrorSchema, type ReviewOptions } from './visits.ts';

const params = Type.Object({ visit: NameSchema });
const refusals = { 400: ErrorSchema, 404: ErrorSchema };

function text(type: string, description: string) {
  return { 200: { description, content: { [type]: { schema: Type.String() } } }, ...refusals };
}

/** What is sealed is opened for who may read it. */
export type ExportOptions = Pick<ReviewOptions, 'store' | 'people'> & VisitSources;

/**
 * A visit to take away. These addresses are readers like the pages: they fold what is stored by `grammar`, and neither
 * the store nor the protocol knows of it.
 */
export const exportRoutes: FastifyPluginAsyncTypebox<ExportOptions> = async (app, sources) => {
  const { store, people } = sources;
  guardVisits(app, people, store);
  const read = async (request: FastifyRequest<{ Params: { visit: string } }>) =>
    (await readVisit(sources, callerOf(request).company, request.params.visit)).events;
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
    async (request) => toVisitRecord(await read(request)),
  );
  app.get(
    '/api/visits/:visit/readings.csv',
    {
      config: { needs: 'read-own-visits' },
      schema: { ...summary('its readings, RFC 4180'), response: text('text/csv', 'a reading a line') },
    },
    async (request, reply) => {
      const csv = readingsCsv(toVisitRecord(await read(request)));
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
      const talk = talkVtt(foldVisit(await read(request)));
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
