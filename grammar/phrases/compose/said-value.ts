import type { QuantityId, UnitCode, Value } from '../../vocabulary/quantities.ts';
import { type UnitChoice, USUAL_CHOICE } from '../../vocabulary/unit-choice.ts';
import type { UnclearReason } from '../meaning.ts';
import type { Item, SaidNumber } from './segment.ts';

/** What was said of a value, taken from a segment's items. */
export interface Said {
  readonly value: Value;
  /** The number, where one was said and not a word that stands for it. */
  readonly number?: SaidNumber;
  readonly range?: { readonly low: number; readonly high: number };
  readonly peak?: true;
  readonly tone?: true;
  /** "nothing": no volts, but on ohms an open circuit. */
  readonly nothing?: true;
  readonly doubt?: UnclearReason;
  readonly units: readonly UnitCode[];
  /** A unit was said by its own name: "degrees" alone names no scale. */
  readonly named?: true;
  /** What the unit and the words beside it leave to be measured; undefined where nothing of the kind was said. */
  readonly of: readonly QuantityId[] | undefined;
}

/** The value of a segment: a number, a range, a peak, or a word that stands for a value. */
export function saidValue(items: readonly Item[], choice: UnitChoice | undefined): Said | undefined {
  const numbers = items.filter((item) => item.tag === 'said');
  const moving = items.find((item) => item.tag === 'moving');
  const word = items.find((item) => item.tag === 'value');
  const unit = {
    units: unitsSaid(items, choice),
    ...(items.some((item) => item.tag === 'unit' && !item.asChosen) && { named: true as const }),
    of: measured(items),
  };
  const [first, second] = numbers;
  if (moving?.how === 'range' && first && second) return { ...rangeOf(first, second), ...unit };
  if (first !== undefined) {
    const broken = numbers.some(({ gaps }) => gaps.inside || gaps.after);
    // An "O" alone is a letter of "O L" as well: zero and open are never one letter apart.
    const letter = first.words.length === 1 && first.spokenIn.letters.has(first.words[0]!);
    const isUnsure = letter || first.number.form === 'pointless';
    const doubt = broken
      ? { doubt: 'needed-repair' as const }
      : isUnsure
        ? { doubt: 'several-values-fit' as const }
        : {};
    const peak = moving === undefined ? {} : { peak: true as const, doubt: 'several-values-fit' as const };
    return { value: first.number.value, number: first, ...unit, ...doubt, ...peak };
  }
  switch (word?.is) {
    case 'zero':
      return { value: 0, ...unit };
    case 'nothing':
      return { value: 0, ...unit, nothing: true };
    case 'open':
      return { value: 'open', ...unit };
    case 'tone':
      return { value: 0, ...unit, tone: true };
    case 'dead':
      // A claim more than a reading: "the load side is dead".
      return { value: 0, ...unit, doubt: 'several-values-fit' };
    case 'shorted':
      return { value: 0, ...unit, tone: true, doubt: 'several-values-fit' };
    default:
      return undefined;
  }
}

/** The units that were said, in their order; a word that names no scale stands for the chosen one. */
export function unitsSaid(items: readonly Item[], choice: UnitChoice = USUAL_CHOICE): readonly UnitCode[] {
  return items.flatMap((item) => {
    if (item.tag !== 'unit') return [];
    return [item.asChosen ? choice.temperature : item.unit];
  });
}

/** What the unit and the words beside it leave to be measured. */
function measured(items: readonly Item[]): readonly QuantityId[] | undefined {
  const said = items.flatMap((item) => (item.tag === 'unit' || item.tag === 'measures' ? [item.of] : []));
  const [first, ...others] = said;
  return others.reduce((left, more) => left?.filter((quantity) => more.includes(quantity)), first);
}

/** A value that moved while it was read: its middle stands for it, and it is always asked. */
function rangeOf(first: SaidNumber, second: SaidNumber): Omit<Said, 'units' | 'named' | 'of'> {
  const low = Math.min(first.number.value, second.number.value);
  const high = Math.max(first.number.value, second.number.value);
  const middle = Math.round(((low + high) / 2) * 1000) / 1000;
  return { value: middle, range: { low, high }, doubt: 'several-values-fit' };
}
