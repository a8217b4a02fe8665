import './review.css';
import { ReplayView } from './replay-view.tsx';
import { VisitList } from './visit-list.tsx';

/** The supervisor's page: the list of visits, or one visit on its time line (`/review?visit=…#t=…`). */
export function ReviewPage() {
  const visit = new URLSearchParams(location.search).get('visit');
  return visit === null ? <VisitList /> : <ReplayView visit={visit} />;
}
