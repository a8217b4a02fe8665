import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { ABSENT } from '../../words/talk/doubt-words.ts';
import { type Equipment, TERMINALS } from './terminals.ts';

interface Absence {
  readonly words: string;
  readonly isAbsent: (unit: UnitProfile) => boolean;
}

/** What the profile leaves open is not absent. */
const ABSENCES: Readonly<Record<Equipment, Absence>> = {
  fuses: { words: ABSENT.fuses, isAbsent: (unit) => unit.fusedDisconnect === false },
  heater: { words: ABSENT.crankcaseHeater, isAbsent: (unit) => unit.crankcaseHeater === false },
  'start-capacitor': { words: ABSENT.startCapacitor, isAbsent: (unit) => unit.hardStart === false },
  'blower-capacitor': { words: ABSENT.blowerCapacitor, isAbsent: (unit) => unit.blowerDrive === 'electronic' },
  'float-switch': { words: ABSENT.floatSwitch, isAbsent: (unit) => unit.floatSwitch === 'none' },
  'pressure-switches': { words: ABSENT.pressureSwitches, isAbsent: (unit) => unit.pressureSwitches === false },
  'reversing-valve': { words: ABSENT.reversingValve, isAbsent: (unit) => unit.heatPump === false },
  'second-stage': { words: ABSENT.secondStage, isAbsent: (unit) => unit.twoStage === false },
};

/** What the unit lacks, by its profile, of the places a reading names ("a float switch"); undefined where nothing. */
export function unitLacks(unit: UnitProfile, at: readonly PointId[]): string | undefined {
  const equipment = at.map((point) => TERMINALS[point].with).filter((one) => one !== 'always');
  return equipment.map((one) => ABSENCES[one]).find(({ isAbsent }) => isAbsent(unit))?.words;
}
