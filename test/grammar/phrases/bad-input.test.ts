import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { WRITTEN_ENGLISH } from '../../../grammar/phrases/languages/english/written-english.ts';
import { tokenise } from '../../../grammar/phrases/tokenise.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';

const understand = makeUnderstand();

describe('what is no sentence of a visit', () => {
  it.each([
    ['nothing', '', 'empty'],
    ['spaces', '   ', 'empty'],
    ['punctuation', '…!?', 'empty'],
    ['control characters', '\u0000\u0007', 'empty'],
    ['ten thousand strange words', 'banana '.repeat(10_000), 'too-long'],
    ['ten thousand readings', 'leg one to ground one eighteen '.repeat(10_000), 'too-long'],
    ['seventy orders', 'what next '.repeat(70), 'too-long'],
    ['French', 'les volts sont absents mais il fait très chaud ici', 'outside-grammar'],
    ['Russian', 'напряжение на первой фазе сто восемнадцать', 'not-english'],
    ['Chinese', '一百一十八伏', 'not-english'],
    ['Arabic digits and letters', '١١٨ فولت', 'not-english'],
    ['a curse', 'what the hell is this piece of garbage', 'outside-grammar'],
    ['markup', '<script>alert(1)</script>', 'outside-grammar'],
    ['JSON', '{"kind":"reading"}', 'outside-grammar'],
    ['a statement of a database', "'; drop table visits; --", 'outside-grammar'],
  ])('%s is unclear', (_name, text, reason) => {
    const { meaning, verdict } = understand(text);
    expect(verdict).not.toBe('logged');
    expect(meaning).toMatchObject({ kind: 'unclear', reason });
  });

  it('never throws, never logs a value, whatever the characters', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        const { verdict, meaning, confidence, heard } = understand(text);
        expect(heard).toBe(text);
        expect(confidence).toBeGreaterThanOrEqual(0);
        expect(confidence).toBeLessThanOrEqual(1);
        if (verdict === 'logged') expect(meaning.kind).not.toBe('reading');
      }),
      { numRuns: 3_000, seed: 7 },
    );
  });

  it('offers what it could have been', () => {
    const { meaning } = understand('leg one to grand piano');
    expect(meaning).toMatchObject({ kind: 'unclear', alternatives: expect.arrayContaining(['leg one to ground …']) });
    expect(understand("it's dead").meaning).toMatchObject({ kind: 'unclear', reason: 'no-place' });
  });

  it('keeps a note however long it is', () => {
    const note = `note ${'the customer talks on and on '.repeat(500)}`;
    const { meaning, verdict } = understand(note);
    expect(verdict).toBe('logged');
    expect(meaning.kind === 'note' && meaning.text.split(' ').length).toBe(3_000);
  });
});

describe('text written in digits and signs', () => {
  it.each([
    ['118', ['118']],
    ['118 V', ['118', 'volts']],
    ['118V', ['118', 'volts']],
    ['118.5', ['118.5']],
    ['1,180', ['1180']],
    ['12,345.5', ['12345.5']],
    ['-2', ['-2']],
    ['−2°C', ['-2', 'degrees', 'celsius']],
    ['78 °F', ['78', 'degrees', 'fahrenheit']],
    ['45/5', ['45', 'over', '5']],
    ['45 / 5', ['45', 'over', '5']],
    ['L1', ['l', '1']],
    ['T2 to T1', ['t', '2', 'to', 't', '1']],
    ['R/C', ['r', 'to', 'c']],
    ['R-410A', ['r', 'four', 'ten', 'a']],
    ['2½', ['2', 'and', 'a', 'half']],
    ['0.8Ω', ['0.8', 'ohms']],
    ['44.1 µF', ['44.1', 'microfarads']],
    ['27VAC', ['27', 'volts']],
    ['52 %', ['52', 'percent']],
    ['Compressor’s', ["compressor's"]],
    ['one—two', ['one', 'two']],
    ['24.', ['24']],
    ['.5', ['.5']],
  ])('"%s" becomes %j', (text, words) => {
    expect(tokenise(text, WRITTEN_ENGLISH).map((word) => word.text)).toEqual(words);
  });
});
