import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import { repairsMade, standingReadings } from '../../../grammar/visit/standing.ts';
import type { Evidence } from '../../diagnosis/diagnosis.ts';

/** What the diagnosis is told: readings and looks that stand, and what was cured, in their order. */
export function evidenceOf(facts: VisitFacts): readonly Evidence[] {
  const readings = standingReadings(facts).map(
    ({ number, reading, under }): Evidence => ({
      seq: number,
      kind: 'reading',
      quantity: reading.quantity,
      at: reading.at,
      value: reading.value,
      unit: reading.unit,
      power: under.power,
      call: under.call,
      bench: reading.bench === true,
    }),
  );
  const looks = facts.observations.map(
    ({ number, observation, under }): Evidence => ({
      seq: number,
      kind: 'observation',
      observation,
      power: under.power,
      call: under.call,
      bench: false,
    }),
  );
  const cured = repairsMade(facts).flatMap(({ number, repairs }) =>
    repairs.map((fault): Evidence => ({ seq: number, kind: 'repair', fault })),
  );
  return [...readings, ...looks, ...cured].toSorted((a, b) => a.seq - b.seq);
}
