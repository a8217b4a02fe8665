import type { Amps, Microfarads, Volts } from './quantities.ts';

/** Refrigerants whose saturation data the project carries (ASHRAE 34 designations). */
export type RefrigerantId = 'R-22' | 'R-32' | 'R-134a' | 'R-290' | 'R-404A' | 'R-407C' | 'R-410A' | 'R-454B';

/**
 * What is known of the unit from its nameplate and wiring. What the nameplate does not say stays undefined: the
 * diagnosis draws it, it does not assume it.
 */
export interface UnitProfile {
  readonly id: string;
  readonly supply?: { readonly nominal: Volts };
  readonly contactorPoles?: 1 | 2;
  readonly capacitor?: { readonly herm: Microfarads; readonly fan: Microfarads };
  readonly compressor?: { readonly rla: Amps; readonly lra: Amps };
  readonly fanMotor?: { readonly fla: Amps };
  readonly crankcaseHeater?: boolean;
  readonly metering?: 'fixed-orifice' | 'thermostatic-valve';
  readonly refrigerant?: RefrigerantId;
  readonly heatPump?: boolean;
  readonly inverterDriven?: boolean;
  readonly tons?: number;
}
