import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { ENERGY_WORDS } from '../show/energy-signs.tsx';
import { ReadingTable } from '../show/reading-table.tsx';
import { faultName, percent } from '../show/suspect-list.tsx';

/** What the charts draw, as tables, up to the moment that is shown. */
export function Tables({ folded }: { readonly folded: FoldedVisit }) {
  return (
    <section className="tables" aria-label="Tables">
      <details open>
        <summary>Readings</summary>
        <ReadingTable readings={folded.readings} />
      </details>
      <details>
        <summary>Energy by zone</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Zone</th>
              <th scope="col">Became</th>
              <th scope="col">Because</th>
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
        <summary>Suspects over time</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Entry</th>
              <th scope="col">Leading suspects</th>
            </tr>
          </thead>
          <tbody>
            {folded.suspects.map(({ seq, suspects }) => (
              <tr key={seq}>
                <td>{seq}</td>
                <td>
                  {suspects
                    .slice(0, 3)
                    .map(({ fault, probability }) => `${faultName(fault)} ${percent(probability)}`)
                    .join(', ')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
