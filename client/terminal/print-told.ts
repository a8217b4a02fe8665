import type { VisitEvent } from '../../grammar/visit/events.ts';
import type { Prompt } from '../speaking/mouth.ts';
import { showMeaning, showVerdict } from '../words/shown/show-understanding.ts';
import type { PLAYED_LABELS } from '../words/terminal/played-labels.ts';
import { PLAYED_LINES } from '../words/terminal/played-labels.ts';
import { LINE_SIGN } from '../words/terminal/visit-lines.ts';
import type { Told } from './line-visit.ts';
import { printEvent, row } from './print-played.ts';

const LABEL_OF: Readonly<Record<Prompt['kind'], keyof typeof PLAYED_LABELS>> = {
  readback: 'says',
  answer: 'says',
  question: 'asks',
  step: 'step',
  caution: 'caution',
  warning: 'warning',
};

/** What a person at the terminal reads of it. @param echo true where nobody has seen the typed line yet */
export function printTold(told: Told, echo: boolean): readonly string[] {
  if ('input' in told) return echo ? [`${LINE_SIGN}${told.input.text}`] : [];
  if ('refused' in told) return [row('notDone', told.refused)];
  if ('say' in told) return [row(LABEL_OF[told.say.kind], told.say.text)];
  if ('event' in told) return printWhatCame(told.event);
  // Where the visit stands is said step by step; as a whole it is for programs.
  return [];
}

/** A doubt shows what was understood; suspects are told by "where are we", not after every line. */
function printWhatCame(event: VisitEvent): readonly string[] {
  if (event.type === 'suspects.ranked') return [];
  if (event.type !== 'input.taken' || event.input.type !== 'heard.utterance') return printEvent(event);
  const { understanding, accepted } = event.input.utterance;
  if (accepted && understanding.verdict === 'logged') return [];
  const words = accepted ? showMeaning(understanding.meaning) : PLAYED_LINES.notBelieved;
  return [row('understood', PLAYED_LINES.understood(words, showVerdict(understanding, accepted)))];
}
