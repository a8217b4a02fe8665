import { useEffect } from 'react';

/**
 * Keeps the screen on while a visit runs, since a locked screen takes the microphone away. The lock is lost whenever
 * the page is hidden, and taken again when it comes back.
 */
export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let ended = false;
    const take = async () => {
      if (document.visibilityState === 'hidden') return;
      // A device without wake locks, or one that is low on power, refuses: the visit goes on all the same.
      const got = await navigator.wakeLock?.request('screen').catch(() => undefined);
      if (ended) await got?.release();
      else lock = got;
    };
    void take();
    document.addEventListener('visibilitychange', take);
    return () => {
      ended = true;
      document.removeEventListener('visibilitychange', take);
      void lock?.release();
    };
  }, []);
}
