import { useEffect } from 'react';
import type { VisitSession } from '../session/visit-session.ts';

const HABIT_KEY = 'readback.ear';

/** Remembers on this device whether the ear was switched on. */
export function rememberEar(on: boolean): void {
  localStorage.setItem(HABIT_KEY, on ? 'on' : 'off');
}

/**
 * Listens again after the page was loaded anew, without a hand: where the ear was on, and the browser needs not to ask.
 */
export function useEarHabit(session: VisitSession): void {
  useEffect(() => {
    if (localStorage.getItem(HABIT_KEY) !== 'on') return;
    navigator.permissions
      ?.query({ name: 'microphone' })
      .then(({ state }) => (state === 'granted' ? session.talk.startEar() : undefined))
      // Some browsers do not tell: the ear then waits for its key.
      .catch(() => undefined);
  }, [session]);
}
