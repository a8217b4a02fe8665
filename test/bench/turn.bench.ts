import { readFileSync } from 'node:fs';
import { transition } from 'xstate';
import { newVisit, visitMachine, visitOf } from '../../client/visit/chart/machine.ts';
import type { VisitEvent } from '../../grammar/visit/events.ts';
import { factsOf } from '../../grammar/visit/facts-of.ts';
import type { VisitInput } from '../../grammar/visit/inputs.ts';
import { type Bench, type Figure, median, quantile } from './figures.ts';

const VISITS = ['library', 'fuse', 'low-charge', 'one-pole'] as const;
/** An answer within a tenth of a second feels immediate (Nielsen, Usability Engineering, 1993, from memory). */
const IMMEDIATE_MS = 100;

function eventsOf(name: string): readonly VisitEvent[] {
  const text = readFileSync(`fixtures/visits/${name}/events.jsonl`, 'utf8');
  return text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as VisitEvent);
}

/** What one turn of the machine takes, over the recorded visits, and taking a visit up again from its record. */
export const bench: Bench = async (options) => {
  const rounds = Number(options.get('rounds') ?? 20);
  const visits = VISITS.map(eventsOf);
  const turns: number[] = [];
  const restores: number[] = [];
  const parses: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    for (const events of visits) {
      const inputs = events.flatMap((event): VisitInput[] => (event.type === 'input.taken' ? [event.input] : []));
      let snapshot = newVisit();
      for (const input of inputs) {
        const start = performance.now();
        snapshot = transition(visitMachine, snapshot, input)[0];
        if (round > 0) turns.push(performance.now() - start);
      }
      const bodies = events.map((event) => JSON.stringify(event));
      const start = performance.now();
      const parsed = bodies.map((body) => JSON.parse(body) as VisitEvent);
      const middle = performance.now();
      visitOf(factsOf(parsed));
      if (round > 0) restores.push(performance.now() - middle);
      if (round > 0) parses.push(middle - start);
    }
  }
  const figures: Figure[] = [
    { name: 'one turn, median', value: median(turns), unit: 'ms', against: `${IMMEDIATE_MS} ms feel immediate` },
    { name: 'one turn, 95 %', value: quantile(turns, 0.95), unit: 'ms', against: `${IMMEDIATE_MS} ms` },
    { name: 'one turn, longest', value: Math.max(...turns), unit: 'ms', against: `${IMMEDIATE_MS} ms` },
    {
      name: 'a whole visit from its events, median',
      value: median(restores),
      unit: 'ms',
      against: `reading its JSON ${median(parses).toFixed(2)} ms`,
    },
  ];
  return figures;
};
