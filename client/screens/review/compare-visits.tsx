import { useEffect, useState } from 'react';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import type { VisitRecord } from '../../../grammar/export/visit-record-schema.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { COMPARE } from '../../words/pages/review-words.ts';
import { comparedReadings } from '../../words/printed/print-readings.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';
import type { ListedVisit } from './listed-visit.ts';
import { SheetRows } from './tables.tsx';

/** This visit beside another to the same unit: what was found, done and read on each. */
export function CompareVisits({ visit, record }: { readonly visit: string; readonly record: VisitRecord }) {
  const [others, setOthers] = useState<readonly ListedVisit[]>();
  const [problem, setProblem] = useState('');
  const [chosen, setChosen] = useState('');
  const [other, setOther] = useState<VisitRecord>();
  useEffect(() => {
    void askServer<{ visits: readonly ListedVisit[] }>(
      'GET',
      `/api/visits/${encodeURIComponent(visit)}/same-unit`,
    ).then((answer) => (answer.ok ? setOthers(answer.body.visits) : setProblem(answer.sentence)));
  }, [visit]);
  useEffect(() => {
    setOther(undefined);
    let shown = true;
    if (chosen !== '') {
      readVisit(chosen).then(
        (read) => shown && setOther(read),
        () => shown && setProblem(COMPARE.notRead),
      );
    }
    return () => {
      shown = false;
    };
  }, [chosen]);
  if (problem !== '') return <p role="status">{problem}</p>;
  if (others === undefined) return <p role="status">{COMPARE.looking}</p>;
  if (others.length === 0) return <p>{COMPARE.none}</p>;
  return (
    <>
      <label>
        {COMPARE.with}{' '}
        <select className="control" value={chosen} onChange={(event) => setChosen(event.target.value)}>
          <option value="">{COMPARE.choose}</option>
          {others.map((one) => (
            <option key={one.visit} value={one.visit}>
              {COMPARE.option(new Date(one.openedAt), one.site, one.visit)}
            </option>
          ))}
        </select>
      </label>
      {other === undefined ? null : (
        <>
          <p>
            <a href={`/review?visit=${encodeURIComponent(chosen)}`}>{COMPARE.open}</a>
          </p>
          <SheetRows table={comparedReadings(record, other, COMPARE.head(new Date(other.opened)))} />
        </>
      )}
    </>
  );
}

interface EventsPage {
  readonly events: readonly { readonly device: string; readonly body: string }[];
  readonly next?: number;
}

/** Of the visit’s own device: remarks of others bear no reading. */
async function readVisit(visit: string): Promise<VisitRecord> {
  const events: EventsPage['events'][number][] = [];
  for (let after: number | undefined = 0; after !== undefined; ) {
    const path: string = `/api/visits/${encodeURIComponent(visit)}/events?after=${after}`;
    const answer: ServerAnswer<EventsPage> = await askServer<EventsPage>('GET', path);
    if (!answer.ok) throw new Error(answer.sentence);
    events.push(...answer.body.events);
    after = answer.body.next;
  }
  const device = events[0]?.device;
  return toVisitRecord(readBodies(events.filter((event) => event.device === device).map(({ body }) => body)));
}
