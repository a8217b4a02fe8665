import { RecordError } from '../errors.ts';
import type { RecordDatabase } from './record-database.ts';
import { sha256 } from './sha256.ts';

/** Sounds that were kept of dictations, in the browser's database beside the record: each by the SHA-256 of its file. */
export class KeptSounds {
  readonly #database: RecordDatabase;

  constructor(database: RecordDatabase) {
    this.#database = database;
  }

  /**
   * Keeps a file. It is on the disk when this resolves.
   *
   * @returns its SHA-256 in hex
   * @throws {RecordError} log-full, log-unwritable
   */
  async keep(file: Uint8Array<ArrayBuffer>): Promise<string> {
    const name = hex(await sha256(file));
    try {
      await this.#database.write(['sounds'], async (transaction) => {
        await transaction.objectStore('sounds').put({ sha256: name, file });
      });
    } catch (error) {
      if (error instanceof DOMException && error.name === 'QuotaExceededError')
        throw new RecordError('log-full', '', error);
      throw new RecordError('log-unwritable', error instanceof Error ? error.name : String(error), error);
    }
    return name;
  }

  /** The file; undefined where this device does not hold it, or not as it was kept. */
  async read(name: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    const row = await this.#database.read((connection) => connection.get('sounds', name));
    if (row === undefined) return undefined;
    return hex(await sha256(row.file)) === name ? row.file : undefined;
  }

  async drop(name: string): Promise<void> {
    await this.#database.write(['sounds'], async (transaction) => {
      await transaction.objectStore('sounds').delete(name);
    });
  }
}

function hex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
