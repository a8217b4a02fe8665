import { standingReadings } from '../../../grammar/visit/standing.ts';
import { standingOf, standingWords, WHY } from '../../words/talk/status-words.ts';
import type { VisitContext } from '../chart/context.ts';
import { provedWith } from '../rules/isolation.ts';
import { readOnceMore } from '../steps/choose-step.ts';

/** Where the visit stands: energy by zone as measured, readings so far, the leading suspect. */
export function statusWords(context: VisitContext): string {
  const { energy, assessment } = context;
  return standingWords(standingReadings(context).length, energy, assessment?.suspects[0]);
}

/**
 * Whether the zone of the step, else the outdoor unit, was measured dead: what the record holds, and no more. Where that
 * one was, and the outdoor unit was not, that is told first: nobody knows where the hands are.
 */
export function deadWords({ step, energy }: VisitContext): string {
  const zone = step === undefined || step.zone === 'none' ? 'outdoor-load' : provedWith(step.zone);
  const other = zone !== 'outdoor-load' && energy[zone] === 'proven-dead' && energy['outdoor-load'] !== 'proven-dead';
  return [...(other ? (['outdoor-load'] as const) : []), zone].map((one) => standingOf(one, energy[one])).join(' ');
}

/** A suspect below this is not named as one that a step tells from another. */
const NAMED = 0.01;

/** Why the next step is what it is: the leading suspects it can tell apart; no value is named before the reading. */
export function whyWords(context: VisitContext): string {
  const { assessment, step, phase, finding } = context;
  if (step?.source === 'energy') return powerWhy(phase);
  if (finding !== undefined && phase === 'repair') return WHY.finding(finding);
  if (step?.source === 'prove') return WHY.proof;
  if (assessment === undefined || assessment.suspects.length === 0) return WHY.nothingKnown;
  const again = step?.test === undefined ? undefined : readOnceMore(context);
  if (again !== undefined && again.id === step?.test) return again.wait === undefined ? WHY.onceMore : WHY.afterWait;
  const named = assessment.suspects.filter(({ probability }) => probability >= NAMED).slice(0, 2);
  return WHY.tellsApart(named, standingReadings(context).at(-1)?.reading);
}

function powerWhy(phase: VisitContext['phase']): string {
  return phase === 'testing' || phase === 'repair' || phase === 'prove' ? WHY.power[phase] : WHY.power.other;
}
