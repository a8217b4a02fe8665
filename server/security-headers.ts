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
}
