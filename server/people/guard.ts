import type { FastifyInstance, FastifyRequest } from 'fastify';
import { ServerError, type ServerErrorCode } from '../errors.ts';
import { allowedOrigin, type OriginRule, ownAddress } from '../origins.ts';
import type { Caller, People } from './people.ts';
import { may, type Need } from './permissions.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** What the route asks of its caller. A route without it is not taken. */
    needs?: Need;
  }
  interface FastifyRequest {
    caller: Caller | undefined;
  }
}

/** The cookies of a page that signed in: on plain http, which only loopback speaks, a browser takes no prefix. */
export interface CookieNames {
  readonly session: string;
  readonly known: string;
}

export function cookieNames(origins: OriginRule): CookieNames {
  const prefix = origins.kind === 'loopback' ? '' : '__Host-';
  return { session: `${prefix}readback-session`, known: `${prefix}readback-known` };
}

/** Refusals that the trail tells of: all by which somebody was kept out. */
const AUDITED: ReadonlySet<ServerErrorCode> = new Set([
  'origin-foreign',
  'sign-in-needed',
  'sign-in-wrong',
  'passkey-wrong',
  'try-later',
  'role-refused',
  'code-wrong',
  'key-wrong',
  'visit-unknown',
  'lease-moved',
  'lease-wrong',
  'person-unknown',
  'device-unknown',
  'device-taken',
  'device-in-use',
  'file-wrong',
  'key-differs',
  'attachment-wrong',
  'login-taken',
  'last-keeper',
  'first-keeper',
]);

/** Puts every route behind what it says that it needs. To be added before any route is. */
export function addGuard(fastify: FastifyInstance, people: People, origins: OriginRule): void {
  const { session } = cookieNames(origins);
  fastify.decorateRequest('caller', undefined);
  fastify.addHook('onRoute', ({ config, url }) => {
    if (config?.needs === undefined) throw new Error(`the route ${url} does not say what it needs of its caller`);
  });
  fastify.addHook('onRequest', async (request) => {
    if (request.is404) return;
    const { host, origin } = request.headers;
    if (!isReading(request.method) && !allowedOrigin(origins, origin, host)) {
      throw new ServerError('origin-foreign', ownAddress(origins, host));
    }
    const { needs } = request.routeOptions.config;
    if (needs === 'anyone') return;
    const caller = await people.callerOf(request.cookies[session]);
    if (caller === undefined || needs === undefined) throw new ServerError('sign-in-needed', ownAddress(origins, host));
    request.caller = caller;
    if (needs !== 'signed-in' && !may(caller.role, needs)) throw new ServerError('role-refused');
  });
  fastify.addHook('onError', async (request, _reply, error) => {
    if (!(error instanceof ServerError) || !AUDITED.has(error.code) || (await people.isOpen())) return;
    const deed = `${request.method} ${request.routeOptions.url ?? ''}`;
    // What nobody in particular asks for is left out: whoever makes names up would fill the trail with them.
    const asked = request.caller === undefined ? '' : paramsOf(request);
    await people.auditor.refused(deed, request.caller ?? {}, `${error.code} ${asked}`.trim());
  });
}

function isReading(method: string): boolean {
  return method === 'GET' || method === 'HEAD' || method === 'OPTIONS';
}

/** What stands in the address, never what stands in the body: that may hold a secret. */
function paramsOf(request: FastifyRequest): string {
  return Object.values((request.params ?? {}) as Readonly<Record<string, string>>).join(' ');
}

/** Whom a guarded request speaks for. */
export function callerOf(request: FastifyRequest): Caller {
  if (request.caller === undefined) throw new ServerError('sign-in-needed', '');
  return request.caller;
}
