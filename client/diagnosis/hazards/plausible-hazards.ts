import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import { REFRIGERANT_CLASSES, type UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { TestModel } from '../measuring/test-model.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { HAZARD_SIGNS } from './hazard-signs.ts';

/** A hazard is announced when any fault that is at least this probable makes it real. */
const PLAUSIBLE = 0.01;

/** Index into HAZARD_SIGNS of each sign that some plausible fault makes real. */
export function plausibleSigns(table: FaultTable, posterior: Posterior): number[] {
  const chance = new Float64Array(HAZARD_SIGNS.length);
  const { heavy } = posterior;
  for (let i = 0; i < heavy.length; i += 1) {
    const p = heavy[i]!;
    for (let bits = table.hazards[p]!; bits !== 0; bits &= bits - 1) {
      const sign = 31 - Math.clz32(bits & -bits);
      chance[sign] = chance[sign]! + posterior.weight[p]!;
    }
  }
  return [...chance.keys()].filter((s) => chance[s]! >= PLAUSIBLE);
}

/** Hazards of one step: its own, those of the fluid, and what plausible faults make real at its place. */
export function hazardsOf(model: TestModel, signs: readonly number[], profile: UnitProfile): HazardId[] {
  const found = new Set<HazardId>(model.hazards);
  if (model.function === 'pressure' && profile.refrigerant && REFRIGERANT_CLASSES[profile.refrigerant] !== 'A1') {
    found.add('flammable-refrigerant');
  }
  if (model.function !== 'temperature' && model.function !== 'pressure') {
    for (const s of signs) {
      const sign = HAZARD_SIGNS[s]!;
      if ((sign.places as readonly string[]).includes(model.place)) found.add(sign.id);
    }
  }
  return [...found];
}
