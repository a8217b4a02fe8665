import type { Expectation } from '../../grammar/phrases/meaning.ts';
import { samePlaces } from '../../grammar/visit/judge-reading.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { TestId } from '../../grammar/vocabulary/tests.ts';
import { ZONES, type ZoneId } from '../../grammar/vocabulary/zones.ts';
import { TEST_MODELS } from '../diagnosis/measuring/test-models.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { TAKEN_OFF } from '../visit/rules/isolation.ts';
import { GROUND_LEGS, isGroundProved } from '../visit/rules/proof-ground.ts';
import { isPairOf } from '../visit/rules/proof-plan.ts';
import type { ExerciseDeed } from './exercise-log.ts';
import type { Taking } from './simulated-unit.ts';

/** Where a visit stands, as far as it tells whose choice a reading or a look is. */
export interface Standing {
  readonly context: VisitContext;
  readonly expectation: Expectation;
}

export function isSearching({ phase }: VisitContext): boolean {
  return phase === 'testing' || phase === 'arrive';
}

/**
 * Whether a test is the trainee's own: not what the plan of the visit asks just now, nor what only sets the scene, nor
 * what a proof of absence takes.
 *
 * @param said the places of a reading; none of a look
 */
export function isOwnChoice(test: TestId | undefined, said: readonly PointId[], standing: Standing): boolean {
  const { context } = standing;
  const { step } = context;
  if (test !== undefined && TEST_MODELS[test].measure.kind === 'condition') return false;
  if (test === undefined && said.length < 2) return false;
  if (said.length === 2 && isForProof(said, context)) return false;
  if (step === undefined || step.source === 'planner') return isSearching(context) || test === undefined;
  if (step.source === 'energy') return said.length === 2 && !isPairOfAnyProof(said) && !isAsked(said, standing);
  if (!isSearching(context)) return !isAsked(said, standing) && said.length === 2;
  if (test === undefined) return !isAsked(said, standing);
  return step.ask.kind === 'reading'
    ? step.ask.at.join() !== said.join()
    : step.ask.kind === 'action' || !isAnsweredBy(test, step.ask.answers);
}

/**
 * Whether a pair is read for a proof that somebody is about to make, asked or not: a pair of a zone that was taken off
 * and is not proven dead, or a leg of the supply that has to vouch for the ground there.
 */
function isForProof(said: readonly PointId[], context: VisitContext): boolean {
  return ZONES.some((zone) => {
    const state = context.energy[zone];
    if (!TAKEN_OFF.includes(state) || state === 'proven-dead') return false;
    return isPairOf(zone, said) || (!isGroundProved(zone, context) && isLegOfSupply(zone, said));
  });
}

/** Outdoors the line side of the disconnect feeds all. */
function isLegOfSupply(zone: ZoneId, said: readonly PointId[]): boolean {
  const supply = zone === 'air-handler' || zone === 'control' ? 'air-handler' : 'disconnect-line';
  return GROUND_LEGS[supply].some((leg) => samePlaces(leg, said));
}

/** A pair that some proof of absence reads. */
function isPairOfAnyProof(said: readonly PointId[]): boolean {
  return ZONES.some((zone) => isPairOf(zone, said));
}

/** Whether a reading is asked at these places. */
function isAsked(said: readonly PointId[], { expectation }: Standing): boolean {
  return expectation.readings.some(({ at }) => samePlaces(at, said));
}

function isAnsweredBy(test: TestId, answers: readonly ObservationId[]): boolean {
  const { measure } = TEST_MODELS[test];
  return measure.kind === 'look' && measure.answers.some((answer) => answers.includes(answer));
}

/** Volts of a proof, of the live side or of a repair, read elsewhere than where they are asked; undefined where they are not. */
export function besideAsked(
  stood: readonly PointId[],
  { quantity }: Taking,
  { context, expectation }: Standing,
): Extract<ExerciseDeed, { type: 'probes-elsewhere' }> | undefined {
  const { step } = context;
  if (step === undefined || step.source === 'planner' || step.source === 'arrive' || stood.length < 2) return undefined;
  const [asked] = expectation.readings;
  if (asked === undefined || asked.quantity !== quantity || asked.at.length < 2) return undefined;
  const isOfProof = step.source === 'energy' && isPairOfAnyProof(stood);
  if (isOfProof || samePlaces(asked.at, stood)) return undefined;
  return { type: 'probes-elsewhere', said: asked.at, stood, asked: true };
}
