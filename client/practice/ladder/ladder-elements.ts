import type { PlaceId } from '../../../grammar/vocabulary/places.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { BranchName } from '../../diagnosis/circuit/topology.ts';

/** How a part of the circuit is drawn; our own signs. */
export type Sign = 'switch' | 'contact' | 'fuse' | 'wire' | 'winding' | 'coil' | 'capacitor' | 'heater' | 'supply';

/** Whether the unit has a part, by what is known of it. */
export type Known = 'there' | 'not-there' | 'not-said';

export interface LadderElement {
  readonly sign: Sign;
  /** Where its terminals are. */
  readonly place?: PlaceId;
  /** Its own two terminals, where no node of the circuit has them. */
  readonly ends?: readonly [PointId, PointId];
  /** Always there where nothing stands here. */
  readonly known?: (unit: UnitProfile) => Known;
}

const yesOrNo = (said: boolean | undefined): Known => (said === undefined ? 'not-said' : said ? 'there' : 'not-there');
const heatPump = ({ heatPump }: UnitProfile) => yesOrNo(heatPump);
/** Left out, the unit has one stage. */
const secondStage = ({ twoStage }: UnitProfile): Known => (twoStage === true ? 'there' : 'not-there');
const pressures = ({ pressureSwitches }: UnitProfile) => yesOrNo(pressureSwitches);
const fused = ({ fusedDisconnect }: UnitProfile) => yesOrNo(fusedDisconnect);
/** A motor with a drive of its own has no capacitor and no second winding that could be read. */
const ownDrive = ({ blowerDrive }: UnitProfile): Known =>
  blowerDrive === undefined ? 'not-said' : blowerDrive === 'electronic' ? 'not-there' : 'there';
const float =
  (where: 'breaks-R' | 'breaks-Y') =>
  ({ floatSwitch }: UnitProfile): Known =>
    floatSwitch === undefined ? 'not-said' : floatSwitch === where ? 'there' : 'not-there';

/** The branches of the circuit that are drawn: what leaks and what belongs to the house is not. */
export const LADDER_ELEMENTS: Readonly<Partial<Record<BranchName, LadderElement>>> = {
  'breaker-pole-1': { sign: 'switch', place: 'panel' },
  'breaker-pole-2': { sign: 'switch', place: 'panel' },
  'feeder-1': { sign: 'wire' },
  'feeder-2': { sign: 'wire' },
  'blade-1': { sign: 'switch', place: 'disconnect' },
  'blade-2': { sign: 'switch', place: 'disconnect' },
  'fuse-1': { sign: 'fuse', place: 'disconnect', known: fused },
  'fuse-2': { sign: 'fuse', place: 'disconnect', known: fused },
  'whip-1': { sign: 'wire' },
  'whip-2': { sign: 'wire' },
  'pole-1': { sign: 'contact', place: 'contactor' },
  'pole-2': {
    sign: 'contact',
    place: 'contactor',
    known: ({ contactorPoles }) =>
      contactorPoles === undefined ? 'not-said' : contactorPoles === 2 ? 'there' : 'not-there',
  },
  'crankcase-heater': {
    sign: 'heater',
    ends: ['heater-1', 'heater-2'],
    known: ({ crankcaseHeater }) => yesOrNo(crankcaseHeater),
  },
  overload: { sign: 'contact', place: 'compressor' },
  'compressor-run': { sign: 'winding', place: 'compressor' },
  'compressor-start': { sign: 'winding', place: 'compressor' },
  'capacitor-lead': { sign: 'wire' },
  'capacitor-herm': { sign: 'capacitor', place: 'capacitor' },
  'capacitor-fan': { sign: 'capacitor', place: 'capacitor' },
  'hard-start': {
    sign: 'capacitor',
    ends: ['start-cap-1', 'start-cap-2'],
    known: ({ hardStart }) => yesOrNo(hardStart),
  },
  'defrost-relay': { sign: 'contact', known: heatPump },
  'fan-run': { sign: 'winding', place: 'fan-motor' },
  'fan-start': { sign: 'winding', place: 'fan-motor' },
  'handler-feed-1': { sign: 'switch', place: 'air-handler' },
  'handler-feed-2': { sign: 'switch', place: 'air-handler' },
  'door-switch': { sign: 'switch', place: 'air-handler' },
  'blower-relay': { sign: 'contact', place: 'air-handler' },
  'blower-run': { sign: 'winding', place: 'air-handler' },
  'blower-winding-start': { sign: 'winding', place: 'air-handler', known: ownDrive },
  'blower-capacitor': { sign: 'capacitor', place: 'air-handler', known: ownDrive },
  'transformer-magnetising': { sign: 'coil', place: 'air-handler' },
  'control-fuse': { sign: 'fuse', place: 'air-handler' },
  'float-in-R': { sign: 'switch', ends: ['float-1', 'float-2'], known: float('breaks-R') },
  'R-wire-indoors': { sign: 'wire', place: 'air-handler' },
  'C-wire-indoors': { sign: 'wire', place: 'air-handler' },
  'thermostat-electronics': { sign: 'supply', place: 'thermostat' },
  'call-Y': { sign: 'contact', place: 'thermostat' },
  'call-G': { sign: 'contact', place: 'thermostat' },
  'call-O': { sign: 'contact', place: 'thermostat', known: heatPump },
  'Y-wire-indoors': { sign: 'wire', place: 'air-handler' },
  'float-in-Y': { sign: 'switch', ends: ['float-1', 'float-2'], known: float('breaks-Y') },
  'Y-wire-outdoors': { sign: 'wire', place: 'condenser' },
  'high-switch': { sign: 'switch', place: 'condenser', known: pressures },
  'low-switch': { sign: 'switch', place: 'condenser', known: pressures },
  delay: { sign: 'contact' },
  'contactor-coil': { sign: 'coil', place: 'contactor' },
  'C-wire-outdoors': { sign: 'wire', place: 'condenser' },
  'R-wire-outdoors': { sign: 'wire', place: 'condenser', known: heatPump },
  'G-wire': { sign: 'wire', place: 'air-handler' },
  'blower-relay-coil': { sign: 'coil', place: 'air-handler' },
  'O-wire-indoors': { sign: 'wire', place: 'air-handler', known: heatPump },
  'O-wire-outdoors': { sign: 'wire', place: 'condenser', known: heatPump },
  'reversing-valve-coil': { sign: 'coil', place: 'condenser', known: heatPump },
  'call-Y2': { sign: 'contact', place: 'thermostat', known: secondStage },
  'Y2-wire-indoors': { sign: 'wire', place: 'air-handler', known: secondStage },
  'Y2-wire-outdoors': { sign: 'wire', place: 'condenser', known: secondStage },
  'unloader-solenoid': { sign: 'coil', ends: ['unloader-1', 'unloader-2'], known: secondStage },
};
