import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Expectation, Meaning } from '../../../grammar/phrases/meaning.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { PLATE_LINES } from '../../../grammar/vocabulary/nameplate.ts';
import { tries } from '../../how-much.ts';

/** The whole plate is still to be read; its first line is asked. */
const WHOLE: Expectation = { readings: [], plate: PLATE_LINES.flat() };

function fieldsOf(text: string, expectation?: Expectation): readonly string[] {
  const { verdict, meaning } = understand(text, expectation, { typed: true });
  const parts = meaning.kind === 'several' ? meaning.parts : [meaning];
  const named = (part: Meaning) => (part.kind === 'nameplate' ? `${part.field} ${part.value}` : part.kind);
  return verdict === 'logged' ? parts.map(named) : [`${verdict} ${parts.map(named).join()}`];
}

describe('marks of a nameplate', () => {
  it.each([
    ['model four t w b three zero three six', ['model 4TWB3036']],
    ['Model number is AC-36X2, serial no. 20417QX9', ['model AC-36X2', 'serial 20417QX9']],
    ['the plate says model a c thirty six, serial two oh four one seven', ['model AC36', 'serial 20417']],
    ['model k l dash two four r l a fourteen point one', ['model KL-24', 'rla 14.1']],
    ['serial 88123-b and the refrigerant is r 410a', ['serial 88123-b', 'refrigerant R-410A']],
  ])('%s', (text, fields) => {
    expect(fieldsOf(text)).toEqual(fields);
  });

  it('keep what was written, sign for sign', () => {
    const sign = fc.constantFrom(...'ABCDEFGHJKLMNPRSTUVWXYZ0123456789');
    const mark = fc.string({ unit: sign, minLength: 6, maxLength: 16 }).filter((text) => /\d/.test(text));
    fc.assert(
      fc.property(mark, mark, (model, serial) => {
        expect(fieldsOf(`model ${model}, serial ${serial}`)).toEqual([`model ${model}`, `serial ${serial}`]);
      }),
      { numRuns: tries(60, 2000), seed: 7 },
    );
  });

  it.each(['note the model 24AC7 is discontinued', 'recommend a new model 24AC7'])(
    'leave dictation whole: %s',
    (text) => {
      expect(fieldsOf(text)).toEqual([text.startsWith('note') ? 'note' : 'dictated']);
    },
  );

  it('are never made of a sentence that speaks of a model', () => {
    for (const text of ['model is worn', 'what model is it', 'the serial tag is gone'])
      expect(fieldsOf(text).join()).not.toMatch(/^(model|serial)/);
  });
});

describe('answers to a line of the plate that is asked', () => {
  const asked = (first: string): Expectation => {
    const line = PLATE_LINES.find((fields: readonly string[]) => fields.includes(first)) ?? [];
    return { readings: [], plate: [...new Set([...line, ...PLATE_LINES.flat()])] };
  };
  it.each([
    ['model', '24ACX7, 4410B7', ['model 24ACX7', 'serial 4410B7']],
    ['supply-volts', 'two thirty', ['supply-volts 230']],
    ['supply-volts', 'two oh eight two thirty volts', ['supply-volts 208/230']],
    ['supply-volts', 'two oh eight to two thirty', ['supply-volts 208/230']],
    ['rla', 'fourteen point one and seventy seven', ['rla 14.1', 'lra 77']],
    ['rla', 'one hundred and two', ['rla 102']],
    ['capacitor-herm', 'thirty five and five microfarads', ['capacitor-herm 35', 'capacitor-fan 5']],
    ['capacitor-herm', 'forty five plus five', ['capacitor-herm 45', 'capacitor-fan 5']],
    ['capacitor-herm', 'forty five five', ['capacitor-herm 45', 'capacitor-fan 5']],
    ['supply-volts', '208/230', ['supply-volts 208/230']],
    ['rla', 'fourteen point one', ['rla 14.1']],
    ['rla', '14.1 RLA, 77 LRA', ['rla 14.1', 'lra 77']],
    ['capacitor-herm', 'forty five over five', ['capacitor-herm 45', 'capacitor-fan 5']],
    ['refrigerant', 'thirty two', ['refrigerant R-32']],
    ['model', 'R410A, 230 volts, RLA 14.1', ['refrigerant R-410A', 'supply-volts 230', 'rla 14.1']],
  ])('%s: %s', (first, text, fields) => {
    expect(fieldsOf(text, asked(first))).toEqual(fields);
  });

  it('mean what they always mean where nothing is asked of the plate', () => {
    const air: Expectation = { readings: [{ quantity: 'temperature', at: ['outdoor-air'] }] };
    expect(fieldsOf('ninety four', air)).toEqual(['reading']);
    expect(fieldsOf('four ten a')[0]).toMatch(/^(rejected|asked)/);
    expect(fieldsOf('one eighteen over three forty')[0]).not.toContain('supply-volts');
  });

  it('a number alone is no model, and a reading with its place stays a reading', () => {
    expect(fieldsOf('94', { ...WHOLE, readings: [{ quantity: 'temperature', at: ['outdoor-air'] }] })).toEqual([
      'reading',
    ]);
    expect(fieldsOf('leg one to ground one eighteen volts', WHOLE)).toEqual(['reading']);
  });

  it('what no plate can say is asked', () => {
    expect(fieldsOf('9', asked('supply-volts'))[0]).toMatch(/^(asked|rejected)/);
    expect(fieldsOf('seventy', asked('fan-fla'))[0]).toMatch(/^asked/);
  });
});

describe('words as they were written', () => {
  it.each([
    ['customer signs Robin McVale', 'Robin McVale'],
    ['technician signs off J. Oakes-Lind', 'J. Oakes-Lind'],
    ['recommend a MERV 8 filter', 'a MERV 8 filter'],
    ["take a note, Robin's breaker panel is unlabeled", "Robin's breaker panel is unlabeled"],
  ])('%s', (text, words) => {
    const { meaning } = understand(text, undefined, { typed: true });
    expect(meaning).toMatchObject({ text: words });
  });
});
