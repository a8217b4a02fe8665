import type { MicrophoneState } from '../../listening/browser/page-ear.ts';
import type { OutboxState } from '../../record/outbox.ts';
import type { PageMouthState } from '../../speaking/browser/page-mouth.ts';
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

const EAR_WORDS: Readonly<Record<MicrophoneState['ear'], string>> = {
  off: 'ear off',
  starting: 'ear starting',
  listening: 'listening',
  hearing: 'hearing you',
  failed: 'ear failed',
};

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
          {half ? 'only “stop”' : earWords(ear)}
          {half ? <span className="chip-note">speaking</span> : null}
        </span>
      </button>
      <button type="button" className="chip talk" aria-pressed={pace === 'full'} onClick={onTalk}>
        <span>
          {pace === 'full' ? 'full talk' : 'short talk'}
          <span className="chip-note">{mouth.voice === undefined ? 'no voice' : 'spoken'}</span>
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
          {outbox.link.link === 'open' ? 'server' : 'no server'}
          <span className="chip-note">{unsent} unsent</span>
        </span>
      </button>
    </header>
  );
}

/** While it attends to nothing it is ready all the same: what for is said instead. */
function earWords({ ear, attention, attending }: HearingState): string {
  if (attending || (ear !== 'listening' && ear !== 'hearing')) return EAR_WORDS[ear];
  return attention === 'wake' ? 'say your wake word' : 'hold to talk';
}
