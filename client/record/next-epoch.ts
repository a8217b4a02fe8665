import type { Entry, StreamId } from '../../grammar/visit/envelope.ts';
import type { Follows } from '../../grammar/visit/record-lines.ts';
import type { VisitLog } from './visit-log.ts';

/**
 * Carries a visit on in a new epoch, where the server holds other or more events of the old one than this device (a
 * restored backup, a copied record): the old stream is sealed where the server's copy ends. What only this device has
 * is written again in the new epoch; nothing is lost on either side.
 * @param held what the server holds of the old stream, from its first event on; at least one event.
 * @param open begins the log of the new stream.
 */
export async function beginNextEpoch(
  older: VisitLog,
  held: readonly Entry[],
  open: (stream: StreamId, follows: Follows) => Promise<VisitLog>,
): Promise<VisitLog> {
  const last = held.at(-1);
  if (last === undefined) throw new RangeError('a stream that the server does not hold cannot be followed');
  const ours = await older.read(1);
  const differs = ours.findIndex((entry, at) => entry.hash !== held[at]?.hash);
  const next = await open(
    { ...older.stream, epoch: older.stream.epoch + 1 },
    {
      epoch: older.stream.epoch,
      head: { seq: last.seq, hash: last.hash },
      keeps: differs < 0 ? ours.length : differs,
    },
  );
  await carryOver(older, next);
  return next;
}

/**
 * Writes into a new epoch what only this device has of the older one. Does nothing where that was done: to be called
 * again whenever the two are opened, since the program may have ended in between.
 */
export async function carryOver(older: VisitLog, next: VisitLog): Promise<void> {
  if (next.head().seq > 0 || next.follows === undefined) return;
  const rest = await older.read(next.follows.keeps + 1);
  await next.append(rest.map((entry) => entry.body));
}

/** All events of a visit on this device, over its epochs from the oldest to the newest, each counted once. */
export async function readEpochs(logs: readonly VisitLog[]): Promise<readonly Entry[]> {
  const parts = logs.map((log, at) => log.read(1, logs[at + 1]?.follows?.keeps));
  return (await Promise.all(parts)).flat();
}
