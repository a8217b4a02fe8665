import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { BrowserEar } from '../../../client/listening/browser/browser-ear.ts';
import type { EarFault, Utterance } from '../../../client/listening/ear.ts';
import { URGENT_WORDS } from '../../../grammar/vocabulary/urgent-words.ts';
import { type Language, type Script, ScriptedRecogniser } from '../../contract/scripted-recogniser.ts';

// The events are made by hand, shaped as the W3C's Web Speech API says (https://webaudio.github.io/web-speech-api/).

let utterances: Utterance[];
let faults: EarFault[];
let script: Script;
beforeEach(() => {
  vi.useFakeTimers();
  utterances = [];
  faults = [];
});
afterEach(() => {
  vi.useRealTimers();
});

async function listening(options: { begins?: boolean; language?: Language; onlyHere?: boolean } = {}) {
  script = ScriptedRecogniser.fresh(options);
  const ear = new BrowserEar({
    recogniser: script.asBrowser(),
    onlyHere: options.onlyHere ?? false,
    changed: () => undefined,
    now: () => Date.now(),
  });
  const started = ear.start({
    onUtterance: (utterance) => utterances.push(utterance),
    onFault: (fault) => faults.push(fault),
  });
  await vi.advanceTimersByTimeAsync(4_100);
  await started;
  return ear;
}

describe('what the browser’s recogniser heard', () => {
  test('carries its other hypotheses on to the matcher, best first and none twice', async () => {
    await listening();
    script.current().say(['leg one 118', 'leg on 118', 'leg one 118', 'leg won 118']);
    expect(utterances[0]).toMatchObject({ text: 'leg one 118', alternatives: ['leg on 118', 'leg won 118'] });
    expect(script.current().maxAlternatives).toBe(5);
  });

  test('is delivered once, however often the browser delivers it', async () => {
    await listening();
    script.current().say(['eighty degrees']);
    script.current().deliver(0);
    script.current().say(['eighty degrees']);
    script.current().deliver(0);
    // Two results with the same words are two readings.
    expect(utterances.map(({ text }) => text)).toEqual(['eighty degrees', 'eighty degrees']);
    expect(new Set(utterances.map(({ id }) => id)).size).toBe(2);
  });

  test('counts only when it is final', async () => {
    await listening();
    script.current().result(0, ['eighty'], false);
    expect(utterances).toEqual([]);
    script.current().result(0, ['eighty four degrees'], true);
    expect(utterances.map(({ text }) => text)).toEqual(['eighty four degrees']);
  });

  test('goes on over its own ends: each session has ids of its own, and what an end cut off is not believed', async () => {
    await listening();
    script.current().say(['eighty degrees']);
    script.current().result(1, ['leg one one'], false);
    script.current().end();
    await vi.advanceTimersByTimeAsync(1);
    expect(script.sessions).toHaveLength(2);
    script.current().say(['eighty degrees']);
    expect(utterances.map(({ text, accepted }) => [text, accepted])).toEqual([
      ['eighty degrees', true],
      ['leg one one', false],
      ['eighty degrees', true],
    ]);
    expect(new Set(utterances.map(({ id }) => id)).size).toBe(3);
    expect(faults).toEqual([]);
  });

  test('is only the urgent words while the mouth speaks', async () => {
    const ear = await listening();
    ear.heed('urgent');
    script.current().say(['leg one to ground']);
    for (const word of URGENT_WORDS) script.current().say([word]);
    ear.heed('everything');
    script.current().say(['tell me why']);
    expect(utterances.map(({ text }) => text)).toEqual([...URGENT_WORDS, 'tell me why']);
  });

  test('comes no more from a session that was stopped', async () => {
    const ear = await listening();
    const session = script.current();
    await ear.stop();
    session.say(['tell me why']);
    session.end();
    await vi.advanceTimersByTimeAsync(5_000);
    expect(session.aborted).toBe(true);
    expect(utterances).toEqual([]);
    expect(script.sessions).toHaveLength(1);
  });
});

describe('a recogniser that cannot', () => {
  test('is found out when it never begins', async () => {
    const ear = await listening({ begins: false });
    expect(faults).toEqual(['recogniser-silent']);
    expect(ear.state().fault).toContain('choose the offline one');
  });

  test('is found out when somebody speaks and nothing comes of it', async () => {
    await listening();
    script.current().handlers.onspeechstart?.({});
    await vi.advanceTimersByTimeAsync(10_001);
    expect(faults).toEqual(['recogniser-silent']);
  });

  test.each([
    ['network', 'recogniser-unreachable'],
    ['not-allowed', 'permission-refused'],
    ['service-not-allowed', 'recogniser-refused'],
    ['audio-capture', 'no-microphone'],
    ['language-not-supported', 'language-missing'],
  ] as const)('says so: %s', async (code, fault) => {
    await listening();
    script.current().error(code);
    script.current().end();
    await vi.advanceTimersByTimeAsync(5_000);
    expect(faults).toEqual([fault]);
    expect(script.sessions).toHaveLength(1);
  });

  test('is started again after a silence, and ever slower where it ends at once each time', async () => {
    await listening();
    for (let count = 0; count < 20; count += 1) {
      script.current().error('no-speech');
      script.current().end();
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(faults).toEqual([]);
    expect(script.sessions.length).toBeLessThan(20);
    await vi.advanceTimersByTimeAsync(2_000);
    script.current().say(['eighty degrees']);
    expect(utterances).toHaveLength(1);
  });

  test('does not exist in this browser', async () => {
    const ear = new BrowserEar({ recogniser: undefined, onlyHere: false, changed: () => undefined, now: Date.now });
    await ear.start({ onUtterance: () => undefined, onFault: (fault) => faults.push(fault) });
    expect(faults).toEqual(['recogniser-missing']);
  });
});

describe('sound that must stay on the device', () => {
  test.each([
    ['available', false, true],
    ['downloadable', true, true],
    ['downloadable', false, false],
    ['unavailable', true, false],
  ])('with a language pack that is %s (installs: %s): heard %s', async (available, installs, heard) => {
    await listening({ onlyHere: true, language: { available, installs } });
    expect(faults).toEqual(heard ? [] : ['language-missing']);
    if (heard) expect(script.current().processLocally).toBe(true);
    else expect(script.sessions).toEqual([]);
  });

  test('is never sent where the browser knows no such promise', async () => {
    await listening({ onlyHere: true });
    expect(faults).toEqual(['language-missing']);
    expect(script.sessions).toEqual([]);
  });
});
