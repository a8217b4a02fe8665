import { describe, expect, it } from 'vitest';
import { TEST_MODELS } from '../../../client/diagnosis/measuring/test-models.ts';
import { noTalk, type VisitContext } from '../../../client/visit/chart/context.ts';
import { dueCautions } from '../../../client/visit/rules/cautions-due.ts';
import { zonesAt } from '../../../client/visit/rules/zones-at.ts';
import { chooseStep, zonesToProve } from '../../../client/visit/steps/choose-step.ts';
import { holdBack } from '../../../client/visit/steps/hold-back.ts';
import { testStep } from '../../../client/visit/steps/plans.ts';
import { STANDING_RULES } from '../../../client/words/talk/caution-words.ts';
import { cautionKey, noFacts } from '../../../grammar/visit/facts.ts';
import type { RankedTest } from '../../../grammar/visit/inputs.ts';
import { TESTS, type TestId } from '../../../grammar/vocabulary/tests.ts';

/** The standing rules were told. */
const FED: VisitContext = {
  ...noFacts(),
  ...noTalk(),
  acknowledged: STANDING_RULES.map((id) => cautionKey(id, 'none')),
};
const DEAD: VisitContext = {
  ...FED,
  energy: {
    'disconnect-line': 'unknown',
    'outdoor-load': 'proven-dead',
    'capacitor-herm': 'proven-dead',
    'capacitor-fan': 'proven-dead',
    'capacitor-start': 'proven-dead',
    control: 'unknown',
    'air-handler': 'proven-dead',
  },
};

function asked(id: TestId): RankedTest {
  const { quantity, at, needs, minutes, hazards, measure } = TEST_MODELS[id];
  const answers = measure.kind === 'look' ? { answers: measure.answers } : {};
  return { id, quantity, at, needs, minutes, hazards, ...answers } as RankedTest;
}

/** With this test as the planner's best, the phase being testing and the diagnosis fresh. */
function nextIs(id: TestId, context: VisitContext): VisitContext {
  const assessment = { version: 'x', forSeq: 0, suspects: [], next: [asked(id)], hazards: [], done: false };
  return { ...context, phase: 'testing', evidenceNumber: 0, assessment };
}

const LOOKS = TESTS.map(({ id }) => id).filter((id) => TEST_MODELS[id].function === 'look');
const WANT_POWER_OFF = LOOKS.filter((id) => TEST_MODELS[id].needs.power === 'off');

describe('a look that wants power off', () => {
  it('is one of contacts, capacitor, and a fan turned by hand', () => {
    expect(WANT_POWER_OFF.toSorted()).toEqual([
      'look-blower-by-hand',
      'look-capacitor',
      'look-contacts',
      'look-fan-by-hand',
    ]);
  });

  it.each(WANT_POWER_OFF)('is held back while its zone is not proven dead: %s', (id) => {
    expect(holdBack(testStep(asked(id)), FED)).toBe('proof');
    expect(holdBack(testStep(asked(id)), DEAD)).not.toBe('proof');
  });

  it.each(WANT_POWER_OFF)('is asked behind the steps that bring that about: %s', (id) => {
    expect(chooseStep(nextIs(id, FED))?.id).toMatch(/^energy\.(ground@|call-off)/);
    const off = { ...FED, call: 'none' as const };
    expect(chooseStep(nextIs(id, off))?.id).toMatch(/^energy\.(ground@|power-off)/);
  });
});

describe('a look that wants a hand', () => {
  it.each([
    ['look-fan-by-hand', 'fan-by-hand'],
    ['look-blower-by-hand', 'fan-by-hand'],
    ['look-compressor-heat', 'shell-heat'],
  ] as const)('is never asked without its caution: %s', (id, caution) => {
    const step = testStep(asked(id));
    expect(dueCautions(step, DEAD).map((one) => one.id)).toContain(caution);
    expect(holdBack(step, DEAD)).toBe('caution');
  });
});

describe('the bench', () => {
  it('is for parts that come out: no test of a compressor wants it', () => {
    const onBench = TESTS.map(({ id }) => id).filter((id) => TEST_MODELS[id].needs.bench);
    expect(onBench.length).toBeGreaterThan(5);
    expect(onBench.filter((id) => TEST_MODELS[id].at.some((point) => point.startsWith('comp-')))).toEqual([]);
  });

  it('is the only place for ohms across two zones: else the step proves the zone of both tips', () => {
    const inPlace = TESTS.map(({ id }) => id).filter((id) => {
      const { quantity, needs } = TEST_MODELS[id];
      return quantity === 'resistance' && needs.power === 'off' && !needs.bench;
    });
    expect(inPlace.length).toBeGreaterThan(3);
    for (const id of inPlace) {
      expect([id, ...zonesToProve(testStep(asked(id)))]).toEqual(
        expect.arrayContaining([...zonesAt(TEST_MODELS[id].at)]),
      );
    }
  });
});
