import { createReadStream, existsSync } from 'node:fs';
import { join } from 'node:path';
import { createGzip } from 'node:zlib';
import type { FastifyInstance } from 'fastify';
import { ServerError } from './errors.ts';

/** Where Debian's package pocketsphinx-en-us puts its acoustic model. */
const DEBIAN_FOLDER = '/usr/share/pocketsphinx/model/en-us/en-us';

/** The model's files as the recogniser asks for them, and as the package calls them. */
const FILES: Readonly<Record<string, string>> = {
  mdef: 'mdef',
  means: 'means',
  variances: 'variances',
  sendump: 'sendump',
  transition_matrices: 'transition_matrices',
  'noisedict.txt': 'noisedict',
};

/**
 * The folder of a 16 kHz acoustic model on this machine; undefined where none is whole.
 *
 * @param folder another place than that of the package
 * @throws {ServerError} setting-wrong, where one was named and holds no model.
 */
export function findWidebandModel(folder: string | undefined): string | undefined {
  const place = folder || DEBIAN_FOLDER;
  const missing = Object.values(FILES).filter((file) => !existsSync(join(place, file)));
  if (missing.length === 0) return place;
  if (!folder) return undefined;
  const sentence = `WIDEBAND_MODEL=${folder} holds no 16 kHz acoustic model (${missing.join(', ')} missing): name its folder, or leave it out.`;
  throw new ServerError('setting-wrong', sentence);
}

/** Serves the model's files as /model/wideband/NAME.gz. What it does not have is a 404: the recogniser relies on that. */
export async function widebandModelRoutes(
  app: FastifyInstance,
  { folder }: { readonly folder: string },
): Promise<void> {
  const route = { config: { needs: 'anyone' } } as const;
  app.get<{ Params: { name: string } }>('/model/wideband/:name', route, async (request, reply) => {
    const file = FILES[request.params.name.replace(/\.gz$/, '')];
    if (file === undefined || !request.params.name.endsWith('.gz')) throw new ServerError('page-unknown', request.url);
    return reply
      .type('application/gzip')
      .header('Cache-Control', 'no-cache')
      .send(createReadStream(join(folder, file)).pipe(createGzip({ level: 6 })));
  });
}
