import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { Reading } from '../../grammar/vocabulary/measurement.ts';
import type { Facts, Warning } from './facts.ts';
import { evidenceOf } from './live-evidence.ts';
import { DEAD_BELOW, noteGround, notePair, noteSection, reportedOff } from './proof-rules.ts';
import {
  dcOfLive,
  deadReading,
  groundedWinding,
  insulationInVacuum,
  isShorted,
  startTooEarly,
  toShell,
  traineeWaits,
  voltageWhereOff,
  zonesOf,
} from './warning-rules.ts';

export function takeReading(facts: Facts, reading: Reading, time: InputTime): readonly Warning[] {
  const { value, quantity, at } = reading;
  facts.takeable.push(facts.sentences);
  const off = zonesOf(at).some((zone) => reportedOff(facts, zone));
  facts.latest = { of: 'reading', said: facts.sentences, quantity, at, off };
  facts.readings.push({ said: facts.sentences, quantity, at: at.join() });
  const due = [
    ...deadReading(facts, reading),
    ...insulationInVacuum(facts, reading),
    ...dcOfLive(facts, reading),
    ...traineeWaits(facts, reading),
    ...groundedWinding(reading),
  ];
  if (toShell(reading) && deadReading(facts, reading).length === 0)
    facts.fault = { ...facts.fault, windingRead: true, grounded: isShorted(reading) };
  if (quantity === 'resistance' && value === 'open' && at.every((one) => one.startsWith('fuse')) && due.length === 0)
    facts.fault = { ...facts.fault, tripped: true, said: facts.sentences };
  noteRefrigerant(facts, reading);
  if (typeof value !== 'number') return due;
  if (quantity === 'voltage') {
    due.push(...voltageWhereOff(facts, at, value));
    noteGround(facts, at, value, facts.sentences);
    if (value < DEAD_BELOW) notePair(facts, at, time, facts.sentences);
  }
  if (quantity === 'current' && value > 0 && at.includes('compressor')) due.push(...startTooEarly(facts, 'run'));
  if (quantity === 'voltage-dc') noteSection(facts, at, value, facts.sentences);
  evidenceOf(facts, { kind: 'reading', reading });
  return due;
}

/** l. "Recovered by weight; nitrogen …; vacuum; standing vacuum …; charge by weight", in this order. */
function noteRefrigerant(facts: Facts, { quantity, at, value }: Reading): void {
  if (typeof value !== 'number' || !at.includes('system')) return;
  const { circuit } = facts;
  if (quantity === 'pressure') circuit.nitrogen = true;
  if (quantity === 'vacuum') {
    circuit.vacuum = circuit.nitrogen;
    facts.inVacuum = true;
  }
  if (quantity === 'mass' && value < 0) circuit.recovered = true;
  if (quantity === 'mass' && value > 0) {
    const weighedIn = { said: facts.sentences, before: { ...circuit }, inVacuum: facts.inVacuum };
    facts.inVacuum = false;
    facts.circuit = circuit.vacuum
      ? { opened: false, recovered: false, nitrogen: false, vacuum: false, weighedIn }
      : { ...circuit, recovered: false, weighedIn };
  }
}
