import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { timeOf } from './replay-times.ts';

/** Where the wall clock of the device was set: the number of the first event after it, and by how many seconds. */
export interface ClockJump {
  readonly seq: number;
  readonly seconds: number;
}

/** Clocks drift; further apart than this one of them was set. */
const TOLERATED_S = 60;

/** Compares what passed on the wall clock with what passed on the running clock, event by event. */
export function clockJumps(events: readonly VisitEvent[]): readonly ClockJump[] {
  let before: { readonly wall: number; readonly mono: number } | undefined;
  return events.flatMap((event, index) => {
    if (event.type === 'remark.made') return [];
    const { at, mono } = timeOf(event);
    const now = { wall: Date.parse(at), mono };
    const seconds = before === undefined ? 0 : Math.round((now.wall - before.wall - (mono - before.mono)) / 1000);
    before = now;
    return Math.abs(seconds) > TOLERATED_S ? [{ seq: index + 1, seconds }] : [];
  });
}
