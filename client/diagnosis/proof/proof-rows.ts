import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { AIR_ROWS } from './air-rows.ts';
import { CONTROL_ROWS } from './control-rows.ts';
import { LINE_ROWS } from './line-rows.ts';
import { LOAD_ROWS } from './load-rows.ts';
import { NOTHING_TO_PROVE, type ProofRow } from './proof-row.ts';

/** The row of proof of each fault: does not compile while one is left out. */
export const PROOF_ROWS: Readonly<Record<FaultId, ProofRow>> = {
  ...LINE_ROWS,
  ...LOAD_ROWS,
  ...CONTROL_ROWS,
  ...AIR_ROWS,
  'nothing-wrong': NOTHING_TO_PROVE,
  'something-else': NOTHING_TO_PROVE,
};
