import './list.css';
import './review.css';
import { PrintedRecord } from './printed-record.tsx';
import { ReplayView } from './replay-view.tsx';
import { VisitList } from './visit-list.tsx';

/** The supervisor's page: the list of visits, one visit on its time line (`/review?visit=…#t=…`), or printed (`&print`). */
export function ReviewPage() {
  const asked = new URLSearchParams(location.search);
  const visit = asked.get('visit');
  if (visit !== null && asked.has('print')) return <PrintedRecord visit={visit} />;
  return visit === null ? <VisitList /> : <ReplayView visit={visit} />;
}
