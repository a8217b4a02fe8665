import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';
import { ServerError } from './errors.ts';

/** Addresses that one page answers, each with what may follow behind it. */
const PAGES = [
  '/',
  '/review',
  '/review/*',
  '/fleet',
  '/practice',
  '/practice/*',
  '/record/*',
  '/sign-in',
  '/pair',
  '/people',
];

/**
 * Serves the built web client. Files under /assets carry a hash in their name and are kept for a year; all others are
 * asked for anew each time (and answered 304 where nothing changed). A missing file is a 404, never the page.
 */
export async function pageRoutes(app: FastifyInstance, { webDir }: { readonly webDir: string }): Promise<void> {
  const built = existsSync(join(webDir, 'index.html'));
  if (built) {
    await app.register(fastifyStatic, {
      root: webDir,
      serve: false,
      dotfiles: 'ignore',
      // The build puts .br and .gz beside what compresses well.
      preCompressed: true,
      cacheControl: false,
      setHeaders: (reply, path) => {
        const hashed = path.startsWith(join(webDir, 'assets'));
        reply.setHeader('Vary', 'Accept-Encoding');
        reply.setHeader('Cache-Control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
      },
    });
    app.get<{ Params: { '*': string } }>('/*', { config: { needs: 'anyone' } }, async (request, reply) => {
      const path = request.params['*'];
      return path.split('/').includes('..') ? reply.callNotFound() : reply.sendFile(path);
    });
  }
  for (const page of PAGES) {
    app.get(page, { config: { needs: 'anyone' } }, async (_request, reply) => {
      if (!built) throw new ServerError('pages-unbuilt');
      return reply.sendFile('index.html');
    });
  }
}
