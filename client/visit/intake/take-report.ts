import type { Report } from '../../../grammar/phrases/meaning.ts';
import { evidenceSeen } from '../../../grammar/visit/standing.ts';
import type { IsolationPlace } from '../../../grammar/vocabulary/isolation-places.ts';
import { type ObservationId, RUNS_WITHOUT_CALL } from '../../../grammar/vocabulary/observations.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { ActionDone, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { holdsWithoutCall } from '../rules/holds-without-call.ts';
import {
  CAPACITOR_ZONES,
  IN_PROOF,
  isOpened,
  OUTDOOR_ZONES,
  placesOpening,
  provedWith,
  TAKEN_OFF,
  zonesFedBy,
  zonesOpenedAt,
} from '../rules/isolation.ts';
import { untriedOutdoors } from '../rules/proof-ground.ts';
import { SHOWN_BY_LOOK } from '../rules/shown-by-look.ts';
import { zoneOfSeen } from '../steps/looks.ts';
import { hastenCheck } from './check-on-me.ts';
import { dropProof, endProofs } from './end-proofs.ts';
import { takeDischarged } from './follow-charge.ts';
import { doubtUntried } from './heed-power.ts';
import { heedReset, heedReturn, metNow } from './heed-return.ts';
import { takeDeed, warnByHand } from './take-deed.ts';
import { takeItem } from './take-job.ts';
import { takeMeterProof, takeProof } from './take-proof.ts';
import { circumstances } from './take-reading.ts';
import { sayUnproven } from './tell-unproven.ts';
import { proofWaits } from './wait-for-supervisor.ts';
import { warnOfHolding } from './warn-of-holding.ts';

export function takeReport(turn: Turn, report: Report): void {
  if (proofWaits(turn, report)) return;
  switch (report.type) {
    case 'energy':
      return takeEnergyReport(turn, report);
    case 'absence-of-voltage':
      return takeProof(turn, report);
    case 'meter-proof':
      return takeMeterProof(turn, report.value);
    case 'discharged':
      return takeDischarged(turn, report.zone);
    case 'observation':
      return takeObservation(turn, report.observation, report.as);
    case 'job-item':
      return takeItem(turn, report.item);
    case 'part-moved':
      return takeDeed(turn, report);
    case 'cover':
      return takeDeed(turn, report);
    case 'deed':
      return takeDeed(turn, report);
    case 'injury':
      return takeInjury(turn);
    default:
      report satisfies never;
  }
}

/** A word alone, with device and place, gives at most "reported off"; any word that power is back ends every proof. */
function takeEnergyReport(turn: Turn, report: Extract<Report, { type: 'energy' }>): void {
  if (report.device === 'thermostat-call') {
    takeObservation(turn, report.state === 'closed' ? 'thermostat-calling' : 'thermostat-not-calling');
    return;
  }
  if (report.place === 'thermostat') return;
  const { place } = report;
  const why = BECAUSE.switchReported(report.device, place, report.state);
  const { isolation, lockedBy, runningSince, call } = turn.context;
  if (report.state === 'open' || report.state === 'locked') {
    const state = isolation[place] === 'locked' ? 'locked' : report.state;
    const wasClosed = isolation[place] === 'unknown' || isolation[place] === 'closed';
    const underLoad = wasClosed && ((runningSince !== undefined && call !== 'none') || holdsWithoutCall(turn.context));
    turn.record({ type: 'switch.reported', place, state, device: report.device });
    if (place !== 'air-handler' && runningSince !== undefined) turn.record({ type: 'run.changed', running: false });
    for (const zone of zonesOpenedAt(place)) {
      if (!(CAPACITOR_ZONES as readonly ZoneId[]).includes(zone)) turn.move(zone, 'reported-off', why);
    }
    const zones = zonesOpenedAt(place).filter((zone) => provedWith(zone) === zone);
    const stands = zones.length > 0 && zones.every((zone) => turn.context.energy[zone] === 'proven-dead');
    if (stands) turn.say('readback', state === 'locked' ? SAY.lockedAgain : SAY.offAgain);
    else turn.say('readback', state === 'locked' ? SAY.reportedOffLocked : SAY.reportedOff);
    if (isOtherSwitch(turn.context, place)) turn.repeatStep();
    if (place === 'outdoor' && underLoad) {
      turn.warn(SAY.pulledUnderLoad, 'outdoor-load');
    }
    return;
  }
  const zones = zonesFedBy(place, turn.context);
  const behind = zonesOpenedAt(place);
  const met = metNow(turn, behind, lockedBy[place] === report.device ? place : 'none');
  const { device } = report;
  const told = report.state === 'closed' ? { state: report.state } : ({ state: 'open', lockOff: true } as const);
  turn.record({ type: 'switch.reported', place, device, ...told });
  // Proven without a live leg: now there is one to read its ground with.
  const untried =
    place === 'panel' && report.state === 'closed'
      ? untriedOutdoors(turn.context).filter((zone) => !zones.includes(zone))
      : [];
  const isProofEnded = [...zones, ...untried].some((zone) => IN_PROOF.includes(turn.context.energy[zone]));
  dropProof(turn, why);
  endProofs(turn, zones, report.state === 'closed' ? 'live' : 'doubted', why);
  endProofs(turn, untried, 'doubted', why);
  heedReturn(turn, behind, met);
  if (report.state === 'closed') {
    turn.talk({ fedAt: evidenceSeen(turn.context) });
    heedReset(turn, place);
  }
  turn.say('readback', report.state === 'closed' ? SAY.powerBack(isProofEnded) : SAY.unlocked);
}

