import type { Meaning, Report } from '../../grammar/phrases/meaning.ts';
import type { VisitOutcome } from '../../grammar/visit/events.ts';
import type { FaultId } from '../../grammar/vocabulary/faults.ts';
import type { FittedPartId, PartId } from '../../grammar/vocabulary/parts.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../visit/chart/context.ts';
import { handsAtPart, handsAtWork } from '../visit/rules/hands-at.ts';
import { handsToldBy } from '../visit/rules/hands-told.ts';
import { READ_DEAD } from '../visit/rules/isolation.ts';
import { CHARGE, mendedBy, repairedBy } from '../visit/rules/repairs.ts';
import { workWords } from '../words/things/job-words.ts';
import { meaningWords } from '../words/things/meaning-words.ts';
import { partWords } from '../words/things/part-words.ts';
import type { ExerciseDeed } from './exercise-log.ts';
import { type Stop, stopsHands, stopsReturn, stopsStart } from './judge-safety.ts';
import type { SimulatedUnit } from './simulated-unit.ts';

/** What a sentence does to the unit: stopped before it is done, or done, with what was mended by it. */
export interface Effect {
  readonly stop?: Stop;
  readonly mended?: Extract<ExerciseDeed, { type: 'mended' }>;
}

const NOTHING: Effect = {};

/** Does to the unit what the words say was done, unless it would hurt. Readings are not among it. */
export function followWords(meaning: Meaning, heard: string, unit: SimulatedUnit, context: VisitContext): Effect {
  if (meaning.kind === 'several') return followEach(meaning.parts, heard, unit, context);
  for (const { what, zones } of handsToldBy(meaning, context)) {
    const stop = stopsHands(whereAsked(meaning, context) ?? zones, what, unit, context);
    if (stop !== undefined) return { stop };
  }
  return followTold(meaning, heard, unit, context);
}

function followTold(meaning: Meaning, heard: string, unit: SimulatedUnit, context: VisitContext): Effect {
  switch (meaning.kind) {
    case 'report':
      return followReport(meaning.report, heard, unit, context);
    case 'wire':
      followWire(meaning.wire, unit);
      return mend(unit, heard, (fault) => meaning.wire.action === 'landed' && WIRES.test(fault));
    case 'part':
      // It may yet be asked about, and be left out: what it mends is told by the record.
      unit.open.delete(`part ${meaning.part}`);
      return NOTHING;
    case 'reading':
      // Refrigerant that is weighed in is the repair of a charge.
      if (meaning.reading.quantity !== 'mass' || !(Number(meaning.reading.value) > 0)) return NOTHING;
      return mend(unit, heard, (fault) => repairedBy(CHARGE, [fault]).length > 0);
    default:
      return NOTHING;
  }
}

/** Where a finding's own repair was asked, hands are where it was proven dead. */
function whereAsked(meaning: Meaning, context: VisitContext): readonly ZoneId[] | undefined {
  const fault = context.finding?.fault;
  if (fault === undefined) return undefined;
  if (meaning.kind === 'part') return handsAtPart(meaning.part, repairedBy(meaning.part, [fault]), context);
  return meaning.kind === 'work' ? handsAtWork(meaning.work, mendedBy(meaning.work, [fault]), context) : undefined;
}

/** Faults that are mended by landing a wire. */
const WIRES = /-lead-(off|burnt)$/;

function followEach(parts: readonly Meaning[], heard: string, unit: SimulatedUnit, context: VisitContext): Effect {
  let mended: Effect = NOTHING;
  for (const part of parts) {
    const effect = followWords(part, heard, unit, context);
    if (effect.stop !== undefined) return effect;
    if (effect.mended !== undefined) mended = effect;
  }
  return mended;
}

function followWire({ action, from, to }: Extract<Meaning, { kind: 'wire' }>['wire'], unit: SimulatedUnit): void {
  const name = `${action.startsWith('jumper') ? 'jumper' : 'wire'} ${from ?? ''} ${to ?? ''}`;
  if (action === 'lifted' || action === 'jumper-on') unit.open.add(name);
  else if (action === 'jumper-off') unit.open.delete(name);
  else for (const open of [...unit.open]) if (open.startsWith('wire ')) unit.open.delete(open);
}

function followReport(report: Report, heard: string, unit: SimulatedUnit, context: VisitContext): Effect {
  switch (report.type) {
    case 'energy':
      return followSwitch(report, heard, unit, context);
    case 'observation': {
      const { observation } = report;
      if (observation === 'thermostat-calling') return giveCall(unit, heard, context);
      if (observation === 'thermostat-not-calling') unit.setCall('none');
      return NOTHING;
    }
    case 'discharged': {
      const what = heard;
      const volts = unit.voltsIn('outdoor-load');
      if (volts > 50) return { stop: { error: 'touched-live', weight: 'harm', zone: 'outdoor-load', volts, what } };
      if (!READ_DEAD.includes(context.energy['outdoor-load']))
        return { stop: { error: 'not-proven-dead', weight: 'near-miss', zone: 'outdoor-load', volts, what } };
      unit.discharge(report.zone);
      return NOTHING;
    }
    case 'part-moved':
      if (report.to === 'out') unit.open.add(`part ${report.part}`);
      else unit.open.delete(`part ${report.part}`);
      return NOTHING;
    case 'deed': {
      const leads = /^(.*)-leads-(off|on)$/.exec(report.deed);
      if (leads?.[2] === 'off') unit.open.add(`leads ${leads[1]}`);
      if (leads?.[2] === 'on') unit.open.delete(`leads ${leads[1]}`);
      return leads?.[2] === 'on' ? mend(unit, heard, (fault) => WIRES.test(fault)) : NOTHING;
    }
    default:
      return NOTHING;
  }
}

