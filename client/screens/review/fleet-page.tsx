import './list.css';
import { useEffect, useState } from 'react';
import { FLEET, LIST } from '../../words/pages/list-words.ts';
import { REVIEW } from '../../words/pages/review-words.ts';
import { showPercent, showShare } from '../../words/shown/show-likely.ts';
import { showPlace } from '../../words/shown/show-reading.ts';
import { SignInFirst } from '../people/sign-in-page.tsx';
import { askServer } from '../session/server-answer.ts';
import { AboutLine } from '../show/about-line.tsx';
import { BarChart } from './bar-chart.tsx';
import { SheetRows } from './tables.tsx';
import { asParameters, type ListQuery, useListQuery } from './use-list-query.ts';

type Cell = string | number;
type TableId = keyof typeof FLEET.tables;
type Column = keyof typeof FLEET.columns;

interface FleetTable {
  readonly id: TableId;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

interface FleetAnswer {
  readonly visits: number;
  readonly tables: readonly FleetTable[];
}

const ENDS = ['from', 'until'] as const;
/** So many rows are drawn; the table holds all. */
const DRAWN = 12;

/** What all visits come to: by finding, part, age, month, repeat call, step, and what is misheard. Each chart has its table. */
export function FleetPage() {
  const [query, change] = useListQuery();
  const { answer, problem } = useFleet(query);
  return (
    <main className="review-list fleet">
      <h1>{FLEET.title}</h1>
      <nav className="list-ways">
        <a href="/review">{REVIEW.visits}</a>
      </nav>
      {problem === undefined ? null : (
        <p className="told" role="alert">
          {problem.sentence}
        </p>
      )}
      {problem?.turnedAway === true ? <SignInFirst next="/fleet" /> : null}
      <search className="filter-fields">
        {ENDS.map((end) => (
          <label key={end}>
            <span>{FLEET[end]}</span>
            <input
              type="date"
              className="control"
              value={query[end] ?? ''}
              onChange={(event) => change({ [end]: event.target.value })}
            />
          </label>
        ))}
      </search>
      <p role="status">{answer === undefined ? FLEET.reading : FLEET.count(answer.visits)}</p>
      {answer?.tables.map((table) => (
        <FleetSection key={table.id} table={table} query={query} />
      ))}
      <AboutLine />
    </main>
  );
}

function FleetSection({ table, query }: { readonly table: FleetTable; readonly query: ListQuery }) {
  const { id, columns, rows } = table;
  const title = FLEET.tables[id];
  const note = (FLEET.notes as Readonly<Record<string, string>>)[id];
  const head = columns.map((column) => FLEET.columns[column]);
  const shown = rows.map((row) => row.map((cell, at) => showCell(columns[at] as Column, cell)));
  const parameters = asParameters(query);
  parameters.set('table', id);
  return (
    <section data-table={id}>
      <h2>{title}</h2>
      {note === undefined ? null : <p className="quiet">{note}</p>}
      {rows.length === 0 ? (
        <p>{FLEET.none}</p>
      ) : (
        <>
          <BarChart
            title={FLEET.chart(title)}
            rows={rows.slice(0, DRAWN).map((row, at) => ({
              name: shown[at]?.[0] ?? '',
              value: Number(row[drawnColumn(columns)] ?? 0),
              shown: shown[at]?.[drawnColumn(columns)] ?? '',
            }))}
            unit={head[drawnColumn(columns)] ?? ''}
          />
          <SheetRows table={{ head, rows: shown }} />
          <p>
            <a href={`/api/fleet.csv?${parameters}`} download={`${id}.csv`} aria-label={`${FLEET.csv} ${title}`}>
              {FLEET.csv}
            </a>
          </p>
        </>
      )}
    </section>
  );
}

/** Steps are drawn by their minutes, repeat calls by how many there were, all else by the first count. */
function drawnColumn(columns: readonly Column[]): number {
  const drawn = columns.findIndex((column) => column === 'median-minutes' || column === 'repeated');
  return drawn > 0 ? drawn : 1;
}

function showCell(column: Column, cell: Cell): string {
  if (column === 'share') return showShare(Number(cell));
  if (column === 'median-certainty') return cell === '' ? '' : showPercent(Number(cell));
  if (typeof cell === 'number') return cell.toLocaleString('en');
  if (column === 'finding') return cell === 'none' ? FLEET.noFinding : LIST.fault(cell);
  if (column === 'part') return LIST.partName(cell);
  if (column === 'month') return FLEET.month(cell);
  if (column === 'age' && cell === 'unknown') return FLEET.unknown;
  if (column === 'place') return showPlace(cell.split(',') as never);
  return column === 'step' ? FLEET.step(cell) : cell;
}

function useFleet(query: ListQuery) {
  const [state, setState] = useState<{ answer?: FleetAnswer; problem?: { sentence: string; turnedAway: boolean } }>({});
  useEffect(() => {
    let wanted = true;
    void askServer<FleetAnswer>('GET', `/api/fleet?${asParameters(query)}`).then((answer) => {
      if (!wanted) return;
      if (answer.ok) setState({ answer: answer.body });
      else {
        const turnedAway = answer.status === 401 || answer.status === 403;
        setState({ problem: { sentence: answer.status === 0 ? REVIEW.serverGone : answer.sentence, turnedAway } });
      }
    });
    return () => {
      wanted = false;
    };
  }, [query]);
  return state;
}
