import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { showPlace, showUnit } from '../show/show-reading.ts';
import { showUnderstood } from '../show/show-understanding.ts';
import { SuspectList } from '../show/suspect-list.tsx';
import { findingWords } from './transcript-lines.ts';

/** Where the visit stood at the moment that is shown. */
export function MomentPanel({ folded }: { readonly folded: FoldedVisit }) {
  const heard = folded.heard.at(-1);
  const latest = folded.readings.findLast((line) => !line.withdrawn);
  const finding = findingWords(folded);
  return (
    <section className="moment" aria-label="At this moment">
      <EnergyBand energy={folded.energy} />
      <div className="moment-talk">
        <dl>
          <div>
            <dt>phase</dt>
            <dd>
              {folded.phase}
              {folded.held ? ', held' : ''}
            </dd>
          </div>
          <div>
            <dt>heard</dt>
            <dd data-heard>{heard?.text ?? '–'}</dd>
          </div>
          <div>
            <dt>understood</dt>
            <dd data-understood>{showUnderstood(heard)}</dd>
          </div>
          <div>
            <dt>said</dt>
            <dd data-said>{folded.said.at(-1)?.text ?? '–'}</dd>
          </div>
          {finding === undefined ? null : (
            <div>
              <dt>finding</dt>
              <dd data-finding>{finding}</dd>
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
        <h2>Suspects</h2>
        <SuspectList suspects={folded.suspects.at(-1)?.suspects ?? []} most={5} />
      </div>
    </section>
  );
}
