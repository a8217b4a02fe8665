import { MS_A_MINUTE, type RankedTest } from '../../../grammar/visit/inputs.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { lackingToRun } from '../../../grammar/visit/refrigerant-work.ts';
import { evidenceSeen, standingReadings, wasSeen, wireMoves } from '../../../grammar/visit/standing.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { isGrounded, trippedAt, wasRenewed, windingsDue } from '../rules/after-trip.ts';
import { sectionsOf } from '../rules/charged-sections.ts';
import { isOpened, provedWith } from '../rules/isolation.ts';
import { looseWires } from '../rules/landings.ts';
import { doneOfRefrigerant, refrigerantInRepair, refrigerantStep } from '../rules/refrigerant-plan.ts';
import { repairZone } from '../rules/repairs.ts';
import { zonesAt } from '../rules/zones-at.ts';
import { pressingStep, stepToDead } from './dead-steps.ts';
import { isGivenUp, waysToDead } from './given-up.ts';
import { ARRIVE_PLAN, actionStep, CLOSE_PLAN, PROVE_PLAN, testStep, windingStep, zoneOfTest } from './plans.ts';
import { isRead } from './plate-steps.ts';
import { isOver } from './wanted-steps.ts';

/**
 * What the visit asks for next: a plan step of the phase or the best test of the planner, and before it whatever its
 * needs demand of the energy. Undefined where nothing can be asked yet (an answer of the diagnosis is on its way) or
 * where the phase has nothing left.
 */
export function chooseStep(context: VisitContext): Step | undefined {
  const pressing = pressingStep(context);
  if (pressing !== undefined) return pressing;
  const goal = chooseGoal(context);
  // Nothing feeds a winding that reads to its shell.
  if (goal !== undefined && wantsFed(goal) && isGrounded(context)) return undefined;
  if (goal === undefined || startsOpenCircuit(goal.needs, context)) return undefined;
  return wayLacking(goal, context) === undefined ? (stepBefore(goal, context) ?? goal) : undefined;
}

/** Whether a step wants power or a call there. */
function wantsFed({ needs }: Step): boolean {
  return needs.power === 'on' || needs.call === 'cooling';
}

/** What the phase is after, before whatever its needs demand of the energy. */
export function chooseGoal(context: VisitContext): Step | undefined {
  const goal = wantedStep(context) ?? goalOfPhase(context);
  return goal !== undefined && context.gate !== undefined && (needsDead(goal.needs) || goal.needs.power === 'on')
    ? undefined
    : goal;
}

/** The first step that the technician asked for by name and that is not over, where the state of the unit allows it. */
function wantedStep(context: VisitContext): Step | undefined {
  if (context.phase === 'repair' || context.phase === 'closed') return undefined;
  const step = context.wanted?.steps.find((one) => !isOver(one, context));
  const bringsBack = context.wanted?.bringsBack === true;
  if (step !== undefined && bringsBack && !startsOpenCircuit(step.needs, context)) return step;
  return step === undefined || undoes(step, context) || startsOpenCircuit(step.needs, context) ? undefined : step;
}

/** Where the maker's procedure governs, nothing live and nothing hands-on is prompted: readings are taken as they come. */
function goalOfPhase(context: VisitContext): Step | undefined {
  const open = (step: Step) => !isSettled(step, context);
  switch (context.phase) {
    case 'arrive':
      return ARRIVE_PLAN.find(open);
    case 'testing':
      return isFresh(context) ? (ledTest(context) ?? closingStep(context)) : undefined;
    case 'repair': {
      const refrigerant = refrigerantInRepair(context);
      if (refrigerant !== undefined) return refrigerant === 'waiting' ? undefined : refrigerant;
      const repair = repairStep(context);
      // Who has not the part today goes on to what is left to say.
      const isParked = context.parked.some(({ step }) => step === repair.id);
      return isParked ? goalOfClosing(context) : repair;
    }
    case 'prove': {
      const refrigerant = refrigerantStep(context);
      if (refrigerant !== undefined) return refrigerant === 'waiting' ? undefined : refrigerant;
      return PROVE_PLAN.find((step) => open(step) && isDue(step, context) && wayLacking(step, context) === undefined);
    }
    case 'close':
      return goalOfClosing(context);
    case 'closed':
      return undefined;
  }
}

