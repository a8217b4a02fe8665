import type { Database } from 'better-sqlite3';

/** SQLite's own end of a file, in pages. */
const NO_END = 4_294_967_294;

/**
 * So large the record and what is personal beside it may come to together: each may grow as far as the others leave room,
 * and is then told what a full disk tells. Room that erasing leaves in a file is taken by what comes to it later.
 */
export class SizeLimit {
  readonly #maxBytes: number;
  readonly #files = new Set<Database>();

  /** @param maxBytes of all files, without their logs */
  constructor(maxBytes: number) {
    this.#maxBytes = maxBytes;
  }

  /** Work that adds to a file, held to what the others leave; the file is counted with them from now on. */
  held<Given extends unknown[], Result>(
    file: Database,
    work: (...given: Given) => Result,
  ): (...given: Given) => Result {
    this.#files.add(file);
    return (...given) => {
      this.#hold(file);
      return work(...given);
    };
  }

  /** Work that erases, and may take a page more for that. */
  lifted<Given extends unknown[], Result>(
    file: Database,
    work: (...given: Given) => Result,
  ): (...given: Given) => Result {
    return (...given) => {
      file.pragma(`max_page_count = ${NO_END}`);
      return work(...given);
    };
  }

  #hold(file: Database): void {
    let left = this.#maxBytes;
    for (const other of this.#files) if (other !== file && other.open) left -= bytesOf(other);
    // SQLite leaves a file that is larger by now as large as it is.
    file.pragma(`max_page_count = ${Math.max(1, Math.floor(left / pageOf(file)))}`);
  }
}

const pageOf = (file: Database) => file.pragma('page_size', { simple: true }) as number;
const bytesOf = (file: Database) => (file.pragma('page_count', { simple: true }) as number) * pageOf(file);
