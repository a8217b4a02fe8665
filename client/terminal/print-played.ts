import type { VisitEvent } from '../../grammar/visit/events.ts';
import { ZONE_NAMES } from '../../grammar/vocabulary/zones.ts';
import { faultWords, meaningWords } from '../visit/words/prompts.ts';
import type { Played } from './play-visit.ts';

const COLUMN = 12;

/** The conversation as a person reads it, one line for each thing that happened. */
export function printPlayed(played: Played): readonly string[] {
  switch (played.type) {
    case 'line':
      return ['', `— ${played.number} of ${played.of} —`];
    case 'later':
      return [row('later', `${played.minutes} minutes pass`)];
    case 'heard': {
      const { utterance, understood } = played;
      const words = utterance.accepted ? (meaningWords(understood.meaning) ?? understood.meaning.kind) : 'not believed';
      const timing = `${Math.round(utterance.confidence * 100)} %, ${Math.round(utterance.verdictMs)} ms`;
      return [row('heard', `"${utterance.text}" (${timing})`), row('understood', `${words} [${understood.verdict}]`)];
    }
    case 'building':
      return played.share === 0 ? [row('diagnosis', 'getting to know this unit, about a second')] : [];
    case 'said':
      return [row(played.prompt.kind === 'caution' ? 'CAUTION' : 'says', played.prompt.text)];
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
  'phase.entered': 'heard-and-said',
  'focus.moved': 'heard-and-said',
  'supervisor.acknowledged': 'heard-and-said',
  'unit.gated': 'heard-and-said',
  'reading.logged': 'heard-and-said',
  'reading.judged': 'heard-and-said',
  'reading.asked': 'heard-and-said',
  'reading.refused': ({ reading, reason }) =>
    row('refused', `${reading.value} ${reading.unit}: ${reason.replaceAll('-', ' ')}`),
  'reading.corrected': ({ from, to }) => row('corrected', `${from.value} → ${to.value} ${to.unit}`),
  'reading.withdrawn': 'heard-and-said',
  'observation.logged': 'heard-and-said',
  'nameplate.logged': 'heard-and-said',
  'energy.changed': ({ zone, to, why }) => row('energy', `${ZONE_NAMES[zone]}: ${to.replace('-', ' ')} (${why})`),
  'proof.recorded': 'heard-and-said',
  'caution.spoken': 'heard-and-said',
  'caution.acknowledged': 'heard-and-said',
  'hazard.warned': 'heard-and-said',
  'step.asked': 'heard-and-said',
  'step.parked': 'heard-and-said',
  'suspects.ranked': ({ suspects }) => {
    const named = suspects
      .slice(0, 3)
      .map(({ fault, probability }) => `${faultWords(fault)} ${Math.round(probability * 100)} %`);
    return row('suspects', named.join(', '));
  },
  'contradiction.noticed': 'heard-and-said',
  'finding.stated': ({ fault, probability }) =>
    row('FINDING', `${faultWords(fault)}, ${Math.round(probability * 100)} %`),
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
  'item.reported': 'heard-and-said',
  'item.withdrawn': 'heard-and-said',
  'recommendation.made': 'heard-and-said',
  'recommendation.withdrawn': 'heard-and-said',
  'visit.signed': 'heard-and-said',
  'remark.made': 'heard-and-said',
  'injury.reported': 'heard-and-said',
  'check.set': 'heard-and-said',
  'check.asked': 'heard-and-said',
  'check.answered': 'heard-and-said',
  'check.unanswered': 'heard-and-said',
  'check.ended': 'heard-and-said',
  'talk.changed': 'heard-and-said',
  'prompt.said': 'heard-and-said',
  'visit.held': 'heard-and-said',
  'visit.resumed': 'heard-and-said',
  'edge.interrupted': 'heard-and-said',
  'close.refused': 'heard-and-said',
  'visit.closed': 'heard-and-said',
};

function printEvent(event: VisitEvent): readonly string[] {
  const print: ((event: never) => string) | 'heard-and-said' = LINES[event.type];
  return print === 'heard-and-said' ? [] : [print(event as never)];
}

function row(label: string, text: string): string {
  return `  ${label.padEnd(COLUMN)}${text}`;
}
