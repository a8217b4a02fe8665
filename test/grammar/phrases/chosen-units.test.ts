import { assert, constantFrom, double, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitOf, inUnitOf } from '../../../grammar/phrases/compose/fit.ts';
import { ENGLISH } from '../../../grammar/phrases/languages/english/english.ts';
import { spokenForms } from '../../../grammar/phrases/languages/english/numbers/spoken-forms.ts';
import type { Expectation, Meaning, Understanding } from '../../../grammar/phrases/meaning.ts';
import { pattern, sentences } from '../../../grammar/phrases/pattern.ts';
import { makeUnderstand } from '../../../grammar/phrases/understand.ts';
import { judgeReading } from '../../../grammar/visit/judge-reading.ts';
import { MEASURANDS, type Measurand } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { UnitCode } from '../../../grammar/vocabulary/quantities.ts';
import { chosenFor, UNIT_CHOICES, type UnitChoice, USUAL_CHOICE } from '../../../grammar/vocabulary/unit-choice.ts';
import { UNITS, type Unit } from '../../../grammar/vocabulary/units.ts';
import { SEED, tries } from '../../how-much.ts';

const understand = makeUnderstand();
const NAMED = MEASURANDS.filter((row) => row.say !== undefined && row.rare !== true);
const CHOSEN = NAMED.filter(({ quantity }) => chosenFor(quantity, USUAL_CHOICE) !== undefined);
const OTHERS = NAMED.filter(({ quantity }) => chosenFor(quantity, USUAL_CHOICE) === undefined);
const nameOf = (row: Measurand): string => sentences(pattern(row.say!), ENGLISH.rules)[0]!.join(' ');

const readingsIn = (meaning: Meaning): readonly Reading[] =>
  meaning.kind === 'several' ? meaning.parts.flatMap(readingsIn) : meaning.kind === 'reading' ? [meaning.reading] : [];
const readingsOf = ({ meaning, others = [] }: Understanding): readonly Reading[] =>
  [meaning, ...others].flatMap(readingsIn);

/** Whole numbers that are likely there in a unit, a handful over the whole of it. */
function likely(row: Measurand, unit: UnitCode): readonly number[] {
  const all = Array.from({ length: 4000 }, (_, at) => at + 1).filter((value) => fitOf(row, value, unit) === 'likely');
  return [0.1, 0.4, 0.7, 0.95].flatMap((share) => all[Math.floor(share * all.length)] ?? []);
}

const expecting = (row: Measurand, units: UnitChoice): Expectation => ({
  readings: [{ quantity: row.quantity, at: row.at }],
  units,
});

describe.each(UNIT_CHOICES)('a number under %o', (units) => {
  it('is in the unit that was chosen where none is said, behind its place or alone where it is asked', () => {
    let tried = 0;
    for (const row of CHOSEN) {
      const unit = chosenFor(row.quantity, units)!;
      for (const value of likely(row, unit)) {
        const spoken = spokenForms(value)[0]!;
        for (const [text, expected] of [
          [`${nameOf(row)} ${spoken}`, { readings: [], units }],
          [spoken, expecting(row, units)],
        ] as const) {
          const understood = understand(text, expected);
          const taken = readingsIn(understood.meaning);
          expect(understood.verdict, text).not.toBe('rejected');
          // A name may be that of a pressure as well.
          expect(
            taken.map((one) => one.value),
            text,
          ).toContain(value);
          if (expected.readings.length > 0) expect(taken).toContainEqual(expect.objectContaining({ value, unit }));
          // Nor is it guessed at in another.
          for (const one of readingsOf(understood))
            expect(one.unit, text).toBe(chosenFor(one.quantity, units) ?? one.unit);
          tried += 1;
        }
      }
    }
    expect(tried).toBeGreaterThan(100);
  });

  it('is in the unit that is said aloud, whichever was chosen', () => {
    const named: readonly Unit[] = UNITS.filter((unit) => !('asChosen' in unit || 'unheard' in unit));
    let tried = 0;
    for (const row of CHOSEN) {
      for (const unit of named) {
        if (!unit.quantities.includes(row.quantity) || inUnitOf(row, 0, unit.code) === undefined) continue;
        const [value] = likely(row, unit.code);
        if (value === undefined) continue;
        const said = sentences(pattern(unit.say), ENGLISH.rules)[0]!.join(' ');
        const spoken = `${spokenForms(value)[0]} ${said}`;
        for (const [text, expected, usual] of [
          [`${nameOf(row)} ${spoken}`, { readings: [], units }, { readings: [] }],
          [spoken, expecting(row, units), expecting(row, USUAL_CHOICE)],
        ] as const) {
          const understood = understand(text, expected);
          expect(
            readingsIn(understood.meaning).map((one) => `${one.value} ${one.unit}`),
            text,
          ).toContain(`${value} ${unit.code}`);
          expect(understood, text).toEqual(understand(text, usual));
          tried += 1;
        }
      }
    }
    expect(tried).toBeGreaterThan(80);
  });

  it('is what it always is where there is nothing to choose: volts, amps, ohms, microns', () => {
    for (const row of OTHERS) {
      const [value = 1] = likely(row, row.unit);
      const text = `${nameOf(row)} ${spokenForms(value)[0]}`;
      expect(understand(text, { readings: [], units }), text).toEqual(understand(text));
      const bare = spokenForms(value)[0]!;
      expect(understand(bare, expecting(row, units)), bare).toEqual(understand(bare, expecting(row, USUAL_CHOICE)));
    }
  });

  it('is in the scale that was chosen behind "degrees", which names none', () => {
    for (const row of CHOSEN.filter(({ quantity }) => quantity !== 'pressure')) {
      const [value] = likely(row, units.temperature);
      const text = `${nameOf(row)} ${spokenForms(value!)[0]} degrees`;
      expect(readingsIn(understand(text, { readings: [], units }).meaning), text).toContainEqual(
        expect.objectContaining({ value, unit: units.temperature }),
      );
    }
  });

  it('keeps its unit in a correction, which says a unit only where one was said', () => {
    const bare = understand('correction twenty', { readings: [], units }).meaning;
    expect(bare).toMatchObject({ kind: 'command', command: 'correct', correction: { value: 20 } });
    expect(bare).not.toHaveProperty('correction.unit');
    const degrees = understand('correction twenty degrees', { readings: [], units }).meaning;
    expect(degrees).toMatchObject({ correction: { value: 20, unit: units.temperature } });
  });
});

