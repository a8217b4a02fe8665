import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PageMouth, type PageMouthState } from '../../../client/speaking/browser/page-mouth.ts';
import type { Prompt } from '../../../client/speaking/mouth.ts';
import { ScriptedVoice, stubUtterances } from '../../contract/scripted-voice.ts';

const prompt = (kind: Prompt['kind'], text = 'leg one, one eighteen'): Prompt => ({ id: 'p1', kind, text });

let voice: ScriptedVoice;
let states: PageMouthState[];
let mouth: PageMouth;
beforeEach(() => {
  vi.useFakeTimers();
  stubUtterances();
  voice = new ScriptedVoice();
  states = [];
  mouth = new PageMouth(voice.asBrowser(), (state) => states.push(state));
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
      expect(await outcome).toBe('shown');
      expect(mouth.state().voice).toBeUndefined();
      expect(await mouth.speak(prompt('readback', 'again'))).toBe('shown');
      expect(voice.spoken).toHaveLength(1);
    },
  );

  test('that comes late is taken when it comes', () => {
    voice.voices = [];
    const late = new PageMouth(voice.asBrowser(), () => undefined);
    expect(late.state().voice).toBeUndefined();
    voice.voices = [{ name: 'late', lang: 'en-US', localService: true, default: true }];
    voice.dispatchEvent(new Event('voiceschanged'));
    expect(late.state().voice).toBe('late');
  });
});

