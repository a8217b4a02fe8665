import type { FoldedVisit, Moment } from '../../../grammar/visit/fold-visit.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { ENERGY_WORDS } from '../show/energy-signs.tsx';
import { showReading } from '../show/show-reading.ts';
import { showMeaning, showVerdict } from '../show/show-understanding.ts';
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

type ListKey = {
  [K in keyof FoldedVisit]-?: FoldedVisit[K] extends readonly Moment[] ? K : never;
}[keyof FoldedVisit];
type Line = Omit<TranscriptLine, 'seq'>;

/** How each list of the view stands in the transcript; `said-with-it`: what was said then tells it. */
const LINES: { readonly [K in ListKey]: ((line: FoldedVisit[K][number]) => Line) | 'said-with-it' } = {
  heard: (line) => ({
    kind: 'heard',
    text: line.text,
    detail: `${showMeaning(line.understanding.meaning)} · ${showVerdict(line.understanding, line.accepted)} · ${line.ear}, sure ${percent(line.confidence)}`,
  }),
  said: (line) => ({ kind: 'said', text: line.text, detail: line.kind }),
  readings: (line) => ({
    kind: 'reading',
    text: showReading(line.reading),
    detail: [
      line.judged === undefined ? '' : `${line.judged.word}: ${line.judged.source}`,
      ...line.corrected.map((before) => `was ${showReading(before)}`),
      line.withdrawn ? 'withdrawn' : '',
    ]
      .filter((part) => part !== '')
      .join(' · '),
  }),
  refused: (line) => ({
    kind: 'refused',
    text: `Refused: ${showReading(line.reading)}`,
    detail: line.reason.replaceAll('-', ' '),
  }),
  asked: (line) => ({ kind: 'asked', text: `Asked: ${showReading(line.reading)}`, detail: line.why }),
  energyChanges: (line) => ({
    kind: 'energy',
    text: `${ZONE_NAMES[line.zone]}: ${ENERGY_WORDS[line.from]} → ${ENERGY_WORDS[line.to]}`,
    detail: line.why,
  }),
  cautions: (line) => ({
    kind: 'caution',
    text: `Caution given: ${line.caution.replaceAll('-', ' ')}`,
    detail: `${line.late ? 'late · ' : ''}${line.acknowledgedAt === undefined ? 'not acknowledged' : 'acknowledged'} · ${line.source}`,
  }),
  notes: (line) => ({ kind: 'note', text: `Note: ${line.text}` }),
  remarks: (line) => ({ kind: 'note', text: `Remark, ${line.author}: ${line.text}` }),
  unanswered: (line) => ({
    kind: 'note',
    text: `Check on the technician without an answer, put ${line.times} times`,
  }),
  injuries: () => ({ kind: 'note', text: 'Somebody is hurt' }),
  interruptions: (line) => ({ kind: 'note', text: line.sentence }),
  unknown: (line) => ({
    kind: 'unknown',
    text: `Unknown entry: ${line.type}`,
    detail: 'written by another version; kept as it is',
  }),
  observations: 'said-with-it',
  nameplate: 'said-with-it',
  proofs: 'said-with-it',
  suspects: 'said-with-it',
  steps: 'said-with-it',
  phases: 'said-with-it',
  works: 'said-with-it',
  parts: 'said-with-it',
  wires: 'said-with-it',
  items: 'said-with-it',
  recommendations: 'said-with-it',
  signatures: 'said-with-it',
  refrigerant: 'said-with-it',
  focuses: 'said-with-it',
  overrides: 'said-with-it',
  warnings: 'said-with-it',
  charge: 'said-with-it',
};

/** The whole visit as lines, in the order of the record. */
export function transcriptLines(folded: FoldedVisit): readonly TranscriptLine[] {
  const lines = (Object.keys(LINES) as ListKey[]).flatMap((list) => linesOf(folded[list], LINES[list]));
  return lines.toSorted((a, b) => a.seq - b.seq);
}

function linesOf(list: readonly Moment[], show: ((line: never) => Line) | 'said-with-it'): TranscriptLine[] {
  return show === 'said-with-it' ? [] : list.map((line) => ({ seq: line.seq, ...show(line as never) }));
}

export function findingWords(folded: FoldedVisit): string | undefined {
  const { finding } = folded;
  return finding === undefined ? undefined : `${faultName(finding.fault)}, ${percent(finding.probability)}`;
}
