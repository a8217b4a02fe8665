import type { FoldedVisit, Moment } from '../../../grammar/visit/fold-visit.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { ENERGY_WORDS } from '../show/energy-signs.tsx';
import { showReading } from '../show/show-reading.ts';
import { showUnderstood } from '../show/show-understanding.ts';
import { faultName, percent } from '../show/suspect-list.tsx';

/** One line of a visit's transcript. */
export interface TranscriptLine {
  readonly seq: number;
  readonly kind:
    | 'heard'
    | 'said'
    | 'reading'
    | 'refused'
    | 'asked'
    | 'energy'
    | 'caution'
    | 'finding'
    | 'note'
    | 'unknown';
  readonly text: string;
  readonly detail?: string;
}

/** The whole visit as lines, in the order of the record. */
export function transcriptLines(folded: FoldedVisit): readonly TranscriptLine[] {
  const lines: TranscriptLine[] = [
    ...folded.heard.map((line) => ({
      seq: line.seq,
      kind: 'heard' as const,
      text: line.text,
      detail: `${showUnderstood(line)} · ${line.ear}, sure ${percent(line.confidence)}`,
    })),
    ...folded.said.map((line) => ({ seq: line.seq, kind: 'said' as const, text: line.text, detail: line.kind })),
    ...folded.readings.map((line) => ({
      seq: line.seq,
      kind: 'reading' as const,
      text: showReading(line.reading),
      detail: [
        line.judged === undefined ? '' : `${line.judged.word}: ${line.judged.source}`,
        ...line.corrected.map((before) => `was ${showReading(before)}`),
        line.withdrawn ? 'withdrawn' : '',
      ]
        .filter((part) => part !== '')
        .join(' · '),
    })),
    ...folded.refused.map((line) => ({
      seq: line.seq,
      kind: 'refused' as const,
      text: `Refused: ${showReading(line.reading)}`,
      detail: line.reason.replaceAll('-', ' '),
    })),
    ...folded.asked.map((line) => ({
      seq: line.seq,
      kind: 'asked' as const,
      text: `Asked: ${showReading(line.reading)}`,
      detail: line.why,
    })),
    ...folded.energyChanges.map((line) => ({
      seq: line.seq,
      kind: 'energy' as const,
      text: `${ZONE_NAMES[line.zone]}: ${ENERGY_WORDS[line.from]} → ${ENERGY_WORDS[line.to]}`,
      detail: line.why,
    })),
    ...folded.cautions.map((line) => ({
      seq: line.seq,
      kind: 'caution' as const,
      text: `Caution given: ${line.caution.replaceAll('-', ' ')}`,
      detail: `${line.late ? 'late · ' : ''}${line.acknowledgedAt === undefined ? 'not acknowledged' : 'acknowledged'} · ${line.source}`,
    })),
    ...folded.notes.map((line) => ({ seq: line.seq, kind: 'note' as const, text: `Note: ${line.text}` })),
    ...folded.remarks.map((line) => ({
      seq: line.seq,
      kind: 'note' as const,
      text: `Remark, ${line.author}: ${line.text}`,
    })),
    ...folded.unanswered.map((line) => ({
      seq: line.seq,
      kind: 'note' as const,
      text: `Check on the technician without an answer, put ${line.times} times`,
    })),
    ...folded.injuries.map((line) => ({ seq: line.seq, kind: 'note' as const, text: 'Somebody is hurt' })),
    ...folded.interruptions.map((line) => ({ seq: line.seq, kind: 'note' as const, text: line.sentence })),
    ...folded.unknown.map((line) => ({
      seq: line.seq,
      kind: 'unknown' as const,
      text: `Unknown entry: ${line.type}`,
      detail: 'written by another version; kept as it is',
    })),
  ];
  return lines.toSorted((a: Pick<Moment, 'seq'>, b: Pick<Moment, 'seq'>) => a.seq - b.seq);
}

export function findingWords(folded: FoldedVisit): string | undefined {
  const { finding } = folded;
  return finding === undefined ? undefined : `${faultName(finding.fault)}, ${percent(finding.probability)}`;
}
