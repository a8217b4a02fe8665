import { useEffect, useState } from 'react';
import { LIST } from '../../words/pages/list-words.ts';
import { PEOPLE } from '../../words/pages/people-words.ts';
import { REVIEW } from '../../words/pages/review-words.ts';
import { SignInFirst } from '../people/sign-in-page.tsx';
import { askServer } from '../session/server-answer.ts';
import { AboutLine } from '../show/about-line.tsx';
import { showMoment } from '../show/show-moment.ts';
import { ListFilters } from './list-filters.tsx';
import type { ListedVisit } from './listed-visit.ts';
import { asParameters, type ListQuery, useListQuery } from './use-list-query.ts';

interface ListAnswer {
  readonly visits: readonly ListedVisit[];
  readonly total: number;
  readonly behind: number;
}

type Problem = { readonly sentence: string; readonly turnedAway: boolean };

const A_PAGE = 50;
const MOST = 200;
/** While the server still takes visits up, it is asked again after so long. */
const AGAIN_MS = 2_000;

/** The visits that the server holds, the latest activity first: searched, filtered, one line each. */
export function VisitList() {
  const [query, change] = useListQuery();
  const [shown, setShown] = useState(A_PAGE);
  const { answer, problem } = useVisits(query, shown);
  return (
    <main className="review-list">
      <h1>{REVIEW.visits}</h1>
      <nav className="list-ways">
        <a href="/">{REVIEW.technicianPage}</a> <a href="/fleet">{LIST.fleet}</a> <a href="/people">{PEOPLE.title}</a>
      </nav>
      {problem === undefined ? null : (
        <p className="told" role="alert">
          {problem.sentence}
        </p>
      )}
      {problem?.turnedAway === true ? <SignInFirst next="/review" /> : null}
      <ListFilters
        query={query}
        change={(changed) => {
          setShown(A_PAGE);
          change(changed);
        }}
      />
      <p role="status" className="list-count">
        {countWords(answer, query)}
      </p>
      <ul className="visit-lines">
        {answer?.visits.map((visit) => (
          <li key={visit.visit}>
            <VisitLine visit={visit} />
          </li>
        ))}
      </ul>
      {answer === undefined || answer.visits.length >= answer.total || shown >= MOST ? null : (
        <button type="button" className="control" onClick={() => setShown(Math.min(MOST, shown + A_PAGE))}>
          {LIST.more(Math.min(A_PAGE, answer.total - answer.visits.length))}
        </button>
      )}
      <AboutLine />
    </main>
  );
}

function countWords(answer: ListAnswer | undefined, query: ListQuery): string {
  if (answer === undefined) return LIST.looking;
  const { total, behind } = answer;
  if (behind > 0) return `${LIST.count(total)}. ${LIST.behind(behind)}`;
  if (total > 0) return LIST.count(total);
  if (query.words !== undefined && !HAS_WORD.test(query.words)) return LIST.noWord;
  return Object.keys(query).length === 0 ? REVIEW.noVisits : LIST.none;
}

/** What the server takes for a word of a search. */
const HAS_WORD = /[\p{L}\p{N}]/u;

/** One line of the list: state, site, finding with its certainty, what was done, and what a supervisor should see. */
function VisitLine({ visit }: { readonly visit: ListedVisit }) {
  const { said, closed, site, complaint, finding, likeliest, certainty = 0, parts, works, role, technician } = visit;
  const state = said !== undefined ? 'not-complete' : closed ? 'closed' : 'running';
  const done = LIST.done(parts, works);
  return (
    <a className="visit-card" href={`/review?visit=${encodeURIComponent(visit.visit)}`} data-state={state}>
      <span className="visit-when">
        <span className={`badge badge-${state}`}>{LIST.states[state]}</span>{' '}
        <time dateTime={new Date(visit.openedAt).toISOString()}>{showMoment(visit.openedAt)}</time>
      </span>
      <span className="visit-what" dir="auto">
        <strong>{site === '' ? visit.visit : site}</strong> <span className="quiet">{complaint}</span>
      </span>
      <span className="visit-found">
        {finding !== undefined
          ? LIST.found(finding, certainty)
          : likeliest === undefined
            ? LIST.nothingFound
            : LIST.likeliest(likeliest, certainty)}
        <span className="quiet"> · {done === '' ? LIST.nothingDone : done}</span>
      </span>
      <span className="visit-marks">
        {visit.unproven === 0 ? null : <span className="badge badge-danger">{LIST.unproven(visit.unproven)}</span>}
        {visit.cautionsOpen === 0 ? null : <span className="badge">{LIST.cautions(visit.cautionsOpen)}</span>}
        {visit.before === 0 ? null : <span className="badge">{LIST.before(visit.before, visit.serial)}</span>}
        {said === undefined ? null : <span className="badge">{REVIEW.notComplete(visit.events, said)}</span>}
        {role === 'trainee' ? <span className="badge">{LIST.trainee}</span> : null}
        {technician === '' ? null : (
          <span className="quiet" dir="auto">
            {technician}
          </span>
        )}
      </span>
    </a>
  );
}

function useVisits(query: ListQuery, shown: number): { readonly answer?: ListAnswer; readonly problem?: Problem } {
  const [state, setState] = useState<{ readonly answer?: ListAnswer; readonly problem?: Problem }>({});
  useEffect(() => {
    let wanted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const ask = async () => {
      const parameters = asParameters(query);
      parameters.set('limit', String(shown));
      const answer = await askServer<ListAnswer>('GET', `/api/list?${parameters}`);
      if (!wanted) return;
      if (answer.ok) {
        setState({ answer: answer.body });
        if (answer.body.behind > 0) timer = setTimeout(ask, AGAIN_MS);
        return;
      }
      const turnedAway = answer.status === 401 || answer.status === 403;
      setState({ problem: { sentence: answer.status === 0 ? REVIEW.serverGone : answer.sentence, turnedAway } });
    };
    void ask();
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [query, shown]);
  return state;
}
