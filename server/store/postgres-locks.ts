import { hash } from 'node:crypto';
import type pg from 'pg';

type VisitName = { readonly company: string; readonly visit: string };

/** Whoever writes many visits at once locks all: locks are held in a memory of fixed size, about 6,400 of them. */
const MOST_SINGLE = 256;
/** "RBK1" in ASCII, as the files of ours bear it. */
const ALL = 0x52424b31;

/**
 * Holds visits for this transaction: two servers that are given the same stream judge one after the other, so that none
 * is forked or kept twice, and within a visit events are numbered by arrival in the order in which they are committed.
 * Always in the same order: nobody waits for each other in a circle.
 */
export async function lockVisits(client: pg.PoolClient, visits: readonly VisitName[]): Promise<void> {
  const names = new Set(visits.map(({ company, visit }) => `${company}/${visit}`));
  if (names.size > MOST_SINGLE) {
    await client.query({ name: 'lock-all', text: 'SELECT pg_advisory_xact_lock($1::bigint)', values: [ALL] });
    return;
  }
  const keys = [...names].map((name) => hash('sha256', name, 'buffer').readBigInt64BE());
  keys.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  await client.query({ name: 'lock', text: LOCK, values: [ALL, keys.map(String)] });
}

const LOCK = `
SELECT count(pg_advisory_xact_lock(visit.key)::text)
FROM (SELECT pg_advisory_xact_lock_shared($1::bigint)) AS everybody,
  LATERAL (SELECT key FROM unnest($2::bigint[]) AS key) AS visit`;
