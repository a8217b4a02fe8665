import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Hearing } from '../../../client/listening/hearing.ts';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import { speak } from '../../../fixtures/speak.ts';
import type { Expectation, Meaning } from '../../../grammar/phrases/meaning.ts';
import { understand } from '../../../grammar/phrases/understand.ts';
import { PLATE_LINES } from '../../../grammar/vocabulary/nameplate.ts';

/** By synthetic voices, in quiet: whether the way from sound to field is there, not how well people are heard. */
describe('the answers to a plate', { timeout: 120_000 }, () => {
  let hearing: Hearing;
  beforeAll(async () => {
    hearing = await loadHearing();
  }, 120_000);
  afterAll(() => hearing.close());

  const asked = (first: string): Expectation => {
    const line = PLATE_LINES.find((fields: readonly string[]) => fields.includes(first)) ?? [];
    return { readings: [], plate: [...new Set([...line, ...PLATE_LINES.flat()])] };
  };

  function fieldsHeard(words: string, expectation: Expectation): readonly string[] {
    hearing.expect(expectation);
    const heard = [
      ...hearing.push(new Float32Array(8000)),
      ...hearing.push(speak({ name: 'slt' }, words)),
      ...hearing.flush(),
    ];
    return heard.flatMap(({ text, accepted }) => {
      const { verdict, meaning } = understand(text, expectation);
      const parts: readonly Meaning[] = meaning.kind === 'several' ? meaning.parts : [meaning];
      return parts.map((part) => {
        const what =
          part.kind === 'nameplate'
            ? `${part.field} ${part.value}`
            : part.kind === 'report'
              ? part.report.type
              : part.kind;
        return accepted && verdict === 'logged' ? what : `(${text}: ${verdict}, ${accepted})`;
      });
    });
  }

  test.each([
    ['supply-volts', 'two hundred thirty', ['supply-volts 230']],
    ['rla', 'fourteen point one', ['rla 14.1']],
    ['capacitor-herm', 'forty five over five', ['capacitor-herm 45', 'capacitor-fan 5']],
    ['refrigerant', 'four ten a', ['refrigerant R-410A']],
    ['fan-fla', "can't read it", ['job-item']],
  ])('asked for %s: "%s"', (first, words, fields) => {
    expect(fieldsHeard(words, asked(first))).toEqual(fields);
  });

  test('letters and digits come as a mark, spelt back to be checked: most of their signs are right', () => {
    const marks = ['2 4 A C X 7', 'K 3 R 9 T', '4 T W B 3 0 3 6'];
    let right = 0;
    let all = 0;
    for (const mark of marks) {
      const [field = ''] = fieldsHeard(`model ${mark}`, asked('model'));
      const heard = field.replace(/^model /, '');
      for (const [at, sign] of [...mark.replaceAll(' ', '')].entries()) {
        all += 1;
        if (heard[at] === sign) right += 1;
      }
    }
    expect(right / all).toBeGreaterThan(0.5);
  });
});
