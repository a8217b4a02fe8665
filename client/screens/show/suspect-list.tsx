import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { VISIT } from '../../words/pages/visit-words.ts';
import { showPercent } from '../../words/shown/show-likely.ts';
import { faultWords } from '../../words/things/fault-words.ts';

interface Suspected {
  readonly fault: FaultId;
  readonly probability: number;
}

/** The leading suspects with their probability, as words and as a bar. */
export function SuspectList({ suspects, most }: { readonly suspects: readonly Suspected[]; readonly most: number }) {
  if (suspects.length === 0) return <p className="quiet">{VISIT.noSuspects}</p>;
  return (
    <ol className="suspects">
      {suspects.slice(0, most).map(({ fault, probability }) => (
        <li key={fault}>
          <span className="suspect-name">{faultWords(fault)}</span>
          <span className="suspect-share">{showPercent(probability)}</span>
          <svg className="suspect-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
            <rect width={100 * probability} height={4} />
          </svg>
        </li>
      ))}
    </ol>
  );
}
