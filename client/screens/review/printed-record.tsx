import './printed.css';
import { useEffect, useState } from 'react';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import type { Head } from '../../../grammar/visit/envelope.ts';
import type { SignedHead } from '../../../grammar/visit/signed-head.ts';
import { PRINTED } from '../../words/pages/review-words.ts';
import { printTimes } from '../../words/printed/print-times.ts';
import { printedSheet } from '../../words/printed/printed-sheet.ts';
import type { SheetSection } from '../../words/printed/sheet.ts';
import { VOUCHED } from '../../words/printed/vouched-words.ts';
import { readScreenSettings } from '../session/screen-settings.ts';
import { useWatchedVisit } from './use-watched-visit.ts';

/** One visit as it is printed: on the screen, on paper, as PDF. */
export function PrintedRecord({ visit }: { readonly visit: string }) {
  const { events, level } = useWatchedVisit(visit);
  const vouchedBy = useVouched(visit, events.length);
  if (events.length === 0 || !level) return <main className="printed">{PRINTED.reading}</main>;
  const { title, under, sections } = printedSheet(toVisitRecord(events), {
    zone: HERE,
    hours: readScreenSettings().hours,
    vouchedBy,
  });
  return (
    <main className="printed" data-printed={vouchedBy.length > 0}>
      <p className="not-printed">
        <a className="control" href={`/review?visit=${encodeURIComponent(visit)}`}>
          {PRINTED.back}
        </a>{' '}
        <button type="button" className="control" onClick={() => print()}>
          {PRINTED.print}
        </button>
      </p>
      <h1>{title}</h1>
      {under.map((line) => (
        <p key={line} className="printed-under">
          {line}
        </p>
      ))}
      {sections.map((section) => (
        <PrintedSection key={section.title} section={section} />
      ))}
    </main>
  );
}

const HERE = new Intl.DateTimeFormat().resolvedOptions().timeZone;

function PrintedSection({ section: { title, table, lines } }: { readonly section: SheetSection }) {
  return (
    <section>
      <h2>{title}</h2>
      {table === undefined ? null : (
        // biome-ignore lint/a11y/useSemanticElements: a section of the print is what has a heading
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys
        <div className="table-room" role="region" aria-label={title} tabIndex={0}>
          <table>
            <thead>
              <tr>
                {table.head.map((name) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row) => (
                <tr key={row.join('|')}>
                  {row.map((cell, at) => (
                    <td key={table.head[at]}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {numbered(lines).map(([key, line]) => (
        <p key={key}>{line}</p>
      ))}
    </section>
  );
}

/** Two lines may be the same words. */
function numbered(lines: readonly string[]): readonly (readonly [string, string])[] {
  return lines.map((line, at) => [`${at} ${line}`, line]);
}

/** Where the chains of the visit end, and what the server signed last. */
function useVouched(visit: string, events: number): readonly string[] {
  const [lines, setLines] = useState<readonly string[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew as events come
  useEffect(() => {
    fetchVouched(visit).then(setLines, () => undefined);
  }, [visit, events]);
  return lines;
}

interface Streams {
  readonly streams: readonly { readonly device: string; readonly head: Head; readonly said?: number }[];
}

async function fetchVouched(visit: string): Promise<readonly string[]> {
  const [{ streams }, { heads }] = await Promise.all([
    fetchJson<Streams>(`/api/visits/${encodeURIComponent(visit)}`),
    fetchJson<{ readonly heads: readonly SignedHead[] }>('/api/heads'),
  ]);
  const latest = heads.findLast(({ streams: kept }) => kept.some(({ stream }) => stream.split('/')[1] === visit));
  const times = printTimes(HERE, readScreenSettings().hours);
  return [
    ...streams.flatMap(({ head, said }) => (said === undefined ? [] : [VOUCHED.incomplete(head.seq, said)])),
    ...streams.map(({ device, head }) => VOUCHED.ofDevice(device, head)),
    latest === undefined
      ? VOUCHED.unsigned
      : VOUCHED.signed(latest.number, times.day(new Date(latest.time).toISOString()), latest.signature),
  ];
}

async function fetchJson<Answer>(path: string): Promise<Answer> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return (await response.json()) as Answer;
}
