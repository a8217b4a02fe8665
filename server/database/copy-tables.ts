import { createHash } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import type pg from 'pg';
import { replaced } from './without-nul.ts';

/** So many rows are read, and put in, at once. */
const ROWS = 500;

type Row = Readonly<Record<string, string | number | Buffer | null>>;

/** Tables of an SQLite file in the order in which they were made: none refers to one behind it. */
export function tablesOf(database: Database): readonly string[] {
  return database
    .prepare<[], string>(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY rowid",
    )
    .pluck()
    .all();
}

/** Copies a table row by row, columns by their names, as they are; resolves to how many there were. */
export async function copyTable(from: Database, table: string, to: pg.PoolClient): Promise<number> {
  let count = 0;
  for (const rows of pagesOf(from, table)) {
    const [first] = rows;
    if (first === undefined) break;
    const columns = Object.keys(first);
    const values = rows.flatMap((row) => columns.map((column) => row[column] ?? null));
    const places = rows.map(
      (_, at) => `(${columns.map((_column, column) => `$${at * columns.length + column + 1}`).join(', ')})`,
    );
    const names = columns.map((column) => `"${column}"`).join(', ');
    await to.query(`INSERT INTO "${table}" (${names}) VALUES ${places.join(', ')}`, values);
    count += rows.length;
  }
  return count;
}

/** SHA-256 over all rows of a table, in the order in which they were put in, bodies by their bytes. */
export function digestOfFile(from: Database, table: string): string {
  const digest = createHash('sha256');
  for (const rows of pagesOf(from, table)) for (const row of rows) digest.update(textOf(row));
  return digest.digest('hex');
}

/** The same of a table that was copied. */
export async function digestOfTable(from: Database, table: string, to: pg.PoolClient): Promise<string> {
  const digest = createHash('sha256');
  const names = columnsOf(from, table).map((column) => `"${column}"`);
  // Its rows were put in by one transaction, page after page: they stand in that order.
  const cursor = `DECLARE copied NO SCROLL CURSOR FOR SELECT ${names.join(', ')} FROM "${table}" ORDER BY ${orderOf(from, table)}`;
  await to.query(cursor);
  for (;;) {
    const { rows } = await to.query<Row>(`FETCH ${ROWS} FROM copied`);
    for (const row of rows) digest.update(textOf(row));
    if (rows.length < ROWS) break;
  }
  await to.query('CLOSE copied');
  return digest.digest('hex');
}

const textOf = (row: Row): string =>
  `${JSON.stringify(
    Object.keys(row)
      .sort()
      .map((column) => {
        const value = row[column];
        return [column, Buffer.isBuffer(value) ? value.toString('hex') : value];
      }),
  )}\n`;

function columnsOf(from: Database, table: string): readonly string[] {
  return (from.pragma(`table_info("${table}")`) as { readonly name: string }[]).map(({ name }) => name);
}

/** By its key, compared byte for byte on both sides. */
function orderOf(from: Database, table: string): string {
  const keys = (from.pragma(`table_info("${table}")`) as { name: string; pk: number; type: string }[])
    .filter(({ pk }) => pk > 0)
    .sort((a, b) => a.pk - b.pk);
  return keys.map(({ name, type }) => `"${name}"${/text/i.test(type) ? ' COLLATE "C"' : ''}`).join(', ');
}

/** A name with U+0000 was taken once: it goes over as a server on PostgreSQL would have kept it. */
const withoutNul = (row: Row): Row =>
  Object.fromEntries(Object.entries(row).map(([column, value]) => [column, replaced(value)]));

function* pagesOf(from: Database, table: string): Generator<readonly Row[]> {
  const order = orderOf(from, table).replaceAll('"C"', 'BINARY');
  let page: Row[] = [];
  for (const row of from.prepare<[], Row>(`SELECT * FROM "${table}" ORDER BY ${order}`).iterate()) {
    page.push(withoutNul(row));
    if (page.length < ROWS) continue;
    yield page;
    page = [];
  }
  yield page;
}
