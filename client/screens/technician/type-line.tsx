import { type FormEvent, useEffect, useRef } from 'react';
import { HEARD } from '../../words/pages/visit-words.ts';
import { DRAFT, type HeldInput } from '../session/held-inputs.ts';

/** Letters of one line: more than any note; our choice. */
const LONGEST_TYPED = 20_000;

interface TypeLineProps {
  /** Missing while nothing can be taken. */
  readonly onType: ((text: string, back: string) => void) | undefined;
  /** What was given earlier and is not in the record: its lines come back into the field, one after another. */
  readonly left: readonly HeldInput[];
  /** The line as it is being typed, to be held; with no words where nothing stands there. */
  readonly onDraft: (draft: HeldInput) => void;
}

/** The line to type on instead of saying it. It stays in sight whatever is scrolled. */
export function TypeLine({ onType, left, onDraft }: TypeLineProps) {
  const line = useRef<HTMLInputElement>(null);
  /** The one of what is left that stands in the field. */
  const back = useRef(DRAFT);
  useEffect(() => {
    const next = left.find(({ by }) => by === 'line');
    if (next === undefined || line.current === null || line.current.value !== '') return;
    line.current.value = next.words;
    back.current = next.id;
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const text = line.current?.value.trim() ?? '';
    if (text === '' || line.current === null || onType === undefined) return;
    line.current.value = '';
    onType(text, back.current);
    back.current = DRAFT;
  };
  return (
    <form className="type-line" onSubmit={submit}>
      <label className="reader-only" htmlFor="type-line">
        {HEARD.type}
      </label>
      <input
        id="type-line"
        ref={line}
        className="control"
        placeholder={HEARD.typeInstead}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        enterKeyHint="send"
        maxLength={LONGEST_TYPED}
        onInput={({ currentTarget: { value } }) => {
          onDraft({ id: back.current, by: 'line', words: value });
          if (value === '') back.current = DRAFT;
        }}
      />
      <button type="submit" className="control" disabled={onType === undefined}>
        {HEARD.send}
      </button>
    </form>
  );
}
