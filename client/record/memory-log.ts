import { type Entry, emptyHead, type Head, type Sha256, type StreamId } from '../../grammar/visit/envelope.ts';
import type { Acknowledgement, Follows } from '../../grammar/visit/record-lines.ts';
import { RecordError } from './errors.ts';
import { inTurn } from './in-turn.ts';
import { laterAcknowledgement, prepareEntries, type VisitLog } from './visit-log.ts';

/** A log that lasts as long as the program: for practice and for trying things out. */
export async function openMemoryLog(stream: StreamId, sha256: Sha256, follows?: Follows): Promise<VisitLog> {
  const start = await emptyHead(stream, sha256);
  const entries: Entry[] = [];
  const run = inTurn();
  let acknowledged: Acknowledgement | undefined;
  let open = true;
  const head = (): Head => {
    const last = entries.at(-1);
    return last === undefined ? start : { seq: last.seq, hash: last.hash };
  };
  return {
    stream,
    ...(follows === undefined ? {} : { follows }),
    head,
    acknowledged: () => acknowledged,
    append: (bodies) =>
      run(async () => {
        if (!open) throw new RecordError('log-closed');
        const added = await prepareEntries(head(), bodies, sha256);
        entries.push(...added);
        return added;
      }),
    read: async (from, limit = entries.length) => entries.slice(Math.max(from, 1) - 1, Math.max(from, 1) - 1 + limit),
    acknowledge: async (came) => {
      acknowledged = laterAcknowledgement(acknowledged, came);
    },
    close: () =>
      run(async () => {
        open = false;
      }),
  };
}
