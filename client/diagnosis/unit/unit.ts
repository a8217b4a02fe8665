import type { RefrigerantId } from '../../../grammar/vocabulary/unit-profile.ts';
import type { Motor } from './motor.ts';

/** Ohms of a thing that conducts; Infinity is open. */
export type Path = number;
export type Pair<T> = [leg1: T, leg2: T];

/** How far each refrigerant-side figure lies from what the conditions make it expected to be, in °F. */
export interface Residuals {
  evaporating: number;
  superheat: number;
  condensing: number;
  subcooling: number;
  discharge: number;
  condenserRise: number;
  airDrop: number;
  /** At rest, coil at outdoor temperature: saturation of the liquid pressure over outdoors. Only foreign gas moves it. */
  standing: number;
}

/** One drawn unit: what the nameplate says, what it does not say (drawn), and what a fault did to it. */
export interface Unit {
  /** How much this draw counts among the draws of its fault: rare shapes are drawn more often and count less. */
  drawWeight: number;
  // supply
  nominal: number;
  legVolts: number;
  /** Angle between the legs, radians: π on 120/240, 2π/3 on 208Y/120. */
  legAngle: number;
  /** Ohms of a utility leg, beyond those of the service. */
  legOhms: Pair<Path>;
  house240Ohms: number;
  house120Ohms: Pair<number>;
  breaker: Pair<Path>;
  feeder: Pair<Path>;
  blade: Pair<Path>;
  fuse: Pair<Path>;
  whip: Pair<Path>;
  handlerFed: boolean;
  /** The air handler hangs on one leg and neutral. */
  handlerAt120: boolean;
  /** Stray capacitance of a conductor to earth and to its neighbour, farads. */
  strayEarth: number;
  strayPair: number;
  // contactor
  poles: 1 | 2;
  poleClosed: Pair<Path>;
  poleStuck: Pair<boolean>;
  armatureJammed: boolean;
  coilOhms: Path;
  coilReactance: number;
  pickUpVolts: number;
  // loads
  heaterOhms: Path;
  hermMicrofarads: number;
  hermShorted: boolean;
  fanMicrofarads: number;
  fanCapShorted: boolean;
  hardStart: boolean;
  hardStartMicrofarads: number;
  /** The lead from the contactor to the common of the capacitor: off, neither section pushes. */
  capacitorLead: Path;
  /** Wind or a hand has set the fan turning: once it turns it needs no push. */
  fanSpunUp: boolean;
  /** What is open of the compressor or the fan is a lead to it: at its own terminals it is whole. */
  compressorLeadOff: boolean;
  fanLeadOff: boolean;
  /** Needs its hard-start part to start at all. */
  needsHardStart: boolean;
  compressor: Motor;
  overload: Path;
  /** Whoever reads the compressor leaves its leads on: the fan's winding is read with it. */
  leadsStayOn: boolean;
  /** When the compressor overheats: the overload happens to be open at the time of the readings. */
  overloadOpenWhenHot: boolean;
  fan: Motor;
  defrostRelay: Path;
  // indoor unit
  doorSwitch: Path;
  blower: Motor;
  blowerMicrofarads: number;
  blowerRelayWorks: boolean;
  // 24 V
  transformerTap: number;
  transformerWorks: boolean;
  transformerPrimaryOhms: Path;
  transformerSecondaryOhms: Path;
  /** Volts of the secondary without load on its own tap. */
  secondaryVolts: number;
  leakageOhms: number;
  controlFuse: Path;
  floatBreaks: 'R' | 'Y' | 'none';
  float: Path;
  commonBonded: boolean;
  rWire: Path;
  yWireIndoors: Path;
  yWireOutdoors: Path;
  cWire: Path;
  gWire: Path;
  oWire: Path;
  shortYC: Path;
  shortRC: Path;
  /** Closes R to Y on a call for cooling; to G. */
  thermostatCalls: boolean;
  thermostatCallsBlower: boolean;
  /** Draws from R to C: an electronic thermostat without batteries. */
  thermostatOhms: number;
  /** Shows a display of its own even without 24 V. */
  thermostatBatteries: boolean;
  hasPressureSwitches: boolean;
  highSwitch: Path;
  lowSwitch: Path;
  /** A timer or lockout between the switches and the coil. */
  delay: Path;
  /** Tripped, the high pressure switch stays out until it is reset or the pressure has long been down. */
  highStaysOut: boolean;
  /** The high pressure switch trips when the condenser gets no air. */
  highTripsWithoutFan: boolean;
  /** The low pressure switch trips when the indoor coil gets no air. */
  lowTripsWithoutBlower: boolean;
  /** Its head is so high that it trips while it runs. */
  tripsOnHead: boolean;
  // second stage
  twoStage: boolean;
  /** Closes R to Y2 as well when one stage does not keep up. */
  thermostatCallsSecond: boolean;
  y2WireIndoors: Path;
  y2WireOutdoors: Path;
  /** Solenoid of 24 V that closes the bypass of the compressor; its ohms and its reactance at 60 hertz. */
  unloaderOhms: Path;
  unloaderReactance: number;
  /** It pulls only from so many volts. */
  unloaderPullVolts: number;
  /** Its valve or bypass stays where it bypasses, whatever the solenoid does. */
  stuckUnloaded: boolean;
  /** Of the full load's amps, what it draws unloaded; and how far the cooling falls short, 1 for the typical unit. */
  unloadedAmps: number;
  unloadedShift: number;
  // air and refrigerant
  heatPump: boolean;
  metering: 'fixed-orifice' | 'thermostatic-valve';
  refrigerant: RefrigerantId;
  residuals: Residuals;
  filterDirty: boolean;
  coilIced: boolean;
  outdoorCoilDirty: boolean;
  oilAtJoint: boolean;
  reversed: boolean;
}

/** A unit of its own: nothing of it is shared with the first. */
export function copyUnit(unit: Unit): Unit {
  return {
    ...unit,
    legOhms: [...unit.legOhms],
    house120Ohms: [...unit.house120Ohms],
    breaker: [...unit.breaker],
    feeder: [...unit.feeder],
    blade: [...unit.blade],
    fuse: [...unit.fuse],
    whip: [...unit.whip],
    poleClosed: [...unit.poleClosed],
    poleStuck: [...unit.poleStuck],
    compressor: { ...unit.compressor },
    fan: { ...unit.fan },
    blower: { ...unit.blower },
    residuals: { ...unit.residuals },
  };
}
