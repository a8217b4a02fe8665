import { describe, expect, it } from 'vitest';
import { visitOf } from '../../../client/visit/chart/machine.ts';
import { phaseAfter, phaseChart } from '../../../client/visit/chart/phase-chart.ts';
import {
  conductorChart,
  type EnergyChart,
  type EnergyMove,
  energyAfter,
  sectionChart,
} from '../../../client/visit/chart/zone-energy.ts';
import { ARRIVE_PLAN, PROVE_PLAN } from '../../../client/visit/steps/plans.ts';
import type { Phase } from '../../../grammar/visit/events.ts';
import { REPAIR } from '../../../grammar/visit/evolve.ts';
import { noFacts, type VisitFacts } from '../../../grammar/visit/facts.ts';
import type { EnergyState } from '../../../grammar/vocabulary/zones.ts';

type Moves = Readonly<Record<EnergyMove, EnergyState>>;

/** Where each move leads from each state, and why it may; what is not written moves nothing. */
const CONDUCTORS: Readonly<Record<EnergyState, Moves>> = {
  unknown: moves('unknown', { live: 'live', 'reported-off': 'reported-off' }),
  live: moves('live', { 'reported-off': 'reported-off', doubted: 'unknown' }),
  // A word alone, and from it only numbers lead on: begun with the meter, or all in one breath.
  'reported-off': moves('reported-off', {
    live: 'live',
    doubted: 'unknown',
    'proof-began': 'proving',
    'read-dead': 'reads-dead',
  }),
  proving: moves('proving', { live: 'live', doubted: 'unknown', lapsed: 'reported-off', 'read-dead': 'reads-dead' }),
  // Only released charge leads to proven dead.
  'reads-dead': moves('reads-dead', {
    live: 'live',
    doubted: 'unknown',
    lapsed: 'reported-off',
    released: 'proven-dead',
  }),
  'proven-dead': moves('proven-dead', {
    live: 'live',
    doubted: 'unknown',
    lapsed: 'reported-off',
    'charge-doubted': 'reads-dead',
    asked: 'in-doubt',
  }),
  // Nobody understood what was said: only a word that it is still off brings the proof back.
  'in-doubt': moves('in-doubt', {
    live: 'live',
    doubted: 'unknown',
    lapsed: 'reported-off',
    // Two doubts at once.
    'charge-doubted': 'reported-off',
    'still-off': 'proven-dead',
  }),
};

/** A section has no conductors to prove: one reading across its terminals shows its charge. */
const SECTION: Readonly<Record<'unknown' | 'live' | 'reported-off' | 'proven-dead' | 'in-doubt', Moves>> = {
  unknown: moves('unknown', { live: 'live', 'reported-off': 'reported-off', released: 'proven-dead' }),
  live: moves('live', { 'reported-off': 'reported-off', doubted: 'unknown', released: 'proven-dead' }),
  'reported-off': moves('reported-off', { live: 'live', doubted: 'unknown', released: 'proven-dead' }),
  'proven-dead': moves('proven-dead', {
    live: 'live',
    doubted: 'unknown',
    lapsed: 'reported-off',
    asked: 'in-doubt',
  }),
  'in-doubt': moves('in-doubt', {
    live: 'live',
    doubted: 'unknown',
    lapsed: 'reported-off',
    'still-off': 'proven-dead',
  }),
};

function moves(stays: EnergyState, leads: Partial<Moves>): Moves {
  const all = {
    live: stays,
    doubted: stays,
    'reported-off': stays,
    'proof-began': stays,
    'read-dead': stays,
    released: stays,
    'charge-doubted': stays,
    lapsed: stays,
    asked: stays,
    'still-off': stays,
  } satisfies Moves;
  return { ...all, ...leads };
}

