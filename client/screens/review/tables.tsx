import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import { ENERGY_WORDS } from '../../words/shown/energy-names.ts';
import { showLikely } from '../../words/shown/show-likely.ts';
import { ReadingTable } from '../show/reading-table.tsx';

/** What the charts draw, as tables, up to the moment that is shown. */
export function Tables({ folded }: { readonly folded: FoldedVisit }) {
  return (
    <section className="tables" aria-label={TRACKS.tables}>
      <details open>
        <summary>{TRACKS.readings}</summary>
        <ReadingTable readings={folded.readings} />
      </details>
      <details>
        <summary>{TRACKS.energy}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{TRACKS.zone}</th>
              <th scope="col">{TRACKS.became}</th>
              <th scope="col">{TRACKS.because}</th>
            </tr>
          </thead>
          <tbody>
            {folded.energyChanges.map((change) => (
              <tr key={`${change.seq}-${change.zone}`}>
                <td>{ZONE_NAMES[change.zone]}</td>
                <td>{ENERGY_WORDS[change.to]}</td>
                <td>{change.why}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      <details>
        <summary>{TRACKS.suspects}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{TRACKS.entry}</th>
              <th scope="col">{TRACKS.leadingSuspects}</th>
            </tr>
          </thead>
          <tbody>
            {folded.suspects.map(({ seq, suspects }) => (
              <tr key={seq}>
                <td>{seq}</td>
                <td>{suspects.slice(0, 3).map(showLikely).join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
