import helmet from '@fastify/helmet';
import type { FastifyInstance } from 'fastify';

const SELF = "'self'";
const NONE = "'none'";

/**
 * What a page of ours may do: its own scripts and WebAssembly (the recogniser), its own connections, the microphone;
 * nothing from or to anywhere else.
 */
const CONTENT = {
  defaultSrc: [SELF],
  scriptSrc: [SELF, "'wasm-unsafe-eval'"],
  styleSrc: [SELF],
  imgSrc: [SELF, 'data:', 'blob:'],
  mediaSrc: [SELF, 'blob:'],
  connectSrc: [SELF],
  workerSrc: [SELF],
  manifestSrc: [SELF],
  objectSrc: [NONE],
  baseUri: [NONE],
  formAction: [SELF],
  frameAncestors: [NONE],
};

const PERMISSIONS = [
  'microphone=(self)',
  'screen-wake-lock=(self)',
  'camera=()',
  'display-capture=()',
  'geolocation=()',
  'payment=()',
  'usb=()',
  'serial=()',
  'hid=()',
  'midi=()',
].join(', ');

/** The wake word's program (see client/listening/worker/wake-worker.ts), and the one host it asks about a user's key. */
const WAKE_FOLDER = '/wake/';
const WAKE_HOST = 'https://kmp1.picovoice.net';
/** Set by the page while the user has put in a key of their own. */
const WAKE_COOKIE = /(?:^|;\s*)readback-wake=on(?:;|$)/;

/** Sets the security headers of every answer. `tls`: browsers are told to come back by TLS only. */
export async function addSecurityHeaders(app: FastifyInstance, tls: boolean): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT },
    referrerPolicy: { policy: 'no-referrer' },
    xFrameOptions: { action: 'deny' },
    strictTransportSecurity: tls ? { maxAge: 31_536_000, includeSubDomains: false } : false,
  });
  app.addHook('onRequest', async (_request, reply) => {
    reply.header('Permissions-Policy', PERMISSIONS);
  });
  // A worker goes by the policy of its own file, so no page is ever let out: only this program, and only with a key.
  const strict = policyOf(CONTENT);
  const wake = policyOf({ ...CONTENT, connectSrc: [SELF, WAKE_HOST] });
  app.addHook('onSend', async (request, reply) => {
    if (!request.url.startsWith(WAKE_FOLDER)) return;
    reply.header('Content-Security-Policy', WAKE_COOKIE.test(request.headers.cookie ?? '') ? wake : strict);
    // Kept by nobody: the policy must follow the key at once, there and back.
    reply.header('Cache-Control', 'no-store');
  });
}

function policyOf(directives: Readonly<Record<string, readonly string[]>>): string {
  const kebab = (name: string) => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  return Object.entries(directives)
    .map(([name, sources]) => `${kebab(name)} ${sources.join(' ')}`)
    .join(';');
}
