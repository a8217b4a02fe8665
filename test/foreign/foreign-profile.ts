import type { Dice } from '../../client/practice/plant/dice.ts';
import type { Build } from '../../client/practice/plant/plant.ts';
import { profileOfBuild } from '../../client/practice/plant/profile-of-build.ts';
import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';

/** What is wrong with what the diagnosis is told of the unit. */
export type Plate = 'right' | 'wrong';

/** A profile of the unit; where it is wrong, one thing in it is not so, or half of it is not known. */
export function profileOf(build: Build, id: string, plate: Plate, dice: Dice): UnitProfile {
  const right = profileOfBuild(build, id);
  if (plate === 'right') return right;
  const bent: Partial<Record<keyof UnitProfile, unknown>> = dice.pick([
    { supply: { nominal: build.supply === 240 ? 208 : 240 } },
    { contactorPoles: build.poles === 1 ? 2 : 1 },
    { metering: build.valve ? 'fixed-orifice' : 'thermostatic-valve' },
    { crankcaseHeater: !build.heater },
    { pressureSwitches: !build.pressureSwitches },
    { floatSwitch: build.float === 'breaks-R' ? 'breaks-Y' : 'breaks-R' },
    { capacitor: { herm: build.plate.herm + 10, fan: build.plate.fan } },
    { fusedDisconnect: !build.fused },
    'unknown' as const,
  ] as const) as never;
  if ((bent as unknown) !== 'unknown') return { ...right, ...bent } as UnitProfile;
  const { id: name, refrigerant, tons, capacitor } = right;
  return { id: name, refrigerant, tons, capacitor } as UnitProfile;
}
