import { lackingToRun } from '../../grammar/visit/refrigerant-work.ts';
import type { EnergyState, ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { provedWith } from '../visit/rules/isolation.ts';
import { isProvenDead } from '../visit/steps/choose-step.ts';
import { SAY_OF_REFRIGERANT } from '../words/talk/refrigerant-words.ts';
import type { ExerciseDeed, LoggedDeed, ProofStage, SafetyError } from './exercise-log.ts';
import type { SimulatedUnit, Taking } from './simulated-unit.ts';

export type Stop = Omit<Extract<ExerciseDeed, { type: 'stopped-for' }>, 'type'>;

/** From here on a voltage hurts (NFPA 70E 110.4, 2021: 50 V); a.c. */
const HURTS_FROM = 50;
/** An ohmmeter is wrong from here on: its own battery gives less (common practice). */
const SPOILS_OHMS_FROM = 3;
/** A charge that can be felt (our limit). Volts d.c. */
const FELT_FROM = 30;

const OFF_ONLY: readonly Taking['quantity'][] = ['resistance', 'insulation', 'capacitance'];

/**
 * What a reading that wants dead parts meets in these zones. Undefined where it may be taken. Hands are at what is on
 * the bench: its leads are lifted for it.
 */
export function stopsReading(
  taking: Taking,
  zones: readonly ZoneId[],
  what: string,
  unit: SimulatedUnit,
  context: VisitContext,
): Stop | undefined {
  if (!OFF_ONLY.includes(taking.quantity)) return undefined;
  const zone = zones[0] ?? 'outdoor-load';
  const volts = unit.voltsAt(taking.at);
  if (volts >= SPOILS_OHMS_FROM) {
    const error = taking.bench && volts >= HURTS_FROM ? 'touched-live' : 'ohms-on-live';
    return { error, weight: 'harm', zone, volts, between: unit.voltsBetween(taking.at), what };
  }
  return stopsCharge(zones, what, unit, context) ?? stopsUnproven(zones, what, unit, context);
}

/** What hands meet in these zones; undefined where they may be there. */
export function stopsHands(
  zones: readonly ZoneId[],
  what: string,
  unit: SimulatedUnit,
  context: VisitContext,
): Stop | undefined {
  for (const zone of zones) {
    const volts = unit.voltsIn(provedWith(zone));
    if (volts >= HURTS_FROM) return { error: 'touched-live', weight: 'harm', zone, volts, what };
  }
  return stopsCharge(zones, what, unit, context) ?? stopsUnproven(zones, what, unit, context);
}

function stopsCharge(
  zones: readonly ZoneId[],
  what: string,
  unit: SimulatedUnit,
  context: VisitContext,
): Stop | undefined {
  const zone = zones.find((one) => provedWith(one) === 'outdoor-load');
  if (zone === undefined || isProvenDead('outdoor-load', context)) return undefined;
  const volts = Math.max(...(['capacitor-herm', 'capacitor-fan'] as const).map((one) => unit.chargeOf(one)));
  return volts < FELT_FROM ? undefined : { error: 'charged-capacitor', weight: 'harm', zone, volts, what };
}

function stopsUnproven(
  zones: readonly ZoneId[],
  what: string,
  unit: SimulatedUnit,
  context: VisitContext,
): Stop | undefined {
  const zone = zones.find((one) => !isProvenDead(provedWith(one), context));
  if (zone === undefined) return undefined;
  return { error: 'not-proven-dead', weight: 'near-miss', zone, volts: unit.voltsIn(provedWith(zone)), what };
}

/** What power or a call meets that comes back; undefined where nothing is open. */
export function stopsReturn(zone: ZoneId, what: string, unit: SimulatedUnit): Stop | undefined {
  if (unit.open.size === 0) return undefined;
  return { error: 'energised-hands-in', weight: 'harm', zone, volts: unit.voltsIn(provedWith(zone)), what };
}

/**
 * A start of a refrigerant circuit that was opened and lacks what must come before it runs. A near miss that is held;
 * harm where the compressor runs by it, and where it is done again against what was said.
 */
export function stopsStart(
  how: 'power' | 'call',
  what: string,
  unit: SimulatedUnit,
  context: VisitContext,
): Stop | undefined {
  const lacks = context.refrigerantWork.inVacuum ? 'vacuum' : lackingToRun(context);
  if (lacks === undefined) return undefined;
  const runs =
    (how === 'call' || unit.call !== 'none') &&
    (how === 'power' || (unit.isClosed('outdoor') && unit.isClosed('panel')));
  const weight = runs ? 'harm' : 'near-miss';
  const words = SAY_OF_REFRIGERANT.early(runs ? 'run' : how, lacks);
  return { error: 'circuit-open', weight, zone: 'outdoor-load', volts: unit.voltsIn('outdoor-load'), what, words };
}

/** What is started a second time against the same words is no near miss any more. */
export function againstWords(stop: Stop, log: readonly LoggedDeed[]): Stop {
  const isAgain =
    stop.error === 'circuit-open' &&
    log.some((deed) => deed.type === 'stopped-for' && deed.error === stop.error && deed.words === stop.words);
  return isAgain ? { ...stop, weight: 'harm' } : stop;
}

/** What only meets those who have proven nothing. */
const OF_HANDS: readonly SafetyError[] = ['touched-live', 'ohms-on-live', 'charged-capacitor', 'not-proven-dead'];
export const isOfHands = (error: SafetyError): boolean => OF_HANDS.includes(error);

/** How far the proof of a zone had come. */
export function proofStage(zone: ZoneId, unit: SimulatedUnit, context: VisitContext): ProofStage {
  const proved = provedWith(zone);
  if (unit.isSwitchedOn(proved)) return 'not-off';
  return PROOF_BEGUN.includes(context.energy[proved]) ? 'half' : 'not-read';
}

const PROOF_BEGUN: readonly EnergyState[] = ['proving', 'reads-dead', 'in-doubt', 'proven-dead'];
