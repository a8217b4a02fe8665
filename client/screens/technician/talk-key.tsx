import { type KeyboardEvent, useEffect } from 'react';
import { KEY } from '../../words/pages/key-words.ts';

interface TalkKeyProps {
  readonly down: boolean;
  readonly onHold: (down: boolean) => void;
}

/** The key to hold while talking: on the screen, or the space bar outside of fields and other keys. */
export function TalkKey({ down, onHold }: TalkKeyProps) {
  useSpaceBar(onHold);
  const byKey = (event: KeyboardEvent, pressed: boolean) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    if (!event.repeat) onHold(pressed);
  };
  return (
    <button
      type="button"
      className="key full talk-key"
      aria-pressed={down}
      data-talk-key
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        onHold(true);
      }}
      onPointerUp={() => onHold(false)}
      onPointerCancel={() => onHold(false)}
      onKeyDown={(event) => byKey(event, true)}
      onKeyUp={(event) => byKey(event, false)}
      // A long press is held to talk, not to choose something.
      onContextMenu={(event) => event.preventDefault()}
    >
      {down ? KEY.talkDown : KEY.talkUp}
    </button>
  );
}

function useSpaceBar(onHold: (down: boolean) => void): void {
  useEffect(() => {
    const take = (event: globalThis.KeyboardEvent) => {
      if (event.key !== ' ' || event.repeat) return;
      if (event.target instanceof Element && event.target.closest('button, input, select, textarea, a, summary'))
        return;
      event.preventDefault();
      onHold(event.type === 'keydown');
    };
    const letGo = () => onHold(false);
    addEventListener('keydown', take);
    addEventListener('keyup', take);
    // The key may come up in another window.
    addEventListener('blur', letGo);
    return () => {
      removeEventListener('keydown', take);
      removeEventListener('keyup', take);
      removeEventListener('blur', letGo);
    };
  }, [onHold]);
}
