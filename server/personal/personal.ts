import { createHash } from 'node:crypto';
import { attachmentText } from '../../grammar/visit/device-texts.ts';
import { ServerError } from '../errors.ts';
import type { Auditor, Doer } from '../people/auditor.ts';
import { tellKeeper } from '../report-fault.ts';
import type { EventStore } from '../store/event-store.ts';
import type { ReceiptSigner } from '../sync/receipt-signer.ts';
import { countInTheOpen } from './in-the-open.ts';
import { openFile } from './open-sealed.ts';
import type { Attachment, Erased, PersonalStore } from './personal-store.ts';

/** So long things are kept, in days; what is not named is kept until somebody erases it. */
export interface Retention {
  readonly soundDays?: number | undefined;
  readonly personalDays?: number | undefined;
}

export interface PersonalOptions {
  readonly store: PersonalStore;
  readonly events: Pick<EventStore, 'streams' | 'events'>;
  readonly auditor: Pick<Auditor, 'done'>;
  readonly signer: Pick<ReceiptSigner, 'signText'>;
  /** Milliseconds since 1970. */
  readonly clock: () => number;
}

/** What a device hands in of a file: some of its bytes, and what the whole is. */
export interface Part extends Pick<Attachment, 'company' | 'visit' | 'device' | 'sha256' | 'kind' | 'media' | 'bytes'> {
  /** Where its bytes begin in the file. */
  readonly at: number;
  readonly data: Uint8Array;
}

/** What erasing a visit came to. */
export interface Erasing extends Erased {
  /** Entries of it that hold personal texts in the open, which no erasing reaches. */
  readonly open: number;
  /** What could not be overwritten where it lay, a sentence each. */
  readonly left: readonly string[];
}

/** How far a file has come, and the server's word for it once it is whole. */
export interface Held {
  readonly held: number;
  readonly receipt?: { readonly time: number; readonly key: string; readonly signature: string };
}

/** A sound or photo as it was. */
export interface ReadFile {
  readonly media: string;
  readonly file: Buffer;
}

/** So large a sound or photo may be, sealed: a minute of sound is 2 MB. Bytes; our choice. */
export const LARGEST_FILE = 20_000_000;
const DAY_MS = 86_400_000;

/** Keys of visits and the files beside their events: taken, opened, erased. Each erasing is on the trail. */
export class Personal {
  readonly store: PersonalStore;
  readonly #options: PersonalOptions;
  readonly #listeners = new Set<(company: string, visit: string, how: 'readable' | 'erased') => Promise<void> | void>();
  #erasing: NodeJS.Timeout | undefined;

  constructor(options: PersonalOptions) {
    this.#options = options;
    this.store = options.store;
  }

