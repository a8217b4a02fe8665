/** A record made ready to print: the same on a terminal, on a page and on paper. */
export interface Sheet {
  readonly title: string;
  readonly under: readonly string[];
  readonly sections: readonly SheetSection[];
}

/** Lines, a table, or lines under a table. */
export interface SheetSection {
  readonly title: string;
  readonly table?: SheetTable;
  readonly lines: readonly string[];
}

export interface SheetTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Nothing where there is nothing to say. */
export function section(title: string, lines: readonly string[], table?: SheetTable): readonly SheetSection[] {
  const rows = table === undefined || table.rows.length === 0 ? {} : { table };
  return lines.length === 0 && !('table' in rows) ? [] : [{ title, lines, ...rows }];
}
