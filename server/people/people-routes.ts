import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { NameSchema, SignatureSchema } from '../../grammar/visit/message-schemas.ts';
import { ServerError } from '../errors.ts';
import { ErrorSchema } from '../review/visits.ts';
import { CALLED } from './called.ts';
import type { Devices } from './devices.ts';
import { callerOf } from './guard.ts';
import type { HandOver } from './hand-over.ts';
import type { People } from './people.ts';
import type { Person } from './people-store.ts';
import { RoleSchema } from './role-schema.ts';

export interface PeopleOptions {
  readonly people: People;
  readonly devices: Devices;
  readonly handOver: HandOver;
}

const tags = ['people and devices'];
const refused = { 400: ErrorSchema, 401: ErrorSchema, 403: ErrorSchema, 404: ErrorSchema, 409: ErrorSchema };
const Milliseconds = Type.Integer({ description: 'milliseconds since 1970, by the server’s clock' });
const Called = Type.String({ ...CALLED });
const Login = Type.String({ pattern: '^[a-z0-9][a-z0-9.@_-]{1,63}$' });
const PersonParameters = Type.Object({ person: NameSchema });
const CodeSchema = Type.String({ description: 'given once: only its hash is kept' });

const Count = Type.Integer({ minimum: 0 });
/** In bytes: some hundred times a long visit. */
const LARGEST_RECORD_FILE = 64 * 1024 * 1024;

const PersonSchema = Type.Object({
  person: NameSchema,
  login: Type.String(),
  name: Type.String(),
  role: RoleSchema,
  comesIn: Type.Boolean({ description: 'has a password or a passkey' }),
  createdAt: Milliseconds,
});
const DeviceSchema = Type.Object({
  device: NameSchema,
  person: NameSchema,
  pairedAt: Milliseconds,
  revokedAt: Type.Optional(Milliseconds),
});

