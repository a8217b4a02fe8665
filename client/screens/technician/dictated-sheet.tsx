import type { FormEvent } from 'react';
import type { DictatedLine } from '../../../grammar/visit/dictated.ts';
import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import { DICTATED, dictationDetail, shownWords } from '../../words/shown/dictated-words.ts';
import { PlaySound } from '../show/play-sound.tsx';
import { Sheet } from './sheet.tsx';

interface DictatedSheetProps {
  readonly facts: Pick<VisitFacts, 'visit' | 'notes' | 'recommendations' | 'signatures'>;
  readonly onWrite: (of: number, text: string) => void;
  readonly onClose: () => void;
}

/** What was dictated, in its order: its sound, what was made of it, and a line to write it over. */
export function DictatedSheet({ facts, onWrite, onClose }: DictatedSheetProps) {
  const lines = dictatedLines(facts);
  return (
    <Sheet title={DICTATED.title} onClose={onClose} withBack>
      {lines.length === 0 ? <p className="quiet">{DICTATED.none}</p> : null}
      <ul className="dictated">
        {lines.map(({ heading, line }) => (
          <li key={`${line.seq}-${line.text}`} data-dictated={line.seq}>
            <p>
              <strong>{heading}:</strong> {shownWords(line)}
            </p>
            <p className="quiet">{dictationDetail(line)}</p>
            {line.sound === undefined ? null : <PlaySound sound={line.sound} of={heading} visit={facts.visit} />}
            <WriteOver heading={heading} line={line} onWrite={onWrite} />
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

interface WriteOverProps {
  readonly heading: string;
  readonly line: DictatedLine;
  readonly onWrite: (of: number, text: string) => void;
}

function WriteOver({ heading, line, onWrite }: WriteOverProps) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const text = String(new FormData(event.currentTarget).get('words') ?? '').trim();
    if (text !== '' && text !== line.text) onWrite(line.seq, text);
  };
  return (
    <form className="type-line" onSubmit={submit}>
      <input
        name="words"
        className="control"
        aria-label={`${DICTATED.write}: ${heading}`}
        // A guess is nothing to begin from.
        defaultValue={line.guessed === true ? '' : line.text}
        maxLength={300}
        autoComplete="off"
      />
      <button type="submit" className="control">
        {DICTATED.write}
      </button>
    </form>
  );
}

interface Headed {
  readonly heading: string;
  readonly line: DictatedLine;
}

function dictatedLines({ notes, recommendations, signatures }: DictatedSheetProps['facts']): readonly Headed[] {
  return [
    ...notes.map((line): Headed => ({ heading: line.from === undefined ? DICTATED.note : DICTATED.saying, line })),
    ...recommendations.map((line): Headed => ({ heading: DICTATED.recommendation, line })),
    ...signatures.map((line): Headed => ({ heading: DICTATED[line.who], line: { ...line, text: line.name } })),
  ].toSorted((a, b) => a.line.seq - b.line.seq);
}
