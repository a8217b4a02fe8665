import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { type Heard, heardAsRest, mayBeHalf, maySoonGoOn, type Said } from './continuation.ts';
import type { HeardSpeech, HearingParts } from './hearing-parts.ts';
import { LONGEST_PAUSE_MS, LOOK_MS, pauseAfter } from './pause.ts';
import { maySayMore, saysTooLittle } from './recogniser/gate.ts';
import { Recogniser } from './recogniser/recogniser.ts';
import { givenUp, type Recognition } from './recogniser/recognition.ts';
import { type Recognising, TwoModels } from './recogniser/two-models.ts';
import { type Cleaned, CleanSound } from './sound/clean-sound.ts';
import { FRAME } from './sound/denoiser.ts';
import { Endpointer, isSpeech, type Turn } from './sound/endpointer.ts';
import { levelOf } from './sound/level.ts';
import { OwnVoice } from './sound/own-voice.ts';
import { SpeechClock } from './sound/speech-clock.ts';
import { UtteranceSound } from './sound/utterance-sound.ts';

const FRAME_MS = 10;
/**
 * After so many frames of speech that fit so badly nobody will make a sentence of it: talk goes on for as long as it may,
 * and to follow it to its end, and look at it again, cost more than all that is said to the program.
 */
const TALK = { frames: 800, margin: -25 } as const;

/** So many words are a bare number whose last digit is yet to come: what is soft behind more is somebody else sooner. */
const BARE = 2;

/** Sound in, utterances out: noise taken out, speech found, recognised, gated. Blocks while it computes. */
export class Hearing {
  readonly #parts: HearingParts;
  readonly #recogniser: Recognising;
  readonly #clean: CleanSound;
  readonly #endpointer = new Endpointer();
  readonly #clock = new SpeechClock();
  #waiting: Float32Array = new Float32Array(0);
  readonly #sound: UtteranceSound;
  #onlyUrgent = false;
  /** What the utterance that is open was given up as. */
  #givenUp: Recognition | undefined;
  #grammar: string | undefined;
  #expectationOfSpeech: Expectation = { readings: [] };
  #last: Said | undefined;
  readonly #own: OwnVoice;
  #pauses = 0;
  #startedMs = 0;
  #hangoverMs = LONGEST_PAUSE_MS;
  #looked = false;
  /** Whether a number was open at the last look. */
  #grows = false;
  #computedMs = 0;
  #expectation: Expectation = { readings: [] };
  #heeds: 'everything' | 'urgent' = 'everything';
  #spoken = '';
  #grammarStale = true;
  /** The unit of pressure for which it was built; null before it was. */
  #everythingIn: string | undefined | null = null;

  private constructor(parts: HearingParts, recogniser: Recognising) {
    this.#parts = parts;
    this.#recogniser = recogniser;
    this.#clean = new CleanSound(parts.rnnoise);
    this.#own = new OwnVoice(parts.voiceDb);
    this.#sound = new UtteranceSound((samples) => recogniser.feed(samples));
  }

  /** Loads the model and builds the grammars. @throws ListeningError `model-missing`, `grammar-unknown-word` */
  static async open(parts: HearingParts): Promise<Hearing> {
    const { speech, model, second, pronunciations, gates, standsFor } = parts;
    const first = await Recogniser.open(speech, model, pronunciations, gates[model.id], standsFor);
    const recogniser =
      second === undefined
        ? first
        : new TwoModels(first, await Recogniser.open(speech, second, pronunciations, gates[second.id], standsFor));
    const hearing = new Hearing(parts, recogniser);
    hearing.#setEverything();
    return hearing;
  }

