import type { ReadbackBrowser } from '../browser/readback-browser.ts';

/** One turn of running and standing still, in milliseconds: the shorter, the more like a slower processor. */
const TURN_MS = 4;

/**
 * Slows the page's process, with its workers and audio thread, by letting it run only one part in `times` (stopped and
 * continued by signals). The browser's own throttle reaches the page's main thread alone, not the recogniser's worker.
 * Timers of this process come late by a millisecond or so: how long it stood still too long is taken off the next turn.
 * @returns ends it
 */
export async function slowDown(browser: ReadbackBrowser, times: number): Promise<() => void> {
  const pages = (await browser.processes()).filter(({ type }) => type === 'renderer').map(({ id }) => id);
  let ended = false;
  let owed = 0;
  let since = performance.now();
  const signal = (name: 'SIGSTOP' | 'SIGCONT') => {
    for (const id of pages) process.kill(id, name);
    const spent = performance.now() - since;
    since += spent;
    return spent;
  };
  const stop = () => {
    if (ended) return;
    owed += signal('SIGSTOP') * (times - 1);
    setTimeout(go, Math.max(1, owed));
  };
  const go = () => {
    owed -= signal('SIGCONT');
    setTimeout(stop, TURN_MS / times);
  };
  stop();
  return () => {
    ended = true;
    signal('SIGCONT');
  };
}
