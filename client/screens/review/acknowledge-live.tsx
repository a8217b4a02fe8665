import { useEffect, useState } from 'react';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { REVIEW } from '../../words/pages/review-words.ts';
import { askServer } from '../session/server-answer.ts';
import { askWho, type Who } from '../session/who.ts';

interface AcknowledgeLiveProps {
  readonly visit: string;
  /** As it stands now. */
  readonly folded: FoldedVisit;
}

/** For a supervisor, while a trainee's visit runs: their word for the live steps, from this device of their own. */
export function AcknowledgeLive({ visit, folded }: AcknowledgeLiveProps) {
  const [who, setWho] = useState<Who>();
  const [told, setTold] = useState<string>();
  const runs = folded.role === 'trainee' && folded.summary === undefined;
  useEffect(() => {
    if (runs) void askWho().then(setWho);
  }, [runs]);
  const role = who?.person?.role;
  if (!runs || (role !== 'supervisor' && role !== 'keeper')) return null;
  const latest = folded.acknowledgements.at(-1);
  const acknowledge = () =>
    void askServer('POST', `/api/visits/${encodeURIComponent(visit)}/acknowledge`).then((answer) =>
      setTold(answer.ok ? REVIEW.told : answer.sentence),
    );
  return (
    <section data-acknowledge>
      <p>{REVIEW.acknowledgeWhy}</p>
      <button type="button" className="key warm" onClick={acknowledge}>
        {REVIEW.acknowledge}
      </button>
      <p role="status">{latest === undefined ? told : REVIEW.acknowledgedBy(latest.supervisor)}</p>
    </section>
  );
}
