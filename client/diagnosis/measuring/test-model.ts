import type { HazardId } from '../../../grammar/vocabulary/hazards.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { QuantityId } from '../../../grammar/vocabulary/quantities.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Settled } from '../circuit/settle.ts';
import type { BranchName, NodeName } from '../circuit/topology.ts';
import type { NextTest, TestNeeds } from '../diagnosis.ts';
import type { Residuals, Unit } from '../unit/unit.ts';

/** Where the technician stands for a test. */
export type Place = 'thermostat' | 'air-handler' | 'panel' | 'disconnect' | 'outdoor';

/** A place as a test names it: outdoors it says whether the panel of the unit has to come off first. */
export type Spot = Exclude<Place, 'outdoor'> | 'outdoor-in-reach' | 'outdoor-behind-panel';

export function placeOf(spot: Spot): Pick<TestModel, 'place' | 'behindPanel'> {
  const outdoors = spot === 'outdoor-in-reach' || spot === 'outdoor-behind-panel';
  return { place: outdoors ? 'outdoor' : spot, behindPanel: spot === 'outdoor-behind-panel' };
}

/** Probes, clamps and leads of the outdoor unit go on terminals behind its panel. */
export function atTerminals(place: Place): Pick<TestModel, 'place' | 'behindPanel'> {
  return placeOf(place === 'outdoor' ? 'outdoor-behind-panel' : place);
}

/** A drawn unit with its circuit settled: called for cooling, without a call, and dead under an ohmmeter. */
export interface Moment {
  readonly unit: Unit;
  readonly cooling: Settled;
  readonly idle: Settled;
  readonly dead: Settled;
}

/** What the instrument sees. Plain data where the circuit answers, a function where a part or the eye does. */
export type Measure =
  | { readonly kind: 'volts'; readonly from: NodeName; readonly to: NodeName; readonly when: 'cooling' | 'idle' }
  | {
      readonly kind: 'volts-float';
      readonly from: (unit: Unit) => NodeName;
      readonly to: (unit: Unit) => NodeName;
      readonly when: 'cooling' | 'idle';
    }
  | { readonly kind: 'amps'; readonly branch: BranchName; readonly when: 'cooling' | 'idle' }
  | { readonly kind: 'ohms'; readonly from: NodeName; readonly to: NodeName }
  | { readonly kind: 'ohms-part'; readonly of: (moment: Moment) => number }
  | { readonly kind: 'microfarads'; readonly of: (unit: Unit) => number }
  | {
      readonly kind: 'look';
      readonly answers: readonly ObservationId[];
      /** Chance of each answer; they sum to 1. */
      readonly chances: (moment: Moment) => readonly number[];
    }
  | {
      readonly kind: 'residual';
      readonly figure: keyof Residuals;
      /** Without these there is no figure. */
      readonly requires: readonly TestId[];
      /** Without these the figure is judged more loosely. */
      readonly sharpenedBy: readonly TestId[];
    }
  /** Only sets what is expected of other figures. */
  | { readonly kind: 'condition' };

export interface TestModel {
  readonly function: NextTest['function'];
  readonly quantity: QuantityId | 'observation';
  readonly at: readonly PointId[];
  readonly needs: TestNeeds;
  readonly place: Place;
  /** Whether the panel of the outdoor unit has to be off for it. */
  readonly behindPanel: boolean;
  /** Of the work itself, without walking and without making power ready. */
  readonly minutes: number;
  readonly hazards: readonly HazardId[];
  readonly measure: Measure;
  /** False when the profile says the unit has no such part. */
  readonly possible?: (profile: UnitProfile) => boolean;
  /** Asked for only where nothing else tells: probes on a charged part that runs. */
  readonly lastResort?: true;
  /** Taken when volunteered, never asked for. */
  readonly onlyVolunteered?: true;
}
