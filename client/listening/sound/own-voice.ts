/** So far below the voice that was understood last, and so soon after it, somebody else may have said it. In dB. */
const BYSTANDER_BELOW_DB = 15;
const OWN_MS = 60_000;
/** So many that are quieter than the known voice, and it speaks quieter today, or into another microphone. */
const KNOWN_FOR = 2;

/** How loud the one who is listened to speaks here: told by what was understood last, or known from before. */
export class OwnVoice {
  readonly #knownDb: number;
  #db = -100;
  #untilMs = -1;
  #quieter = 0;

  /** @param knownDb how loud the voice was when it was learnt, in dBFS; it counts until somebody was understood */
  constructor(knownDb = -100) {
    this.#knownDb = knownDb;
  }

  /** An utterance of this loudness was understood. @param db in dBFS @param atMs in milliseconds of sound */
  understood(db: number, atMs: number): void {
    this.#db = db;
    this.#untilMs = atMs + OWN_MS;
    this.#quieter = KNOWN_FOR;
  }

  /** Whether an utterance of this loudness may be of the same voice; what is well below it may be another's. */
  mayHaveSaid(db: number, atMs: number): boolean {
    if (atMs <= this.#untilMs) return db > this.#db - BYSTANDER_BELOW_DB;
    if (this.#quieter >= KNOWN_FOR || db > this.#knownDb - BYSTANDER_BELOW_DB) return true;
    this.#quieter += 1;
    return false;
  }
}
