import { createHash, timingSafeEqual } from 'node:crypto';
import { type IntervalHistogram, monitorEventLoopDelay } from 'node:perf_hooks';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { ServerError } from './errors.ts';
import type { OriginRule } from './origins.ts';
import { cookieNames } from './people/guard.ts';
import type { People } from './people/people.ts';
import { may } from './people/permissions.ts';

interface Family {
  readonly help: string;
  readonly type: 'counter' | 'gauge';
  /** By the labels as they are written; the empty text where there are none. */
  read(): ReadonlyMap<string, number>;
}

/** What the server counts of itself, in the text format of Prometheus (version 0.0.4, from memory). No name, no visit. */
export class Metrics {
  readonly #families = new Map<string, Family>();
  readonly #counts = new Map<string, Map<string, number>>();

  /** A number that only grows. */
  counter(name: string, help: string): (labels?: string, by?: number) => void {
    const counts = new Map<string, number>();
    this.#counts.set(name, counts);
    this.#families.set(name, { help, type: 'counter', read: () => counts });
    return (labels = '', by = 1) => void counts.set(labels, (counts.get(labels) ?? 0) + by);
  }

  /** A number that is read when it is asked for. */
  gauge(name: string, help: string, read: () => number | Readonly<Record<string, number>>): void {
    this.#families.set(name, {
      help,
      type: 'gauge',
      read: () => {
        const value = read();
        return new Map(typeof value === 'number' ? [['', value]] : Object.entries(value));
      },
    });
  }

  text(): string {
    const lines: string[] = [];
    for (const [name, { help, type, read }] of this.#families) {
      lines.push(`# HELP ${name} ${help}`, `# TYPE ${name} ${type}`);
      for (const [labels, value] of read()) lines.push(`${name}${labels === '' ? '' : `{${labels}}`} ${value}`);
    }
    return `${lines.join('\n')}\n`;
  }
}

export interface MetricsOptions {
  readonly metrics: Metrics;
  readonly people: People;
  readonly origins: OriginRule;
  /** By which a program may ask that has no session. */
  readonly token: string | undefined;
}

/** Serves the metrics to keepers, to whoever sits at an open machine, and to a program that shows the token. */
export async function metricsRoutes(app: FastifyInstance, options: MetricsOptions): Promise<void> {
  const { metrics, people, origins, token } = options;
  const delay = measureProcess(metrics);
  app.addHook('onClose', async () => void delay.disable());
  const { session } = cookieNames(origins);

  async function demandReader(request: FastifyRequest): Promise<void> {
    if (token !== undefined && isSame(request.headers.authorization ?? '', `Bearer ${token}`)) return;
    const caller = await people.callerOf(request.cookies[session]);
    if (caller === undefined) throw new ServerError('sign-in-needed', 'as a keeper, or show METRICS_TOKEN');
    request.caller = caller;
    if (!may(caller.role, 'read-audit')) throw new ServerError('role-refused');
  }

  app.get(
    '/api/metrics',
    {
      config: { needs: 'anyone' },
      schema: {
        summary: 'what the server counts of itself, in the text format of Prometheus',
        produces: ['text/plain'],
      },
    },
    async (request, reply) => {
      await demandReader(request);
      return reply.type('text/plain; version=0.0.4; charset=utf-8').send(metrics.text());
    },
  );
}

const NANOSECONDS = 1e9;

function measureProcess(metrics: Metrics): IntervalHistogram {
  const delay = monitorEventLoopDelay({ resolution: 20 });
  delay.enable();
  metrics.gauge('process_resident_memory_bytes', 'Memory of the process.', () => process.memoryUsage.rss());
  const started = Math.round(Date.now() / 1_000 - process.uptime());
  metrics.gauge('process_start_time_seconds', 'When it was started, in seconds since 1970.', () => started);
  metrics.gauge('readback_event_loop_delay_seconds', 'The 99th percentile since it was asked last.', () => {
    const seconds = delay.percentile(99) / NANOSECONDS;
    delay.reset();
    return seconds;
  });
  return delay;
}

/** Compared by their hashes: how long it takes says nothing of where they differ. */
function isSame(one: string, other: string): boolean {
  const hashed = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(hashed(one), hashed(other));
}