describe('the energy of a zone', () => {
  const rows = (chart: EnergyChart, table: Readonly<Record<string, Moves>>) =>
    Object.entries(table).flatMap(([from, leads]) =>
      Object.entries(leads).map(([move, to]) => [from, move, to, chart] as const),
    );
  it.each([...rows(conductorChart, CONDUCTORS), ...rows(sectionChart, SECTION)])(
    'from %s by %s is %s',
    (from, move, to, chart) => {
      expect(energyAfter(chart, from as EnergyState, move as EnergyMove)).toBe(to);
    },
  );

  it('knows no other states than these', () => {
    expect(Object.keys(conductorChart.root.states).toSorted()).toEqual(Object.keys(CONDUCTORS).toSorted());
    expect(Object.keys(sectionChart.root.states).toSorted()).toEqual(Object.keys(SECTION).toSorted());
  });
});

const MOMENT = { seq: 1, time: { at: '2026-06-15T14:00:00.000Z', mono: 0 } };
const DECLINED: Partial<VisitFacts> = { items: [{ ...MOMENT, item: 'consent-refused' }] };
const ARRIVED: Partial<VisitFacts> = { settled: ARRIVE_PLAN.map(({ id }) => id) };
const FOUND: Partial<VisitFacts> = { finding: { fault: 'fan-capacitor-weak', probability: 1, evidence: [] } };
const REPAIRED: Partial<VisitFacts> = { settled: [REPAIR] };
const PROVED: Partial<VisitFacts> = { settled: [REPAIR, ...PROVE_PLAN.map(({ id }) => id)] };
const ranked = (next: readonly object[]): Partial<VisitFacts> => ({
  assessment: { version: 'v', forSeq: 0, suspects: [], next: next as never, hazards: [], done: false },
});
const NOTHING_LEFT = ranked([]);
const MORE_TO_TEST = ranked([{}]);
const BOTH = (one: Partial<VisitFacts>, other: Partial<VisitFacts>): Partial<VisitFacts> => ({ ...one, ...other });

describe('a phase, when a turn is over', () => {
  it.each([
    ['arrive', 'nothing', {}, 'arrive'],
    ['arrive', 'its questions are answered', ARRIVED, 'testing'],
    ['arrive', 'the customer declines', DECLINED, 'close'],
    ['arrive', 'a part was fitted', REPAIRED, 'prove'],
    ['testing', 'nothing', {}, 'testing'],
    ['testing', 'there is more to test', MORE_TO_TEST, 'testing'],
    ['testing', 'a finding is stated', FOUND, 'repair'],
    ['testing', 'nothing is left to test', NOTHING_LEFT, 'repair'],
    ['testing', 'the customer declines', DECLINED, 'close'],
    ['testing', 'a part was fitted', REPAIRED, 'prove'],
    ['repair', 'nothing', {}, 'repair'],
    ['repair', 'a finding stands', BOTH(FOUND, MORE_TO_TEST), 'repair'],
    ['repair', 'a part was fitted', REPAIRED, 'prove'],
    ['repair', 'the customer declines', DECLINED, 'close'],
    ['repair', 'nothing was found and there is more to test again', MORE_TO_TEST, 'testing'],
    ['prove', 'the repair stands', REPAIRED, 'prove'],
    ['prove', 'the repair was taken back', FOUND, 'repair'],
    ['prove', 'the repair is proved', PROVED, 'close'],
    ['prove', 'the customer declines', BOTH(REPAIRED, DECLINED), 'close'],
    ['close', 'the repair is proved', PROVED, 'close'],
    ['close', 'the customer declined', DECLINED, 'close'],
    ['close', 'another part was fitted', REPAIRED, 'prove'],
    ['close', 'the repair was taken back', FOUND, 'repair'],
    ['closed', 'the customer declines', DECLINED, 'closed'],
  ] as const)('of %s, where %s, is followed as it must', (phase, _why, facts, next) => {
    const { context } = visitOf({ ...noFacts(), ...(facts as Partial<VisitFacts>), phase: phase as Phase });
    expect(phaseAfter(phaseChart, context)).toBe(next);
  });

  it('knows no other phases than these', () => {
    expect(Object.keys(phaseChart.root.states)).toEqual(['arrive', 'testing', 'repair', 'prove', 'close']);
  });
});