function goalOfClosing(context: VisitContext): Step {
  return CLOSE_PLAN.find((step) => !isSettled(step, context)) ?? actionStep('visit-finished', 'none');
}

function repairStep(context: VisitContext): Step {
  return actionStep('part-fitted', repairZone(context.finding?.fault), { power: 'off', call: 'any', bench: false });
}

/** The diagnosis has answered for the latest evidence. */
export function isFresh(context: VisitContext): boolean {
  return context.assessment?.forSeq === context.evidenceNumber;
}

/** A step that wants the unit to have run for a while is not due before. */
export function isDue(step: Step, context: VisitContext): boolean {
  return step.afterMinutes === undefined || minutesRunning(context) >= step.afterMinutes;
}

/** Whether all that can be asked of a repair is read, and the rest wants the unit to run longer. */
export function waitsForSplit(context: VisitContext): boolean {
  const isLeft = PROVE_PLAN.some((step) => !isSettled(step, context) && !isDue(step, context));
  return context.phase === 'prove' && context.runningSince !== undefined && isLeft && chooseStep(context) === undefined;
}

/** Whether all that is left of a proof wants a unit that runs, and it was looked at and did not. */
export function waitsToRun(context: VisitContext): boolean {
  const { phase, runningSince, settled } = context;
  if (phase !== 'prove' || runningSince !== undefined || !settled.includes('prove.fan-turning')) return false;
  const isLeft = PROVE_PLAN.some((step) => !isSettled(step, context) && !isDue(step, context));
  return isLeft && refrigerantStep(context) === undefined && chooseStep(context) === undefined;
}

/** Minutes since the unit was seen running; 0 where it is not. */
export function minutesRunning(context: VisitContext): number {
  return context.runningSince === undefined ? 0 : (context.now.mono - context.runningSince) / MS_A_MINUTE;
}

/** Answered, parked, or not called for on this visit. */
export function isSettled(step: Step, context: VisitContext): boolean {
  return (
    context.settled.includes(step.id) ||
    (step.withClamps === true && isClampPassed(context)) ||
    (step.plate?.[0] !== undefined && isRead(step.plate[0], context)) ||
    doneOfRefrigerant(context.refrigerantWork).includes(step.id) ||
    context.parked.some((parked) => parked.step === step.id) ||
    // An exercise keeps no sound.
    (step.withMicrophone === true && (!context.listens || context.exercise !== undefined)) ||
    // What was taken off shows nothing of what it did.
    (step.whileFed === true && isOpened('outdoor-load', context)) ||
    (step.withGauges === true && !standingReadings(context).some(({ reading }) => reading.quantity === 'pressure'))
  );
}

/** Nobody clamps on beside live conductors for a step that was passed while they were dead. */
function isClampPassed({ parked, settled }: VisitContext): boolean {
  const { id } = actionStep('clamps-placed', 'outdoor-load');
  return !settled.includes('repair.clamps-placed') && parked.some(({ step }) => step === id);
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
  const [first] = assessment?.next ?? [];
  // Where nothing else tells, what may end by itself is waited for.
  const waited = first?.wait === undefined ? undefined : first;
  const test = assessment?.next.find(({ id }) => id === assessment.confirm) ?? waited;
  if (test === undefined || timesParked(test.id, context) > 0) return undefined;
  const taken = standingReadings(context).findLast(
    ({ reading }) => reading.quantity === test.quantity && samePlaces(reading.at, test.at),
  );
  return taken?.confirmed === true ? undefined : test;
}

/**
 * What was answered is answered: a test that was asked for and read in the state that it wants, or in the state that the
 * visit is in now, is not asked for in it again, whatever the diagnosis made of the answer.
 */
function wasAnsweredHere(test: RankedTest, context: VisitContext): boolean {
  const { needs } = test;
  const power = powerAt(zoneOfTest(test), context);
  const isIn = (wanted: string, now: string, was: string) => wanted === 'any' || was === wanted || was === now;
  return [...standingReadings(context), ...context.observations].some(
    ({ test: id, under }) =>
      id === test.id && isIn(needs.call, context.call, under.call) && isIn(needs.power, power, under.power),
  );
}

