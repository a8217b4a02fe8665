import type { StreamId } from '../../grammar/visit/envelope.ts';
import { admittedAfter, type LinkOptions } from './link.ts';
import { Outbox } from './outbox.ts';
import type { VisitLog } from './visit-log.ts';

/** How far a stream of this device has come: events written here, and held by the server as far as it was told. */
export interface SentSoFar {
  readonly stream: StreamId;
  readonly written: number;
  readonly acknowledged: number;
}

export interface SendOptions {
  readonly open: (stream: StreamId) => Promise<VisitLog>;
  readonly link: LinkOptions;
  /** Done before each connection for a stream; where it rejects, the connection is tried again later. */
  readonly before?: (stream: StreamId) => Promise<void>;
  /** The device's wall clock in milliseconds since 1970. */
  readonly clock: () => number;
  /** Calls back when trying again at once is worth it; returns what ends that. */
  readonly onReachable: (again: () => void) => () => void;
  /** Calls back when no more is to be tried; returns what ends that. Nothing: it is tried until all is sent. */
  readonly onEnd?: (end: () => void) => () => void;
  /** Called as the server takes more, and when a stream is done and that is kept. */
  readonly changed: () => void;
}

/**
 * Sends what the server does not have of each stream, one after another in the order given, whatever visit is open.
 * While no server answers it is tried again after growing waits; a stream that the server refuses is passed by.
 */
export async function sendUnsent(streams: readonly StreamId[], options: SendOptions): Promise<void> {
  let ended = false;
  let stop: () => void = () => undefined;
  const forget = options.onEnd?.(() => {
    ended = true;
    stop();
  });
  for (const stream of streams) {
    if (ended) break;
    await sendOne(stream, options, (outbox) => {
      stop = () => outbox.stop();
    });
  }
  forget?.();
}

async function sendOne(
  stream: StreamId,
  { open, link, before, clock, onReachable, changed }: SendOptions,
  begun: (outbox: Outbox) => void,
): Promise<void> {
  const log = await open(stream);
  const outbox = new Outbox({
    ...(before === undefined ? link : admittedAfter(link, () => before(stream))),
    log,
    clock,
  });
  begun(outbox);
  outbox.subscribe(changed);
  const forget = onReachable(() => outbox.retryNow());
  outbox.start();
  try {
    // What was acknowledged once may be lost there since.
    await outbox.welcomed();
    await outbox.settled();
  } catch {
    // Its sentence is told when the visit itself is opened; the others are sent all the same.
  } finally {
    forget();
    outbox.stop();
    // Closing waits until what was acknowledged is kept.
    await log.close();
    changed();
  }
}
