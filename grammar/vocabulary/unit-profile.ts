import type { Amps, Microfarads, Volts } from './quantities.ts';

/**
 * Refrigerants whose saturation data the project carries, each with its safety class: A1 does not burn, A2L burns
 * slowly, A3 burns readily (designations and classes of ASHRAE 34, from memory).
 */
export const REFRIGERANT_CLASSES = {
  'R-22': 'A1',
  'R-32': 'A2L',
  'R-134a': 'A1',
  'R-290': 'A3',
  'R-404A': 'A1',
  'R-407C': 'A1',
  'R-410A': 'A1',
  'R-454B': 'A2L',
} as const satisfies Readonly<Record<string, 'A1' | 'A2L' | 'A3'>>;
export type RefrigerantId = keyof typeof REFRIGERANT_CLASSES;

/**
 * What is known of the unit from its nameplate and wiring. What the nameplate does not say stays undefined: the
 * diagnosis draws it, it does not assume it.
 */
export interface UnitProfile {
  readonly id: string;
  /** As the nameplate writes them; neither says anything of what is wrong. */
  readonly model?: string;
  readonly serial?: string;
  /** Year of manufacture, where the plate tells it. */
  readonly made?: number;
  readonly supply?: { readonly nominal: Volts };
  readonly contactorPoles?: 1 | 2;
  readonly capacitor?: { readonly herm: Microfarads; readonly fan: Microfarads };
  readonly compressor?: { readonly rla: Amps; readonly lra: Amps };
  readonly fanMotor?: { readonly fla: Amps };
  /** Rating on the blower's capacitor. */
  readonly blowerCapacitor?: Microfarads;
  /** `electronic`: its motor has a drive of its own and no capacitor that can be read. */
  readonly blowerDrive?: 'capacitor' | 'electronic';
  readonly crankcaseHeater?: boolean;
  readonly metering?: 'fixed-orifice' | 'thermostatic-valve';
  readonly refrigerant?: RefrigerantId;
  readonly heatPump?: boolean;
  readonly inverterDriven?: boolean;
  /**
   * A second stage: an unloader solenoid of 24 V on Y2 and C, without which the compressor pumps about two thirds (common
   * practice). Left out, the unit has one stage: most have, and a technician who sees a Y2 says so.
   */
  readonly twoStage?: boolean;
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
