import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';

/** What an observation shows beside being evidence: of the outdoor unit's power, of the call, of the visit's questions. */
export interface ShownByLook {
  /** `energised`: something that hums or trips has power, even if it does not run. */
  readonly power: 'running' | 'energised' | 'nothing';
  readonly call: 'cooling' | 'none' | 'nothing';
  /** Ids of the steps it answers, whichever step is asked. */
  readonly answers: readonly string[];
}

const NOTHING: ShownByLook = { power: 'nothing', call: 'nothing', answers: [] };
const RUNS: ShownByLook = { ...NOTHING, power: 'running' };
const ENERGISED: ShownByLook = { ...NOTHING, power: 'energised' };

export const SHOWN_BY_LOOK: Readonly<Record<ObservationId, ShownByLook>> = {
  'fan-not-turning': NOTHING,
  'fan-turning': RUNS,
  'fan-spins-freely': NOTHING,
  'fan-stiff': NOTHING,
  'fan-hums': ENERGISED,
  'compressor-running': RUNS,
  'compressor-not-running': NOTHING,
  'compressor-hums-and-trips': ENERGISED,
  'compressor-very-hot': NOTHING,
  'contactor-pulled-in': NOTHING,
  'contactor-not-pulled-in': NOTHING,
  'contacts-burnt': NOTHING,
  'contacts-stuck': NOTHING,
  'capacitor-swollen': NOTHING,
  'blower-running': NOTHING,
  'blower-not-running': NOTHING,
  'blower-spins-freely': NOTHING,
  'blower-stiff': NOTHING,
  'filter-dirty': NOTHING,
  'filter-clean': NOTHING,
  'coil-iced': NOTHING,
  'outdoor-coil-dirty': NOTHING,
  'outdoor-coil-clean': NOTHING,
  'drain-pan-full': NOTHING,
  'oil-stain': NOTHING,
  'thermostat-blank': { ...NOTHING, answers: ['arrive.call'] },
  'thermostat-calling': { ...NOTHING, call: 'cooling', answers: ['energy.call-on', 'arrive.call'] },
  'thermostat-not-calling': { ...NOTHING, call: 'none', answers: ['energy.call-off', 'arrive.call'] },
  'breaker-tripped': NOTHING,
  'covers-on': { ...NOTHING, answers: ['energy.covers-on'] },
  'compressor-runs-then-trips': ENERGISED,
  'compressor-not-hot': NOTHING,
  // Something is drawn either way.
  'second-stage-loads': RUNS,
  'second-stage-no-change': NOTHING,
  'contacts-clean': NOTHING,
  'capacitor-not-swollen': NOTHING,
  'coil-clear': NOTHING,
  'drain-pan-dry': NOTHING,
  'no-oil-stain': NOTHING,
  'breaker-on': NOTHING,
  'disconnect-in': NOTHING,
  'disconnect-out': NOTHING,
};
