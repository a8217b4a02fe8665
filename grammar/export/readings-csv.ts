import type { VisitRecord } from './visit-record-schema.ts';

const COLUMNS = [
  'number',
  'time',
  'phase',
  'quantity',
  'places',
  'value',
  'unit',
  'bench',
  'power',
  'call',
  'verdict',
  'low',
  'high',
  'source',
  'withdrawn',
  'first taken as',
] as const;

/**
 * The readings of a visit as CSV (RFC 4180): a head line, then a reading a line, lines ended by CR LF. Times are UTC,
 * units UCUM, several places are joined by a space.
 */
export function readingsCsv({ readings }: VisitRecord): string {
  const rows = readings.map(({ number, at, phase, reading, power, call, judged, withdrawn, corrected }) => [
    number,
    at,
    phase,
    reading.quantity,
    reading.at.join(' '),
    reading.value,
    reading.unit,
    reading.bench === true,
    power,
    call,
    judged?.word ?? '',
    judged?.low ?? '',
    judged?.high ?? '',
    judged?.source ?? '',
    withdrawn,
    corrected.map(({ value }) => value).join(' '),
  ]);
  return [COLUMNS, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number | boolean): string {
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
