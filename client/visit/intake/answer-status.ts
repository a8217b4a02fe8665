import type { Phase } from '../../../grammar/visit/events.ts';
import { ZONE_NAMES, ZONES } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../chart/context.ts';
import { capital, faultWords, readbackWords } from '../words/prompts.ts';

/** Where the visit stands: energy by zone as measured, readings so far, the leading suspect. */
export function statusWords(context: VisitContext): string {
  const energy = ZONES.filter((zone) => context.energy[zone] !== 'unknown')
    .map((zone) => `${ZONE_NAMES[zone]} ${context.energy[zone].replace('-', ' ')}`)
    .join(', ');
  const leading = context.assessment?.suspects[0];
  const suspect =
    leading === undefined ? '' : ` Leading suspect: ${faultWords(leading.fault)}, ${percent(leading.probability)}.`;
  return `${context.readings.length} readings. ${energy === '' ? 'Energy unknown everywhere, counts as live' : capital(energy)}.${suspect}`;
}

/** Why power or the call is to be changed now, by what comes after it. */
const ENERGY_WHY: Readonly<Partial<Record<Phase, string>>> = {
  testing: 'The next test wants the power so: this step brings it there.',
  repair: 'The repair is hands-on: it wants the unit proven dead.',
  prove: 'The repair is proved with the unit running.',
};

/** Why the next step is what it is: the leading suspects it can tell apart; no value is named before the reading. */
export function whyWords(context: VisitContext): string {
  const { assessment, step } = context;
  if (step?.source === 'energy') return ENERGY_WHY[context.phase] ?? 'The next test wants the power so.';
  if (context.finding !== undefined && context.phase === 'repair') {
    return `The readings point to ${faultWords(context.finding.fault)}, ${percent(context.finding.probability)}.`;
  }
  if (step?.source === 'prove') return 'The repair is proved by reading the same things again.';
  if (assessment === undefined || assessment.suspects.length === 0) return 'Nothing is known yet; every reading helps.';
  const named = assessment.suspects
    .filter(({ probability }) => probability >= 0.01)
    .slice(0, 2)
    .map(({ fault, probability }) => `${faultWords(fault)} ${percent(probability)}`)
    .join(', ');
  const last = context.readings.at(-1);
  const after = last === undefined ? '' : ` Last: ${readbackWords(last.reading)}`;
  return `It tells most for its time between: ${named}.${after}`;
}

export function percent(probability: number): string {
  return `${Math.round(probability * 100)} percent`;
}
