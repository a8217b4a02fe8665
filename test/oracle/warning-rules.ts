import type { Meaning, Report } from '../../grammar/phrases/meaning.ts';
import type { Reading } from '../../grammar/vocabulary/measurement.ts';
import { isPoint, POINTS_BY_ID, type PointId } from '../../grammar/vocabulary/points.ts';
import { REFRIGERANT_CLASSES } from '../../grammar/vocabulary/unit-profile.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import type { Facts, Letter, OpenItem, Warning } from './facts.ts';
import {
  PART_ZONES,
  saysContactorByHand,
  saysCoverOff,
  saysFlame,
  saysHandOnShell,
  saysPartOut,
} from './heard-words.ts';
import { DEAD_BELOW, fedBy, objections, reportedOff, sections, wiredZone } from './proof-rules.ts';

type Wire = Extract<Meaning, { kind: 'wire' }>['wire'];
type Part = Extract<Meaning, { kind: 'part' }>;
type EnergyReport = Extract<Report, { type: 'energy' }>;

const due = (rule: Letter, kind: string, zone?: ZoneId): Warning => ({
  rule,
  kind,
  wants: 'said',
  ...(zone !== undefined && { zone }),
});

const notDead = (facts: Facts, zone: ZoneId): boolean => objections(facts, zone).length > 0;

/** The zones of two tips; ground, neutral, shells and frames have none. */
export function zonesOf(at: readonly (string | undefined)[]): readonly ZoneId[] {
  const zones = at.filter(isPoint).map((id: PointId) => POINTS_BY_ID[id].zone);
  return [...new Set(zones.filter((zone): zone is ZoneId => zone !== 'none').map(wiredZone))];
}

/** a. "A wire lifted or landed, … a jumper … in a zone that is not proven dead: said at once." */
export function wireWork(facts: Facts, wire: Wire): readonly Warning[] {
  return zonesOf([wire.from, wire.to])
    .filter((zone) => notDead(facts, zone))
    .map((zone) =>
      due(
        'a',
        wire.action.startsWith('jumper') ? 'jumper in a zone not proven' : 'wire moved in a zone not proven',
        zone,
      ),
    );
}

/** a. "A part out or in." */
export function partWork(facts: Facts, part: Part): readonly Warning[] {
  const zone = PART_ZONES[part.part];
  return zone !== undefined && notDead(facts, zone) ? [due('a', 'part fitted in a zone not proven', zone)] : [];
}

/** a. "Ohms, continuity or microfarads": refused; o. "On the bench is … never a compressor." */
export function deadReading(facts: Facts, reading: Reading): readonly Warning[] {
  if (!['resistance', 'capacitance', 'insulation'].includes(reading.quantity)) return [];
  const place = reading.at.join();
  const answers = facts.numberAlone && facts.benches.includes(place);
  if (reading.bench === true || place === facts.bench || answers) {
    return reading.at.some((one) => one.startsWith('comp-')) ? [due('o', 'compressor on the bench')] : [];
  }
  return zonesOf(reading.at)
    .filter((zone) => notDead(facts, zone))
    .map((zone) => due('a', 'ohms in a zone not proven', zone));
}

/** a. "A terminal cover off", "a part out"; r. and m. by the words alone. */
export function toldInWords(facts: Facts, heard: string): readonly Warning[] {
  const found: Warning[] = [];
  if (saysCoverOff(heard) && notDead(facts, 'outdoor-load'))
    found.push(due('a', 'terminal cover off in a zone not proven', 'outdoor-load'));
  const out = saysPartOut(heard);
  if (out !== undefined && notDead(facts, out)) found.push(due('a', 'part out in a zone not proven', out));
  if (saysContactorByHand(heard)) found.push(due('r', 'contactor pressed by hand'));
  if (saysHandOnShell(heard) && notDead(facts, 'outdoor-load'))
    found.push(due('r', 'hand on a hot shell', 'outdoor-load'));
  if (saysFlame(heard) && !facts.circuit.recovered) found.push(due('m', 'flame on a charged line'));
  return found;
}

/** g. "3 V or more in a zone reported off, proving, reading dead or proven dead." */
export function voltageWhereOff(facts: Facts, at: readonly PointId[], value: number): readonly Warning[] {
  const zones = zonesOf(at);
  const zone = zones[0];
  if (zone === undefined || zones.length > 1 || Math.abs(value) < DEAD_BELOW) return [];
  return reportedOff(facts, zone) || facts.proofs[zone] !== undefined
    ? [due('g', 'voltage where it was reported off')]
    : [];
}

/** g. The same of a value within a proof said in one breath. */
export function voltageInProof(facts: Facts, zone: ZoneId, values: readonly number[]): readonly Warning[] {
  return reportedOff(facts, zone) && hasVoltage(values) ? [due('g', 'voltage within a proof')] : [];
}

export function hasVoltage(values: readonly number[]): boolean {
  return values.some((value) => value >= DEAD_BELOW);
}

/** h. "D.c. from a zone that is live is asked, not taken." Unknown counts as live. */
export function dcOfLive(facts: Facts, reading: Reading): readonly Warning[] {
  const name = [...reading.at].sort().join(' ');
  const zone = (['outdoor-load', 'air-handler'] as const).find((one) => sections(facts, one).includes(name));
  if (reading.quantity !== 'voltage-dc' || zone === undefined || facts.proofs[zone]?.whole !== undefined) return [];
  return [
    { rule: 'h', kind: 'd.c. of what is live', wants: 'not-taken', zone, at: reading.at, quantity: 'voltage-dc' },
  ];
}

