import type { PlaceMeasured } from '../../listening/sound/judge-place.ts';
import { levelOf } from '../../listening/sound/level.ts';
import { SOUND_CHECK, TEST_NUMBER } from '../../words/pages/sound-words.ts';

/** What a sound check needs of the running visit. */
export interface SoundCheckParts {
  /** The microphone's sound in blocks of 20 ms; undefined where there is none to be had. */
  sound(): MessagePort | undefined;
  /** Whether a voice is heard just now. */
  hearing(): boolean;
  /** Speaks, where there is a voice. @returns whether it was heard at all */
  speak(text: string): Promise<boolean>;
  /** The next thing said, kept from the visit; undefined after so long. */
  nextSaid(withinMs: number): Promise<string | undefined>;
}

export type CheckStep = 'quiet' | 'echo' | 'number';

const QUIET_MS = 2_500;
/** Talk fills this much of the quiet stretch; a knock, or a hiss that the gate takes for a voice once, ends after 0.7 s. */
const TALK_SHARE = 0.5;
const SAID_WITHIN_MS = 15_000;
const LOOK_MS = 50;

/** Listens to the place, to its own voice and to a test number, one after another. */
export async function checkSound(
  parts: SoundCheckParts,
  tell: (step: CheckStep) => void,
): Promise<PlaceMeasured | undefined> {
  const sound = parts.sound();
  if (sound === undefined) return undefined;
  let levels: number[] = [];
  sound.onmessage = ({ data }: MessageEvent<Float32Array>) => levels.push(levelOf(data));
  try {
    tell('quiet');
    const othersTalk = await watchQuiet(parts);
    const floorDb = share(levels, 0.5);
    tell('echo');
    levels = [];
    const spoke = await parts.speak(SOUND_CHECK.spoken);
    const echoDb = spoke ? share(levels, 0.9) : undefined;
    tell('number');
    levels = [];
    const said = await parts.nextSaid(SAID_WITHIN_MS);
    return {
      floorDb,
      othersTalk,
      echoDb,
      // The loudest twentieth of the wait is the voice itself: a second of fifteen.
      speechDb: said === undefined ? undefined : share(levels, 0.95),
      number: said === undefined ? 'unheard' : isTestNumber(said) ? 'right' : 'other',
    };
  } finally {
    sound.onmessage = null;
    sound.close();
  }
}

async function watchQuiet({ hearing }: SoundCheckParts): Promise<boolean> {
  let looks = 0;
  let heard = 0;
  for (const end = performance.now() + QUIET_MS; performance.now() < end; looks += 1) {
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
    if (hearing()) heard += 1;
  }
  return heard >= looks * TALK_SHARE;
}

/** The level that such a share of them stays below. */
function share(levels: readonly number[], part: number): number {
  const sorted = [...levels].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? Number.NEGATIVE_INFINITY;
}

function isTestNumber(said: string): boolean {
  return said.includes(TEST_NUMBER.words) || said.split(/\W+/).includes(TEST_NUMBER.digits);
}
