import { levelOf } from '../../../client/listening/sound/level.ts';

/** 10 ms at 16 kHz. */
const FRAME = 160;
/** A frame counts as speech this far above the quiet tenth of the recording and this near to its loudest frame. */
const ABOVE_QUIET_DB = 8;
const BELOW_LOUDEST_DB = 35;

/** Where speech ends in a clean recording, told from levels alone, in milliseconds from its beginning. */
export function endOfSpeech(clean: Float32Array): number {
  const levels = Array.from({ length: Math.floor(clean.length / FRAME) }, (_, index) =>
    levelOf(clean.subarray(index * FRAME, (index + 1) * FRAME)),
  );
  const quiet = [...levels].sort((a, b) => a - b)[Math.floor(levels.length / 10)] ?? -100;
  const limit = Math.max(quiet + ABOVE_QUIET_DB, Math.max(...levels) - BELOW_LOUDEST_DB);
  return 10 * (levels.findLastIndex((level) => level > limit) + 1);
}
