import type { SplitPhaseMotor } from './split-phase-motor.ts';

/** Ohms of what is not connected: dust and damp. */
export const OPEN = 1e9;

/** Everything that two conductors meet in, with its ohms when it should be closed. */
export const CONTACTS = [
  'utility1',
  'utility2',
  'breaker1',
  'breaker2',
  'handlerBreaker1',
  'handlerBreaker2',
  'blade1',
  'blade2',
  'fuse1',
  'fuse2',
  'lug1',
  'lug2',
  'pole1',
  'pole2',
  'compressorLeadC',
  'compressorLeadR',
  'compressorLeadS',
  'capacitorLead',
  'hermLead',
  'fanLeadC',
  'fanLeadR',
  'fanLeadS',
  'defrostRelay',
  'door',
  'blowerRelay',
  'controlFuse',
  'float',
  'wireR',
  'wireYIndoors',
  'wireYOutdoors',
  'wireC',
  'wireG',
  'wireO',
  'thermostatY',
  'thermostatG',
  'thermostatO',
  'highSwitch',
  'lowSwitch',
  'delayTimer',
  'coil',
  'compressorMain',
  'compressorAuxiliary',
  'compressorOverload',
  'fanMain',
  'fanAuxiliary',
  'blowerMain',
  'heater',
  'startCapacitor',
  'transformerPrimary',
  'transformerSecondary',
] as const;
export type Contact = (typeof CONTACTS)[number];

/** What should not touch, with the ohms between: the most where all is well. */
export type Short =
  | 'compressorToShell'
  | 'fanToFrame'
  | 'hermSection'
  | 'fanSection'
  | 'coilTurns'
  | 'YToC'
  | 'RToC'
  | 'pole1'
  | 'pole2';

export type Machine = 'compressor' | 'fan' | 'blower';

/** A motor in its place, with what it has to turn. */
export interface Drive {
  readonly motor: SplitPhaseMotor;
  /** Torque at full speed and to break away, synchronous watts. */
  load: number;
  breakaway: number;
  seized: boolean;
}

/** Air and refrigerant: 1 is as designed. */
export interface Refrigerating {
  charge: number;
  /** Of the metering device's opening. */
  opening: number;
  /** Of the outdoor coil's air and its surface. */
  outdoorAir: number;
  indoorAir: number;
  /** psi of gas that does not condense. */
  foreignGas: number;
  /** Share of what the compressor pumps that flows back through its valves. */
  leak: number;
  /** Of its stroke, what compresses; 1 where nothing is said. */
  stroke?: number;
  /** Hot gas through a valve between its seats. */
  reversed: boolean;
  outdoorF: number;
  returnF: number;
  wetBulbF: number;
}

/** How this unit was built and wired: what a plate seldom says. */
export interface Build {
  readonly tons: number;
  readonly refrigerant: 'R-410A' | 'R-22';
  readonly valve: boolean;
  readonly heatPump: boolean;
  readonly fused: boolean;
  /** 240 from halves of one transformer, or 208 from two legs of three phases. */
  readonly supply: 240 | 208;
  readonly legVolts: number;
  readonly tap: 240 | 208;
  readonly handlerAt120: boolean;
  readonly poles: 1 | 2;
  /** Which leg a one-pole contactor switches. */
  readonly switchedPole: 1 | 2;
  /** Common of compressor and fan on T1, or on T2. */
  readonly commonOn: 1 | 2;
  readonly heater: boolean;
  readonly heaterAcrossPole: boolean;
  readonly float: 'breaks-R' | 'breaks-Y' | 'none';
  readonly pressureSwitches: boolean;
  readonly hardStart: boolean;
  /** Ports of the compressor that a coil of 24 volts closes for its second stage. */
  readonly twoStage: boolean;
  readonly commonGrounded: boolean;
  readonly thermostatOnBattery: boolean;
  readonly thermostatHasC: boolean;
  readonly electronicBlower: boolean;
  /** Contactor coil, ohms as an ohmmeter reads and sealed reactance at 60 hertz. */
  readonly coilOhms: number;
  readonly coilReactance: number;
  readonly plate: {
    readonly herm: number;
    readonly fan: number;
    readonly blower: number;
    readonly rla: number;
    readonly lra: number;
    readonly fla: number;
    readonly subcooling: number;
  };
}

/** What the second stage is made of: ohms of its contacts and wires, its coil, and the ports that the coil closes. */
export interface SecondStage {
  thermostat: number;
  wireIndoors: number;
  wireOutdoors: number;
  coil: number;
  /** A rectifier in the plug feeds a coil for direct current: alternating current meets ohms alone. */
  readonly rectified: boolean;
  readonly coilOhms: number;
  readonly coilReactance: number;
  readonly pullIn: number;
  portsStick: boolean;
  /** Share of its stroke that is left with the ports open. */
  readonly strokeLeft: number;
}

/** A unit with whatever is wrong with it. */
export interface Plant {
  readonly build: Build;
  readonly contacts: Record<Contact, number>;
  readonly shorts: Record<Short, number>;
  readonly drives: Record<Machine, Drive>;
  /** Microfarads as they are. */
  readonly microfarads: { herm: number; fan: number; blower: number; start: number };
  readonly stage: SecondStage;
  readonly cycle: Refrigerating;
  /** What the contactor's armature does. */
  armature: 'free' | 'jammed';
  /** Volts at which it pulls in. */
  pullIn: number;
  /** What eyes see beside what physics tells. */
  readonly seen: Set<string>;
  /** Share of the supply's own volts that arrives. */
  supplyShare: number;
  /** The control transformer gives this share of its volts. */
  transformerHealth: number;
  /** An indoor coil full of ice. */
  iced: boolean;
  disconnectOut: boolean;
}

/** What moves: settled by `settle`. */
export interface Standing {
  readonly call: boolean;
  contactorIn: boolean;
  blowerRelayIn: boolean;
  /** The ports of a second stage are closed, or there are none. */
  portsClosed: boolean;
  readonly slip: Record<Machine, number>;
  /** Opened by heat or pressure for now; closes again. */
  overloadOut: boolean;
  highOut: boolean;
  lowOut: boolean;
}
