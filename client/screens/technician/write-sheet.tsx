import { type FormEvent, useRef } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { DICTATIONS, type DictatedAs } from '../../../grammar/vocabulary/job-items.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { Sheet } from './sheet.tsx';

interface WriteSheetProps {
  readonly signed: VisitContext['signed'];
  readonly onEnter: (meaning: Meaning, words: string) => void;
  readonly onClose: () => void;
}

const LABELS: Readonly<Record<DictatedAs, string>> = {
  recommendation: 'Recommend to the customer',
  technician: 'Signed by the technician, name',
  customer: 'Signed by the customer, name',
};

/** What is written rather than said: a recommendation, and the names of who signs. */
export function WriteSheet({ signed, onEnter, onClose }: WriteSheetProps) {
  const form = useRef<HTMLFormElement>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (form.current === null) return;
    const written = new FormData(form.current);
    for (const { as, name } of DICTATIONS) {
      const text = String(written.get(as) ?? '').trim();
      if (text !== '' && text !== signed[as as 'technician' | 'customer'])
        onEnter({ kind: 'dictated', as, text }, `${name} ${text}`);
    }
    onClose();
  };
  const absent = () => {
    onEnter({ kind: 'report', report: { type: 'job-item', item: 'customer-not-present' } }, 'customer is not present');
    onClose();
  };
  return (
    <Sheet title="Recommend, sign" onClose={onClose}>
      <form ref={form} className="supervisor" onSubmit={submit}>
        {DICTATIONS.map(({ as }) => (
          <label key={as}>
            {LABELS[as]}
            <input
              name={as}
              className="control"
              autoComplete="off"
              maxLength={as === 'recommendation' ? 300 : 80}
              defaultValue={as === 'recommendation' ? '' : (signed[as] ?? '')}
            />
          </label>
        ))}
        <div className="keys">
          <button type="submit" className="key warm wide">
            Record it
          </button>
          <button type="button" className="key" onClick={absent}>
            Customer not present
          </button>
          <button type="button" className="key" onClick={onClose}>
            Back
          </button>
        </div>
      </form>
    </Sheet>
  );
}