describe('a mouth that may fetch a voice', () => {
  const said: string[] = [];
  const fetched = {
    name: 'fetched',
    say: (text: string) => {
      said.push(text);
      return { outcome: Promise.resolve('spoken' as const), cut: () => undefined };
    },
  };
  let loads = 0;
  const loadVoice = async () => {
    loads += 1;
    return fetched;
  };
  beforeEach(() => {
    loads = 0;
    said.length = 0;
  });

  test('does not where the device has one', async () => {
    const own = new PageMouth(voice.asBrowser(), () => undefined, { loadVoice });
    await vi.advanceTimersByTimeAsync(5_000);
    expect([loads, own.state().voice]).toEqual([0, 'near']);
  });

  test('does where the device has only voices that need the network, once', async () => {
    voice.voices = voice.voices.slice(0, 2);
    const without = new PageMouth(voice.asBrowser(), () => undefined, { loadVoice });
    await vi.advanceTimersByTimeAsync(5_000);
    without.prime();
    await vi.advanceTimersByTimeAsync(0);
    expect([loads, without.state().voice]).toEqual([1, 'fetched']);
    await without.speak(prompt('step', 'leg two'));
    expect(said).toEqual(['leg two']);
  });

  test('waits for the one that is on its way, and speaks with it what was to be said before', async () => {
    voice.voices = [];
    let come: (voice: typeof fetched) => void = () => undefined;
    const slow = new PageMouth(voice.asBrowser(), () => undefined, {
      loadVoice: () => new Promise((resolve) => (come = resolve)),
    });
    let outcome: string | undefined;
    void slow.speak(prompt('caution', 'live parts')).then((how) => (outcome = how));
    await vi.advanceTimersByTimeAsync(6_000);
    expect([outcome, said]).toEqual([undefined, []]);
    come(fetched);
    await vi.advanceTimersByTimeAsync(0);
    expect([outcome, said]).toEqual(['spoken', ['live parts']]);
  });

  test('tells that a voice is on its way for as long as it is, and not when there is one, or none', async () => {
    voice.voices = [];
    let come: (voice: typeof fetched) => void = () => undefined;
    const told: boolean[] = [];
    const slow = new PageMouth(voice.asBrowser(), ({ isComing }) => told.push(isComing), {
      loadVoice: () => new Promise((resolve) => (come = resolve)),
    });
    await vi.advanceTimersByTimeAsync(30_000);
    expect([slow.state().isComing, told.at(-1)]).toEqual([true, true]);
    come(fetched);
    await vi.advanceTimersByTimeAsync(0);
    expect([slow.state().isComing, told.at(-1)]).toEqual([false, false]);
    const none = new PageMouth(voice.asBrowser(), () => undefined);
    expect(none.state().isComing).toBe(true);
    await vi.advanceTimersByTimeAsync(11_000);
    expect(none.state().isComing).toBe(false);
    expect(mouth.state().isComing).toBe(false);
    const failing = new PageMouth(voice.asBrowser(), ({ isComing }) => told.push(isComing), {
      loadVoice: () => Promise.reject(new Error('gone')),
    });
    await vi.advanceTimersByTimeAsync(3_000);
    expect([failing.state().isComing, told.at(-1)]).toEqual([false, false]);
    const silent = new PageMouth(undefined, () => undefined, { manner: () => ({ silent: true, rate: 1 }) });
    expect(silent.state().isComing).toBe(false);
  });

  test('shows what it was to say where the voice does not come in time, and lets it be cut while it waits', async () => {
    const never = new PageMouth(undefined, () => undefined, { loadVoice: () => new Promise(() => undefined) });
    const cut = never.speak(prompt('caution'));
    never.hush(true);
    expect(await cut).toBe('cut');
    let outcome: string | undefined;
    void never.speak(prompt('caution', 'live parts')).then((how) => (outcome = how));
    await vi.advanceTimersByTimeAsync(11_000);
    expect(outcome).toBeUndefined();
    await vi.advanceTimersByTimeAsync(5_000);
    expect(outcome).toBe('shown');
  });

  test('does when the device’s own fails', async () => {
    voice.behaviour = 'fails';
    const failing = new PageMouth(voice.asBrowser(), () => undefined, { loadVoice });
    const outcome = failing.speak(prompt('readback'));
    await vi.advanceTimersByTimeAsync(5_000);
    expect([await outcome, loads, failing.state().voice]).toEqual(['shown', 1, 'fetched']);
  });

  test('does not while it is to be silent, and shows prompts where none can be had', async () => {
    const manner = () => ({ silent: true, rate: 1 });
    new PageMouth(undefined, () => undefined, { loadVoice, manner });
    await vi.advanceTimersByTimeAsync(5_000);
    expect(loads).toBe(0);
    const warned = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    const none = new PageMouth(undefined, () => undefined, { loadVoice: () => Promise.reject(new Error('404')) });
    await vi.advanceTimersByTimeAsync(5_000);
    expect(warned).toHaveBeenCalledOnce();
    expect(await none.speak(prompt('readback'))).toBe('shown');
    warned.mockRestore();
  });

  test('speaks as fast as is wanted', async () => {
    const fast = new PageMouth(voice.asBrowser(), () => undefined, { manner: () => ({ silent: false, rate: 1.5 }) });
    void fast.speak(prompt('readback'));
    expect(voice.utterances[0]?.rate).toBe(1.5);
    await vi.advanceTimersByTimeAsync(1_000);
  });
});

describe('a mouth without a voice', () => {
  beforeEach(() => {
    mouth = new PageMouth(undefined, (state) => states.push(state));
  });

  test('shows what it would say, and goes on at once', async () => {
    expect(await mouth.speak(prompt('readback'))).toBe('shown');
    expect(states.some((state) => state.speaking?.text === 'leg one, one eighteen')).toBe(true);
  });

  // Brysbaert 2019 (doi 10.1016/j.jml.2019.104047), from memory: most adults read 175 to 300 words a minute silently.
  test.each([5, 35])('keeps a caution of %i words before the eyes until a slow reader has read it', async (words) => {
    let outcome: string | undefined;
    void mouth.speak(prompt('caution', Array(words).fill('live').join(' '))).then((said) => {
      outcome = said;
    });
    await vi.advanceTimersByTimeAsync((words * 60_000) / 175);
    expect(outcome).toBeUndefined();
    await vi.advanceTimersByTimeAsync(1_001);
    expect(outcome).toBe('shown');
  });

  test('a caution that is stopped was not given', async () => {
    const outcome = mouth.speak(prompt('caution'));
    mouth.hush(true);
    expect(await outcome).toBe('cut');
  });
});
