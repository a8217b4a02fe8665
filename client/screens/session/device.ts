import { LOCAL_COMPANY, type StreamId } from '../../../grammar/visit/envelope.ts';
import { sealBody, type TextCipher } from '../../../grammar/visit/personal.ts';
import type { RecordLine } from '../../../grammar/visit/record-lines.ts';
import { isUsualChoice } from '../../../grammar/vocabulary/unit-choice.ts';
import { browserLogStore } from '../../record/browser/browser-log-store.ts';
import { readPairing } from '../../record/browser/device-key.ts';
import { handInAhead } from '../../record/browser/hand-in.ts';
import { listStreams, listUnsent } from '../../record/browser/indexed-db-log.ts';
import { LeaseDatabase, type LeftVisit, withTaken } from '../../record/browser/lease-database.ts';
import { browserLink, onReachable } from '../../record/browser/link-edge.ts';
import { RecordDatabase } from '../../record/browser/record-database.ts';
import { sendDevice } from '../../record/browser/send-device.ts';
import { openTabNews } from '../../record/browser/tab-news.ts';
import { openerOf, sealerOf } from '../../record/browser/visit-keys.ts';
import { admittedAfter } from '../../record/link.ts';
import { readEpochs } from '../../record/next-epoch.ts';
import type { SentSoFar } from '../../record/send-unsent.ts';
import type { VisitLog } from '../../record/visit-log.ts';
import { openEntries, openVisitRecord, type VisitRecord } from '../../record/visit-record.ts';
import type { KeptVisit } from '../glance/kept-visit.ts';
import { readKeptVisit } from './read-kept-visit.ts';
import { readScreenSettings } from './screen-settings.ts';
import type { Opening, SessionEdges } from './session-edges.ts';
import type { VisitElsewhere } from './take-over.ts';
import type { VisitSession } from './visit-session.ts';

/** A visit as this device holds it. */
export interface DeviceVisit {
  readonly stream: StreamId;
  readonly folded: KeptVisit;
  readonly closed: boolean;
  /** Set where another device carries it on. */
  readonly left: LeftVisit | undefined;
}

const DEVICE_KEY = 'readback.device';

/** The records on this device: what visits there are, and the way into one. */
export class Device {
  readonly #database = new RecordDatabase();
  readonly #store = browserLogStore(this.#database);
  readonly #leases = new LeaseDatabase();

