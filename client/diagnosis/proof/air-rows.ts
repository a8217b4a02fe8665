import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { beyond, by, carries, indirectly, type ProofRow, sees, taken } from './proof-row.ts';

/** Both gauges, and the temperatures that make superheat and subcooling of them; a resting pressure beside one gauge. */
const SUPERHEAT = by(taken('pressure-suction'), taken('temperature-suction-line'));
const SUBCOOLING = by(taken('pressure-liquid'), taken('temperature-liquid-line'));
/** A coil without air reads like one without refrigerant. */
const BLOWER = [by(sees('look-blower', 'blower-running'))];
const CONDENSER_AIR = by(taken('temperature-condenser-air-out'), taken('temperature-outdoor-air'));
const STANDING = by(taken('pressure-standing'), taken('temperature-outdoor-air'));

/**
 * Indoor air and the refrigerant side. What a figure must show follows from outdoor air, indoor air and metering
 * device together: the row asks for the figures, their likelihood judges them (signs after Rossi & Braun, 1997).
 */
export const AIR_ROWS = {
  'filter-dirty': { needs: [[by(sees('look-filter', 'filter-dirty'))]], twice: true },
  // Ice is what low charge, a dead blower and a choked duct make: charge, blower and filter are judged before it is the
  // finding. What air the coil gets shows once it has thawed: until then it is found by exclusion.
  'indoor-coil-iced': {
    needs: [
      [indirectly(sees('look-indoor-coil', 'coil-iced')), by(beyond('temperature-supply-air'))],
      [by(sees('look-blower', 'blower-running'))],
      [by(sees('look-filter', 'filter-clean'))],
      [SUBCOOLING, STANDING],
    ],
  },
  'low-indoor-air': { judgedTogether: true, needs: [[by(sees('look-filter', 'filter-clean'))], BLOWER] },
  // A restriction starves the coil as well: the liquid side tells them apart.
  'low-charge': {
    judgedTogether: true,
    needs: [BLOWER, [SUPERHEAT, STANDING], [SUBCOOLING, STANDING]],
    twice: true,
  },
  // A fan that moves too little air raises head and subcooling as well, and the air that leaves is hot.
  overcharge: { judgedTogether: true, needs: [[SUBCOOLING], [CONDENSER_AIR]], twice: true },
  // Where it chokes shows the drop across drier and metering device; a kinked suction line reads the same from outside.
  'liquid-restriction': {
    judgedTogether: true,
    needs: [BLOWER, [indirectly(...SUPERHEAT.checks), by(beyond('temperature-liquid-line'))], [SUBCOOLING]],
    twice: true,
  },
  // By eye: a fan that turns backwards or slips on its shaft raises the head as well.
  'condenser-dirty': { needs: [[by(sees('look-outdoor-coil', 'outdoor-coil-dirty'))]], twice: true },
  'non-condensables': {
    judgedTogether: true,
    needs: [[by(taken('pressure-liquid')), STANDING], [CONDENSER_AIR]],
    twice: true,
  },
  // A compressor that does not pump down shows it; a metering device that floods the coil reads much like it.
  'leaking-valves': {
    judgedTogether: true,
    needs: [
      [indirectly(taken('pressure-suction'), taken('pressure-liquid')), by(beyond('pressure-suction'))],
      [SUPERHEAT],
    ],
    twice: true,
  },
  'reversing-valve-stuck': { judgedTogether: true, needs: [[by(carries('volts-O-C-condenser'))]], twice: true },
} as const satisfies Partial<Record<FaultId, ProofRow>>;
