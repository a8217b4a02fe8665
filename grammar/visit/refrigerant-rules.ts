import type { Judged, RefrigerantCheck } from './events.ts';

export interface RefrigerantRule {
  /** What is judged, in `unit`: the drop of the test pressure, the vacuum, the vacuum after standing. */
  readonly check: RefrigerantCheck;
  readonly unit: '[psi]' | 'um[Hg]';
  /** Minutes between the first reading (or the valving off) and the one that is judged. */
  readonly minutes: number;
  /** At most so much fits; up to `marginal` is marginal. */
  readonly fits: number;
  readonly marginal: number;
  readonly source: string;
  readonly tag: Judged['tag'];
}

/** The maker's own figures govern over all of these. */
export const REFRIGERANT_RULES: Readonly<Record<RefrigerantCheck, RefrigerantRule>> = {
  'pressure-test': {
    check: 'pressure-test',
    unit: '[psi]',
    minutes: 15,
    fits: 2,
    marginal: 5,
    source:
      'nitrogen pressure held 15 minutes, less what temperature does to it (gas law); 2 psi is a gauge error: common practice',
    tag: 'practice',
  },
  evacuation: {
    check: 'evacuation',
    unit: 'um[Hg]',
    minutes: 0,
    fits: 500,
    marginal: 500,
    source: 'evacuated to 500 microns or below: ACCA Standard 5, from memory; common practice',
    tag: 'memory',
  },
  decay: {
    check: 'decay',
    unit: 'um[Hg]',
    minutes: 10,
    fits: 1000,
    marginal: 1500,
    source:
      'pump valved off, below 1000 microns after 10 minutes: common practice; ASHRAE Standard 147 asks for such a standing test, from memory',
    tag: 'practice',
  },
};

/** The verdict on a value, with its band and source. */
export function judgeRefrigerant(check: RefrigerantCheck, value: number): Judged {
  const rule = REFRIGERANT_RULES[check];
  return {
    word: value <= rule.fits ? 'fits' : value <= rule.marginal ? 'marginal' : 'does not fit',
    rule: `refrigerant.${check}`,
    band: { high: rule.fits },
    source: rule.source,
    tag: rule.tag,
  };
}

const ZERO_FAHRENHEIT_IN_RANKINE = 459.67;
const SEA_LEVEL_PSI = 14.696;

/**
 * What a closed volume of nitrogen would read at another temperature, by the gas law at constant volume. Gauge psi at
 * sea level, degrees Fahrenheit.
 */
export function pressureAt(gauge: number, from: number, to: number): number {
  const ratio = (to + ZERO_FAHRENHEIT_IN_RANKINE) / (from + ZERO_FAHRENHEIT_IN_RANKINE);
  return (gauge + SEA_LEVEL_PSI) * ratio - SEA_LEVEL_PSI;
}
