import type { Meaning } from '../../../grammar/phrases/meaning.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { workWords } from '../../words/things/job-words.ts';
import type { Turn } from '../chart/turn.ts';
import { mendedBy } from '../rules/repairs.ts';
import { stateUnprovedFinding } from './take-work.ts';

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
  const isRepair =
    (leading !== undefined && repairs.includes(leading)) ||
    (context.phase === 'repair' && context.finding === undefined);
  if (isRepair) stateUnprovedFinding(turn, repairs);
  const number = context.readingCount + 1;
  turn.record({ type: 'work.done', work, repairs });
  turn.set({
    readingCount: number,
    parts: [...context.parts, { part: work, work, ratings: {}, words: workWords(work), number, doubts: [] }],
    undoable: [...context.undoable, { kind: 'part', number }],
  });
  turn.say('readback', SAY.work(work));
  if (repairs.length === 0 && !isRepair) return;
  turn.set({
    evidence: [...context.evidence, ...repairs.map((fault) => ({ seq: number, kind: 'repair' as const, fault }))],
    evidenceNumber: context.evidenceNumber + 1,
  });
  if (!isRepair) return;
  turn.set({
    settled: [
      ...context.settled.filter((id) => !id.startsWith('prove.') && id !== 'energy.covers-on'),
      'repair.part-fitted',
    ],
  });
  turn.raise({ type: 'phase.go', to: 'prove' });
}
