import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import {
  beyond,
  by,
  carries,
  figure,
  indirect,
  indirectly,
  orAbsent,
  type ProofRow,
  sees,
  taken,
} from './proof-row.ts';

/**
 * What each figure must show, °F against what outdoor air, indoor air and metering device make expected: the sign after
 * Rossi & Braun (1997), for overcharge and foreign gas common practice, less what gauges and units scatter (ours). How
 * far it goes is judged together by the likelihood.
 */
const SUPERHEAT_NOT_LOW = figure('superheat', (r) => r >= -5);
const SUBCOOLING_NOT_HIGH = figure('subcooling', (r) => r <= 3);
const SUBCOOLING_NOT_LOW = figure('subcooling', (r) => r >= -6);
const SUBCOOLING_HIGH = figure('subcooling', (r) => r >= -1);
const HEAD_NOT_LOW = figure('condensing', (r) => r >= -2);
const HEAD_NOT_HIGH = figure('condensing', (r) => r <= 5);
const SUCTION_NOT_LOW = figure('evaporating', (r) => r >= -3);
const CONDENSER_AIR_NOT_HOT = figure('condenserRise', (r) => r <= 8);
const AIR_DROP_NOT_LOW = figure('airDrop', (r) => r >= -4);
/** What a compressor that does not run leaves to be read: at rest the liquid that is left decides. */
const AT_REST = sees('look-compressor', 'compressor-not-running', 'compressor-runs-then-trips');
const NO_LIQUID_LEFT = by(AT_REST, ...figure('standing', (r) => r <= -6).checks);
/** Or a gas beside it. */
const FOREIGN_GAS = figure('standing', (r) => r >= 3);
const SUBCOOLING = by(taken('pressure-liquid'), taken('temperature-liquid-line'));
/** A coil without air reads like one without refrigerant. */
const BLOWER = [by(sees('look-blower', 'blower-running'))];
const STANDING = by(taken('pressure-standing'), taken('temperature-outdoor-air'));

/**
 * Indoor air and the refrigerant side. What a figure must show follows from outdoor air, indoor air and metering
 * device together: the row asks for the figures and their signs, the likelihood judges how far they go.
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
    against: [sees('look-indoor-coil', 'coil-clear')],
  },
  'low-indoor-air': {
    judgedTogether: true,
    needs: [[by(sees('look-filter', 'filter-clean'))], BLOWER, [AIR_DROP_NOT_LOW]],
  },
  // A restriction starves the coil as well: the liquid side tells them apart.
  'low-charge': {
    judgedTogether: true,
    needs: [BLOWER, [SUPERHEAT_NOT_LOW, NO_LIQUID_LEFT], [SUBCOOLING_NOT_HIGH, NO_LIQUID_LEFT]],
    twice: true,
  },
  // A fan that moves too little air raises head and subcooling as well, and the air that leaves is hot.
  overcharge: { judgedTogether: true, needs: [[SUBCOOLING_HIGH], [CONDENSER_AIR_NOT_HOT]], twice: true },
  // Where it chokes shows the drop across drier and metering device; a kinked suction line reads the same from outside.
  'liquid-restriction': {
    judgedTogether: true,
    needs: [BLOWER, [indirect(SUPERHEAT_NOT_LOW), by(beyond('temperature-liquid-line'))], [SUBCOOLING_NOT_LOW]],
    twice: true,
  },
  // By eye: a fan that turns backwards or slips on its shaft raises the head as well.
  'condenser-dirty': { needs: [[by(sees('look-outdoor-coil', 'outdoor-coil-dirty'))]], twice: true },
  // The pressure at rest shows it: what runs with a high head may have other causes.
  'non-condensables': {
    judgedTogether: true,
    needs: [[FOREIGN_GAS, indirect(HEAD_NOT_LOW)], [CONDENSER_AIR_NOT_HOT]],
    twice: true,
  },
  // A compressor that does not pump down shows it; a metering device that floods the coil reads much like it.
  'leaking-valves': {
    judgedTogether: true,
    needs: [
      [indirect(SUCTION_NOT_LOW, HEAD_NOT_HIGH), by(beyond('pressure-suction'))],
      [by(taken('temperature-suction-line'))],
      // One that stays unloaded reads the same.
      [by(orAbsent(sees('look-second-stage', 'second-stage-loads')))],
    ],
    twice: true,
  },
  'reversing-valve-stuck': { judgedTogether: true, needs: [[by(carries('volts-O-C-condenser'))]], twice: true },
} as const satisfies Partial<Record<FaultId, ProofRow>>;
