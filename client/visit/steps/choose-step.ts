import { MS_A_MINUTE, type RankedTest } from '../../../grammar/visit/inputs.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { standingReadings, wireMoves } from '../../../grammar/visit/standing.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { isGrounded, trippedAt, windingsDue } from '../rules/after-trip.ts';
import { isOpened, isolationOf, OUTDOOR_ZONES, provedWith } from '../rules/isolation.ts';
import { looseWires } from '../rules/landings.ts';
import { doneOfRefrigerant, refrigerantInRepair, refrigerantStep } from '../rules/refrigerant-plan.ts';
import { repairZone } from '../rules/repairs.ts';
import { zonesAt } from '../rules/zones-at.ts';
import { ARRIVE_PLAN, actionStep, CLOSE_PLAN, PROVE_PLAN, testStep, windingStep, zoneOf } from './plans.ts';

/**
 * What the visit asks for next: a plan step of the phase or the best test of the planner, and before it whatever its
 * needs demand of the energy. Undefined where nothing can be asked yet (an answer of the diagnosis is on its way) or
 * where the phase has nothing left.
 */
export function chooseStep(context: VisitContext): Step | undefined {
  const goal = chooseGoal(context);
  // Nothing feeds a winding that reads to its shell.
  if (goal !== undefined && wantsFed(goal) && isGrounded(context)) return undefined;
  return goal === undefined ? undefined : (stepBefore(goal, context) ?? goal);
}

/** Whether a step wants power or a call there. */
function wantsFed({ needs }: Step): boolean {
  return needs.power === 'on' || needs.call === 'cooling';
}

/** What the phase is after, before whatever its needs demand of the energy. */
export function chooseGoal(context: VisitContext): Step | undefined {
  const goal = goalOfPhase(context);
  return goal !== undefined && context.gate !== undefined && (needsDead(goal.needs) || goal.needs.power === 'on')
    ? undefined
    : goal;
}

/** Where the maker's procedure governs, nothing live and nothing hands-on is prompted: readings are taken as they come. */
function goalOfPhase(context: VisitContext): Step | undefined {
  const open = (step: Step) => !isSettled(step, context);
  switch (context.phase) {
    case 'arrive':
      return ARRIVE_PLAN.find(open);
    case 'testing':
      return isFresh(context) ? bestTest(context) : undefined;
    case 'repair': {
      const refrigerant = refrigerantInRepair(context);
      if (refrigerant !== undefined) return refrigerant === 'waiting' ? undefined : refrigerant;
      return actionStep('part-fitted', repairZone(context.finding?.fault), { power: 'off', call: 'any', bench: false });
    }
    case 'prove': {
      const refrigerant = refrigerantStep(context);
      if (refrigerant !== undefined) return refrigerant === 'waiting' ? undefined : refrigerant;
      return PROVE_PLAN.find((step) => open(step) && isDue(step, context));
    }
    case 'close':
      return CLOSE_PLAN.find(open) ?? actionStep('visit-finished', 'none');
    case 'closed':
      return undefined;
  }
}

/** The diagnosis has answered for the latest evidence. */
export function isFresh(context: VisitContext): boolean {
  return context.assessment?.forSeq === context.evidenceNumber;
}

/** A step that wants the unit to have run for a while is not due before. */
export function isDue(step: Step, context: VisitContext): boolean {
  return step.afterMinutes === undefined || minutesRunning(context) >= step.afterMinutes;
}

/** Minutes since the unit was seen running; 0 where it is not. */
export function minutesRunning(context: VisitContext): number {
  return context.runningSince === undefined ? 0 : (context.now.mono - context.runningSince) / MS_A_MINUTE;
}

/** Answered, parked, or not called for on this visit. */
export function isSettled(step: Step, context: VisitContext): boolean {
  return (
    context.settled.includes(step.id) ||
    doneOfRefrigerant(context.refrigerantWork).includes(step.id) ||
    context.parked.some((parked) => parked.step === step.id) ||
    (step.withGauges === true && !standingReadings(context).some(({ reading }) => reading.quantity === 'pressure'))
  );
}

/** A step that was set aside this often is not asked again; it is named when the visit closes. */
const TIMES_ASKED = 3;

function timesParked(step: string, context: VisitContext): number {
  return context.parked.filter((parked) => parked.step === step).length;
}

/**
 * The test that alone carries the leading suspect and was read once: it is asked again before a part is condemned, or
 * while the probes are there, unless the technician was asked about it already or has passed it over.
 */
export function readOnceMore(context: VisitContext): RankedTest | undefined {
  const { assessment } = context;
  const test = assessment?.next.find(({ id }) => id === assessment.confirm);
  if (test === undefined || timesParked(test.id, context) > 0) return undefined;
  const taken = standingReadings(context).findLast(
    ({ reading }) => reading.quantity === test.quantity && samePlaces(reading.at, test.at),
  );
  return taken?.confirmed === true ? undefined : test;
}

