import type { Utterance } from './ear.ts';
import type { HeardSpeech } from './hearing-parts.ts';

/** What was heard, as an ear delivers it. */
export function toUtterance(heard: HeardSpeech, ear: 'offline' | 'wav', id: string): Utterance {
  const {
    text,
    alternatives,
    confidence,
    accepted,
    doubtful,
    startedMs,
    endedMs,
    verdictMs,
    realTimeFactor,
    continues,
  } = heard;
  const goesOn = continues === true ? { continues } : {};
  return {
    id,
    ear,
    text,
    alternatives,
    confidence,
    accepted,
    doubtful,
    startedMs,
    endedMs,
    verdictMs,
    realTimeFactor,
    ...goesOn,
  };
}
