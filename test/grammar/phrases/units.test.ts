import { describe, expect, it } from 'vitest';
import { short } from '../../../fixtures/utterances/read-utterances.ts';
import { fitOf, inUnitOf } from '../../../grammar/phrases/compose/fit.ts';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { spokenForms } from '../../../grammar/phrases/languages/english/numbers/spoken-forms.ts';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { pattern, sentences } from '../../../grammar/phrases/pattern.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { MEASURANDS, type Measurand } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { FOREIGN_UNITS, UNITS, type Unit } from '../../../grammar/vocabulary/units.ts';

const understand = makeUnderstand();

/** One reading of each quantity, by a name of its own. */
const ROWS = MEASURANDS.filter(
  (row, index) =>
    row.rare !== true &&
    row.say !== undefined &&
    MEASURANDS.findIndex((one) => one.quantity === row.quantity && one.rare !== true && one.say !== undefined) ===
      index,
);
const nameOf = (row: Measurand): string => sentences(pattern(row.say!), ENGLISH.rules)[0]!.join(' ');
const saidOf = (unit: Unit): string[] => sentences(pattern(unit.say), ENGLISH.rules).map((words) => words.join(' '));
const units: readonly Unit[] = UNITS;

const readingsIn = (meaning: Meaning): Reading[] =>
  meaning.kind === 'several' ? meaning.parts.flatMap(readingsIn) : meaning.kind === 'reading' ? [meaning.reading] : [];

const belongs = (row: Measurand, unit: Unit): boolean =>
  unit.quantities.includes(row.quantity) && inUnitOf(row, 0, unit.code) !== undefined;

/** A whole number that is likely there in that unit. */
function likely(row: Measurand, unit: Unit): number | undefined {
  return Array.from({ length: 999 }, (_, index) => index + 1).find(
    (value) => fitOf(row, value, unit.code) === 'likely',
  );
}

describe('the unit of a reading', () => {
  it('is taken as it is said wherever it belongs, by each of its names', () => {
    let tried = 0;
    for (const row of ROWS) {
      for (const unit of units.filter((one) => belongs(row, one))) {
        const value = likely(row, unit);
        if (value === undefined) continue;
        for (const name of saidOf(unit)) {
          const text = `${nameOf(row)} ${spokenForms(value)[0]} ${name}`;
          const { verdict, meaning } = understand(text);
          const taken = readingsIn(meaning);
          expect(verdict, text).not.toBe('rejected');
          expect(
            taken.map((one) => one.unit),
            `${text} → ${short(meaning)}`,
          ).toContain(unit.code);
          tried += 1;
        }
      }
    }
    expect(tried).toBeGreaterThan(60);
  });

  it('is never dropped where it does not belong: the value is not taken without it', () => {
    const strangers = [
      ...FOREIGN_UNITS,
      ...['q', 'x', 'z', 'h', 'n', 'p'],
      ...units.flatMap((unit) => saidOf(unit).slice(0, 2)),
    ];
    for (const row of ROWS) {
      const own = units.filter((unit) => belongs(row, unit)).flatMap(saidOf);
      for (const stranger of strangers.filter((one) => !own.includes(one))) {
        const text = `${nameOf(row)} ${spokenForms(Math.ceil(row.likely.at(-1)?.[0] ?? row.low))[0]} ${stranger}`;
        const { verdict, meaning } = understand(text);
        const lost = readingsIn(meaning).filter((one) => one.quantity === row.quantity && one.unit === row.unit);
        expect(verdict === 'rejected' || lost.length === 0, `${text} → ${verdict} ${short(meaning)}`).toBe(true);
      }
    }
  });

  it.each([
    ['liquid line forty C', 'temperature liquid-line 40 Cel'],
    ['suction line twelve c', 'temperature suction-line 12 Cel'],
    ['suction line twelve see', 'temperature suction-line 12 Cel'],
    ['suction line fifty eight F', 'temperature suction-line 58 [degF]'],
    [
      'suction line twelve c and liquid line thirty eight c',
      'temperature suction-line 12 Cel + temperature liquid-line 38 Cel',
    ],
    ['superheat six K', 'difference suction-line 6 K'],
    ['compressor twelve A', 'current compressor 12 A'],
    ['head pressure twenty four bar gauge', 'pressure liquid-port 24 bar gauge'],
    ['suction pressure point eight megapascals', 'pressure suction-port 0.8 MPa gauge'],
    ['insulation two gig', 'insulation comp-C shell 2 GOhm'],
    ['refrigerant is four ten A', 'nameplate refrigerant R-410A'],
  ])('behind the words of a number may be a letter: %s', (text, means) => {
    const { verdict, meaning } = understand(text);
    expect(`${verdict} ${short(meaning)}`).toBe(`logged ${means}`);
  });

  it.each(['R two C twenty six', 'twenty six R to C', 'R to C twenty six'])('is no letter of a place: %s', (text) => {
    expect(short(understand(text).meaning)).toContain('voltage R@thermostat C@thermostat 26 V');
  });
});
