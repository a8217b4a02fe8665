import { WHY_PANEL } from '../../words/pages/visit-words.ts';
import type { WhyPart } from '../glance/why-lines.ts';

/** Why it asks what it asks: closed until it is opened, since a prediction leads the eye. */
export function WhyPanel({ parts }: { readonly parts: readonly WhyPart[] }) {
  return (
    <details className="why">
      <summary>{WHY_PANEL.title}</summary>
      {parts.length === 0 ? <p className="quiet">{WHY_PANEL.nothing}</p> : null}
      {parts.map(({ title, lines }) => (
        <dl key={title}>
          <dt>{title}</dt>
          {lines.map(({ what, figure }) => (
            <dd key={what}>
              <span>{what}</span> <span className="why-figure">{figure}</span>
            </dd>
          ))}
        </dl>
      ))}
    </details>
  );
}
