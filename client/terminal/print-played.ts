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

function printEvent(event: VisitEvent): readonly string[] {
  switch (event.type) {
    case 'energy.changed':
      return [row('energy', `${ZONE_NAMES[event.zone]}: ${event.to.replace('-', ' ')} (${event.why})`)];
    case 'suspects.ranked': {
      const named = event.suspects
        .slice(0, 3)
        .map(({ fault, probability }) => `${faultWords(fault)} ${Math.round(probability * 100)} %`);
      return [row('suspects', named.join(', '))];
    }
    case 'reading.refused':
      return [row('refused', `${event.reading.value} ${event.reading.unit}: ${event.reason.replaceAll('-', ' ')}`)];
    case 'reading.corrected':
      return [row('corrected', `${event.from.value} → ${event.to.value} ${event.to.unit}`)];
    case 'finding.stated':
      return [row('FINDING', `${faultWords(event.fault)}, ${Math.round(event.probability * 100)} %`)];
    default:
      return [];
  }
}

function row(label: string, text: string): string {
  return `  ${label.padEnd(COLUMN)}${text}`;
}