/** The planner's best test; parked ones come back when nothing else is left; once power or the call is off, its best that goes on from there. */
function bestTest(context: VisitContext): Step | undefined {
  const again = readOnceMore(context);
  if (again !== undefined) return testStep(again);
  const grounded = isGrounded(context);
  const next = (context.assessment?.next ?? []).filter((test) => !grounded || !wantsFed(testStep(test)));
  const untouched = next.filter((test) => timesParked(test.id, context) === 0);
  const open = untouched.length > 0 ? untouched : next.filter((test) => timesParked(test.id, context) < TIMES_ASKED);
  const test = open.find((one) => !undoes(one.needs, zoneOf(one.at), context)) ?? open[0];
  return test === undefined ? undefined : testStep(test);
}

/** Whether a test would want back what the technician has just taken off. */
export function undoes(needs: RankedTest['needs'], zone: ZoneId | 'none', context: VisitContext): boolean {
  const opened = isOpened(zone === 'none' ? 'outdoor-load' : zone, context);
  return (needs.power === 'on' && opened) || (needs.call === 'cooling' && context.call === 'none');
}

/** The step that must come first so that the goal's needs hold: power, proof, charge, call. */
function stepBefore(goal: Step, context: VisitContext): Step | undefined {
  const { needs } = goal;
  if (needsDead(needs)) return firstDefined(zonesToProve(goal), (zone) => stepToDead(zone, context));
  const zone = zonesFeeding(goal).find((one) => isOpened(one, context));
  if (needs.power === 'on' && zone !== undefined) {
    const [winding] = windingsDue(context);
    if (winding !== undefined) {
      const step = windingStep(winding, trippedAt(context) ?? 0);
      return stepToDead('outdoor-load', context) ?? step;
    }
    if (looseWires(wireMoves(context)).length > 0) return actionStep('wires-landed', 'none');
    if (context.wires.some(({ wire }) => wire.action === 'landed') && !context.settled.includes('repair.tug-tested')) {
      return actionStep('tug-tested', 'none');
    }
    return context.settled.includes('energy.covers-on')
      ? actionStep('power-on', provedWith(zone))
      : actionStep('covers-on', 'none');
  }
  if (needs.call === 'cooling' && context.call === 'none') return actionStep('call-on', 'none');
  return undefined;
}

/** The zones that a hands-on step meets: those of both its tips where it reads across two, on the bench its own. */
export function zonesToProve({ zone, needs, ask }: Step): readonly ZoneId[] {
  if (zone === 'none') return [];
  const tips = ask.kind === 'reading' && !needs.bench ? zonesAt(ask.at) : [];
  return [...new Set([...tips, provedWith(zone)])];
}

function firstDefined<T, R>(list: readonly T[], of: (one: T) => R | undefined): R | undefined {
  for (const one of list) {
    const found = of(one);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** What must be fed for a live step, from the panel on: a call reaches the unit only through a fed air handler. */
function zonesFeeding({ zone, needs }: Step): readonly ZoneId[] {
  const own = zone === 'none' ? 'outdoor-load' : zone;
  if (needs.call !== 'cooling') return [own];
  return ['disconnect-line', 'air-handler', own];
}

export function needsDead(needs: RankedTest['needs']): boolean {
  return needs.power === 'off' || needs.bench;
}

/** The order of the proof: call off, open and lock, prove absence of voltage, release stored charge. */
function stepToDead(zone: ZoneId, context: VisitContext): Step | undefined {
  const energy = context.energy[zone];
  if (isolationOf(zone, context) !== 'locked') {
    return context.call === 'none' ? actionStep('power-off', zone) : actionStep('call-off', 'none');
  }
  if (energy !== 'reads-dead' && energy !== 'proven-dead') return actionStep('absence-proved', zone);
  if (energy !== 'proven-dead') return actionStep('capacitors-discharged', zone);
  return undefined;
}

/** Whether hands may meet a zone: proven dead, and for the outdoor unit its capacitor too. Unknown counts as live. */
export function isProvenDead(zone: ZoneId | 'none', context: VisitContext): boolean {
  if (zone === 'none') return true;
  const together: readonly ZoneId[] = provedWith(zone) === 'outdoor-load' ? OUTDOOR_ZONES : [zone];
  return together.every((one) => context.energy[one] === 'proven-dead');
}

/** What the state of the unit's power was for a reading at a zone, as far as the record knows. */
export function powerAt(zone: ZoneId | 'none', context: VisitContext): 'on' | 'off' | 'unknown' {
  const energy = context.energy[zone === 'none' || zone === 'control' ? 'outdoor-load' : zone];
  if (energy === 'live') return 'on';
  if (energy === 'unknown') return isOpened(zone === 'none' ? 'outdoor-load' : zone, context) ? 'off' : 'unknown';
  return 'off';
}
