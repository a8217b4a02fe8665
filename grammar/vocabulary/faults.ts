import { rowsBy } from './rows-by.ts';

/**
 * What may be wrong with the unit. `name` is said aloud and shown; terminal letters are the trade's own marks.
 * `something-else` keeps the list honest: nothing is forced into it. `nothing-wrong` matters after a repair.
 */
export interface FaultName {
  readonly id: string;
  readonly name: string;
}

export const FAULTS = [
  // supply
  { id: 'supply-low', name: 'supply voltage low' },
  { id: 'lost-utility-leg', name: 'one utility leg lost' },
  { id: 'breaker-tripped', name: 'outdoor breaker tripped' },
  { id: 'breaker-pole-1-open', name: 'breaker pole one open' },
  { id: 'breaker-pole-2-open', name: 'breaker pole two open' },
  { id: 'disconnect-open', name: 'disconnect open' },
  { id: 'disconnect-blade-1-burnt', name: 'disconnect blade one burnt' },
  { id: 'disconnect-blade-2-burnt', name: 'disconnect blade two burnt' },
  { id: 'line-fuse-1-open', name: 'line fuse one open' },
  { id: 'line-fuse-2-open', name: 'line fuse two open' },
  { id: 'loose-lug-1', name: 'loose lug on leg one' },
  { id: 'loose-lug-2', name: 'loose lug on leg two' },
  { id: 'air-handler-no-power', name: 'air handler without power' },
  // contactor
  { id: 'contactor-pole-1-burnt', name: 'contactor pole one burnt' },
  { id: 'contactor-pole-2-burnt', name: 'contactor pole two burnt' },
  { id: 'contactor-pole-1-stuck-closed', name: 'contactor pole one stuck closed' },
  { id: 'contactor-pole-2-stuck-closed', name: 'contactor pole two stuck closed' },
  { id: 'contactor-stuck-closed', name: 'contactor stuck closed' },
  { id: 'contactor-jammed-open', name: 'contactor jammed open' },
  { id: 'contactor-coil-open', name: 'contactor coil open' },
  { id: 'contactor-coil-shorted', name: 'contactor coil shorted' },
  // capacitors
  { id: 'herm-capacitor-weak', name: 'capacitor herm section weak' },
  { id: 'herm-capacitor-open', name: 'capacitor herm section open' },
  { id: 'herm-capacitor-shorted', name: 'capacitor herm section shorted' },
  { id: 'fan-capacitor-weak', name: 'capacitor fan section weak' },
  { id: 'fan-capacitor-open', name: 'capacitor fan section open' },
  { id: 'fan-capacitor-shorted', name: 'capacitor fan section shorted' },
  { id: 'hard-start-failed', name: 'hard-start part failed' },
  { id: 'capacitor-lead-off', name: 'capacitor common lead burnt off' },
  // compressor
  { id: 'compressor-lead-burnt', name: 'compressor lead burnt' },
  { id: 'compressor-run-winding-open', name: 'compressor run winding open' },
  { id: 'compressor-start-winding-open', name: 'compressor start winding open' },
  { id: 'compressor-grounded', name: 'compressor winding grounded' },
  { id: 'compressor-overload-open', name: 'compressor overload stays open' },
  { id: 'compressor-seized', name: 'compressor seized' },
  { id: 'crankcase-heater-open', name: 'crankcase heater open' },
  // outdoor fan
  { id: 'fan-lead-off', name: 'fan motor lead off' },
  { id: 'fan-run-winding-open', name: 'fan motor run winding open' },
  { id: 'fan-start-winding-open', name: 'fan motor start winding open' },
  { id: 'fan-motor-grounded', name: 'fan motor grounded' },
  { id: 'fan-bearings-seized', name: 'fan motor bearings seized' },
  { id: 'defrost-fan-relay-open', name: 'fan relay on the defrost board open' },
  // control circuit
  { id: 'transformer-dead', name: 'transformer dead' },
  { id: 'control-fuse-open', name: 'control fuse open' },
  { id: 'control-short-Y-C', name: 'Y shorted to C' },
  { id: 'control-short-R-C', name: 'R shorted to C' },
  { id: 'R-wire-broken', name: 'R wire broken to the thermostat' },
  { id: 'Y-wire-broken-indoors', name: 'Y wire broken, thermostat to air handler' },
  { id: 'Y-wire-broken-outdoors', name: 'Y wire broken, air handler to condenser' },
  { id: 'C-wire-broken', name: 'C wire broken to the condenser' },
  { id: 'G-wire-broken', name: 'G wire broken to the thermostat' },
  { id: 'O-wire-broken', name: 'O wire broken to the reversing valve' },
  { id: 'thermostat-not-calling', name: 'thermostat does not call' },
  { id: 'thermostat-no-fan-call', name: 'thermostat does not call the blower' },
  { id: 'delay-stays-open', name: 'delay timer or lockout stays open' },
  { id: 'float-switch-open', name: 'float switch open' },
  { id: 'high-switch-open', name: 'high pressure switch stays open' },
  { id: 'low-switch-open', name: 'low pressure switch stays open' },
  { id: 'door-switch-open', name: 'blower door switch open' },
  // indoor air
  { id: 'blower-motor-open', name: 'blower motor winding open' },
  { id: 'blower-seized', name: 'blower motor seized' },
  { id: 'blower-relay-open', name: 'blower relay does not close' },
  { id: 'blower-capacitor-weak', name: 'blower capacitor weak' },
  { id: 'filter-dirty', name: 'filter dirty' },
  { id: 'indoor-coil-iced', name: 'indoor coil iced' },
  { id: 'low-indoor-air', name: 'low indoor air flow' },
  // refrigerant side
  { id: 'low-charge', name: 'low charge' },
  { id: 'overcharge', name: 'overcharge' },
  { id: 'liquid-restriction', name: 'liquid line restriction' },
  { id: 'condenser-dirty', name: 'outdoor coil dirty' },
  { id: 'non-condensables', name: 'non-condensable gas' },
  { id: 'leaking-valves', name: 'compressor valves leaking' },
  { id: 'reversing-valve-stuck', name: 'reversing valve stuck in heating' },
  // second stage
  { id: 'thermostat-no-second-stage', name: 'thermostat does not call the second stage' },
  { id: 'Y2-wire-broken', name: 'Y two wire broken to the condenser' },
  { id: 'unloader-solenoid-open', name: 'unloader solenoid open' },
  { id: 'unloader-stuck-unloaded', name: 'unloader valve stuck unloaded' },
  // the open ends
  { id: 'nothing-wrong', name: 'nothing wrong found' },
  { id: 'something-else', name: 'something else' },
] as const satisfies readonly FaultName[];
export type FaultId = (typeof FAULTS)[number]['id'];
export const FAULTS_BY_ID = rowsBy('id', FAULTS);
