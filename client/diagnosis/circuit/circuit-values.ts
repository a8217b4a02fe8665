import { BACK_EMFS, BRANCHES, NODES } from './topology.ts';

/** Numbers for one state of the circuit. Admittances in siemens, sources in amperes (Norton), at line frequency. */
export interface CircuitValues {
  /** Real and imaginary admittance of each branch, in the order of BRANCHES. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Gain of each back-emf, in the order of BACK_EMFS. */
  readonly gainRe: Float64Array;
  readonly gainIm: Float64Array;
  /** Turns ratio secondary : primary, and leakage admittance seen from the secondary. */
  transformerRatio: number;
  transformerRe: number;
  transformerIm: number;
  /** Current injected into each node, in the order of NODES. */
  readonly sourceRe: Float64Array;
  readonly sourceIm: Float64Array;
}

/** An empty circuit: everything open, nothing fed. */
export function emptyCircuit(): CircuitValues {
  return {
    re: new Float64Array(BRANCHES.length),
    im: new Float64Array(BRANCHES.length),
    gainRe: new Float64Array(BACK_EMFS.length),
    gainIm: new Float64Array(BACK_EMFS.length),
    transformerRatio: 0,
    transformerRe: 0,
    transformerIm: 0,
    sourceRe: new Float64Array(NODES.length),
    sourceIm: new Float64Array(NODES.length),
  };
}
