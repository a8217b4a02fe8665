import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import type { AuthenticationResponseJSON, RegistrationResponseJSON } from '@simplewebauthn/server';
import type { FastifyRequest } from 'fastify';
import Type from 'typebox';
import { type OriginRule, ownAddress } from '../origins.ts';
import { ErrorSchema } from '../review/visits.ts';
import { callerOf } from './guard.ts';
import type { Passkeys } from './passkeys.ts';
import type { GiveCookies } from './sign-in-routes.ts';

export interface PasskeyOptions {
  readonly passkeys: Passkeys;
  readonly origins: OriginRule;
  readonly giveCookies: GiveCookies;
}

const tags = ['sign in'];
const refused = { 400: ErrorSchema, 401: ErrorSchema, 403: ErrorSchema, 404: ErrorSchema, 429: ErrorSchema };
const ResponseSchema = Type.Object({
  id: Type.String({ minLength: 1, maxLength: 2_048 }),
  rawId: Type.String({ maxLength: 2_048 }),
  type: Type.Literal('public-key'),
  response: Type.Unsafe<object>({ type: 'object', additionalProperties: true }),
  clientExtensionResults: Type.Unsafe<object>({ type: 'object', additionalProperties: true }),
});
const OptionsSchema = Type.Unsafe<object>({
  type: 'object',
  additionalProperties: true,
  description: 'as WebAuthn names them, binary values in base64url',
});

/** Coming in by a passkey (W3C WebAuthn). */
export const passkeyRoutes: FastifyPluginAsyncTypebox<PasskeyOptions> = async (app, options) => {
  const { passkeys, origins, giveCookies } = options;
  const pageOf = (request: FastifyRequest) => ownAddress(origins, request.headers.host);
  const summary = (words: string) => ({ tags, summary: words });

  app.post(
    '/api/me/passkey/options',
    {
      config: { needs: 'signed-in' },
      schema: { ...summary('what a browser makes a passkey with'), response: { 200: OptionsSchema, ...refused } },
    },
    async (request) => passkeys.optionsToMake(callerOf(request), pageOf(request)),
  );

  app.post(
    '/api/me/passkey',
    {
      config: { needs: 'signed-in' },
      schema: { ...summary('keeps a passkey'), body: ResponseSchema, response: { 204: Type.Null(), ...refused } },
    },
    async (request, reply) => {
      await passkeys.make(callerOf(request), request.body as RegistrationResponseJSON, pageOf(request));
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/api/sign-in/passkey/options',
    {
      config: { needs: 'anyone' },
      schema: { ...summary('what a browser answers with a passkey'), response: { 200: OptionsSchema, ...refused } },
    },
    async (request) => passkeys.optionsToSignIn(pageOf(request), request.ip),
  );

  app.post(
    '/api/sign-in/passkey',
    {
      config: { needs: 'anyone' },
      schema: {
        ...summary('begins a session by a passkey'),
        body: ResponseSchema,
        response: { 204: Type.Null(), ...refused },
      },
    },
    async (request, reply) => {
      const { token, person } = await passkeys.signIn(request.body as AuthenticationResponseJSON, pageOf(request));
      return giveCookies(reply, token, person.login).code(204).send(null);
    },
  );
};
