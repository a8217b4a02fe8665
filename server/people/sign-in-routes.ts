import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import type { FastifyReply } from 'fastify';
import Type from 'typebox';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import { ErrorSchema } from '../review/visits.ts';
import type { Gate } from './gate.ts';
import { type CookieNames, callerOf } from './guard.ts';
import { LONGEST_PASSWORD } from './passwords.ts';
import { type People, SESSION } from './people.ts';
import { RoleSchema } from './role-schema.ts';
import type { SignIn } from './sign-in.ts';

export interface SignInOptions {
  readonly people: People;
  readonly signIn: SignIn;
  readonly gate: Gate;
  readonly cookies: CookieNames;
  /** Browsers are to send the cookies over TLS alone. */
  readonly secure: boolean;
  readonly giveCookies: GiveCookies;
}

/** Gives a browser its session, and what it is known by from now on for who signed in. */
export type GiveCookies = (reply: FastifyReply, token: string, login: string) => FastifyReply;

const KNOWN_SECONDS = 31_536_000;

/** How cookies are given: to no script, no other site, and over TLS alone where the server speaks it. */
const bakeWith = (secure: boolean) => ({ path: '/', httpOnly: true, secure, sameSite: 'strict' }) as const;

export function cookieGiver({ cookies, secure, signIn }: Omit<SignInOptions, 'people' | 'gate' | 'giveCookies'>) {
  const bake = bakeWith(secure);
  const give: GiveCookies = (reply, token, login) =>
    reply
      .setCookie(cookies.session, token, { ...bake, maxAge: SESSION.longestMs / 1_000 })
      .setCookie(cookies.known, signIn.knownFor(login), { ...bake, maxAge: KNOWN_SECONDS });
  return give;
}

const PasswordSchema = Type.String({ minLength: 1, maxLength: LONGEST_PASSWORD });
const refused = { 400: ErrorSchema, 401: ErrorSchema, 403: ErrorSchema, 429: ErrorSchema };
const tags = ['sign in'];

const WhoSchema = Type.Object({
  open: Type.Boolean({ description: 'nobody needs to sign in here' }),
  person: Type.Optional(
    Type.Object({ person: Type.String(), name: Type.String(), login: Type.String(), role: RoleSchema }),
  ),
  company: Type.Optional(NameSchema),
  hasPassword: Type.Optional(Type.Boolean()),
});

/** Coming in and going out. */
export const signInRoutes: FastifyPluginAsyncTypebox<SignInOptions> = async (app, options) => {
  const { people, signIn, gate, cookies, secure, giveCookies } = options;

  app.get(
    '/api/who',
    {
      config: { needs: 'anyone' },
      schema: { tags, summary: 'whom this browser speaks for', response: { 200: WhoSchema } },
    },
    async (request, reply) => {
      reply.header('cache-control', 'no-store');
      const caller = await people.callerOf(request.cookies[cookies.session]);
      if (caller === undefined) return { open: false };
      if (caller.session === undefined) return { open: true, company: caller.company };
      const { company, person, name, login, role } = caller;
      const { password } = await people.present(company, person);
      return { open: false, company, person: { person, name, login, role }, hasPassword: password !== undefined };
    },
  );

  app.post(
    '/api/sign-in',
    {
      config: { needs: 'anyone' },
      schema: {
        tags,
        summary: 'begins a session by name and password; its cookie comes with the answer',
        body: Type.Object({ login: Type.String({ minLength: 1, maxLength: 64 }), password: PasswordSchema }),
        response: { 204: Type.Null(), ...refused },
      },
    },
    async (request, reply) => {
      const { body } = request;
      const token = await signIn.byPassword(body, request.cookies[cookies.known]);
      return giveCookies(reply, token, body.login).code(204).send(null);
    },
  );

  app.post(
    '/api/set-up',
    {
      config: { needs: 'anyone' },
      schema: {
        tags,
        summary: 'begins a session by the code of a set-up link, once',
        body: Type.Object({ code: Type.String({ minLength: 1, maxLength: 64 }) }),
        response: { 204: Type.Null(), ...refused },
      },
    },
    async (request, reply) => {
      const { token, person } = await signIn.byLink(request.body.code);
      return giveCookies(reply, token, person.login).code(204).send(null);
    },
  );

  app.post(
    '/api/sign-out',
    {
      config: { needs: 'signed-in' },
      schema: { tags, summary: 'ends this session', response: { 204: Type.Null(), ...refused } },
    },
    async (request, reply) => {
      await people.endSession(callerOf(request));
      return reply.clearCookie(cookies.session, bakeWith(secure)).code(204).send(null);
    },
  );

  app.post(
    '/api/me/password',
    {
      config: { needs: 'signed-in' },
      schema: {
        tags,
        summary: 'sets one’s own password, and ends all other sessions',
        body: Type.Object({ password: PasswordSchema, old: Type.Optional(PasswordSchema) }),
        response: { 204: Type.Null(), 404: ErrorSchema, ...refused },
      },
    },
    async (request, reply) => {
      await signIn.setPassword(callerOf(request), request.body.password, request.body.old);
      return reply.code(204).send(null);
    },
  );

  app.post(
    '/api/ticket',
    {
      config: { needs: 'anyone' },
      schema: {
        tags,
        summary: 'a ticket for one connection of the WebSocket: to a session, or to a device that then shows its key',
        body: Type.Object({ device: Type.Optional(NameSchema) }),
        response: {
          200: Type.Object({ ticket: Type.Optional(Type.String({ description: 'none where none is needed' })) }),
          ...refused,
        },
      },
    },
    async (request, reply) => {
      reply.header('cache-control', 'no-store');
      const caller = await people.callerOf(request.cookies[cookies.session]);
      const ticket = await gate.ticketFor(caller, request.body.device, request.ip);
      return ticket === undefined ? {} : { ticket };
    },
  );
};