const CELSIUS: UnitChoice = { temperature: 'Cel', pressure: 'kPa' };

describe('a bare number that looks like one of the other scale', () => {
  it.each([
    ['supply air fifty seven', CELSIUS],
    ['return air seventy five', CELSIUS],
    ['suction pressure one twenty', CELSIUS],
    ['liquid line thirty eight', USUAL_CHOICE],
  ])('is asked, never logged: %s', (text, units) => {
    const { verdict } = understand(text, { readings: [], units });
    expect(verdict).toBe('asked');
  });

  it.each([
    ['supply air fourteen', 'Cel', 14],
    ['return air twenty four', 'Cel', 24],
    ['suction pressure eight hundred twenty', 'kPa', 820],
    ['liquid pressure twenty four hundred', 'kPa', 2400],
    ['outdoor air minus five', 'Cel', -5],
  ])('and one of the own scale is logged: %s', (text, unit, value) => {
    const { verdict, meaning } = understand(text, { readings: [], units: CELSIUS });
    expect([verdict, readingsIn(meaning)[0]]).toEqual(['logged', expect.objectContaining({ unit, value })]);
  });

  it('in two pressures of one breath as in one', () => {
    const { meaning } = understand('eight hundred over twenty four hundred', { readings: [], units: CELSIUS });
    expect(readingsIn(meaning).map(({ value, unit }) => `${value} ${unit}`)).toEqual(['800 kPa', '2400 kPa']);
  });
});

describe('what a place can read', () => {
  const rows = constantFrom(...CHOSEN);
  /** °C and kPa by their definitions: t/°F = 1.8 t/°C + 32; 1 psi = 6.894757 kPa (NIST SP 811, appendix B.8). */
  const inOther = (row: Measurand, value: number): readonly [number, UnitCode] =>
    row.quantity === 'pressure'
      ? [value * 6.894757293168361, 'kPa']
      : [(value - (row.quantity === 'difference' ? 0 : 32)) / 1.8, 'Cel'];

  it('is the same in either unit', () => {
    assert(
      property(rows, double({ min: -60, max: 1200, noNaN: true }), (row, value) => {
        // On an edge itself rounding decides.
        const edges = [row.low, row.high, ...row.likely.flat()];
        if (edges.some((edge) => Math.abs(edge - value) < 1e-6)) return;
        expect(fitOf(row, ...inOther(row, value))).toBe(fitOf(row, value, row.unit));
      }),
      { numRuns: tries(500, 20_000), seed: SEED },
    );
  });

  it('is judged the same in either unit, its band beside it in its own', () => {
    const under = { power: 'on', call: 'cooling', phase: 'testing' } as const;
    const unit = { id: 'any', metering: 'thermostatic-valve', plateSubcooling: 10 } as const;
    let judgedAtAll = 0;
    assert(
      property(rows, double({ min: -20, max: 60, noNaN: true }), (row, value) => {
        const { quantity, at } = row;
        const usual = judgeReading({ quantity, at, value, unit: row.unit }, under, unit);
        const [there, code] = inOther(row, value);
        const other = judgeReading({ quantity, at, value: there, unit: code }, under, unit);
        expect(other?.word).toBe(usual?.word);
        if (usual?.band.low === undefined) return;
        judgedAtAll += 1;
        expect(other?.band.low).toBeCloseTo(inOther(row, usual.band.low)[0], 1);
      }),
      { numRuns: tries(500, 20_000), seed: SEED },
    );
    expect(judgedAtAll).toBeGreaterThan(0);
  });
});

describe('a number of the nameplate', () => {
  it.each([
    ['nameplate low side test three hundred', USUAL_CHOICE, 'logged', 300, '[psi]'],
    ['nameplate low side test seventeen hundred', CELSIUS, 'logged', 1700, 'kPa'],
    ['nameplate low side test two hundred fifty psi', CELSIUS, 'logged', 250, '[psi]'],
    ['nameplate low side test seventeen hundred kilopascals', USUAL_CHOICE, 'logged', 1700, 'kPa'],
    // 300 kPa are 44 psi: no low side is made for so little.
    ['nameplate low side test three hundred kilopascals', USUAL_CHOICE, 'asked', 300, 'kPa'],
    ['nameplate low side test three hundred', CELSIUS, 'asked', 300, 'kPa'],
  ])('is in the chosen unit or in its own, and held to its limits: %s', (text, units, verdict, value, unit) => {
    const understood = understand(text, { readings: [], units });
    expect(understood).toMatchObject({ verdict, meaning: { kind: 'nameplate', field: 'low-side-test', value, unit } });
  });
});
