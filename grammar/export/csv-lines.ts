export type CsvCell = string | number | boolean;

/** Rows as CSV (RFC 4180): cells parted by commas, lines ended by CR LF. */
export function csvLines(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: CsvCell): string {
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
