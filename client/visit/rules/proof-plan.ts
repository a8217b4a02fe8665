import type { ProofInProgress } from '../../../grammar/visit/facts.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';

export type Pair = readonly [PointId, PointId];

/**
 * The pairs that must read dead at a point of work, in the order in which they are asked: every conductor to ground and
 * to each other (NFPA 70E 120.5). A contactor that is open has two sides. On the 24 V side it is R to C: its ground is no
 * reference, and any other pair reads nothing without a call anyway (common practice). A capacitor's sections are proved
 * with their unit.
 */
const PROOF_PLAN: Readonly<Record<ZoneId, readonly Pair[]>> = {
  'outdoor-load': [
    ['L1', 'ground'],
    ['L2', 'ground'],
    ['L1', 'L2'],
    ['T1', 'ground'],
    ['T2', 'ground'],
    ['T1', 'T2'],
  ],
  'disconnect-line': [
    ['disconnect-line-1', 'ground'],
    ['disconnect-line-2', 'ground'],
    ['disconnect-line-1', 'disconnect-line-2'],
  ],
  'air-handler': [
    ['handler-L1', 'ground'],
    ['handler-L2', 'ground'],
    ['handler-L1', 'handler-L2'],
  ],
  control: [['R@air-handler', 'C@air-handler']],
  'capacitor-herm': [],
  'capacitor-fan': [],
  'capacitor-start': [],
};

/** Meter, pairs, meter within so many minutes, else it starts again (our rule). */
export const PROOF_MINUTES = 10;

/** A known live source reads at least this, in volts: well under any leg or 24 V circuit, well over a ghost. Our choice. */
const KNOWN_SOURCE_VOLTS = { line: 100, control: 18 } as const;

/** A leg to ground that reads at least this is whole. Volts. */
export const FULL_LEG_VOLTS = KNOWN_SOURCE_VOLTS.line;

/** Whether a meter that reads so many volts on a source is proven for a zone. */
export function provesMeter(zone: ZoneId, volts: number): boolean {
  return volts >= KNOWN_SOURCE_VOLTS[zone === 'control' ? 'control' : 'line'];
}

export function pairsOf(zone: ZoneId): readonly Pair[] {
  return PROOF_PLAN[zone];
}

export function isPairOf(zone: ZoneId, at: readonly PointId[]): boolean {
  return PROOF_PLAN[zone].some((pair) => samePlaces(pair, at));
}

/** What is still to be read, in the order asked. A pair counts by its two points: never one side for the other. */
export function missingPairs({ zone, pairs }: Pick<ProofInProgress, 'zone' | 'pairs'>): readonly Pair[] {
  return PROOF_PLAN[zone].filter((pair) => !pairs.some(({ at }) => samePlaces(at, pair)));
}
