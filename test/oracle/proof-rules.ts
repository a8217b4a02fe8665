import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { PointId } from '../../grammar/vocabulary/points.ts';
import type { ZoneId } from '../../grammar/vocabulary/zones.ts';
import { type Facts, type Objection, type Proof, WIRED_ZONES } from './facts.ts';

/** c, g: volts; below it a pair reads dead, from it on voltage is present. */
export const DEAD_BELOW = 3;
/** c. Volts to ground from which a leg is read whole (of 115 or 120). */
export const FULL_LEG = 100;
const MS = 60_000;
const PROOF_MINUTES = 10;
const QUIET_MINUTES = 30;
const APART_MINUTES = 2;

const pair = (...at: readonly string[]): string => [...at].sort().join(' ');

/** c. Every conductor at the point of work to ground and to each other, in the order in which they are asked. */
const PAIRS: Readonly<Record<string, readonly string[]>> = {
  'outdoor-load': [
    pair('L1', 'ground'),
    pair('L2', 'ground'),
    pair('L1', 'L2'),
    pair('T1', 'ground'),
    pair('T2', 'ground'),
    pair('T1', 'T2'),
  ],
  'disconnect-line': [
    pair('disconnect-line-1', 'ground'),
    pair('disconnect-line-2', 'ground'),
    pair('disconnect-line-1', 'disconnect-line-2'),
  ],
  'air-handler': [pair('handler-L1', 'ground'), pair('handler-L2', 'ground'), pair('handler-L1', 'handler-L2')],
  // Its source is its own transformer, and its ground no reference: the one pair that power stands on.
  control: [pair('R@air-handler', 'C@air-handler')],
};

/** The devices that can take power from a zone; which of them may also hold it off is for rule w. */
const FEEDS: Readonly<Record<string, readonly string[]>> = {
  'disconnect-line': ['breaker panel'],
  'outdoor-load': ['disconnect outdoor', 'breaker panel'],
  'air-handler': ['disconnect air-handler', 'breaker air-handler', 'service-switch air-handler'],
  control: ['disconnect air-handler', 'breaker air-handler', 'service-switch air-handler'],
};

/** The zone of conductors that a zone hangs on: a capacitor section hangs on the outdoor unit. */
export function wiredZone(zone: ZoneId): ZoneId {
  return zone.startsWith('capacitor') ? 'outdoor-load' : zone;
}

/** Whether a device that feeds the zone is reported open, locked or not. */
export function reportedOff(facts: Facts, zone: ZoneId): boolean {
  return feeds(zone).some((key) => ['open', 'locked'].includes(facts.devices[key]?.state ?? ''));
}

/** Open, locked and tagged: the step before the meter is proven. */
export function lockedOff(facts: Facts, zone: ZoneId): boolean {
  return locksOf(facts, zone).length > 0;
}

function locksOf(facts: Facts, zone: ZoneId): readonly string[] {
  return feeds(zone).filter((key) => facts.devices[key]?.state === 'locked');
}

/** The zones that a device feeds. */
export function fedBy(key: string): readonly ZoneId[] {
  return WIRED_ZONES.filter((zone) => feeds(zone).includes(key));
}

function feeds(zone: ZoneId): readonly string[] {
  return FEEDS[wiredZone(zone)] ?? [];
}

/** w. "A proof ends only where power can reach": the zones that a device feeds and no other lock holds off. */
export function reachedFrom(facts: Facts, key: string): readonly ZoneId[] {
  return WIRED_ZONES.filter(
    (zone) =>
      feeds(zone).includes(key) &&
      !feeds(zone).some((other) => other !== key && facts.devices[other]?.state === 'locked'),
  );
}

/** f. "The proof of every zone that it can touch ends at once." */
export function endProof(facts: Facts, zones: readonly ZoneId[], because: Objection): void {
  for (const zone of new Set(zones.map(wiredZone))) {
    if (facts.proofs[zone] !== undefined) facts.ended[zone] = because;
    if (because.rule === 'f' || because.rule === 'g') facts.doubted.push(...feeds(zone).flatMap(fedBy));
    delete facts.proofs[zone];
    for (const section of sections(facts, zone)) delete facts.discharged[section];
  }
}

