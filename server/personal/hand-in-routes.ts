import { createHash } from 'node:crypto';
import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import type { FastifyRequest } from 'fastify';
import Type from 'typebox';
import { REQUEST_HEADERS } from '../../grammar/visit/device-texts.ts';
import { HashSchema, NameSchema } from '../../grammar/visit/message-schemas.ts';
import { ServerError } from '../errors.ts';
import type { Gate } from '../people/gate.ts';
import { ErrorSchema } from '../review/visits.ts';
import { LARGEST_FILE, type Personal } from './personal.ts';

export interface HandInOptions {
  readonly personal: Personal;
  readonly gate: Pick<Gate, 'admitRequest'>;
}

const KEY_BYTES = 32;
/** A device sends a file in pieces of 256 kB: what a bad network cuts is little. */
const LARGEST_PART = 300_000;

const DeviceParameters = { visit: NameSchema, device: NameSchema };
const refused = {
  400: ErrorSchema,
  401: ErrorSchema,
  403: ErrorSchema,
  404: ErrorSchema,
  409: ErrorSchema,
  410: ErrorSchema,
  413: ErrorSchema,
  507: ErrorSchema,
};
const tags = ['hand in'];

/** What it is once it is opened: nothing else is ever given to a browser. */
const MediaSchema = Type.Union([
  Type.Literal('audio/wav'),
  Type.Literal('audio/flac'),
  Type.Literal('image/jpeg'),
  Type.Literal('image/png'),
  Type.Literal('image/webp'),
]);

/** Where a device hands in the key of its part of a visit, and the sealed files that its events name. */
export const handInRoutes: FastifyPluginAsyncTypebox<HandInOptions> = async (app, { personal, gate }) => {
  app.addContentTypeParser('application/octet-stream', { parseAs: 'buffer' }, (_request, body, done) =>
    done(null, body),
  );

  const admitted = (
    request: FastifyRequest,
    { visit, device }: { readonly visit: string; readonly device: string },
    body: Buffer,
  ) => {
    const header = (name: string) => request.headers[name] as string | undefined;
    return gate.admitRequest({
      ticket: header(REQUEST_HEADERS.ticket),
      signature: header(REQUEST_HEADERS.signature),
      method: request.method,
      path: request.url,
      body: createHash('sha256').update(body).digest('hex'),
      device,
      visit,
    });
  };

  app.put(
    '/api/visits/:visit/devices/:device/key',
    {
      config: { needs: 'anyone' },
      schema: {
        tags,
        summary: 'the key by which the device seals what is personal in its part of the visit: 32 bytes',
        params: Type.Object(DeviceParameters),
        consumes: ['application/octet-stream'],
        response: { 204: Type.Null(), ...refused },
      },
    },
    async (request, reply) => {
      const { visit, device } = request.params;
      const key = bytesOf(request.body);
      const { company } = await admitted(request, { visit, device }, key);
      if (key.length !== KEY_BYTES) throw new ServerError('request-wrong', 'a key has 32 bytes');
      await personal.takeKey(company, visit, device, key);
      return reply.code(204).send(null);
    },
  );

  app.put(
    '/api/visits/:visit/devices/:device/attachments/:sha256',
    {
      config: { needs: 'anyone' },
      bodyLimit: LARGEST_PART,
      schema: {
        tags,
        summary: 'bytes of a sealed sound or photo; without any it is only asked how many are held',
        params: Type.Object({ ...DeviceParameters, sha256: HashSchema }),
        querystring: Type.Object({
          at: Type.Integer({ minimum: 0, description: 'where these bytes begin in the file' }),
          of: Type.Integer({ minimum: 1, maximum: LARGEST_FILE, description: 'how many the whole file has' }),
          kind: Type.Union([Type.Literal('sound'), Type.Literal('photo')]),
          media: MediaSchema,
        }),
        consumes: ['application/octet-stream'],
        response: {
          200: Type.Object({
            held: Type.Integer({ minimum: 0, description: 'go on from here' }),
            receipt: Type.Optional(
              Type.Object(
                { time: Type.Integer(), key: HashSchema, signature: Type.String() },
                {
                  description: 'it is here whole: Ed25519 over the attachment’s text',
                },
              ),
            ),
          }),
          ...refused,
        },
      },
    },
    async (request) => {
      const { visit, device, sha256 } = request.params;
      const { at, of: bytes, kind, media } = request.query;
      const data = bytesOf(request.body);
      const { company } = await admitted(request, { visit, device }, data);
      return personal.takePart({ company, visit, device, sha256, kind, media, bytes, at, data });
    },
  );
};

function bytesOf(body: unknown): Buffer {
  return Buffer.isBuffer(body) ? body : Buffer.alloc(0);
}
