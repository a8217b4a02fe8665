import { vi } from 'vitest';
import type { PageMouth } from '../../client/speaking/browser/page-mouth.ts';

type Synthesis = NonNullable<ConstructorParameters<typeof PageMouth>[0]>;

interface ScriptedUtterance {
  readonly text: string;
  readonly rate?: number;
  readonly voice?: { readonly name: string };
  onstart?: () => void;
  onend?: () => void;
  onerror?: () => void;
}

/** No browser that tests run in has a voice: this stands for the device's, and does as it is told. */
export class ScriptedVoice extends EventTarget {
  readonly utterances: ScriptedUtterance[] = [];
  cancelled = 0;
  behaviour: 'speaks' | 'never begins' | 'never ends' | 'fails' = 'speaks';
  voices = [
    { name: 'far', lang: 'en-US', localService: false, default: true },
    { name: 'foreign', lang: 'fr-FR', localService: true, default: false },
    { name: 'near', lang: 'en-GB', localService: true, default: false },
  ];

  get spoken(): readonly string[] {
    return this.utterances.map(({ text }) => text);
  }

  asBrowser(): Synthesis {
    return this as unknown as Synthesis;
  }

  getVoices() {
    return this.voices;
  }

  speak(utterance: ScriptedUtterance): void {
    this.utterances.push(utterance);
    if (this.behaviour === 'never begins') return;
    setTimeout(() => utterance.onstart?.(), 50);
    if (this.behaviour === 'speaks') setTimeout(() => utterance.onend?.(), 1_000);
    if (this.behaviour === 'fails') setTimeout(() => utterance.onerror?.(), 100);
  }

  cancel(): void {
    this.cancelled += 1;
  }
}

/** The browser's own class for what is to be spoken, which Node has not. */
export function stubUtterances(): void {
  vi.stubGlobal(
    'SpeechSynthesisUtterance',
    class {
      readonly text: string;

      constructor(text: string) {
        this.text = text;
      }
    },
  );
}
