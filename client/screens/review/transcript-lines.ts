import type { DictatedLine } from '../../../grammar/visit/dictated.ts';
import type { Moment } from '../../../grammar/visit/facts.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import { dictationDetail } from '../../words/shown/dictated-words.ts';
import { showReading } from '../../words/shown/show-reading.ts';
import { TRANSCRIPT } from '../../words/shown/transcript-words.ts';

/** One line of a visit's transcript. */
export interface TranscriptLine {
  readonly seq: number;
  readonly kind: keyof typeof TRANSCRIPT.kinds;
  readonly text: string;
  readonly detail?: string;
  /** Kept of it. */
  readonly sound?: KeptSound;
  /** A photo of that moment, by its hash. */
  readonly photo?: string;
}

type ListKey = {
  [K in keyof FoldedVisit]-?: FoldedVisit[K] extends readonly Moment[] ? K : never;
}[keyof FoldedVisit];
type Line = Omit<TranscriptLine, 'seq'>;

/** How each list of the view stands in the transcript; `said-with-it`: what was said then tells it. */
const LINES: { readonly [K in ListKey]: ((line: FoldedVisit[K][number]) => Line) | 'said-with-it' } = {
  heard: (line) => ({
    kind: 'heard',
    text: line.text,
    detail: TRANSCRIPT.heardDetail(line),
    ...(line.sound === undefined ? {} : { sound: line.sound }),
  }),
  said: (line) => ({ kind: 'said', text: line.text, detail: line.kind }),
  readings: (line) => ({ kind: 'reading', text: showReading(line.reading), detail: TRANSCRIPT.readingDetail(line) }),
  refused: (line) => ({ kind: 'refused', text: TRANSCRIPT.refused(line), detail: TRANSCRIPT.refusedDetail(line) }),
  asked: (line) => ({ kind: 'asked', text: TRANSCRIPT.asked(line), detail: line.why }),
  energyChanges: (line) => ({ kind: 'energy', text: TRANSCRIPT.energy(line), detail: line.why }),
  cautions: (line) => ({ kind: 'caution', text: TRANSCRIPT.caution(line), detail: TRANSCRIPT.cautionDetail(line) }),
  unproven: (line) => ({ kind: 'unproven', text: TRANSCRIPT.unproven(line), detail: TRANSCRIPT.unprovenDetail(line) }),
  notes: (line) => ({ kind: 'note', text: TRANSCRIPT.note(line), ...dictated(line) }),
  recommendations: (line) => ({ kind: 'note', text: TRANSCRIPT.recommended(line), ...dictated(line) }),
  signatures: (line) => ({ kind: 'note', text: TRANSCRIPT.signed(line), ...dictated(line) }),
  photos: (line) => ({ kind: 'note', text: TRANSCRIPT.photo(line), photo: line.sha256 }),
  remarks: (line) => ({ kind: 'note', text: TRANSCRIPT.remark(line) }),
  acknowledgements: (line) => ({ kind: 'note', text: TRANSCRIPT.acknowledged(line) }),
  unanswered: (line) => ({ kind: 'note', text: TRANSCRIPT.unanswered(line) }),
  injuries: () => ({ kind: 'note', text: TRANSCRIPT.hurt }),
  interruptions: (line) => ({ kind: 'note', text: line.sentence }),
  unknown: (line) => ({ kind: 'unknown', text: TRANSCRIPT.unknown(line), detail: TRANSCRIPT.unknownDetail }),
  damaged: (line) => ({ kind: 'unknown', text: TRANSCRIPT.damaged(line), detail: TRANSCRIPT.damagedDetail }),
  waited: 'said-with-it',
  waiting: 'said-with-it',
  earlyStarts: 'said-with-it',
  observations: 'said-with-it',
  nameplate: 'said-with-it',
  proofs: 'said-with-it',
  switches: 'said-with-it',
  suspects: 'said-with-it',
  steps: 'said-with-it',
  phases: 'said-with-it',
  works: 'said-with-it',
  parts: 'said-with-it',
  wires: 'said-with-it',
  deeds: 'said-with-it',
  items: 'said-with-it',
  refrigerant: 'said-with-it',
  focuses: 'said-with-it',
  overrides: 'said-with-it',
  warnings: 'said-with-it',
  dangersTold: 'said-with-it',
  refusedParts: 'said-with-it',
  refusedReadings: 'said-with-it',
  charge: 'said-with-it',
  contradictions: 'said-with-it',
};

function dictated(line: DictatedLine): Pick<TranscriptLine, 'detail' | 'sound'> {
  const detail = dictationDetail(line);
  return { ...(detail === '' ? {} : { detail }), ...(line.sound === undefined ? {} : { sound: line.sound }) };
}

/** The whole visit as lines, in the order of the record. */
export function transcriptLines(folded: FoldedVisit): readonly TranscriptLine[] {
  const lines = (Object.keys(LINES) as ListKey[]).flatMap((list) => linesOf(folded[list], LINES[list]));
  return lines.toSorted((a, b) => a.seq - b.seq);
}

function linesOf(list: readonly Moment[], show: ((line: never) => Line) | 'said-with-it'): TranscriptLine[] {
  return show === 'said-with-it' ? [] : list.map((line) => ({ seq: line.seq, ...show(line as never) }));
}