/** n. "Every capacitor present is a section that is read (start and hard-start ones too)." */
export function sections(facts: Facts, zone: ZoneId): readonly string[] {
  if (zone === 'capacitor-herm') return [pair('cap-C', 'cap-HERM')];
  if (zone === 'capacitor-fan') return [pair('cap-C', 'cap-FAN')];
  if (zone === 'capacitor-start') return facts.startCapacitor ? [pair('start-cap-1', 'start-cap-2')] : [];
  if (zone === 'outdoor-load')
    return (['capacitor-herm', 'capacitor-fan', 'capacitor-start'] as const).flatMap((one) => sections(facts, one));
  const drivenByElectronics = facts.unit.blowerDrive === 'electronic';
  return zone === 'air-handler' && !drivenByElectronics ? [pair('blower-cap-1', 'blower-cap-2')] : [];
}

/** c. "The reference leg and ground are read before isolation": v says that a ground outdoors proves none indoors. */
export function noteGround(facts: Facts, at: readonly PointId[], value: number, said: number): void {
  if (!at.includes('ground') || value < FULL_LEG) return;
  const zone = at.some((one) => /^(handler|blower|transformer-primary)/.test(one)) ? 'indoors' : 'outdoors';
  // v: under a locked disconnect the breaker still feeds its line side, and that leg is there to read.
  const lineSide = at.some((one) => one.startsWith('disconnect-line'));
  const hangsOn = zone === 'indoors' ? 'air-handler' : lineSide ? 'disconnect-line' : 'outdoor-load';
  if (!lockedOff(facts, hangsOn) || facts.doubted.includes(hangsOn)) facts.grounds[zone].push(said);
}

/** c, d. "Meter, pairs, meter": the meter proven, first, in between or again, within 10 minutes of the first. */
export function proveMeter(
  facts: Facts,
  value: number,
  time: InputTime,
  said: number,
  zones: readonly ZoneId[] = WIRED_ZONES,
): void {
  const LEAST_SOURCE = 20;
  for (const zone of zones) {
    const proof = facts.proofs[zone];
    if (proof?.whole !== undefined) continue;
    if (proof !== undefined && !inTime(proof, time)) endProof(facts, [zone], TOO_LONG);
    delete facts.proofs[zone];
    if (value < LEAST_SOURCE || !lockedOff(facts, zone) || !callOff(facts, zone)) continue;
    if (proof !== undefined && inTime(proof, time) && missing(zone, proof).length === 0) {
      facts.proofs[zone] = { ...proof, whole: said };
      delete facts.ended[zone];
    } else if (proof !== undefined && inTime(proof, time) && Object.keys(proof.pairs).length > 0)
      facts.proofs[zone] = proof;
    else facts.proofs[zone] = { said, began: time.mono, locks: locksOf(facts, zone), pairs: {} };
  }
}

/** The call is off before the proof of what it can start. */
function callOff(facts: Facts, zone: ZoneId): boolean {
  return zone === 'disconnect-line' || zone === 'air-handler' || facts.call?.on === false;
}

/** c. "One value counts once", for the pair that was named. Only volts come here. */
export function notePair(facts: Facts, at: readonly PointId[], time: InputTime, said: number): void {
  for (const zone of WIRED_ZONES) {
    const proof = facts.proofs[zone];
    if (proof === undefined || proof.whole !== undefined || !PAIRS[zone]?.includes(pair(...at))) continue;
    if (inTime(proof, time)) proof.pairs[pair(...at)] = said;
    else endProof(facts, [zone], TOO_LONG);
  }
}

/** c. Said in one breath, in the order asked or with each pair named once. */
export function noteBreath(
  facts: Facts,
  zone: ZoneId,
  values: readonly number[],
  named: readonly string[],
  time: InputTime,
  said: number,
): void {
  const proof = facts.proofs[zone];
  if (proof === undefined) facts.ended[zone] = NOT_IN_ORDER;
  if (proof === undefined || proof.whole !== undefined) return;
  const asked = PAIRS[zone] ?? [];
  // Only the outdoor unit's conductors are named in a breath; what is not named belongs to what is still missing.
  const order = named.length === 0 || zone !== 'outdoor-load' ? missing(zone, proof) : named;
  if (order === named && named.length !== values.length) return;
  values.forEach((_, index) => {
    const tips = order[index];
    if (tips !== undefined && asked.includes(tips) && inTime(proof, time)) proof.pairs[tips] = said;
  });
}

/** d. "Meter, pairs, meter within 10 minutes, else it starts again." */
function inTime(proof: Proof, time: InputTime): boolean {
  return time.mono - proof.began <= PROOF_MINUTES * MS;
}

const TOO_LONG: Objection = { rule: 'd', reason: 'its proof took longer than 10 minutes' };

function missing(zone: ZoneId, proof: Proof): readonly string[] {
  return (PAIRS[zone] ?? []).filter((one) => proof.pairs[one] === undefined);
}

