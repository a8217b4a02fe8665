import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readingsCsv } from '../../grammar/export/readings-csv.ts';
import { talkVtt } from '../../grammar/export/talk-vtt.ts';
import { toVisitRecord } from '../../grammar/export/visit-record.ts';
import { foldVisit } from '../../grammar/visit/fold-visit.ts';
import { NOT_READABLE } from '../../grammar/visit/personal.ts';
import { ServerError } from '../errors.ts';
import { readVisit, type VisitSources } from '../review/read-visit.ts';
import type { EventStore } from '../store/event-store.ts';
import { openFile } from './open-sealed.ts';
import type { PersonalStore } from './personal-store.ts';

/** What is read of a page of visits. */
const VISITS_A_PAGE = 200;
/** How the file of a sound or photo ends, by what it is. */
const ENDINGS: Readonly<Record<string, string>> = {
  'audio/wav': 'wav',
  'audio/flac': 'flac',
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

/** What is read of a data folder. */
export interface CustomerSources extends Pick<VisitSources, 'people' | 'signer'> {
  readonly events: Pick<EventStore, 'events' | 'visits'>;
  readonly personal: PersonalStore;
}

/** What was written of a customer. */
export interface Exported {
  readonly visits: readonly string[];
  readonly files: number;
}

/**
 * Writes all that is held of one customer, by the name of their site, in the open: for each visit its events as JSON
 * lines, the record as one document, readings, talk, and its sounds and photos by the hash that the events name them by.
 *
 * @param to a folder that is new or empty
 * @throws {ServerError} site-erased, where it names nobody; site-unknown, data-unwritable, tool-wrong.
 */
export async function exportCustomer(
  { events, personal, people, signer }: CustomerSources,
  company: string,
  site: string,
  to: string,
): Promise<Exported> {
  if (isSame(site, NOT_READABLE)) throw new ServerError('site-erased', site);
  makeEmpty(to);
  const visits: string[] = [];
  let files = 0;
  for (let offset = 0; ; offset += VISITS_A_PAGE) {
    const page = await events.visits(company, { limit: VISITS_A_PAGE, offset });
    for (const { visit, events: count } of page) {
      if (count === 0) continue;
      const { events: read } = await readVisit({ store: events, keys: personal, people, signer }, company, visit);
      const view = foldVisit(read);
      if (!isSame(view.site, site)) continue;
      visits.push(visit);
      const folder = join(to, visit);
      mkdirSync(folder);
      const record = toVisitRecord(read);
      const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
      write('events.jsonl', read.map((event) => `${JSON.stringify(event)}\n`).join(''));
      write('record.json', `${JSON.stringify(record, null, 2)}\n`);
      write('readings.csv', readingsCsv(record));
      write('talk.vtt', talkVtt(view));
      files += await writeFiles(personal, company, visit, folder);
    }
    if (page.length < VISITS_A_PAGE) break;
  }
  if (visits.length === 0) throw new ServerError('site-unknown', site);
  return { visits, files };
}

async function writeFiles(personal: PersonalStore, company: string, visit: string, folder: string): Promise<number> {
  const keys = await personal.keys(company, visit);
  const written = new Set<string>();
  for (const file of await personal.attachments(company, visit)) {
    if (written.has(file.sha256)) continue;
    const key = keys.find(({ device }) => device === file.device)?.key;
    if (file.receivedAt === undefined || file.erasedAt !== undefined || key === undefined) continue;
    const opened = openFile(await personal.data(file), key);
    if (opened === undefined) continue;
    writeFileSync(join(folder, `${file.sha256}.${ENDINGS[file.media] ?? 'bin'}`), opened);
    written.add(file.sha256);
  }
  return written.size;
}

/** As people write a name: case and spaces tell nothing apart. */
function isSame(one: string, other: string): boolean {
  const plain = (name: string) => name.normalize('NFKC').trim().replace(/\s+/g, ' ').toLowerCase();
  return plain(one) === plain(other);
}

function makeEmpty(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
    if (readdirSync(folder).length === 0) return;
  } catch (error) {
    throw new ServerError('data-unwritable', folder, error);
  }
  throw new ServerError('tool-wrong', `${folder} is not empty: name a folder of its own for each export.`);
}
