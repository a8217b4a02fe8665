import type { Hearing } from '../../../client/listening/hearing.ts';
import type { HeardSpeech } from '../../../client/listening/hearing-parts.ts';
import { endOfSpeech } from './end-of-speech.ts';

/**
 * All that is heard in a sound, fed by 20 ms and closed by silence.
 *
 * @param clean the same sound before noise was laid under it: the verdict time of the utterance that its end falls into
 * is counted from there, not from what the ear itself takes for the end of speech
 */
export function hear(hearing: Hearing, sound: Float32Array, clean = sound): HeardSpeech[] {
  const endMs = hearing.audioMs + endOfSpeech(clean);
  const heard: HeardSpeech[] = [];
  for (let at = 0; at < sound.length; at += 320) heard.push(...hearing.push(sound.subarray(at, at + 320)));
  heard.push(...hearing.flush());
  return heard.map((one) => {
    const verdictMs = one.verdictMs + one.endedMs - endMs;
    return one.startedMs < endMs && verdictMs > 0 ? { ...one, endedMs: endMs, verdictMs } : one;
  });
}
