import type { Heard, Hearing } from '../../../client/listening/hearing.ts';

/** All that is heard in a sound, fed by 20 ms and closed by silence. */
export function hear(hearing: Hearing, sound: Float32Array): Heard[] {
  const heard: Heard[] = [];
  for (let at = 0; at < sound.length; at += 320) heard.push(...hearing.push(sound.subarray(at, at + 320)));
  return [...heard, ...hearing.flush()];
}
