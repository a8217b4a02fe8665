import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import type { Ear, Utterance } from '../ear.ts';
import type { Hearing } from '../hearing.ts';
import { ListeningError } from '../listening-error.ts';
import { toUtterance } from '../to-utterance.ts';
import { readWav, SAMPLE_RATE } from '../wav.ts';
import { type HearingOptions, loadHearing } from './load-hearing.ts';

/** Sound goes in by 20 ms, as a microphone gives it. */
const BLOCK = SAMPLE_RATE / 50;

type Callbacks = Parameters<Ear['start']>[0];

/** An ear for sound files: each is fed as if it came in real time, through the very path a microphone takes. */
export class WavEar implements Ear {
  readonly kind = 'wav';
  readonly #files: readonly string[];
  readonly #options: HearingOptions;
  #hearing: Hearing | undefined;
  #callbacks: Callbacks | undefined;
  #expectation: Expectation | undefined;
  #count = 0;

  /** @param files heard one after another by `start` */
  constructor(files: readonly string[] = [], options: HearingOptions = {}) {
    this.#files = files;
    this.#options = options;
  }

  async start(callbacks: Callbacks): Promise<void> {
    this.#callbacks = callbacks;
    for (const file of this.#files) await this.play(file);
  }

  /** Hears one file and delivers what was said in it, or what was wrong with it. */
  async play(file: string): Promise<void> {
    const callbacks = this.#callbacks;
    if (callbacks === undefined) return;
    try {
      for (const utterance of await this.listen(file)) callbacks.onUtterance(utterance);
    } catch (error) {
      if (!(error instanceof ListeningError)) throw error;
      callbacks.onFault(error.fault, error.message);
    }
  }

  expect(expectation: Expectation): void {
    this.#expectation = expectation;
    this.#hearing?.expect(expectation);
  }

  /**
   * Hears one file.
   * @throws ListeningError `file-not-found`, `not-a-wav`, `wav-not-supported`, `wav-empty`, `wav-cut-short`,
   * `nothing-heard`, `model-missing`
   */
  async listen(file: string, expectation?: Expectation): Promise<readonly Utterance[]> {
    const name = basename(file);
    const bytes = await readFile(file).catch(() => {
      throw new ListeningError('file-not-found', { detail: file });
    });
    const samples = readWav(bytes, name);
    const hearing = this.#hearing ?? (await loadHearing(this.#options));
    this.#hearing = hearing;
    const expected = expectation ?? this.#expectation;
    if (expected !== undefined) hearing.expect(expected);
    const heard = [];
    for (let at = 0; at < samples.length; at += BLOCK) heard.push(...hearing.push(samples.subarray(at, at + BLOCK)));
    heard.push(...hearing.flush());
    if (heard.length === 0) throw new ListeningError('nothing-heard', { detail: name });
    return heard.map((one) => {
      this.#count += 1;
      return toUtterance(one, 'wav', `${name}#${this.#count}`);
    });
  }

  async stop(): Promise<void> {
    this.#callbacks = undefined;
    this.#hearing?.close();
    this.#hearing = undefined;
  }
}
