import type { VisitFacts } from '../../../grammar/visit/facts.ts';
import { REFRIGERANT_CLASSES, type UnitProfile } from '../../../grammar/vocabulary/unit-profile.ts';
import type { CautionId } from '../../words/talk/caution-words.ts';
import type { Step } from '../chart/context.ts';
import { repairOpensRefrigerant } from './repairs.ts';

export type FlammableCaution = Extract<CautionId, `flammable-${string}`>;

/** Class A2L burns slowly, A3 readily; a unit with A3 is gated beside. */
export function isFlammable({ refrigerant }: UnitProfile): boolean {
  return refrigerant !== undefined && FLAMMABLE.includes(REFRIGERANT_CLASSES[refrigerant]);
}

const FLAMMABLE: readonly string[] = ['A2L', 'A3'];

/** Whether it was said already, with a step or with what was told. */
export function wasTold(caution: FlammableCaution, { acknowledged, flammableTold }: VisitFacts): boolean {
  return flammableTold.includes(caution) || acknowledged.some((key) => key.startsWith(`${caution}@`));
}

/** What a flammable refrigerant adds to a step, once in a visit. */
export function flammableCautions(step: Step, facts: VisitFacts): readonly FlammableCaution[] {
  if (!isFlammable(facts.unit)) return [];
  const caution = cautionOf(step, facts);
  return caution === undefined || wasTold(caution, facts) ? [] : [caution];
}

function cautionOf({ id, ask, source, needs }: Step, { finding }: VisitFacts): FlammableCaution | undefined {
  if (id === 'refrigerant.recovered') return 'flammable-opening';
  if (source === 'prove' && needs.power === 'on') return 'flammable-running';
  if (ask.kind !== 'action') return undefined;
  if (ask.done === 'power-on') return 'flammable-power';
  if (ask.done === 'absence-proved') return 'flammable-proof';
  return ask.done === 'part-fitted' && repairOpensRefrigerant(finding?.fault) ? 'flammable-opening' : undefined;
}
