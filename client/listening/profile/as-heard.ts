import { CleanSound } from '../sound/clean-sound.ts';
import { FRAME, type NoiseModule } from '../sound/denoiser.ts';
import { Endpointer, isSpeech } from '../sound/endpointer.ts';
import { UtteranceSound } from '../sound/utterance-sound.ts';
import { SAMPLE_RATE } from '../wav.ts';

/** What somebody was asked to say, and how it sounded: 16 kHz, -1…1, as the microphone gave it. */
export interface SaidAloud {
  readonly words: string;
  readonly sound: Float32Array;
}

/** The same as the ear gives it to its recogniser. */
export interface HeardAloud extends SaidAloud {
  /** Frames of 10 ms in which the ear finds speech. */
  readonly speechFrames: number;
  /** Its loud part as it came, in dBFS. */
  readonly loudestDb: number;
}

/** Of quiet before and behind each sentence, in samples. */
const AROUND = SAMPLE_RATE / 2;
/** What was read is one sentence, pauses and all. */
const NO_PAUSE_MS = 60_000;

/** What the ear makes of something read aloud: noise taken out, one gain, dither. Where it finds no speech: all of it. */
export function asHeard({ words, sound }: SaidAloud, rnnoise: NoiseModule): HeardAloud {
  const clean = new CleanSound(rnnoise);
  const endpointer = new Endpointer();
  const given: Float32Array[] = [];
  const utterance = new UtteranceSound((samples) => given.push(samples));
  const cleaned: Float32Array[] = [];
  const padded = new Float32Array(FRAME * Math.ceil((sound.length + 2 * AROUND) / FRAME));
  padded.set(sound, AROUND);
  for (let at = 0; at < padded.length; at += FRAME) {
    const { samples, speech } = clean.push(padded.subarray(at, at + FRAME));
    cleaned.push(samples);
    const place = endpointer.open ? utterance.placeOf(samples, isSpeech(speech)) : 'near';
    const turn = endpointer.step(place === 'far' ? 0 : speech, NO_PAUSE_MS);
    if (turn === 'began') utterance.begin();
    if (turn === 'ended') break;
    if (turn !== 'quiet') utterance.take(samples, place === 'far' ? 'far' : 'near');
    utterance.remember(samples);
  }
  clean.close();
  const isFound = endpointer.speechFrames > 0;
  if (!isFound) {
    utterance.begin();
    for (const samples of cleaned) utterance.take(samples, 'near');
  }
  utterance.settle();
  const whole = new Float32Array(given.length * FRAME);
  given.forEach((block, index) => {
    whole.set(block, index * FRAME);
  });
  const speechFrames = isFound ? endpointer.speechFrames : Math.round(sound.length / FRAME);
  return { words, sound: whole, speechFrames, loudestDb: utterance.loudestDb };
}
