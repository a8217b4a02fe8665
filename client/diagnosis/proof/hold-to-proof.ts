import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Suspect } from '../diagnosis.ts';
import { TEST_MODELS } from '../measuring/test-models.ts';
import { mayBeReadAgain, type Standing, type Taken } from '../posterior/take-readings.ts';
import type { Posterior } from '../posterior/weigh-particles.ts';
import type { FaultTable } from '../table/fault-table.ts';
import { PROOF_ROWS } from './proof-rows.ts';
import { type Proof, proveRow, type Read } from './weigh-proof.ts';

/** What is left of a fault that one reading denies, and that readings deny which were taken again or cannot be (ours). */
const LEFT_BY_ONE = 0.15;
const LEFT_BY_TWO = 0.001;
/** A suspect below this is not worth holding against its row. */
const LEAST = 1e-4;
/** A reading that is more probably a stray one than this is one that the leader does not explain. */
const UNEXPLAINED = 0.8;

/** A reading that nobody will take again, or that was: it stands. */
const stands = (reading: Taken, standing: Standing): boolean =>
  reading.times > 1 || !mayBeReadAgain(standing, reading.test);

/**
 * Takes from each suspect what its row of proof denies, and gives it to "something else": likelihoods compare the
 * faults of the list with each other, and the best of them may still be wrong. Writes into the posterior.
 * @returns the rows of the suspects that matter
 */
export function holdToProof(table: FaultTable, posterior: Posterior, read: Read): ReadonlyMap<FaultId, Proof> {
  const rows = new Map<FaultId, Proof>();
  const unexplained = unexplainedReadings(posterior, read.standing);
  const leader = posterior.fault.indexOf(Math.max(...posterior.fault));
  table.faults.forEach((fault, f) => {
    if (posterior.fault[f]! < LEAST) return;
    const proof = proveRow(PROOF_ROWS[fault], read);
    // What is proved directly stands beside a strange reading; what is found by exclusion does not.
    const isStrange = f === leader && isNamed(fault) && proof.lacking.length === 0 && proof.unproved.length > 0;
    const denied = isStrange ? [...new Set([...proof.denied, ...unexplained])] : proof.denied;
    rows.set(fault, { ...proof, denied });
  });
  takeDenied(table, posterior, rows, read.standing);
  return rows;
}

/**
 * Takes from the denied suspects. Who of the list is not denied gets of it as far as they were as likely as what was
 * taken: a suspect that was hardly thought of is not found because another is excluded. The rest is "something else".
 */
function takeDenied(
  table: FaultTable,
  posterior: Posterior,
  rows: ReadonlyMap<FaultId, Proof>,
  standing: Standing,
): void {
  const { fault, weight } = posterior;
  const isOpen = (f: number) => isNamed(table.faults[f]!) && rows.get(table.faults[f]!)?.denied.length === 0;
  let taken = 0;
  let others = 0;
  for (let f = 0; f < fault.length; f += 1) {
    const proof = rows.get(table.faults[f]!);
    if (isOpen(f)) others += fault[f]!;
    if (!proof || proof.denied.length === 0) continue;
    const before = fault[f]!;
    lower(table, posterior, f, isExcluded(proof, standing) ? LEFT_BY_TWO : LEFT_BY_ONE);
    taken += before - fault[f]!;
  }
  if (taken === 0 || others === 0) return;
  const grown = 1 + taken / (others + taken);
  for (let f = 0; f < fault.length; f += 1) {
    if (!isOpen(f)) continue;
    fault[f] = fault[f]! * grown;
    for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) weight[p] = weight[p]! * grown;
  }
  const open = table.faults.indexOf('something-else');
  const left = 1 - (others * (grown - 1)) / fault[open]!;
  for (let p = table.first[open]!; p < table.first[open + 1]!; p += 1) weight[p] = weight[p]! * left;
  fault[open] = fault[open]! * left;
}

