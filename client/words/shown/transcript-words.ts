import type { Understanding } from '../../../grammar/phrases/meaning.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import type { Became } from '../../../grammar/visit/what-became.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { DICTATED, shownWords } from './dictated-words.ts';
import { ENERGY_WORDS } from './energy-names.ts';
import { PHOTO } from './photo-words.ts';
import { showPercent } from './show-likely.ts';
import { showReading } from './show-reading.ts';
import { showMeaning, showVerdict } from './show-understanding.ts';

type Line<K extends keyof FoldedVisit> = Extract<FoldedVisit[K], readonly unknown[]>[number];

/** What was understood of something heard, and what became of it. */
export function showUnderstood(understanding: Understanding, accepted: boolean, became?: Became | 'early'): string {
  return joined(showMeaning(understanding.meaning), showVerdict(understanding, accepted, became));
}

/** The lines of a visit's transcript: the text of each, and the smaller one under it. */
export const TRANSCRIPT = {
  title: 'Transcript',
  view: 'What is shown of it',
  views: { talk: 'heard and said', all: 'all that happened', entries: 'every entry' },
  leftOut: (times: number) => `${times} entries of the record have no line here`,
  leftOutKind: (times: number, type: string, why: string) => `${times} × ${type}: ${why}`,
  kinds: {
    heard: 'heard',
    said: 'said',
    reading: 'reading',
    refused: 'refused',
    unproven: 'unproven',
    asked: 'asked',
    energy: 'energy',
    caution: 'caution',
    finding: 'finding',
    note: 'note',
    unknown: 'unknown',
    proof: 'proof',
    seen: 'seen',
    plate: 'plate',
    result: 'result',
    repair: 'repair',
    suspects: 'suspects',
    remark: 'remark',
    hurt: 'hurt',
    visit: 'visit',
    entry: 'entry',
  },
  heardDetail: (line: Line<'heard'>) =>
    joined(
      showUnderstood(line.understanding, line.accepted, line.became),
      `${line.ear}, sure ${showPercent(line.confidence)}`,
    ),
  readingDetail: ({ judged, corrected, withdrawn }: Line<'readings'>) =>
    joined(
      judged === undefined ? '' : `${judged.word}: ${judged.source}`,
      ...corrected.map((before) => `was ${showReading(before)}`),
      withdrawn ? 'withdrawn' : '',
    ),
  refused: (line: Line<'refused'>) => `Refused: ${showReading(line.reading)}`,
  refusedDetail: (line: Line<'refused'>) => line.reason.replaceAll('-', ' '),
  unproven: (line: Line<'unproven'>) => `Not proven dead, ${ZONE_NAMES[line.zone]}: ${line.what}`,
  unprovenDetail: (line: Line<'unproven'>) => ENERGY_WORDS[line.state],
  asked: (line: Line<'asked'>) => `Asked: ${showReading(line.reading)}`,
  energy: ({ zone, from, to }: Line<'energyChanges'>) =>
    `${ZONE_NAMES[zone]}: ${ENERGY_WORDS[from]} → ${ENERGY_WORDS[to]}`,
  caution: (line: Line<'cautions'>) => `Caution given: ${line.caution.replaceAll('-', ' ')}`,
  cautionDetail: ({ late, why, shown, acknowledgedAt, source }: Line<'cautions'>) =>
    joined(
      shown === true ? 'shown, not spoken' : '',
      late ? `late${why === undefined ? '' : `: ${why}`}` : '',
      acknowledgedAt === undefined ? 'not acknowledged' : 'acknowledged',
      source,
    ),
  note: (line: Line<'notes'>) => `${line.from === undefined ? DICTATED.note : DICTATED.saying}: ${shownWords(line)}`,
  recommended: (line: Line<'recommendations'>) => `${DICTATED.recommendation}: ${shownWords(line)}`,
  signed: (line: Line<'signatures'>) => `${DICTATED[line.who]}: ${line.name}`,
  photo: (line: Line<'photos'>) => PHOTO.of[line.of] ?? PHOTO.of.other,
  remark: (line: Line<'remarks'>) =>
    `Remark, ${line.author}${line.from === undefined ? '' : ', on the device that wrote the visit'}: ${line.text}`,
  remarkDetail: (written: string) => (written === '' ? '' : `written ${written}`),
  takenOver: ({ device, person, missing }: Line<'takeOvers'>) =>
    joined(
      `Carried on by another device: ${device}`,
      person ?? '',
      missing === undefined ? '' : `${missing} entries of the device before have not come`,
    ),
  acknowledged: ({ supervisor, from }: Line<'acknowledgements'>) =>
    `Supervisor acknowledged: ${joined(supervisor, from === undefined ? '' : from.replace('-', ' '))}`,
  unanswered: (line: Line<'unanswered'>) => `Check on the technician without an answer, put ${line.times} times`,
  hurt: 'Somebody is hurt',
  unknown: (line: Pick<Line<'unknown'>, 'type'>) => `Unknown entry: ${line.type}`,
  unknownDetail: 'written by another version; kept as it is',
  damaged: (line: Pick<Line<'damaged'>, 'type'>) => `damaged event: ${line.type}`,
  unworded: 'What is inside of it cannot be put into words here; it is kept as it is.',
  damagedDetail: 'What belongs to it is missing. It was left out; the rest of the visit is shown.',
} as const;

function joined(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join(' · ');
}
