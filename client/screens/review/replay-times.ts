import type { VisitEvent } from '../../../grammar/visit/events.ts';
import type { InputTime } from '../../../grammar/visit/inputs.ts';

/** A stretch longer than this without any event is shortened in replay, in seconds. */
const QUIET_FROM = 4;
/** How long a shortened stretch takes at normal speed, in seconds. */
const QUIET_TAKES = 1.5;

/**
 * The clock of a replay. A moment is in seconds since the first event, by the recording device's own running clock; it
 * never goes back (a device may have been restarted with a wrong wall clock). What is played is the same with the quiet
 * stretches shortened: by it the replay runs and the time line is drawn.
 */
export class ReplayTimes {
  /** The moment of each event. */
  readonly moments: readonly number[];
  readonly #played: readonly number[];

  constructor(moments: readonly number[]) {
    this.moments = moments;
    let played = 0;
    this.#played = moments.map((moment, index) => {
      const gap = moment - (moments[index - 1] ?? moment);
      played += gap > QUIET_FROM ? QUIET_TAKES : gap;
      return played;
    });
  }

  /**
   * A remark was written elsewhere, by another clock: it stands at the moment of the event before it. Where a running
   * clock began anew (another program, a device that was restarted) it is carried on by the wall clock.
   */
  static of(events: readonly VisitEvent[]): ReplayTimes {
    let latest = 0;
    let first: number | undefined;
    let wall = Number.NaN;
    const moments = events.map((event) => {
      if (event.type === 'remark.made') return latest;
      const { at, mono } = timeOf(event);
      first ??= mono;
      const passed = Date.parse(at) - wall;
      if (mono - first < latest * 1000 - BEGAN_ANEW_MS && passed > 0) first = mono - latest * 1000 - passed;
      wall = Date.parse(at);
      latest = Math.max(latest, (mono - first) / 1000);
      return latest;
    });
    return new ReplayTimes(moments);
  }

  get end(): number {
    return this.moments.at(-1) ?? 0;
  }

  get playedEnd(): number {
    return this.#played.at(-1) ?? 0;
  }

  /** The moment of the event with this number, 1 for the first. */
  momentOf(seq: number): number {
    return this.moments[seq - 1] ?? 0;
  }

  /** How many events have happened by a moment. */
  countAt(moment: number): number {
    return countUpTo(this.moments, moment);
  }

  toPlayed(moment: number): number {
    return between(this.moments, this.#played, moment);
  }

  toMoment(played: number): number {
    return between(this.#played, this.moments, played);
  }

  /** The moment after the replay has run on for so many seconds. */
  runOn(moment: number, seconds: number): number {
    return this.toMoment(this.toPlayed(moment) + seconds);
  }

  /** The moment of the next event, or of the last one before. Events of the same moment count as one. */
  step(moment: number, way: 'on' | 'back'): number {
    if (way === 'on') return this.moments[this.countAt(moment)] ?? this.end;
    return this.moments[countUpTo(this.moments, moment - 2 * SAME) - 1] ?? 0;
  }

  /** Stretches that are shortened and long enough to be told of: where they begin, and how long they are, in seconds. */
  longStretches(from: number): readonly { readonly begins: number; readonly lasts: number }[] {
    return this.moments.flatMap((moment, index) => {
      const begins = this.moments[index - 1] ?? moment;
      return moment - begins >= from ? [{ begins, lasts: moment - begins }] : [];
    });
  }
}

/** A running clock that lies so far behind itself began anew. */
const BEGAN_ANEW_MS = 1_000;

/** The time of what stands in a record. */
export function timeOf(event: VisitEvent): InputTime {
  return event.type === 'input.taken' ? event.input.time : event.time;
}

/** Moments nearer than this are the same, in seconds. */
const SAME = 1e-6;

function countUpTo(times: readonly number[], limit: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] as number) <= limit + SAME) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** From one rising scale to another, straight between their points; held at the ends. */
function between(from: readonly number[], to: readonly number[], at: number): number {
  const count = countUpTo(from, at);
  const [a, b] = [from[count - 1], from[count]];
  const [x, y] = [to[count - 1], to[count]];
  if (a === undefined || x === undefined) return to[0] ?? 0;
  if (b === undefined || y === undefined) return to.at(-1) ?? 0;
  return x + ((at - a) / (b - a)) * (y - x);
}

/** "2:03.5", from ten minutes on "12:03" or "1:02:03". */
export function showMoment(moment: number): string {
  const tenths = Math.round(moment * 10);
  const hours = Math.floor(tenths / 36_000);
  const minutes = Math.floor(tenths / 600) % 60;
  const seconds = (tenths % 600) / 10;
  const whole = String(Math.floor(seconds)).padStart(2, '0');
  if (hours > 0) return `${hours}:${String(minutes).padStart(2, '0')}:${whole}`;
  return minutes >= 10 ? `${minutes}:${whole}` : `${minutes}:${seconds.toFixed(1).padStart(4, '0')}`;
}
