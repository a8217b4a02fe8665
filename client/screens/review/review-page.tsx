import './list.css';
import './review.css';
import { NAME_PATTERN } from '../../../grammar/visit/envelope.ts';
import { REVIEW } from '../../words/pages/review-words.ts';
import { PrintedRecord } from './printed-record.tsx';
import { ReplayView } from './replay-view.tsx';
import { VisitList } from './visit-list.tsx';

/** The supervisor's page: the list of visits, one visit on its time line (`/review?visit=…#t=…`), or printed (`&print`). */
export function ReviewPage() {
  const asked = new URLSearchParams(location.search);
  const visit = asked.get('visit');
  if (visit !== null && !new RegExp(NAME_PATTERN).test(visit)) return <NoVisit />;
  if (visit !== null && asked.has('print')) return <PrintedRecord visit={visit} />;
  return visit === null ? <VisitList /> : <ReplayView visit={visit} />;
}

/** The address names what no visit is called. */
function NoVisit() {
  return (
    <main className="review-list">
      <h1>{REVIEW.noVisit}</h1>
      <p role="alert">{REVIEW.noSuchName}</p>
      <a href="/review">{REVIEW.allVisits}</a>
    </main>
  );
}
