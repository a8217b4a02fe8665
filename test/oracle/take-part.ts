import type { Meaning } from '../../grammar/phrases/meaning.ts';
import type { InputTime } from '../../grammar/visit/inputs.ts';
import type { Facts, Warning } from './facts.ts';
import { endProof, reachedFrom } from './proof-rules.ts';
import { takeBack, takeCorrection } from './take-back.ts';
import { takeReading } from './take-reading.ts';
import { openCircuit, takeReport } from './take-report.ts';
import { bypass, flammable, oversized, partWork, wireWork, zonesOf } from './warning-rules.ts';

export function takePart(facts: Facts, part: Meaning, words: string, time: InputTime): readonly Warning[] {
  switch (part.kind) {
    case 'reading':
      return takeReading(facts, part.reading, time);
    case 'report':
      return takeReport(facts, part.report, words, time);
    case 'wire':
      return takeWire(facts, part);
    case 'part':
      return takeFitted(facts, part);
    case 'nameplate':
      facts.takeable.push(facts.sentences);
      if (part.field === 'max-overcurrent' && typeof part.value === 'number') facts.maxOvercurrent = part.value;
      if (part.field === 'rla' && typeof part.value === 'number') facts.rla = part.value;
      return part.field === 'refrigerant' ? flammable(part.value) : [];
    case 'work':
      return takeWork(facts, part.work);
    case 'value':
      // A number alone belongs to what was asked, which is not known here: what a correction would set right is not either.
      facts.latest = null;
      return [];
    case 'command':
      return part.command === 'correct' ? takeCorrection(facts, part.correction) : command(facts, part.command, time);
    default:
      return [];
  }
}

function takeWire(facts: Facts, { wire }: Extract<Meaning, { kind: 'wire' }>): readonly Warning[] {
  const due = [...wireWork(facts, wire), ...bypass(wire)];
  facts.takeable.push(facts.sentences);
  const item = { said: facts.sentences, zones: zonesOf([wire.from, wire.to]) };
  if (wire.action === 'jumper-on') facts.jumpers.push(item);
  if (wire.action === 'jumper-off') facts.jumpers = [];
  if (wire.action === 'lifted' && wire.to === undefined) facts.wiresOff.push(item);
  if (wire.action === 'landed') facts.wiresOff = [];
  return due;
}

function takeFitted(facts: Facts, part: Extract<Meaning, { kind: 'part' }>): readonly Warning[] {
  const due = [...partWork(facts, part), ...oversized(facts, part)];
  facts.takeable.push(facts.sentences);
  if (part.part === 'hard-start') facts.startCapacitor = true;
  const opens = ['compressor', 'filter-drier', 'expansion-valve', 'reversing-valve', 'valve-core'];
  if (opens.includes(part.part)) openCircuit(facts);
  return due;
}

function takeWork(facts: Facts, work: Extract<Meaning, { kind: 'work' }>['work']): readonly Warning[] {
  facts.takeable.push(facts.sentences);
  if (work === 'leak-repaired') openCircuit(facts);
  if (work === 'supply-restored')
    endProof(facts, reachedFrom(facts, 'breaker panel'), { rule: 'f', reason: 'the supply was restored' });
  if (work === 'door-closed') endProof(facts, ['control'], { rule: 'f', reason: 'the door switch is closed' });
  return [];
}

/** An order to take back, or an answer to what was asked. */
export function command(facts: Facts, command: string, time: InputTime): readonly Warning[] {
  if (command === 'take-back') takeBack(facts);
  if (command === 'yes') confirm(facts, time);
  if (command === 'no') refuse(facts);
  return [];
}

/** An answer "no" can have set the latest reading aside, which was asked in a doubt: a correction is then of an older one. */
function refuse(facts: Facts): void {
  facts.pending.shift();
  if (facts.latest?.of === 'reading') facts.latest = { ...facts.latest, off: false };
}

/** An answer "yes" takes what was asked; only a reading of volts can count in a proof by that. */
function confirm(facts: Facts, time: InputTime): void {
  const pending = facts.pending.shift();
  if (pending === undefined || !pending.mayCount) return;
  for (const part of pending.meanings as readonly Meaning[]) takePart(facts, part, '', time);
}