  /** Calls back when a visit reads otherwise than before: its key came, or was erased. Returns what ends that. */
  onChange(listener: (company: string, visit: string, how: 'readable' | 'erased') => Promise<void> | void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** @throws {ServerError} visit-erased, key-differs. */
  async takeKey(company: string, visit: string, device: string, key: Uint8Array): Promise<void> {
    const createdAt = this.#options.clock();
    const outcome = await this.store.addKey({ company, visit, device, key, createdAt, erasedAt: undefined });
    if (outcome === 'erased') throw new ServerError('visit-erased', visit);
    if (outcome === 'other') throw new ServerError('key-differs', visit);
    if (outcome === 'added') await this.#changed(company, visit, 'readable');
  }

  /**
   * Takes bytes of a file, where its device writes in the visit: what no event can name is not kept. When it is whole its
   * hash is checked, and only then there is a receipt.
   * @throws {ServerError} visit-unknown, where nothing came of that device yet; visit-erased, attachment-wrong, data-full.
   */
  async takePart({ at, data, ...whole }: Part): Promise<Held> {
    const { company, visit, device } = whole;
    if (await this.store.isErased(company, visit)) throw new ServerError('visit-erased', visit);
    const streams = await this.#options.events.streams(company, visit);
    if (!streams.some((stream) => stream.device === device && stream.head.seq > 0)) {
      throw new ServerError('visit-unknown', visit);
    }
    await this.store.beginAttachment(whole);
    const known = (await this.store.attachment(whole)) as Attachment;
    if (known.erasedAt !== undefined) throw new ServerError('visit-erased', visit);
    if (known.bytes !== whole.bytes) {
      throw new ServerError('attachment-wrong', 'it was begun as another');
    }
    if (known.receivedAt !== undefined) return { held: known.held, receipt: this.#receipt(known, known.receivedAt) };
    if (at + data.length > whole.bytes) throw new ServerError('attachment-wrong', 'it goes on behind its end');
    const grew = data.length > 0 && (await this.store.addPart(whole, at, data));
    const held = grew ? at + data.length : ((await this.store.attachment(whole))?.held ?? 0);
    if (grew && (await this.store.isErased(company, visit))) {
      // Erased while it came: then nobody else takes it away.
      await this.store.dropParts(whole);
      throw new ServerError('visit-erased', visit);
    }
    if (held < whole.bytes) return { held };
    if (
      createHash('sha256')
        .update(await this.store.data(whole))
        .digest('hex') !== whole.sha256
    ) {
      await this.store.dropParts(whole);
      throw new ServerError('attachment-wrong', 'its bytes are not what its hash says');
    }
    const time = this.#options.clock();
    await this.store.endAttachment(whole, time);
    return { held, receipt: this.#receipt(whole, time) };
  }

  /**
   * A sound or photo as it was, for somebody; that they had it is on the trail. Where several devices sent the same, it is
   * the one that is whole and opens.
   * @throws {ServerError} attachment-unknown, attachment-wrong, visit-erased.
   */
  async read(by: Doer, company: string, visit: string, sha256: string): Promise<ReadFile> {
    const sent = (await this.store.attachments(company, visit)).filter((one) => one.sha256 === sha256);
    const whole = sent.filter(({ receivedAt, erasedAt }) => receivedAt !== undefined && erasedAt === undefined);
    if (whole.length === 0 && !sent.some(({ erasedAt }) => erasedAt !== undefined)) {
      throw new ServerError('attachment-unknown', sha256);
    }
    const keys = await this.store.keys(company, visit);
    for (const one of whole) {
      const key = keys.find(({ device }) => device === one.device)?.key;
      const file = key === undefined ? undefined : openFile(await this.store.data(one), key);
      if (file === undefined) continue;
      await this.#options.auditor.done(`${one.kind} opened`, by, `${visit} ${sha256.slice(0, 16)}`);
      return { media: one.media, file };
    }
    const isLocked = whole.some(({ device }) => keys.some((one) => one.device === device && one.key !== undefined));
    if (isLocked) throw new ServerError('attachment-wrong', 'it does not open by the key of its device');
    throw new ServerError('visit-erased', visit);
  }

  /**
   * Erases the keys and files of a visit for good: its chain stays as it is, and nobody reads its sealed texts any more.
   * What was written in the open is counted, since it stays.
   * @throws {ServerError} visit-unknown.
   */
  async erase(by: Doer, company: string, visit: string, why: string): Promise<Erasing> {
    const erased = await this.#erase(by, company, visit, why);
    const left = await this.store.overwriteErased();
    return { ...erased, open: await countInTheOpen(this.#options.events, company, visit), left };
  }

  async #erase(by: Doer, company: string, visit: string, why: string): Promise<Erased> {
    const { events, auditor, clock } = this.#options;
    const streams = await events.streams(company, visit);
    if (streams.length === 0) throw new ServerError('visit-unknown', visit);
    // On the trail first: what cannot be told of is not done.
    await auditor.done('visit erased', by, `${visit} ${why}`.trim());
    const devices = [...new Set(streams.map(({ device }) => device))];
    const erased = await this.store.eraseVisit(company, visit, devices, clock());
    await this.#changed(company, visit, 'erased');
    return erased;
  }

  /** Deletes now what is older than it is to be kept, and from then on once a day. */
  async keepFor(retention: Retention): Promise<void> {
    await this.deleteOlder(retention);
    this.#erasing = setInterval(() => void this.deleteOlder(retention).catch(() => undefined), DAY_MS);
    this.#erasing.unref();
  }

  /** Sounds by when they came, personal texts and photos by when their visit last grew. */
  async deleteOlder({ soundDays, personalDays }: Retention): Promise<void> {
    const { auditor, clock } = this.#options;
    const now = clock();
    let any = false;
    if (soundDays !== undefined) {
      const gone = await this.store.eraseBefore('sound', now - soundDays * DAY_MS, now);
      any = gone.length > 0;
      for (const company of new Set(gone.map((file) => file.company))) {
        const of = gone.filter((file) => file.company === company);
        const visits = new Set(of.map(({ visit }) => visit)).size;
        const what = `${of.length} of ${visits} ${visits === 1 ? 'visit' : 'visits'}, kept for ${soundDays} days`;
        await auditor.done('sounds deleted', { company }, what);
      }
    }
    if (personalDays !== undefined) any = (await this.#eraseOlder(personalDays, now)) || any;
    if (!any) return;
    for (const sentence of await this.store.overwriteErased()) tellKeeper(sentence);
  }

  /** Whether there was any. */
  async #eraseOlder(personalDays: number, now: number): Promise<boolean> {
    const { events } = this.#options;
    const before = now - personalDays * DAY_MS;
    const seen = new Set<string>();
    let any = false;
    for (const { company, visit } of await this.store.keysBefore(before)) {
      const name = `${company}/${visit}`;
      if (seen.has(name)) continue;
      seen.add(name);
      const streams = await events.streams(company, visit);
      if (streams.some(({ lastReceivedAt }) => lastReceivedAt >= before)) continue;
      any = true;
      if (streams.length > 0) await this.#erase({ company }, company, visit, `kept for ${personalDays} days`);
      else await this.store.eraseVisit(company, visit, [], now);
    }
    return any;
  }

  async close(): Promise<void> {
    clearInterval(this.#erasing);
    await this.store.close();
  }

  #receipt(whole: Pick<Part, 'company' | 'visit' | 'device' | 'sha256' | 'bytes'>, time: number) {
    return { time, ...this.#options.signer.signText(attachmentText({ ...whole, time })) };
  }

  async #changed(company: string, visit: string, how: 'readable' | 'erased'): Promise<void> {
    for (const listener of this.#listeners) await listener(company, visit, how);
  }
}
