import { describe, expect, it } from 'vitest';
import { printTimes } from '../../../client/words/printed/print-times.ts';
import {
  degreesChosen,
  inChosenUnit,
  namingScale,
  pressureLimitWords,
} from '../../../client/words/things/chosen-words.ts';
import { USUAL_CHOICE } from '../../../grammar/vocabulary/unit-choice.ts';

const METRIC = { temperature: 'Cel', pressure: 'kPa' } as const;

describe('figures of the program in the chosen unit', () => {
  // By NIST SP 811, appendix B.8: t/°C = (t/°F − 32)/1.8; a difference of 1 °F is 1/1.8 °C; 1 psi = 6.894757 kPa.
  it.each([
    [212, '[degF]', false, 100, 'Cel'],
    [-40, '[degF]', false, -40, 'Cel'],
    [18, '[degF]', true, 10, 'Cel'],
    [100, '[psi]', false, 689.5, 'kPa'],
    [118, 'V', false, 118, 'V'],
  ] as const)('%s %s is %s %s', (value, unit, isDifference, there, code) => {
    expect(inChosenUnit(value, unit, isDifference, METRIC)).toEqual({ value: there, unit: code });
    expect(inChosenUnit(value, unit, isDifference, USUAL_CHOICE)).toEqual({ value, unit });
  });

  it('have no offset where they are differences', () => {
    expect(degreesChosen(18, METRIC)).toBe(10);
    expect(degreesChosen(18, USUAL_CHOICE)).toBe(18);
  });

  it('allow no more than the limit does, and want no less', () => {
    // 150 psi are 1034.2 kPa, 100 psi 689.5.
    expect(pressureLimitWords(150, 'most', METRIC)).toBe('one thousand thirty four kilopascals');
    expect(pressureLimitWords(100, 'least', METRIC)).toBe('six ninety kilopascals');
    expect(pressureLimitWords(150, 'most', USUAL_CHOICE)).toBe('one fifty psi');
  });

  it('name Fahrenheit where Celsius is chosen, and never twice', () => {
    const once = namingScale('Outdoor air, ninety degrees. Not twenty degrees Celsius.', METRIC);
    expect(once).toBe('Outdoor air, ninety degrees Fahrenheit. Not twenty degrees Celsius.');
    expect(namingScale(once, METRIC)).toBe(once);
    expect(namingScale('ninety degrees', USUAL_CHOICE)).toBe('ninety degrees');
  });
});

describe('a printed time', () => {
  it.each([
    ['12', '9:05 AM', '12:00 AM'],
    ['24', '09:05', '00:00'],
  ] as const)('is that of a clock of %s hours', (hours, morning, midnight) => {
    const times = printTimes('UTC', hours);
    expect([times.clock('2026-06-15T09:05:00Z'), times.clock('2026-06-15T00:00:00Z')]).toEqual([morning, midnight]);
  });
});
