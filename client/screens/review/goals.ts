import type { ClockJump } from './clock-jumps.ts';
import { LANDMARKS, type Landmark, type TranscriptLine } from './transcript-lines.ts';

/** What may be gone to from one to the next: a landmark, or where the device’s clock was set. */
export type Goal = Landmark | 'clock';
export type Goals = ReadonlyMap<Goal, readonly number[]>;

/** Where each kind of goal stands, by the numbers of its events. */
export function goalsOf(lines: readonly TranscriptLine[], jumps: readonly ClockJump[]): Goals {
  const goals = new Map<Goal, number[]>(LANDMARKS.map((landmark) => [landmark, []]));
  for (const { landmark, seq } of lines) if (landmark !== undefined) goals.get(landmark)?.push(seq);
  return new Map<Goal, number[]>([...goals, ['clock', jumps.map(({ seq }) => seq)]]);
}

/** The next of a kind after so many events, and from the last on to the first; or the one before. */
export function nextGoal(seqs: readonly number[], count: number, way: 'on' | 'back'): number | undefined {
  return way === 'on'
    ? (seqs.find((seq) => seq > count) ?? seqs[0])
    : (seqs.findLast((seq) => seq < count) ?? seqs.at(-1));
}
