import { type FormEvent, useRef } from 'react';
import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { DICTATIONS, type DictatedAs } from '../../../grammar/vocabulary/job-items.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { MORE, WRITE } from '../../words/pages/key-words.ts';
import { PAGE } from '../../words/pages/page-words.ts';
import { Sheet } from './sheet.tsx';

/** A supervisor has a sheet of their own. */
const WRITTEN = DICTATIONS.flatMap((row) => (row.as === 'supervisor' ? [] : [row]));

interface WriteSheetProps {
  readonly signatures: VisitContext['signatures'];
  readonly onEnter: (meaning: Meaning, words: string) => void;
  readonly onClose: () => void;
}

/** What is written rather than said: a recommendation, and the names of who signs. */
export function WriteSheet({ signatures, onEnter, onClose }: WriteSheetProps) {
  const signed = (who: string): string | undefined => signatures.find((one) => one.who === who)?.name;
  const form = useRef<HTMLFormElement>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (form.current === null) return;
    const written = new FormData(form.current);
    for (const { as, name } of WRITTEN) {
      const text = String(written.get(as) ?? '').trim();
      if (text !== '' && text !== signed(as)) onEnter({ kind: 'dictated', as, text }, WRITE.heard(name, text));
    }
    onClose();
  };
  const absent = () => {
    onEnter({ kind: 'report', report: { type: 'job-item', item: 'customer-not-present' } }, WRITE.absentHeard);
    onClose();
  };
  return (
    <Sheet title={MORE.write} onClose={onClose}>
      <form ref={form} className="supervisor" onSubmit={submit}>
        {WRITTEN.map(({ as }) => (
          <label key={as}>
            {WRITE[as]}
            <input
              name={as}
              className="control"
              autoComplete="off"
              maxLength={isName(as) ? 80 : 300}
              defaultValue={isName(as) ? (signed(as) ?? '') : ''}
            />
          </label>
        ))}
        <div className="keys">
          <button type="submit" className="key first wide">
            {WRITE.record}
          </button>
          <button type="button" className="key" onClick={absent}>
            {WRITE.absent}
          </button>
          <button type="button" className="key" onClick={onClose}>
            {PAGE.back}
          </button>
        </div>
      </form>
    </Sheet>
  );
}

function isName(as: DictatedAs): as is 'technician' | 'customer' {
  return as === 'technician' || as === 'customer';
}
