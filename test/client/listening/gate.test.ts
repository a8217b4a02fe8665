import { describe, expect, test } from 'vitest';
import { confidenceOf, cutOf, maySayMore, saysTooLittle } from '../../../client/listening/recogniser/gate.ts';
import { GATES } from '../../../client/listening/recogniser/gates.ts';

describe.each(Object.entries(GATES))('the gate of the %s model', (_, gate) => {
  const cut = (speechFrames: number, words: number): number => cutOf(gate, { speechFrames, words });

  test('asks more of a short word the more words the grammar has', () => {
    expect(cut(60, 600)).toBeGreaterThan(cut(60, 70));
    expect(cut(60, 70)).toBeGreaterThan(cut(60, 11));
    expect(cut(60, 600)).toBeGreaterThan(cut(120, 600));
  });

  test('asks the same of every long sentence', () => {
    expect(cut(200, 600)).toBe(cut(1_500, 11));
  });

  test('doubts only what a long sentence may still be taken at', () => {
    expect(gate.doubt).toBeGreaterThan(cut(1_500, 600));
    expect(gate.doubt).toBeLessThan(gate.sure);
  });

  test('gives an even chance at the cut, more above it and less below', () => {
    const trial = { speechFrames: 80, words: 300 };
    const at = cutOf(gate, trial);
    expect(confidenceOf(at, gate, trial)).toBeCloseTo(0.5, 10);
    expect(confidenceOf(at + 6, gate, trial)).toBeGreaterThan(0.85);
    expect(confidenceOf(at - 6, gate, trial)).toBeLessThan(0.15);
  });
});

// Margins of people measured with the bundled model (half that the gate was tuned on): what it was put there to part.
test.each([
  ['an order said quickly', -3.72, 156, 74, true],
  ['the order that fits worst, quiet', -5.58, 452, 74, true],
  ['an order under 6 dB of kitchen noise', -9.17, 222, 74, true],
  ['"computer", taken for "undo that"', -2.64, 72, 627, false],
  ['a wake word, taken for "repeat that"', -3.62, 63, 627, false],
  ['an order, taken for a nameplate line', -20.71, 164, 627, false],
] as const)('%s', (_, margin, speechFrames, words, taken) => {
  expect(margin >= cutOf(GATES.bundled, { speechFrames, words })).toBe(taken);
});

// Frames from beginning to end, and words, of people's orders (the half that the gate was tuned on) and of digits said alone, and of what the
// grammar of a visit made of a kitchen without a voice.
test.each([
  ['a short order under noise', 'brew a dark roast single shot twenty ounce espresso', 416, false],
  ['a long order', 'brew a dark roast iced coffee with some almond milk and brown sugar', 515, false],
  ['a digit drawled', 'nine', 82, false],
  ['one word out of three seconds of clatter', 'next', 330, true],
  ['three words out of eight seconds', 'thawed the ice', 820, true],
  ['a reading out of fifteen seconds', 'earth to whip two thirty', 1_510, true],
] as const)('so much speech for its words: %s', (_, text, frames, tooLittle) => {
  expect(saysTooLittle(text, frames)).toBe(tooLittle);
});

test('three digits in which one was heard may say more, the digit alone does not', () => {
  expect(maySayMore('two', 90)).toBe(true);
  expect(maySayMore('two', 45)).toBe(false);
  expect(maySayMore('leg one to ground one eighteen', 200)).toBe(false);
});
