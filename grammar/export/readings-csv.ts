import { csvLines } from './csv-lines.ts';
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
  'entry',
  'not read',
] as const;

const ENTRY = COLUMNS.indexOf('entry');

/**
 * The readings of a visit as CSV (RFC 4180): a head line, then a reading a line, lines ended by CR LF. Times are UTC,
 * units UCUM, several places are joined by a space. An entry of the record that could not be read, whatever it was of,
 * stands in its place as a line that says so in its last cell and holds no reading.
 */
export function readingsCsv({ readings, notRead }: VisitRecord): string {
  const lines = readings.map(({ number, entry, at, phase, reading, power, call, judged, withdrawn, corrected }) => [
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
    entry,
    '',
  ]);
  const gaps = notRead.map(({ entry, at, why, type }) => [
    '',
    at,
    ...COLUMNS.slice(2, -2).map(() => ''),
    entry,
    type === undefined ? why : `${why}: ${type}`,
  ]);
  const rows = [...lines, ...gaps].sort((a, b) => Number(a[ENTRY]) - Number(b[ENTRY]));
  return csvLines([COLUMNS, ...rows]);
}
