import { useEffect, useState } from 'react';
import { type FoldedVisit, foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { readBodies } from '../../../grammar/visit/read-bodies.ts';
import { PEOPLE } from '../../words/pages/people-words.ts';
import { REVIEW } from '../../words/pages/review-words.ts';
import { SignInFirst } from '../people/sign-in-page.tsx';
import { AboutLine } from '../show/about-line.tsx';
import { VisitTexts } from './open-visit-texts.ts';

interface ListedVisit {
  readonly visit: string;
  readonly events: number;
  /** Events that its devices said they have, where that is more. */
  readonly said?: number;
  readonly lastReceivedAt: number;
  readonly folded: FoldedVisit;
}

/** The server wants somebody else to ask. */
class TurnedAway extends Error {}

/** What is read of each visit for the list: enough for its opening. */
const OPENING_EVENTS = 4;

/** All visits the server holds, the latest first. */
export function VisitList() {
  const [visits, setVisits] = useState<readonly ListedVisit[]>();
  const [problem, setProblem] = useState<string>();
  const [turnedAway, setTurnedAway] = useState(false);
  useEffect(() => {
    fetchVisits()
      .then(setVisits)
      .catch((error: unknown) => {
        setTurnedAway(error instanceof TurnedAway);
        setProblem(error instanceof TurnedAway ? error.message : REVIEW.serverGone);
      });
  }, []);
  return (
    <main className="review-list">
      <h1>{REVIEW.visits}</h1>
      <p>
        <a href="/">{REVIEW.technicianPage}</a>
      </p>
      {problem === undefined ? null : (
        <p className="notice" role="alert">
          {problem}
        </p>
      )}
      {turnedAway ? <SignInFirst next="/review" /> : null}
      {visits?.length === 0 ? <p>{REVIEW.noVisits}</p> : null}
      <ul>
        {visits?.map(({ visit, events, said, lastReceivedAt, folded }) => (
          <li key={visit}>
            <a className="visit-card" href={`/review?visit=${encodeURIComponent(visit)}`}>
              <strong>{folded.site === '' ? visit : folded.site}</strong>
              <span>{folded.complaint}</span>
              <span className="quiet">
                {REVIEW.opened(
                  folded.role,
                  showTime(folded.first?.time.at),
                  events,
                  showTime(new Date(lastReceivedAt).toISOString()),
                )}
              </span>
              {said === undefined ? null : <span className="notice">{REVIEW.notComplete(events, said)}</span>}
            </a>
          </li>
        ))}
      </ul>
      <p>
        <a href="/people">{PEOPLE.title}</a>
      </p>
      <AboutLine />
    </main>
  );
}

async function fetchVisits(): Promise<readonly ListedVisit[]> {
  const { visits } = (await fetchJson('/api/visits')) as {
    visits: readonly Omit<ListedVisit, 'folded'>[];
  };
  const opened = await Promise.all(
    visits.map(async (row) => {
      const path = `/api/visits/${encodeURIComponent(row.visit)}/events?limit=${OPENING_EVENTS}`;
      const { events } = (await fetchJson(path)) as { events: readonly { device: string; body: string }[] };
      const { bodies } = await new VisitTexts(row.visit).open(events);
      return { ...row, folded: foldVisit(readBodies(bodies)) };
    }),
  );
  return opened.toSorted((a, b) => b.lastReceivedAt - a.lastReceivedAt);
}

async function fetchJson(path: string): Promise<unknown> {
  const response = await fetch(path);
  if (response.status === 401 || response.status === 403) {
    throw new TurnedAway(((await response.json()) as { sentence: string }).sentence);
  }
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return response.json();
}

/** In the reader's own time zone, to the minute. */
function showTime(at: string | undefined): string {
  if (at === undefined || at === '') return REVIEW.unknownTime;
  return new Date(at).toLocaleString('en', { dateStyle: 'medium', timeStyle: 'short' });
}
