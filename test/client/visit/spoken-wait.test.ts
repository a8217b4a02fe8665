import { describe, expect, it } from 'vitest';
import type { Circumstances, Evidence } from '../../../client/diagnosis/diagnosis.ts';

import type { VisitContext } from '../../../client/visit/chart/context.ts';
import { whyWords } from '../../../client/visit/intake/answer-status.ts';
import { stepWords } from '../../../client/visit/steps/ask-step.ts';
import { chooseGoal } from '../../../client/visit/steps/choose-step.ts';
import type { PointId } from '../../../grammar/vocabulary/points.ts';
import { diagnosisOf } from '../../made-diagnosis.ts';
import { LIBRARY_UNIT, TypedVisit } from './typed-visit.ts';

const CALL: Circumstances = { power: 'on', call: 'cooling', bench: false };
let seq = 0;
const see = (observation: 'fan-not-turning' | 'compressor-not-running' | 'contactor-not-pulled-in'): Evidence => {
  seq += 1;
  return { seq, kind: 'observation', observation, ...CALL };
};
const volts = (from: PointId, to: PointId, value: number): Evidence => {
  seq += 1;
  return { seq, kind: 'reading', quantity: 'voltage', at: [from, to], value, unit: 'V', ...CALL };
};
const DEAD: Circumstances = { power: 'off', call: 'cooling', bench: true };
const ohms = (from: PointId, to: PointId, value: number): Evidence => {
  seq += 1;
  return { seq, kind: 'reading', quantity: 'resistance', at: [from, to], value, unit: 'Ohm', ...DEAD };
};
const microfarads = (value: number): Evidence => {
  seq += 1;
  return { seq, kind: 'reading', quantity: 'capacitance', at: ['cap-C', 'cap-FAN'], value, unit: 'uF', ...DEAD };
};
const seeDead = (observation: 'fan-spins-freely' | 'outdoor-coil-clean'): Evidence => {
  seq += 1;
  return { seq, kind: 'observation', observation, ...DEAD, bench: false };
};

/** A visit among its tests, with what the diagnosis makes of the evidence. */
async function testing(evidence: readonly Evidence[]): Promise<VisitContext> {
  const { run } = await TypedVisit.open();
  const assessment = diagnosisOf({ ...LIBRARY_UNIT, pressureSwitches: true }).assess(evidence, []);
  return { ...run.context, phase: 'testing', assessment, evidenceNumber: assessment.forSeq };
}

/** 24 volts come to the condenser, pass both pressure switches, and do not come to a coil that is whole; each read again, as asked; and what is beside it is whole. */
const UP_TO_THE_DELAY = (): readonly Evidence[] => [
  see('fan-not-turning'),
  see('compressor-not-running'),
  see('contactor-not-pulled-in'),
  volts('Y@condenser', 'C@condenser', 25),
  volts('Y@condenser', 'C@condenser', 25),
  volts('low-switch-1', 'low-switch-2', 0),
  volts('low-switch-1', 'low-switch-2', 0),
  volts('high-switch-1', 'high-switch-2', 0),
  volts('high-switch-1', 'high-switch-2', 0),
  ohms('coil-1', 'coil-2', 12),
  volts('coil-1', 'coil-2', 0),
  // No reading of its own shows a delay: what else it could be is looked at before.
  microfarads(5),
  ohms('low-switch-1', 'low-switch-2', 0.1),
  seeDead('fan-spins-freely'),
  seeDead('outdoor-coil-clean'),
  ohms('high-switch-1', 'high-switch-2', 0.1),
  ohms('Y@air-handler', 'C@air-handler', 2e6),
  ohms('Y@air-handler', 'C@air-handler', 2e6),
];

describe('what may end by itself', () => {
  // Common practice: a delay against short cycling runs three to five minutes.
  it('is waited for, with its minutes said, and why', async () => {
    const context = await testing(UP_TO_THE_DELAY());
    expect(context.assessment?.suspects[0]?.fault).toBe('delay-stays-open');
    const step = chooseGoal(context)!;
    expect(stepWords(step, context)).toMatch(/Give it five minutes, then again: contactor coil/);
    expect(whyWords({ ...context, step })).toContain('may end by itself');
  });

  it('is found once it was waited for and still shows', async () => {
    const context = await testing([...UP_TO_THE_DELAY(), volts('coil-1', 'coil-2', 0)]);
    expect(context.assessment?.next.every(({ wait }) => wait === undefined)).toBe(true);
    expect(context.assessment).toMatchObject({ done: true });
  });
});
