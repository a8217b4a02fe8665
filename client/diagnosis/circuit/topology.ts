/**
 * The unit as a circuit: nodes and branches, plain data. Values come from a drawn unit (see branch-values.ts).
 * Wiring: capacitor C and compressor R on T1; compressor C and the fan's common on T2. `earth` is the reference;
 * the service neutral is bonded to it at the panel.
 */
export const NODES = [
  'earth',
  // service, outdoor breaker, disconnect, fuses, whip
  'service-1',
  'service-2',
  'breaker-1',
  'breaker-2',
  'disconnect-line-1',
  'disconnect-line-2',
  'fuse-1-line',
  'fuse-2-line',
  'fuse-1-load',
  'fuse-2-load',
  'L1',
  'L2',
  'T1',
  'T2',
  // loads
  'winding-common',
  'cap-common',
  'HERM',
  'fan-common',
  'FAN',
  // indoor unit
  'handler-1',
  'handler-2',
  'handler-door',
  'blower-1',
  'blower-start',
  // 24 V
  'secondary-hot',
  'fused-hot',
  'R-handler',
  'C-handler',
  'R-thermostat',
  'C-thermostat',
  'Y-thermostat',
  'G-thermostat',
  'O-thermostat',
  'Y-handler',
  'Y-float',
  'G-handler',
  'O-handler',
  'R-condenser',
  'Y-condenser',
  'Y-high',
  'Y-low',
  'coil-hot',
  'C-condenser',
  'O-condenser',
  // the second stage
  'Y2-thermostat',
  'Y2-handler',
  'Y2-condenser',
] as const;
export type NodeName = (typeof NODES)[number];

interface BranchShape {
  readonly id: string;
  readonly from: NodeName;
  readonly to: NodeName;
}

