import type { UnitProfile } from '../../grammar/vocabulary/unit-profile.ts';
import type { Dice } from '../simulator/dice.ts';
import type { Build } from './plant.ts';

/** What is wrong with what the diagnosis is told of the unit. */
export type Plate = 'right' | 'wrong';

/** The profile that a careful person would write down. */
function honest(build: Build, id: string): UnitProfile {
  const { plate } = build;
  const profile = {
    id,
    supply: { nominal: build.supply },
    contactorPoles: build.poles,
    capacitor: { herm: plate.herm, fan: plate.fan },
    compressor: { rla: plate.rla, lra: plate.lra },
    fanMotor: { fla: plate.fla },
    ...(build.electronicBlower ? {} : { blowerCapacitor: plate.blower }),
    blowerDrive: build.electronicBlower ? 'electronic' : 'capacitor',
    crankcaseHeater: build.heater,
    metering: build.valve ? 'thermostatic-valve' : 'fixed-orifice',
    refrigerant: build.refrigerant,
    heatPump: build.heatPump,
    tons: build.tons,
    fusedDisconnect: build.fused,
    floatSwitch: build.float,
    pressureSwitches: build.pressureSwitches,
    hardStart: build.hardStart,
    transformerTap: build.tap,
    plateSubcooling: plate.subcooling,
  };
  return profile as UnitProfile;
}

/** A profile of the unit; where it is wrong, one thing in it is not so, or half of it is not known. */
export function profileOf(build: Build, id: string, plate: Plate, dice: Dice): UnitProfile {
  const right = honest(build, id);
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
