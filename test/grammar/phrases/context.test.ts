import { describe, expect, it } from 'vitest';
import { short } from '../../../fixtures/utterances/read-utterances.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';

const understand = makeUnderstand();
const LEG: Expectation = { readings: [{ quantity: 'voltage', at: ['L1', 'ground'] }] };

describe('what the visit waits for', () => {
  it('binds a bare value only when exactly one reading is expected', () => {
    const two: Expectation = { readings: [...LEG.readings, { quantity: 'voltage', at: ['L2', 'ground'] }] };
    expect(short(understand('one eighteen', LEG).meaning)).toBe('voltage L1 ground 118 V');
    expect(understand('one eighteen', LEG).verdict).toBe('logged');
    expect(understand('one eighteen', two)).toMatchObject({ verdict: 'asked', reason: 'several-places-fit' });
    expect(understand('one eighteen')).toMatchObject({ verdict: 'rejected', reason: 'no-place' });
  });

  it('takes a bare value for the points in either order', () => {
    const turned: Expectation = { readings: [{ quantity: 'voltage', at: ['ground', 'L1'] }] };
    expect(short(understand('one eighteen', turned).meaning)).toBe('voltage L1 ground 118 V');
  });

  it('decides between rows that share a name', () => {
    expect(understand('herm section zero').verdict).toBe('asked');
    const volts: Expectation = { readings: [{ quantity: 'voltage-dc', at: ['cap-C', 'cap-HERM'] }] };
    const farads: Expectation = { readings: [{ quantity: 'capacitance', at: ['cap-C', 'cap-HERM'] }] };
    expect(short(understand('herm section zero', volts).meaning)).toBe('voltage-dc cap-C cap-HERM 0 V');
    expect(understand('herm section zero', volts).verdict).toBe('logged');
    expect(short(understand('herm section zero', farads).meaning)).toBe('capacitance cap-C cap-HERM 0 uF');
  });

  it('decides between places of one letter', () => {
    const condenser: Expectation = { readings: [{ quantity: 'voltage', at: ['C@condenser', 'Y@condenser'] }] };
    expect(short(understand('y to c twenty five').meaning)).toBe('voltage C@thermostat Y@thermostat 25 V');
    expect(short(understand('y to c twenty five', condenser).meaning)).toBe('voltage C@condenser Y@condenser 25 V');
    expect(short(understand('y to c at the thermostat twenty five', condenser).meaning)).toBe(
      'voltage C@thermostat Y@thermostat 25 V',
    );
  });

  it('never overrides a place or a unit that was said', () => {
    expect(short(understand('leg two to ground one nineteen', LEG).meaning)).toBe('voltage L2 ground 119 V');
    expect(understand('eighteen amps', LEG).verdict).not.toBe('logged');
  });

  it('answers a teen/ty question by digits alone, never by the word that was in doubt', () => {
    const question: Expectation = { readings: LEG.readings, question: 'teen-or-ty', options: [113, 130] };
    expect(understand('one one three', question)).toMatchObject({
      verdict: 'logged',
      meaning: { kind: 'value', value: 113, digits: true },
    });
    expect(understand('three zero', question)).toMatchObject({ verdict: 'logged', meaning: { value: 130 } });
    for (const again of ['one thirteen', 'one thirty', 'thirty', 'one two one']) {
      expect(understand(again, question).verdict, again).toBe('asked');
    }
  });
});

