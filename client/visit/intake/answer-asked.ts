import type { Meaning, OrderDetails } from '../../../grammar/phrases/meaning.ts';
import { samePlaces } from '../../../grammar/visit/judge-reading.ts';
import { latestReading, openQuestion, standingReadings } from '../../../grammar/visit/standing.ts';
import type { CommandId } from '../../../grammar/vocabulary/commands.ts';
import { ANSWER, TELLS } from '../../words/talk/answer-words.ts';
import { SAY } from '../../words/talk/prompts.ts';
import { meaningWords } from '../../words/things/meaning-words.ts';
import type { Step, VisitContext } from '../chart/context.ts';
import { unreadSections } from '../rules/charged-sections.ts';
import { missingPairs } from '../rules/proof-plan.ts';
import { askWords, placeStepWords } from '../steps/ask-step.ts';
import { isSettled, minutesRunning } from '../steps/choose-step.ts';
import { holdBack } from '../steps/hold-back.ts';
import { ARRIVE_PLAN, CLOSE_PLAN, PROVE_PLAN, SPLIT_AFTER_MINUTES } from '../steps/plans.ts';
import { deadWords } from './answer-status.ts';

type Asked = Extract<
  CommandId,
  'what-heard' | 'recall' | 'where-probes' | 'what-expected' | 'what-means' | 'suspects' | 'what-left' | 'is-it-dead'
>;

/** What is answered to a question about the talk or the work. It changes nothing. */
export function answerTo(asked: Asked, context: VisitContext, { of }: OrderDetails = {}): string {
  switch (asked) {
    case 'what-heard':
      return heardWords(context);
    case 'recall':
      return recallWords(context, of);
    case 'where-probes':
      return placingWords(context);
    case 'what-expected':
      return expectedWords(context, of);
    case 'what-means':
      return meansWords(context);
    case 'suspects':
      return suspectsWords(context);
    case 'what-left':
      return leftWords(context);
    case 'is-it-dead':
      return deadWords(context);
  }
}

/** What was heard last, and whether it was taken. */
function heardWords(context: VisitContext): string {
  const question = openQuestion(context);
  if (question !== undefined && 'reading' in question) {
    return ANSWER.asked(meaningWords({ kind: 'reading', reading: question.reading }) ?? '');
  }
  const { heard } = context;
  if (heard === undefined) return ANSWER.nothingHeard;
  const words = heard.verdict === 'rejected' ? undefined : meaningWords(heard.meaning);
  if (words === undefined) return ANSWER.notTaken(heard.heard);
  return heard.verdict === 'logged' || isTaken(heard.meaning, context) ? ANSWER.taken(words) : ANSWER.asked(words);
}

/** What was asked back may have been taken since, at a yes. */
function isTaken(meaning: Meaning, context: VisitContext): boolean {
  const latest = latestReading(context)?.reading;
  if (meaning.kind !== 'reading' || latest === undefined) return false;
  return samePlaces(latest.at, meaning.reading.at) && latest.value === meaning.reading.value;
}

/** The latest reading at a place, else the latest of all. */
function recallWords(context: VisitContext, of: OrderDetails['of']): string {
  if (of === undefined) {
    const latest = latestReading(context);
    return latest === undefined ? ANSWER.nothingRead : ANSWER.read(latest.reading);
  }
  const line = standingReadings(context).findLast(({ reading }) =>
    of.some(({ quantity, at }) => quantity === reading.quantity && samePlaces(at, reading.at)),
  );
  if (line !== undefined) return ANSWER.read(line.reading);
  const [first] = of;
  return first === undefined ? ANSWER.nothingRead : ANSWER.notRead(first.at);
}

/** Nobody is told where to put probes before the step itself may be asked. */
function placingWords(context: VisitContext): string {
  const { step, caution } = context;
  if (step === undefined) return ANSWER.nothingAsked;
  if (caution !== undefined) return SAY.cautionFirst;
  const interlock = holdBack(step, context);
  if (interlock === 'proof') return SAY.notProvenDead;
  if (interlock === 'supervisor') return SAY.supervisorFirst;
  return placeStepWords(step, context);
}

/** What a reading tells, on both its sides; a value is never named before it is read. */
function expectedWords({ step, proof, ...context }: VisitContext, of: OrderDetails['of']): string {
  const [named] = of ?? [];
  if (named !== undefined) return TELLS[named.quantity];
  if (proof !== undefined || step?.id.startsWith('energy.pair@')) return ANSWER.countsUntilWhole;
  if (step === undefined) return ANSWER.nothingAsked;
  switch (step.ask.kind) {
    case 'reading':
      return TELLS[step.ask.quantity];
    case 'look':
      return ANSWER.seeWhich(step.ask.answers);
    case 'action':
      return ANSWER.nothingToPlace(askWords(step, { ...context, step, proof }));
  }
}

/** How the latest reading stands against its rule, and what all of them point to so far. */
function meansWords(context: VisitContext): string {
  const latest = latestReading(context);
  if (latest === undefined) return ANSWER.nothingRead;
  return ANSWER.means(latest.judged?.word, context.phase === 'testing' ? context.assessment?.suspects[0] : undefined);
}

/** A suspect less likely than this is not counted as one that is left. */
const STILL_LIKELY = 0.05;
/** So many are named. */
const MOST_NAMED = 3;

/** What it may still be, the likeliest first: beside what was found, where something was. */
function suspectsWords({ assessment, finding }: VisitContext): string {
  const likely = (assessment?.suspects ?? []).filter(
    ({ fault, probability }) => probability >= STILL_LIKELY && fault !== finding?.fault,
  );
  if (likely.length === 0 && finding !== undefined) return SAY.finding(finding.fault);
  return likely.length === 0
    ? ANSWER.nothingLikely
    : ANSWER.mayBe(likely.slice(0, MOST_NAMED).map(({ fault }) => fault));
}

function leftWords(context: VisitContext): string {
  const { proof, step, phase } = context;
  if (proof !== undefined) return ANSWER.pairsLeft(missingPairs(proof));
  if (step?.ask.kind === 'action' && step.ask.done === 'capacitors-discharged' && step.zone !== 'none') {
    return ANSWER.sectionsLeft(unreadSections(step.zone, context).map(({ at }) => at));
  }
  const open = (plan: readonly Step[]) => plan.filter((one) => !isSettled(one, context)).length;
  switch (phase) {
    case 'arrive':
      return ANSWER.left.arrive(open(ARRIVE_PLAN));
    case 'testing': {
      const likely = context.assessment?.suspects.filter(({ probability }) => probability >= STILL_LIKELY) ?? [];
      return ANSWER.left.testing(likely.length);
    }
    case 'repair':
      return ANSWER.left.repair;
    case 'prove':
      return ANSWER.left.prove(open(PROVE_PLAN), Math.max(0, Math.ceil(SPLIT_AFTER_MINUTES - minutesRunning(context))));
    case 'close':
    case 'closed':
      return ANSWER.left.close(open(CLOSE_PLAN));
  }
}