  /** The visits written on this device, the latest begun first. */
  async visits(): Promise<readonly DeviceVisit[]> {
    const streams = (await listStreams(this.#database)).map(({ stream }) => stream);
    return Promise.all(streams.filter(({ epoch }) => epoch === 1).map((stream) => this.read(stream)));
  }

  /** One visit as it stands now, over all epochs of its stream. */
  async read(stream: StreamId): Promise<DeviceVisit> {
    const newest = (await this.#store.newestEpoch(stream)) ?? 0;
    const logs: VisitLog[] = [];
    for (let epoch = 1; epoch <= newest; epoch += 1) logs.push(await this.#store.open({ ...stream, epoch }));
    const entries = logs.length === 0 ? [] : await readEpochs(logs);
    const sealed = withTaken(entries, await this.#leases.taken(stream.visit));
    const opened = await openEntries(sealed, await openerOf(stream));
    const folded = await readKeptVisit(opened.map(({ body }) => body));
    const left = await this.#leases.left(stream.visit);
    return { stream, folded, closed: folded.summary !== undefined, left };
  }

  /** What of the visits here the server does not have yet, the oldest first. */
  unsent(): Promise<readonly SentSoFar[]> {
    return listUnsent(this.#database);
  }

  /** One stream as a record file, which "npm run verify" and a keeper's hand take. */
  async fileOf(stream: StreamId): Promise<File> {
    const log = await this.#store.open(stream);
    const { follows } = log;
    const entries = await log.read(1, log.head().seq);
    const acknowledged = log.acknowledged();
    const lines: RecordLine[] = [
      { kind: 'stream', version: 1, stream, ...(follows === undefined ? {} : { follows }) },
      { kind: 'batch', entries },
      ...(acknowledged === undefined ? [] : [{ kind: 'acknowledged' as const, ...acknowledged }]),
    ];
    const name = `${stream.visit}-${stream.device}-${stream.epoch}.jsonl`;
    return new File(
      lines.map((line) => `${JSON.stringify(line)}\n`),
      name,
      { type: 'application/jsonl' },
    );
  }

  /** See `sendDevice`. Resolves when there is none left. */
  sendUnsent(changed: () => void, all: boolean): Promise<void> {
    return sendDevice(this.#database, { onReachable, changed }, all);
  }

  /** A stream for a new visit: of the company that this device is paired with, else of this machine's own. */
  async newStream(): Promise<StreamId> {
    const { company, device } = (await readPairing()) ?? { company: LOCAL_COMPANY, device: deviceName() };
    return { company, visit: newVisitName(new Date()), device, epoch: 1 };
  }

  /** To be called by the one tab that holds the writer's lock. */
  async begin(stream: StreamId, opening: Omit<Opening, 'type' | 'visit' | 'software'>): Promise<VisitSession> {
    const software = `readback ${__VERSION__}`;
    const whole: Opening = {
      type: 'opened.visit',
      visit: stream.visit,
      software,
      zone: zoneHere(),
      ...unitsHere(),
      ...opening,
    };
    const { VisitSession } = await import('./visit-session.ts');
    return VisitSession.open(await this.#edges(stream), whole);
  }

  /** The open visits that other devices hold, as far as the server tells; a sentence where it does not. */
  async visitsElsewhere(): Promise<readonly VisitElsewhere[] | string> {
    const { company, device } = await this.newStream();
    const { visitsElsewhere } = await import('./take-over.ts');
    return visitsElsewhere(browserLink(), company, device);
  }

  /** This device's stream of a visit that it takes over. */
  async streamFor(visit: string): Promise<StreamId> {
    return { ...(await this.newStream()), visit };
  }

  /**
   * Takes a visit over from the device that holds it. To be called by the one tab that holds the writer's lock.
   * @throws {Error} with the sentence that says what hinders it; nothing is changed here then.
   */
  async takeOver(stream: StreamId): Promise<VisitSession> {
    const [{ takeOver }, { VisitSession }] = await Promise.all([
      import('./take-over.ts'),
      import('./visit-session.ts'),
    ]);
    const edges = await this.#edges(stream);
    const taken = await takeOver(browserLink(), stream, (await edges.record.read()).length);
    if (typeof taken === 'string') {
      await edges.record.close();
      throw new Error(taken);
    }
    // What others wrote lies here sealed as this device's own part is, and is erased with it.
    const cipher = await sealerOf(stream);
    const sealed = await Promise.all(taken.bodies.map((body) => sealBody(body, cipher)));
    await this.#leases.take({ ...taken, bodies: sealed });
    const session = await VisitSession.takeOver({ ...edges, taken }, taken);
    // A bare number is read as this device's own settings say, not those of the one before.
    session.chooseUnits(readScreenSettings().units);
    return session;
  }

  /** To be called by the one tab that holds the writer's lock. */
  async resume(stream: StreamId): Promise<VisitSession> {
    const { VisitSession } = await import('./visit-session.ts');
    return VisitSession.resume(await this.#edges(stream));
  }

  async #edges(stream: StreamId): Promise<SessionEdges> {
    const news = openTabNews(stream.visit, () => undefined);
    const { visit } = stream;
    const taken = await this.#leases.taken(visit);
    return {
      record: await this.#record(stream),
      news,
      part: stream,
      taken: taken && { ...taken, bodies: await openBodies(taken.bodies, await openerOf(stream)) },
      left: async ({ device, name, time }) => this.#leases.leave({ visit, device, name, time }),
    };
  }

  async #record(stream: StreamId): Promise<VisitRecord> {
    // Whoever watches reads from the first event on: the key goes ahead of each connection.
    const link = admittedAfter(browserLink(), () => handInAhead(stream));
    return openVisitRecord({ stream, store: this.#store, link, cipher: await sealerOf(stream), clock: Date.now });
  }
}

/** The units that were chosen on this device, where they are not the usual ones. */
function unitsHere(): Pick<Opening, 'units'> {
  const { units } = readScreenSettings();
  return isUsualChoice(units) ? {} : { units };
}

async function openBodies(bodies: readonly string[], cipher: TextCipher | undefined): Promise<readonly string[]> {
  return (
    await openEntries(
      bodies.map((body) => ({ body })),
      cipher,
    )
  ).map(({ body }) => body);
}

/** The time zone that this device is set to, by its IANA name. */
function zoneHere(): string {
  return new Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** A name for this device that stays: not for people, only to keep its streams apart from others'. */
export function deviceName(): string {
  const kept = localStorage.getItem(DEVICE_KEY);
  if (kept !== null && /^[a-z0-9][a-z0-9-]{0,63}$/.test(kept)) return kept;
  return newDeviceName();
}

/** Another name for this device from now on: its old one was revoked. */
export function newDeviceName(): string {
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
