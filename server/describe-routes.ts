import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';

/**
 * Describes every route under /api, at /api itself, as OpenAPI 3.1 made of the same schemas by which the routes check and
 * answer. Called before the routes are registered.
 */
export async function describeRoutes(fastify: FastifyInstance, version: string): Promise<void> {
  await fastify.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Readback',
        version,
        description:
          'Reads the records of visits; people and devices are kept here. No record can be changed over HTTP; devices write over /sync.',
      },
    },
    hideUntagged: false,
    transform: ({ schema, url }) => ({
      // Pages and the WebSocket are no part of it.
      schema: { ...schema, hide: !url.startsWith('/api/') },
      url,
    }),
  });
  fastify.get('/api', { config: { needs: 'anyone' } }, async () => fastify.swagger());
}
