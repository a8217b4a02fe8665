import type { HeardUtterance } from '../../../grammar/visit/inputs.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { BECAUSE } from '../../words/talk/reasons.ts';
import type { Turn } from '../chart/turn.ts';
import { IN_PROOF, placesOpening, TAKEN_OFF } from '../rules/isolation.ts';
import { powerMayBeBack } from '../rules/power-may-be-back.ts';
import { endProofs } from './end-proofs.ts';

/**
 * Ends at once whatever the words may have ended, before any question is asked of them. What was reported of the
 * switches there is no longer believed: getting the proof back costs a proof.
 */
export function heedPower(turn: Turn, utterance: HeardUtterance): void {
  const { energy } = turn.context;
  const zones = powerMayBeBack(utterance, turn.context).filter((zone) => TAKEN_OFF.includes(energy[zone]));
  if (zones.length === 0) return;
  const { heard } = utterance.understanding;
  const words = SAY.maybeBack(
    zones,
    zones.filter((zone) => IN_PROOF.includes(energy[zone])),
  );
  for (const place of placesOpening(zones)) turn.record({ type: 'switch.reported', place, state: 'unknown' });
  for (const zone of zones.slice(0, 1)) turn.record({ type: 'hazard.warned', words, zone });
  turn.say('warning', words);
  endProofs(turn, zones, 'live', BECAUSE.maybeBack(heard));
}
