import { bytesToHex } from '../../../grammar/visit/envelope.ts';
import type { RecordDatabase } from './record-database.ts';
import { sha256 } from './sha256.ts';

/** Sounds that earlier versions kept open, of dictations alone: each by the SHA-256 of its file. None is added. */
export class KeptSounds {
  readonly #database: RecordDatabase;

  constructor(database: RecordDatabase) {
    this.#database = database;
  }

  /** The file; undefined where this device does not hold it, or not as it was kept. */
  async read(name: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    const row = await this.#database.read((connection) => connection.get('sounds', name));
    if (row === undefined) return undefined;
    return bytesToHex(await sha256(row.file)) === name ? row.file : undefined;
  }
}
