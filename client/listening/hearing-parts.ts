import type { Expectation } from '../../grammar/phrases/meaning.ts';
import type { Ending, Heard } from './continuation.ts';
import type { Gate } from './recogniser/gate.ts';
import type { Pronunciations } from './recogniser/grammar-decoder.ts';
import type { StandsFor } from './recogniser/rivals.ts';
import type { SpeechModel, SpeechModule } from './recogniser/speech-module.ts';
import type { NoiseModule } from './sound/denoiser.ts';

export interface HearingParts {
  readonly speech: SpeechModule;
  readonly model: SpeechModel;
  /** A second model, of 8 kHz: for sound that has no more, and where the first cannot tell two sentences apart. */
  readonly second?: SpeechModel;
  readonly rnnoise: NoiseModule;
  /** Words that the model's dictionary lacks. */
  readonly pronunciations: Pronunciations;
  readonly gates: Readonly<Record<SpeechModel['id'], Gate>>;
  /** How loud the one who is listened to is known to speak, in dBFS. */
  readonly voiceDb?: number;
  /** Which words are tried in each other's place, so that a near one is asked. */
  readonly standsFor: StandsFor;
  /** JSGF of everything that can be said (`all`), or of what is expected now; undefined: nothing special is. */
  grammarFor(
    expectation: Expectation | 'all' | { readonly urgentWhile: string },
    units?: Expectation['units'],
  ): string | undefined;
  /** What a pause after these words may be. */
  endingOf(text: string, expectation: Expectation): Ending;
  /** The margin that an urgent word needs, where it is another than its model's gate asks. */
  urgentMargin(text: string): number | undefined;
  /** Whether these words behind those make another number of theirs. */
  goesOnWith(text: string, rest: string, expectation: Expectation): boolean;
  /** Any clock in milliseconds; only differences count. */
  now(): number;
}

/** One utterance as it came out of the sound. Times in milliseconds of sound since the start. */
export interface HeardSpeech extends Heard {
  readonly startedMs: number;
  /** End of the last frame of speech. */
  readonly endedMs: number;
  /** From there to the words, had the sound come in real time: pause waited for and computing that lagged behind. */
  readonly verdictMs: number;
  /** Of it, what was computed behind the pause. */
  readonly behindPauseMs: number;
  readonly realTimeFactor: number;
}
