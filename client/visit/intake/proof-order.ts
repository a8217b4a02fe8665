import type { ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { VisitContext } from '../chart/context.ts';
import { IN_PROOF, isolationOf, TO_BE_PROVED } from '../rules/isolation.ts';
import { hasNoLiveLeg, isGroundProved } from '../rules/proof-ground.ts';
import { callMayBeOn } from '../steps/dead-steps.ts';

/** What a proof of a zone still wants before its meter counts, in words: call off, opened, locked, its ground. */
export function missingBeforeProof(zone: ZoneId, context: VisitContext): string | undefined {
  const energy = context.energy[zone];
  if (IN_PROOF.includes(energy) && energy !== 'proving') return SAY.provenAlready(zone);
  if (callMayBeOn(zone, context, true)) return SAY.callOffFirst;
  if (!TO_BE_PROVED.includes(energy)) return SAY.nothingLocked;
  if (isolationOf(zone, context) !== 'locked') return SAY.notLocked;
  return isGroundProved(zone, context) || hasNoLiveLeg(zone, context) ? undefined : SAY.groundNotSeen(zone);
}
