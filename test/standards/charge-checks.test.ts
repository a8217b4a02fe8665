import { describe, expect, it } from 'vitest';
import { refusal, targetSuperheat } from '../../client/diagnosis/refrigerant/charge-checks.ts';

const steady = { running: true, minutesRunning: 20, outdoor: 90 };

describe('when a charge may be judged', () => {
  // CEC RA3.2.2 (2008 appendices, CEC-400-2008-004-CMF): outdoor ≥ 55 °F, ≥ 15 minutes running.
  it('not before 15 minutes, not below 55 °F outdoors, not at rest', () => {
    expect(refusal(steady)).toBeUndefined();
    expect(refusal({ ...steady, minutesRunning: 14 })).toBe('running-too-short');
    expect(refusal({ ...steady, outdoor: 54 })).toBe('outdoors-too-cold');
    expect(refusal({ ...steady, running: false })).toBe('not-running');
  });
});

describe('target superheat of a fixed orifice', () => {
  // Rule of thumb (3·WB − 80 − DB)/2, within ±3 °F of a 118-cell chart inside WB 56–72, DB 65–105 (common practice).
  it('13 °F at 67 °F wet bulb and 95 °F outdoors', () => {
    expect(targetSuperheat(67, 95)).toEqual({ valid: true, value: 13 });
  });

  it('is no valid test outside the chart or below 5 °F', () => {
    expect(targetSuperheat(50, 95)).toEqual({ valid: false, reason: 'outside-the-chart' });
    expect(targetSuperheat(67, 110)).toEqual({ valid: false, reason: 'outside-the-chart' });
    expect(targetSuperheat(58, 95)).toEqual({ valid: false, reason: 'no-valid-test' });
  });
});
