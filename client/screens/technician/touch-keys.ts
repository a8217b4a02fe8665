import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { Question, Step, VisitContext } from '../../visit/chart/context.ts';
import { showUnit } from '../show/show-reading.ts';
import { keysForAction } from './action-keys.ts';
import { needsSupervisor } from './supervisor-sheet.tsx';
import { commandKey, observationKey, padKey, reportKey, type TouchKey } from './touch-key.ts';

const SUPERVISOR: TouchKey = {
  label: 'Supervisor is here',
  tone: 'first',
  width: 2,
  does: { do: 'open', sheet: 'supervisor' },
};

/** The few keys of the moment: an open caution or question first, then what answers the step. */
export function keysFor(context: VisitContext): readonly TouchKey[] {
  if (context.phase === 'closed') return [];
  if (isPut(context)) return [commandKey('I am fine', 'fine', 'first', 2)];
  if (context.held) return [commandKey('Go on with the visit', 'go-on', 'first', 2)];
  if (context.caution !== undefined) return [commandKey('Live – I have it', 'live', 'warm', 2)];
  if (context.question !== undefined) return keysForQuestion(context.question);
  if (needsSupervisor(context)) return [SUPERVISOR];
  if (context.step !== undefined) return keysForStep(context.step, context);
  return [commandKey('What next', 'what-next', 'first', 2)];
}

/** Another value than the one in question is set right by the key for that, under "More". */
function keysForQuestion(question: Question): readonly TouchKey[] {
  if (question.kind !== 'teen-or-ty') {
    const yes = question.kind === 'confirm-reading' ? 'Yes, it shows that' : 'Yes';
    return [commandKey(yes, 'yes', 'first'), commandKey('No', 'no')];
  }
  const { unit } = question.reading;
  return question.options.map((value) => reportKey(`${value} ${showUnit(unit)}`, { kind: 'value', value, unit }));
}

/** The reading that a correction sets right now: the one in question, else the latest. */
export function readingToSetRight({ question, readings }: VisitContext): Reading | undefined {
  return question !== undefined && 'reading' in question ? question.reading : readings.at(-1)?.reading;
}

/** The lone-worker check was put and is not answered yet. */
export function isPut({ check }: VisitContext): boolean {
  return check !== undefined && check.asked > 0;
}

function keysForStep(step: Step, context: VisitContext): readonly TouchKey[] {
  const pass = commandKey('Pass', 'pass');
  switch (step.ask.kind) {
    case 'reading':
      return [
        padKey('Enter it', { kind: 'reading', quantity: step.ask.quantity, at: step.ask.at, bench: step.needs.bench }),
        pass,
      ];
    case 'look':
      return [...step.ask.answers.map((answer) => observationKey(answer)), pass];
    case 'action':
      return keysForAction(step, context);
  }
}
