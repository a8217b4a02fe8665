/**
 * A table's rows under their ids: total, since the ids are those of the rows. Where rows share an id, the first counts.
 *
 * @param key the field that holds the id
 */
export function rowsBy<Key extends string, Row extends { readonly [K in Key]: string }>(
  key: Key,
  rows: readonly Row[],
): { readonly [Id in Row[Key]]: Extract<Row, { readonly [K in Key]: Id }> };
export function rowsBy(key: string, rows: readonly Readonly<Record<string, string>>[]): unknown {
  return Object.fromEntries(rows.toReversed().map((row) => [row[key], row]));
}

/** The name of an id that a record holds. A later version may have written it: an id unknown here stands for itself. */
export function nameIn(rows: Readonly<Record<string, { readonly name: string }>>, id: string): string {
  return Object.hasOwn(rows, id) ? rows[id]!.name : id;
}
