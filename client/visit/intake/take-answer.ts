import type { RankedSuspects } from '../../../grammar/visit/inputs.ts';
import type { VisitContext } from '../context.ts';
import { faultWords, SAY } from '../prompts.ts';
import type { Turn } from '../turn.ts';
import { percent } from './answer-status.ts';

/** Takes an answer of the diagnosis; one that was computed for earlier evidence is dropped. */
export function takeAnswer(turn: Turn, answer: RankedSuspects): void {
  const { context } = turn;
  if (answer.forSeq !== context.evidenceNumber) return;
  turn.set({ assessment: answer });
  turn.record({
    type: 'suspects.ranked',
    version: answer.version,
    forSeq: answer.forSeq,
    suspects: answer.suspects,
    hazards: answer.hazards,
  });
  if (answer.contradiction !== undefined) {
    turn.record({ type: 'contradiction.noticed', numbers: answer.contradiction });
    if (context.assessment?.contradiction === undefined) turn.say('warning', SAY.contradiction);
  }
  if (context.phase === 'testing' && answer.done) stateFinding(turn, answer);
  else if (context.phase === 'testing' && answer.next.length === 0) {
    turn.say('answer', SAY.nothingNext);
    turn.raise({ type: 'phase.go', to: 'repair' });
  }
}

/** The finding, with the readings it stands on, before any part is condemned or fitted. */
function stateFinding(turn: Turn, answer: RankedSuspects): void {
  const leading = answer.suspects[0];
  if (leading === undefined) return;
  const evidence = unfitting(turn.context);
  turn.set({ finding: leading });
  turn.record({ type: 'finding.stated', fault: leading.fault, probability: leading.probability, evidence });
  turn.say('answer', SAY.finding(faultWords(leading.fault), percent(leading.probability)));
  turn.raise({ type: 'phase.go', to: 'repair' });
}

/** Numbers of the readings that do not fit their rule: what a finding stands on. */
export function unfitting(context: VisitContext): readonly number[] {
  return context.readings.filter((item) => item.judgedWord === 'does not fit').map((item) => item.number);
}
