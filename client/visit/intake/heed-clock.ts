import { MS_A_MINUTE, type VisitInput } from '../../../grammar/visit/inputs.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { lapseProofs, QUIET_MINUTES } from './take-timer.ts';

/** Wall and monotonic clock may drift apart by so much while a proof stands, in minutes (our rule). */
const APART_MINUTES = 2;

/**
 * A proof holds only while time is known to have passed as it did: it ends where the wall clock went back, where the
 * two clocks went apart, or where the record has a gap in which nobody can have been heard. Read before the input is.
 *
 * @returns whether a proof ended
 */
export function heedClock(turn: Turn, { type, time }: VisitInput): boolean {
  const { energy, now, clockBase, phase } = turn.context;
  if (phase === 'closed' || !ZONES.some((zone) => IN_PROOF.includes(energy[zone]))) {
    turn.set({ clockBase: time });
    return false;
  }
  const wall = Date.parse(time.at);
  const apart = Math.abs(wall - Date.parse(clockBase.at) - (time.mono - clockBase.mono));
  if (wall < Date.parse(now.at) || apart > APART_MINUTES * MS_A_MINUTE) {
    lapseProofs(turn, BECAUSE.clockJumped, SAY.clockJumped);
    return true;
  }
  // A timer that comes late looks at the quiet minutes for itself.
  if (type === 'timer.elapsed' || time.mono - now.mono <= QUIET_MINUTES * MS_A_MINUTE) return false;
  lapseProofs(turn, BECAUSE.quiet, SAY.quiet);
  return true;
}
