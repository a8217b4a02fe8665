import { ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { ActionDone, Step, VisitContext } from '../chart/context.ts';
import { actionStep } from './plans.ts';

/**
 * Ways to a state of the unit: a switch, a call, a proof. One that the technician cannot go, or passes, is not asked
 * again for the next thing that wants it; what is told of it later opens it anew.
 */
const WAYS: readonly ActionDone[] = [
  'call-on',
  'call-off',
  'power-off',
  'breaker-off',
  'disconnect-locked',
  'power-on',
  'absence-proved',
  'capacitors-discharged',
  'charge-left',
  'wires-landed',
  'tug-tested',
  'covers-on',
];
/** What leads to a dead zone, from its switch on. */
const TO_DEAD: readonly ActionDone[] = [
  'power-off',
  'breaker-off',
  'absence-proved',
  'capacitors-discharged',
  'charge-left',
];

/** The way that a step belongs to, by its id: a pair belongs to its proof, a section to its discharge. */
export function wayOf({ id, source, ask, zone }: Step): string | undefined {
  if (source !== 'energy') return undefined;
  if (id.startsWith('energy.pair@')) return actionStep('absence-proved', zone).id;
  if (id.startsWith('energy.section@')) return actionStep('capacitors-discharged', 'outdoor-load').id;
  if (id.startsWith('energy.ground@') || id.startsWith('energy.winding-')) return id;
  if (ask.kind !== 'action') return undefined;
  if (ask.done === 'meter-again') return actionStep('absence-proved', zone).id;
  return WAYS.includes(ask.done) ? id : undefined;
}

/** The ways to a dead zone. */
export function waysToDead(zone: ZoneId): readonly Step[] {
  return TO_DEAD.map((done) => actionStep(done, zone));
}

/** Whether a step is a way that was given up, and nothing told of it since. */
export function isGivenUp(step: Step, { parked, settled }: VisitContext): boolean {
  const way = wayOf(step);
  return way !== undefined && !settled.includes(way) && parked.some((one) => one.step === way);
}

/** The ways that were given up, as steps. */
export function waysGivenUp(context: VisitContext): readonly Step[] {
  if (context.parked.length === 0) return [];
  return WAYS.flatMap((done) => (['none', ...ZONES] as const).map((zone) => actionStep(done, zone))).filter((step) =>
    isGivenUp(step, context),
  );
}
