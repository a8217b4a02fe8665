/** So far below the voice that was understood last, and so soon after it, somebody else may have said it. */
const BYSTANDER_BELOW_DB = 15;
const OWN_MS = 60_000;

/** How loud the one who is listened to speaks here, told by what was understood last. */
export class OwnVoice {
  #db = -100;
  #untilMs = 0;

  /** An utterance of this loudness was understood. @param db in dBFS @param atMs in milliseconds of sound */
  understood(db: number, atMs: number): void {
    this.#db = db;
    this.#untilMs = atMs + OWN_MS;
  }

  /** Whether an utterance of this loudness may be of the same voice; what is well below it may be another's. */
  mayHaveSaid(db: number, atMs: number): boolean {
    return atMs > this.#untilMs || db > this.#db - BYSTANDER_BELOW_DB;
  }
}
