import ucum from '@lhncbc/ucum-lhc';
import { describe, expect, it } from 'vitest';
import { MEASURANDS } from '../../grammar/vocabulary/measurands.ts';
import { PART_RATINGS } from '../../grammar/vocabulary/parts.ts';
import { UNITS, type Unit } from '../../grammar/vocabulary/units.ts';

/**
 * The Unified Code for Units of Measure (ucum.org), by the reference library of the Lister Hill National Center for
 * Biomedical Communications (@lhncbc/ucum-lhc).
 */
const library = ucum.UcumLhcUtils.getInstance();
const units: readonly Unit[] = UNITS;

describe('unit codes', () => {
  it.each([...new Set(units.map((unit) => unit.code))])('%s is a valid UCUM code', (code) => {
    expect(library.validateUnitString(code).status).toBe('valid');
  });

  it('convert as UCUM converts them', () => {
    for (const unit of units) {
      for (const value of [0, 1, 7.3, 118]) {
        const converted = library.convertUnitTo(unit.code, value, unit.base);
        expect(converted.status, unit.code).toBe('succeeded');
        expect(value * unit.factor + (unit.offset ?? 0), `${value} ${unit.code}`).toBeCloseTo(converted.toVal!, 6);
      }
    }
  });

  it('measure what their base measures', () => {
    for (const row of MEASURANDS) {
      const { base } = units.find((unit) => unit.code === row.unit && unit.quantities.includes(row.quantity))!;
      expect(library.convertUnitTo(row.unit, 1, base).status, row.unit).toBe('succeeded');
    }
  });

  it('stand with part ratings too, where these have one', () => {
    const own = ['pole', 'ton', '1'];
    for (const rating of PART_RATINGS.filter((row) => !own.includes(row.unit))) {
      expect(library.validateUnitString(rating.unit).status, rating.unit).toBe('valid');
    }
  });
});
