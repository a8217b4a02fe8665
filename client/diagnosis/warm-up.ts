import type { Diagnosis, Evidence, NextTest, Suspect } from './diagnosis.ts';
import { DiagnosisError } from './errors.ts';

const WALKS = 8;
const STEPS_EACH = 14;
/** Where no suspect says what a condition reads: a mild day, °F. */
const MILD = { expected: 80, unit: '[degF]' } as const;

/**
 * Asks a diagnosis as a visit would and forgets the answers: what has run some dozens of times is compiled, and the
 * first steps of the visit are as quick as the later ones. Each walk has other answers to the looks, and the numbers of
 * another suspect; every other walk goes to air and gauges first, so that both sides are gone through. Stops after each
 * step, so that a real question need not wait for the end. Throws none of the diagnosis's own errors: a made-up reading
 * that it refuses ends that walk.
 */
export function* warmUp(diagnosis: Diagnosis): Generator<undefined, void> {
  for (let walk = 0; walk < WALKS; walk += 1) {
    const evidence: Evidence[] = [];
    while (evidence.length < STEPS_EACH && addStep(diagnosis, evidence, walk)) yield;
  }
}

/** @returns whether there was a step to add */
function addStep(diagnosis: Diagnosis, evidence: Evidence[], walk: number): boolean {
  try {
    const { next, suspects } = diagnosis.assess(evidence, []);
    const air = next.find((one) => one.function === 'temperature' || one.function === 'pressure');
    const test = (walk % 2 === 1 ? air : undefined) ?? next[0];
    if (test === undefined) return false;
    const suspect = suspects[walk % 4] ?? suspects[0]!;
    evidence.push(answerOf(diagnosis, test, suspect, walk, evidence.length + 1));
    return true;
  } catch (error) {
    if (error instanceof DiagnosisError) return false;
    throw error;
  }
}

function answerOf(diagnosis: Diagnosis, test: NextTest, suspect: Suspect, walk: number, seq: number): Evidence {
  const { needs, quantity, at, answers } = test;
  const power = needs.power === 'any' ? 'on' : needs.power;
  const call = needs.call === 'any' ? 'cooling' : needs.call;
  const under = { seq, power, call, bench: needs.bench } as const;
  if (quantity === 'observation') {
    const observation = answers?.[walk % answers.length];
    if (observation === undefined) throw new Error(`${test.id} is a look without answers`);
    return { ...under, kind: 'observation', observation };
  }
  const told = diagnosis.explain(test.id, [suspect])[0];
  const { expected, unit } = told === undefined || told.unit === 'observation' ? MILD : told;
  return { ...under, kind: 'reading', quantity, at, value: expected, unit };
}
