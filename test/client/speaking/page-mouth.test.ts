import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PageMouth, type PageMouthState } from '../../../client/speaking/browser/page-mouth.ts';
import type { Prompt } from '../../../client/speaking/mouth.ts';

type Synthesis = NonNullable<ConstructorParameters<typeof PageMouth>[0]>;

/** No browser that tests run in has a voice: this stands for one, and does as it is told. */
class ScriptedVoice extends EventTarget {
  readonly spoken: string[] = [];
  cancelled = 0;
  behaviour: 'speaks' | 'never begins' | 'never ends' | 'fails' = 'speaks';
  voices = [
    { name: 'far', lang: 'en-US', localService: false, default: true },
    { name: 'foreign', lang: 'fr-FR', localService: true, default: false },
    { name: 'near', lang: 'en-GB', localService: true, default: false },
  ];

  getVoices() {
    return this.voices;
  }

  speak(utterance: { text: string; onstart?: () => void; onend?: () => void; onerror?: () => void }): void {
    this.spoken.push(utterance.text);
    if (this.behaviour === 'never begins') return;
    setTimeout(() => utterance.onstart?.(), 50);
    if (this.behaviour === 'speaks') setTimeout(() => utterance.onend?.(), 1_000);
    if (this.behaviour === 'fails') setTimeout(() => utterance.onerror?.(), 100);
  }

  cancel(): void {
    this.cancelled += 1;
  }
}

const prompt = (kind: Prompt['kind'], text = 'leg one, one eighteen'): Prompt => ({ id: 'p1', kind, text });

let voice: ScriptedVoice;
let states: PageMouthState[];
let mouth: PageMouth;
beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal(
    'SpeechSynthesisUtterance',
    class {
      readonly text: string;

      constructor(text: string) {
        this.text = text;
      }
    },
  );
  voice = new ScriptedVoice();
  states = [];
  mouth = new PageMouth(voice as unknown as Synthesis, (state) => states.push(state));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a mouth with the device’s own voice', () => {
  test('speaks with a voice that needs no network, and says when it is done', async () => {
    expect(mouth.state().voice).toBe('near');
    const outcome = mouth.speak(prompt('readback'));
    expect(mouth.state().speaking?.id).toBe('p1');
    await vi.advanceTimersByTimeAsync(1_000);
    expect(await outcome).toBe('spoken');
    expect(voice.spoken).toEqual(['leg one, one eighteen']);
    expect(mouth.state().speaking).toBeUndefined();
  });

  test('is cut short by a hush, a caution only by a hush that means it', async () => {
    const readback = mouth.speak(prompt('readback'));
    mouth.hush(false);
    expect(await readback).toBe('cut');
    const caution = mouth.speak(prompt('caution'));
    mouth.hush(false);
    expect(mouth.state().speaking?.kind).toBe('caution');
    mouth.hush(true);
    expect(await caution).toBe('cut');
    expect(voice.cancelled).toBe(2);
  });

  test('that forgets to say it has ended is given up after a slow reader’s time', async () => {
    voice.behaviour = 'never ends';
    const outcome = mouth.speak(prompt('readback'));
    await vi.advanceTimersByTimeAsync(10_000);
    expect(await outcome).toBe('spoken');
  });

  test.each(['never begins', 'fails'] as const)(
    'that %s is not waited for again: prompts are shown from then on',
    async (behaviour) => {
      voice.behaviour = behaviour;
      const outcome = mouth.speak(prompt('readback'));
      await vi.advanceTimersByTimeAsync(5_000);
      expect(await outcome).toBe('spoken');
      expect(mouth.state().voice).toBeUndefined();
      expect(await mouth.speak(prompt('readback', 'again'))).toBe('spoken');
      expect(voice.spoken).toHaveLength(1);
    },
  );

  test('that comes late is taken when it comes', () => {
    voice.voices = [];
    const late = new PageMouth(voice as unknown as Synthesis, () => undefined);
    expect(late.state().voice).toBeUndefined();
    voice.voices = [{ name: 'late', lang: 'en-US', localService: true, default: true }];
    voice.dispatchEvent(new Event('voiceschanged'));
    expect(late.state().voice).toBe('late');
  });
});

describe('a mouth without a voice', () => {
  beforeEach(() => {
    mouth = new PageMouth(undefined, (state) => states.push(state));
  });

  test('shows what it would say, and goes on at once', async () => {
    expect(await mouth.speak(prompt('readback'))).toBe('spoken');
    expect(states.some((state) => state.speaking?.text === 'leg one, one eighteen')).toBe(true);
  });

  test('keeps a caution before the eyes before it counts as given', async () => {
    let outcome: string | undefined;
    void mouth.speak(prompt('caution')).then((said) => {
      outcome = said;
    });
    await vi.advanceTimersByTimeAsync(1_400);
    expect(outcome).toBeUndefined();
    await vi.advanceTimersByTimeAsync(200);
    expect(outcome).toBe('spoken');
  });

  test('a caution that is stopped was not given', async () => {
    const outcome = mouth.speak(prompt('caution'));
    mouth.hush(true);
    expect(await outcome).toBe('cut');
  });
});
