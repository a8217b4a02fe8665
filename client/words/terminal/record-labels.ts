import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import { type EnergyState, ZONE_NAMES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { dictationDetail } from '../shown/dictated-words.ts';
import { showFinding } from '../shown/show-likely.ts';
import { partWords } from '../things/part-words.ts';
import { pointWords } from '../things/place-words.ts';
import { valueWords } from '../things/value-words.ts';
import { wireWords } from '../things/wire-words.ts';

type Row<K extends keyof VisitRecord> = Extract<VisitRecord[K], readonly unknown[]>[number];

/** The headings of a printed record. */
export const RECORD_TITLES = {
  visit: 'Visit',
  customer: 'For the customer',
  finding: 'Finding',
  open: 'Open',
  recommended: 'Recommended',
  signed: 'Signed',
  job: 'The job',
  nameplate: 'Nameplate',
  readings: 'Readings',
  refused: 'Refused',
  seen: 'Seen',
  proofs: 'Proofs of absence of voltage',
  energy: 'Energy at the end',
  cautions: 'Cautions',
  warnings: 'Warnings',
  refrigerant: 'Refrigerant circuit',
  charge: 'Charge',
  supervised: 'Supervisor',
  waited: 'Read by a trainee alone, not taken',
  remarks: 'Remarks',
  hurt: 'Somebody was hurt',
  unanswered: 'Checks without an answer',
  unproven: 'Worked on, not proven dead',
  deeds: 'Done by hand',
  wires: 'Wires',
  parts: 'Parts',
  works: 'Done without a part',
  notes: 'Notes',
  overrides: 'Closed all the same',
  technician: 'For the next technician',
} as const;

/** Whose device a supervisor answered from. */
const FROM = { 'own-device': 'from a device of their own', 'this-device': 'on this device' } as const;

/** The lines under them, one a row of the record. */
export const RECORD_LINES = {
  opening: (record: VisitRecord): readonly string[] => [
    `${record.visit}, ${record.role}, opened ${record.opened}, last event ${record.lastEvent}, ${record.events} events`,
    `complaint: ${record.complaint}`,
    `unit: ${record.unit.id}; software: ${record.software}; stands at: ${record.phase}`,
  ],
  finding: ({ fault, probability, evidence }: NonNullable<VisitRecord['finding']>) =>
    `${showFinding({ fault: fault as never, probability })}, on readings ${evidence.join(', ') || 'none'}`,
  recommended: (line: Row<'recommendations'>) => dictated(line.text, line),
  signed: (line: Row<'signatures'>) => dictated(`${line.who}: ${line.name}, ${line.at}`, line),
  words: (line: Row<'items'> | Row<'observations'> | Row<'warnings'> | Row<'works'> | Row<'waited'>) =>
    `${clock(line)} ${line.words}`,
  nameplate: ({ field, value, unit }: Row<'nameplate'>) =>
    [field, value, unit].filter((part) => part !== undefined).join(' '),
  reading: (line: Row<'readings'>) => {
    const { judged, corrected } = line;
    const band =
      judged === undefined ? '' : `; ${judged.word} (${judged.low ?? ''}…${judged.high ?? ''}; ${judged.source})`;
    const before =
      corrected.length === 0 ? '' : `; set right from ${corrected.map((reading) => reading.value).join(', ')}`;
    return `${line.number}. ${clock(line)} ${line.phase}: ${measured(line.reading)}${band}${before}${line.withdrawn ? '; taken back' : ''}`;
  },
  refused: (line: Row<'refused'>) => `${clock(line)} ${measured(line.reading)}: ${line.reason}`,
  proof: (line: Row<'proofs'>) =>
    `${clock(line)} ${ZONE_NAMES[line.zone]}: meter ${line.before} V; ${provedPairs(line)} V; meter ${line.after} V: ${line.result}`,
  energy: (zone: ZoneId, state: EnergyState) => `${ZONE_NAMES[zone]}: ${state.replace('-', ' ')}`,
  caution: (line: Row<'cautions'>) => {
    const zone = line.zone === undefined ? '' : ` (${ZONE_NAMES[line.zone]})`;
    const answer =
      line.acknowledged === undefined ? 'not acknowledged' : `acknowledged ${clock({ at: line.acknowledged })}`;
    return `${clock(line)}${zone} ${line.words} ${line.late ? `Spoken late${line.why === undefined ? '' : `: ${line.why}`}` : `Spoken before; ${answer}`}. Source: ${line.source}`;
  },
  refrigerant: (line: Row<'refrigerant'>) =>
    `${clock(line)} ${line.check.replace('-', ' ')}: ${line.value} after ${line.minutes} minutes, ${line.judged.word}; ${line.judged.source}`,
  charge: (line: Row<'charge'>) =>
    `${clock(line)} ${line.figure.replaceAll('-', ' ')}: ${line.value} °F on readings ${line.readings.join(', ')}, ${line.judged?.word ?? line.noVerdict ?? ''}`,
  acknowledged: (line: Row<'acknowledgements'>) =>
    `${clock(line)} ${line.supervisor}${line.from === undefined ? '' : `, ${FROM[line.from]}`}`,
  remark: (line: Row<'remarks'>) => `${clock(line)} ${line.author}: ${line.text}`,
  hurt: (line: Row<'injuries'>) => clock(line),
  unanswered: (line: Row<'unanswered'>) => `${clock(line)} put ${line.times} times`,
  wire: ({ at, ...wire }: Row<'wires'>) => `${clock({ at })} ${wireWords(wire)}`,
  unproven: (line: Row<'unproven'>) =>
    `${clock(line)} ${line.what}. ${ZONE_NAMES[line.zone]}: ${line.state.replace('-', ' ')}`,
  deed: (line: Row<'deeds'>) => `${clock(line)} ${[line.of, line.to].filter(Boolean).join(' ').replaceAll('-', ' ')}`,
  part: (line: Row<'parts'>) => `${clock(line)} ${[partWords(line.part, line.ratings), ...line.doubts].join('. ')}`,
  note: (line: Row<'notes'>) =>
    dictated(`${clock(line)} ${line.from === undefined ? '' : `${line.from} says: `}${line.text}`, line),
  override: (line: Row<'overrides'>) => `${line.why.join(' ')} Reason: ${line.reason}`,
} as const;

/** Each value at its pair, as far as the record has it. */
function provedPairs({ values, places }: Row<'proofs'>): string {
  return values
    .map((value, index) => {
      const pair = (places?.[index] ?? []).map(pointWords).join(' to ');
      return pair === '' ? `${value}` : `${pair} ${value}`;
    })
    .join(', ');
}

function measured({ at, value, unit, bench }: Row<'readings'>['reading']): string {
  const places = at.map(pointWords).join(' to ');
  return `${places}: ${typeof value === 'number' ? `${value} ${unit}` : valueWords(value, unit as never)}${bench === true ? ', on the bench' : ''}`;
}

/** Hours, minutes and seconds of a moment, UTC. */
function clock({ at }: { readonly at: string }): string {
  return at.slice(11, 19);
}

/** Words, and behind them what is to be known of them. */
function dictated(words: string, line: Parameters<typeof dictationDetail>[0]): string {
  const detail = dictationDetail(line);
  return detail === '' ? words : `${words} (${detail})`;
}
