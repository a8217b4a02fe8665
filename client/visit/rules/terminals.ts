import type { PointId } from '../../../grammar/vocabulary/points.ts';

/** What a unit may do without. */
export type Equipment =
  | 'fuses'
  | 'heater'
  | 'start-capacitor'
  | 'blower-capacitor'
  | 'float-switch'
  | 'pressure-switches'
  | 'reversing-valve'
  | 'second-stage';

interface Terminal {
  /** What the point is there with; `always`: every unit has it. */
  readonly with: Equipment | 'always';
  /**
   * Terminals that share a conductor in a single-phase unit with a dual run capacitor: a wire may land on any of its
   * own group. `its own`: on this one alone. Common practice; the diagram on the unit governs.
   */
  readonly conductor: string;
}

/** What the visit knows of each point beside its name and zone. */
export const TERMINALS: Readonly<Record<PointId, Terminal>> = {
  'service-1': { with: 'always', conductor: 'its own' },
  'service-2': { with: 'always', conductor: 'its own' },
  'breaker-1': { with: 'always', conductor: 'its own' },
  'breaker-2': { with: 'always', conductor: 'its own' },
  'disconnect-line-1': { with: 'always', conductor: 'its own' },
  'disconnect-line-2': { with: 'always', conductor: 'its own' },
  'disconnect-load-1': { with: 'always', conductor: 'leg one' },
  'disconnect-load-2': { with: 'always', conductor: 'leg two' },
  'fuse-1-line': { with: 'fuses', conductor: 'its own' },
  'fuse-1-load': { with: 'fuses', conductor: 'its own' },
  'fuse-2-line': { with: 'fuses', conductor: 'its own' },
  'fuse-2-load': { with: 'fuses', conductor: 'its own' },
  L1: { with: 'always', conductor: 'leg one' },
  L2: { with: 'always', conductor: 'leg two' },
  T1: { with: 'always', conductor: 'common of the motors' },
  T2: { with: 'always', conductor: 'run side' },
  'coil-1': { with: 'always', conductor: 'its own' },
  'coil-2': { with: 'always', conductor: 'its own' },
  'cap-C': { with: 'always', conductor: 'run side' },
  'cap-HERM': { with: 'always', conductor: 'start of the compressor' },
  'cap-FAN': { with: 'always', conductor: 'start of the fan' },
  'start-cap-1': { with: 'start-capacitor', conductor: 'its own' },
  'start-cap-2': { with: 'start-capacitor', conductor: 'its own' },
  'comp-C': { with: 'always', conductor: 'common of the motors' },
  'comp-R': { with: 'always', conductor: 'run side' },
  'comp-S': { with: 'always', conductor: 'start of the compressor' },
  shell: { with: 'always', conductor: 'its own' },
  'fan-C': { with: 'always', conductor: 'common of the motors' },
  'fan-R': { with: 'always', conductor: 'run side' },
  'fan-S': { with: 'always', conductor: 'start of the fan' },
  'fan-frame': { with: 'always', conductor: 'its own' },
  'heater-1': { with: 'heater', conductor: 'its own' },
  'heater-2': { with: 'heater', conductor: 'its own' },
  'R@thermostat': { with: 'always', conductor: 'its own' },
  'C@thermostat': { with: 'always', conductor: 'its own' },
  'Y@thermostat': { with: 'always', conductor: 'its own' },
  'Y2@thermostat': { with: 'second-stage', conductor: 'its own' },
  'G@thermostat': { with: 'always', conductor: 'its own' },
  'O@thermostat': { with: 'reversing-valve', conductor: 'its own' },
  'B@thermostat': { with: 'reversing-valve', conductor: 'its own' },
  'W@thermostat': { with: 'always', conductor: 'its own' },
  'R@air-handler': { with: 'always', conductor: 'its own' },
  'C@air-handler': { with: 'always', conductor: 'its own' },
  'Y@air-handler': { with: 'always', conductor: 'its own' },
  'Y2@air-handler': { with: 'second-stage', conductor: 'its own' },
  'G@air-handler': { with: 'always', conductor: 'its own' },
  'O@air-handler': { with: 'reversing-valve', conductor: 'its own' },
  'B@air-handler': { with: 'reversing-valve', conductor: 'its own' },
  'W@air-handler': { with: 'always', conductor: 'its own' },
  'R@condenser': { with: 'always', conductor: 'its own' },
  'C@condenser': { with: 'always', conductor: 'its own' },
  'Y@condenser': { with: 'always', conductor: 'its own' },
  'Y2@condenser': { with: 'second-stage', conductor: 'its own' },
  'O@condenser': { with: 'reversing-valve', conductor: 'its own' },
  'unloader-1': { with: 'second-stage', conductor: 'its own' },
  'unloader-2': { with: 'second-stage', conductor: 'its own' },
  'float-1': { with: 'float-switch', conductor: 'its own' },
  'float-2': { with: 'float-switch', conductor: 'its own' },
  'high-switch-1': { with: 'pressure-switches', conductor: 'its own' },
  'high-switch-2': { with: 'pressure-switches', conductor: 'its own' },
  'low-switch-1': { with: 'pressure-switches', conductor: 'its own' },
  'low-switch-2': { with: 'pressure-switches', conductor: 'its own' },
  'control-fuse-1': { with: 'always', conductor: 'its own' },
  'control-fuse-2': { with: 'always', conductor: 'its own' },
  'transformer-primary-1': { with: 'always', conductor: 'its own' },
  'transformer-primary-2': { with: 'always', conductor: 'its own' },
  'transformer-secondary-1': { with: 'always', conductor: 'its own' },
  'transformer-secondary-2': { with: 'always', conductor: 'its own' },
  'blower-1': { with: 'always', conductor: 'its own' },
  'blower-2': { with: 'always', conductor: 'its own' },
  'blower-cap-1': { with: 'blower-capacitor', conductor: 'its own' },
  'blower-cap-2': { with: 'blower-capacitor', conductor: 'its own' },
  'handler-L1': { with: 'always', conductor: 'its own' },
  'handler-L2': { with: 'always', conductor: 'its own' },
  'door-switch-1': { with: 'always', conductor: 'its own' },
  'door-switch-2': { with: 'always', conductor: 'its own' },
  neutral: { with: 'always', conductor: 'its own' },
  ground: { with: 'always', conductor: 'its own' },
  compressor: { with: 'always', conductor: 'its own' },
  'fan-motor': { with: 'always', conductor: 'its own' },
  'blower-motor': { with: 'always', conductor: 'its own' },
  'crankcase-heater': { with: 'heater', conductor: 'its own' },
  'supply-air': { with: 'always', conductor: 'its own' },
  'return-air': { with: 'always', conductor: 'its own' },
  'outdoor-air': { with: 'always', conductor: 'its own' },
  'condenser-air-out': { with: 'always', conductor: 'its own' },
  'suction-line': { with: 'always', conductor: 'its own' },
  'liquid-line': { with: 'always', conductor: 'its own' },
  'discharge-line': { with: 'always', conductor: 'its own' },
  'suction-port': { with: 'always', conductor: 'its own' },
  'liquid-port': { with: 'always', conductor: 'its own' },
  system: { with: 'always', conductor: 'its own' },
  'return-static': { with: 'always', conductor: 'its own' },
  'supply-static': { with: 'always', conductor: 'its own' },
};