function giveCall(unit: SimulatedUnit, heard: string, context: VisitContext): Effect {
  const isFed = unit.isClosed('outdoor') && unit.isClosed('panel');
  const stop =
    (isFed ? stopsReturn('outdoor-load', heard, unit) : undefined) ?? stopsStart('call', heard, unit, context);
  if (stop !== undefined) return { stop };
  unit.setCall('cooling');
  return NOTHING;
}

function followSwitch(
  { device, place, state }: Extract<Report, { type: 'energy' }>,
  heard: string,
  unit: SimulatedUnit,
  context: VisitContext,
): Effect {
  if (device === 'thermostat-call' || place === 'thermostat') {
    if (state === 'closed') return giveCall(unit, heard, context);
    unit.setCall('none');
    return NOTHING;
  }
  if (state === 'open' || state === 'locked') {
    if (unit.isClosed(place)) unit.throw(place, false);
    return NOTHING;
  }
  if (state === 'unlocked') return NOTHING;
  const stop =
    stopsReturn(place === 'air-handler' ? 'air-handler' : 'outdoor-load', heard, unit) ??
    (place === 'air-handler' ? undefined : stopsStart('power', heard, unit, context));
  if (stop !== undefined) return { stop };
  unit.throw(place, true);
  return NOTHING;
}

/**
 * Does to the unit what was recorded and not done yet: of words that were asked about, or that told of no switch by name,
 * nothing is done before the visit has it. Hands are judged by what the visit records of them.
 */
export function followRecorded(event: VisitOutcome, unit: SimulatedUnit, context: VisitContext): Effect {
  const told = toldBy(event, unit);
  return told === undefined ? NOTHING : followTold(told, meaningWords(told) ?? event.type, unit, context);
}

function toldBy(event: VisitOutcome, unit: SimulatedUnit): Meaning | undefined {
  switch (event.type) {
    case 'switch.reported': {
      const { place, state, device = 'breaker' } = event;
      if (state === 'unknown' || event.lockOff === true || unit.isClosed(place) === (state === 'closed'))
        return undefined;
      return { kind: 'report', report: { type: 'energy', device, place, state } };
    }
    case 'observation.logged': {
      const { observation } = event;
      const isSo = observation === (unit.call === 'none' ? 'thermostat-not-calling' : 'thermostat-calling');
      const tells = observation === 'thermostat-calling' || observation === 'thermostat-not-calling';
      return tells && !isSo ? { kind: 'report', report: { type: 'observation', observation } } : undefined;
    }
    case 'wire.moved':
      return { kind: 'wire', wire: event.wire };
    case 'deed.reported':
      return { kind: 'report', report: event.deed };
    default:
      return undefined;
  }
}

/** What the record says was fitted or done: undefined where nothing was. */
export function followDone(event: VisitOutcome, unit: SimulatedUnit): Effect['mended'] {
  if (event.type === 'work.done') {
    const { work, number } = event;
    const { mended } = mend(unit, workWords(work), (fault) => mendedBy(work, [fault]).length > 0);
    return mended === undefined ? undefined : { ...mended, number };
  }
  // Refrigerant that was weighed in was followed as it was weighed.
  if (event.type !== 'part.fitted' || event.part === CHARGE) return undefined;
  return { ...followPart(event.part, event.ratings, unit), number: event.number };
}

function followPart(
  part: Exclude<FittedPartId, typeof CHARGE>,
  ratings: Readonly<Record<string, number | string>>,
  unit: SimulatedUnit,
): Extract<ExerciseDeed, { type: 'mended' }> {
  const words = partWords(part, ratings);
  const blown = isBlown(part, unit);
  if (part === 'fuse' || part === 'breaker' || part === 'control-fuse') unit.renew(part);
  const { mended } = mend(unit, words, (fault) => repairedBy(part, [fault]).length > 0);
  return { type: 'mended', what: words, cures: mended?.cures === true || blown };
}

function isBlown(part: PartId, { plant }: SimulatedUnit): boolean {
  const { contacts } = plant;
  if (part === 'fuse') return contacts.fuse1 > 1e6 || contacts.fuse2 > 1e6;
  if (part === 'control-fuse') return contacts.controlFuse > 1e6;
  return part === 'breaker' && plant.seen.has('breaker-tripped');
}

function mend(unit: SimulatedUnit, what: string, cures: (fault: FaultId) => boolean): Effect {
  const cured = unit.mend(({ cause }) => cause.called.some(cures));
  return cured ? { mended: { type: 'mended', what, cures: true } } : NOTHING;
}
