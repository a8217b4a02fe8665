import type { Amps, Microfarads, Volts } from '../../../grammar/vocabulary/quantities.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import { STOCK_NAMES } from '../../words/pages/start-words.ts';

/** Nothing known, which a visit begins with unless another is chosen; then invented units of common kinds to begin from: the nameplate of the real one is then typed or said over them. */
export const UNIT_STOCK: readonly { readonly name: string; readonly unit: UnitProfile }[] = [
  { name: STOCK_NAMES.unknown, unit: { id: 'unknown' } },
  {
    name: STOCK_NAMES.heatPump3Ton,
    unit: {
      id: 'split-heat-pump-3-ton',
      supply: { nominal: 240 as Volts },
      contactorPoles: 2,
      capacitor: { herm: 45 as Microfarads, fan: 5 as Microfarads },
      compressor: { rla: 15.4 as Amps, lra: 77 as Amps },
      fanMotor: { fla: 1.2 as Amps },
      crankcaseHeater: true,
      metering: 'thermostatic-valve',
      refrigerant: 'R-410A',
      heatPump: true,
      tons: 3,
      fusedDisconnect: true,
      floatSwitch: 'breaks-Y',
      pressureSwitches: true,
      hardStart: false,
    },
  },
  {
    name: STOCK_NAMES.cooling2HalfTon,
    unit: {
      id: 'split-cooling-2-half-ton',
      supply: { nominal: 240 as Volts },
      contactorPoles: 1,
      capacitor: { herm: 35 as Microfarads, fan: 5 as Microfarads },
      compressor: { rla: 12.8 as Amps, lra: 61 as Amps },
      fanMotor: { fla: 0.9 as Amps },
      metering: 'fixed-orifice',
      refrigerant: 'R-410A',
      heatPump: false,
      tons: 2.5,
      floatSwitch: 'breaks-Y',
    },
  },
  {
    name: STOCK_NAMES.heatPump4Ton,
    unit: {
      id: 'split-heat-pump-4-ton',
      supply: { nominal: 208 as Volts },
      contactorPoles: 2,
      capacitor: { herm: 55 as Microfarads, fan: 7.5 as Microfarads },
      compressor: { rla: 19.9 as Amps, lra: 109 as Amps },
      fanMotor: { fla: 1.4 as Amps },
      crankcaseHeater: true,
      metering: 'thermostatic-valve',
      refrigerant: 'R-454B',
      heatPump: true,
      tons: 4,
      pressureSwitches: true,
    },
  },
];
