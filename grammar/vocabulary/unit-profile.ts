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
  /** Rating on the blower's capacitor. */
  readonly blowerCapacitor?: Microfarads;
  readonly crankcaseHeater?: boolean;
  readonly metering?: 'fixed-orifice' | 'thermostatic-valve';
  readonly refrigerant?: RefrigerantId;
  readonly heatPump?: boolean;
  readonly inverterDriven?: boolean;
  readonly tons?: number;
  /** A fused pull-out or safety switch at the unit; false: no line fuses there. */
  readonly fusedDisconnect?: boolean;
  /** Which conductor the float switch breaks. */
  readonly floatSwitch?: 'breaks-R' | 'breaks-Y' | 'none';
  readonly pressureSwitches?: boolean;
  /** A start capacitor with relay beside the run capacitor. */
  readonly hardStart?: boolean;
  /** Primary tap that the control transformer is wired to. */
  readonly transformerTap?: Volts;
  /** Subcooling from the plate, in °F. */
  readonly plateSubcooling?: number;
  /** Feet above the sea; without it gauges are read as at sea level. */
  readonly altitudeFeet?: number;
}