describe('teen or ty', () => {
  it('is asked with both values where both fit', () => {
    expect(understand('leg one to ground one thirteen')).toMatchObject({
      verdict: 'asked',
      reason: 'teen-or-ty',
      twin: 130,
    });
    expect(understand('suction pressure one fifty')).toMatchObject({
      verdict: 'asked',
      reason: 'teen-or-ty',
      twin: 115,
    });
  });

  it('is not asked where only one fits', () => {
    expect(understand('leg one to ground one eighteen')).toMatchObject({ verdict: 'logged' });
    expect(understand('leg one to ground one eighteen').twin).toBeUndefined();
  });

  it('is not asked of digits typed by hand, nor of words at pressures and vacuum', () => {
    expect(understand('suction pressure 115').verdict).toBe('asked');
    expect(understand('suction pressure 115', undefined, { typed: true }).verdict).toBe('logged');
    expect(understand('suction pressure one fifteen').verdict).toBe('asked');
    expect(understand('suction pressure one fifteen', undefined, { typed: true }).verdict).toBe('logged');
    expect(understand('vacuum fifteen microns', undefined, { typed: true }).verdict).toBe('logged');
    // Words may have been dictated to the keyboard: elsewhere they are asked.
    expect(understand('compressor amps fifty', undefined, { typed: true }).verdict).toBe('asked');
  });
});

describe('a weight without a verb', () => {
  const asked = { readings: [{ quantity: 'mass', at: ['system'] }] } as const;

  it('answers the step that asks for one, in ounces where both units are said', () => {
    expect(understand('two pounds six ounces', asked)).toMatchObject({
      verdict: 'logged',
      meaning: { kind: 'value', value: 38, unit: '[oz_av]' },
    });
    expect(understand('three pounds', asked)).toMatchObject({
      verdict: 'logged',
      meaning: { value: 3, unit: '[lb_av]' },
    });
    expect(understand('eleven', asked)).toMatchObject({ verdict: 'logged', meaning: { value: 11 } });
    expect(understand('twelve volts', asked).verdict).not.toBe('logged');
  });

  it('is asked elsewhere: it may have gone in or out', () => {
    expect(understand('two pounds six ounces').verdict).toBe('asked');
    expect(understand('sixty eight pounds').verdict).toBe('rejected');
  });
});

describe("the recogniser's other hypotheses", () => {
  it('are asked where the first makes no sense', () => {
    const understood = understand('leg won two ground won a teen', undefined, {
      alternatives: ['gibberish of the radio', 'leg one to ground one eighteen'],
    });
    expect(understood.verdict).toBe('asked');
    const rejected = understand('egg on the ground', undefined, { alternatives: ['leg one to ground one eighteen'] });
    expect(rejected).toMatchObject({ verdict: 'asked', reason: 'needed-repair' });
    expect(short(rejected.meaning)).toBe('voltage L1 ground 118 V');
  });

  it('turn a value into a question where another sensible one differs', () => {
    const understood = understand('leg one to ground one nineteen', undefined, {
      alternatives: ['leg one to ground one eighteen'],
    });
    expect(understood).toMatchObject({ verdict: 'asked', reason: 'several-values-fit' });
    expect(understood.others?.map(short)).toContain('voltage L1 ground 118 V');
  });

  it('change nothing where they mean the same or nothing', () => {
    const understood = understand('leg one to ground one eighteen', undefined, {
      alternatives: ['leg 1 to ground 118', 'leg one two ground one eighteen', 'lake wanted ground'],
    });
    expect(understood.verdict).toBe('logged');
  });
});

describe('repair', () => {
  it('asks, and says what was changed, skipped and supplied', () => {
    expect(understand('contractor coil twenty seven volts').repaired).toEqual([
      { heard: 'contractor', taken: 'contactor' },
    ]);
    expect(understand('leg one to ground banana one eighteen').repaired).toEqual([{ heard: 'banana', taken: '' }]);
    expect(understand('disconnect pulled').repaired).toEqual([{ heard: '', taken: 'is' }]);
  });

  it('never changes, drops or adds a number word', () => {
    for (const text of [
      'leg one to ground one eight teen',
      'leg one to ground one fortune',
      'leg one to ground one one one one one eight',
    ]) {
      expect(understand(text).verdict, text).not.toBe('logged');
    }
  });

  it('is surer of what was heard plainly than of what was mended', () => {
    const plain = understand('contactor coil twenty seven volts').confidence;
    const mended = understand('contractor coil twenty seven volts').confidence;
    expect(plain).toBeGreaterThan(0.95);
    expect(mended).toBeLessThan(plain);
  });
});
