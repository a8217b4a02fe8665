import type { ReadbackBrowser } from '../browser/readback-browser.ts';

/** One turn of running and standing still, in milliseconds. */
const TURN_MS = 20;

/**
 * Slows the page's process, with its workers and audio thread, by letting it run only one part in `times` (stopped and
 * continued by signals). The browser's own throttle reaches the page's main thread alone, not the recogniser's worker.
 * @returns ends it
 */
export async function slowDown(browser: ReadbackBrowser, times: number): Promise<() => void> {
  const pages = (await browser.processes()).filter(({ type }) => type === 'renderer').map(({ id }) => id);
  let ended = false;
  const signal = (name: 'SIGSTOP' | 'SIGCONT') => {
    for (const id of pages) process.kill(id, name);
  };
  const turn = () => {
    if (ended) return;
    signal('SIGSTOP');
    setTimeout(
      () => {
        signal('SIGCONT');
        setTimeout(turn, TURN_MS / times);
      },
      TURN_MS - TURN_MS / times,
    );
  };
  turn();
  return () => {
    ended = true;
    signal('SIGCONT');
  };
}
