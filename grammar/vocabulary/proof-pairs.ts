import type { PointId } from './points.ts';
import type { ZoneId } from './zones.ts';

/** Ends of a pair as named within a proof of absence of voltage, and what each is in the zone that is proved. */
export interface ProofEnd {
  readonly id: string;
  readonly say: string;
  /** Zones that are left out have no such end. */
  readonly at: Readonly<Partial<Record<ZoneId, PointId>>>;
}

export const PROOF_ENDS = [
  {
    id: 'leg-1',
    say: '(leg | line | l) one',
    at: { 'outdoor-load': 'L1', 'disconnect-line': 'disconnect-line-1', 'air-handler': 'handler-L1' },
  },
  {
    id: 'leg-2',
    say: '(leg | line | l) two',
    at: { 'outdoor-load': 'L2', 'disconnect-line': 'disconnect-line-2', 'air-handler': 'handler-L2' },
  },
  { id: 'load-1', say: '(t | load) one', at: { 'outdoor-load': 'T1' } },
  { id: 'load-2', say: '(t | load) two', at: { 'outdoor-load': 'T2' } },
] as const satisfies readonly ProofEnd[];
export type ProofEndId = (typeof PROOF_ENDS)[number]['id'] | 'ground';

/** The other end where it is ground. */
export const PROOF_GROUND = 'ground';

/** Pairs that have a name of their own. */
export const PROOF_PAIRS = [
  { ends: ['leg-1', 'leg-2'], say: 'leg to leg | line to line | line side' },
  { ends: ['load-1', 'load-2'], say: 't to t | load to load | load side' },
  { ends: ['ground', 'ground'], say: 'ground to ground' },
] as const satisfies readonly { ends: readonly ProofEndId[]; say: string }[];
