import { hash, verify } from '@node-rs/argon2';
import { ServerError } from '../errors.ts';

/**
 * Argon2id (RFC 9106) with 19 MiB, two passes and one lane: OWASP's password storage cheat sheet, from memory.
 * `memoryCost` is in KiB.
 */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;
/** So many may wait in each queue; whoever comes then is to try again later. */
const LONGEST_QUEUE = 32;
export const SHORTEST_PASSWORD = 12;
export const LONGEST_PASSWORD = 256;

interface Waiting {
  readonly work: () => Promise<void>;
}

/** Hashes and compares passwords one at a time, so that sign-ins never take more than one core and one block of memory. */
export class Passwords {
  /** Browsers that signed in here before are served first: who floods the other queue does not lock them out. */
  readonly #known: Waiting[] = [];
  readonly #unknown: Waiting[] = [];
  #busy = false;
  #nobody: Promise<string> | undefined;

  /** @throws {ServerError} password-weak, try-later. */
  async hash(password: string, login: string): Promise<string> {
    const text = password.normalize('NFC');
    const holdsLogin = text.toLowerCase().includes(login.toLowerCase());
    if ([...text].length < SHORTEST_PASSWORD || holdsLogin || new Set(text).size < 5) {
      throw new ServerError('password-weak', String(SHORTEST_PASSWORD));
    }
    return this.#inTurn(this.#known, () => hash(text, COST));
  }

  /**
   * Whether it is the password of the hash; of nobody (undefined) it never is, and takes as long.
   * @throws {ServerError} try-later.
   */
  async matches(kept: string | undefined, password: string, fromKnown: boolean): Promise<boolean> {
    return this.#inTurn(fromKnown ? this.#known : this.#unknown, async () => {
      this.#nobody ??= hash('nobody signs in by this', COST);
      const right = await verify(kept ?? (await this.#nobody), password.normalize('NFC'));
      return right && kept !== undefined;
    });
  }

  /** Whether one more may wait. */
  hasRoom(fromKnown: boolean): boolean {
    return (fromKnown ? this.#known : this.#unknown).length < LONGEST_QUEUE;
  }

  async #inTurn<Result>(queue: Waiting[], work: () => Promise<Result>): Promise<Result> {
    if (queue.length >= LONGEST_QUEUE) throw new ServerError('try-later');
    return new Promise((resolve, reject) => {
      queue.push({ work: () => work().then(resolve, reject) });
      void this.#run();
    });
  }

  async #run(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    for (let next = this.#next(); next !== undefined; next = this.#next()) await next.work();
    this.#busy = false;
  }

  #next(): Waiting | undefined {
    return this.#known.shift() ?? this.#unknown.shift();
  }
}
