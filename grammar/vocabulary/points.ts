import type { PlaceId } from './places.ts';
import { rowsBy } from './rows-by.ts';
import type { ZoneId } from './zones.ts';

/**
 * Every place a probe, clamp, clip or gauge can go. Terminal letters and L/T/C/HERM/FAN are the trade's own marks.
 * A terminal that the trade gives the same letter in several places carries its place: `R@thermostat`.
 *
 * The order of the rows is the order of the two probe tips in a reading's `at` (ground, shell and frame come last).
 */
export interface Point {
  readonly id: string;
  /** What it is called aloud and on paper. */
  readonly name: string;
  readonly zone: ZoneId | 'none';
  /** Where it stands: "R at the thermostat". */
  readonly place?: PlaceId;
  /** How it may be said as a probe tip, besides its name. Several points may share a name: place and value decide. */
  readonly say?: string;
}

export const POINTS = [
  // outdoor unit, line circuit
  {
    id: 'service-1',
    name: 'service leg one at the panel',
    zone: 'disconnect-line',
    place: 'panel',
    say: 'service (leg | line) one | panel bus one',
  },
  {
    id: 'service-2',
    name: 'service leg two at the panel',
    zone: 'disconnect-line',
    place: 'panel',
    say: 'service (leg | line) two | panel bus two',
  },
  {
    id: 'breaker-1',
    name: 'breaker pole one',
    zone: 'disconnect-line',
    place: 'panel',
    say: 'breaker [pole | leg | lug] one | first breaker pole',
  },
  {
    id: 'breaker-2',
    name: 'breaker pole two',
    zone: 'disconnect-line',
    place: 'panel',
    say: 'breaker [pole | leg | lug] two | second breaker pole',
  },
  {
    id: 'disconnect-line-1',
    name: 'disconnect line one',
    zone: 'disconnect-line',
    place: 'disconnect',
    say: 'disconnect line [side | leg] one | line side one | line lug one | disconnect l one',
  },
  {
    id: 'disconnect-line-2',
    name: 'disconnect line two',
    zone: 'disconnect-line',
    place: 'disconnect',
    say: 'disconnect line [side | leg] two | line side two | line lug two | disconnect l two',
  },
  {
    id: 'disconnect-load-1',
    name: 'disconnect load one',
    zone: 'outdoor-load',
    place: 'disconnect',
    say: 'disconnect load [side | leg] one | load side one | load lug one | whip [side | leg] one | disconnect t one',
  },
  {
    id: 'disconnect-load-2',
    name: 'disconnect load two',
    zone: 'outdoor-load',
    place: 'disconnect',
    say: 'disconnect load [side | leg] two | load side two | load lug two | whip [side | leg] two | disconnect t two',
  },
  {
    id: 'fuse-1-line',
    name: 'fuse one line end',
    zone: 'disconnect-line',
    place: 'disconnect',
    say: 'fuse one line [end | side] | fuse one top | top of fuse one | line (end | side) of fuse one',
  },
  {
    id: 'fuse-1-load',
    name: 'fuse one load end',
    zone: 'outdoor-load',
    place: 'disconnect',
    say: 'fuse one load [end | side] | fuse one bottom | bottom of fuse one | load (end | side) of fuse one',
  },
  {
    id: 'fuse-2-line',
    name: 'fuse two line end',
    zone: 'disconnect-line',
    place: 'disconnect',
    say: 'fuse two line [end | side] | fuse two top | top of fuse two | line (end | side) of fuse two',
  },
  {
    id: 'fuse-2-load',
    name: 'fuse two load end',
    zone: 'outdoor-load',
    place: 'disconnect',
    say: 'fuse two load [end | side] | fuse two bottom | bottom of fuse two | load (end | side) of fuse two',
  },
  {
    id: 'L1',
    name: 'leg one',
    zone: 'outdoor-load',
    place: 'contactor',
    say: 'leg one | line one | l one | left leg | first leg | contactor (l | line | leg) one',
  },
  {
    id: 'L2',
    name: 'leg two',
    zone: 'outdoor-load',
    place: 'contactor',
    say: 'leg two | line two | l two | right leg | second leg | other leg | contactor (l | line | leg) two',
  },
  {
    id: 'T1',
    name: 'T one',
    zone: 'outdoor-load',
    place: 'contactor',
    say: 't one | load one | terminal one | contactor (t | load) one',
  },
  {
    id: 'T2',
    name: 'T two',
    zone: 'outdoor-load',
    place: 'contactor',
    say: 't two | load two | terminal two | contactor (t | load) two',
  },
  {
    id: 'coil-1',
    name: 'contactor coil, side one',
    zone: 'control',
    place: 'contactor',
    say: '[contactor] coil (side | terminal) one',
  },
  {
    id: 'coil-2',
    name: 'contactor coil, side two',
    zone: 'control',
    place: 'contactor',
    say: '[contactor] coil (side | terminal) two',
  },
  // capacitor
  {
    id: 'cap-C',
    name: 'capacitor common',
    zone: 'outdoor-load',
    place: 'capacitor',
    say: '[cap | capacitor] (c | common)',
  },
  {
    id: 'cap-HERM',
    name: 'capacitor herm',
    zone: 'capacitor-herm',
    place: 'capacitor',
    say: '[cap | capacitor] herm | herm [terminal | section]',
  },
  {
    id: 'cap-FAN',
    name: 'capacitor fan',
    zone: 'capacitor-fan',
    place: 'capacitor',
    say: '[cap | capacitor] fan | fan (terminal | section)',
  },
  {
    id: 'start-cap-1',
    name: 'start capacitor, side one',
    zone: 'capacitor-start',
    say: 'start (cap | capacitor) (side | terminal) one',
  },
  {
    id: 'start-cap-2',
    name: 'start capacitor, side two',
    zone: 'capacitor-start',
    say: 'start (cap | capacitor) (side | terminal) two',
  },
  // compressor and motors
  {
    id: 'comp-C',
    name: 'compressor common',
    zone: 'outdoor-load',
    place: 'compressor',
    say: '[compressor] (c | common)',
  },
  { id: 'comp-R', name: 'compressor run', zone: 'outdoor-load', place: 'compressor', say: '[compressor] (r | run)' },
  {
    id: 'comp-S',
    name: 'compressor start',
    zone: 'outdoor-load',
    place: 'compressor',
    say: '[compressor] (s | start)',
  },
  {
    id: 'shell',
    name: 'compressor shell',
    zone: 'none',
    place: 'compressor',
    say: '[compressor] shell | compressor body | case | ground',
  },
  {
    id: 'fan-C',
    name: 'fan motor common',
    zone: 'outdoor-load',
    place: 'fan-motor',
    say: '[fan [motor]] (c | common)',
  },
  { id: 'fan-R', name: 'fan motor run', zone: 'outdoor-load', place: 'fan-motor', say: '[fan [motor]] (r | run)' },
  { id: 'fan-S', name: 'fan motor start', zone: 'outdoor-load', place: 'fan-motor', say: '[fan [motor]] (s | start)' },
  {
    id: 'fan-frame',
    name: 'fan motor frame',
    zone: 'none',
    place: 'fan-motor',
    say: '[fan [motor]] (frame | housing) | ground',
  },
  {
    id: 'heater-1',
    name: 'crankcase heater, side one',
    zone: 'outdoor-load',
    place: 'compressor',
    say: '[crankcase] heater (side | lead) one',
  },
  {
    id: 'heater-2',
    name: 'crankcase heater, side two',
    zone: 'outdoor-load',
    place: 'compressor',
    say: '[crankcase] heater (side | lead) two',
  },
  // control circuit; colours are the usual ones of the cable, common practice, not a rule
  { id: 'R@thermostat', name: 'R at the thermostat', zone: 'control', place: 'thermostat', say: 'r | red | r c' },
  { id: 'C@thermostat', name: 'C at the thermostat', zone: 'control', place: 'thermostat', say: 'c | common' },
  { id: 'Y@thermostat', name: 'Y at the thermostat', zone: 'control', place: 'thermostat', say: 'y | yellow' },
  { id: 'Y2@thermostat', name: 'Y two at the thermostat', zone: 'control', place: 'thermostat', say: 'y two' },
  { id: 'G@thermostat', name: 'G at the thermostat', zone: 'control', place: 'thermostat', say: 'g | green' },
  { id: 'O@thermostat', name: 'O at the thermostat', zone: 'control', place: 'thermostat', say: 'o | orange' },
  { id: 'B@thermostat', name: 'B at the thermostat', zone: 'control', place: 'thermostat', say: 'b | blue' },
  { id: 'W@thermostat', name: 'W at the thermostat', zone: 'control', place: 'thermostat', say: 'w | white' },
  { id: 'R@air-handler', name: 'R at the air handler', zone: 'control', place: 'air-handler', say: 'r | red' },
  { id: 'C@air-handler', name: 'C at the air handler', zone: 'control', place: 'air-handler', say: 'c | common' },
  { id: 'Y@air-handler', name: 'Y at the air handler', zone: 'control', place: 'air-handler', say: 'y | yellow' },
  { id: 'Y2@air-handler', name: 'Y two at the air handler', zone: 'control', place: 'air-handler', say: 'y two' },
  { id: 'G@air-handler', name: 'G at the air handler', zone: 'control', place: 'air-handler', say: 'g | green' },
  { id: 'O@air-handler', name: 'O at the air handler', zone: 'control', place: 'air-handler', say: 'o | orange' },
  { id: 'B@air-handler', name: 'B at the air handler', zone: 'control', place: 'air-handler', say: 'b | blue' },
  { id: 'W@air-handler', name: 'W at the air handler', zone: 'control', place: 'air-handler', say: 'w | white' },
  { id: 'R@condenser', name: 'R at the condenser', zone: 'control', place: 'condenser', say: 'r | red' },
  { id: 'C@condenser', name: 'C at the condenser', zone: 'control', place: 'condenser', say: 'c | common' },
  { id: 'Y@condenser', name: 'Y at the condenser', zone: 'control', place: 'condenser', say: 'y | yellow' },
  { id: 'Y2@condenser', name: 'Y two at the condenser', zone: 'control', place: 'condenser', say: 'y two' },
  { id: 'O@condenser', name: 'O at the condenser', zone: 'control', place: 'condenser', say: 'o | orange' },
  {
    id: 'unloader-1',
    name: 'unloader solenoid, side one',
    zone: 'control',
    place: 'compressor',
    say: '[unloader] solenoid (side | terminal | lead) one',
  },
  {
    id: 'unloader-2',
    name: 'unloader solenoid, side two',
    zone: 'control',
    place: 'compressor',
    say: '[unloader] solenoid (side | terminal | lead) two',
  },
  {
    id: 'float-1',
    name: 'float switch, side one',
    zone: 'control',
    place: 'air-handler',
    say: 'float [switch] (side | lead) one',
  },
  {
    id: 'float-2',
    name: 'float switch, side two',
    zone: 'control',
    place: 'air-handler',
    say: 'float [switch] (side | lead) two',
  },
  {
    id: 'high-switch-1',
    name: 'high pressure switch, side one',
    zone: 'control',
    place: 'condenser',
    say: 'high [pressure] switch (side | lead) one',
  },
  {
    id: 'high-switch-2',
    name: 'high pressure switch, side two',
    zone: 'control',
    place: 'condenser',
    say: 'high [pressure] switch (side | lead) two',
  },
  {
    id: 'low-switch-1',
    name: 'low pressure switch, side one',
    zone: 'control',
    place: 'condenser',
    say: 'low [pressure] switch (side | lead) one',
  },
  {
    id: 'low-switch-2',
    name: 'low pressure switch, side two',
    zone: 'control',
    place: 'condenser',
    say: 'low [pressure] switch (side | lead) two',
  },
  {
    id: 'control-fuse-1',
    name: 'control fuse, side one',
    zone: 'control',
    place: 'air-handler',
    say: 'control fuse (side | end) one',
  },
  {
    id: 'control-fuse-2',
    name: 'control fuse, side two',
    zone: 'control',
    place: 'air-handler',
    say: 'control fuse (side | end) two',
  },
  // indoor unit
  {
    id: 'transformer-primary-1',
    name: 'transformer primary, side one',
    zone: 'air-handler',
    place: 'air-handler',
    say: '[transformer] primary (side | lead) one',
  },
  {
    id: 'transformer-primary-2',
    name: 'transformer primary, side two',
    zone: 'air-handler',
    place: 'air-handler',
    say: '[transformer] primary (side | lead) two',
  },
  {
    id: 'transformer-secondary-1',
    name: 'transformer secondary, side one',
    zone: 'control',
    place: 'air-handler',
    say: '[transformer] secondary (side | lead) one',
  },
  {
    id: 'transformer-secondary-2',
    name: 'transformer secondary, side two',
    zone: 'control',
    place: 'air-handler',
    say: '[transformer] secondary (side | lead) two',
  },
  {
    id: 'blower-1',
    name: 'blower motor, line one',
    zone: 'air-handler',
    place: 'air-handler',
    say: 'blower [motor] (line | lead | side) one',
  },
  {
    id: 'blower-2',
    name: 'blower motor, line two',
    zone: 'air-handler',
    place: 'air-handler',
    say: 'blower [motor] (line | lead | side) two',
  },
  {
    id: 'blower-cap-1',
    name: 'blower capacitor, side one',
    zone: 'air-handler',
    place: 'air-handler',
    say: 'blower (cap | capacitor) (side | lead) one',
  },
  {
    id: 'blower-cap-2',
    name: 'blower capacitor, side two',
    zone: 'air-handler',
    place: 'air-handler',
    say: 'blower (cap | capacitor) (side | lead) two',
  },
  {
    id: 'handler-L1',
    name: 'air handler leg one',
    zone: 'air-handler',
    place: 'air-handler',
    say: '(air handler | indoor | handler) (leg | line | l) one | leg one | line one | l one',
  },
  {
    id: 'handler-L2',
    name: 'air handler leg two',
    zone: 'air-handler',
    place: 'air-handler',
    say: '(air handler | indoor | handler) (leg | line | l) two | leg two | line two | l two',
  },
  {
    id: 'door-switch-1',
    name: 'blower door switch, side one',
    zone: 'air-handler',
    place: 'air-handler',
    say: '[blower] door switch (side | lead) one',
  },
  {
    id: 'door-switch-2',
    name: 'blower door switch, side two',
    zone: 'air-handler',
    place: 'air-handler',
    say: '[blower] door switch (side | lead) two',
  },
  // the other tip of many pairs
  { id: 'neutral', name: 'neutral', zone: 'none' },
  { id: 'ground', name: 'ground', zone: 'none', say: 'ground | the ground | earth | chassis' },
  // single places: a clamp around a lead, a pipe, an air stream, a gauge port
  { id: 'compressor', name: 'compressor', zone: 'outdoor-load', place: 'compressor' },
  { id: 'fan-motor', name: 'outdoor fan', zone: 'outdoor-load', place: 'fan-motor' },
  { id: 'blower-motor', name: 'blower', zone: 'air-handler', place: 'air-handler' },
  { id: 'crankcase-heater', name: 'crankcase heater', zone: 'outdoor-load', place: 'compressor' },
  { id: 'supply-air', name: 'supply air', zone: 'none' },
  { id: 'return-air', name: 'return air', zone: 'none' },
  { id: 'outdoor-air', name: 'outdoor air', zone: 'none' },
  { id: 'condenser-air-out', name: 'condenser leaving air', zone: 'none' },
  { id: 'suction-line', name: 'suction line', zone: 'none' },
  { id: 'liquid-line', name: 'liquid line', zone: 'none' },
  { id: 'discharge-line', name: 'discharge line', zone: 'none' },
  { id: 'suction-port', name: 'suction pressure', zone: 'none' },
  { id: 'liquid-port', name: 'liquid pressure', zone: 'none' },
  { id: 'system', name: 'system', zone: 'none' },
  { id: 'return-static', name: 'return static', zone: 'none' },
  { id: 'supply-static', name: 'supply static', zone: 'none' },
] as const satisfies readonly Point[];

export type PointId = (typeof POINTS)[number]['id'];
export const POINTS_BY_ID: Readonly<Record<PointId, Point>> = rowsBy('id', POINTS);

/** Whether a record's word for a terminal is one of the table's. */
export function isPoint(id: string | undefined): id is PointId {
  return id !== undefined && Object.hasOwn(POINTS_BY_ID, id);
}
