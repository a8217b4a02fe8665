import type { ReadingLine } from '../../../grammar/visit/fold-visit.ts';
import { showPlace, showReading, showValue } from './show-reading.ts';

/** All readings so far, the latest first. Corrected and withdrawn ones stay visible as what they are. */
export function ReadingTable({ readings }: { readonly readings: readonly ReadingLine[] }) {
  if (readings.length === 0) return <p className="quiet">No readings yet.</p>;
  return (
    <table className="readings">
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">Reading</th>
          <th scope="col">Judged</th>
        </tr>
      </thead>
      <tbody>
        {readings.toReversed().map((line) => (
          <tr key={line.number} className={line.withdrawn ? 'withdrawn' : undefined} data-reading={line.number}>
            <td>{showPlace(line.reading.at)}</td>
            <td>
              {line.withdrawn ? <s>{showReading(line.reading)}</s> : showValue(line.reading.value, line.reading.unit)}
              {line.withdrawn ? ' withdrawn' : null}
              {line.corrected.map((before) => (
                <span key={`${before.value}${before.at.join()}`} className="was">
                  {' '}
                  was {showValue(before.value, before.unit)}
                </span>
              ))}
            </td>
            <td>{line.judged?.word ?? ''}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
