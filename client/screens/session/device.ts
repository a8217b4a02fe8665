import { LOCAL_COMPANY, type StreamId } from '../../../grammar/visit/envelope.ts';
import { type FoldedVisit, foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { listStreams, openIndexedDbLog } from '../../record/browser/indexed-db-log.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import { RecordDatabase } from '../../record/browser/record-database.ts';
import { openTabNews } from '../../record/browser/tab-news.ts';
import { Outbox } from '../../record/outbox.ts';
import type { VisitLog } from '../../record/visit-log.ts';
import { readBodies } from './read-bodies.ts';
import { type Opening, VisitSession } from './visit-session.ts';

/** A visit as this device holds it. */
export interface DeviceVisit {
  readonly stream: StreamId;
  readonly folded: FoldedVisit;
  readonly closed: boolean;
}

const DEVICE_KEY = 'readback.device';

/** The records on this device: what visits there are, and the way into one. */
export class Device {
  readonly #database = new RecordDatabase();

  /** The visits written on this device, the latest begun first. */
  async visits(): Promise<readonly DeviceVisit[]> {
    const streams = await listStreams(this.#database);
    return Promise.all(streams.map(({ stream }) => this.read(stream)));
  }

  /** One visit as it stands now. */
  async read(stream: StreamId): Promise<DeviceVisit> {
    const log = await openIndexedDbLog(this.#database, stream);
    const folded = foldVisit(readBodies((await log.read(1)).map((entry) => entry.body)));
    return { stream, folded, closed: folded.summary !== undefined };
  }

  newStream(): StreamId {
    return { company: LOCAL_COMPANY, visit: newVisitName(new Date()), device: deviceName(), epoch: 1 };
  }

  /** To be called by the one tab that holds the writer's lock. */
  async begin(stream: StreamId, opening: Omit<Opening, 'type' | 'visit' | 'software'>): Promise<VisitSession> {
    const log = await openIndexedDbLog(this.#database, stream);
    const software = `readback ${__VERSION__}`;
    return VisitSession.open(log, this.#outbox(log), {
      type: 'opened.visit',
      visit: stream.visit,
      software,
      ...opening,
    });
  }

  /** To be called by the one tab that holds the writer's lock. */
  async resume(stream: StreamId): Promise<VisitSession> {
    const log = await openIndexedDbLog(this.#database, stream);
    return VisitSession.resume(log, this.#outbox(log));
  }

  #outbox(log: VisitLog): Outbox {
    const news = openTabNews(log.stream.visit, () => undefined);
    const outbox = new Outbox({ log: telling(log, news.tellGrown), clock: Date.now, ...browserLink() }).start();
    onReachable(() => outbox.retryNow());
    return outbox;
  }
}

/** The same log, with the other tabs told of every append. */
function telling(log: VisitLog, grown: () => void): VisitLog {
  return {
    stream: log.stream,
    ...(log.follows === undefined ? {} : { follows: log.follows }),
    head: () => log.head(),
    acknowledged: () => log.acknowledged(),
    append: async (bodies) => {
      const entries = await log.append(bodies);
      grown();
      return entries;
    },
    read: (from, limit) => log.read(from, limit),
    acknowledge: (acknowledgement) => log.acknowledge(acknowledgement),
    close: () => log.close(),
  };
}

/** A name for this device that stays: not for people, only to keep its streams apart from others'. */
function deviceName(): string {
  const kept = localStorage.getItem(DEVICE_KEY);
  if (kept !== null && /^[a-z0-9][a-z0-9-]{0,63}$/.test(kept)) return kept;
  const made = `page-${randomLetters(12)}`;
  localStorage.setItem(DEVICE_KEY, made);
  return made;
}

function newVisitName(now: Date): string {
  return `${now.toISOString().slice(0, 10)}-${randomLetters(8)}`;
}

/** Letters and digits that are not taken for one another. */
const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

function randomLetters(count: number): string {
  const bytes = crypto.getRandomValues(new Uint8Array(count));
  return [...bytes].map((byte) => LETTERS[byte % LETTERS.length]).join('');
}
