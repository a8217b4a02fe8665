import { describe, expect, test } from 'vitest';
import { showFinding } from '../../../client/words/shown/show-likely.ts';
import { percentWords, valueWords } from '../../../client/words/things/value-words.ts';

describe('a chance as it is told', () => {
  test.each([
    [0.004, '0 percent'],
    [0.674, '67 percent'],
    [0.994, '99 percent'],
    // A model of units is sure of nothing: what it reckons to all but one is not told as certain.
    [0.9999, '99 percent'],
    [1, '99 percent'],
  ])('%s is "%s"', (probability, told) => {
    expect(percentWords(probability)).toBe(told);
  });

  test('no finding stands at a hundred in a hundred', () => {
    expect(showFinding({ fault: 'blower-capacitor-weak', probability: 1 })).toContain(', 99 %');
  });
});

describe('a value as it is spoken', () => {
  test.each([
    [1, 'A', 'one amp'],
    [2, 'A', 'two amps'],
    [0, 'V', 'zero volts'],
    [1, '[degF]', 'one degree'],
    [1, "[in_i'H2O]", 'one inch of water'],
    [1, 'Hz', 'one hertz'],
    [1, '[cft_i]/min', 'one cubic foot a minute'],
    [0.5, 'Ohm', 'point five ohms'],
  ] as const)('%s %s is "%s"', (value, unit, told) => {
    expect(valueWords(value, unit)).toBe(told);
  });
});
