import type { VisitRecord } from '../../grammar/export/visit-record-schema.ts';
import { wrapLine } from '../../grammar/export/wrap-line.ts';
import { printedSheet, type SheetEdges } from '../words/printed/printed-sheet.ts';
import type { SheetSection, SheetTable } from '../words/printed/sheet.ts';

/** The record of a visit as plain text to print: one section a subject, empty ones left out. */
export function printRecord(record: VisitRecord, edges?: SheetEdges): string {
  const { title, under, sections } = printedSheet(record, edges);
  return [`${underlined(title, '=')}${under.flatMap(wrapLine).join('\n')}\n`, ...sections.map(printSection)].join('\n');
}

function printSection({ title, table, lines }: SheetSection): string {
  const rows = table === undefined ? [] : printTable(table);
  return `${underlined(title, '-')}${[...rows, ...lines.flatMap(wrapLine)].join('\n')}\n`;
}

const underlined = (title: string, sign: string) => `${title}\n${sign.repeat(title.length)}\n`;

/** Columns as wide as their widest cell; the last one goes on in lines of its own. */
function printTable({ head, rows }: SheetTable): readonly string[] {
  const widths = head.map((name, at) => Math.max(name.length, ...rows.map((row) => (row[at] ?? '').length)));
  return [head, ...rows].flatMap((row) => {
    const cells = row.slice(0, -1).map((cell, at) => cell.padEnd(widths[at] ?? 0));
    const before = `${cells.join('  ')}  `;
    const [first = '', ...more] = wrapLine(row.at(-1) ?? '');
    return [`${before}${first}`.trimEnd(), ...more.map((rest) => `${' '.repeat(before.length)}${rest}`)];
  });
}
