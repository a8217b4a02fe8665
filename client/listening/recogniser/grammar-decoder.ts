import { ListeningError } from '../listening-error.ts';
import { SAMPLE_RATE } from '../wav.ts';
import { type Automaton, toAutomaton } from './automaton.ts';
import { cepstralMean } from './cepstral-mean.ts';
import { parseJsgf } from './parse-jsgf.ts';
import type { ModuleDecoder, SpeechModel, SpeechModule } from './speech-module.ts';

/** What a decoder made of an utterance. */
export interface Hypothesis {
  /** Empty where no path through the grammar reached its end. */
  readonly text: string;
  /** Log likelihood of the best path; comparable across decoders of one model that were given the same sound and mean. */
  readonly score: number;
}

export type Pronunciations = Readonly<Record<string, readonly string[]>>;

/**
 * Settings of every decoder. `lw` 1: a closed grammar needs no heavier language weight (measured on people, +3 % in
 * noise). `compallsen`: all senones are scored in every frame, so that scores compare across grammars.
 */
const SETTINGS = {
  samprate: SAMPLE_RATE,
  lw: 1,
  compallsen: true,
  loglevel: 'FATAL',
} as const;

/** One grammar over one acoustic model: sound in, words out. Blocks while it computes. */
export class GrammarDecoder {
  readonly #module: SpeechModule;
  readonly #decoder: ModuleDecoder;
  readonly #scoreAddress: number;
  #network: Automaton | undefined;
  #words = 0;
  /** Words looked up before: each look-up costs the module a little memory. */
  readonly #known = new Set<string>();

  private constructor(module: SpeechModule, decoder: ModuleDecoder) {
    this.#module = module;
    this.#decoder = decoder;
    this.#scoreAddress = module._malloc(4);
  }

  /**
   * Loads a model into a decoder of its own.
   *
   * @throws ListeningError `model-missing`
   */
  static async open(
    module: SpeechModule,
    model: SpeechModel,
    pronunciations: Pronunciations,
    settings: Readonly<Record<string, string | number | boolean>> = {},
  ): Promise<GrammarDecoder> {
    const dictionary = model.dictionary === undefined ? {} : { dict: model.dictionary };
    let decoder: ModuleDecoder;
    try {
      decoder = new module.Decoder({ ...SETTINGS, ...settings, ...dictionary, hmm: model.folder });
      await decoder.initialize();
      if (decoder.lookup_word('one') === null) throw new Error('no dictionary');
    } catch (error) {
      const detail = `${model.folder}: ${error instanceof Error ? error.message : String(error)}`;
      throw new ListeningError('model-missing', { detail });
    }
    // The model's own parameters were read after ours. RNNoise does this better, and once is enough.
    decoder.set_config('remove_noise', 0);
    const made = new GrammarDecoder(module, decoder);
    made.#renewFrontEnd();
    made.teach(pronunciations);
    return made;
  }

  /** @throws ListeningError `grammar-unknown-word` naming every such word, or `grammar-broken` */
  setGrammar(jsgf: string): void {
    this.setNetwork(toAutomaton(parseJsgf(jsgf)));
  }

