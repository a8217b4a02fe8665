import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../../client/diagnosis/diagnosis.ts';
import { makeDiagnosis } from '../../../client/diagnosis/make-diagnosis.ts';
import { TEST_IDS } from '../../../client/diagnosis/measuring/test-models.ts';
import { isOutOfPatience } from '../../../client/diagnosis/planner/when-to-stop.ts';
import type { ObservationId } from '../../../grammar/vocabulary/observations.ts';

const diagnosis = makeDiagnosis({ id: 'any' });
const seen = (...all: readonly ObservationId[]): Evidence[] =>
  all.map((observation, i) => ({
    seq: i + 1,
    kind: 'observation',
    observation,
    power: 'on',
    call: 'cooling',
    bench: false,
  }));

/** Every other test is passed over: nothing is left that tells more. */
const atTheEnd = (evidence: readonly Evidence[]) => diagnosis.assess(evidence, TEST_IDS);

describe('a search that tells no more', () => {
  it('names something else where nobody of the list is more likely than not', () => {
    const { suspects, next, done, excluded, proof } = atTheEnd(seen('fan-turning', 'compressor-running'));
    expect(suspects[0]).toMatchObject({ fault: 'something-else' });
    expect(suspects[0]!.probability).toBeGreaterThan(0.5);
    expect(suspects[0]!.probability).toBeLessThan(0.9);
    expect({ next, done, proof }).toEqual({ next: [], done: false, proof: undefined });
    expect(excluded).toBeDefined();
    expect(suspects.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
  });

  it('keeps the order of those of the list behind it', () => {
    const evidence = seen('fan-turning', 'compressor-running');
    const order = (suspects: readonly { readonly fault: string }[]) =>
      suspects
        .map(({ fault }) => fault)
        .filter((fault) => fault !== 'something-else')
        .slice(0, 8);
    expect(order(atTheEnd(evidence).suspects)).toEqual(order(diagnosis.assess(evidence, []).suspects));
  });

  it('names nobody while tests are left', () => {
    const { suspects, next } = diagnosis.assess(seen('fan-turning', 'compressor-running'), []);
    expect(suspects[0]!.fault).not.toBe('something-else');
    expect(next.length).toBeGreaterThan(0);
  });

  it('leaves a leader that is likelier than that', () => {
    const { suspects, excluded } = atTheEnd(seen('fan-turning', 'compressor-runs-then-trips', 'outdoor-coil-dirty'));
    expect(suspects[0]!.fault).toBe('condenser-dirty');
    expect(excluded).toBeUndefined();
  });
});

describe('patience', () => {
  const leads = (fault: 'something-else' | 'low-charge', probability = 0.5) => ({ fault, probability });

  it('ends sooner where nobody of the list leads', () => {
    expect(isOutOfPatience(28, leads('something-else'))).toBe(true);
    expect(isOutOfPatience(28, leads('low-charge'))).toBe(false);
    expect(isOutOfPatience(60, leads('low-charge'))).toBe(true);
    expect(isOutOfPatience(10, leads('something-else'))).toBe(false);
  });

  it('ends sooner where whoever leads is one of many', () => {
    expect(isOutOfPatience(28, leads('low-charge', 0.1))).toBe(true);
    expect(isOutOfPatience(28, leads('low-charge', 0.3))).toBe(false);
  });
});
