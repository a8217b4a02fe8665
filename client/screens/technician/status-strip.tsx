import type { OutboxState } from '../../record/outbox.ts';
import type { PageMouthState } from '../../speaking/browser/page-mouth.ts';
import { STRIP } from '../../words/pages/visit-words.ts';
import type { HearingState } from '../session/page-hearing.ts';

interface StatusStripProps {
  readonly ear: HearingState;
  readonly mouth: PageMouthState;
  readonly outbox: OutboxState;
  readonly pace: 'brief' | 'full';
  readonly onEar: () => void;
  readonly onTalk: () => void;
  readonly onRetry: () => void;
}

/** Whether it listens, whether it speaks, whether the record is at the server and how much is not. */
export function StatusStrip({ ear, mouth, outbox, pace, onEar, onTalk, onRetry }: StatusStripProps) {
  const unsent = outbox.written - outbox.acknowledged;
  const half =
    mouth.voice !== undefined && mouth.speaking !== undefined && (ear.ear === 'listening' || ear.ear === 'hearing');
  return (
    <header className="strip">
      <button
        type="button"
        className={`chip ear-${ear.ear}`}
        data-ear={ear.ear}
        data-attending={ear.attending}
        onClick={onEar}
      >
        <span className="chip-sign" aria-hidden="true" />
        <span>
          {half ? STRIP.onlyStop : earWords(ear)}
          {half ? <span className="chip-note">{STRIP.speaking}</span> : null}
        </span>
      </button>
      <button type="button" className="chip talk" aria-pressed={pace === 'full'} onClick={onTalk}>
        <span>
          {pace === 'full' ? STRIP.fullTalk : STRIP.shortTalk}
          <span className="chip-note">{voiceWords(mouth)}</span>
        </span>
      </button>
      <button
        type="button"
        className={`chip link-${outbox.link.link}`}
        data-link={outbox.link.link}
        data-unsent={unsent}
        onClick={onRetry}
      >
        <span>
          {outbox.link.link === 'open' ? STRIP.server : STRIP.noServer}
          <span className="chip-note">{STRIP.unsent(unsent)}</span>
        </span>
      </button>
    </header>
  );
}

/** A voice that is still being loaded is not one that is missing. */
function voiceWords({ voice, isComing }: PageMouthState): string {
  if (voice !== undefined) return STRIP.spoken;
  return isComing ? STRIP.voiceComes : STRIP.noVoice;
}

/** While it attends to nothing it is ready all the same: what for is said instead. */
function earWords({ ear, attention, attending }: HearingState): string {
  if (attending || (ear !== 'listening' && ear !== 'hearing')) return STRIP.ear[ear];
  return attention === 'wake' ? STRIP.sayWakeWord : STRIP.holdToTalk;
}
