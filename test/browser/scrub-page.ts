/** Milliseconds from navigation. */
export interface Opened {
  /** The last event that the server held was here. */
  readonly read: number;
  /** The frame that showed the first screen: answers, talk, the moment and the player, all of them of the whole visit. */
  readonly open: number;
  /** The frame that showed the charts and the tables too: all of it. */
  readonly whole: number;
}

/** In the page: when it was opened. */
export function openedAfter(): Opened {
  const at = (name: string) => performance.getEntriesByName(name).at(-1)?.startTime ?? Number.NaN;
  return { read: at('readback.replay-read'), open: at('readback.replay-open'), whole: at('readback.replay-drawn') };
}

/** In the page: sets the slider on with each frame, there and back, and gives the time between frames. Milliseconds. */
export async function scrubSlider(seconds: number): Promise<number[]> {
  const slider = document.querySelector<HTMLInputElement>('.player input[type="range"]');
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
  if (slider === null || set === undefined) throw new Error('there is no slider');
  const most = Number(slider.max);
  return new Promise((resolve) => {
    const times: number[] = [];
    const began = performance.now();
    const tick = (now: number) => {
      times.push(now);
      const passed = (now - began) / 1000;
      if (passed > seconds) return resolve(times.slice(1).map((time, at) => time - (times[at] as number)));
      set.call(slider, String(Math.abs((((passed / seconds) * 4) % 2) - 1) * most));
      slider.dispatchEvent(new Event('input', { bubbles: true }));
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
}

/** The same with the pointer over the charts. */
export async function scrubCharts(seconds: number): Promise<number[]> {
  const tracks = document.querySelector<HTMLElement>('.tracks');
  if (tracks === null) throw new Error('there are no charts');
  const box = tracks.getBoundingClientRect();
  const at = (type: string, share: number) =>
    new PointerEvent(type, {
      bubbles: true,
      pointerId: 1,
      button: 0,
      clientX: box.left + 120 + share * (box.width - 140),
      clientY: box.top + 20,
    });
  // A pointer of a script cannot be captured: the page is asked whether it is.
  tracks.setPointerCapture = () => undefined;
  tracks.hasPointerCapture = () => true;
  tracks.dispatchEvent(at('pointerdown', 0));
  return new Promise((resolve) => {
    const times: number[] = [];
    const began = performance.now();
    const tick = (now: number) => {
      times.push(now);
      const passed = (now - began) / 1000;
      if (passed > seconds) return resolve(times.slice(1).map((time, n) => time - (times[n] as number)));
      tracks.dispatchEvent(at('pointermove', Math.abs((((passed / seconds) * 4) % 2) - 1)));
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
}
