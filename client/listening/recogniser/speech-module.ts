/** What this room uses of a soundswallower module (MIT), however it was loaded. */
export interface SpeechModule {
  readonly HEAP8: Int8Array;
  readonly Decoder: new (config: Readonly<Record<string, string | number | boolean>>) => ModuleDecoder;
  _malloc(bytes: number): number;
  _free(address: number): void;
  /** Best words of the utterance; writes their path's score (int32) to `scoreAddress`. */
  _decoder_hyp(decoder: number, scoreAddress: number): number;
  _decoder_init_fe(decoder: number): number;
  _decoder_init_feat_s3file(decoder: number, lda: number): number;
  _acmod_reinit_feat(acousticModel: number, frontEnd: number, features: number): number;
  _decoder_logmath(decoder: number): number;
  /** On the module's own scale. */
  _logmath_log(logmath: number, probability: number): number;
  /** Gives a finished network to the decoder, which owns it from then on. */
  _decoder_set_fsg(decoder: number, network: number): number;
  _fsg_model_init(name: number, logmath: number, weight: number, states: number): number;
  _fsg_model_word_add(network: number, word: number): number;
  _fsg_model_trans_add(network: number, from: number, to: number, logProbability: number, word: number): void;
  _fsg_model_null_trans_add(network: number, from: number, to: number, logProbability: number): number;
  _fsg_set_states(network: number, start: number, final: number): void;
}

/** The part of its `Decoder` that is used here; two fields are needed that its own types leave out. */
export interface ModuleDecoder {
  readonly cdecoder: number;
  readonly cacmod: number;
  delete(): void;
  set_config(key: string, value: string | number): boolean;
  initialize(): Promise<unknown>;
  start(): void;
  stop(): void;
  process_audio(samples: Float32Array, noSearch?: boolean, fullUtterance?: boolean): number;
  /** Empty where no path through the network reached its end. */
  get_text(): string;
  lookup_word(word: string): string | null;
  add_words(...words: [string, string][]): void;
  spectrogram(samples: Float32Array): { readonly data: Float32Array; readonly nfr: number; readonly nfeat: number };
}

/**
 * Which acoustic models hear: the 16 kHz one with the 8 kHz one beside it, for narrow sound and for a second opinion; or
 * either alone, with half the memory and a quicker start.
 */
export type ModelChoice = (typeof MODEL_CHOICES)[number];

export const MODEL_CHOICES = ['both', 'wideband', 'bundled'] as const;

/** An acoustic model with its dictionary: folders or addresses, without a slash at the end. */
export interface SpeechModel {
  readonly id: 'bundled' | 'wideband';
  readonly folder: string;
  /** Where the model's own folder has no `dict.txt`. */
  readonly dictionary?: string;
}
