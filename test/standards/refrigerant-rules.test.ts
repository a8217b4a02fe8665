import { describe, expect, it } from 'vitest';
import { judgeRefrigerant, pressureAt, REFRIGERANT_RULES } from '../../grammar/visit/refrigerant-rules.ts';

describe('an opened refrigerant circuit', () => {
  it.each([
    // Gas law at constant volume, p/T = constant, in psia and degrees Rankine; worked by hand:
    // 314.696 × 549.67 ÷ 529.67 − 14.696; 164.696 × 509.67 ÷ 539.67 − 14.696.
    [300, 70, 90, 311.9],
    [150, 80, 50, 140.8],
    [300, 75, 75, 300],
  ])('of %i psi nitrogen at %i °F reads at %i °F %f psi', (psi, from, to, expected) => {
    expect(pressureAt(psi, from, to)).toBeCloseTo(expected, 1);
  });

  it.each([
    // 2 psi is what a gauge may be off: common practice.
    ['pressure-test', 2, 'fits'],
    ['pressure-test', 2.1, 'does not fit'],
    ['pressure-test', 6, 'does not fit'],
    // 500 microns: ACCA Standard 5, from memory; common practice.
    ['evacuation', 500, 'fits'],
    ['evacuation', 501, 'does not fit'],
    // Below 1000 microns after ten minutes: common practice; ASHRAE Standard 147, from memory.
    ['decay', 1000, 'fits'],
    ['decay', 1001, 'does not fit'],
    ['decay', 1600, 'does not fit'],
  ] as const)('judges %s %i as %s', (check, value, word) => {
    expect(judgeRefrigerant(check, value).word).toBe(word);
  });

  it('says of every rule where it comes from, and stands long enough to show anything', () => {
    for (const rule of Object.values(REFRIGERANT_RULES)) {
      expect(rule.source).toMatch(/common practice|from memory/);
      expect(['practice', 'memory']).toContain(rule.tag);
    }
    expect(REFRIGERANT_RULES['pressure-test'].minutes).toBeGreaterThanOrEqual(15);
    expect(REFRIGERANT_RULES.decay.minutes).toBeGreaterThanOrEqual(10);
  });
});