/** Tests that are still to be asked for, the best first: those passed over come back when nothing else is left. */
export function openTests(context: VisitContext): readonly RankedTest[] {
  const next = (context.assessment?.next ?? []).filter(
    (test) =>
      !wasAnsweredHere(test, context) && !endangers(test, context) && wayLacking(testStep(test), context) === undefined,
  );
  const again = next.filter((test) => !isJustParked(test.id, context));
  const least = Math.min(...again.map((test) => timesParked(test.id, context)));
  // Those passed over least come first, so that none is asked twice running.
  return least < TIMES_ASKED ? again.filter((test) => timesParked(test.id, context) === least) : [];
}

/** Passed over, and nothing read or seen since: asked again it would be passed again. */
function isJustParked(test: string, context: VisitContext): boolean {
  const now = evidenceSeen(context);
  return context.parked.some(({ step, since }) => step === test && since === now);
}

/** Whether all that is left to ask was passed over just now. */
export function isLeftPassed(context: VisitContext): boolean {
  const next = context.phase === 'testing' ? (context.assessment?.next ?? []) : [];
  return next.some((test) => isJustParked(test.id, context));
}

/** In an exercise who is at the unit chooses the tests: none is asked for. */
function ledTest(context: VisitContext): Step | undefined {
  const best = context.exercise === undefined ? bestTest(context) : undefined;
  return best === undefined ? undefined : testStep(best);
}

/** The planner's best test; parked ones come back when nothing else is left; once power or the call is off, its best that goes on from there. */
export function bestTest(context: VisitContext): RankedTest | undefined {
  const again = readOnceMore(context);
  const open = [...(again === undefined || endangers(again, context) ? [] : [again]), ...openTests(context)];
  // Power was sent there for what is read live: that comes before it is taken off again.
  const fed = context.fedAt === evidenceSeen(context) ? open.find((one) => readsFed(one, context)) : undefined;
  const best = again === open[0] ? again : open.find((one) => !undoes(testStep(one), context));
  return fed ?? best ?? open[0];
}

function readsFed({ needs }: RankedTest, { call }: VisitContext): boolean {
  return needs.power === 'on' && (needs.call === 'any' || needs.call === call);
}

/** Where no test is left that an opened refrigerant circuit allows, closing it comes first. */
function closingStep(context: VisitContext): Step | undefined {
  const step = lackingToRun(context) === undefined ? undefined : refrigerantStep(context);
  return step === 'waiting' || step === undefined ? undefined : { ...step, source: 'planner' };
}

/** A test that would start an opened circuit, or put its volts across a compressor in a vacuum. */
function endangers({ needs, quantity, at }: RankedTest, context: VisitContext): boolean {
  const isToShell = quantity === 'insulation' || (quantity === 'resistance' && at.includes('shell'));
  return startsOpenCircuit(needs, context) || (isToShell && context.refrigerantWork.inVacuum);
}

/** Whether a step wants power or a call that the refrigerant circuit does not allow. */
export function startsOpenCircuit(needs: RankedTest['needs'], context: VisitContext): boolean {
  const starts = needs.power === 'on' || needs.call === 'cooling';
  return starts && (context.refrigerantWork.inVacuum || lackingToRun(context) !== undefined);
}

/** Whether a test would want back what the technician has just taken off. */
export function undoes({ needs, zone, ask }: Step, context: VisitContext): boolean {
  const opened = [zone === 'none' ? 'outdoor-load' : zone, ...tipsOf(ask)].some((one) => isOpened(one, context));
  return (needs.power === 'on' && opened) || (needs.call === 'cooling' && context.call === 'none');
}

/** The step that must come first so that the goal's needs hold: power, proof, charge, call. */
function stepBefore(goal: Step, context: VisitContext): Step | undefined {
  const { needs } = goal;
  if (needsDead(needs)) {
    const step = firstDefined(zonesToProve(goal), (zone) => stepToDead(zone, context));
    return step?.ask.kind === 'action' && step.ask.done === 'power-on' ? stepToPower(step, context) : step;
  }
  const zone = zonesFeeding(goal).find((one) => isOpened(one, context));
  if (needs.power === 'on' && zone !== undefined) return stepToPower(actionStep('power-on', provedWith(zone)), context);
  const call = callBefore(needs, context);
  const isStart = call?.ask.kind === 'action' && call.ask.done === 'call-on';
  return (isStart && wasRenewed(context) ? nextWinding(context) : undefined) ?? call;
}

