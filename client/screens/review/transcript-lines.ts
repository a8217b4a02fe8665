import type { DictatedLine } from '../../../grammar/visit/dictated.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { Moment } from '../../../grammar/visit/facts.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import type { KeptSound } from '../../../grammar/visit/kept-sound.ts';
import { inTodaysNames } from '../../../grammar/visit/older-events.ts';
import { dictationDetail } from '../../words/shown/dictated-words.ts';
import { type Elsewhere, entryOf } from '../../words/shown/entry-words.ts';
import { showReading } from '../../words/shown/show-reading.ts';
import { TRANSCRIPT } from '../../words/shown/transcript-words.ts';
import { dayAndTimeIn } from './wall-clock.ts';

/** What one may want to go to from one to the next. */
export const LANDMARKS = [
  'refused',
  'held-back',
  'set-right',
  'caution',
  'warning',
  'proof',
  'unproven',
  'remark',
  'hurt',
] as const;
export type Landmark = (typeof LANDMARKS)[number];

/** One line of a visit's transcript. */
export interface TranscriptLine {
  readonly seq: number;
  readonly kind: keyof typeof TRANSCRIPT.kinds;
  readonly text: string;
  readonly detail?: string;
  /** Kept of it. */
  readonly sound?: KeptSound;
  readonly landmark?: Landmark;
  /** Why it is left out of the talk; it stands only where every entry is shown. */
  readonly leftOut?: string;
  /** A photo of that moment, by its hash. */
  readonly photo?: string;
}

type ListKey = {
  [K in keyof FoldedVisit]-?: FoldedVisit[K] extends readonly Moment[] ? K : never;
}[keyof FoldedVisit];
type Line = Omit<TranscriptLine, 'seq'>;

/** Lists of the view whose lines tell more than their events: what was corrected, withdrawn or acknowledged since. */
const LINES = {
  heard: (line) => ({
    kind: 'heard',
    text: line.text,
    detail: TRANSCRIPT.heardDetail(line),
    ...(line.sound === undefined ? {} : { sound: line.sound }),
  }),
  said: (line) => ({ kind: 'said', text: line.text, detail: line.kind }),
  readings: (line) => ({ kind: 'reading', text: showReading(line.reading), detail: TRANSCRIPT.readingDetail(line) }),
  refused: (line) => ({
    kind: 'refused',
    text: TRANSCRIPT.refused(line),
    detail: TRANSCRIPT.refusedDetail(line),
    landmark: 'refused',
  }),
  asked: (line) => ({ kind: 'asked', text: TRANSCRIPT.asked(line), detail: line.why }),
  energyChanges: (line) => ({ kind: 'energy', text: TRANSCRIPT.energy(line), detail: line.why }),
  cautions: (line) => ({
    kind: 'caution',
    text: TRANSCRIPT.caution(line),
    detail: TRANSCRIPT.cautionDetail(line),
    landmark: 'caution',
  }),
  unproven: (line) => ({
    kind: 'unproven',
    text: TRANSCRIPT.unproven(line),
    detail: TRANSCRIPT.unprovenDetail(line),
    landmark: 'unproven',
  }),
  notes: (line) => ({ kind: 'note', text: TRANSCRIPT.note(line), ...dictated(line) }),
  recommendations: (line) => ({ kind: 'note', text: TRANSCRIPT.recommended(line), ...dictated(line) }),
  signatures: (line) => ({ kind: 'note', text: TRANSCRIPT.signed(line), ...dictated(line) }),
  photos: (line) => ({ kind: 'note', text: TRANSCRIPT.photo(line), photo: line.sha256 }),
  remarks: (line, zone) => ({
    kind: 'remark',
    text: TRANSCRIPT.remark(line),
    // It stands at the moment of the event before it, which may be long before it was written.
    detail: TRANSCRIPT.remarkDetail(dayAndTimeIn(zone, line.time.at)),
    landmark: 'remark',
  }),
  acknowledgements: (line) => ({ kind: 'note', text: TRANSCRIPT.acknowledged(line) }),
  takeOvers: (line) => ({ kind: 'note', text: TRANSCRIPT.takenOver(line) }),
  unanswered: (line) => ({ kind: 'note', text: TRANSCRIPT.unanswered(line) }),
  injuries: () => ({ kind: 'hurt', text: TRANSCRIPT.hurt, landmark: 'hurt' }),
  interruptions: (line) => ({ kind: 'note', text: line.sentence }),
  unknown: (line) => ({ kind: 'unknown', text: TRANSCRIPT.unknown(line), detail: TRANSCRIPT.unknownDetail }),
  damaged: (line) => ({ kind: 'unknown', text: TRANSCRIPT.damaged(line), detail: TRANSCRIPT.damagedDetail }),
} satisfies { readonly [K in ListKey]?: (line: FoldedVisit[K][number], zone: string | undefined) => Line };

/** The lists that lines of the talk are taken from. */
export const SHOWN_LISTS: ReadonlySet<string> = new Set(Object.keys(LINES));

function dictated(line: DictatedLine): Pick<TranscriptLine, 'detail' | 'sound'> {
  const detail = dictationDetail(line);
  return { ...(detail === '' ? {} : { detail }), ...(line.sound === undefined ? {} : { sound: line.sound }) };
}

