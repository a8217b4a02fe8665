import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { lateBeingGiven } from '../../visit/intake/late-cautions.ts';
import { cautionsFor } from '../../visit/rules/cautions-due.ts';
import { askWords } from '../../visit/steps/ask-step.ts';
import { NOW } from '../../words/pages/visit-words.ts';

/** The one thing that is asked, held or cautioned of now. */
export interface Asked {
  readonly kind: 'caution' | 'question' | 'step' | 'held' | 'closed' | 'waiting';
  readonly title: string;
  readonly words: string;
}

/** One thing at a time: the open caution, else the open question, else the step. */
export function askedNow(folded: FoldedVisit, context: VisitContext): Asked {
  const lastSaid = (kind: string) => folded.said.findLast((line) => line.kind === kind)?.text;
  if (folded.summary !== undefined) return { kind: 'closed', title: NOW.titles.closed, words: folded.summary.plain };
  const late = lateBeingGiven(context);
  // What is being cautioned of stands before all else until it was given whole, or it was not shown.
  if (late.length > 0)
    return { kind: 'caution', title: NOW.titles.caution, words: late.map(({ words }) => words).join(' ') };
  if (context.caution?.isSpoken === false) return cautionNow(context.caution, context);
  if (isPut(context)) return { kind: 'question', title: NOW.titles.check, words: NOW.check };
  if (context.held) return { kind: 'held', title: NOW.titles.held, words: context.lastPrompt?.text ?? '' };
  if (context.caution !== undefined) return cautionNow(context.caution, context);
  const question = openQuestion(context);
  if (question !== undefined)
    return { kind: 'question', title: NOW.titles.question, words: context.questions[0]?.words ?? '' };
  if (needsSupervisor(context))
    return { kind: 'question', title: NOW.titles.supervisor, words: lastSaid('warning') ?? '' };
  if (context.step !== undefined)
    return { kind: 'step', title: NOW.titles.step, words: folded.steps.at(-1)?.words ?? lastSaid('step') ?? '' };
  return { kind: 'waiting', title: NOW.titles.waiting, words: context.lastPrompt?.text ?? '' };
}

/**
 * What was warned of since the latest words were heard, while something else is asked: a question does not push it off.
 *
 * @param shown what stands on the page already
 */
export function warnedNow(folded: FoldedVisit, shown: string): string {
  const since = folded.heard.at(-1)?.seq ?? 0;
  const warnings = folded.said.filter(
    ({ kind, seq, text }) => kind === 'warning' && seq > since && !shown.includes(text),
  );
  return folded.summary === undefined ? [...new Set(warnings.map(({ text }) => text))].join(' ') : '';
}

function cautionNow(caution: NonNullable<VisitContext['caution']>, context: VisitContext): Asked {
  return { kind: 'caution', title: NOW.titles.caution, words: cautionWords(caution, context) };
}

/** All that is cautioned of, however many breaths it was said in, and the step that was asked with it. */
function cautionWords({ spoken, withStep }: NonNullable<VisitContext['caution']>, context: VisitContext): string {
  const words = spoken.map((caution) => caution.words);
  const { step } = context;
  return [...words, ...(withStep && step !== undefined ? [askWords(step, context)] : [])].join(' ');
}

/** A trainee's live step waits for a supervisor (the visit itself holds it; this only says so). */
export function needsSupervisor({ role, supervisor, step, caution }: VisitContext): boolean {
  return (
    role === 'trainee' &&
    supervisor === undefined &&
    caution === undefined &&
    step !== undefined &&
    cautionsFor(step).length > 0
  );
}

/** The lone-worker check was put and is not answered yet. */
export function isPut({ check }: VisitContext): boolean {
  return check !== undefined && check.asked > 0;
}

/** Whether the caution that is due was given whole: before that, while it is queued behind other words too, no key is. */
export function cautionGiven(folded: FoldedVisit, context: VisitContext): boolean {
  const { caution } = context;
  if (lateBeingGiven(context).length > 0) return false;
  const given = folded.cautions.filter(({ late, acknowledgedAt }) => !late && acknowledgedAt === undefined);
  return caution === undefined || caution.spoken.every(({ id }) => given.some((one) => one.caution === id));
}
