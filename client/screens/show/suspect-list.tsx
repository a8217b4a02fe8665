import { FAULTS_BY_ID, type FaultId } from '../../../grammar/vocabulary/faults.ts';
import { nameIn } from '../../../grammar/vocabulary/rows-by.ts';

export function faultName(id: FaultId): string {
  return nameIn(FAULTS_BY_ID, id);
}

export function percent(probability: number): string {
  return `${Math.round(probability * 100)} %`;
}

interface Suspected {
  readonly fault: FaultId;
  readonly probability: number;
}

/** The leading suspects with their probability, as words and as a bar. */
export function SuspectList({ suspects, most }: { readonly suspects: readonly Suspected[]; readonly most: number }) {
  if (suspects.length === 0) return <p className="quiet">No suspects yet: nothing has been read.</p>;
  return (
    <ol className="suspects">
      {suspects.slice(0, most).map(({ fault, probability }) => (
        <li key={fault}>
          <span className="suspect-name">{faultName(fault)}</span>
          <span className="suspect-share">{percent(probability)}</span>
          <svg className="suspect-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
            <rect width={100 * probability} height={4} />
          </svg>
        </li>
      ))}
    </ol>
  );
}