  /** What is expected from the next utterance on. */
  expect(expectation: Expectation): void {
    this.#expectation = expectation;
    this.#grammarStale = true;
    if (!this.#endpointer.open) this.#setEverything();
  }

  /** While the mouth speaks only the urgent words are heeded. @param spoken what it says */
  heed(what: 'everything' | 'urgent', spoken = ''): void {
    if (what === this.#heeds && spoken === this.#spoken) return;
    this.#heeds = what;
    this.#spoken = spoken;
    this.#grammarStale = true;
  }

  /** The mouth begins to play this now; nothing: it is quiet. What of it comes back is taken out. 16 kHz, -1…1. */
  plays(samples: Float32Array): void {
    this.#clean.plays(samples);
  }

  get speaking(): boolean {
    return this.#endpointer.open;
  }

  /** Level of the latest frame and of the quiet around it, in dBFS. */
  get level(): { readonly db: number; readonly floorDb: number } {
    return { db: this.#clock.levelDb, floorDb: this.#clock.floorDb };
  }

  /** Share of real time that computing took for all sound so far. */
  get load(): number {
    return this.#clock.load;
  }

  /** How much sound has come. */
  get audioMs(): number {
    return this.#clock.audioMs;
  }

  /** @param samples 16 kHz mono, -1…1, any number of them; 10 to 20 ms at a time is best */
  push(samples: Float32Array): HeardSpeech[] {
    const all = new Float32Array(this.#waiting.length + samples.length);
    all.set(this.#waiting);
    all.set(samples, this.#waiting.length);
    const heard: HeardSpeech[] = [];
    let at = 0;
    for (; at + FRAME <= all.length; at += FRAME) heard.push(...this.#frame(all.subarray(at, at + FRAME)));
    this.#waiting = all.slice(at);
    return heard;
  }

  /** The sound is over: what is still open is closed, as if silence followed. */
  flush(): HeardSpeech[] {
    const heard: HeardSpeech[] = [];
    const silence = new Float32Array(FRAME);
    // Long enough for what is still in the denoiser to come out, for speech to be noticed, and for the longest pause.
    const most = (LONGEST_PAUSE_MS + 300) / FRAME_MS;
    for (let count = 0; count < most; count += 1) heard.push(...this.#frame(silence, this.#clean.pushSilence()));
    this.#last = undefined;
    return heard;
  }

  close(): void {
    this.#recogniser.close();
    this.#clean.close();
  }

  #frame(frame: Float32Array, cleaned?: Cleaned): HeardSpeech[] {
    const began = this.#parts.now();
    const { samples, speech } = cleaned ?? this.#clean.push(frame);
    const open = this.#endpointer.open;
    const place = open ? this.#sound.placeOf(samples, isSpeech(speech), this.#grows) : 'near';
    const turn = this.#endpointer.step(place === 'far' ? 0 : speech, this.#hangoverMs);
    this.#clock.frame(levelOf(frame), open, turn === 'speaking');
    if (turn === 'began') this.#begin();
    if (place === 'nearer') this.#beginNearer();
    if (turn !== 'quiet' && this.#givenUp === undefined) this.#follow(samples, place);
    this.#sound.remember(samples);
    this.#lookAt(turn);
    const heard = turn === 'ended' ? this.#end() : undefined;
    const spent = this.#parts.now() - began;
    this.#clock.computed(spent);
    if (turn !== 'quiet') this.#computedMs += spent;
    // The mouth's own voice is no sentence that anybody should be asked to say again.
    return heard === undefined || (this.#onlyUrgent && !heard.accepted) ? [] : [this.#timed(heard)];
  }

  /** All that can be said, with numbers as large as the chosen units make them. Not while an utterance is open. */
  #setEverything(): void {
    const { units } = this.#expectation;
    const chosen = units?.pressure;
    if (chosen === this.#everythingIn) return;
    this.#everythingIn = chosen;
    const all = this.#parts.grammarFor('all', units);
    if (all !== undefined) this.#recogniser.setEverything(all);
  }

  #begin(): void {
    if (this.#grammarStale) {
      this.#setEverything();
      const urgent = this.#heeds === 'urgent';
      this.#grammar = this.#parts.grammarFor(urgent ? { urgentWhile: this.#spoken } : this.#expectation);
      this.#recogniser.setExpected(this.#grammar, urgent);
      this.#grammarStale = false;
    }
    this.#expectationOfSpeech = this.#expectation;
    this.#onlyUrgent = this.#heeds === 'urgent';
    this.#computedMs = 0;
    this.#beginSpeech();
    this.#sound.begin();
  }

  /** Somebody nearer than who was heard so far: what they say begins here. */
  #beginNearer(): void {
    this.#sound.settle();
    if (this.#givenUp === undefined) this.#recogniser.drop();
    this.#sound.beginNearer(this.#endpointer.speechFrames);
    this.#endpointer.beginAnew();
    this.#beginSpeech();
  }

  #beginSpeech(): void {
    this.#startedMs = Math.max(0, this.#clock.audioMs - 100);
    this.#clock.beginSpeech();
    this.#pauses = 0;
    this.#grows = false;
    this.#givenUp = undefined;
    this.#lookLater();
    this.#recogniser.begin();
  }

  #follow(samples: Float32Array, place: ReturnType<UtteranceSound['placeOf']>): void {
    // A soft digit is damped once the look at the pause before it has told that no number is open.
    this.#sound.take(samples, this.#endpointer.pauseMs < LOOK_MS ? 'near' : place, this.#endpointer.pauseMs === 0);
    const { speechFrames } = this.#endpointer;
    if (speechFrames !== TALK.frames || this.#endpointer.pauseMs > 0 || this.#onlyUrgent) return;
    const soFar = this.#recogniser.partial(speechFrames);
    if (soFar.margin >= TALK.margin) return;
    this.#recogniser.drop();
    this.#givenUp = givenUp(soFar);
  }

  #lookAt(turn: Turn): void {
    if (this.#givenUp !== undefined) return;
    if (turn === 'speaking' && this.#looked) this.#lookLater();
    if (turn !== 'pausing' || this.#looked || this.#endpointer.pauseMs < LOOK_MS) return;
    this.#looked = true;
    this.#pauses += 1;
    this.#sound.settle();
    const soFar = this.#recogniser.partial(this.#endpointer.speechFrames);
    const expectation = this.#expectationOfSpeech;
    const isWaited = expectation.readings.length > 0;
    const ending = this.#parts.endingOf(soFar.text, expectation);
    // An urgent word is taken though it fits badly.
    const fits = soFar.fits || this.#onlyUrgent;
    this.#hangoverMs = pauseAfter({ ...soFar, fits }, ending, { pauses: this.#pauses, isWaited });
    const words = soFar.text === '' ? 0 : soFar.text.split(' ').length;
    this.#grows = isWaited && words > 0 && words <= BARE && this.#hangoverMs === LONGEST_PAUSE_MS;
  }

  #lookLater(): void {
    this.#looked = false;
    this.#hangoverMs = LONGEST_PAUSE_MS;
  }

  #end(): Heard {
    if (this.#givenUp !== undefined) {
      this.#last = undefined;
      return this.#givenUp;
    }
    this.#sound.settle();
    const { speechFrames } = this.#endpointer;
    const alone = this.#orFromTheStart(
      this.#sound.spokeOnSoftly
        ? this.#withoutOthers(speechFrames)
        : this.#judged(this.#recogniser.end(speechFrames), speechFrames),
    );
    const last = this.#last;
    const goesOn = !this.#onlyUrgent && maySoonGoOn(last, this.#startedMs);
    const heard = this.#ofWhom(goesOn ? this.#goneOn(last, alone) : alone);
    const { text, accepted } = heard;
    this.#last = {
      text,
      accepted,
      startedMs: this.#startedMs,
      endedMs: this.#clock.lastSpeechMs,
      sound: this.#sound.given,
      speechFrames,
      ending: mayBeHalf(heard, this.#expectationOfSpeech)
        ? 'open'
        : this.#parts.endingOf(text, this.#expectationOfSpeech),
      grammar: this.#grammar,
      expectation: this.#expectationOfSpeech,
      loudestDb: this.#sound.loudestDb,
    };
    return heard;
  }

  #judged(recognition: Recognition, speechFrames: number): Heard {
    const { text, margin } = recognition;
    const needed = this.#onlyUrgent ? this.#parts.urgentMargin(text) : undefined;
    const fits = needed === undefined ? recognition.accepted : margin >= needed;
    return {
      ...recognition,
      accepted: fits && !saysTooLittle(text, speechFrames),
      doubtful: recognition.doubtful || maySayMore(text, speechFrames),
    };
  }

  /** What somebody farther off than the one who was understood last may have said is asked. */
  #ofWhom(heard: Heard): Heard {
    const { loudestDb } = this.#sound;
    const { audioMs } = this.#clock;
    // A soft digit of the speaker's own, or a word of somebody behind.
    if (this.#sound.hasSoftWord || !this.#own.mayHaveSaid(loudestDb, audioMs)) return { ...heard, doubtful: true };
    if (heard.accepted && !heard.doubtful) this.#own.understood(loudestDb, audioMs);
    return heard;
  }

  /** The sentence without the voice behind it that was taken for the speaker's own, until it spoke on. */
  #withoutOthers(speechFrames: number): Heard {
    this.#recogniser.drop();
    const own = speechFrames - this.#sound.withoutSoft();
    return this.#again(this.#sound.given, own);
  }

  /** Where nothing was understood from where a nearer voice seemed to begin, from the very start. */
  #orFromTheStart(heard: Heard): Heard {
    if (heard.accepted || !this.#sound.mayHaveBegunSoftly) return heard;
    const speechFrames = this.#sound.joinFarther();
    return this.#again(this.#sound.given, speechFrames + this.#endpointer.speechFrames);
  }

  /** What may be the rest of a number, whose first part was given already. */
  #goneOn(last: Said, alone: Heard): Heard {
    const { speechFrames } = this.#endpointer;
    const both = [...last.sound, ...this.#sound.given];
    const rest = { alone, speechFrames, loudestDb: this.#sound.loudestDb };
    const goesOn = (words: string): boolean => this.#parts.goesOnWith(last.text, words, last.expectation);
    const { heard, ofBoth } = heardAsRest(last, rest, goesOn, () =>
      this.#under(last.grammar, both, last.speechFrames + speechFrames),
    );
    if (ofBoth) {
      this.#sound.put(both);
      this.#startedMs = last.startedMs;
    }
    return heard;
  }

  /** Some sound under another grammar than this moment's. */
  #under(grammar: string | undefined, sound: readonly Float32Array[], speechFrames: number): Heard {
    this.#recogniser.setExpected(grammar);
    this.#grammarStale = true;
    return this.#again(sound, speechFrames);
  }

  #again(sound: readonly Float32Array[], speechFrames: number): Heard {
    this.#recogniser.begin();
    for (const block of sound) this.#recogniser.feed(block);
    return this.#judged(this.#recogniser.end(speechFrames), speechFrames);
  }

  #timed(heard: Heard): HeardSpeech {
    const endedMs = this.#clock.lastSpeechMs;
    return {
      ...heard,
      startedMs: this.#startedMs,
      endedMs,
      verdictMs: this.#clock.busyUntilMs - endedMs,
      behindPauseMs: this.#clock.busyUntilMs - this.#clock.audioMs,
      realTimeFactor: this.#computedMs / Math.max(FRAME_MS, this.#clock.audioMs - this.#startedMs),
    };
  }
}
