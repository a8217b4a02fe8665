import type { FoldedVisit, Moment } from '../../../grammar/visit/fold-visit.ts';
import { showReading } from '../../words/shown/show-reading.ts';
import { TRANSCRIPT } from '../../words/shown/transcript-words.ts';

/** One line of a visit's transcript. */
export interface TranscriptLine {
  readonly seq: number;
  readonly kind: keyof typeof TRANSCRIPT.kinds;
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
      detail: TRANSCRIPT.heardDetail(line),
    })),
    ...folded.said.map((line) => ({ seq: line.seq, kind: 'said' as const, text: line.text, detail: line.kind })),
    ...folded.readings.map((line) => ({
      seq: line.seq,
      kind: 'reading' as const,
      text: showReading(line.reading),
      detail: TRANSCRIPT.readingDetail(line),
    })),
    ...folded.refused.map((line) => ({
      seq: line.seq,
      kind: 'refused' as const,
      text: TRANSCRIPT.refused(line),
      detail: TRANSCRIPT.refusedDetail(line),
    })),
    ...folded.asked.map((line) => ({
      seq: line.seq,
      kind: 'asked' as const,
      text: TRANSCRIPT.asked(line),
      detail: line.why,
    })),
    ...folded.energyChanges.map((line) => ({
      seq: line.seq,
      kind: 'energy' as const,
      text: TRANSCRIPT.energy(line),
      detail: line.why,
    })),
    ...folded.cautions.map((line) => ({
      seq: line.seq,
      kind: 'caution' as const,
      text: TRANSCRIPT.caution(line),
      detail: TRANSCRIPT.cautionDetail(line),
    })),
    ...folded.notes.map((line) => ({ seq: line.seq, kind: 'note' as const, text: TRANSCRIPT.note(line) })),
    ...folded.remarks.map((line) => ({
      seq: line.seq,
      kind: 'note' as const,
      text: TRANSCRIPT.remark(line),
    })),
    ...folded.unanswered.map((line) => ({
      seq: line.seq,
      kind: 'note' as const,
      text: TRANSCRIPT.unanswered(line),
    })),
    ...folded.injuries.map((line) => ({ seq: line.seq, kind: 'note' as const, text: TRANSCRIPT.hurt })),
    ...folded.interruptions.map((line) => ({ seq: line.seq, kind: 'note' as const, text: line.sentence })),
    ...folded.unknown.map((line) => ({
      seq: line.seq,
      kind: 'unknown' as const,
      text: TRANSCRIPT.unknown(line),
      detail: TRANSCRIPT.unknownDetail,
    })),
  ];
  return lines.toSorted((a: Pick<Moment, 'seq'>, b: Pick<Moment, 'seq'>) => a.seq - b.seq);
}