/** Two-terminal branches; each has one complex admittance. */
export const BRANCHES = [
  { id: 'utility-1', from: 'service-1', to: 'earth' },
  { id: 'utility-2', from: 'service-2', to: 'earth' },
  { id: 'house-240', from: 'service-1', to: 'service-2' },
  { id: 'house-120-1', from: 'service-1', to: 'earth' },
  { id: 'house-120-2', from: 'service-2', to: 'earth' },
  { id: 'breaker-pole-1', from: 'service-1', to: 'breaker-1' },
  { id: 'breaker-pole-2', from: 'service-2', to: 'breaker-2' },
  { id: 'feeder-1', from: 'breaker-1', to: 'disconnect-line-1' },
  { id: 'feeder-2', from: 'breaker-2', to: 'disconnect-line-2' },
  { id: 'blade-1', from: 'disconnect-line-1', to: 'fuse-1-line' },
  { id: 'blade-2', from: 'disconnect-line-2', to: 'fuse-2-line' },
  { id: 'fuse-1', from: 'fuse-1-line', to: 'fuse-1-load' },
  { id: 'fuse-2', from: 'fuse-2-line', to: 'fuse-2-load' },
  { id: 'whip-1', from: 'fuse-1-load', to: 'L1' },
  { id: 'whip-2', from: 'fuse-2-load', to: 'L2' },
  { id: 'stray-L1', from: 'L1', to: 'earth' },
  { id: 'stray-L2', from: 'L2', to: 'earth' },
  { id: 'stray-L1-L2', from: 'L1', to: 'L2' },
  { id: 'crankcase-heater', from: 'L1', to: 'L2' },
  { id: 'pole-1', from: 'L1', to: 'T1' },
  { id: 'pole-2', from: 'L2', to: 'T2' },
  { id: 'stray-pole-1', from: 'L1', to: 'T1' },
  { id: 'stray-pole-2', from: 'L2', to: 'T2' },
  { id: 'stray-T1', from: 'T1', to: 'earth' },
  { id: 'stray-T2', from: 'T2', to: 'earth' },
  { id: 'overload', from: 'T2', to: 'winding-common' },
  { id: 'compressor-run', from: 'T1', to: 'winding-common' },
  { id: 'compressor-start', from: 'HERM', to: 'winding-common' },
  { id: 'compressor-shell', from: 'winding-common', to: 'earth' },
  { id: 'capacitor-lead', from: 'T1', to: 'cap-common' },
  { id: 'capacitor-herm', from: 'cap-common', to: 'HERM' },
  { id: 'hard-start', from: 'T1', to: 'HERM' },
  { id: 'defrost-relay', from: 'T2', to: 'fan-common' },
  { id: 'fan-run', from: 'T1', to: 'fan-common' },
  { id: 'fan-start', from: 'FAN', to: 'fan-common' },
  { id: 'fan-frame', from: 'fan-common', to: 'earth' },
  { id: 'capacitor-fan', from: 'cap-common', to: 'FAN' },
  { id: 'handler-feed-1', from: 'service-1', to: 'handler-1' },
  { id: 'handler-feed-2', from: 'service-2', to: 'handler-2' },
  { id: 'handler-neutral', from: 'handler-2', to: 'earth' },
  { id: 'door-switch', from: 'handler-1', to: 'handler-door' },
  { id: 'blower-relay', from: 'handler-door', to: 'blower-1' },
  { id: 'blower-run', from: 'blower-1', to: 'handler-2' },
  { id: 'blower-winding-start', from: 'blower-start', to: 'handler-2' },
  { id: 'blower-capacitor', from: 'blower-1', to: 'blower-start' },
  { id: 'transformer-magnetising', from: 'handler-door', to: 'handler-2' },
  { id: 'control-fuse', from: 'secondary-hot', to: 'fused-hot' },
  { id: 'float-in-R', from: 'fused-hot', to: 'R-handler' },
  { id: 'stray-R', from: 'R-handler', to: 'earth' },
  { id: 'common-bond', from: 'C-handler', to: 'earth' },
  { id: 'R-wire-indoors', from: 'R-handler', to: 'R-thermostat' },
  { id: 'C-wire-indoors', from: 'C-handler', to: 'C-thermostat' },
  { id: 'thermostat-electronics', from: 'R-thermostat', to: 'C-thermostat' },
  { id: 'short-R-C', from: 'R-thermostat', to: 'C-thermostat' },
  { id: 'call-Y', from: 'R-thermostat', to: 'Y-thermostat' },
  { id: 'call-G', from: 'R-thermostat', to: 'G-thermostat' },
  { id: 'call-O', from: 'R-thermostat', to: 'O-thermostat' },
  { id: 'Y-wire-indoors', from: 'Y-thermostat', to: 'Y-handler' },
  { id: 'float-in-Y', from: 'Y-handler', to: 'Y-float' },
  { id: 'Y-wire-outdoors', from: 'Y-float', to: 'Y-condenser' },
  { id: 'short-Y-C', from: 'Y-condenser', to: 'C-condenser' },
  { id: 'high-switch', from: 'Y-condenser', to: 'Y-high' },
  { id: 'low-switch', from: 'Y-high', to: 'Y-low' },
  { id: 'delay', from: 'Y-low', to: 'coil-hot' },
  { id: 'contactor-coil', from: 'coil-hot', to: 'C-condenser' },
  { id: 'C-wire-outdoors', from: 'C-handler', to: 'C-condenser' },
  { id: 'R-wire-outdoors', from: 'R-handler', to: 'R-condenser' },
  { id: 'G-wire', from: 'G-thermostat', to: 'G-handler' },
  { id: 'blower-relay-coil', from: 'G-handler', to: 'C-handler' },
  { id: 'O-wire-indoors', from: 'O-thermostat', to: 'O-handler' },
  { id: 'O-wire-outdoors', from: 'O-handler', to: 'O-condenser' },
  { id: 'reversing-valve-coil', from: 'O-condenser', to: 'C-condenser' },
  { id: 'call-Y2', from: 'R-thermostat', to: 'Y2-thermostat' },
  { id: 'Y2-wire-indoors', from: 'Y2-thermostat', to: 'Y2-handler' },
  { id: 'Y2-wire-outdoors', from: 'Y2-handler', to: 'Y2-condenser' },
  { id: 'unloader-solenoid', from: 'Y2-condenser', to: 'C-condenser' },
] as const satisfies readonly BranchShape[];
export type BranchName = (typeof BRANCHES)[number]['id'];

/**
 * A turning motor's start winding carries a back-emf proportional to the voltage of its run winding. Each entry is
 * a voltage-controlled source inside `branch`: I = Y·(V_from − V_to − gain·(V_plus − V_minus)).
 */
export const BACK_EMFS = [
  { branch: 'compressor-start', plus: 'T1', minus: 'winding-common' },
  { branch: 'fan-start', plus: 'T1', minus: 'fan-common' },
  { branch: 'blower-winding-start', plus: 'blower-1', minus: 'handler-2' },
] as const satisfies readonly { branch: BranchName; plus: NodeName; minus: NodeName }[];

/** The control transformer: ideal ratio with its leakage impedance on the secondary side. */
export const TRANSFORMER = {
  primary: ['handler-door', 'handler-2'],
  secondary: ['secondary-hot', 'C-handler'],
} as const satisfies { primary: readonly [NodeName, NodeName]; secondary: readonly [NodeName, NodeName] };

/** Leak from every node to earth, in siemens: keeps a floating island solvable. The same value is given to ngspice. */
export const GMIN = 1e-9;

const nodeNumbers = new Map<NodeName, number>(NODES.map((name, index) => [name, index]));
const branchNumbers = new Map<BranchName, number>(BRANCHES.map((branch, index) => [branch.id, index]));

/** Row of a node in the solver; earth is 0. */
export function nodeNumber(name: NodeName): number {
  return nodeNumbers.get(name)!;
}

/** Place of a branch's admittance in the value arrays. */
export function branchNumber(name: BranchName): number {
  return branchNumbers.get(name)!;
}
