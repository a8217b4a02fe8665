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

function printEvent(event: VisitEvent): readonly string[] {
  switch (event.type) {
    case 'energy.changed':
      return [row('energy', PLAYED_LINES.energy(event))];
    case 'suspects.ranked':
      return [row('suspects', PLAYED_LINES.suspects(event))];
    case 'reading.refused':
      return [row('refused', PLAYED_LINES.refused(event))];
    case 'reading.corrected':
      return [row('corrected', PLAYED_LINES.corrected(event))];
    case 'finding.stated':
      return [row('finding', PLAYED_LINES.finding(event))];
    default:
      return [];
  }
}

function row(label: keyof typeof PLAYED_LABELS, text: string): string {
  return `  ${PLAYED_LABELS[label].padEnd(COLUMN)}${text}`;
}
