import type { Amps, Microfarads, Volts } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

/** What can be known of a split unit, from nothing to its whole plate. Invented after common practice. */
export const PROFILES: readonly UnitProfile[] = [
  { id: 'any' },
  {
    id: 'cooling-one-pole',
    supply: { nominal: 240 as Volts },
    contactorPoles: 1,
    capacitor: { herm: 35 as Microfarads, fan: 5 as Microfarads },
    metering: 'fixed-orifice',
    refrigerant: 'R-410A',
    heatPump: false,
  },
  {
    id: 'heat-pump-two-poles',
    supply: { nominal: 240 as Volts },
    contactorPoles: 2,
    capacitor: { herm: 45 as Microfarads, fan: 5 as Microfarads },
    compressor: { rla: 15.4 as Amps, lra: 77 as Amps },
    metering: 'thermostatic-valve',
    refrigerant: 'R-410A',
    heatPump: true,
    tons: 3,
  },
  {
    id: 'heat-pump-208',
    supply: { nominal: 208 as Volts },
    contactorPoles: 2,
    capacitor: { herm: 45 as Microfarads, fan: 5 as Microfarads },
    metering: 'thermostatic-valve',
    refrigerant: 'R-454B',
    heatPump: true,
  },
];