/** What a keeper does: people and devices of their own company. */
export const peopleRoutes: FastifyPluginAsyncTypebox<PeopleOptions> = async (app, { people, devices, handOver }) => {
  const { store, auditor, clock } = people;
  const manages = { needs: 'manage-people' } as const;
  const shown = async ({ person, login, name, role, password, createdAt, company }: Person) => ({
    person,
    login,
    name,
    role,
    comesIn: password !== undefined || (await store.passkeysOf(company, person)).length > 0,
    createdAt,
  });

  app.get(
    '/api/people',
    {
      config: manages,
      schema: {
        tags,
        summary: 'who there is in the company',
        response: { 200: Type.Object({ people: Type.Array(PersonSchema) }), ...refused },
      },
    },
    async (request) => ({ people: await Promise.all((await store.people(callerOf(request).company)).map(shown)) }),
  );

  app.post(
    '/api/people',
    {
      config: manages,
      schema: {
        tags,
        summary: 'adds a person; resolves to the code of their set-up link',
        body: Type.Object({ login: Login, name: Called, role: RoleSchema }),
        response: { 201: Type.Object({ person: PersonSchema, code: CodeSchema }), ...refused },
      },
    },
    async (request, reply) => {
      const { person, code } = await people.addPerson(callerOf(request), request.body);
      return reply.code(201).send({ person: await shown(person), code });
    },
  );

  app.patch(
    '/api/people/:person',
    {
      config: manages,
      schema: {
        tags,
        summary: 'gives a person another name or role',
        params: PersonParameters,
        body: Type.Object(
          { name: Type.Optional(Called), role: Type.Optional(RoleSchema) },
          { additionalProperties: false },
        ),
        response: { 200: PersonSchema, ...refused },
      },
    },
    async (request) => {
      const caller = callerOf(request);
      const { person } = request.params;
      const { name, role } = request.body;
      const change = { ...(name === undefined ? {} : { name }), ...(role === undefined ? {} : { role }) };
      settled(await store.changePerson(caller.company, person, change), person);
      await auditor.done('person changed', caller, `${person} ${role ?? ''}`.trim());
      people.changed();
      return shown(await people.present(caller.company, person));
    },
  );

  app.delete(
    '/api/people/:person',
    {
      config: manages,
      schema: {
        tags,
        summary: 'removes a person: their sessions end, their devices are revoked; what they wrote stays',
        params: PersonParameters,
        response: { 204: Type.Null(), ...refused },
      },
    },
    async (request, reply) => {
      const caller = callerOf(request);
      const { person } = request.params;
      settled(await store.changePerson(caller.company, person, { removedAt: clock() }), person);
      await auditor.done('person removed', caller, person);
      people.changed();
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/api/people/:person/link',
    {
      config: manages,
      schema: {
        tags,
        summary: 'a new set-up link, for who forgot their password or lost their passkey',
        params: PersonParameters,
        response: { 201: Type.Object({ code: CodeSchema }), ...refused },
      },
    },
    async (request, reply) => {
      const caller = callerOf(request);
      const person = await people.present(caller.company, request.params.person);
      return reply.code(201).send({ code: await people.makeLink(caller, person) });
    },
  );

  app.post(
    '/api/people/:person/pairing',
    {
      config: manages,
      schema: {
        tags,
        summary: 'a code that pairs one device with the person, once, within five minutes',
        params: PersonParameters,
        response: { 201: Type.Object({ code: CodeSchema, expiresAt: Milliseconds }), ...refused },
      },
    },
    async (request, reply) => {
      const caller = callerOf(request);
      const person = await people.present(caller.company, request.params.person);
      return reply.code(201).send(await devices.makePairing(caller, person));
    },
  );

  app.post(
    '/api/pair',
    {
      config: { needs: 'anyone' },
      schema: {
        tags,
        summary: 'pairs the device that shows a pairing code and its key',
        body: Type.Object({
          code: Type.String({ minLength: 1, maxLength: 64 }),
          device: NameSchema,
          publicKey: Type.String({ minLength: 1, maxLength: 256, description: 'P-256 as SPKI in base64url' }),
          signature: SignatureSchema,
        }),
        response: { 201: Type.Object({ company: NameSchema, device: NameSchema }), ...refused },
      },
    },
    async (request, reply) => {
      const { company, device } = await devices.pair(request.body);
      return reply.code(201).send({ company, device });
    },
  );

  app.get(
    '/api/devices',
    {
      config: manages,
      schema: {
        tags,
        summary: 'the devices of the company, revoked ones too',
        response: { 200: Type.Object({ devices: Type.Array(DeviceSchema) }), ...refused },
      },
    },
    async (request) => ({
      devices: (await store.devices(callerOf(request).company)).map(({ device, person, pairedAt, revokedAt }) => ({
        device,
        person,
        pairedAt,
        ...(revokedAt === undefined ? {} : { revokedAt }),
      })),
    }),
  );

  app.delete(
    '/api/devices/:device',
    {
      config: manages,
      schema: {
        tags,
        summary: 'revokes a device: it writes nothing more',
        params: Type.Object({ device: NameSchema }),
        response: { 204: Type.Null(), ...refused },
      },
    },
    async (request, reply) => {
      await devices.revoke(callerOf(request), request.params.device);
      return reply.code(204).send(null);
    },
  );

  app.addContentTypeParser('application/jsonl', { parseAs: 'string' }, (_request, body, done) => done(null, body));
  app.post(
    '/api/devices/:device/hand-over',
    {
      config: manages,
      bodyLimit: LARGEST_RECORD_FILE,
      schema: {
        tags,
        summary: 'keeps what a revoked device had not sent, from its record file',
        params: Type.Object({ device: NameSchema }),
        consumes: ['application/jsonl'],
        response: {
          200: Type.Object({ visit: NameSchema, stored: Count, held: Count, refused: Count }),
          ...refused,
        },
      },
    },
    async (request) => {
      const { body } = request;
      if (typeof body !== 'string') throw new ServerError('file-wrong', 'it comes as application/jsonl');
      return handOver.take(callerOf(request), request.params.device, body);
    },
  );

  app.get(
    '/api/audit',
    {
      config: { needs: 'read-audit' },
      schema: {
        tags,
        summary: 'who did what, and who was refused, the latest first',
        querystring: Type.Object({
          before: Type.Optional(
            Type.Integer({
              minimum: 1,
              maximum: Number.MAX_SAFE_INTEGER,
              description: 'the `id` of the last line before',
            }),
          ),
          limit: Type.Integer({ minimum: 1, maximum: 1000, default: 100 }),
        }),
        response: {
          200: Type.Object({
            lines: Type.Array(
              Type.Object({
                id: Type.Integer(),
                at: Milliseconds,
                person: Type.String(),
                device: Type.String(),
                deed: Type.String(),
                outcome: Type.Union([Type.Literal('done'), Type.Literal('refused')]),
                detail: Type.String(),
                times: Type.Integer({ description: 'how often, within a minute' }),
              }),
            ),
          }),
          ...refused,
        },
      },
    },
    async (request) => ({ lines: [...(await store.audit(callerOf(request).company, request.query))] }),
  );
};

function settled(outcome: 'changed' | 'unknown' | 'last-keeper', person: string): void {
  if (outcome === 'unknown') throw new ServerError('person-unknown', person);
  if (outcome === 'last-keeper') throw new ServerError('last-keeper');
}
