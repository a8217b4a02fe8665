/** Short sounds that say something without words. They differ in timbre and in rhythm, so that noise leaves them apart. */
export type Earcon = 'ready' | 'logged' | 'asked';

interface Note {
  readonly timbre: OscillatorType;
  /** Seconds from the beginning. */
  readonly at: number;
  readonly seconds: number;
  readonly hz: number;
}

/** Ours: one long swell; two quick ticks; three falling and rising steps. */
export const EARCONS: Readonly<Record<Earcon, readonly Note[]>> = {
  ready: [{ timbre: 'sine', at: 0, seconds: 0.22, hz: 660 }],
  logged: [
    { timbre: 'triangle', at: 0, seconds: 0.05, hz: 1_320 },
    { timbre: 'triangle', at: 0.09, seconds: 0.05, hz: 1_320 },
  ],
  asked: [
    { timbre: 'square', at: 0, seconds: 0.09, hz: 520 },
    { timbre: 'square', at: 0.14, seconds: 0.09, hz: 440 },
    { timbre: 'square', at: 0.28, seconds: 0.14, hz: 700 },
  ],
};

/** Below a voice, above the room. */
const LOUDNESS: Readonly<Record<string, number>> = { sine: 0.25, triangle: 0.3, square: 0.08 };
/** Edges that do not click. */
const EDGE_SECONDS = 0.01;

/** Plays one through a context that may be suspended still: it is then not heard, and nothing else happens. */
export function playEarcon(context: BaseAudioContext, earcon: Earcon, now = context.currentTime): void {
  for (const { timbre, at, seconds, hz } of EARCONS[earcon]) {
    const oscillator = context.createOscillator();
    const loudness = context.createGain();
    const [begin, end] = [now + at, now + at + seconds];
    oscillator.type = timbre;
    oscillator.frequency.value = hz;
    loudness.gain.setValueAtTime(0, begin);
    loudness.gain.linearRampToValueAtTime(LOUDNESS[timbre] ?? 0.1, begin + EDGE_SECONDS);
    loudness.gain.setValueAtTime(LOUDNESS[timbre] ?? 0.1, end - EDGE_SECONDS);
    loudness.gain.linearRampToValueAtTime(0, end);
    oscillator.connect(loudness).connect(context.destination);
    oscillator.start(begin);
    oscillator.stop(end);
  }
}
