import type { Report } from '../../grammar/phrases/meaning.ts';
import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { ObservationId } from '../../grammar/vocabulary/observations.ts';
import { type Facts, type Warning, WIRED_ZONES } from './facts.ts';
import { pairsNamed } from './heard-words.ts';
import { type EnergyReport, runs, switched } from './live-evidence.ts';
import { endProof, fedBy, noteBreath, proveMeter } from './proof-rules.ts';
import { hasVoltage, hurt, powerAgainstProof, powerReturns, startTooEarly, voltageInProof } from './warning-rules.ts';

export function takeReport(facts: Facts, report: Report, words: string, time: InputTime): readonly Warning[] {
  if (report.type !== 'meter-proof') facts.takeable.push(facts.sentences);
  switch (report.type) {
    case 'energy':
      return takeEnergy(facts, report);
    case 'meter-proof':
      facts.takeable.push(facts.sentences);
      facts.latest = { of: 'meter', said: facts.sentences };
      proveMeter(facts, report.value, time, facts.sentences);
      return [];
    case 'absence-of-voltage': {
      facts.latest = { of: 'breath', said: facts.sentences, zone: report.zone };
      const due = voltageInProof(facts, report.zone, report.values);
      if (hasVoltage(report.values)) endProof(facts, [report.zone], { rule: 'g', reason: 'there is live evidence' });
      proveMeter(facts, report.before, time, facts.sentences, [report.zone]);
      if (!hasVoltage(report.values))
        noteBreath(facts, report.zone, report.values, pairsNamed(words), time, facts.sentences);
      proveMeter(facts, report.after, time, facts.sentences, [report.zone]);
      return due;
    }
    case 'observation':
      return takeObservation(facts, report.observation);
    case 'injury':
      endProof(facts, WIRED_ZONES, { rule: 'f', reason: 'somebody is hurt' });
      return hurt();
    case 'job-item':
      if (report.item === 'circuit-opened') openCircuit(facts);
      return [];
    default:
      return [];
  }
}

function takeEnergy(facts: Facts, report: EnergyReport): readonly Warning[] {
  const key = `${report.device} ${report.place}`;
  const due = [...powerReturns(facts, report)];
  const on = report.state === 'closed' || report.state === 'unlocked';
  if (report.device === 'thermostat-call') {
    facts.call = { on, said: facts.sentences };
    if (on) due.push(...startTooEarly(facts, 'call'));
  }
  if (on) switched(facts, report);
  if (report.state === 'closed' && key === 'breaker panel') {
    if (facts.fault.tripped) facts.fault.resets += 1;
    facts.fault.breaker = false;
  }
  if (!on) facts.doubted = facts.doubted.filter((zone) => !fedBy(key).includes(zone));
  // "Pulled" of what is locked already takes no lock off.
  const before = facts.devices[key]?.state;
  if (report.state !== before && !(report.state === 'open' && before === 'locked'))
    facts.devices[key] = { state: report.state, said: facts.sentences };
  return due;
}

function takeObservation(facts: Facts, observation: ObservationId): readonly Warning[] {
  const { sentences: said } = facts;
  const ended = runs(facts, observation);
  const due = /running|hums|turning/.test(observation) ? [...powerAgainstProof(ended)] : [];
  // A blank one calls for nothing.
  if (observation === 'thermostat-not-calling' || observation === 'thermostat-blank') facts.call = { on: false, said };
  if (observation === 'thermostat-calling') {
    facts.call = { on: true, said };
    due.push(...startTooEarly(facts, 'call'));
  }
  if (observation === 'compressor-running') due.push(...startTooEarly(facts, 'run'));
  if (observation === 'covers-on') facts.coversOff = [];
  if (observation === 'breaker-tripped')
    facts.fault = { ...facts.fault, tripped: true, breaker: true, windingRead: false, said };
  return due;
}

export function openCircuit(facts: Facts): void {
  const openedBy = { said: facts.sentences, before: facts.circuit };
  facts.circuit = { ...facts.circuit, opened: true, nitrogen: false, vacuum: false, openedBy };
}
