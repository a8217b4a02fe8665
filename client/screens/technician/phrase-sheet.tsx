import { useMemo, useState } from 'react';
import { findPhrases, PHRASE_GROUPS, phrasesNow } from '../../../grammar/export/phrases-now.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { PHRASES } from '../../words/pages/key-words.ts';
import { Sheet } from './sheet.tsx';

interface PhraseSheetProps {
  readonly expectation: Expectation;
  readonly onClose: () => void;
}

/** What may be said now, what is asked first; found by any of its words. */
export function PhraseSheet({ expectation, onClose }: PhraseSheetProps) {
  const [wanted, setWanted] = useState('');
  const all = useMemo(() => phrasesNow(expectation), [expectation]);
  const found = findPhrases(all, wanted);
  return (
    <Sheet title={PHRASES.title} onClose={onClose} withBack>
      <label className="find">
        {PHRASES.find}
        <input
          className="control"
          type="search"
          autoComplete="off"
          value={wanted}
          onChange={(event) => setWanted(event.target.value)}
        />
      </label>
      <p className="quiet" role="status">
        {PHRASES.found(found.length)}
      </p>
      {PHRASE_GROUPS.map((group) => {
        const phrases = found.filter((one) => one.group === group);
        return phrases.length === 0 ? null : (
          <section key={group} className="key-group" aria-label={PHRASES.groups[group]}>
            <h3>{PHRASES.groups[group]}</h3>
            <ul>
              {phrases.map(({ phrase }) => (
                <li key={phrase} className="phrase">
                  {phrase}
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </Sheet>
  );
}
