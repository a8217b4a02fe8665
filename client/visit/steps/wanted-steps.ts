import type { RankedTest } from '../../../grammar/visit/inputs.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import type { Focus } from '../../../grammar/vocabulary/focuses.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import type { TestModel } from '../../diagnosis/measuring/test-model.ts';
import { TEST_IDS, TEST_MODELS } from '../../diagnosis/measuring/test-models.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { focusOf } from './focus-of.ts';
import { testStep } from './plans.ts';

/** So many steps are asked at a place that the technician went to by name; then the search goes on as it was. */
const MOST_WANTED = 4;
/** What gauges are put on for, in the order of the hands. Common practice. */
const BY_GAUGES: readonly TestId[] = [
  'pressure-suction',
  'temperature-suction-line',
  'pressure-liquid',
  'temperature-liquid-line',
];

/** The steps of a part of the unit: those the search ranks first, then the others of the table; none that was read. */
export function stepsOf(focus: Focus, context: VisitContext): readonly Step[] {
  const ranked = context.assessment?.next.map(({ id }) => id) ?? [];
  const ids = focus === 'refrigerant' ? BY_GAUGES : [...new Set([...ranked, ...TEST_IDS])];
  return ids
    .filter((id) => isPossible(TEST_MODELS[id], context))
    .map((id) => context.assessment?.next.find((test) => test.id === id) ?? rankedTest(id))
    .map(testStep)
    .filter((step) => focusOf(step) === focus && !isReadSince(step, 0, context))
    .slice(0, MOST_WANTED);
}

function isPossible(model: TestModel, { unit }: VisitContext): boolean {
  return model.possible?.(unit) !== false && model.onlyVolunteered !== true;
}

function rankedTest(id: TestId): RankedTest {
  const model: TestModel = TEST_MODELS[id];
  const answers = model.measure.kind === 'look' ? { answers: model.measure.answers } : {};
  const { function: fn, quantity, at, needs, minutes, hazards } = model;
  return { id, function: fn, quantity, at, needs, minutes, hazards, ...answers };
}

/** Whether a step was answered by a reading or a look behind so many of them. */
export function isReadSince({ ask }: Step, since: number, context: VisitContext): boolean {
  if (ask.kind === 'reading') {
    return standingReadings(context).some(
      ({ number, reading }) => number > since && reading.quantity === ask.quantity && samePlaces(reading.at, ask.at),
    );
  }
  return (
    ask.kind === 'look' &&
    context.observations.some(({ number, observation }) => number > since && ask.answers.includes(observation))
  );
}

/** Whether a step that the technician asked for by name is over: answered since, or passed since. */
export function isOver(step: Step, context: VisitContext): boolean {
  const { wanted } = context;
  if (wanted === undefined) return true;
  return (
    isReadSince(step, wanted.since, context) ||
    context.parked.slice(wanted.parkedBefore).some((one) => one.step === step.id)
  );
}

/** Whether a step is one that the technician asked for by name, read or not. */
export function isWanted(step: Step, { wanted }: VisitContext): boolean {
  return wanted?.steps.some(({ id }) => id === step.id) === true;
}
