import type { Saying, Voice } from './voice.ts';

/** A voice that has not begun by then has failed. */
const BEGINS_WITHIN_MS = 4_000;
/** A slow voice, with room to spare; engines now and then forget to say that they have ended. */
const MS_A_CHARACTER = 120;

/** A voice of the device itself: one that needs the network dies when it is gone, and in long sentences. */
export class DeviceVoice implements Voice {
  readonly name: string;
  readonly #synthesis: SpeechSynthesis;
  readonly #voice: SpeechSynthesisVoice;

  constructor(synthesis: SpeechSynthesis, voice: SpeechSynthesisVoice) {
    this.#synthesis = synthesis;
    this.#voice = voice;
    this.name = voice.name;
  }

  say(text: string, rate: number): Saying {
    const utterance = new SpeechSynthesisUtterance(text);
    utterance.voice = this.#voice;
    utterance.lang = this.#voice.lang;
    utterance.rate = rate;
    const outcome = new Promise<'spoken' | 'failed'>((resolve) => {
      let watch = setTimeout(() => resolve('failed'), BEGINS_WITHIN_MS);
      const settle = (how: 'spoken' | 'failed') => {
        clearTimeout(watch);
        resolve(how);
      };
      utterance.onstart = () => {
        clearTimeout(watch);
        watch = setTimeout(() => resolve('spoken'), BEGINS_WITHIN_MS + (text.length * MS_A_CHARACTER) / rate);
      };
      utterance.onend = () => settle('spoken');
      utterance.onerror = () => settle('failed');
    });
    this.#synthesis.speak(utterance);
    return { outcome, cut: () => this.#synthesis.cancel() };
  }
}

/** The English voice of the device that it would take itself, else the first; undefined where all need the network. */
export function chooseDeviceVoice(synthesis: SpeechSynthesis | undefined): DeviceVoice | undefined {
  const english = synthesis?.getVoices().filter((voice) => voice.lang.startsWith('en') && voice.localService);
  const voice = english?.find((one) => one.default) ?? english?.[0];
  return synthesis === undefined || voice === undefined ? undefined : new DeviceVoice(synthesis, voice);
}
