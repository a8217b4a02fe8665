import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import { dictationDetail } from '../shown/dictated-words.ts';
import { gapLines } from './print-gaps.ts';
import { openLines } from './print-open.ts';
import { beforeAndAfter, numberWords, readingsTable, refusedLines } from './print-readings.ts';
import { refrigerantForCustomer, refrigerantLines } from './print-refrigerant.ts';
import {
  chargeLines,
  coolsNow,
  customerSummary,
  findingLines,
  fittedSoFar,
  handLines,
  repairLines,
  unitLines,
} from './print-repair.ts';
import { cautionLines, energyLines, proofLines, supervisorLines, switchLines, troubleLines } from './print-safety.ts';
import { Footnotes } from './print-sources.ts';
import { type ClockHours, type PrintTimes, printTimes } from './print-times.ts';
import { type Sheet, type SheetSection, section } from './sheet.ts';

/** What vouches for the record that is printed: a line each, such as where its chain and the server's heads end. */
export interface SheetEdges {
  readonly vouchedBy: readonly string[];
  /** Used where the record names no time zone of its own. IANA name. */
  readonly zone?: string;
  /** As the reader's device shows the time; twelve hours where absent. */
  readonly hours?: ClockHours;
}

/**
 * A visit's record for its three readers, the customer first, then the next technician, then the supervisor: nothing
 * is judged anew, nothing is in it that a person would have to decode.
 */
export function printedSheet(record: VisitRecord, edges: SheetEdges = { vouchedBy: [] }): Sheet {
  const times = printTimes(record.zone ?? edges.zone, edges.hours);
  const notes = new Footnotes();
  const sections = [
    ...forCustomer(record, times, notes),
    ...forTechnician(record, times, notes),
    ...forSupervisor(record, times, notes),
  ];
  return {
    title: record.site || `Site ${NOT_KNOWN}`,
    under: [
      `Complaint: ${record.complaint || NOT_KNOWN}`,
      `${times.day(record.opened)} to ${times.day(record.lastEvent)}; all times in ${times.zone}`,
      ...(record.role === 'trainee' ? ['By a trainee under a supervisor'] : []),
      ...(record.summary === undefined ? ['This visit was not closed.'] : []),
    ],
    sections: [...sections, ...section('Sources', notes.lines()), ...section('This record', vouched(record, edges))],
  };
}

function forCustomer(record: VisitRecord, times: PrintTimes, notes: Footnotes): readonly SheetSection[] {
  const { summary, recommendations, signatures, items } = record;
  const told = items.filter(({ item }) => !OF_THE_CIRCUIT.has(item));
  return [
    ...section('For the customer', [
      ...(summary === undefined ? fittedSoFar(record) : customerSummary(record)),
      ...refrigerantForCustomer(record),
      coolsNow(record, notes),
    ]),
    ...section('Before and after', [], beforeAndAfter(record)),
    ...section('Left open', openLines(record)),
    ...section(
      'Recommended',
      recommendations.map((line) => dictated(line.text, line)),
    ),
    ...section(
      'Agreed and signed',
      [
        ...told.map(({ at, words }) => ({ at, line: `${times.clock(at)}: ${words}` })),
        ...signatures.map((one) => ({
          at: one.at,
          line: dictated(`${times.clock(one.at)}: signed by the ${one.who}, ${one.name}`, one),
        })),
      ]
        .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
        .map(({ line }) => line),
    ),
  ];
}

/** These are told where the refrigerant is. */
const OF_THE_CIRCUIT: ReadonlySet<string> = new Set([
  'circuit-opened',
  'leak-found',
  'no-leak-found',
  'vacuum-isolated',
]);

function forTechnician(record: VisitRecord, times: PrintTimes, notes: Footnotes): readonly SheetSection[] {
  return [
    ...section('What was found', findingLines(record)),
    ...section('Repair', repairLines(record, times)),
    ...section('Refrigerant', refrigerantLines(record, times, notes)),
    ...section('Charge', chargeLines(record, times, notes)),
    ...section('The unit', unitLines(record)),
    ...section('Readings', numberWords(record), readingsTable(record, times, notes)),
    ...section('Refused', refusedLines(record, times)),
    ...section('Seen', onceEach(record.observations.map(({ at, words }) => `${times.clock(at)}: ${words}`))),
    ...section('Done by hand', handLines(record, times)),
    ...section(
      'Notes',
      record.notes.flatMap((line) =>
        // What tells of the refrigerant stands there.
        line.about !== undefined
          ? []
          : dictated(
              `${times.clock(line.at)}: ${line.from === 'customer' ? 'the customer says: ' : ''}${line.text}`,
              line,
            ),
      ),
    ),
    ...section('Missing from this record', [...notRecorded(record), ...gapLines(record, times)]),
  ];
}

/** What was told twice in one minute, with nothing between, was seen once. */
function onceEach(lines: readonly string[]): readonly string[] {
  return lines.filter((line, at) => line !== lines[at - 1]);
}

/** Of the summary's lines those that stand nowhere above. */
function notRecorded({ summary }: VisitRecord): readonly string[] {
  return (summary?.technical ?? []).filter((line) => line.startsWith('Not recorded'));
}

function forSupervisor(record: VisitRecord, times: PrintTimes, notes: Footnotes): readonly SheetSection[] {
  return [
    ...section('Proofs that power was off', proofLines(record, times)),
    ...section('Switches that isolate', switchLines(record, times)),
    ...section('Not as it should be', troubleLines(record, times)),
    ...section(
      'Warnings',
      record.warnings.map(({ at, words }) => `${times.clock(at)}: ${words}`),
    ),
    ...section('Cautions, as they were spoken', cautionLines(record, times, notes)),
    ...section('Supervisor', supervisorLines(record, times)),
    ...section('Energy at the end', energyLines(record)),
  ];
}

/** Where the entry that opened the visit could not be read. */
const NOT_KNOWN = 'not known';

function vouched({ visit, software, events, notRead }: VisitRecord, { vouchedBy }: SheetEdges): readonly string[] {
  return [
    `Visit ${visit || NOT_KNOWN}, ${events} entries, written with ${software || NOT_KNOWN}.`,
    ...(notRead.length === 0
      ? []
      : [`${notRead.length} of them could not be read and ${notRead.length === 1 ? 'is' : 'are'} left out here.`]),
    ...vouchedBy,
  ];
}

/** Words, and behind them what is to be known of them. */
function dictated(words: string, line: Parameters<typeof dictationDetail>[0]): string {
  const { sound: _sound, ...told } = line;
  const detail = [dictationDetail(told), line.sound === undefined ? '' : 'its sound is kept']
    .filter(Boolean)
    .join(' · ');
  return detail === '' ? words : `${words} (${detail})`;
}
