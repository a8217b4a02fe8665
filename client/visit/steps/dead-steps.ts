import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { sectionsOf, unreadSections, waitsOut } from '../rules/charged-sections.ts';
import { holdsWithoutCall } from '../rules/holds-without-call.ts';
import { isOpened, isolationOf, TAKEN_OFF } from '../rules/isolation.ts';
import { GROUND_LEGS, hasNoLiveLeg, isGroundProved, legToRead } from '../rules/proof-ground.ts';
import { missingPairs, type Pair } from '../rules/proof-plan.ts';
import { placeToSearch, searchStepId } from '../rules/source-search.ts';
import { actionStep, zoneOf } from './plans.ts';

/** The order of the proof: ground read while fed, call off, open and lock, prove absence of voltage, release charge. */
export function stepToDead(zone: ZoneId, context: VisitContext): Step | undefined {
  const energy = context.energy[zone];
  if (energy === 'proven-dead' || energy === 'in-doubt') return undefined;
  if (energy === 'reads-dead') return chargeStep(zone, context);
  const ground = groundStep(zone, context);
  if (ground !== undefined) return ground;
  const isOff = isolationOf(zone, context) === 'locked' && TAKEN_OFF.includes(energy);
  if (callMayBeOn(zone, context, isOff)) return actionStep('call-off', 'none');
  return isOff ? proofStep(zone, context) : opening(zone, context);
}

/** A contactor that does not drop out keeps its load on: it is opened at the breaker, not with a pull-out under load. */
function opening(zone: ZoneId, context: VisitContext): Step {
  return actionStep(zone === 'outdoor-load' && holdsWithoutCall(context) ? 'breaker-off' : 'power-off', zone);
}

/** Nothing goes on before what feeds a dead zone is found, or the proof that was begun is through. */
export function pressingStep(context: VisitContext): Step | undefined {
  const { proof, energy, gate, phase } = context;
  if (gate !== undefined || phase === 'closed') return undefined;
  const search = searchStep(context);
  if (search !== undefined) return search;
  return proof !== undefined && energy[proof.zone] === 'proving' ? proofStep(proof.zone, context) : undefined;
}

/** Meter, each pair that is still missing, meter again. */
function proofStep(zone: ZoneId, context: VisitContext): Step {
  const { proof } = context;
  if (proof?.zone !== zone) return actionStep('absence-proved', zone);
  const [next] = missingPairs(proof);
  return next === undefined
    ? actionStep('meter-again', zone)
    : readingStep(`energy.pair@${next.join('+')}`, 'voltage', next, zone);
}

/** Whether a call may still be there: an unseen one counts, but for conductors that no call switches. */
export function callMayBeOn(zone: ZoneId, context: VisitContext, isOff: boolean): boolean {
  if (context.call === 'none' || isBlank(context)) return false;
  if (context.call === 'cooling') return true;
  return !isOff || zone === 'outdoor-load' || zone === 'control';
}

const THERMOSTAT: readonly ObservationId[] = ['thermostat-blank', 'thermostat-calling', 'thermostat-not-calling'];

/** A blank thermostat calls for nothing. */
function isBlank({ observations }: VisitContext): boolean {
  return (
    observations.findLast(({ observation }) => THERMOSTAT.includes(observation))?.observation === 'thermostat-blank'
  );
}

/** Discharged while it reads dead, then read section by section; an electronic drive is left for its time instead. */
function chargeStep(zone: ZoneId, context: VisitContext): Step {
  if (waitsOut(zone, context)) return actionStep('charge-left', zone);
  const unread = unreadSections(zone, context);
  const [next] = unread;
  if (next === undefined || unread.length === sectionsOf(zone, context).length) {
    return actionStep('capacitors-discharged', zone);
  }
  return readingStep(`energy.section@${next.zone}`, 'voltage-dc', next.at, next.zone);
}

/**
 * A leg to the ground of a zone while it is fed: an open ground reads a false zero. Where the zone is off already, what
 * can still be done: the line side under a locked disconnect, or its own switch once more.
 */
function groundStep(zone: ZoneId, context: VisitContext): Step | undefined {
  if (isGroundProved(zone, context) || !hasGround(zone) || hasNoLiveLeg(zone, context)) return undefined;
  const own = legToRead(GROUND_LEGS[zone], context);
  if (!isOpened(zone, context)) return own && groundReading(own);
  if (isolationOf(zone, context) !== 'locked') return undefined;
  if (zone !== 'outdoor-load') return own && actionStep('power-on', zone);
  const lineSide = legToRead(GROUND_LEGS['disconnect-line'], context);
  if (lineSide === undefined) return undefined;
  if (context.isolation.outdoor !== 'locked') return actionStep('disconnect-locked', zone);
  return isOpened('disconnect-line', context) ? actionStep('power-on', 'disconnect-line') : groundReading(lineSide);
}

function hasGround(zone: ZoneId): zone is keyof typeof GROUND_LEGS {
  return zone in GROUND_LEGS;
}

function groundReading(leg: Pair): Step {
  return { ...readingStep(`energy.ground@${leg.join('+')}`, 'voltage', leg, zoneOf(leg)), live: true };
}

function searchStep(context: VisitContext): Step | undefined {
  const { search } = context;
  if (search === undefined) return undefined;
  const next = placeToSearch(search, context);
  if (next !== undefined) {
    return { ...readingStep(searchStepId(search, next), 'voltage', next, zoneOf(next)), live: true };
  }
  const last = actionStep('source-opened', search.zone);
  const id = `${last.id}#${search.seq}`;
  return context.parked.some(({ step }) => step === id) ? undefined : { ...last, id };
}

function readingStep(id: string, quantity: Reading['quantity'], at: Pair, zone: Step['zone']): Step {
  const needs = { power: 'any', call: 'any', bench: false } as const;
  return { id, source: 'energy', ask: { kind: 'reading', quantity, at }, needs, hazards: [], zone };
}
