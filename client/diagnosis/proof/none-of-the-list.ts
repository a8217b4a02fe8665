import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { setShare } from './hold-to-proof.ts';
import { PROOF_ROWS } from './proof-rows.ts';
import type { Proof } from './weigh-proof.ts';

/** A suspect that is less likely than not is no finding. */
const LEAST_FINDING = 0.5;
/** What "something else" is then said with at the least (ours). */
const SAID = 0.55;

/**
 * Whether a search that tells no more has found nothing of the list: its leader is less likely than not. One
 * whose row is met but for what shows once it has been waited for stays: that is known to be open, only not yet why.
 */
export function isNoneOfTheList(
  table: FaultTable,
  posterior: Posterior,
  fault: FaultId,
  proof: Proof | undefined,
): boolean {
  const said = posterior.fault[table.faults.indexOf(fault)]!;
  if (fault === 'something-else' || said >= LEAST_FINDING) return false;
  const isMet = proof !== undefined && proof.lacking.length + proof.denied.length === 0;
  return !(isMet && PROOF_ROWS[fault].afterWait !== undefined);
}

/** Calls it "something else", a little more likely than not at the least. */
export function sayNone(table: FaultTable, posterior: Posterior): void {
  const open: FaultId = 'something-else';
  if (posterior.fault[table.faults.indexOf(open)]! < SAID) setShare(table, posterior, open, SAID);
}
