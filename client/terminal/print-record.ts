import type { VisitRecord } from '../../grammar/export/visit-record-schema.ts';
import { wrapLine } from '../../grammar/export/wrap-line.ts';
import { ZONE_NAMES, ZONES } from '../../grammar/vocabulary/zones.ts';
import { faultWords, partWords, pointNamed, valueWords, wireWords } from '../visit/words/prompts.ts';

type Row<K extends keyof VisitRecord> = Extract<VisitRecord[K], readonly unknown[]>[number];

/** The record of a visit as plain text to print: one section a subject, empty ones left out. */
export function printRecord(record: VisitRecord): string {
  const { summary, finding } = record;
  return [
    `${record.site}\n${'='.repeat(record.site.length)}\n`,
    section('Visit', [
      `${record.visit}, ${record.role}, opened ${record.opened}, last event ${record.lastEvent}, ${record.events} events`,
      `complaint: ${record.complaint}`,
      `unit: ${record.unit.id}; software: ${record.software}; stands at: ${record.phase}`,
    ]),
    section('For the customer', summary === undefined ? [] : [summary.plain]),
    section(
      'Finding',
      finding === undefined
        ? []
        : [
            `${faultWords(finding.fault as never)}, ${Math.round(finding.probability * 100)} %, on readings ${finding.evidence.join(', ') || 'none'}`,
          ],
    ),
    section('Open', summary === undefined ? [] : summary.openItems),
    section(
      'Recommended',
      record.recommendations.map((line) => line.text),
    ),
    section(
      'Signed',
      record.signatures.map((line) => `${line.who}: ${line.name}, ${line.at}`),
    ),
    section(
      'The job',
      record.items.map((line) => `${clock(line)} ${line.words}`),
    ),
    section(
      'Nameplate',
      record.nameplate.map((line) =>
        [line.field, line.value, line.unit].filter((part) => part !== undefined).join(' '),
      ),
    ),
    section('Readings', record.readings.map(readingLine)),
    section(
      'Refused',
      record.refused.map((line) => `${clock(line)} ${measuredWords(line.reading)}: ${line.reason}`),
    ),
    section(
      'Seen',
      record.observations.map((line) => `${clock(line)} ${line.words}`),
    ),
    section('Proofs of absence of voltage', record.proofs.map(proofLine)),
    section(
      'Energy at the end',
      ZONES.map((zone) => `${ZONE_NAMES[zone]}: ${record.energy[zone].replace('-', ' ')}`),
    ),
    section('Cautions', record.cautions.map(cautionLine)),
    section(
      'Warnings',
      record.warnings.map((line) => `${clock(line)} ${line.words}`),
    ),
    section(
      'Refrigerant circuit',
      record.refrigerant.map(
        (line) =>
          `${clock(line)} ${line.check.replace('-', ' ')}: ${line.value} after ${line.minutes} minutes, ${line.judged.word}; ${line.judged.source}`,
      ),
    ),
    section(
      'Charge',
      record.charge.map(
        (line) =>
          `${clock(line)} ${line.figure.replaceAll('-', ' ')}: ${line.value} °F on readings ${line.readings.join(', ')}, ${line.judged?.word ?? line.noVerdict ?? ''}`,
      ),
    ),
    section(
      'Remarks',
      record.remarks.map((line) => `${clock(line)} ${line.author}: ${line.text}`),
    ),
    section('Somebody was hurt', record.injuries.map(clock)),
    section(
      'Checks without an answer',
      record.unanswered.map((line) => `${clock(line)} put ${line.times} times`),
    ),
    section(
      'Wires',
      record.wires.map(({ at, ...wire }) => `${clock({ at })} ${wireWords(wire)}`),
    ),
    section(
      'Parts',
      record.parts.map((line) => `${clock(line)} ${partWords(line.part, line.ratings)}`),
    ),
    section(
      'Done without a part',
      record.works.map((line) => `${clock(line)} ${line.words}`),
    ),
    section(
      'Notes',
      record.notes.map((line) => `${clock(line)} ${line.text}`),
    ),
    section(
      'Closed all the same',
      record.overrides.map((line) => `${line.why.join(' ')} Reason: ${line.reason}`),
    ),
    section('For the next technician', summary === undefined ? [] : summary.technical),
  ]
    .filter((text) => text !== '')
    .join('\n');
}

const clock = ({ at }: { readonly at: string }): string => at.slice(11, 19);

function section(title: string, lines: readonly string[]): string {
  if (lines.length === 0) return '';
  return `${title}\n${'-'.repeat(title.length)}\n${lines.flatMap(wrapLine).join('\n')}\n`;
}

function measuredWords({ at, value, unit, bench }: Row<'readings'>['reading']): string {
  const places = at.map(pointNamed).join(' to ');
  return `${places}: ${typeof value === 'number' ? `${value} ${unit}` : valueWords(value, unit as never)}${bench === true ? ', on the bench' : ''}`;
}

function readingLine(line: Row<'readings'>): string {
  const { judged, corrected } = line;
  const band =
    judged === undefined ? '' : `; ${judged.word} (${judged.low ?? ''}…${judged.high ?? ''}; ${judged.source})`;
  const before =
    corrected.length === 0 ? '' : `; set right from ${corrected.map((reading) => reading.value).join(', ')}`;
  return `${line.number}. ${clock(line)} ${line.phase}: ${measuredWords(line.reading)}${band}${before}${line.withdrawn ? '; taken back' : ''}`;
}

function proofLine(line: Row<'proofs'>): string {
  return `${clock(line)} ${ZONE_NAMES[line.zone]}: meter ${line.before} V; ${line.values.join(', ')} V; meter ${line.after} V: ${line.result}`;
}

function cautionLine(line: Row<'cautions'>): string {
  const zone = line.zone === undefined ? '' : ` (${ZONE_NAMES[line.zone]})`;
  const answer =
    line.acknowledged === undefined ? 'not acknowledged' : `acknowledged ${line.acknowledged.slice(11, 19)}`;
  return `${clock(line)}${zone} ${line.words} ${line.late ? 'Spoken late' : `Spoken before; ${answer}`}. Source: ${line.source}`;
}