/** Whether readings deny a fault that were taken again or cannot be. */
export const isExcluded = (proof: Proof | undefined, standing: Standing): boolean =>
  proof?.denied.some((reading) => stands(reading, standing)) ?? false;

/** A part that could be condemned. */
export const isNamed = (fault: FaultId): boolean => fault !== 'something-else' && fault !== 'nothing-wrong';

/** Readings that the ranking holds for stray ones although they were taken again, or no other result of the test stands. */
function unexplainedReadings(posterior: Posterior, standing: Standing): Taken[] {
  return [...posterior.stray]
    .filter(([reading, chance]) => chance > UNEXPLAINED && standing.taken.get(reading.test) === reading)
    .map(([reading]) => reading);
}

/** Leaves so much of a fault; the rest goes to "something else". */
function lower(table: FaultTable, { fault, weight }: Posterior, f: number, left: number): void {
  const open = table.faults.indexOf('something-else');
  if (f === open) return;
  const taken = fault[f]! * (1 - left);
  const grown = fault[open]! > 0 ? (fault[open]! + taken) / fault[open]! : 1;
  for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) weight[p] = weight[p]! * left;
  for (let p = table.first[open]!; p < table.first[open + 1]!; p += 1) weight[p] = weight[p]! * grown;
  fault[f] = fault[f]! * left;
  fault[open] = fault[open]! + taken;
}

/** Below this a fault is not looked for, however well it is proved: its draws say nothing any more. */
const LEAST_PROVED = 1e-12;

/**
 * The likeliest fault whose row is met directly although the ranking gave it up: what its defining reading shows on the
 * bench holds, however strangely the rest of the unit behaves.
 */
export function provedBeside(table: FaultTable, posterior: Posterior, read: Read): FaultId | undefined {
  const proved = table.faults.filter((fault, f) => {
    const row = PROOF_ROWS[fault];
    if (!isNamed(fault) || row.judgedTogether || posterior.fault[f]! < LEAST_PROVED) return false;
    const { lacking, unproved, denied } = proveRow(row, read);
    return lacking.length + unproved.length + denied.length === 0;
  });
  return proved.sort((a, b) => chance(b) - chance(a))[0];

  function chance(fault: FaultId): number {
    return posterior.fault[table.faults.indexOf(fault)]!;
  }
}

/** Parts of a row that may lack where the rest was read: one more reading each, and it is known. */
const MOST_LACKING = 2;

/** One that is read when a search has taken long is thought of at least so much (ours). */
const LEAST_PROVED_LATE = 1e-3;

/**
 * The likeliest fault that the ranking gave up although what was read of its row is met directly, with what the row
 * lacks: it is read before "something else" is the end.
 * @param isLate whether the search is over for its minutes alone
 */
export function nearlyProved(table: FaultTable, posterior: Posterior, read: Read, isLate: boolean): Proof | undefined {
  const least = isLate ? LEAST_PROVED_LATE : LEAST_PROVED;
  const near = table.faults.flatMap((fault, f) => {
    const row = PROOF_ROWS[fault];
    const probability = posterior.fault[f]!;
    if (!isNamed(fault) || row.judgedTogether || row.opensOnCause || probability < least) return [];
    const proof = proveRow(row, read);
    const { shown, lacking, unproved, denied } = proof;
    const isClose = lacking.length > 0 && lacking.length <= MOST_LACKING && 2 * lacking.length <= row.needs.length + 1;
    const isOne = lacking.every((ways) => ways.some((tests) => tests.length === 1));
    const isRead = shown.some((reading) => !isLook(reading));
    return isClose && isOne && isRead && unproved.length + denied.length === 0 ? [{ probability, proof }] : [];
  });
  return near.sort((a, b) => b.probability - a.probability)[0]?.proof;
}

/** Share of "something else" that a fault proved beside the ranking gets (ours). */
const BESIDE = 0.85;

