import { useEffect, useState } from 'react';
import { findPhrases, PHRASE_GROUPS, type PhraseNow } from '../../../grammar/export/find-phrases.ts';
import type { Expectation } from '../../../grammar/phrases/meaning.ts';
import { PHRASES } from '../../words/pages/key-words.ts';
import type { VisitSession } from '../session/visit-session.ts';
import { Sheet } from './sheet.tsx';

interface PhraseSheetProps {
  /** What is listed is of this moment. */
  readonly expectation: Expectation;
  readonly session: Pick<VisitSession, 'phrases'>;
  readonly onClose: () => void;
}

/** What may be said now, what is asked first; found by any of its words. */
export function PhraseSheet({ expectation, session, onClose }: PhraseSheetProps) {
  const [wanted, setWanted] = useState('');
  const [all, setAll] = useState<readonly PhraseNow[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew as what is expected changes
  useEffect(() => {
    let gone = false;
    void session.phrases().then((phrases) => gone || setAll(phrases));
    return () => {
      gone = true;
    };
  }, [session, expectation]);
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
