import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** By which this device seals what is personal in its part of a visit. */
export interface KeyRow {
  /** `company/visit/device`. */
  readonly part: string;
  /** AES-256: 32 bytes. */
  readonly raw: Uint8Array<ArrayBuffer>;
}

/** A sealed sound or photo of this device. */
export interface FileRow {
  /** Of the sealed bytes, in hexadecimal. */
  readonly sha256: string;
  readonly part: string;
  readonly kind: 'sound' | 'photo';
  readonly media: 'audio/wav' | 'image/jpeg';
  readonly bytes: number;
  /** The device's wall clock as it was kept, in milliseconds since 1970. */
  readonly keptAt: number;
  /** An event names it: it is to be sent. */
  readonly named: boolean;
  /** Gone once the server gave its receipt. */
  readonly file?: Uint8Array<ArrayBuffer>;
  readonly receipt?: { readonly time: number; readonly key: string; readonly signature: string };
}

interface PersonalSchema extends DBSchema {
  keys: { key: string; value: KeyRow };
  files: { key: string; value: FileRow; indexes: { part: string } };
}

/** Beside the records, in a database of its own: it forgets, they do not. */
const NAME = 'readback-personal';

/** Does something with the database, and closes it: no page holds it open. */
export async function withPersonal<Result>(
  work: (database: IDBPDatabase<PersonalSchema>) => Promise<Result>,
): Promise<Result> {
  const database = await openDB<PersonalSchema>(NAME, 1, {
    upgrade: (made) => {
      made.createObjectStore('keys', { keyPath: 'part' });
      made.createObjectStore('files', { keyPath: 'sha256' }).createIndex('part', 'part');
    },
  });
  try {
    return await work(database);
  } finally {
    database.close();
  }
}