/**
 * Lines that were made, by what they were made of: neither an event nor a line of the view is ever changed, so that of a
 * visit that grows only what has come since is worded.
 */
const fromLists = new Map<
  string,
  WeakMap<object, { readonly zone: string | undefined; readonly made: TranscriptLine }>
>(Object.keys(LINES).map((list) => [list, new WeakMap()]));
const fromEvents = new WeakMap<
  VisitEvent,
  { readonly seq: number; readonly isListed: boolean; readonly made: readonly TranscriptLine[] }
>();

/** The whole visit as lines, in the order of the record: an event each, or one of a list that it stands in. */
export function transcriptLines(folded: FoldedVisit, events: readonly VisitEvent[]): readonly TranscriptLine[] {
  const listed = (Object.keys(LINES) as (keyof typeof LINES)[]).flatMap((list) =>
    folded[list].map((line) => listLine(list, line, folded.zone)),
  );
  const notRead = new Set([...folded.unknown, ...folded.damaged].map(({ seq }) => seq));
  const there = new Set(listed.map(({ seq }) => seq));
  const others = events.flatMap((event, index) =>
    notRead.has(index + 1) ? [] : eventLines(event, index + 1, there.has(index + 1)),
  );
  return [...listed, ...others].sort((a, b) => a.seq - b.seq);
}

function listLine(list: keyof typeof LINES, line: Moment, zone: string | undefined): TranscriptLine {
  const before = fromLists.get(list)?.get(line);
  if (before !== undefined && before.zone === zone) return before.made;
  const show = LINES[list] as (line: unknown, zone: string | undefined) => Line;
  const made = { seq: line.seq, ...show(line, zone) };
  fromLists.get(list)?.set(line, { zone, made });
  return made;
}

function eventLines(event: VisitEvent, seq: number, isListed: boolean): readonly TranscriptLine[] {
  const before = fromEvents.get(event);
  if (before !== undefined && before.seq === seq && before.isListed === isListed) return before.made;
  const made = eventLine(inTodaysNames(event), seq, isListed);
  fromEvents.set(event, { seq, isListed, made });
  return made;
}

/** @param isListed whether a list has a line for it */
function eventLine(event: VisitEvent, seq: number, isListed: boolean): readonly TranscriptLine[] {
  const type = event.type === 'input.taken' ? event.input.type : event.type;
  let entry: ReturnType<typeof entryOf>;
  try {
    entry = entryOf(event);
    if (entry !== undefined && isElsewhere(entry) && 'withLine' in entry) {
      if (isListed || entry.takenBack === undefined) return [];
      entry = entry.takenBack(event as never);
    }
  } catch {
    // What is inside of it is not as it should be.
    return [{ seq, kind: 'unknown', text: TRANSCRIPT.damaged({ type }), detail: TRANSCRIPT.unworded }];
  }
  if (entry === undefined) return [{ seq, kind: 'unknown', text: TRANSCRIPT.unknown({ type }) }];
  if (isElsewhere(entry)) {
    return 'leftOut' in entry ? [{ seq, kind: 'entry', text: type, leftOut: entry.leftOut }] : [];
  }
  const [text, detail] = entry;
  const landmark = landmarkOf(type);
  return [
    {
      seq,
      kind: kindOf(type),
      text,
      ...(detail === undefined || detail === '' ? {} : { detail }),
      ...(landmark === undefined ? {} : { landmark }),
    },
  ];
}

function isElsewhere(entry: NonNullable<ReturnType<typeof entryOf>>): entry is Elsewhere {
  return !Array.isArray(entry);
}

/** By the beginning of an event's type; the longest that fits. */
const KINDS: readonly (readonly [string, TranscriptLine['kind']])[] = [
  ['proof.', 'proof'],
  ['reading.', 'reading'],
  ['waiting.', 'reading'],
  ['contradiction.', 'reading'],
  ['observation.', 'seen'],
  ['call.', 'seen'],
  ['run.', 'seen'],
  ['nameplate.', 'plate'],
  ['switch.', 'energy'],
  ['charge.judged', 'result'],
  ['charge.', 'energy'],
  ['search.', 'energy'],
  ['hazard.', 'caution'],
  ['unit.', 'caution'],
  ['flammable.', 'caution'],
  ['circuit.', 'caution'],
  ['question.', 'asked'],
  ['suspects.', 'suspects'],
  ['finding.', 'finding'],
  ['part.', 'repair'],
  ['work.unproven', 'unproven'],
  ['work.', 'repair'],
  ['landing.', 'repair'],
  ['wire.', 'repair'],
  ['deed.', 'repair'],
  ['refrigerant.', 'repair'],
  ['split.', 'result'],
  ['dictation.', 'note'],
  ['recommendation.', 'note'],
  ['item.', 'note'],
];

function kindOf(type: string): TranscriptLine['kind'] {
  return KINDS.find(([start]) => type.startsWith(start))?.[1] ?? 'visit';
}

function landmarkOf(type: string): Landmark | undefined {
  if (type === 'proof.refused' || type === 'part.doubted' || type === 'close.refused') return 'held-back';
  if (type === 'reading.corrected' || type === 'dictation.written' || type.endsWith('.withdrawn')) return 'set-right';
  if (type === 'hazard.warned' || type === 'flammable.told' || type === 'circuit.early') return 'warning';
  return type === 'proof.recorded' ? 'proof' : undefined;
}