/** p. "Live readings and proofs that are volunteered wait for the supervisor." */
export function traineeWaits(facts: Facts, reading: Reading): readonly Warning[] {
  if (facts.role !== 'trainee' || facts.supervised || reading.quantity !== 'voltage') return [];
  const live = typeof reading.value === 'number' && reading.value >= DEAD_BELOW;
  return live ? [{ rule: 'p', kind: 'live reading of a trainee alone', wants: 'not-taken', at: reading.at }] : [];
}

/** j. "Near zero ohms: … may vent at the terminals, stay clear, do not reset." */
export function groundedWinding(reading: Reading): readonly Warning[] {
  return isShorted(reading) ? [due('j', 'grounded winding')] : [];
}

export function isShorted(reading: Reading): boolean {
  const NEAR_ZERO_OHMS = 10;
  return (
    toShell(reading) && typeof reading.value === 'number' && reading.unit === 'Ohm' && reading.value < NEAR_ZERO_OHMS
  );
}

export function toShell(reading: Reading): boolean {
  return (
    ['resistance', 'insulation'].includes(reading.quantity) &&
    reading.at.includes('shell') &&
    reading.at.some((one) => one.startsWith('comp-'))
  );
}

/** l. "No insulation test … in vacuum." */
export function insulationInVacuum(facts: Facts, reading: Reading): readonly Warning[] {
  return reading.quantity === 'insulation' && facts.inVacuum ? [due('l', 'insulation test in vacuum')] : [];
}

/** Power to the outdoor unit, or at all, comes back by a switch that was told of. */
export function powerReturns(facts: Facts, report: EnergyReport): readonly Warning[] {
  if (report.state !== 'closed' || report.device === 'thermostat-call') return [];
  const outdoors = report.place === 'outdoor' || report.place === 'panel';
  return [
    ...openItems(facts, report),
    ...(outdoors ? [...resetAfterTrip(facts), ...startTooEarly(facts, 'power')] : []),
  ];
}

/** q. "Power returning with a jumper on, a wire off, a cover off or a lock still recorded: said at that moment." */
function openItems(facts: Facts, report: EnergyReport): readonly Warning[] {
  const own = `${report.device} ${report.place}`;
  const fed = fedBy(own);
  const touched = (items: readonly OpenItem[]): boolean =>
    items.some((item) => item.zones.some((zone) => fed.includes(zone)));
  const locked = Object.entries(facts.devices).some(
    ([key, device]) => key !== own && device.state === 'locked' && fedBy(key).some((zone) => fed.includes(zone)),
  );
  return [
    ...(touched(facts.jumpers) ? [due('q', 'power back with a jumper on')] : []),
    ...(touched(facts.wiresOff) ? [due('q', 'power back with a wire off')] : []),
    ...(touched(facts.coversOff) ? [due('q', 'power back with a cover off')] : []),
    ...(locked ? [due('q', 'power back with a lock recorded')] : []),
  ];
}

/** j. "Each winding to shell is read before power returns"; "a second reset is warned of, a third too". */
function resetAfterTrip(facts: Facts): readonly Warning[] {
  const { tripped, resets, windingRead, grounded } = facts.fault;
  if (!tripped) return [];
  return [
    ...(windingRead ? [] : [due('j', 'power back after a trip, windings not read')]),
    ...(grounded ? [due('j', 'power back on a grounded winding')] : []),
    ...(resets > 0 ? [due('j', 'a second reset')] : []),
  ];
}

/** l. "Power, call or compressor runs before that: warned at once." "No start in vacuum." */
export function startTooEarly(facts: Facts, how: 'power' | 'call' | 'run'): readonly Warning[] {
  if (facts.inVacuum && how === 'run') return [due('l', 'run in vacuum')];
  return facts.circuit.opened ? [due('l', `${how} with the refrigerant circuit not closed`)] : [];
}

/** k. "Above the plate's maximum, or, plate unread, above 225 % of the compressor's rated amps plus the other loads." */
export function oversized(facts: Facts, part: Part): readonly Warning[] {
  const amps = part.ratings['amps'];
  if ((part.part !== 'fuse' && part.part !== 'breaker') || typeof amps !== 'number') return [];
  const UNREAD_OTHER_LOADS = 3;
  const others = facts.unit.fanMotor?.fla ?? UNREAD_OTHER_LOADS;
  const most = facts.maxOvercurrent ?? (facts.rla === null ? Number.POSITIVE_INFINITY : 2.25 * facts.rla + others);
  return amps > most ? [{ rule: 'k', kind: 'overcurrent device too large', wants: 'doubted' }] : [];
}

/** m. "Flammable is said as such": when it is learnt. */
export function flammable(refrigerant: unknown): readonly Warning[] {
  const classes: Readonly<Record<string, string>> = REFRIGERANT_CLASSES;
  return typeof refrigerant === 'string' && (classes[refrigerant] ?? 'A1') !== 'A1'
    ? [due('m', 'flammable refrigerant')]
    : [];
}

/** r. "A bypassed pressure switch." */
export function bypass(wire: Wire): readonly Warning[] {
  const over = (name: string): boolean => [wire.from, wire.to].every((end) => end?.startsWith(name) === true);
  return wire.action === 'jumper-on' && (over('high-switch') || over('low-switch'))
    ? [due('r', 'pressure switch bypassed')]
    : [];
}

/** f with g: evidence of power, in words, against a zone that was proven dead: hands off. */
export function powerAgainstProof(proven: readonly ZoneId[]): readonly Warning[] {
  return proven.length > 0 ? [{ ...due('f', 'power back where it was proven dead'), ends: proven }] : [];
}

/** f. "Someone was hurt." */
export function hurt(): readonly Warning[] {
  return [due('f', 'somebody is hurt')];
}
