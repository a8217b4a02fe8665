import type { RankedSuspects } from '../../../grammar/visit/inputs.ts';
import { standingReadings } from '../../../grammar/visit/standing.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import { ANSWER } from '../../words/talk/answer-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import type { Turn } from '../chart/turn.ts';
import { readOnceMore } from '../steps/choose-step.ts';
import { nothingNextWords } from './nothing-next.ts';

/** Takes an answer of the diagnosis; one that was computed for earlier evidence is dropped. */
export function takeAnswer(turn: Turn, answer: RankedSuspects): void {
  const { context } = turn;
  if (answer.forSeq !== context.evidenceNumber) return;
  turn.record({
    type: 'suspects.ranked',
    version: answer.version,
    forSeq: answer.forSeq,
    suspects: answer.suspects,
    hazards: answer.hazards,
  });
  explainReading(turn, answer, context.assessment);
  if (answer.contradiction !== undefined) {
    turn.record({ type: 'contradiction.noticed', numbers: answer.contradiction });
    if (context.assessment?.contradiction === undefined) turn.say('warning', SAY.contradiction);
  }
  const again = context.phase === 'testing' ? readOnceMore(turn.context) : undefined;
  if (again !== undefined) {
    turn.raise({ type: 'step.set-aside' });
  } else if (context.phase === 'testing' && answer.done && answer.excluded === undefined) stateFinding(turn, answer);
  else if (context.phase === 'testing' && answer.next.length === 0) {
    turn.say('answer', answer.excluded ? SAY.noneOfTheList(answer.excluded) : nothingNextWords(turn.context));
  }
}

/** Where the test that was to be read once more is passed over, the finding stands on what there is. */
export function goOnWithout(turn: Turn, step: Step): void {
  const { assessment, phase } = turn.context;
  if (phase === 'testing' && assessment?.done === true && step.test === assessment.confirm)
    stateFinding(turn, assessment);
}

/** Full talk says, after a reading, what it has done to the suspects: never before, and only where it moved them. */
function explainReading(turn: Turn, answer: RankedSuspects, before: RankedSuspects | undefined): void {
  const { pace, role, phase } = turn.context;
  if ((pace === 'brief' && role !== 'trainee') || phase !== 'testing' || answer.done || before === undefined) return;
  const moved = answer.suspects
    .map(({ fault, probability }) => ({ fault, probability, by: probability - probabilityOf(fault, before) }))
    .filter(({ by }) => Math.abs(by) >= MOVED)
    .toSorted((one, other) => Math.abs(other.by) - Math.abs(one.by));
  const [more, less] = [moved.find(({ by }) => by > 0), moved.find(({ by }) => by < 0)];
  if (more !== undefined || less !== undefined) turn.say('answer', ANSWER.moreLikely(more, less));
}

function probabilityOf(fault: FaultId, { suspects }: RankedSuspects): number {
  return suspects.find((suspect) => suspect.fault === fault)?.probability ?? 0;
}

/** A suspect has moved when its probability has changed by this much. Our choice. */
const MOVED = 0.03;

/** The finding, with the readings it stands on, before any part is condemned or fitted. */
function stateFinding(turn: Turn, answer: RankedSuspects): void {
  const leading = answer.suspects[0];
  if (leading === undefined) return;
  const evidence = unfitting(turn.context);
  const unproved = answer.proof?.unproved ?? [];
  turn.record({
    type: 'finding.stated',
    fault: leading.fault,
    probability: leading.probability,
    evidence,
    ...(unproved.length > 0 ? { unproved } : {}),
  });
  turn.say('answer', SAY.finding(leading.fault, unproved));
}

/** Numbers of the readings that do not fit their rule: what a finding stands on. */
export function unfitting(context: VisitContext): readonly number[] {
  return standingReadings(context)
    .filter((item) => item.judged?.word === 'does not fit')
    .map((item) => item.number);
}
