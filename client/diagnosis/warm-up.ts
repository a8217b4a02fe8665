import type { Diagnosis, Evidence, NextTest, Suspect } from './diagnosis.ts';
import { DiagnosisError } from './errors.ts';

const WALKS = 3;
const STEPS_EACH = 12;
/** Where no suspect says what a condition reads: a mild day, °F. */
const MILD = { expected: 80, unit: '[degF]' } as const;

/**
 * Asks a diagnosis as a visit would, each reading as the leading suspect has it, and forgets the answers: what has run
 * some dozens of times is compiled, and the first steps of the visit are as quick as the later ones. Stops after each
 * step, so that a real question need not wait for the end. Throws none of the diagnosis's own errors: a made-up reading
 * that it refuses ends that walk.
 */
export function* warmUp(diagnosis: Diagnosis): Generator<undefined, void> {
  for (let walk = 0; walk < WALKS; walk += 1) {
    const evidence: Evidence[] = [];
    while (evidence.length < STEPS_EACH && addStep(diagnosis, evidence)) yield;
  }
}

/** @returns whether there was a step to add */
function addStep(diagnosis: Diagnosis, evidence: Evidence[]): boolean {
  try {
    const { next, suspects } = diagnosis.assess(evidence, []);
    const [test] = next;
    if (test === undefined) return false;
    evidence.push(likely(diagnosis, test, suspects, evidence.length + 1));
    return true;
  } catch (error) {
    if (error instanceof DiagnosisError) return false;
    throw error;
  }
}

function likely(diagnosis: Diagnosis, test: NextTest, suspects: readonly Suspect[], seq: number): Evidence {
  const { needs, quantity, at, answers } = test;
  const power = needs.power === 'any' ? 'on' : needs.power;
  const call = needs.call === 'any' ? 'cooling' : needs.call;
  const under = { seq, power, call, bench: needs.bench } as const;
  const [observation] = answers ?? [];
  if (quantity === 'observation' || observation !== undefined) {
    if (observation === undefined) throw new Error(`${test.id} is a look without answers`);
    return { ...under, kind: 'observation', observation };
  }
  const { expected, unit } = diagnosis.explain(test.id, suspects)[0] ?? MILD;
  return { ...under, kind: 'reading', quantity, at, value: expected, unit };
}
