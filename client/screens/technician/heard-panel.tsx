import { HEARD } from '../../words/pages/visit-words.ts';
import type { Glance } from '../glance/glance.ts';

interface HeardPanelProps extends Pick<Glance, 'heard' | 'said'> {
  /** What the page already shows large; it is not shown a second time, only read out. */
  readonly shown: string;
}

/** What was heard, what was understood, what was answered. */
export function HeardPanel({ heard, said, shown }: HeardPanelProps) {
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
    </section>
  );
}
