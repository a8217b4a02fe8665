import { type FormEvent, useRef } from 'react';
import { HEARD } from '../../words/pages/visit-words.ts';
import type { Glance } from '../glance/glance.ts';

/** Letters of one line: more than any note; our choice. */
const LONGEST_TYPED = 20_000;

interface HeardPanelProps extends Pick<Glance, 'heard' | 'said'> {
  /** What the page already shows large; it is not shown a second time, only read out. */
  readonly shown: string;
  /** Missing while nothing can be taken. */
  readonly onType: ((text: string) => void) | undefined;
}

/** What was heard, what was understood, what was answered; and the line to type on instead. */
export function HeardPanel({ heard, said, shown, onType }: HeardPanelProps) {
  const line = useRef<HTMLInputElement>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const text = line.current?.value.trim() ?? '';
    if (text === '' || line.current === null || onType === undefined) return;
    line.current.value = '';
    onType(text);
  };
  return (
    <section className="heard" aria-label={HEARD.panel}>
      <dl>
        <div>
          <dt>{HEARD.heard}</dt>
          <dd data-heard dir="auto">
            {heard === undefined ? HEARD.nothing : HEARD.shortly(heard.text)}
          </dd>
        </div>
        <div>
          <dt>{HEARD.understood}</dt>
          <dd data-understood dir="auto">
            {heard === undefined ? HEARD.none : HEARD.shortly(heard.understood)}
          </dd>
        </div>
        <div className={said !== undefined && shown.includes(said.text) ? 'reader-only' : undefined}>
          <dt>{HEARD.said}</dt>
          {/* Every prompt is read out by a screen reader too; a caution or warning at once. */}
          <dd data-said aria-live="polite">
            {said?.kind === 'caution' || said?.kind === 'warning' ? '' : said?.text}
            <span role="alert">{said?.kind === 'caution' || said?.kind === 'warning' ? said.text : ''}</span>
          </dd>
        </div>
      </dl>
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
        />
        <button type="submit" className="control" disabled={onType === undefined}>
          {HEARD.send}
        </button>
      </form>
    </section>
  );
}
