import { memo, type ReactNode, useMemo, useState } from 'react';
import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { ZONE_NAMES } from '../../../grammar/vocabulary/zones.ts';
import { TRACKS } from '../../words/pages/review-words.ts';
import type { SheetTable } from '../../words/printed/sheet.ts';
import { ENERGY_WORDS } from '../../words/shown/energy-names.ts';
import { showLikely } from '../../words/shown/show-likely.ts';
import { ReadingTable } from '../show/reading-table.tsx';
import { type ReplayTimes, showMoment } from './replay-times.ts';
import type { AtMoment } from './visit-moments.ts';

/** So many rows of a table are shown, the latest, until all are asked for. */
const SHOWN = 40;

interface TablesProps {
  readonly then: AtMoment;
  readonly times: ReplayTimes;
}

/** What the charts draw, as tables, up to the moment that is shown. */
export const Tables = memo(function Tables({ then, times }: TablesProps) {
  const { readings } = then.facts;
  return (
    <>
      <Folding title={TRACKS.readings} open>
        <Latest rows={readings}>{(rows) => <Readings readings={rows} />}</Latest>
      </Folding>
      <Folding title={TRACKS.energy}>
        <Latest rows={then.energyChanges}>
          {(rows) => <SheetRows table={{ head: TRACKS.energyHead, rows: rows.map((row) => energyRow(row, times)) }} />}
        </Latest>
      </Folding>
      <Folding title={TRACKS.suspects}>
        <Latest rows={then.rankings}>
          {(rows) => (
            <SheetRows
              table={{
                head: TRACKS.suspectHead,
                rows: rows.map(({ seq, suspects }) => [
                  showMoment(times.momentOf(seq)),
                  suspects.slice(0, 3).map(showLikely).join(', '),
                ]),
              }}
            />
          )}
        </Latest>
      </Folding>
    </>
  );
});

const Readings = memo(function Readings({ readings }: { readonly readings: VisitFacts['readings'] }) {
  return (
    <div className="table-room">
      <ReadingTable readings={readings} />
    </div>
  );
});

function energyRow(
  { seq, zone, to, why }: FoldedVisit['energyChanges'][number],
  times: ReplayTimes,
): readonly string[] {
  return [showMoment(times.momentOf(seq)), ZONE_NAMES[zone], ENERGY_WORDS[to], why];
}

/** A table of the printed record. */
export function SheetRows({ table: { head, rows } }: { readonly table: SheetTable }) {
  return (
    <div className="table-room">
      <table>
        <thead>
          <tr>
            {head.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two rows may be the same words
            <tr key={at}>
              {row.map((cell, column) => (
                <td key={head[column]} dir="auto">
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** A heading that opens what stands under it; what is closed is not made. */
export function Folding({
  title,
  open = false,
  children,
}: {
  readonly title: string;
  readonly open?: boolean;
  readonly children: ReactNode;
}) {
  const [isOpen, setOpen] = useState(open);
  return (
    <details open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen ? children : null}
    </details>
  );
}

interface LatestProps<Row> {
  readonly rows: readonly Row[];
  readonly children: (rows: readonly Row[]) => ReactNode;
}

function Latest<Row>({ rows, children }: LatestProps<Row>) {
  const [all, setAll] = useState(false);
  const hidden = all ? 0 : Math.max(0, rows.length - SHOWN);
  const shown = useMemo(() => (hidden === 0 ? rows : rows.slice(hidden)), [rows, hidden]);
  return (
    <>
      {children(shown)}
      {hidden === 0 ? null : (
        <button type="button" className="control" onClick={() => setAll(true)}>
          {TRACKS.earlier(hidden)}
        </button>
      )}
    </>
  );
}
