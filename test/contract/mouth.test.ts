import { afterEach, beforeEach, describe, vi } from 'vitest';
import { PageMouth } from '../../client/speaking/browser/page-mouth.ts';
import { PrintedMouth } from '../../client/terminal/printed-mouth.ts';
import { mouthContract } from './mouth-contract.ts';
import { ScriptedVoice, stubUtterances } from './scripted-voice.ts';

// The offline voice keeps to the same contract in a real browser: mouth-in-chromium.test.ts.

beforeEach(() => {
  vi.useFakeTimers();
  stubUtterances();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const pass = async (ms: number) => {
  await vi.advanceTimersByTimeAsync(ms);
};

describe('the mouth with the device’s own voice (scripted: no test browser has one)', () => {
  mouthContract(async () => ({
    mouth: new PageMouth(new ScriptedVoice().asBrowser(), () => undefined),
    pass,
    sounds: true,
    holdsCautions: true,
  }));
});

describe('the mouth that is silent, though the device has a voice', () => {
  mouthContract(async () => {
    const manner = () => ({ silent: true, rate: 1 });
    const mouth = new PageMouth(new ScriptedVoice().asBrowser(), () => undefined, { manner });
    return { mouth, pass, sounds: false, holdsCautions: true };
  });
});

describe('the mouth that prints', () => {
  mouthContract(async () => ({
    mouth: new PrintedMouth(() => undefined),
    pass,
    sounds: false,
    holdsCautions: false,
  }));
});
