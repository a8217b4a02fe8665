import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import { fitOf } from '../../../grammar/phrases/compose/fit.ts';
import type { NoVerdict, Phase, VisitOutcome } from '../../../grammar/visit/events.ts';
import { MEASURANDS } from '../../../grammar/vocabulary/measurands.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { capital } from '../capital.ts';
import { FUNCTION_NAMES, showPlace, showUnit, showValue } from '../shown/show-reading.ts';
import { valueWords } from '../things/value-words.ts';
import { gapWords } from './print-gaps.ts';
import type { Footnotes } from './print-sources.ts';
import type { PrintTimes } from './print-times.ts';
import type { SheetTable } from './sheet.ts';

type Line = VisitRecord['readings'][number];
type Measured = Line['reading'];

/** What was measured, where the place alone does not say it. */
const SAYS_MORE: Partial<Record<Reading['quantity'], string>> = {
  'wet-bulb': 'wet bulb',
  humidity: 'humidity',
  resistance: FUNCTION_NAMES.resistance,
  insulation: FUNCTION_NAMES.insulation,
  'voltage-dc': FUNCTION_NAMES['voltage-dc'],
  'static-pressure': FUNCTION_NAMES['static-pressure'],
};

/** "return air, wet bulb"; refrigerant by what was done with it. */
export function whatWasRead({ quantity, at, value, bench }: Measured): string {
  const on = bench === true ? ', on the bench' : '';
  if (quantity === 'mass')
    return typeof value === 'number' && value < 0 ? 'refrigerant recovered' : 'refrigerant added';
  if (quantity === 'vacuum') return 'vacuum in the refrigerant circuit';
  if (quantity === 'pressure' && at[0] === 'system') return 'pressure in the refrigerant circuit';
  const more = SAYS_MORE[quantity as Reading['quantity']];
  return `${showPlace(at as Reading['at'])}${more === undefined ? '' : `, ${more}`}${on}`;
}

/** "65 °F"; weights in words: "four pounds two ounces". */
export function valueRead({ quantity, value, unit }: Measured): string {
  const code = unit as Reading['unit'];
  if (quantity === 'mass') return valueWords(value, code);
  return code === 'um[Hg]' && value !== 'open' ? `${value} microns` : showValue(value, code);
}

/** "return air, wet bulb 65 °F". */
export const readWhole = (reading: Measured): string => `${whatWasRead(reading)} ${valueRead(reading)}`;

const PHASE_WORDS: Readonly<Record<Phase, string>> = {
  arrive: 'on arrival',
  testing: 'testing',
  repair: 'repair',
  prove: 'after the repair',
  close: 'at the end',
  closed: 'at the end',
};

function verdict({ reading, judged, withdrawn, corrected }: Line, notes: Footnotes): string {
  const { low, high } = judged ?? {};
  const unit = showUnit(reading.unit as Reading['unit']);
  const band =
    judged === undefined
      ? []
      : [
          `${judged.word}${low === undefined && high === undefined ? '' : ` (${bandWords(low, high, unit)})`}${notes.mark(judged.source)}`,
        ];
  const before = corrected.map((old) => `first taken as ${valueRead(old)}`);
  const doubt = cannotBe(reading) ? ['doubted: no such value can be there'] : [];
  return [...(withdrawn ? ['taken back'] : []), ...doubt, ...band, ...before].join('; ');
}

/** Beyond what any place of the unit can read of its kind, whatever let it into the record. */
function cannotBe({ quantity, value, unit }: Measured): boolean {
  if (value === 'open' || quantity === 'mass') return false;
  const rows = MEASURANDS.filter((row) => row.quantity === quantity);
  return rows.length > 0 && rows.every((row) => fitOf(row, value, unit as Reading['unit']) === 'impossible');
}

/** "114 to 126 V", "up to 15.4 A". */
export function bandWords(low: number | undefined, high: number | undefined, unit: string): string {
  if (low === undefined) return `up to ${high} ${unit}`;
  return high === undefined ? `from ${low} ${unit}` : `${low} to ${high} ${unit}`;
}

/** Every reading in its order, and in its place every entry that could not be read: it may have been one. */
export function readingsTable({ readings, notRead }: VisitRecord, times: PrintTimes, notes: Footnotes): SheetTable {
  const lines = readings.map((line) => ({
    entry: line.entry,
    row: [
      String(line.number),
      times.clock(line.at),
      PHASE_WORDS[line.phase],
      whatWasRead(line.reading),
      valueRead(line.reading),
      verdict(line, notes),
    ],
  }));
  const gaps = notRead.map((gap) => ({
    entry: gap.entry,
    row: ['?', times.clock(gap.at), '', '', '', gapWords(gap)],
  }));
  return {
    head: ['No.', 'Time', 'When', 'What', 'Reading', 'Against its limits'],
    rows: [...lines, ...gaps].sort((a, b) => a.entry - b.entry).map(({ row }) => row),
  };
}

