import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { ABSENT } from '../../words/talk/doubt-words.ts';

interface Absence {
  readonly points: RegExp;
  readonly words: string;
  readonly isAbsent: (unit: UnitProfile) => boolean;
}

/** What a unit may do without, and the points that go with it. What the profile leaves open is not absent. */
const ABSENCES: readonly Absence[] = [
  { points: /^fuse-/, words: ABSENT.fuses, isAbsent: (unit) => unit.fusedDisconnect === false },
  { points: /^(crankcase-)?heater/, words: ABSENT.crankcaseHeater, isAbsent: (unit) => unit.crankcaseHeater === false },
  { points: /^start-cap-/, words: ABSENT.startCapacitor, isAbsent: (unit) => unit.hardStart === false },
  { points: /^float-/, words: ABSENT.floatSwitch, isAbsent: (unit) => unit.floatSwitch === 'none' },
  {
    points: /^(high|low)-switch-/,
    words: ABSENT.pressureSwitches,
    isAbsent: (unit) => unit.pressureSwitches === false,
  },
  { points: /^[OB]@/, words: ABSENT.reversingValve, isAbsent: (unit) => unit.heatPump === false },
];

/** What the unit lacks, by its profile, of the places a reading names ("a float switch"); undefined where nothing. */
export function unitLacks(unit: UnitProfile, at: readonly PointId[]): string | undefined {
  return ABSENCES.find(({ points, isAbsent }) => isAbsent(unit) && at.some((point) => points.test(point)))?.words;
}
