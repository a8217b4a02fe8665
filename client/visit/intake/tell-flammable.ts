import type { VisitOutcome } from '../../../grammar/visit/events.ts';
import { OPENS_REFRIGERANT } from '../../../grammar/visit/opens-refrigerant.ts';
import { cautionById } from '../../words/talk/caution-words.ts';
import type { Turn } from '../chart/turn.ts';
import { type FlammableCaution, isFlammable, wasTold } from '../rules/flammable.ts';

/** A flammable refrigerant is said as such when it is learnt, and with what is told of the work, each once in a visit. */
export function tellFlammable(turn: Turn, recorded: readonly VisitOutcome[]): void {
  if (!isFlammable(turn.context.unit)) return;
  for (const event of recorded) {
    const caution = cautionIn(event);
    if (caution === undefined) continue;
    // The gate of a unit has told it already.
    if (caution === 'flammable-arrival' && turn.context.gate === 'A3-refrigerant') continue;
    // Whoever reads it from the plate is told again what it means.
    if (caution !== 'flammable-arrival' && (wasTold(caution, turn.context) || isHeard(caution, turn))) continue;
    const { words, source } = cautionById(caution);
    turn.record({ type: 'flammable.told', caution, words, source });
    turn.warn(words, 'outdoor-load');
  }
}

/** Spoken whole with the step that this answers. */
function isHeard(id: FlammableCaution, { context: { caution } }: Turn): boolean {
  return caution?.isSpoken === true && caution.spoken.some((one) => one.id === id);
}

function cautionIn(event: VisitOutcome): FlammableCaution | undefined {
  switch (event.type) {
    case 'visit.opened':
      return 'flammable-arrival';
    case 'nameplate.logged':
      return event.field === 'refrigerant' ? 'flammable-arrival' : undefined;
    case 'part.fitted':
      return OPENS_REFRIGERANT[event.part] ? 'flammable-opening' : undefined;
    case 'work.done':
      return OPENS_REFRIGERANT[event.work] ? 'flammable-opening' : undefined;
    case 'item.reported':
      return event.item === 'circuit-opened' ? 'flammable-opening' : undefined;
    case 'refrigerant.told':
      return event.what === 'flame-lit' ? 'flammable-flame' : 'flammable-opening';
    case 'reading.logged': {
      const { quantity, value } = event.reading;
      return quantity === 'mass' && typeof value === 'number' && value < 0 ? 'flammable-opening' : undefined;
    }
    case 'switch.reported':
      return event.state === 'closed' ? 'flammable-power' : undefined;
    case 'proof.began':
    case 'proof.recorded':
      return 'flammable-proof';
    default:
      return undefined;
  }
}
