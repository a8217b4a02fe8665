import { memo } from 'react';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { ANSWERS, answersOf } from '../../words/shown/answer-lines.ts';

/** What whoever opens a visit wants to know first: what was wrong, how sure, what was done, does it cool, was it done rightly. */
export const Answers = memo(function Answers({ folded }: { readonly folded: FoldedVisit }) {
  return (
    <dl className="answers" aria-label={ANSWERS.title}>
      {answersOf(folded).map(({ id, question, answer, details, danger }) => (
        <div key={id} data-answer={id} className={danger ? 'answer answer-danger' : 'answer'}>
          <dt>{question}</dt>
          <dd>
            <strong dir="auto">{answer}</strong>
            {details.length === 0 ? null : (
              <span className="answer-details" dir="auto" title={details.join('\n')}>
                {details.join(' · ')}
              </span>
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
});
