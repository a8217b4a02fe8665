import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Build } from './plant.ts';

/** The profile that a careful person would write down. */
export function profileOfBuild(build: Build, id: string): UnitProfile {
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
    ...(build.twoStage ? { twoStage: true } : {}),
    transformerTap: build.tap,
    plateSubcooling: plate.subcooling,
  };
  return profile as UnitProfile;
}