/** n. "A section that is read"; h: what is read before the unit reads dead is no proof of it. */
export function noteSection(facts: Facts, at: readonly PointId[], value: number, said: number): void {
  const name = pair(...at);
  const zone = WIRED_ZONES.find((one) => sections(facts, one).includes(name));
  if (zone === undefined) return;
  if (value < DEAD_BELOW && facts.proofs[zone]?.whole !== undefined) facts.discharged[name] = said;
  else delete facts.discharged[name];
}

/** c, n. "A corrected one reopens its pair", "taking its reading back reopens it"; by `said` only what came from it. */
export function reopen(facts: Facts, at: readonly PointId[], said?: number): void {
  const name = pair(...at);
  const meant = (one: number | undefined): boolean => one !== undefined && (said === undefined || one === said);
  if (meant(facts.discharged[name])) delete facts.discharged[name];
  for (const zone of WIRED_ZONES) {
    const proof = facts.proofs[zone];
    if (proof === undefined || !meant(proof.pairs[name])) continue;
    if (proof.whole === undefined) delete proof.pairs[name];
    else endProof(facts, [zone], CORRECTED);
  }
}

/** c. Of values said in one breath a correction may mean each: all are reopened. */
export function reopenBreath(facts: Facts, zone: ZoneId): void {
  endProof(facts, [zone], CORRECTED);
}

/** d. The meter that opened or closed a proof read something else: the proof is gone. */
export function reopenMeter(facts: Facts, said: number): void {
  for (const zone of WIRED_ZONES) {
    const proof = facts.proofs[zone];
    if (proof?.said === said || proof?.whole === said) endProof(facts, [zone], CORRECTED);
  }
}

const CORRECTED: Objection = { rule: 'c', reason: 'a pair of the proof was corrected' };

/** e. "Wall clock back, wall and monotonic clock apart by more than 2 minutes, a gap in the record: the proof lapses." */
export function lapseByTime(facts: Facts, time: InputTime): boolean {
  const { last, present } = facts;
  if (last === null) return false;
  const wall = Date.parse(time.at) - Date.parse(last.at);
  const mono = time.mono - last.mono;
  const quiet = present === null ? 0 : time.mono - present.mono;
  const because =
    wall < 0 || mono < 0
      ? 'the clock went back'
      : Math.abs(wall - mono) > APART_MINUTES * MS
        ? 'the clocks went apart'
        : facts.reloaded && wall > APART_MINUTES * MS
          ? 'there is a gap in the record'
          : quiet > QUIET_MINUTES * MS
            ? 'nobody was there for 30 minutes'
            : undefined;
  if (because === undefined) return false;
  const proven = WIRED_ZONES.some((zone) => facts.proofs[zone]?.whole !== undefined);
  endProof(facts, WIRED_ZONES, { rule: 'e', reason: because });
  return proven;
}

/** Why a zone may not be called proven dead; none: it may. */
export function objections(facts: Facts, zone: ZoneId): readonly Objection[] {
  const wired = wiredZone(zone);
  const proof = facts.proofs[wired];
  const ended = facts.ended[wired];
  if (proof === undefined) return [ended ?? NOT_IN_ORDER];
  if (proof.whole === undefined)
    return [Object.keys(proof.pairs).length > 0 ? half(wired, proof) : (ended ?? half(wired, proof))];
  const found: Objection[] = [];
  if (!proof.locks.some((one) => facts.devices[one]?.state === 'locked'))
    found.push({ rule: 'f', reason: 'no lock that it was proven behind holds it off' });
  // v: behind a tripped breaker there is no live leg to read a ground with.
  const hasNoLeg = wired !== 'air-handler' && facts.fault.tripped && facts.fault.breaker === true;
  if (wired !== 'control' && !hasNoLeg && facts.grounds[wired === 'air-handler' ? 'indoors' : 'outdoors'].length === 0)
    found.push({ rule: 'c', reason: 'its ground never read a full leg' });
  if (facts.role === 'trainee' && !facts.supervised)
    found.push({ rule: 'p', reason: 'a trainee alone proves nothing' });
  if (sections(facts, zone).some((one) => facts.discharged[one] === undefined))
    found.push({ rule: 'n', reason: 'a charged section is not read' });
  return found;
}

/** c. Call off, locked off, meter proven: before the first pair. */
const NOT_IN_ORDER: Objection = { rule: 'c', reason: 'its proof was not begun in order' };

function half(zone: ZoneId, proof: Proof): Objection {
  return missing(zone, proof).length > 0
    ? { rule: 'c', reason: 'not every pair was read' }
    : { rule: 'd', reason: 'the meter was not proven again' };
}
