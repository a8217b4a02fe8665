import { MS_A_MINUTE } from '../../../grammar/visit/inputs.ts';
import { inBaseUnit } from '../../../grammar/vocabulary/in-base-unit.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { sectionsOf, unreadSections, WAITING_MINUTES, waitsOut } from '../rules/charged-sections.ts';
import { DEAD_BELOW_VOLTS } from '../rules/dead-threshold.ts';
import { holdsCharge, provedWith, READ_DEAD, TAKEN_OFF } from '../rules/isolation.ts';
import { zoneOf } from '../steps/plans.ts';
import { doubtCharge } from './end-proofs.ts';

/**
 * Volts d.c. of a section whose unit does not read dead: never taken for its charge. Across a running capacitor they are
 * a.c., and that is asked; a charge that shows where power was reported off is warned of.
 */
export function askedForDc(turn: Turn, reading: Reading): boolean {
  const zone = zoneOf(reading.at);
  if (reading.quantity !== 'voltage-dc' || zone === 'none' || !holdsCharge(provedWith(zone))) return false;
  const energy = turn.context.energy[provedWith(zone)];
  if (READ_DEAD.includes(energy)) return false;
  if (isCharge(reading) && !TAKEN_OFF.includes(energy)) {
    const ac: Reading = { ...reading, quantity: 'voltage' };
    turn.record({ type: 'reading.asked', reading, why: BECAUSE.dcOnLive });
    turn.ask({ kind: 'confirm-meaning', meaning: { kind: 'reading', reading: ac } }, SAY.acOrDc(reading));
    return true;
  }
  turn.record({ type: 'reading.refused', reading, reason: 'not-read-dead' });
  if (isCharge(reading)) followCharge(turn, reading, zone);
  else turn.say('question', SAY.dcTooEarly);
  return true;
}

/** Volts d.c. across a capacitor: below the threshold its charge is released, and with the last one the proof ends. */
export function followCharge(turn: Turn, reading: Reading, zone: ZoneId | 'none'): void {
  if (zone === 'none' || typeof reading.value !== 'number') return;
  const proved = provedWith(zone);
  if (!holdsCharge(proved)) return;
  // Of what counts as live nothing is known to be a charge.
  if (!TAKEN_OFF.includes(turn.context.energy[proved])) return;
  if (isCharge(reading)) return foundCharge(turn, reading, zone);
  if (!READ_DEAD.includes(turn.context.energy[proved])) return;
  const why = BECAUSE.discharged(reading.at, DEAD_BELOW_VOLTS);
  if (!sectionsOf(proved, turn.context).some((section) => section.zone === zone)) return;
  if (zone !== proved && turn.context.gate === undefined) turn.move(zone, 'released', why);
  turn.record({ type: 'charge.released', zone });
  if (unreadSections(proved, turn.context).length === 0) release(turn, proved, BECAUSE.chargeReleased);
}

function isCharge(reading: Reading): boolean {
  return Math.abs(inBaseUnit(reading) ?? 0) >= DEAD_BELOW_VOLTS;
}

/** A charge: what it was read at is not released. Discharging is asked only of what reads dead. */
function foundCharge(turn: Turn, reading: Reading, zone: ZoneId): void {
  const why = BECAUSE.holdsCharge(reading.at);
  const proved = provedWith(zone);
  if (zone !== proved) turn.move(zone, 'live', why);
  turn.move(proved, 'charge-doubted', why);
  doubtCharge(
    turn,
    turn.context.discharged.filter((one) => one === zone),
  );
  const isDead = READ_DEAD.includes(turn.context.energy[proved]);
  turn.say('warning', isDead ? SAY.charged(reading) : SAY.chargedEarly(reading));
}

/** The time of an electronic drive has passed, by the clock and by the technician's word. */
export function takeTimePassed(turn: Turn, zone: ZoneId): void {
  const { energy, deadSince, now } = turn.context;
  if (energy[zone] !== 'reads-dead' || !waitsOut(zone, turn.context)) return;
  const passed = (now.mono - (deadSince[zone] ?? now.mono)) / MS_A_MINUTE;
  if (passed < WAITING_MINUTES) return void turn.say('answer', SAY.timeLeft(Math.ceil(WAITING_MINUTES - passed)));
  release(turn, zone, BECAUSE.timePassed(WAITING_MINUTES));
}

function release(turn: Turn, zone: ZoneId, why: string): void {
  if (turn.context.gate !== undefined) return void turn.say('answer', SAY.gatedProof);
  turn.move(zone, 'released', why);
  turn.say('answer', SAY.provenDead);
}

/** A word that something is discharged: the number is what counts, and only where it reads dead. */
export function takeDischarged(turn: Turn, zone: ZoneId): void {
  const reads = READ_DEAD.includes(turn.context.energy[provedWith(zone)]);
  const [next] = unreadSections(provedWith(zone), turn.context);
  const read = next === undefined ? SAY.discharged : SAY.dischargedNow(next.at);
  const words = reads ? read : SAY.dischargedLive(provedWith(zone));
  turn.say(reads ? 'readback' : 'warning', words);
}

/** A section that turned up, or is open again, under a unit that was proven dead: it reads dead at most. */
export function doubtUnreadSections(turn: Turn): void {
  const zone = 'outdoor-load';
  if (turn.context.energy[zone] !== 'proven-dead') return;
  const unread = unreadSections(zone, turn.context);
  if (unread.length === 0) return;
  const why = BECAUSE.sectionUnread;
  for (const section of unread) turn.move(section.zone, 'reported-off', why);
  turn.move(zone, 'charge-doubted', why);
  turn.say('warning', SAY.chargeOpen(zone));
}
