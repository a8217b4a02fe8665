import type { FastifyInstance } from 'fastify';
import type { Metrics } from './metrics.ts';

/**
 * A line for each answer: method, route as it was written down (not as it was asked), status, milliseconds, and who asked.
 * No address, header, cookie, body or query: what could hold a secret, or what somebody said, has no way into it.
 */
export function logAnswers(fastify: FastifyInstance, metrics: Metrics): void {
  const answered = metrics.counter('readback_http_answers_total', 'Answers over HTTP, by status.');
  fastify.addHook('onResponse', async (request, reply) => {
    answered(`status="${reply.statusCode}"`);
    const { company, person } = request.caller ?? {};
    request.log.info({
      method: request.method,
      route: request.routeOptions.url ?? 'unknown',
      status: reply.statusCode,
      ms: Math.round(reply.elapsedTime * 10) / 10,
      ...(person ? { company, person } : {}),
    });
  });
}

/** How fastify's own log (pino) is set up: JSON lines on the standard output, and nothing of a request by itself. */
export const LOG_OPTIONS = {
  level: 'info',
  base: null,
  timestamp: () => `,"time":"${new Date().toISOString()}"`,
  serializers: { req: () => ({}), res: () => ({}) },
} as const;