/** What the numbers of readings leave open to a reader: why some are not there. */
export function numberWords({ readings, contradictions, notRead }: VisitRecord): readonly string[] {
  const jumps = readings.some(({ number }, at) => number !== (readings[at - 1]?.number ?? 0) + 1);
  return [
    ...(jumps
      ? [
          `Numbers that are not here belong to what was seen, done or fitted in between${notRead.length === 0 ? '' : ', or to an entry that could not be read'}: one count for all.`,
        ]
      : []),
    ...contradictions.map(
      ({ numbers }) => `Readings ${numbers.join(' and ')} contradict each other: one of them was measured again.`,
    ),
  ];
}

/** The same place before the repair and after it, beside each other: the last of each. */
export function beforeAndAfter({ readings }: VisitRecord): SheetTable {
  const standing = readings.filter(({ withdrawn, reading }) => !withdrawn && !AT_THE_CIRCUIT.has(reading.quantity));
  const after = new Map(standing.filter(isAfter).map((line) => [whatWasRead(line.reading), line]));
  const before = new Map(standing.filter((line) => !isAfter(line)).map((line) => [whatWasRead(line.reading), line]));
  return {
    head: ['What', 'Before', 'After'],
    rows: [...after].flatMap(([what, line]) => {
      const was = before.get(what);
      return was === undefined ? [] : [[capital(what), orDoubted(was.reading), orDoubted(line.reading)]];
    }),
  };
}

/** What was last read of each place on two visits; what was read on one alone stands alone. */
export function comparedReadings(one: VisitRecord, other: VisitRecord, head: readonly string[]): SheetTable {
  const lastOf = ({ readings }: VisitRecord) =>
    new Map(
      readings
        .filter(({ withdrawn, reading }) => !withdrawn && !AT_THE_CIRCUIT.has(reading.quantity))
        .map(({ reading }) => [whatWasRead(reading), reading]),
    );
  const [here, there] = [lastOf(one), lastOf(other)];
  const shown = (reading: Measured | undefined) => (reading === undefined ? NOT_READ : orDoubted(reading));
  return {
    head,
    rows: [...new Set([...here.keys(), ...there.keys()])].map((what) => [
      capital(what),
      shown(here.get(what)),
      shown(there.get(what)),
    ]),
  };
}

const NOT_READ = '–';
const orDoubted = (reading: Measured) => `${valueRead(reading)}${cannotBe(reading) ? ' (doubted)' : ''}`;
const isAfter = ({ phase }: Line) => phase === 'prove' || phase === 'close' || phase === 'closed';
/** Weights and vacuum are told where the refrigerant is. */
const AT_THE_CIRCUIT: ReadonlySet<string> = new Set(['mass', 'vacuum']);

const REFUSED: Readonly<Record<Extract<VisitOutcome, { type: 'reading.refused' }>['reason'] | 'asked-back', string>> = {
  'asked-back': 'it was asked back, and not said again',
  'not-proven-dead': 'power there was not proven off',
  'in-vacuum': 'the refrigerant circuit was in a vacuum',
  'not-on-the-bench': 'it is not measured on the bench',
  'not-read-dead': 'the place was not read dead',
  impossible: 'no such value can be there',
  'read-again': 'it was measured again',
  'withdrawn-by-technician': 'the technician took it back',
  'not-answered': 'a question about it was not answered',
};

export function refusedLines({ refused }: VisitRecord, times: PrintTimes): readonly string[] {
  return refused.map(({ at, reading, reason }) => {
    const why = REFUSED[reason as keyof typeof REFUSED] ?? reason.replaceAll('-', ' ');
    return `${times.clock(at)}: ${readWhole(reading)}, not taken: ${why}.`;
  });
}

/** Why a figure of the charge bears no verdict. */
export const NO_VERDICT: Readonly<Record<NoVerdict, string>> = {
  'not-running': 'the unit was not running',
  'running-too-short': 'it had not run long enough',
  'outdoors-too-cold': 'it was too cold outdoors',
  'outdoor-unknown': 'the outdoor air was not measured',
  'outside-the-chart': 'outside what the chart covers',
  'no-valid-test': 'no valid test for this unit',
  'mixed-line': 'liquid and vapor in the line',
  'no-target': 'the plate gives no target',
};
