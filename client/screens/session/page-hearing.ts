import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { BrowserEar, browserRecogniser } from '../../listening/browser/browser-ear.ts';
import { HeadsetButton } from '../../listening/browser/headset-button.ts';
import { MicrophoneEar } from '../../listening/browser/microphone-ear.ts';
import type { MicrophoneState, PageEar } from '../../listening/browser/page-ear.ts';
import { readWakeFile } from '../../listening/browser/wake-files.ts';
import { WakeWord } from '../../listening/browser/wake-word.ts';
import type { Ear, Utterance } from '../../listening/ear.ts';
import { WAKE_WORD } from '../../words/pages/sound-words.ts';
import { type Attention, readSoundSettings } from './sound-settings.ts';

type Callbacks = Parameters<Ear['start']>[0];

export interface HearingState extends MicrophoneState {
  readonly attention: Attention;
  /** Whether what is said counts just now. */
  readonly attending: boolean;
  /** What was chosen and cannot be had, and what is done instead. */
  readonly instead?: string;
}

/** After the wake word, or a press of a headset's button, so long is waited for something to be said. */
const ATTENDS_MS = 8_000;

/** The ear of a page as it was chosen, and when what it hears counts: always, on a key, or after a wake word. */
export class PageHearing {
  readonly #changed: () => void;
  /** Attention begins: an earcon, and the mouth gives way. */
  readonly #attentive: () => void;
  #ear: PageEar;
  #attention: Attention = 'always';
  #attending = true;
  #instead: string | undefined;
  #expectation: Expectation = { readings: [] };
  #heeds: 'everything' | 'urgent' = 'everything';
  #spoken = '';
  #givesSound = false;
  #closing: ReturnType<typeof setTimeout> | undefined;
  #diverted: ((utterance: Utterance) => void) | undefined;
  #wakeWord: WakeWord | undefined;
  #headset: HeadsetButton | undefined;

  constructor(changed: () => void, attentive: () => void) {
    this.#changed = changed;
    this.#attentive = attentive;
    this.#ear = this.#makeEar();
  }

  state(): HearingState {
    return {
      ...this.#ear.state(),
      attention: this.#attention,
      attending: this.#attending,
      ...(this.#instead !== undefined && { instead: this.#instead }),
    };
  }

  expect(expectation: Expectation): void {
    this.#expectation = expectation;
    this.#ear.expect(expectation);
  }

  heed(what: 'everything' | 'urgent', spoken = ''): void {
    this.#heeds = what;
    this.#spoken = spoken;
    this.#ear.heed(what, spoken);
  }

  /** Whether each utterance brings its sound along, where this ear has it. */
  giveSound(on: boolean): void {
    this.#givesSound = on;
    if (this.#ear instanceof MicrophoneEar) this.#ear.giveSound(on);
  }

  /** With the settings of this moment. To be called from a tap or a key. */
  async start(callbacks: Callbacks): Promise<void> {
    await this.stop();
    this.#ear = this.#makeEar();
    this.#ear.expect(this.#expectation);
    this.#ear.heed(this.#heeds, this.#spoken);
    this.giveSound(this.#givesSound);
    this.#instead = undefined;
    this.#turnTo(readSoundSettings().attention);
    await this.#ear.start({
      ...callbacks,
      onUtterance: (utterance) => {
        if (this.#closing !== undefined) this.#attend(false);
        if (this.#diverted !== undefined) this.#diverted(utterance);
        else callbacks.onUtterance(utterance);
      },
    });
    if (this.#attention === 'wake') await this.#startWakeWord();
  }

  /** What the mouth plays, so that it is not heard as if somebody said it. */
  plays(samples: Float32Array): void {
    if (this.#ear instanceof MicrophoneEar) this.#ear.plays(samples);
  }

  async stop(): Promise<void> {
    this.#wakeWord?.end();
    this.#wakeWord = undefined;
    this.#headset?.end();
    this.#headset = undefined;
    await this.#ear.stop();
    this.#turnTo('always');
  }

  /** The microphone's sound; undefined while it is off, or where the browser keeps it to itself. */
  sound(): MessagePort | undefined {
    return this.#ear instanceof MicrophoneEar ? this.#ear.sound() : undefined;
  }

  /** What is said goes there and not to the visit, until it is given back. */
  divert(to: ((utterance: Utterance) => void) | undefined): void {
    this.#diverted = to;
    // A sound check is a time of attention, whatever else is chosen.
    if (this.#attention !== 'always') this.#attend(to !== undefined, false);
  }

  /** A key went down or came up: while it is down, what is said counts. */
  hold(down: boolean): void {
    if (this.#attention === 'always' || down === this.#attending) return;
    this.#attend(down);
  }

  /** A button that only tells that it was pressed: from now on for one sentence, or no more. */
  press(): void {
    if (this.#attention === 'always') return;
    if (this.#attending) this.#attend(false);
    else this.#attendForOne();
  }

  #makeEar(): PageEar {
    const { ear, onlyHere, models } = readSoundSettings();
    return ear === 'offline'
      ? new MicrophoneEar(this.#changed, models)
      : new BrowserEar({
          recogniser: browserRecogniser(),
          onlyHere,
          changed: this.#changed,
          now: () => performance.now(),
        });
  }

  #turnTo(attention: Attention): void {
    this.#attention = attention;
    if (attention === 'always') {
      this.#headset?.end();
      this.#headset = undefined;
    } else this.#headset ??= new HeadsetButton(() => this.press());
    this.#attend(attention === 'always', false);
  }

  #attendForOne(): void {
    this.#attend(true);
    this.#closing = setTimeout(() => this.#attend(false), ATTENDS_MS);
  }

  #attend(on: boolean, tell = true): void {
    clearTimeout(this.#closing);
    this.#closing = undefined;
    this.#attending = on;
    if (on && tell) this.#attentive();
    this.#ear.attend(on);
    this.#changed();
  }

  async #startWakeWord(): Promise<void> {
    if (this.#ear.state().ear === 'failed') return;
    const [model, keyword] = await Promise.all([readWakeFile('model'), readWakeFile('keyword')]);
    const key = readSoundSettings().wakeKey;
    const sound = this.sound();
    if (sound === undefined) return this.#doWithoutWakeWord(WAKE_WORD.needsOffline);
    if (model === undefined || keyword === undefined) return this.#doWithoutWakeWord(WAKE_WORD.filesMissing);
    this.#wakeWord = new WakeWord(
      { key, model, keyword },
      sound,
      () => this.#attendForOne(),
      (detail) => this.#doWithoutWakeWord(detail),
    );
  }

  #doWithoutWakeWord(detail: string): void {
    this.#wakeWord = undefined;
    this.#instead = WAKE_WORD.cannot(detail);
    this.#turnTo('always');
  }
}
