import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { faultWords } from '../../words/things/fault-words.ts';
import { SuspectBars } from './suspect-bars.tsx';

interface Suspected {
  readonly fault: FaultId;
  readonly probability: number;
}

/** The leading suspects with their probability. */
export function SuspectList({ suspects, most }: { readonly suspects: readonly Suspected[]; readonly most: number }) {
  const named = suspects.slice(0, most).map(({ fault, probability }) => ({ name: faultWords(fault), probability }));
  return <SuspectBars suspects={named} />;
}
