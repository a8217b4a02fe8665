import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { loadHearing, loadHearingParts } from '../../../client/listening/node/load-hearing.ts';
import type { SaidAloud } from '../../../client/listening/profile/as-heard.ts';
import { learnFromReading } from '../../../client/listening/profile/learn-from-reading.ts';
import type { VoiceProfile } from '../../../client/listening/profile/voice-profile.ts';
import { makeDither } from '../../../client/listening/sound/dither.ts';
import type { Figure } from '../figures.ts';
import { DIGIT_NAMES, DIGITS } from './digits-set.ts';
import { hear } from './hear-sound.ts';
import { inHalf, type Plan } from './plan.ts';
import { readSound } from './read-sound.ts';
import { shareFigure } from './tried.ts';

/** How often each digit is said for learning, and for trying; the tries begin at another take. */
const LEARNT = 6;
const OTHERS = { from: 25, takes: 24 } as const;

/** What an ear gains that learnt a speaker's digits from some takes, on other takes: `SPEAKER/DIGIT_SPEAKER_TAKE.wav`. */
export async function teach(plan: Plan, folder: string): Promise<Figure[]> {
  const speakers = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory());
  const figures: Figure[] = [];
  for (const speaker of inHalf(speakers.map(({ name }) => name).sort(), plan.half)) {
    const learnt = await said(join(folder, speaker), speaker, 0, LEARNT);
    const others = await said(join(folder, speaker), speaker, OTHERS.from, Math.ceil(OTHERS.takes / plan.every));
    const parts = await loadHearingParts({ ...plan.settings, models: 'bundled' });
    const began = plan.settings.now?.() ?? 0;
    const { profile } = await learnFromReading(parts, learnt, () => undefined);
    const ms = (plan.settings.now?.() ?? 0) - began;
    const { pronunciations, sure, voiceDb } = profile;
    plan.progress(`${speaker}: sure ${sure}, ${voiceDb} dBFS, ${JSON.stringify(pronunciations)}`);
    const before = await right(plan, others);
    const after = await right(plan, others, profile);
    figures.push(
      shareFigure(`other digits of ${speaker}: right before`, before, others.length),
      shareFigure(`other digits of ${speaker}: right after`, after, others.length, 'aim: none lower, worst +15 points'),
      { name: `learning from ${learnt.length} digits of ${speaker}, processor`, value: ms / 1000, unit: 's' },
    );
  }
  return figures;
}

async function said(folder: string, speaker: string, first: number, count: number): Promise<SaidAloud[]> {
  const takes = DIGIT_NAMES.flatMap((words, digit) =>
    Array.from({ length: count }, (_, index) => ({ words, file: `${digit}_${speaker}_${first + index}.wav` })),
  );
  return await Promise.all(
    takes.map(async ({ words, file }) => {
      const sound = await readSound(join(folder, file));
      const padded = new Float32Array(sound.length + 16_000);
      padded.set(sound, 8_000);
      makeDither()(padded);
      return { words, sound: padded };
    }),
  );
}

async function right(plan: Plan, takes: readonly SaidAloud[], profile?: VoiceProfile): Promise<number> {
  const hearing = await loadHearing({ ...plan.settings, grammar: DIGITS, ...(profile !== undefined && { profile }) });
  const count = takes.filter(({ words, sound }) =>
    hear(hearing, sound).some(({ text }) => (text === 'oh' ? 'zero' : text) === words),
  ).length;
  hearing.close();
  return count;
}
