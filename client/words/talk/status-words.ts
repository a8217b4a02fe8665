import { sayNumber } from '../../../grammar/phrases/languages/english/numbers/say-number.ts';
import type { FaultId } from '../../../grammar/vocabulary/faults.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import { type EnergyState, ZONE_NAMES, ZONES, type ZoneId } from '../../../grammar/vocabulary/zones.ts';
import { capital } from '../capital.ts';
import { faultWords } from '../things/fault-words.ts';
import { readbackWords } from '../things/reading-words.ts';
import { percentWords } from '../things/value-words.ts';
import { MOST_WORDS, within, wordsIn } from '../within.ts';

/** A fault with its probability. */
export interface Likely {
  readonly fault: FaultId;
  readonly probability: number;
}

/** Where the visit stands: readings so far, energy by zone as measured, the leading suspect. */
export function standingWords(
  readings: number,
  energy: Readonly<Record<ZoneId, EnergyState>>,
  leading: Likely | undefined,
): string {
  // A section of the capacitor is named where it stands otherwise than its unit.
  const known = ZONES.filter((zone) => energy[zone] !== 'unknown')
    .filter((zone) => !zone.startsWith('capacitor-') || energy[zone] !== energy['outdoor-load'])
    .map((zone) => `${ZONE_NAMES[zone]} ${energy[zone].replace('-', ' ')}`)
    .join(', ');
  const suspect = leading === undefined ? '' : ` Leading suspect: ${likelyWords(leading, ', ')}.`;
  const read = `${capital(sayNumber(readings))} reading${readings === 1 ? '' : 's'}.`;
  return `${read} ${within([`${known === '' ? 'Energy unknown everywhere, counts as live' : capital(known)}.`], `${read}${suspect}`)}${suspect}`;
}

const MEASURED: Readonly<Record<EnergyState, string>> = {
  unknown: 'counts as live until proven dead',
  live: 'live',
  'reported-off': 'reported off, not proven dead',
  proving: 'its proof is not whole: counts as live',
  'reads-dead': 'read dead, its charge not yet: hands off',
  'proven-dead': 'proven dead as measured. Test again where your hands go',
  'in-doubt': 'in doubt: say whether it is still off and locked',
};

/** How far a zone was measured dead; nothing is called more than that. */
export function standingOf(zone: ZoneId, state: EnergyState): string {
  return `${capital(ZONE_NAMES[zone])}: ${MEASURED[state]}.`;
}

/** Why the next step is what it is; no value is named before the reading. */
export const WHY = {
  /** Why power or the call is to be changed now, by what comes after it. */
  power: {
    testing: 'The next test wants the power so: this step brings it there.',
    repair: 'The repair is hands-on: it wants the unit proven dead.',
    prove: 'The repair is proved with the unit running.',
    other: 'The next test wants the power so.',
  },
  finding: (finding: Likely) => `The readings point to ${likelyWords(finding, ', ')}.`,
  proof: 'The repair is proved by reading the same things again.',
  afterWait: 'It may end by itself: a delay runs out, an overload closes once it has cooled.',
  onceMore: 'The finding would rest on this alone, and it was read once.',
  nothingKnown: 'Nothing is known yet; every reading helps.',
  tellsApart: (suspects: readonly Likely[], last: Reading | undefined) => {
    const named = suspects.map((one) => likelyWords(one, ' ')).join(', ');
    const words = `It tells most between: ${named}.`;
    const withLast = last === undefined ? words : `${words} Last: ${readbackWords(last)}`;
    return wordsIn(withLast) <= MOST_WORDS ? withLast : words;
  },
} as const;

function likelyWords({ fault, probability }: Likely, between: ', ' | ' '): string {
  return `${faultWords(fault)}${between}${percentWords(probability)}`;
}
