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
      if (ended || document.visibilityState === 'hidden' || lock?.released === false) return;
      // A device without wake locks, or one that is low on power, refuses: the visit goes on all the same.
      const got = await navigator.wakeLock?.request('screen').catch(() => undefined);
      if (ended) return got?.release();
      lock = got;
      // Taken away while the page is in front too, when the battery is low: asked for again once.
      got?.addEventListener('release', take, { once: true });
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