/** Gives a fault that is proved beside the ranking most of what "something else" holds. */
export function raise(table: FaultTable, { fault, weight }: Posterior, id: FaultId): void {
  const f = table.faults.indexOf(id);
  const open = table.faults.indexOf('something-else');
  const given = fault[open]! * BESIDE;
  const grown = (fault[f]! + given) / fault[f]!;
  for (let p = table.first[f]!; p < table.first[f + 1]!; p += 1) weight[p] = weight[p]! * grown;
  for (let p = table.first[open]!; p < table.first[open + 1]!; p += 1) weight[p] = weight[p]! * (1 - BESIDE);
  fault[f] = fault[f]! + given;
  fault[open] = fault[open]! - given;
}

/** A leader that was shown outright needs no more tests from this probability on, and is said with so much at least (ours). */
const LEADS = 0.3;
const SHOWN = 0.95;

const isLook = ({ test }: Taken): boolean => TEST_MODELS[test].measure.kind === 'look';

/**
 * Whether a leader's row is met directly, by two readings or one taken twice, not by the eye alone, and nothing is
 * strange: on simulators that are not ours it was then true however little the ranking thought of it.
 */
export function isShownOutright({ fault, probability }: Suspect, proof: Proof, strange: number): boolean {
  const { shown, lacking, unproved, denied } = proof;
  const { judgedTogether, opensOnCause } = PROOF_ROWS[fault];
  if (probability < LEADS || judgedTogether || opensOnCause || strange > 0) return false;
  if (lacking.length + unproved.length + denied.length > 0) return false;
  return (shown.length > 1 || shown.some(({ times }) => times > 1)) && !shown.every(isLook);
}

/** Says a fault that is shown outright with what such a finding is worth. */
export function sayShown(table: FaultTable, posterior: Posterior, fault: FaultId): void {
  if (posterior.fault[table.faults.indexOf(fault)]! < SHOWN) setShare(table, posterior, fault, SHOWN);
}

/** The most that a finding by exclusion is said with (ours): nothing was read that only this fault can have given. */
const BY_EXCLUSION = 0.84;

/** What is left of a leader whose row is not met yet: said so on simulators that are not ours, it was true as often. */
const UNPROVED = 0.85;
/** The most that "nothing wrong" is said with, and "something else" while tests are left: no reading shows either. */
const NO_ROW = 0.75;

/** Lowers a leader that is not proved yet; it stays the leader. */
export function doubtUnproved(table: FaultTable, posterior: Posterior, fault: FaultId, second: number): void {
  const f = table.faults.indexOf(fault);
  const own = posterior.fault[f]!;
  if (own > second) lower(table, posterior, f, Math.max(UNPROVED, second / own));
}

/** Lowers a leader that is found by exclusion; it stays the leader. */
export function doubtExclusion(table: FaultTable, posterior: Posterior, fault: FaultId, second: number): void {
  const f = table.faults.indexOf(fault);
  const own = posterior.fault[f]!;
  if (own > second) lower(table, posterior, f, Math.max(BY_EXCLUSION, second / own));
}

/** Caps a leader that has no row of proof; the others grow as they were. */
export function doubtWithoutRow(table: FaultTable, posterior: Posterior, fault: FaultId): void {
  const own = posterior.fault[table.faults.indexOf(fault)]!;
  if (own > NO_ROW) setShare(table, posterior, fault, NO_ROW);
}

/** Gives a fault this share; the others share the rest as they did. */
export function setShare(table: FaultTable, { fault, weight }: Posterior, id: FaultId, share: number): void {
  const f = table.faults.indexOf(id);
  const own = fault[f]!;
  if (own >= 1) return;
  for (let g = 0; g < fault.length; g += 1) {
    const times = g === f ? share / own : (1 - share) / (1 - own);
    fault[g] = fault[g]! * times;
    for (let p = table.first[g]!; p < table.first[g + 1]!; p += 1) weight[p] = weight[p]! * times;
  }
}
