import { openQuestion } from '../../grammar/visit/standing.ts';
import type { Suspect } from '../diagnosis/diagnosis.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { askWords, stepWords } from '../visit/steps/ask-step.ts';
import { EXERCISE, STOP_WORDS } from '../words/practice/exercise-words.ts';
import type { LoggedDeed } from './exercise-log.ts';

/** What an exercise waits for. `lead`: nothing is asked, the trainee goes where they will. */
export interface AskedNow {
  readonly kind: 'held' | 'suspect' | 'caution' | 'question' | 'step' | 'time' | 'lead';
  readonly words: string;
}

/** Where an exercise stands. */
interface ExerciseNow {
  readonly halted: boolean;
  readonly asked: readonly Suspect[] | undefined;
  readonly context: VisitContext;
  readonly log: readonly LoggedDeed[];
}

/** One thing at a time, as on a visit: what holds the exercise first, then whatever the visit asks. */
export function askedNow({ halted, asked, context, log }: ExerciseNow): AskedNow {
  if (halted) return { kind: 'held', words: heldWords(log) };
  if (asked !== undefined) return { kind: 'suspect', words: EXERCISE.whom };
  if (context.caution !== undefined) return { kind: 'caution', words: cautionWords(context.caution, context) };
  if (context.held || (context.check?.asked ?? 0) > 0 || context.closeRefused.length > 0)
    return { kind: 'question', words: context.lastPrompt?.text ?? '' };
  if (openQuestion(context) !== undefined) return { kind: 'question', words: context.questions[0]?.words ?? '' };
  if (context.step !== undefined) return { kind: 'step', words: stepWords(context.step, context) };
  if (waitsForTime(context)) return { kind: 'time', words: context.lastPrompt?.text ?? '' };
  return { kind: 'lead', words: EXERCISE.lead };
}

/** Why it is held, as long as it is: what was said of it has been talked over. */
function heldWords(log: readonly LoggedDeed[]): string {
  const stop = log.findLast((deed) => deed.type === 'stopped-for');
  return stop === undefined ? EXERCISE.goOn : `${STOP_WORDS[stop.error](stop)} ${EXERCISE.goOn}`;
}

/** The next step comes only when minutes have passed: the unit has to run before it is measured. */
export function waitsForTime({ step, phase }: VisitContext): boolean {
  return step === undefined && phase !== 'testing' && phase !== 'arrive' && phase !== 'closed';
}

function cautionWords({ spoken, withStep }: NonNullable<VisitContext['caution']>, context: VisitContext): string {
  const { step } = context;
  const cautions = spoken.map(({ words }) => words);
  return [...cautions, ...(withStep && step !== undefined ? [askWords(step, context)] : [])].join(' ');
}
