export type CsvCell = string | number | boolean;

/** A spreadsheet would reckon with such a text as with a formula (OWASP, CSV injection; from memory). */
const LIKE_A_FORMULA = /^[=+\-@\t]/;

/** Rows as CSV (RFC 4180): cells parted by commas, lines ended by CR LF. A text like a formula gets a mark in front. */
export function csvLines(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: CsvCell): string {
  const isFormula = typeof value === 'string' && LIKE_A_FORMULA.test(value) && Number.isNaN(Number(value));
  const text = isFormula ? `'${value}` : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
