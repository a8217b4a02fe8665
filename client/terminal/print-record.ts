import type { VisitRecord } from '../../grammar/export/visit-record-schema.ts';
import { wrapLine } from '../../grammar/export/wrap-line.ts';
import { ZONES } from '../../grammar/vocabulary/zones.ts';
import { RECORD_LINES, RECORD_TITLES } from '../words/terminal/record-labels.ts';

/** The record of a visit as plain text to print: one section a subject, empty ones left out. */
export function printRecord(record: VisitRecord): string {
  const { summary, finding } = record;
  return [
    `${record.site}\n${'='.repeat(record.site.length)}\n`,
    section('visit', RECORD_LINES.opening(record)),
    section('customer', summary === undefined ? [] : [summary.plain]),
    section('finding', finding === undefined ? [] : [RECORD_LINES.finding(finding)]),
    section('open', summary === undefined ? [] : summary.openItems),
    section('recommended', record.recommendations.map(RECORD_LINES.recommended)),
    section('signed', record.signatures.map(RECORD_LINES.signed)),
    section('job', record.items.map(RECORD_LINES.words)),
    section('nameplate', record.nameplate.map(RECORD_LINES.nameplate)),
    section('readings', record.readings.map(RECORD_LINES.reading)),
    section('refused', record.refused.map(RECORD_LINES.refused)),
    section('seen', record.observations.map(RECORD_LINES.words)),
    section('proofs', record.proofs.map(RECORD_LINES.proof)),
    section(
      'energy',
      ZONES.map((zone) => RECORD_LINES.energy(zone, record.energy[zone])),
    ),
    section('cautions', record.cautions.map(RECORD_LINES.caution)),
    section('warnings', record.warnings.map(RECORD_LINES.words)),
    section('refrigerant', record.refrigerant.map(RECORD_LINES.refrigerant)),
    section('charge', record.charge.map(RECORD_LINES.charge)),
    section('supervised', record.acknowledgements.map(RECORD_LINES.acknowledged)),
    section('waited', record.waited.map(RECORD_LINES.words)),
    section('remarks', record.remarks.map(RECORD_LINES.remark)),
    section('hurt', record.injuries.map(RECORD_LINES.hurt)),
    section('unanswered', record.unanswered.map(RECORD_LINES.unanswered)),
    section('unproven', record.unproven.map(RECORD_LINES.unproven)),
    section('deeds', record.deeds.map(RECORD_LINES.deed)),
    section('wires', record.wires.map(RECORD_LINES.wire)),
    section('parts', record.parts.map(RECORD_LINES.part)),
    section('works', record.works.map(RECORD_LINES.words)),
    section('notes', record.notes.map(RECORD_LINES.note)),
    section('overrides', record.overrides.map(RECORD_LINES.override)),
    section('technician', summary === undefined ? [] : summary.technical),
  ]
    .filter((text) => text !== '')
    .join('\n');
}

function section(name: keyof typeof RECORD_TITLES, lines: readonly string[]): string {
  if (lines.length === 0) return '';
  const title = RECORD_TITLES[name];
  return `${title}\n${'-'.repeat(title.length)}\n${lines.flatMap(wrapLine).join('\n')}\n`;
}
