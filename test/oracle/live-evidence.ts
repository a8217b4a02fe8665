import type { Meaning, Report } from '../../grammar/phrases/meaning.ts';
import type { Reading } from '../../grammar/vocabulary/measurement.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import { ZONES, type ZoneId } from '../../grammar/vocabulary/zones.ts';
import { type Facts, WIRED_ZONES } from './facts.ts';
import { DEAD_BELOW, endProof, objections, reachedFrom } from './proof-rules.ts';
import { hasVoltage, zonesOf } from './warning-rules.ts';

/** Zones that were proven dead before, and are not after. */
export function provenEndedBy(facts: Facts, act: () => void): readonly ZoneId[] {
  const before = ZONES.filter((zone) => objections(facts, zone).length === 0);
  act();
  return before.filter((zone) => objections(facts, zone).length > 0);
}

export type EnergyReport = Extract<Report, { type: 'energy' }>;

/** f, g. Live evidence in a reading: the proof of its zones ends, asked or taken. */
export function evidenceOf(facts: Facts, part: Meaning): void {
  if (part.kind === 'report') {
    const { report } = part;
    if (report.type === 'injury') endProof(facts, WIRED_ZONES, { rule: 'f', reason: 'somebody is hurt' });
    if (report.type === 'energy' && (report.state === 'closed' || report.state === 'unlocked')) switched(facts, report);
    if (report.type === 'observation') runs(facts, report.observation);
    if (report.type === 'absence-of-voltage' && hasVoltage(report.values))
      endProof(facts, [report.zone], { rule: 'g', reason: 'there is live evidence' });
  }
  if (part.kind === 'reading' && isLive(part.reading))
    endProof(facts, zonesOf(part.reading.at), { rule: 'g', reason: 'there is live evidence' });
}

function isLive(reading: Reading): boolean {
  const { value, quantity } = reading;
  if (typeof value !== 'number') return false;
  return (quantity === 'voltage' && value >= DEAD_BELOW) || (quantity === 'current' && value > 0);
}

/** f, w. A switch or lock that came back ends what it reaches. */
export function switched(facts: Facts, report: EnergyReport): void {
  const because = { rule: 'f', reason: 'its power or lock came back' } as const;
  if (report.device === 'thermostat-call') endProof(facts, ['control'], because);
  else {
    const key = `${report.device} ${report.place}`;
    delete facts.devices[key];
    endProof(facts, reachedFrom(facts, key), because);
  }
}

/** f. "That a part runs, hums or lights up." */
export function runs(facts: Facts, observation: ObservationId): readonly ZoneId[] {
  return provenEndedBy(facts, () => endBy(facts, observation));
}

function endBy(facts: Facts, observation: ObservationId): void {
  const outdoors: readonly ObservationId[] = [
    'compressor-running',
    'compressor-hums-and-trips',
    'compressor-runs-then-trips',
    'fan-turning',
    'fan-hums',
  ];
  const because = { rule: 'f', reason: 'a part runs' } as const;
  if (outdoors.includes(observation)) endProof(facts, ['disconnect-line', 'outdoor-load'], because);
  if (observation === 'blower-running') endProof(facts, ['air-handler', 'control'], because);
  if (observation === 'contactor-pulled-in' || observation === 'thermostat-calling')
    endProof(facts, ['control'], because);
  if (observation === 'disconnect-in') endProof(facts, ['outdoor-load'], because);
  if (observation === 'breaker-on') endProof(facts, reachedFrom(facts, 'breaker panel'), because);
}
