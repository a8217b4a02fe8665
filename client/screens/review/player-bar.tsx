import type { KeyboardEvent } from 'react';
import { PLAYER } from '../../words/pages/review-words.ts';
import { fragmentOf } from './media-fragment.ts';
import { type ReplayTimes, showMoment } from './replay-times.ts';
import type { TranscriptLine } from './transcript-lines.ts';
import { type Replay, SPEEDS } from './use-replay.ts';
import { upTo } from './visit-moments.ts';
import type { WallClock } from './wall-clock.ts';

interface PlayerBarProps {
  readonly replay: Replay;
  readonly times: ReplayTimes;
  readonly wall: WallClock;
  readonly lines: readonly TranscriptLine[];
  readonly count: number;
  readonly closed: boolean;
  /** Where a page holds two, each has its own. */
  readonly name?: string;
}

const LITTLE = 5;
const LOT = 60;

/** Play, pause, step and go to a moment, by pointer and by keys. */
export function PlayerBar({ replay, times, wall, lines, count, closed, name = PLAYER.panel }: PlayerBarProps) {
  const { end } = times;
  const { moment } = replay;
  const latest = upTo(lines, count).at(-1);
  const onKeyDown = (event: KeyboardEvent) => {
    const order = KEYS[event.key];
    if (order === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    if (order === 'play') replay.playing ? replay.pause() : replay.play();
    else if (order === 'on' || order === 'back') replay.step(order);
    else if (order === 'start') replay.seek(0);
    else if (order === 'end') replay.seek(end);
    else replay.seek(Math.min(end, moment + order));
  };
  return (
    <section className="player" aria-label={name}>
      <input
        type="range"
        min={0}
        max={Math.max(times.playedEnd, 0.1)}
        step={0.1}
        value={times.toPlayed(moment)}
        aria-label={PLAYER.moment}
        aria-valuetext={PLAYER.at(showMoment(moment), showMoment(end), latest?.text)}
        onChange={(event) => replay.seek(times.toMoment(Number(event.target.value)))}
        onKeyDown={onKeyDown}
      />
      <div className="player-keys">
        <button type="button" className="control" onClick={() => replay.step('back')} title={PLAYER.stepBack}>
          {PLAYER.back}
        </button>
        <button
          type="button"
          className="control play"
          onClick={() => (replay.playing ? replay.pause() : replay.play())}
        >
          {replay.playing ? PLAYER.pause : PLAYER.play}
        </button>
        <button type="button" className="control" onClick={() => replay.step('on')} title={PLAYER.stepOn}>
          {PLAYER.on}
        </button>
        <output className="player-time" aria-live="off">
          {PLAYER.time(showMoment(moment), showMoment(end))}
          <span className="player-wall"> {wall.at(moment)}</span>
          <span className="quiet player-count"> {PLAYER.entry(count)}</span>
        </output>
      </div>
      <div className="player-keys">
        {SPEEDS.map(({ name, factor }) => (
          <button
            type="button"
            className="control"
            key={name}
            aria-pressed={replay.speed === factor}
            onClick={() => replay.setSpeed(factor)}
          >
            {PLAYER.speeds[name]}
          </button>
        ))}
        {closed ? null : (
          <button type="button" className="control" aria-pressed={replay.following} onClick={() => replay.follow()}>
            {PLAYER.live}
          </button>
        )}
        <a href={fragmentOf(moment)} data-moment-link>
          {PLAYER.thisMoment}
        </a>
      </div>
    </section>
  );
}

/** Keys on the slider. A number is that many seconds. */
const KEYS: Readonly<Record<string, number | 'play' | 'on' | 'back' | 'start' | 'end'>> = {
  ' ': 'play',
  k: 'play',
  '.': 'on',
  ',': 'back',
  ArrowRight: LITTLE,
  ArrowUp: LITTLE,
  ArrowLeft: -LITTLE,
  ArrowDown: -LITTLE,
  PageUp: LOT,
  PageDown: -LOT,
  Home: 'start',
  End: 'end',
};
