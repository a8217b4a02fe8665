import { randomBytes } from 'node:crypto';
import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { chainBodies, type StreamId } from '../../grammar/visit/envelope.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { REMARKS_DEVICE } from '../../grammar/visit/known-names.ts';
import { NameSchema } from '../../grammar/visit/message-schemas.ts';
import { sealBody, type TextCipher } from '../../grammar/visit/personal.ts';
import { ServerError } from '../errors.ts';
import { sha256 } from '../heads/verify-stream.ts';
import { callerOf } from '../people/guard.ts';
import { guardVisits } from '../people/may-read.ts';
import type { People } from '../people/people.ts';
import { cipherOf } from '../personal/open-sealed.ts';
import type { Personal } from '../personal/personal.ts';
import type { CommitOutcome, EventStore, ReceivedEvent } from '../store/event-store.ts';
import type { GroupCommit } from '../sync/group-commit.ts';
import { ErrorSchema } from './visits.ts';

export interface RemarkOptions {
  readonly people: People;
  readonly store: Pick<EventStore, 'streams' | 'open'>;
  readonly commits: Pick<GroupCommit, 'submit'>;
  /** Takes the keys by which remarks are sealed, one a visit, as those of devices. */
  readonly keys: Pick<Personal, 'takeKey'>;
}

const KEY_BYTES = 32;

const LONGEST = 5_000;
/** Whose remark it is where the machine knows nobody, and no name was given. */
const SOMEBODY = 'at the server’s own machine';

/**
 * Remarks from the review. Each becomes an event in a stream of its own beside the visit's: it is chained and signed as
 * all others are, and no machine is ever moved by it. Every start of a server begins streams of its own, so that no two
 * ever write the same.
 */
export const remarkRoutes: FastifyPluginAsyncTypebox<RemarkOptions> = async (app, { people, store, commits, keys }) => {
  guardVisits(app, people.store, store);
  const device = `${REMARKS_DEVICE}${randomBytes(8).toString('hex')}`;
  const writing = new Map<string, Promise<unknown>>();

  /** One after another for each visit: each follows from the one before it. */
  const inTurn = async <Result>(key: string, work: () => Promise<Result>): Promise<Result> => {
    const before = writing.get(key) ?? Promise.resolve();
    const mine = before.then(work, work);
    writing.set(key, mine);
    try {
      return await mine;
    } finally {
      if (writing.get(key) === mine) writing.delete(key);
    }
  };

  const made = new Map<string, Uint8Array>();
  /** What seals the remarks on a visit: its key is kept before anything is sealed by it, and may have been erased since. */
  const cipherFor = async ({ company, visit }: StreamId): Promise<TextCipher> => {
    const name = `${company}/${visit}`;
    const key = made.get(name) ?? randomBytes(KEY_BYTES);
    made.set(name, key);
    await keys.takeKey(company, visit, device, key);
    return cipherOf(key);
  };

  const keep = async (stream: StreamId, body: string): Promise<number> => {
    const opened = await store.open(stream);
    if (opened.kind !== 'open') throw new ServerError('server-failed', '');
    const [entry] = await chainBodies(opened.head, [await sealBody(body, await cipherFor(stream))], sha256);
    if (entry === undefined) throw new ServerError('server-failed', '');
    const outcome = await commitOne(commits, { ...entry, stream, receivedAt: people.clock() });
    if (outcome?.kind !== 'stored') throw new ServerError('server-failed', '');
    return entry.seq;
  };

  app.post(
    '/api/visits/:visit/remarks',
    {
      config: { needs: 'write-remarks' },
      schema: {
        tags: ['review'],
        summary: 'writes a remark beside a visit, by name: an event of its own stream, which moves nothing',
        params: Type.Object({ visit: NameSchema }),
        body: Type.Object({
          text: Type.String({ minLength: 1, maxLength: LONGEST }),
          author: Type.Optional(
            Type.String({ maxLength: 100, description: 'counts only where the server knows nobody' }),
          ),
        }),
        response: {
          200: Type.Object({ device: NameSchema, seq: Type.Integer({ minimum: 1 }) }),
          400: ErrorSchema,
          401: ErrorSchema,
          403: ErrorSchema,
          404: ErrorSchema,
        },
      },
    },
    async (request) => {
      const caller = callerOf(request);
      const { company, person, name } = caller;
      const { visit } = request.params;
      if ((await store.streams(company, visit)).length === 0) throw new ServerError('visit-unknown', visit);
      const said = request.body.author?.trim() ?? '';
      const author = person !== '' ? name : said === '' ? SOMEBODY : said;
      const now = people.clock();
      const event = {
        type: 'remark.made',
        author,
        text: request.body.text,
        time: { at: new Date(now).toISOString(), mono: now },
      } satisfies VisitEvent;
      const seq = await inTurn(`${company}/${visit}`, () =>
        keep({ company, visit, device, epoch: 1 }, JSON.stringify(event)),
      );
      await people.auditor.done('remark written', caller, visit);
      return { device, seq };
    },
  );
};

function commitOne(commits: Pick<GroupCommit, 'submit'>, event: ReceivedEvent): Promise<CommitOutcome | undefined> {
  return new Promise((resolve, reject) => {
    commits.submit(event, {
      device: event.stream.device,
      committed: async (_events, outcomes) => resolve(outcomes[0]),
      failed: reject,
    });
  });
}
