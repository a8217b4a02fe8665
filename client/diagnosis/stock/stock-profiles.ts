import type { Amps, Microfarads, Volts } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';

/**
 * Profiles whose tables are built with the program: what can be said of a split unit before its plate was read. All
 * invented after common practice; what they leave out is drawn.
 */
export const STOCK_PROFILES: readonly UnitProfile[] = [
  { id: 'stock-any' },
  {
    id: 'stock-cooling-one-pole',
    supply: { nominal: 240 as Volts },
    contactorPoles: 1,
    capacitor: { herm: 35 as Microfarads, fan: 5 as Microfarads },
    metering: 'fixed-orifice',
    refrigerant: 'R-410A',
    heatPump: false,
  },
  {
    id: 'stock-heat-pump-two-poles',
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
    id: 'stock-heat-pump-208',
    supply: { nominal: 208 as Volts },
    contactorPoles: 2,
    capacitor: { herm: 45 as Microfarads, fan: 5 as Microfarads },
    metering: 'thermostatic-valve',
    refrigerant: 'R-454B',
    heatPump: true,
  },
];

/** A profile less its name, its fields in one order: what decides its table. */
export function profileKey({ id: _, ...plate }: UnitProfile): string {
  return JSON.stringify(plate, (__, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
}
