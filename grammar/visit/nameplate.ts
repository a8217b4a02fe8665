import type { Amps, Microfarads, Volts } from '../vocabulary/quantities.ts';
import type { RefrigerantId, UnitProfile } from '../vocabulary/unit-profile.ts';

/** Nameplate fields read so far, by their id in the nameplate table. */
export type Plate = Readonly<Record<string, number | string>>;

/**
 * The unit profile with all that the nameplate said of it; the nameplate wins. What comes in pairs (both capacitor
 * sections, both compressor currents) is taken up once both are known: the diagnosis draws what it does not know.
 */
export function withNameplate(unit: UnitProfile, plate: Plate): UnitProfile {
  const number = (field: string): number | undefined => {
    const value = plate[field];
    return typeof value === 'number' ? value : undefined;
  };
  const herm = number('capacitor-herm') ?? unit.capacitor?.herm;
  const fan = number('capacitor-fan') ?? unit.capacitor?.fan;
  const rla = number('rla') ?? unit.compressor?.rla;
  const lra = number('lra') ?? unit.compressor?.lra;
  const volts = number('supply-volts');
  const fla = number('fan-fla');
  const tons = number('tons');
  const plateSubcooling = number('subcooling');
  const poles =
    number('contactor-poles') ??
    (plate['contactor-poles'] === undefined ? undefined : Number(plate['contactor-poles']));
  const refrigerant = plate['refrigerant'];
  const yes = (field: string): boolean | undefined => (plate[field] === undefined ? undefined : plate[field] === 'yes');
  const heatPump = yes('heat-pump');
  const heater = yes('crankcase-heater');
  const metering = plate['metering'];
  const drive = plate['compressor-drive'];
  const blower = plate['blower-drive'];
  return {
    ...unit,
    ...(herm !== undefined && fan !== undefined
      ? { capacitor: { herm: herm as Microfarads, fan: fan as Microfarads } }
      : {}),
    ...(rla !== undefined && lra !== undefined ? { compressor: { rla: rla as Amps, lra: lra as Amps } } : {}),
    ...(volts === undefined ? {} : { supply: { nominal: volts as Volts } }),
    ...(fla === undefined ? {} : { fanMotor: { fla: fla as Amps } }),
    ...(tons === undefined ? {} : { tons }),
    ...(plateSubcooling === undefined ? {} : { plateSubcooling }),
    ...(poles === 1 || poles === 2 ? { contactorPoles: poles } : {}),
    ...(heatPump === undefined ? {} : { heatPump }),
    ...(heater === undefined ? {} : { crankcaseHeater: heater }),
    ...(metering === 'fixed-orifice' || metering === 'thermostatic-valve' ? { metering } : {}),
    ...(drive === undefined ? {} : { inverterDriven: drive === 'inverter', twoStage: drive === 'two-stage' }),
    ...(blower === 'electronic' || blower === 'capacitor' ? { blowerDrive: blower } : {}),
    ...(typeof refrigerant === 'string' ? { refrigerant: refrigerant as RefrigerantId } : {}),
  };
}
