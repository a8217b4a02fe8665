import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { workWords } from '../../words/things/job-words.ts';
import type { Turn } from '../chart/turn.ts';
import { handsAtWork } from '../rules/hands-at.ts';
import { mendedBy } from '../rules/repairs.ts';
import { doubtUntried } from './heed-power.ts';
import { heedFirstReset } from './heed-return.ts';
import { beginProof, PROOF_STEPS, stateUnprovedFinding } from './take-work.ts';
import { tellUnproven } from './tell-unproven.ts';

/**
 * Something mended without a part. What it cures among the suspects restarts the diagnosis from the readings that still
 * hold; where it cures the finding, or the leading suspect, it is the repair and its proof begins.
 */
export function takeDoneWork(turn: Turn, { work }: Extract<Meaning, { kind: 'work' }>): void {
  const { context } = turn;
  const ranked = context.assessment?.suspects.map((suspect) => suspect.fault) ?? [];
  const suspects = context.finding === undefined ? ranked : [context.finding.fault, ...ranked];
  const repairs = mendedBy(work, suspects);
  const [leading] = suspects;
  // A breaker is reset for other reasons too, and then its report was answered: it mends a trip alone.
  const isReset = work === 'breaker-reset' && repairs.length === 0;
  const isRepair =
    (leading !== undefined && repairs.includes(leading)) ||
    (context.phase === 'repair' && context.finding === undefined && !isReset);
  if (isRepair) stateUnprovedFinding(turn, repairs);
  const number = context.readingCount + 1;
  turn.record({ type: 'work.done', work, repairs, number, words: workWords(work) });
  tellUnproven(turn, workWords(work), handsAtWork(work, repairs, context));
  if (work === 'supply-restored') doubtUntried(turn, workWords(work));
  if (work === 'breaker-reset') heedFirstReset(turn);
  if (!isReset) turn.say('readback', SAY.work(work));
  if (isRepair) beginProof(turn, PROOF_STEPS);
}
