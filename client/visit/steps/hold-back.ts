import type { Step, VisitContext } from '../chart/context.ts';
import { cautionsFor, dueCautions } from '../rules/cautions-due.ts';
import { isProvenDead, needsDead, zonesToProve } from './choose-step.ts';

/**
 * The interlock that stands between a step and its prompt, the first of them; undefined where it may be asked. `proof`:
 * hands or an ohmmeter would meet a zone that is not proven dead. `caution`: one is to be spoken and acknowledged first.
 * `supervisor`: a trainee's live step wants one.
 */
export function holdBack(step: Step, context: VisitContext): 'proof' | 'caution' | 'supervisor' | undefined {
  if (needsDead(step.needs) && !zonesToProve(step).every((zone) => isProvenDead(zone, context))) return 'proof';
  if (dueCautions(step, context).length > 0) return 'caution';
  const alone = context.role === 'trainee' && context.supervisor === undefined;
  return alone && cautionsFor(step).length > 0 ? 'supervisor' : undefined;
}
