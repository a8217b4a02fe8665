import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { HashSchema, NameSchema } from '../../grammar/visit/message-schemas.ts';
import { ServerError } from '../errors.ts';
import { callerOf } from '../people/guard.ts';
import { guardVisits, mayOpenAttachments } from '../people/may-read.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { ErrorSchema } from '../review/visits.ts';
import type { EventStore } from '../store/event-store.ts';
import type { Personal } from './personal.ts';

export interface OpenOptions {
  readonly personal: Personal;
  readonly store: EventStore;
  readonly people: Pick<PeopleStore, 'devices' | 'leases'>;
}

const refused = { 400: ErrorSchema, 401: ErrorSchema, 403: ErrorSchema, 404: ErrorSchema, 410: ErrorSchema };
const tags = ['what is personal'];
const params = Type.Object({ visit: NameSchema });
const Milliseconds = Type.Integer({ description: 'milliseconds since 1970, by the server’s clock' });

/** Who may read a visit opens what is sealed in it; sounds and photos are for fewer, and a keeper erases it all. */
export const openRoutes: FastifyPluginAsyncTypebox<OpenOptions> = async (app, { personal, store, people }) => {
  guardVisits(app, people, store);
  const demandVisit = async (company: string, visit: string) => {
    if ((await store.streams(company, visit)).length === 0) throw new ServerError('visit-unknown', visit);
  };

  app.get(
    '/api/visits/:visit/keys',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        tags,
        summary: 'the keys by which its personal texts open, one for each device that sealed any',
        params,
        response: {
          200: Type.Object({
            keys: Type.Array(
              Type.Object({
                device: NameSchema,
                key: Type.Optional(Type.String({ description: '32 bytes in base64url' })),
                erasedAt: Type.Optional(Milliseconds),
              }),
            ),
          }),
          ...refused,
        },
      },
    },
    async (request, reply) => {
      const { company } = callerOf(request);
      await demandVisit(company, request.params.visit);
      const keys = await personal.store.keys(company, request.params.visit);
      reply.header('cache-control', 'no-store');
      return {
        keys: keys.map(({ device, key, erasedAt }) => ({
          device,
          ...(key === undefined ? {} : { key: Buffer.from(key).toString('base64url') }),
          ...(erasedAt === undefined ? {} : { erasedAt }),
        })),
      };
    },
  );

  app.get(
    '/api/visits/:visit/attachments',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        tags,
        summary: 'the sounds and photos beside its events, and which of them were erased',
        params,
        response: {
          200: Type.Object({
            attachments: Type.Array(
              Type.Object({
                sha256: HashSchema,
                device: NameSchema,
                kind: Type.String(),
                bytes: Type.Integer(),
                receivedAt: Type.Optional(Milliseconds),
                erasedAt: Type.Optional(Milliseconds),
              }),
            ),
          }),
          ...refused,
        },
      },
    },
    async (request) => {
      const { company } = callerOf(request);
      await demandVisit(company, request.params.visit);
      const all = await personal.store.attachments(company, request.params.visit);
      return {
        attachments: all.map(({ sha256, device, kind, bytes, receivedAt, erasedAt }) => ({
          sha256,
          device,
          kind,
          bytes,
          ...(receivedAt === undefined ? {} : { receivedAt }),
          ...(erasedAt === undefined ? {} : { erasedAt }),
        })),
      };
    },
  );

  app.get(
    '/api/visits/:visit/attachments/:sha256',
    {
      config: { needs: 'read-own-visits' },
      schema: {
        tags,
        summary:
          'a sound or photo, opened: for supervisors, keepers and whoever’s device kept it; it is put on the trail',
        params: Type.Object({ visit: NameSchema, sha256: HashSchema }),
        response: {
          200: { description: 'the file', content: { 'application/octet-stream': { schema: Type.Any() } } },
          ...refused,
        },
      },
    },
    async (request, reply) => {
      const caller = callerOf(request);
      const { visit, sha256 } = request.params;
      await demandVisit(caller.company, visit);
      if (!(await mayOpenAttachments(caller, visit, people, store))) throw new ServerError('role-refused');
      const { media, file } = await personal.read(caller, caller.company, visit, sha256);
      return reply.header('cache-control', 'no-store').type(media).send(file);
    },
  );

  app.post(
    '/api/visits/:visit/erase',
    {
      config: { needs: 'erase-visits' },
      schema: {
        tags,
        summary: 'erases what is personal of it, for good: its keys, sounds and photos; its chain stays whole',
        params,
        response: {
          200: Type.Object({
            keys: Type.Integer(),
            files: Type.Integer(),
            open: Type.Integer({ description: 'entries that hold personal texts in the open: they stay readable' }),
            left: Type.Array(Type.String(), { description: 'what could not be overwritten where it lay' }),
          }),
          ...refused,
        },
      },
    },
    async (request) => {
      const caller = callerOf(request);
      const { left, ...counts } = await personal.erase(caller, caller.company, request.params.visit, '');
      return { ...counts, left: [...left] };
    },
  );
};
