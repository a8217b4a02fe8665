import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { capital, nameplateWords, partWords, SAY, wireWords } from '../prompts.ts';
import { repairedBy } from '../repairs.ts';
import type { Turn } from '../turn.ts';
import { gateUnit } from './gate-unit.ts';
import { withNameplate } from './nameplate.ts';

type Of<K extends Meaning['kind']> = Extract<Meaning, { kind: K }>;

/** A nameplate value beats every default from then on, and the diagnosis is asked again for the unit it describes. */
export function takeNameplate(turn: Turn, plate: Of<'nameplate'>): void {
  const read = { ...turn.context.plate, [plate.field]: plate.value };
  turn.record({
    type: 'nameplate.logged',
    field: plate.field,
    value: plate.value,
    ...(plate.unit === undefined ? {} : { unit: plate.unit }),
  });
  turn.set({
    plate: read,
    unit: withNameplate(turn.context.unit, read),
    evidenceNumber: turn.context.evidenceNumber + 1,
  });
  turn.say('readback', nameplateWords(plate.field, plate.value, plate.unit));
  gateUnit(turn);
}

/** A part fitted: what it cures restarts the diagnosis from the readings that still hold, and the proof begins. */
export function takePart(turn: Turn, part: Of<'part'>): void {
  const { context } = turn;
  const suspects = context.assessment?.suspects.map((suspect) => suspect.fault) ?? [];
  const repairs = repairedBy(
    part.part,
    context.finding === undefined ? suspects : [context.finding.fault, ...suspects],
  );
  const words = partWords(part.part, part.ratings);
  turn.record({ type: 'part.fitted', part: part.part, ratings: part.ratings, repairs });
  const number = context.readingCount + 1;
  turn.set({
    readingCount: number,
    parts: [...context.parts, words],
    evidence: [...context.evidence, ...repairs.map((fault) => ({ seq: number, kind: 'repair' as const, fault }))],
    evidenceNumber: context.evidenceNumber + 1,
    settled: [
      ...context.settled.filter((id) => !id.startsWith('prove.') && id !== 'energy.covers-on'),
      'repair.part-fitted',
    ],
  });
  turn.say('readback', `Fitted: ${words}.`);
  turn.raise({ type: 'phase.go', to: 'prove' });
}

export function takeWire(turn: Turn, { wire }: Of<'wire'>): void {
  turn.record({ type: 'wire.moved', wire });
  turn.set({ wires: [...turn.context.wires, wire] });
  turn.say('readback', `${capital(wireWords(wire))}.`);
}

export function takeNote(turn: Turn, text: string): void {
  turn.record({ type: 'note.taken', text });
  turn.set({ notes: [...turn.context.notes, text] });
  turn.say('readback', SAY.noted);
}
