import { fileURLToPath } from 'node:url';
import { describe } from 'vitest';
import { BrowserEar } from '../../client/listening/browser/browser-ear.ts';
import { WavEar } from '../../client/listening/node/wav-ear.ts';
import { earContract } from './ear-contract.ts';
import { ScriptedRecogniser } from './scripted-recogniser.ts';

/** Where each sentence of the contract lies as sound. */
const SOUND: Readonly<Record<string, string>> = {
  'leg one to ground one eighteen': fileURLToPath(
    new URL('../../fixtures/audio/library/09-leg-one.wav', import.meta.url),
  ),
  'tell me why': fileURLToPath(new URL('../../fixtures/audio/library/25-why.wav', import.meta.url)),
};

describe('the ear for sound files', { timeout: 120_000 }, () => {
  earContract(async () => {
    const ear = new WavEar();
    return {
      ear,
      hear: async (sentences) => {
        for (const sentence of sentences) await ear.play(SOUND[sentence]!);
      },
    };
  });
});

// No browser that tests run in has a service behind its recogniser: these events are made by hand, shaped as the W3C's
// Web Speech API says. What a real browser does without a service is in ear-in-chromium.test.ts.
describe('the browser’s recogniser', () => {
  earContract(async () => {
    let now = 0;
    const recogniser = ScriptedRecogniser.fresh();
    const ear = new BrowserEar({
      recogniser: recogniser.asBrowser(),
      onlyHere: false,
      changed: () => undefined,
      now: () => (now += 100),
    });
    return {
      ear,
      hear: async (sentences) => {
        for (const sentence of sentences) recogniser.current().say([sentence]);
      },
    };
  });
});
