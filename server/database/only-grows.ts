import type pg from 'pg';
import { ServerError } from '../errors.ts';

/** Tables of which no row is changed or taken out. Each has one trigger, and no other. */
const ONLY_GROW = [
  'stream',
  'event',
  'fork',
  'said',
  'audit',
  'lease_step',
  'head',
  'given_up',
  'signing_key',
] as const;

const BODY = " BEGIN RAISE EXCEPTION 'what is kept in % is never changed', TG_TABLE_NAME; END ";

/** SQL that makes what the triggers call. */
export const ONLY_GROWS = `
CREATE FUNCTION only_grows() RETURNS trigger LANGUAGE plpgsql AS $$${BODY}$$;`;

/**
 * SQL that has a table refuse UPDATE, DELETE and TRUNCATE, also where nothing would be touched, and in sessions that
 * replicate. A second row of a key is refused by the key.
 */
export const onlyGrows = (table: (typeof ONLY_GROW)[number]) => `
CREATE TRIGGER ${table}_only_grows BEFORE UPDATE OR DELETE OR TRUNCATE ON ${table}
FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
ALTER TABLE ${table} ENABLE ALWAYS TRIGGER ${table}_only_grows;`;

/**
 * Whether something was done to the guards: one that is gone or switched off, one that swallows what is put in.
 * @throws {ServerError} database-changed, with the names.
 */
export async function checkGuards(pool: pg.Pool, name: string): Promise<void> {
  const { rows } = await pool.query<{ readonly table: string; readonly what: string }>(GUARDS, [
    [...ONLY_GROW],
    BODY.trim(),
  ]);
  if (rows.length === 0) return;
  throw new ServerError(
    'database-changed',
    `${name} (${rows.map(({ table, what }) => `${table}: ${what}`).join(', ')})`,
  );
}

/** What is not as it was made: type 58 is BEFORE (2), DELETE (8), UPDATE (16), TRUNCATE (32), for each statement. */
const GUARDS = `
WITH guarded AS (SELECT wanted.name, to_regclass(quote_ident(wanted.name)) AS id FROM unnest($1::text[]) AS wanted (name)),
  found AS (
    SELECT guarded.name, trigger.tgname, trigger.tgname = guarded.name || '_only_grows' AND trigger.tgenabled = 'A'
      AND trigger.tgtype = 58 AND trigger.tgqual IS NULL AND btrim(function.prosrc) = $2 AS whole
    FROM guarded JOIN pg_trigger AS trigger ON trigger.tgrelid = guarded.id AND NOT trigger.tgisinternal
    JOIN pg_proc AS function ON function.oid = trigger.tgfoid)
SELECT name AS table, 'the table is gone' AS what FROM guarded WHERE id IS NULL
UNION ALL SELECT name, 'its guard is gone' FROM guarded
  WHERE id IS NOT NULL AND NOT EXISTS (SELECT FROM found WHERE found.name = guarded.name AND found.whole)
UNION ALL SELECT name, 'the trigger ' || tgname FROM found WHERE NOT whole
UNION ALL SELECT guarded.name, 'the rule ' || rule.rulename FROM guarded
  JOIN pg_rewrite AS rule ON rule.ev_class = guarded.id
UNION ALL SELECT guarded.name, 'its key is gone' FROM guarded WHERE id IS NOT NULL
  AND NOT EXISTS (SELECT FROM pg_constraint WHERE conrelid = guarded.id AND contype = 'p')
ORDER BY 1, 2`;
