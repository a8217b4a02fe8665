import type { VisitEvent } from '../../grammar/visit/events.ts';
import { PLAYED_LABELS, PLAYED_LINES } from '../words/terminal/played-labels.ts';
import { meaningWords } from '../words/things/meaning-words.ts';
import type { Played } from './play-visit.ts';

const COLUMN = 12;

/** The conversation as a person reads it, one line for each thing that happened. */
export function printPlayed(played: Played): readonly string[] {
  switch (played.type) {
    case 'line':
      return ['', PLAYED_LINES.line(played.number, played.of)];
    case 'later':
      return [row('later', PLAYED_LINES.later(played.minutes))];
    case 'heard': {
      const { text, accepted, confidence, verdictMs } = played.utterance;
      const { meaning, verdict } = played.understood;
      const words = accepted ? (meaningWords(meaning) ?? meaning.kind) : PLAYED_LINES.notBelieved;
      return [
        row('heard', PLAYED_LINES.heard(text, confidence, verdictMs)),
        row('understood', PLAYED_LINES.understood(words, verdict)),
      ];
    }
    case 'building':
      return played.share === 0 ? [row('diagnosis', PLAYED_LINES.building)] : [];
    case 'said':
      return [row(played.prompt.kind === 'caution' ? 'caution' : 'says', played.prompt.text)];
    case 'view':
      return played.view.events.flatMap(printEvent);
  }
}

/** How each event is printed; `heard-and-said`: what was heard and said around it tells it. */
const LINES: {
  readonly [T in VisitEvent['type']]: ((event: Extract<VisitEvent, { type: T }>) => string) | 'heard-and-said';
} = {
  'input.taken': 'heard-and-said',
  'visit.opened': 'heard-and-said',
  'visit.taken-over': 'heard-and-said',
  'phase.entered': 'heard-and-said',
  'focus.moved': 'heard-and-said',
  'supervisor.acknowledged': 'heard-and-said',
  'unit.gated': 'heard-and-said',
  'reading.logged': 'heard-and-said',
  'reading.judged': 'heard-and-said',
  'reading.asked': 'heard-and-said',
  'reading.refused': (event) => row('refused', PLAYED_LINES.refused(event)),
  'reading.corrected': (event) => row('corrected', PLAYED_LINES.corrected(event)),
  'reading.withdrawn': 'heard-and-said',
  'observation.logged': 'heard-and-said',
  'nameplate.logged': 'heard-and-said',
  'energy.changed': (event) => row('energy', PLAYED_LINES.energy(event)),
  'proof.recorded': 'heard-and-said',
  'caution.spoken': 'heard-and-said',
  'caution.acknowledged': 'heard-and-said',
  'hazard.warned': 'heard-and-said',
  'step.asked': 'heard-and-said',
  'step.parked': 'heard-and-said',
  'suspects.ranked': (event) => row('suspects', PLAYED_LINES.suspects(event)),
  'contradiction.noticed': 'heard-and-said',
  'finding.stated': (event) => row('finding', PLAYED_LINES.finding(event)),
  'part.fitted': 'heard-and-said',
  'part.doubted': 'heard-and-said',
  'part.withdrawn': 'heard-and-said',
  'work.done': 'heard-and-said',
  'work.withdrawn': 'heard-and-said',
  'landing.doubted': 'heard-and-said',
  'close.overridden': 'heard-and-said',
  'wire.moved': 'heard-and-said',
  'split.judged': 'heard-and-said',
  'charge.judged': 'heard-and-said',
  'refrigerant.judged': 'heard-and-said',
  'note.taken': 'heard-and-said',
  'dictation.written': 'heard-and-said',
  'item.reported': 'heard-and-said',
  'item.withdrawn': 'heard-and-said',
  'recommendation.made': 'heard-and-said',
  'recommendation.withdrawn': 'heard-and-said',
  'visit.signed': 'heard-and-said',
  'remark.made': 'heard-and-said',
  'photo.taken': 'heard-and-said',
  'injury.reported': 'heard-and-said',
  'supervisor.withdrawn': 'heard-and-said',
  'reading.waits': 'heard-and-said',
  'waiting.withdrawn': 'heard-and-said',
  'refrigerant.told': 'heard-and-said',
  'refrigerant.untold': 'heard-and-said',
  'circuit.early': 'heard-and-said',
  'flammable.told': 'heard-and-said',
  'check.set': 'heard-and-said',
  'check.asked': 'heard-and-said',
  'check.answered': 'heard-and-said',
  'check.unanswered': 'heard-and-said',
  'check.ended': 'heard-and-said',
  'talk.changed': 'heard-and-said',
  'units.chosen': 'heard-and-said',
  'prompt.said': 'heard-and-said',
  'visit.held': 'heard-and-said',
  'visit.resumed': 'heard-and-said',
  'edge.interrupted': 'heard-and-said',
  'close.refused': 'heard-and-said',
  'observation.withdrawn': 'heard-and-said',
  'refusal.withdrawn': 'heard-and-said',
  'nameplate.withdrawn': 'heard-and-said',
  'question.asked': 'heard-and-said',
  'question.ended': 'heard-and-said',
  'switch.reported': 'heard-and-said',
  'switch.withdrawn': 'heard-and-said',
  'call.seen': 'heard-and-said',
  'run.changed': 'heard-and-said',
  'proof.began': 'heard-and-said',
  'proof.pair': 'heard-and-said',
  'proof.reopened': 'heard-and-said',
  'proof.refused': 'heard-and-said',
  'proof.withdrawn': 'heard-and-said',
  'charge.released': 'heard-and-said',
  'charge.doubted': 'heard-and-said',
  'search.began': 'heard-and-said',
  'search.ended': 'heard-and-said',
  'steps.settled': 'heard-and-said',
  'steps.reopened': 'heard-and-said',
  'wire.withdrawn': 'heard-and-said',
  'deed.reported': 'heard-and-said',
  'deed.withdrawn': 'heard-and-said',
  'work.unproven': (event) => row('unproven', PLAYED_LINES.unproven(event)),
  'unproven.withdrawn': 'heard-and-said',
  'check.hastened': 'heard-and-said',
  'visit.closed': 'heard-and-said',
};

/** An event as a person reads it; no line where what was heard and said around it tells it. */
export function printEvent(event: VisitEvent): readonly string[] {
  const print: ((event: never) => string) | 'heard-and-said' = LINES[event.type];
  return print === 'heard-and-said' ? [] : [print(event as never)];
}

/** A line with its label before it. */
export function row(label: keyof typeof PLAYED_LABELS, text: string): string {
  return `  ${PLAYED_LABELS[label].padEnd(COLUMN)}${text}`;
}