/** Each winding is read to its shell, dead, before it is fed again: the next of them. */
function nextWinding(context: VisitContext): Step | undefined {
  const [winding] = windingsDue(context);
  if (winding === undefined) return undefined;
  return stepToDead('outdoor-load', context) ?? windingStep(winding, trippedAt(context) ?? 0);
}

/** What a goal wants first and the technician has given up; undefined where nothing bars it. */
export function wayLacking(goal: Step, context: VisitContext): Step | undefined {
  const before = stepBefore(goal, context);
  if (before === undefined) return undefined;
  if (isGivenUp(before, context)) return before;
  // The whole way there: a switch is not pulled for a proof that stops short of its end again.
  return needsDead(goal.needs)
    ? firstDefined(zonesToProve(goal), (zone) => waysToDead(zone).find((way) => isGivenUp(way, context)))
    : undefined;
}

/** The first way that was given up and that something which is left to do wants. */
export function wayLeft(context: VisitContext): Step | undefined {
  const open = [
    ...(context.phase === 'testing' ? (context.assessment?.next ?? []).map(testStep) : []),
    ...(context.phase === 'repair' ? [repairStep(context)] : []),
  ];
  return firstDefined(open, (goal) => wayLacking(goal, context));
}

/** Clamps are put on while it is dead, before the covers, where amps are still to be read. */
function clampsWanted(context: VisitContext): boolean {
  const amps = PROVE_PLAN.some(
    ({ id, ask }) => ask.kind === 'reading' && ask.quantity === 'current' && !context.settled.includes(id),
  );
  const placed = context.settled.includes('repair.clamps-placed') || isClampPassed(context);
  return context.phase === 'prove' && amps && !placed && isProvenDead('outdoor-load', context);
}

/** A test with or without a call is asked only so; where the thermostat is blank, no call can be set. */
function callBefore({ call }: RankedTest['needs'], context: VisitContext): Step | undefined {
  if (call === 'any' || call === context.call || wasSeen(context, 'thermostat-blank')) return undefined;
  return actionStep(call === 'cooling' ? 'call-on' : 'call-off', 'none');
}

/** Wires landed and pulled on, covers on: before power is sent anywhere. */
function stepToPower(powerOn: Step, context: VisitContext): Step {
  const winding = nextWinding(context);
  if (winding !== undefined) return winding;
  if (looseWires(wireMoves(context)).length > 0) return actionStep('wires-landed', 'none');
  if (context.wires.some(({ wire }) => wire.action === 'landed') && !context.settled.includes('repair.tug-tested')) {
    return actionStep('tug-tested', 'none');
  }
  if (context.settled.includes('energy.covers-on')) return powerOn;
  return clampsWanted(context) ? actionStep('clamps-placed', 'outdoor-load') : actionStep('covers-on', 'none');
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
function zonesFeeding({ zone, needs, ask }: Step): readonly ZoneId[] {
  const own = [...new Set([zone === 'none' ? 'outdoor-load' : zone, ...tipsOf(ask)])];
  return needs.call === 'cooling' ? ['disconnect-line', 'air-handler', ...own] : own;
}

/** Across a blade or a fuse both sides are fed, or nothing is read. */
function tipsOf(ask: Step['ask']): readonly ZoneId[] {
  return ask.kind === 'reading' ? zonesAt(ask.at) : [];
}

export function needsDead(needs: RankedTest['needs']): boolean {
  return needs.power === 'off' || needs.bench;
}

/** Whether hands may meet a zone: proven dead, and every capacitor that is there too. Unknown counts as live. */
export function isProvenDead(zone: ZoneId | 'none', context: VisitContext): boolean {
  if (zone === 'none') return true;
  const proved = provedWith(zone);
  const together = [proved, ...sectionsOf(proved, context).map((section) => section.zone)];
  return together.every((one) => context.energy[one] === 'proven-dead');
}

/** What the state of the unit's power was for a reading at a zone, as far as the record knows. */
export function powerAt(zone: ZoneId | 'none', context: VisitContext): 'on' | 'off' | 'unknown' {
  const own = zone === 'none' ? 'outdoor-load' : zone;
  const energy = context.energy[own];
  if (energy === 'live') return 'on';
  if (energy !== 'unknown') return 'off';
  if (isOpened(own, context)) return 'off';
  // Nobody measures the control circuit's own supply first: a unit that runs or is fed has one.
  return own === 'control' && context.energy['outdoor-load'] === 'live' ? 'on' : 'unknown';
}
