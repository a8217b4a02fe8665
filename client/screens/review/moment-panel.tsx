import { memo } from 'react';
import { latestReading } from '../../../grammar/visit/standing.ts';
import { MOMENT } from '../../words/pages/review-words.ts';
import { showPlace, showUnit } from '../../words/shown/show-reading.ts';
import { showUnderstood } from '../../words/shown/transcript-words.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { SuspectList } from '../show/suspect-list.tsx';
import type { AtMoment } from './visit-moments.ts';

/** Where the visit stood at the moment that is shown. */
export const MomentPanel = memo(function MomentPanel({ then }: { readonly then: AtMoment }) {
  const { facts, heard, said } = then;
  const latest = latestReading(facts);
  return (
    <section className="moment" aria-label={MOMENT.panel}>
      <EnergyBand energy={facts.energy} />
      <div className="moment-talk">
        <dl>
          <div>
            <dt>{MOMENT.phase}</dt>
            <dd>
              {facts.phase}
              {facts.held ? MOMENT.held : ''}
            </dd>
          </div>
          <div>
            <dt>{MOMENT.heard}</dt>
            <dd data-heard dir="auto">
              {heard?.text ?? MOMENT.none}
            </dd>
          </div>
          <div>
            <dt>{MOMENT.understood}</dt>
            <dd data-understood>
              {heard === undefined ? MOMENT.none : showUnderstood(heard.understanding, heard.accepted)}
            </dd>
          </div>
          <div>
            <dt>{MOMENT.said}</dt>
            <dd data-said>{said?.text ?? MOMENT.none}</dd>
          </div>
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
        <SuspectList suspects={then.suspects?.suspects ?? []} most={3} />
      </div>
    </section>
  );
});
