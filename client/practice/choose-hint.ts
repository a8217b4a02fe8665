import type { RankedTest } from '../../grammar/visit/inputs.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import { TEST_MODELS } from '../diagnosis/measuring/test-models.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { bestTest } from '../visit/steps/choose-step.ts';
import { focusOf } from '../visit/steps/focus-of.ts';
import { testStep } from '../visit/steps/plans.ts';
import { EXERCISE, HINT_WORDS } from '../words/practice/exercise-words.ts';
import type { ExerciseDeed, Hint, HintLevel } from './exercise-log.ts';

/** Useful tests in a row after which a hint says one level less (ours). */
const FADES_AFTER = 2;

/** Useful tests in a row that no hint led to. What tells nothing begins anew; a hinted one counts neither way. */
export function streakOf(log: readonly ExerciseDeed[]): number {
  let [streak, isHinted] = [0, false];
  for (const deed of log) {
    if (deed.type === 'hinted') isHinted = true;
    if (deed.type !== 'tested') continue;
    if (deed.redundant) streak = 0;
    else if (!isHinted) streak += 1;
    isHinted = false;
  }
  return streak;
}

/** How much a hint may give away after so many useful tests in a row: less and less. */
export function mostLevel(streak: number): HintLevel {
  return Math.max(1, 3 - Math.floor(streak / FADES_AFTER)) as HintLevel;
}

/** Whether the trainee leads: nothing of the plan, of a proof or of a repair is asked. */
export function isLed({ step, phase }: VisitContext): boolean {
  return (step === undefined || step.source === 'planner') && (phase === 'testing' || phase === 'arrive');
}

/** The hint that is given now, or why none is. @param most hints that an exercise gives */
export function hintNow(
  context: VisitContext,
  log: readonly ExerciseDeed[],
  most = Number.POSITIVE_INFINITY,
): Hint | string {
  const [open] = context.questions;
  // What is asked is not left out for a hint.
  if (open !== undefined && !isLed(context)) return EXERCISE.hintOfAsked(open.words);
  const test = bestTest(context);
  if (test === undefined) return EXERCISE.noHint;
  const hint = nextHint(test, log);
  const last = log.findLast((deed) => deed.type === 'hinted');
  // What was said already is no hint, and is counted once.
  if (last?.test === hint.test && last.level >= hint.level)
    return last.level === 3 ? EXERCISE.saidAll(last.words) : EXERCISE.saidLess(last.words);
  return log.filter(({ type }) => type === 'hinted').length >= most ? EXERCISE.noMoreHints : hint;
}

/** The next hint to a test: each of one test says more than the one before, as far as it may. */
function nextHint(test: RankedTest, log: readonly ExerciseDeed[]): Hint {
  const last = log.findLast((deed) => deed.type === 'hinted');
  const next = last?.test === test.id ? last.level + 1 : 1;
  const level = Math.min(next, mostLevel(streakOf(log))) as HintLevel;
  return { type: 'hinted', test: test.id, level, words: hintWords(test, level) };
}

function hintWords(test: RankedTest, level: HintLevel): string {
  if (level === 1) return HINT_WORDS.direction(focusOf(testStep(test)));
  if (level === 2) return HINT_WORDS.place(TEST_MODELS[test.id].place, test.function);
  return HINT_WORDS.test(test.id, test.needs);
}

/** A test with all that a step wants to know of it. */
export function rankedTest(id: TestId, context: VisitContext): RankedTest {
  const ranked = context.assessment?.next.find((one) => one.id === id);
  if (ranked !== undefined) return ranked;
  const { function: fn, quantity, at, needs, minutes, hazards, measure } = TEST_MODELS[id];
  const answers = measure.kind === 'look' ? { answers: measure.answers } : {};
  return { id, function: fn, quantity, at, needs, minutes, hazards, ...answers };
}
