import type { Question } from '../../../grammar/visit/questions.ts';
import { latestReading, openQuestion } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { Step, VisitContext } from '../../visit/chart/context.ts';
import { KEY } from '../../words/pages/key-words.ts';
import { showValue } from '../../words/shown/show-reading.ts';
import { keysForAction } from './action-keys.ts';
import { needsSupervisor } from './supervisor-sheet.tsx';
import { commandKey, observationKey, padKey, reportKey, type TouchKey } from './touch-key.ts';

const SUPERVISOR: TouchKey = {
  label: KEY.supervisorHere,
  tone: 'first',
  width: 2,
  does: { do: 'open', sheet: 'supervisor' },
};

/** The few keys of the moment: an open caution or question first, then what answers the step. */
export function keysFor(context: VisitContext): readonly TouchKey[] {
  if (context.phase === 'closed') return [];
  if (isPut(context)) return [commandKey(KEY.fine, 'fine', 'first', 2)];
  if (context.held) return [commandKey(KEY.goOn, 'go-on', 'first', 2)];
  if (context.caution !== undefined) return [commandKey(KEY.live, 'live', 'warm', 2)];
  const question = openQuestion(context);
  if (question !== undefined) return keysForQuestion(question);
  if (needsSupervisor(context)) return [SUPERVISOR];
  if (context.step !== undefined) return keysForStep(context.step, context);
  return [commandKey(KEY.whatNext, 'what-next', 'first', 2)];
}

/** Another value than the one in question is set right by the key for that, under "More". */
function keysForQuestion(question: Question): readonly TouchKey[] {
  if (question.kind !== 'teen-or-ty') {
    const yes = question.kind === 'confirm-reading' ? KEY.yesShows : KEY.yes;
    return [commandKey(yes, 'yes', 'first'), commandKey(KEY.no, 'no')];
  }
  const { unit } = question.reading;
  return question.options.map((value) => reportKey(showValue(value, unit), { kind: 'value', value, unit }));
}

/** The reading that a correction sets right now: the one in question, else the latest. */
export function readingToSetRight(context: VisitContext): Reading | undefined {
  const question = openQuestion(context);
  return question !== undefined && 'reading' in question ? question.reading : latestReading(context)?.reading;
}

/** The lone-worker check was put and is not answered yet. */
export function isPut({ check }: VisitContext): boolean {
  return check !== undefined && check.asked > 0;
}

function keysForStep(step: Step, context: VisitContext): readonly TouchKey[] {
  const pass = commandKey(KEY.pass, 'pass');
  switch (step.ask.kind) {
    case 'reading':
      return [
        padKey(KEY.enterIt, { kind: 'reading', quantity: step.ask.quantity, at: step.ask.at, bench: step.needs.bench }),
        pass,
      ];
    case 'look':
      return [...step.ask.answers.map((answer) => observationKey(answer)), pass];
    case 'action':
      return keysForAction(step, context);
  }
}
