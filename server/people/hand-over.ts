import Type from 'typebox';
import { Compile } from 'typebox/compile';
import { type StreamId, streamText } from '../../grammar/visit/envelope.ts';
import { HeadSchema } from '../../grammar/visit/message-schemas.ts';
import { parseRecordLine, type RecordLine } from '../../grammar/visit/record-lines.ts';
import { ServerError } from '../errors.ts';
import type { CommitOutcome, EventStore, ReceivedEvent } from '../store/event-store.ts';
import type { GroupCommit } from '../sync/group-commit.ts';
import type { Caller, People } from './people.ts';

const followsSchema = Compile(
  Type.Object({ epoch: Type.Integer({ minimum: 1, maximum: Number.MAX_SAFE_INTEGER }), head: HeadSchema }),
);

/** What became of a record that was handed over. */
export interface HandedOver {
  readonly visit: string;
  /** Events that the server did not have. */
  readonly stored: number;
  /** Events that it had, byte for byte. */
  readonly held: number;
  /** Events that do not follow from those before them, or contradict one that is held (then both are kept). */
  readonly refused: number;
}

/** So many events are handed in at once: devices that write meanwhile have their turns in between. */
const EVENTS_A_TURN = 256;

/** Takes what a revoked device had not sent, from its record file, by a keeper's hand. */
export class HandOver {
  readonly #people: People;
  readonly #store: Pick<EventStore, 'open'>;
  readonly #commits: Pick<GroupCommit, 'submit'>;

  constructor(people: People, store: Pick<EventStore, 'open'>, commits: Pick<GroupCommit, 'submit'>) {
    this.#people = people;
    this.#store = store;
    this.#commits = commits;
  }

  /**
   * Keeps the events of a record file of the device. Its chain is checked as if the device sent it; what a signature of
   * the device would say, the keeper answers for: that stands on the trail.
   *
   * @throws {ServerError} device-unknown, device-in-use, file-wrong, data-full, server-failed.
   */
  async take(caller: Caller, device: string, file: string): Promise<HandedOver> {
    const { store, auditor } = this.#people;
    const known = await store.device(device);
    if (known === undefined || known.company !== caller.company) throw new ServerError('device-unknown', device);
    if (known.revokedAt === undefined) throw new ServerError('device-in-use', device);
    const { head, events } = this.#read(file);
    const { stream, follows } = head;
    if (stream.company !== caller.company || stream.device !== device) {
      throw new ServerError('file-wrong', `it is of ${streamText(stream)}`);
    }
    await auditor.done('visit handed over', { ...caller, device }, `${stream.visit} ${stream.epoch}`);
    const opened = await this.#store.open(
      stream,
      follows === undefined ? undefined : { epoch: follows.epoch, head: follows.head },
    );
    if (opened.kind !== 'open') throw new ServerError('file-wrong', 'a later epoch carried this stream on');
    const outcomes: CommitOutcome[] = [];
    for (let at = 0; at < events.length; at += EVENTS_A_TURN) {
      outcomes.push(...(await this.#commit(streamText(stream), events.slice(at, at + EVENTS_A_TURN))));
    }
    const count = (...kinds: readonly CommitOutcome['kind'][]) =>
      outcomes.filter(({ kind }) => kinds.includes(kind)).length;
    return {
      visit: stream.visit,
      stored: count('stored'),
      held: count('duplicate'),
      refused: count('fork', 'gap', 'broken', 'sealed'),
    };
  }

  #read(file: string) {
    const lines = file
      .split('\n')
      .filter((text) => text !== '')
      .map(parseRecordLine);
    const [head] = lines;
    if (head?.kind !== 'stream' || head.version !== 1 || !isStream(head.stream)) {
      throw new ServerError('file-wrong', 'its first line names no stream');
    }
    if (head.follows !== undefined && !followsSchema.Check(head.follows)) {
      throw new ServerError('file-wrong', 'its first line names no stream that it follows');
    }
    const wrong = lines.findIndex((line, at) => line === undefined || (at > 0 && line.kind === 'stream'));
    if (wrong >= 0) throw new ServerError('file-wrong', `line ${wrong + 1} is none of a record`);
    const receivedAt = this.#people.clock();
    const batches = lines.filter((line): line is RecordLine & { kind: 'batch' } => line?.kind === 'batch');
    const events = batches
      .flatMap(({ entries }) => entries)
      .map(({ seq, hash, body }): ReceivedEvent => ({ stream: head.stream, seq, hash, body, receivedAt }));
    return { head, events };
  }

  #commit(device: string, events: readonly ReceivedEvent[]): Promise<readonly CommitOutcome[]> {
    return new Promise((resolve, reject) => {
      const gathered: CommitOutcome[] = [];
      const from = {
        device,
        committed: async (_events: readonly ReceivedEvent[], outcomes: readonly CommitOutcome[]) => {
          gathered.push(...outcomes);
          if (gathered.length === events.length) resolve(gathered);
        },
        failed: reject,
      };
      for (const event of events) this.#commits.submit(event, from);
    });
  }
}

function isStream(stream: StreamId): boolean {
  try {
    return streamText(stream) !== '';
  } catch {
    return false;
  }
}
