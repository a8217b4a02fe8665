import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { MOMENT } from '../../words/pages/review-words.ts';
import { showFinding } from '../../words/shown/show-likely.ts';
import { showPlace, showUnit } from '../../words/shown/show-reading.ts';
import { showUnderstood } from '../../words/shown/transcript-words.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { SuspectList } from '../show/suspect-list.tsx';

/** Where the visit stood at the moment that is shown. */
export function MomentPanel({ folded }: { readonly folded: FoldedVisit }) {
  const heard = folded.heard.at(-1);
  const latest = folded.readings.findLast((line) => !line.withdrawn);
  const { finding } = folded;
  return (
    <section className="moment" aria-label={MOMENT.panel}>
      <EnergyBand energy={folded.energy} />
      <div className="moment-talk">
        <dl>
          <div>
            <dt>{MOMENT.phase}</dt>
            <dd>
              {folded.phase}
              {folded.held ? MOMENT.held : ''}
            </dd>
          </div>
          <div>
            <dt>{MOMENT.heard}</dt>
            <dd data-heard>{heard?.text ?? MOMENT.none}</dd>
          </div>
          <div>
            <dt>{MOMENT.understood}</dt>
            <dd data-understood>
              {heard === undefined ? MOMENT.none : showUnderstood(heard.understanding, heard.accepted)}
            </dd>
          </div>
          <div>
            <dt>{MOMENT.said}</dt>
            <dd data-said>{folded.said.at(-1)?.text ?? MOMENT.none}</dd>
          </div>
          {finding === undefined ? null : (
            <div>
              <dt>{MOMENT.finding}</dt>
              <dd data-finding>{showFinding(finding)}</dd>
            </div>
          )}
        </dl>
        {latest === undefined ? null : (
          <p className="moment-value">
            <span>{showPlace(latest.reading.at)}</span>
            <strong>
              {latest.reading.value} {showUnit(latest.reading.unit)}
            </strong>
            <span>{latest.judged?.word}</span>
          </p>
        )}
      </div>
      <div className="moment-suspects">
        <h2>{MOMENT.suspects}</h2>
        <SuspectList suspects={folded.suspects.at(-1)?.suspects ?? []} most={5} />
      </div>
    </section>
  );
}
