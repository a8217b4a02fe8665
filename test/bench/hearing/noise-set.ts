import { join } from 'node:path';
import { loadHearing } from '../../../client/listening/node/load-hearing.ts';
import type { Figure } from '../figures.ts';
import { hear } from './hear-sound.ts';
import { condenserNoise } from './noise.ts';
import type { Plan } from './plan.ts';
import { readSound } from './read-sound.ts';

/** Noise without a word in it against the grammar of a visit: what is accepted there is one too many. */
export async function noises(plan: Plan): Promise<Figure[]> {
  const hearing = await loadHearing(plan.settings);
  let accepted = 0;
  let taken = 0;
  let samples = 0;
  const listen = (sound: Float32Array): void => {
    const heard = hear(hearing, sound);
    accepted += heard.filter((one) => one.accepted).length;
    taken += heard.length;
    samples += sound.length;
  };
  for (let minute = 0; minute < plan.minutes; minute += 1) {
    plan.progress(`condenser noise: minute ${minute + 1} of ${plan.minutes}`);
    listen(condenserNoise(60, minute + 1));
  }
  const figures = [hourly('condenser noise', accepted, taken, samples)];
  if (plan.people !== undefined) {
    const kitchen = await readSound(join(plan.people, 'kitchen-noise.flac'));
    [accepted, taken, samples] = [0, 0, 0];
    plan.progress('kitchen noise');
    listen(kitchen);
    figures.push(hourly('kitchen noise', accepted, taken, samples));
  }
  hearing.close();
  return figures;
}

function hourly(name: string, accepted: number, taken: number, samples: number): Figure {
  const hours = samples / 16_000 / 3_600;
  // None seen in so many hours leaves up to three in as many possible (rule of three, 95 %).
  const most = accepted === 0 ? `, at most ${(3 / hours).toFixed(1)} at 95 %` : '';
  return {
    name: `${name}: accepted an hour`,
    value: accepted / hours,
    unit: '/h',
    against: `aim 0; ${accepted} of ${taken} stretches taken for speech in ${hours.toFixed(2)} h${most}`,
  };
}
