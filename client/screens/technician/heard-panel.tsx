import { HEARD } from '../../words/pages/visit-words.ts';
import type { Glance } from '../glance/glance.ts';

interface HeardPanelProps extends Pick<Glance, 'heard' | 'said'> {
  /** What the page already shows large; it is not shown a second time, only read out. */
  readonly shown: string;
}

/** An answer of more letters takes more than a line of a phone: what is less than an answer makes room for it. */
const ONE_LINE = 35;

/** What was heard, what was understood, what was answered. */
export function HeardPanel({ heard, said, shown }: HeardPanelProps) {
  const isShown = said !== undefined && shown.includes(said.text);
  const isLong = !isShown && (said?.text.length ?? 0) > ONE_LINE;
  return (
    <section className={isLong ? 'heard answered' : 'heard'} aria-label={HEARD.panel}>
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
        <div className={isShown ? 'reader-only' : undefined}>
          <dt>{HEARD.said}</dt>
          {/* Every prompt is read out by a screen reader too; a caution or warning at once. */}
          <dd data-said aria-live="polite">
            {said?.kind === 'caution' || said?.kind === 'warning' ? '' : said?.text}
            <span role="alert">{said?.kind === 'caution' || said?.kind === 'warning' ? said.text : ''}</span>
          </dd>
        </div>
      </dl>
    </section>
  );
}
