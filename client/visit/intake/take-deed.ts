import { SAY } from '../../words/talk/prompts.ts';
import type { ReportedDeed } from '../../words/things/deed-words.ts';
import type { Turn } from '../chart/turn.ts';
import { followCircuitDeed } from './take-refrigerant.ts';

/** A part taken out or put back, a cover, a deed by hand: read back. */
export function takeDeed(turn: Turn, report: ReportedDeed): void {
  turn.say('readback', SAY.deed(report));
  followCircuitDeed(turn, report);
}
