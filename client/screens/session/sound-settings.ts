import { MODEL_CHOICES, type ModelChoice } from '../../listening/recogniser/speech-module.ts';
import { keptSettings, oneOf } from './kept-settings.ts';

/** How this device listens and speaks. Kept on the device only. */
export interface SoundSettings {
  /** The recogniser: our own, or the browser's, which may send the sound away. */
  readonly ear: 'offline' | 'browser';
  /** With the browser's: only where it promises that the sound stays on the device. */
  readonly onlyHere: boolean;
  /** The offline recogniser's acoustic models. */
  readonly models: ModelChoice;
  /** When what is said counts: always, while a key is held, or after a word that wakes it. */
  readonly attention: Attention;
  /** The user's own key for the wake word; empty: none. */
  readonly wakeKey: string;
  /** Whether prompts are spoken, or shown only. */
  readonly voice: 'spoken' | 'silent';
  /** How fast prompts are spoken, 1 as the voice has it. */
  readonly rate: number;
}

export type Attention = 'always' | 'push' | 'wake';

const PLACE = 'readback.sound';

const AT_FIRST: SoundSettings = {
  ear: 'offline',
  onlyHere: false,
  models: 'both',
  attention: 'always',
  wakeKey: '',
  voice: 'spoken',
  rate: 1,
};

/** What was chosen on this device, each setting that is missing or damaged as it is at first. */
export function readSoundSettings(): SoundSettings {
  const kept = keptSettings(PLACE);
  return {
    ear: oneOf(kept['ear'], ['offline', 'browser'], AT_FIRST.ear),
    onlyHere: kept['onlyHere'] === true,
    models: oneOf(kept['models'], MODEL_CHOICES, AT_FIRST.models),
    attention: oneOf(kept['attention'], ['always', 'push', 'wake'], AT_FIRST.attention),
    wakeKey: typeof kept['wakeKey'] === 'string' ? kept['wakeKey'] : '',
    voice: oneOf(kept['voice'], ['spoken', 'silent'], AT_FIRST.voice),
    rate: typeof kept['rate'] === 'number' && kept['rate'] >= 0.5 && kept['rate'] <= 2 ? kept['rate'] : 1,
  };
}

export function keepSoundSettings(settings: SoundSettings): void {
  localStorage.setItem(PLACE, JSON.stringify(settings));
}
