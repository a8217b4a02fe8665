import { type InputTime, MS_A_MINUTE, type VisitInput } from '../../../grammar/visit/inputs.ts';
import { ZONES } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF } from '../rules/isolation.ts';
import { lapseProofs } from './end-proofs.ts';
import { QUIET_MINUTES } from './take-timer.ts';

/** Wall and monotonic clock may drift apart by so much while a proof stands, in minutes (our rule). */
const APART_MINUTES = 2;
/** After so long a gap in the record nobody knows what was done meanwhile, in minutes (our rule). */
const AWAY_MINUTES = 2;

/**
 * A proof holds only while time is known to have passed as it did: it ends where the wall clock went back, where the
 * two clocks went apart, or where the record has a gap in which nobody can have been heard.
 *
 * @param before the time of the input before this one
 */
export function heedClock(turn: Turn, { type, time }: VisitInput, before: InputTime): void {
  const { energy, clockBase, phase } = turn.context;
  if (phase === 'closed' || !ZONES.some((zone) => IN_PROOF.includes(energy[zone]))) {
    turn.talk({ clockBase: time });
    return;
  }
  const wall = Date.parse(time.at);
  const apart = Math.abs(wall - Date.parse(clockBase.at) - (time.mono - clockBase.mono));
  if (wall < Date.parse(before.at) || apart > APART_MINUTES * MS_A_MINUTE) {
    return lapseProofs(turn, BECAUSE.clockJumped, SAY.clockJumped);
  }
  const away = (wall - Date.parse(before.at)) / MS_A_MINUTE;
  if (type === 'restored.visit' && away > AWAY_MINUTES) return lapseProofs(turn, BECAUSE.away, SAY.away);
  // A timer that comes late looks at the quiet minutes for itself.
  if (type === 'timer.elapsed' || time.mono - before.mono <= QUIET_MINUTES * MS_A_MINUTE) return;
  lapseProofs(turn, BECAUSE.quiet, SAY.quiet);
}
