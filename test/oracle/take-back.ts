import type { Meaning } from '../../grammar/phrases/meaning.ts';
import { type Facts, type Warning, WIRED_ZONES } from './facts.ts';
import { DEAD_BELOW, endProof, FULL_LEG, reopen, reopenBreath, reopenMeter } from './proof-rules.ts';
import { voltageWhereOff, zonesOf } from './warning-rules.ts';

/** c. "A corrected one reopens its pair"; a value of 3 V or more there is live. */
export function takeCorrection(
  facts: Facts,
  correction: Extract<Meaning, { kind: 'command' }>['correction'],
): readonly Warning[] {
  const { latest } = facts;
  const isAsked = facts.pending.length > 0;
  facts.pending.shift();
  if (latest === null || correction === undefined) return [];
  if (latest.of === 'breath') {
    reopenBreath(facts, latest.zone);
    return [];
  }
  if (latest.of === 'meter') {
    reopenMeter(facts, latest.said);
    return [];
  }
  const { weighedIn } = facts.circuit;
  if (latest.quantity === 'mass' && correction.value === 0 && weighedIn?.said === latest.said) {
    facts.circuit = weighedIn.before;
    facts.inVacuum = weighedIn.inVacuum;
  }
  // A number in another unit sets nothing right.
  if (correction.unit === 'V' && !latest.quantity.startsWith('voltage')) return [];
  reopen(facts, latest.at, latest.said);
  if (correction.at !== undefined) reopen(facts, correction.at);
  const at = correction.at ?? latest.at;
  const value = typeof correction.value === 'number' ? correction.value : 0;
  const there = facts.readings.findLast(
    (one) => one.quantity === latest.quantity && one.at === correction.at?.join() && correction.value !== undefined,
  );
  if (correction.at !== undefined || value < FULL_LEG) forgetGround(facts, there?.said ?? latest.said);
  // What stands asked may be meant instead; and a leg read before it was switched off says nothing of what is now.
  if (latest.quantity !== 'voltage' || isAsked || !latest.off) return [];
  const due = voltageWhereOff(facts, at, value);
  if (value >= DEAD_BELOW) endProof(facts, zonesOf(at), { rule: 'g', reason: 'there is live evidence' });
  return due;
}

function forgetGround(facts: Facts, said: number): void {
  facts.grounds.indoors = facts.grounds.indoors.filter((one) => one !== said);
  facts.grounds.outdoors = facts.grounds.outdoors.filter((one) => one !== said);
}

/** c, n. What is taken back is taken back everywhere, and does not bring a proof back. */
export function takeBack(facts: Facts): void {
  if (facts.pending.length > 0) {
    facts.pending.pop();
    return;
  }
  const said = facts.takeable.at(-1);
  facts.takeable = facts.takeable.filter((one) => one !== said);
  if (said === undefined) return;
  if (facts.latest?.said === said) facts.latest = null;
  facts.readings = facts.readings.filter((one) => one.said !== said);
  const gone = { rule: 'c', reason: 'a part of the proof was taken back' } as const;
  for (const zone of WIRED_ZONES) {
    const proof = facts.proofs[zone];
    if (proof === undefined) continue;
    const held = Object.values(proof.pairs).includes(said);
    if (proof.said === said || proof.whole === said || (held && proof.whole !== undefined))
      endProof(facts, [zone], gone);
    else if (held) proof.pairs = Object.fromEntries(Object.entries(proof.pairs).filter(([, one]) => one !== said));
  }
  if (facts.circuit.openedBy?.said === said) facts.circuit = facts.circuit.openedBy.before;
  forgetGround(facts, said);
  if (facts.call?.said === said) facts.call = null;
  if (facts.fault.said === said) facts.fault.tripped = false;
  for (const [key, device] of Object.entries(facts.devices)) if (device.said === said) delete facts.devices[key];
  for (const [name, one] of Object.entries(facts.discharged)) if (one === said) delete facts.discharged[name];
  facts.jumpers = facts.jumpers.filter((item) => item.said !== said);
  facts.wiresOff = facts.wiresOff.filter((item) => item.said !== said);
  facts.coversOff = facts.coversOff.filter((item) => item.said !== said);
}
