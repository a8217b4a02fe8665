import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import { showPlace, showReading, showValue } from '../../words/shown/show-reading.ts';
import { READING_TABLE } from '../../words/shown/table-words.ts';

/** All readings so far, the latest first. Corrected and withdrawn ones stay visible as what they are. */
export function ReadingTable({ readings }: { readonly readings: readonly ReadingLine[] }) {
  if (readings.length === 0) return <p className="quiet">{READING_TABLE.none}</p>;
  return (
    <table className="readings">
      <thead>
        <tr>
          <th scope="col">{READING_TABLE.where}</th>
          <th scope="col">{READING_TABLE.reading}</th>
          <th scope="col">{READING_TABLE.judged}</th>
        </tr>
      </thead>
      <tbody>
        {readings.toReversed().map((line) => (
          <tr key={line.number} className={line.withdrawn ? 'withdrawn' : undefined} data-reading={line.number}>
            <td>{showPlace(line.reading.at)}</td>
            <td>
              {line.withdrawn ? <s>{showReading(line.reading)}</s> : showValue(line.reading.value, line.reading.unit)}
              {line.withdrawn ? ` ${READING_TABLE.withdrawn}` : null}
              {line.corrected.map((before) => (
                <span key={`${before.value}${before.at.join()}`} className="was">
                  {' '}
                  {READING_TABLE.was(before)}
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
