import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { TestId } from '../../../grammar/vocabulary/tests.ts';
import { minutesOf, nextOfProof } from '../proof/next-proof.ts';
import type { Proof } from '../proof/weigh-proof.ts';
import type { Stance } from './test-cost.ts';

/** A suspect, and what its row of proof lacks. */
export interface ToProve {
  readonly fault: FaultId;
  readonly probability: number;
  readonly proof: Proof;
}

/** A suspect below this is not counted. */
const LEAST = 0.02;

/** A stance as far as minutes depend on it. */
const keyOf = ({ place, power, call, outdoorPanelOff, gaugesOn }: Stance): string =>
  `${place} ${power} ${call} ${outdoorPanelOff} ${gaugesOn}`;

/**
 * Minutes that the proof takes in the end, expected over what it may be: a test that stands in the rows of likely
 * suspects, or leads to where their proof lies, costs less than it takes; one that leads away costs more.
 */
export function leftToProve(suspects: readonly ToProve[]): (stance: Stance, done?: TestId) => number {
  const counted = suspects.filter(({ probability, proof }) => probability >= LEAST && proof.lacking.length > 0);
  const known = new Map<string, readonly number[]>();
  const minutes = (stance: Stance, proof: Proof) => minutesOf(stance, nextOfProof(stance, proof));
  const eachFrom = (stance: Stance): readonly number[] => {
    const key = keyOf(stance);
    const each = known.get(key) ?? counted.map(({ proof }) => minutes(stance, proof));
    known.set(key, each);
    return each;
  };
  return (stance, done) => {
    const each = eachFrom(stance);
    return counted.reduce((sum, { probability, proof }, i) => {
      const left = done === undefined || !asks(proof, done) ? each[i]! : minutes(stance, without(proof, done));
      return sum + probability * left;
    }, 0);
  };
}

const asks = ({ lacking }: Proof, test: TestId): boolean =>
  lacking.some((ways) => ways.some((tests) => tests.includes(test)));

/** What a row lacks once a test is done, as if it showed what the row wants. */
function without(proof: Proof, done: TestId): Proof {
  const lacking = proof.lacking
    .map((ways) => ways.map((tests) => tests.filter((test) => test !== done)))
    .filter((ways) => ways.every((tests) => tests.length > 0));
  return { ...proof, lacking };
}
