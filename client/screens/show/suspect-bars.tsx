import { VISIT } from '../../words/pages/visit-words.ts';
import { showPercent } from '../../words/shown/show-likely.ts';

interface Named {
  readonly name: string;
  readonly probability: number;
}

/** Suspects with their probability, as words and as a bar. */
export function SuspectBars({ suspects }: { readonly suspects: readonly Named[] }) {
  if (suspects.length === 0) return <p className="quiet">{VISIT.noSuspects}</p>;
  return (
    <ol className="suspects">
      {suspects.map(({ name, probability }) => (
        <li key={name}>
          <span className="suspect-name">{name}</span>
          <span className="suspect-share">{showPercent(probability)}</span>
          <svg className="suspect-bar" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
            <rect width={100 * probability} height={4} />
          </svg>
        </li>
      ))}
    </ol>
  );
}
