import { useCallback, useEffect, useRef, useState } from 'react';
import { fragmentOf, momentOf } from './media-fragment.ts';
import type { ReplayTimes } from './replay-times.ts';

export const SPEEDS = [
  { name: 'slow', factor: 0.5 },
  { name: 'normal', factor: 1 },
  { name: 'fast', factor: 6 },
] as const;

export interface Replay {
  /** Seconds since the first event. */
  readonly moment: number;
  /** How many entries have happened as it is shown: those up to the one that was chosen, else all of the moment. */
  readonly count: number;
  readonly playing: boolean;
  /** Keeps to the newest event as it comes. */
  readonly following: boolean;
  readonly speed: number;
  seek(moment: number): void;
  /** Goes to an entry by its number, 1 for the first, though others were written in the same instant. */
  choose(seq: number): void;
  play(): void;
  pause(): void;
  follow(): void;
  step(way: 'on' | 'back'): void;
  setSpeed(factor: number): void;
}

/** The one clock of a replay. The moment is kept in the address, so that a link leads to it. */
export function useReplay(times: ReplayTimes, startAtEnd: boolean): Replay {
  const [moment, setMoment] = useState(() => momentOf(location.hash) ?? 0);
  const [playing, setPlaying] = useState(false);
  const [following, setFollowing] = useState(() => momentOf(location.hash) === undefined && startAtEnd);
  const [speed, setSpeed] = useState(1);
  const [chosen, setChosen] = useState<number>();
  const { end } = times;
  const shown = following ? end : moment;

  const seek = useCallback((to: number) => {
    const clamped = Math.max(0, to);
    setFollowing(false);
    setMoment(clamped);
    keepInAddress(clamped);
  }, []);

  const choose = useCallback(
    (seq: number) => {
      setChosen(seq);
      seek(times.momentOf(seq));
    },
    [times, seek],
  );

  useEffect(() => {
    const moved = () => {
      const asked = momentOf(location.hash);
      if (asked !== undefined) seek(asked);
    };
    addEventListener('hashchange', moved);
    return () => removeEventListener('hashchange', moved);
  }, [seek]);

  usePlaying(playing, times, speed, setMoment, () => setPlaying(false));

  const isAtChosen = chosen !== undefined && times.momentOf(chosen) === moment;
  const happened = isAtChosen ? chosen : times.countAt(moment);

  return {
    moment: shown,
    count: following ? times.moments.length : happened,
    playing,
    following,
    speed,
    seek,
    choose,
    setSpeed,
    play: () => {
      setFollowing(false);
      setMoment(shown >= end ? 0 : shown);
      setPlaying(true);
    },
    pause: () => {
      setPlaying(false);
      seek(shown);
    },
    follow: () => {
      setPlaying(false);
      setFollowing(true);
      clearTimeout(settling);
      history.replaceState(history.state, '', location.pathname + location.search);
    },
    step: (way) => {
      setPlaying(false);
      seek(times.step(shown, way));
    },
  };
}

/** The address follows a moment that is dragged once it rests: a browser takes only so many changes of it. */
const RESTS_MS = 150;
let settling: ReturnType<typeof setTimeout> | undefined;

function keepInAddress(moment: number): void {
  clearTimeout(settling);
  const { pathname, search } = location;
  settling = setTimeout(() => {
    if (location.pathname !== pathname || location.search !== search) return;
    history.replaceState(history.state, '', fragmentOf(moment));
  }, RESTS_MS);
}

/** Moves the moment on with the screen's frames while playing, and stops at the end. */
function usePlaying(
  playing: boolean,
  times: ReplayTimes,
  speed: number,
  setMoment: (change: (before: number) => number) => void,
  ended: () => void,
): void {
  const latest = useRef({ times, ended });
  latest.current = { times, ended };
  useEffect(() => {
    if (!playing) return;
    let frame = 0;
    let before = performance.now();
    const tick = (now: number) => {
      const seconds = ((now - before) / 1000) * speed;
      before = now;
      setMoment((moment) => {
        const next = latest.current.times.runOn(moment, seconds);
        if (next >= latest.current.times.end) queueMicrotask(latest.current.ended);
        return next;
      });
      frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [playing, speed, setMoment]);
}
