import type { Ending } from './continuation.ts';
import { FEW_WORDS } from './recogniser/recogniser.ts';
import type { SoFar } from './recogniser/recognition.ts';

/** After this much pause the words so far are looked at, once. */
export const LOOK_MS = 120;
/** The pause that ends an utterance. A fraction is waited for as long as anything where there were pauses before. */
const PAUSE_MS: Readonly<Record<Ending, number>> = { whole: 260, fraction: 420, open: 620 };
/** No utterance waits longer for its rest. */
export const LONGEST_PAUSE_MS = PAUSE_MS.open;

/**
 * The pause that ends an utterance, by what was heard of it so far: the longer, the likelier it goes on. A few words that
 * fit badly while a number is waited for are as good as none: half of one is easily taken for them ("one volt"). So is
 * whatever does not fit at all: it is another sentence, of which nobody knows yet where it ends.
 *
 * @param said how many pauses there were in it, this one included, and whether a reading is waited for
 * @returns milliseconds
 */
export function pauseAfter(
  { text, sure, fits }: Pick<SoFar, 'text' | 'sure' | 'fits'>,
  ending: Ending,
  { pauses, isWaited }: { readonly pauses: number; readonly isWaited: boolean },
): number {
  const mayBeHalf = !fits || (isWaited && !sure && text.split(' ').length <= FEW_WORDS);
  if (ending === 'fraction') return PAUSE_MS[pauses > 1 || mayBeHalf ? 'open' : ending];
  return PAUSE_MS[mayBeHalf ? 'open' : ending];
}
