/**
 * Every place a probe, clamp, clip or gauge can go. Terminal letters and L/T/C/HERM/FAN are the trade's own marks.
 * A terminal that the trade gives the same letter in several places carries its place: `R@thermostat`.
 */
export interface Point {
  readonly id: string;
  /** What it is called aloud and on paper. */
  readonly name: string;
  readonly zone:
    | 'disconnect-line'
    | 'outdoor-load'
    | 'control'
    | 'capacitor-herm'
    | 'capacitor-fan'
    | 'air-handler'
    | 'none';
}

export const POINTS = [
  { id: 'ground', name: 'ground', zone: 'none' },
  { id: 'neutral', name: 'neutral', zone: 'none' },
  // outdoor unit, line circuit
  { id: 'breaker-1', name: 'breaker pole one', zone: 'disconnect-line' },
  { id: 'breaker-2', name: 'breaker pole two', zone: 'disconnect-line' },
  { id: 'disconnect-line-1', name: 'disconnect line one', zone: 'disconnect-line' },
  { id: 'disconnect-line-2', name: 'disconnect line two', zone: 'disconnect-line' },
  { id: 'disconnect-load-1', name: 'disconnect load one', zone: 'outdoor-load' },
  { id: 'disconnect-load-2', name: 'disconnect load two', zone: 'outdoor-load' },
  { id: 'fuse-1-line', name: 'fuse one line end', zone: 'disconnect-line' },
  { id: 'fuse-1-load', name: 'fuse one load end', zone: 'outdoor-load' },
  { id: 'fuse-2-line', name: 'fuse two line end', zone: 'disconnect-line' },
  { id: 'fuse-2-load', name: 'fuse two load end', zone: 'outdoor-load' },
  { id: 'L1', name: 'leg one', zone: 'outdoor-load' },
  { id: 'L2', name: 'leg two', zone: 'outdoor-load' },
  { id: 'T1', name: 'T one', zone: 'outdoor-load' },
  { id: 'T2', name: 'T two', zone: 'outdoor-load' },
  { id: 'coil-1', name: 'contactor coil, side one', zone: 'control' },
  { id: 'coil-2', name: 'contactor coil, side two', zone: 'control' },
  // capacitor
  { id: 'cap-C', name: 'capacitor common', zone: 'outdoor-load' },
  { id: 'cap-HERM', name: 'capacitor herm', zone: 'capacitor-herm' },
  { id: 'cap-FAN', name: 'capacitor fan', zone: 'capacitor-fan' },
  // compressor and motors
  { id: 'comp-C', name: 'compressor common', zone: 'outdoor-load' },
  { id: 'comp-R', name: 'compressor run', zone: 'outdoor-load' },
  { id: 'comp-S', name: 'compressor start', zone: 'outdoor-load' },
  { id: 'shell', name: 'compressor shell', zone: 'none' },
  { id: 'fan-C', name: 'fan motor common', zone: 'outdoor-load' },
  { id: 'fan-R', name: 'fan motor run', zone: 'outdoor-load' },
  { id: 'fan-S', name: 'fan motor start', zone: 'outdoor-load' },
  { id: 'fan-frame', name: 'fan motor frame', zone: 'none' },
  { id: 'heater-1', name: 'crankcase heater, side one', zone: 'outdoor-load' },
  { id: 'heater-2', name: 'crankcase heater, side two', zone: 'outdoor-load' },
  // control circuit
  { id: 'R@thermostat', name: 'R at the thermostat', zone: 'control' },
  { id: 'C@thermostat', name: 'C at the thermostat', zone: 'control' },
  { id: 'Y@thermostat', name: 'Y at the thermostat', zone: 'control' },
  { id: 'G@thermostat', name: 'G at the thermostat', zone: 'control' },
  { id: 'O@thermostat', name: 'O at the thermostat', zone: 'control' },
  { id: 'B@thermostat', name: 'B at the thermostat', zone: 'control' },
  { id: 'W@thermostat', name: 'W at the thermostat', zone: 'control' },
  { id: 'R@air-handler', name: 'R at the air handler', zone: 'control' },
  { id: 'C@air-handler', name: 'C at the air handler', zone: 'control' },
  { id: 'Y@air-handler', name: 'Y at the air handler', zone: 'control' },
  { id: 'G@air-handler', name: 'G at the air handler', zone: 'control' },
  { id: 'O@air-handler', name: 'O at the air handler', zone: 'control' },
  { id: 'B@air-handler', name: 'B at the air handler', zone: 'control' },
  { id: 'W@air-handler', name: 'W at the air handler', zone: 'control' },
  { id: 'R@condenser', name: 'R at the condenser', zone: 'control' },
  { id: 'C@condenser', name: 'C at the condenser', zone: 'control' },
  { id: 'Y@condenser', name: 'Y at the condenser', zone: 'control' },
  { id: 'O@condenser', name: 'O at the condenser', zone: 'control' },
  { id: 'float-1', name: 'float switch, side one', zone: 'control' },
  { id: 'float-2', name: 'float switch, side two', zone: 'control' },
  { id: 'high-switch-1', name: 'high pressure switch, side one', zone: 'control' },
  { id: 'high-switch-2', name: 'high pressure switch, side two', zone: 'control' },
  { id: 'low-switch-1', name: 'low pressure switch, side one', zone: 'control' },
  { id: 'low-switch-2', name: 'low pressure switch, side two', zone: 'control' },
  { id: 'control-fuse-1', name: 'control fuse, side one', zone: 'control' },
  { id: 'control-fuse-2', name: 'control fuse, side two', zone: 'control' },
  // indoor unit
  { id: 'transformer-primary-1', name: 'transformer primary, side one', zone: 'air-handler' },
  { id: 'transformer-primary-2', name: 'transformer primary, side two', zone: 'air-handler' },
  { id: 'transformer-secondary-1', name: 'transformer secondary, side one', zone: 'control' },
  { id: 'transformer-secondary-2', name: 'transformer secondary, side two', zone: 'control' },
  { id: 'blower-1', name: 'blower motor, line one', zone: 'air-handler' },
  { id: 'blower-2', name: 'blower motor, line two', zone: 'air-handler' },
  { id: 'blower-cap-1', name: 'blower capacitor, side one', zone: 'air-handler' },
  { id: 'blower-cap-2', name: 'blower capacitor, side two', zone: 'air-handler' },
  { id: 'handler-L1', name: 'air handler leg one', zone: 'air-handler' },
  { id: 'handler-L2', name: 'air handler leg two', zone: 'air-handler' },
  { id: 'door-switch-1', name: 'blower door switch, side one', zone: 'air-handler' },
  { id: 'door-switch-2', name: 'blower door switch, side two', zone: 'air-handler' },
  // single places: a clamp around a lead, a pipe, an air stream, a gauge port
  { id: 'compressor', name: 'compressor', zone: 'outdoor-load' },
  { id: 'fan-motor', name: 'outdoor fan', zone: 'outdoor-load' },
  { id: 'blower-motor', name: 'blower', zone: 'air-handler' },
  { id: 'crankcase-heater', name: 'crankcase heater', zone: 'outdoor-load' },
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
