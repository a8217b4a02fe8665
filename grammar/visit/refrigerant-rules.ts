import type { RefrigerantId } from '../vocabulary/unit-profile.ts';
import type { Judged } from './events.ts';
import type { VisitFacts } from './facts.ts';
import type { RefrigerantCheck } from './refrigerant-facts.ts';

export interface RefrigerantRule {
  /** What is judged, in `unit`: the drop of the test pressure, the vacuum, the vacuum after standing. */
  readonly check: RefrigerantCheck;
  readonly unit: '[psi]' | 'um[Hg]';
  /** Minutes between the first reading (or the valving off) and the one that is judged. */
  readonly minutes: number;
  /** At most so much fits; whatever is more is a leak, or not dry. */
  readonly fits: number;
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
    source:
      'nitrogen pressure held 15 minutes, less what temperature does to it (gas law); 2 psi is a gauge error: common practice',
    tag: 'practice',
  },
  evacuation: {
    check: 'evacuation',
    unit: 'um[Hg]',
    minutes: 0,
    fits: 500,
    source: 'evacuated to 500 microns or below: ACCA Standard 5, from memory; common practice',
    tag: 'memory',
  },
  decay: {
    check: 'decay',
    unit: 'um[Hg]',
    minutes: 10,
    fits: 1000,
    source:
      'pump valved off, below 1000 microns after 10 minutes: common practice; ASHRAE Standard 147 asks for such a standing test, from memory',
    tag: 'practice',
  },
};

/** The verdict on a value, with its band and source. */
export function judgeRefrigerant(check: RefrigerantCheck, value: number): Judged {
  const rule = REFRIGERANT_RULES[check];
  return {
    word: value <= rule.fits ? 'fits' : 'does not fit',
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

/** The nameplate field that says how far the low side may be tested. */
const LOW_SIDE_FIELD = 'low-side-test';
/** Below it a small leak hardly shows on a gauge, in psi: common practice. */
const FLOOR_PSI = 100;
/** Of which pressure a refrigerant is: what plates of its units usually allow on the low side, in psi. */
const PRESSURES = { medium: 150, high: 300 } as const;
const PRESSURE_OF: Readonly<Record<RefrigerantId, keyof typeof PRESSURES>> = {
  'R-22': 'medium',
  'R-32': 'high',
  'R-134a': 'medium',
  'R-290': 'medium',
  'R-404A': 'medium',
  'R-407C': 'medium',
  'R-410A': 'high',
  'R-454B': 'high',
};

/** Between which pressures nitrogen may stand in the circuit, in psi. */
export interface TestLimits {
  readonly low: number;
  readonly high: number;
  /** Whether the plate says the upper one. */
  readonly plated: boolean;
  readonly source: string;
}

/** By the plate; where it is silent by the pressure of its refrigerant, the lower one where that is not known. */
export function testLimits({ plate, unit }: Pick<VisitFacts, 'plate' | 'unit'>): TestLimits {
  const plated = plate[LOW_SIDE_FIELD];
  if (typeof plated === 'number') {
    return { low: Math.min(FLOOR_PSI, plated), high: plated, plated: true, source: 'nameplate' };
  }
  const high = PRESSURES[unit.refrigerant === undefined ? 'medium' : PRESSURE_OF[unit.refrigerant]];
  const source = 'what plates of such units usually allow on the low side: common practice, from memory';
  return { low: FLOOR_PSI, high, plated: false, source };
}

/** Whether a test may stand at this pressure, in psi. */
export function isWithinTest(facts: Pick<VisitFacts, 'plate' | 'unit'>, psi: number): boolean {
  const { low, high } = testLimits(facts);
  return psi >= low && psi <= high;
}