  /** @throws ListeningError `grammar-unknown-word` naming every such word */
  setNetwork(network: Automaton): void {
    const words = new Set(network.arcs.flatMap((arcs) => [...arcs.keys()]));
    const unknown = [...words].filter((word) => !this.#knows(word));
    if (unknown.length > 0) {
      throw new ListeningError('grammar-unknown-word', { detail: unknown.map((word) => `"${word}"`).join(', ') });
    }
    this.#words = words.size;
    this.#network = network;
    if (this.#module._decoder_set_fsg(this.#decoder.cdecoder, this.#networkOf(network)) < 0) {
      throw new ListeningError('grammar-broken', { detail: 'the recogniser refused it' });
    }
  }

  /** What it follows. */
  get network(): Automaton | undefined {
    return this.#network;
  }

  /** How many different words the grammar has. */
  get words(): number {
    return this.#words;
  }

  /** The mean cepstrum of some sound, for `begin`. Not while an utterance is open. */
  meanOf(samples: Float32Array): number[] {
    const { data, nfeat } = this.#decoder.spectrogram(samples);
    return cepstralMean(data, nfeat);
  }

  /** Opens an utterance whose features are taken relative to `mean`. */
  begin(mean: readonly number[]): void {
    this.#decoder.set_config('cmninit', mean.map((value) => value.toFixed(3)).join(','));
    this.#renewFrontEnd();
    this.#decoder.start();
  }

  /** Samples at 16 kHz, -1…1, any number of them. */
  feed(samples: Float32Array): void {
    this.#decoder.process_audio(samples, false, false);
  }

  /** The best words so far, whether or not they are a whole sentence of the grammar. */
  partial(): Hypothesis {
    return this.#best();
  }

  end(): Hypothesis {
    this.#decoder.stop();
    return this.#best();
  }

  #best(): Hypothesis {
    const text = this.#decoder.get_text();
    this.#module._decoder_hyp(this.#decoder.cdecoder, this.#scoreAddress);
    const score = new DataView(this.#module.HEAP8.buffer).getInt32(this.#scoreAddress, true);
    return { text, score };
  }

  close(): void {
    this.#module._free(this.#scoreAddress);
    this.#decoder.delete();
  }

  /**
   * The network in the module's own memory. Where a sentence may go on in several ways, each is as likely: without that
   * a short word slips in wherever many may stand ("why" became "Y eight"), and the search takes twice as long.
   */
  #networkOf({ arcs, final, ways }: Automaton): number {
    const module = this.#module;
    const { cdecoder } = this.#decoder;
    const logmath = module._decoder_logmath(cdecoder);
    const network = this.#withText('grammar', (name) =>
      module._fsg_model_init(name, logmath, SETTINGS.lw, arcs.length + 1),
    );
    // The module knows one end only: all ends lead there without a word.
    const end = arcs.length;
    module._fsg_set_states(network, 0, end);
    const numbers = new Map<string, number>();
    arcs.forEach((own, from) => {
      const count = ways?.[from] ?? own.size + (final[from] ? 1 : 0);
      const share = Math.round(module._logmath_log(logmath, 1 / count));
      for (const [word, to] of own) {
        const number = numbers.get(word) ?? this.#withText(word, (text) => module._fsg_model_word_add(network, text));
        numbers.set(word, number);
        module._fsg_model_trans_add(network, from, to, share, number);
      }
      if (final[from]) module._fsg_model_null_trans_add(network, from, end, share);
    });
    return network;
  }

  /** Lends a word to the module: ASCII, closed by a zero. */
  #withText(text: string, use: (address: number) => number): number {
    const address = this.#module._malloc(text.length + 1);
    for (let index = 0; index < text.length; index += 1) this.#module.HEAP8[address + index] = text.charCodeAt(index);
    this.#module.HEAP8[address + text.length] = 0;
    const result = use(address);
    this.#module._free(address);
    return result;
  }

  #knows(word: string): boolean {
    if (this.#known.has(word)) return true;
    if (this.#decoder.lookup_word(word) === null) return false;
    this.#known.add(word);
    return true;
  }

  /**
   * Applies changed settings of the front end. The module's own method does the same, but looks for a file of the model
   * again each time: in a browser that is a request for each utterance.
   */
  #renewFrontEnd(): void {
    const { cdecoder, cacmod } = this.#decoder;
    const frontEnd = this.#module._decoder_init_fe(cdecoder);
    const features = this.#module._decoder_init_feat_s3file(cdecoder, 0);
    if (frontEnd === 0 || features === 0 || this.#module._acmod_reinit_feat(cacmod, frontEnd, features) < 0) {
      throw new ListeningError('model-missing', { detail: 'its front end could not be set up' });
    }
  }

  /** Adds how words are said, to words it knows and to new ones. Not while an utterance is open. */
  teach(pronunciations: Pronunciations): void {
    for (const [word, forms] of Object.entries(pronunciations)) {
      // The dictionary numbers the further forms of a word: word, word(2), word(3) …
      let free = 1;
      const nameOf = (): string => (free === 1 ? word : `${word}(${free})`);
      for (const form of forms) {
        while (this.#decoder.lookup_word(nameOf()) !== null && this.#decoder.lookup_word(nameOf()) !== form) free += 1;
        if (this.#decoder.lookup_word(nameOf()) === null) this.#decoder.add_words([nameOf(), form]);
      }
    }
  }
}
