import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { NOW } from '../../words/pages/visit-words.ts';
import { showPlace, showReading, showUnit } from '../../words/shown/show-reading.ts';
import type { Live, LiveValues, ProofNumber } from '../glance/live-values.ts';

/** What is measured now, large; what was read last, small below it. */
export function LiveValue({ live, last }: LiveValues) {
  return (
    <div className="live" data-live={live.kind}>
      <LiveNow live={live} />
      {last === undefined ? null : (
        <p className="last-read" data-last-value={String(last.reading.value)}>
          {NOW.lastRead} <strong>{showReading(last.reading)}</strong> <Judged line={last} />
        </p>
      )}
    </div>
  );
}

function LiveNow({ live }: { readonly live: Live }) {
  switch (live.kind) {
    case 'nothing':
      return null;
    case 'proof':
      return (
        <ol className="proof-numbers" aria-label={NOW.proof}>
          {live.numbers.map((number, index) => (
            <ProofCell key={number.at?.join() ?? `meter-${index}`} {...number} />
          ))}
        </ol>
      );
    case 'awaited':
      return (
        <p className="live-value" data-live-value="">
          <span className="live-place">{showPlace(live.at)}</span>
          <span className="live-number">
            {NOW.notYet}
            <span className="live-unit">{showUnit(live.unit)}</span>
          </span>
        </p>
      );
    case 'unplaced':
      return (
        <p className="live-value" data-live-value={String(live.value)}>
          <span className="live-place">
            {NOW.noPlace} <em>{NOW.asked}</em>
          </span>
          <span className="live-number">
            {live.value}
            {live.unit === undefined ? null : <span className="live-unit">{showUnit(live.unit)}</span>}
          </span>
        </p>
      );
    case 'questioned':
      return <LiveReading reading={live.reading} options={live.options} mark={<em>{NOW.asked}</em>} />;
    case 'taken':
      return <LiveReading reading={live.line.reading} mark={<Judged line={live.line} />} />;
  }
}

interface LiveReadingProps {
  readonly reading: Reading;
  readonly options?: readonly [number, number] | undefined;
  readonly mark: React.ReactNode;
}

function LiveReading({ reading, options, mark }: LiveReadingProps) {
  return (
    <p className="live-value" data-live-value={String(reading.value)}>
      <span className="live-place">
        {showPlace(reading.at)} {mark}
      </span>
      <span className="live-number">
        {options === undefined ? (
          reading.value
        ) : (
          <>
            {options[0]} <span className="live-or">{NOW.or}</span> {options[1]}
          </>
        )}
        {reading.value === 'open' ? null : <span className="live-unit">{showUnit(reading.unit)}</span>}
      </span>
    </p>
  );
}

function Judged({ line: { judged } }: { readonly line: ReadingLine }) {
  return judged === undefined ? null : <em>{judged.word}</em>;
}

function ProofCell({ at, value, isNow }: ProofNumber) {
  return (
    <li className="proof-number" aria-current={isNow ? 'step' : undefined} data-proof={at?.join('+') ?? 'meter'}>
      <span className="proof-place">{at === undefined ? NOW.meter : showPlace(at)}</span>
      <span className="proof-value">{value ?? NOW.notYet}</span>
    </li>
  );
}