/** A call where its own circuit was taken off: something feeds it. */
function heedCall(turn: Turn, observation: ObservationId): void {
  if (!TAKEN_OFF.includes(turn.context.energy.control)) return;
  const words = SAY.callIsThere;
  turn.warn(words, 'control');
  endProofs(turn, ['control'], 'live', BECAUSE.seen(observation));
}

const CALL_STEPS: readonly ActionDone[] = ['call-on', 'call-off', 'covers-on', 'clamps-placed'];
const CLAMPS_ON = 'repair.clamps-placed';

/**
 * What is seen, heard or felt: evidence for the diagnosis, and where something runs, evidence of energy too.
 *
 * @param as the words it was said in, where the table has them beside its name: it is read back in them
 */
export function takeObservation(turn: Turn, observation: ObservationId, as?: string): void {
  const shown = SHOWN_BY_LOOK[observation];
  const running = shown.power === 'running';
  const energised = shown.power !== 'nothing';
  const call = as === RUNS_WITHOUT_CALL ? 'none' : shown.call;
  if (call !== 'nothing') turn.record({ type: 'call.seen', call });
  if (call === 'cooling') turn.talk({ fedAt: evidenceSeen(turn.context) });
  if (shown.call === 'cooling') heedCall(turn, observation);
  const { context } = turn;
  const number = context.readingCount + 1;
  const seen = circumstances(context, zoneOfSeen(observation));
  const under = energised ? { ...seen, power: 'on' as const } : seen;
  const ask = context.step?.ask;
  const answered =
    ask?.kind === 'look' && (ask.answers as readonly string[]).includes(observation) && context.step !== undefined;
  const test = answered ? context.step.test : undefined;
  const heldBefore = holdsWithoutCall(context);
  turn.record({ type: 'observation.logged', observation, number, under, ...(test === undefined ? {} : { test }) });
  const clamped = observation === 'covers-on' && context.step?.id === 'energy.clamps-placed' ? [CLAMPS_ON] : [];
  const steps = [...(answered ? [context.step.id] : []), ...clamped, ...shown.answers];
  if (steps.length > 0) turn.record({ type: 'steps.settled', steps });
  if (observation === 'breaker-on') doubtUntried(turn, BECAUSE.seen(observation));
  if (running && context.runningSince === undefined) turn.record({ type: 'run.changed', running: true });
  warnOfLook(turn, observation);
  const isAsked = answered || (ask?.kind === 'action' && CALL_STEPS.includes(ask.done));
  turn.say('readback', isAsked ? SAY.seenAsAsked(observation, as) : SAY.seen(observation, as));
  if (energised) {
    const wasLive = context.energy['outdoor-load'] === 'live';
    const met = metNow(turn, OUTDOOR_ZONES, 'every');
    if (isOpened('outdoor-load', context)) heedRunning(turn, observation);
    else endProofs(turn, OUTDOOR_ZONES, 'live', BECAUSE.seen(observation));
    if (!wasLive) heedReturn(turn, OUTDOOR_ZONES, met);
    if (running) turn.callSplitTime();
  }
  // Who answers what is asked is told with the step that opens it.
  if (!heldBefore && !answered) warnOfHolding(turn);
}

/** What is only asked of yet, and tells of a call or of power where it was taken off: that is heeded before the question. */
export function warnOfSeen(turn: Turn, observation: ObservationId): void {
  const shown = SHOWN_BY_LOOK[observation];
  if (shown.call === 'cooling') heedCall(turn, observation);
  if (shown.power !== 'nothing' && isOpened('outdoor-load', turn.context)) heedRunning(turn, observation);
}

function heedRunning(turn: Turn, observation: ObservationId): void {
  const words = SAY.powerIsOn(observation);
  turn.warn(words, 'outdoor-load');
  endProofs(turn, OUTDOOR_ZONES, 'live', BECAUSE.seen(observation));
}

/** Looks that are made by hand, and what the hand is in; a shell that burns is warned of while its unit may be fed. */
const SEEN_BY_HAND: Partial<Readonly<Record<ObservationId, ZoneId>>> = {
  'fan-spins-freely': 'outdoor-load',
  'fan-stiff': 'outdoor-load',
  'blower-spins-freely': 'air-handler',
  'blower-stiff': 'air-handler',
};

/** A hand on a fan or a shell: warned of as it is told. */
export function warnOfLook(turn: Turn, observation: ObservationId): void {
  const zone = SEEN_BY_HAND[observation];
  if (zone !== undefined) sayUnproven(turn, [zone]);
  if (observation === 'compressor-very-hot') warnByHand(turn, SAY.shellBurns, true);
}

/** Power off, help, medical evaluation even if well; the visit is held. */
export function takeInjury(turn: Turn): void {
  turn.record({ type: 'injury.reported' });
  sayInjury(turn);
  turn.raise({ type: 'hold' });
  hastenCheck(turn);
}

/** What to do comes before all else that is said of the same words, and once. */
export function sayInjury(turn: Turn): void {
  const isSaid = turn.effects.some(({ type, params }) => type === 'say' && params.prompt.text === SAY.injury);
  if (isSaid) return;
  turn.hush(true);
  turn.say('warning', SAY.injury);
}

/** Another switch than the one that is asked for: what was told stands, and the step is asked again. */
function isOtherSwitch({ step }: VisitContext, place: IsolationPlace): boolean {
  if (step?.ask.kind !== 'action' || step.zone === 'none') return false;
  const isAsked = step.ask.done === 'power-off' || step.ask.done === 'breaker-off';
  return isAsked && !placesOpening([step.zone]).includes(place);
}
